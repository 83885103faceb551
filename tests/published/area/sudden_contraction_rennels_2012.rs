//! Sudden contraction.

use evenport::law::area::sudden_contraction_rennels_2012::coefficient;

use crate::evidence::{Check, assert_all};
use crate::support::{invariant, no_jump, rows};

const LAW: &str = "area/sudden_contraction_rennels_2012";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/area.csv"))
        .iter()
        .filter(|row| row.text("law") == "contraction")
        .map(|row| {
            let ratio = row.number("area_ratio");
            row.printed(
                LAW,
                format!("K at area ratio {ratio}"),
                coefficient(1.0, ratio),
            )
        })
        .collect();
    checks.push(no_jump(LAW, "K over area ratio", [0.0, 1.0], |ratio| {
        coefficient(1.0, ratio)
    }));
    checks.push(invariant(
        LAW,
        "K of equal areas".to_owned(),
        0.0,
        coefficient(1.0, 1.0),
        1e-12,
        "rounding",
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
