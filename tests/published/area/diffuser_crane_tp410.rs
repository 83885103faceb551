//! Conical diffuser, Crane.

use evenport::law::area::diffuser_crane_tp410::{SCATTER, coefficient};
use evenport::law::area::sudden_expansion_borda_carnot;

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{circle, invariant, no_jump, rows};

const LAW: &str = "area/diffuser_crane_tp410";

/// The coefficient of a cone between diameter 1 and a smaller one, of a full angle [degree].
fn by_angle(area_ratio: f64, angle: f64) -> f64 {
    let length = (1.0 - area_ratio.sqrt()) / (2.0 * (0.5 * angle.to_radians()).tan());
    coefficient(area_ratio * circle(1.0), circle(1.0), length)
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/area.csv"))
        .iter()
        .filter(|row| row.text("law") == "cone widening crane")
        .map(|row| {
            let (ratio, angle) = (row.number("area_ratio"), row.number("angle"));
            let ours = by_angle(ratio, angle);
            let id = format!("K at area ratio {ratio:.3}, {angle} degrees");
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(LAW, id, ours, SCATTER.relative * ours),
                _ => row.printed(LAW, id, ours),
            }
        })
        .collect();
    for ratio in [0.04, 0.3, 0.7, 0.95] {
        let name = format!("K over angle, area ratio {ratio}");
        checks.push(no_jump(LAW, &name, [1.0, 179.9], |angle| {
            by_angle(ratio, angle)
        }));
        let name = format!("K over angle near 45 degrees, area ratio {ratio}");
        checks.push(no_jump(LAW, &name, [44.7, 45.3], |angle| {
            by_angle(ratio, angle)
        }));
        let area_ratio = ratio;
        let name = format!("K over length from 0, area ratio {ratio}");
        checks.push(no_jump(LAW, &name, [0.0, 3.0], |length| {
            coefficient(area_ratio * circle(1.0), circle(1.0), length)
        }));
        let short = coefficient(area_ratio * circle(1.0), circle(1.0), 0.0);
        let sudden = sudden_expansion_borda_carnot::coefficient(ratio, 1.0);
        let id = format!("length 0 is the sudden change, area ratio {ratio}");
        checks.push(invariant(LAW, id, sudden, short, 1e-12, "rounding"));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
