//! Standard atmosphere: pressure and temperature by altitude.

use evenport::gas::{GAS_CONSTANT, density};
use evenport::law::air::standard_atmosphere_iso_2533::{RANGE, at, outside};

use crate::evidence::{Check, assert_all};
use crate::support::{holds, invariant, no_jump, range, rows};

const LAW: &str = "air/standard_atmosphere_iso_2533";
const CONSTANTS: &str = "1.1e-6 of it: the reference's gas constant is 287.05307 (U.S. 1976), ISO's 287.05287; half of the last digit";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/atmosphere.csv"))
        .iter()
        .map(|row| {
            let altitude = row.number("altitude");
            let air = at(altitude);
            let id = format!("{} at {altitude} m", row.text("quantity"));
            match row.text("quantity") {
                "temperature" => row.printed(LAW, id, air.temperature),
                "pressure" => {
                    let allowed = row.number("half").max(1.1e-6 * row.number("value"));
                    row.within(LAW, id, air.pressure, allowed, CONSTANTS)
                }
                other => panic!("unknown quantity {other}"),
            }
        })
        .collect();
    // Air at rest: dp = -rho g dh, gravity falling with the square of the distance from the earth's middle.
    for altitude in [-1_500.0, 0.0, 1_200.0, 5_000.0, 10_000.0] {
        let slope = (at(altitude + 1.0).pressure - at(altitude - 1.0).pressure) / 2.0;
        let air = at(altitude);
        let gravity = 9.806_65 * (6_356_766.0_f64 / (6_356_766.0 + altitude)).powi(2);
        checks.push(invariant(
            LAW,
            format!("fall of pressure at {altitude} m over the weight of the air"),
            1.0,
            -slope / (density(air.pressure, air.temperature) * gravity),
            2e-5,
            "1e-5: R 287.05 against the standard's 287.053, and the difference's own error",
        ));
    }
    let sea = at(0.0);
    checks.push(invariant(
        LAW,
        "density at sea level".to_owned(),
        1.225,
        sea.pressure / (GAS_CONSTANT * sea.temperature),
        2e-5,
        "1e-5 of it: R 287.05 against the standard's 287.053",
    ));
    checks.push(no_jump(LAW, "pressure by altitude", RANGE, |altitude| {
        at(altitude).pressure
    }));
    let same = at(-9e9) == at(RANGE[0]) && at(9e9) == at(RANGE[1]);
    checks.push(holds(
        LAW,
        "the border's state stands beyond the range".to_owned(),
        same,
    ));
    for (name, altitude, expected) in [
        ("deepest", -2_000.0, None),
        ("highest", 11_000.0, None),
        ("too deep", -2_000.1, Some("altitude")),
        ("too high", 11_000.1, Some("altitude")),
    ] {
        checks.push(range(LAW, name, &outside(altitude), expected));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
