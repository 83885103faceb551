//! Inlet Mach index: the definition by hand for one engine.

use evenport::law::valve::mach_index_taylor::index;

use crate::evidence::{Check, Kind, assert_all};

pub fn checks() -> Vec<Check> {
    // Bore 90 mm, two valves of 34 mm, stroke 80 mm at 6 000 rpm, sound at 360 m/s: piston area 63.62 cm2, valve
    // area 18.16 cm2, piston speed 16 m/s; 63.62/18.16 x 16/(0.35 x 360).
    let circle = |diameter: f64| 0.25 * std::f64::consts::PI * diameter * diameter;
    vec![Check {
        id: "two valves of 34 mm, bore 90 mm, stroke 80 mm, 6 000 rpm".to_owned(),
        law: "valve/mach_index_taylor",
        source: "Taylor 1966, definition (from memory), worked by hand".to_owned(),
        kind: Kind::Memory,
        value: 0.4449,
        ours: index(circle(0.09), 2.0 * circle(0.034), 16.0, 360.0),
        allowed: 5e-5,
        allowed_because: "half of the last digit",
    }]
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
