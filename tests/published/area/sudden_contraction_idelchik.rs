//! Sudden contraction, Idelchik.

use evenport::law::area::sudden_contraction_idelchik::{SCATTER, coefficient};
use evenport::law::entry::sharp_idelchik;

use crate::evidence::{Check, assert_all};
use crate::support::{invariant, no_jump, rows};

const LAW: &str = "area/sudden_contraction_idelchik";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/area.csv"))
        .iter()
        .filter(|row| row.text("law") == "contraction idelchik")
        .map(|row| {
            let ratio = row.number("area_ratio");
            let ours = coefficient(1.0, ratio);
            let id = format!("K at area ratio {ratio}");
            row.scattered(LAW, id, ours, SCATTER.relative * ours)
        })
        .collect();
    checks.push(no_jump(LAW, "K over area ratio", [0.0, 1.0], |ratio| {
        coefficient(1.0, ratio)
    }));
    checks.push(invariant(
        LAW,
        "K out of a chamber is the sharp entry's".to_owned(),
        sharp_idelchik::COEFFICIENT,
        coefficient(1.0, 0.0),
        1e-12,
        "rounding",
    ));
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
