//! Conical contraction.

use evenport::law::area::contraction_conical_rennels_2012::coefficient;
use evenport::law::area::sudden_contraction_rennels_2012;

use crate::evidence::{Check, assert_all};
use crate::support::{circle, invariant, no_jump, rows};

const LAW: &str = "area/contraction_conical_rennels_2012";

/// The coefficient of a cone from diameter 1 of a full angle [degree].
fn by_angle(area_ratio: f64, angle: f64, friction_factor: f64) -> f64 {
    let length = (1.0 - area_ratio.sqrt()) / (2.0 * (0.5 * angle.to_radians()).tan());
    coefficient(
        circle(1.0),
        area_ratio * circle(1.0),
        length,
        friction_factor,
    )
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/area.csv"))
        .iter()
        .filter(|row| row.text("law") == "cone narrowing")
        .map(|row| {
            let (ratio, angle) = (row.number("area_ratio"), row.number("angle"));
            let ours = by_angle(ratio, angle, row.number("friction_factor"));
            row.printed(
                LAW,
                format!("K at area ratio {ratio:.3}, {angle} degrees"),
                ours,
            )
        })
        .collect();
    for ratio in [0.04, 0.3, 0.7, 0.95] {
        let name = format!("K over angle, area ratio {ratio}");
        checks.push(no_jump(LAW, &name, [1.0, 179.9], |angle| {
            by_angle(ratio, angle, 0.02)
        }));
        let name = format!("K over length from 0, area ratio {ratio}");
        checks.push(no_jump(LAW, &name, [0.0, 3.0], |length| {
            coefficient(circle(1.0), ratio * circle(1.0), length, 0.02)
        }));
        let short = coefficient(circle(1.0), ratio * circle(1.0), 0.0, 0.02);
        let sudden = sudden_contraction_rennels_2012::coefficient(1.0, ratio);
        let id = format!("length 0 is the sudden contraction, area ratio {ratio}");
        checks.push(invariant(LAW, id, sudden, short, 1e-12, "rounding"));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
