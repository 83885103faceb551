//! Laminar friction of sections that are not round.

use std::f64::consts::PI;

use evenport::law::friction::laminar_noncircular_shah_london_1978::{laminar_constant, outside};

use crate::evidence::{Check, assert_all};
use crate::support::{invariant, no_jump, range, rows};

const LAW: &str = "friction/laminar_noncircular_shah_london_1978";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/laminar.csv"))
        .iter()
        .map(|row| {
            let aspect = row.number("aspect_ratio");
            let ours = laminar_constant(aspect, 2.0 * (1.0 + aspect));
            let because = "half of the last printed digit, and 0.05 % for the series, as its authors state (from memory)";
            row.within(LAW, format!("f Re of a rectangle, aspect ratio {aspect:.3}"), ours, 5e-3 + 5e-4 * ours, because)
        })
        .collect();
    let circle = laminar_constant(0.25 * PI, PI);
    checks.push(invariant(
        LAW,
        "f Re of a circle".to_owned(),
        64.0,
        circle,
        1e-9,
        "rounding",
    ));
    checks.push(no_jump(
        LAW,
        "f Re over perimeter^2/area",
        [10.0, 200.0],
        |shape| laminar_constant(1.0, shape.sqrt()),
    ));
    let shape = |shape: f64| outside(1.0, shape.sqrt());
    checks.push(range(LAW, "a circle", &shape(4.0 * PI), None));
    checks.push(range(LAW, "a circle to three digits", &shape(12.56), None));
    checks.push(range(LAW, "a slot", &shape(1_000.0), None));
    checks.push(range(
        LAW,
        "shorter than a circle",
        &shape(12.5),
        Some("perimeter"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
