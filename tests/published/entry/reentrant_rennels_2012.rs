//! Re-entrant pipe end.

use evenport::ReentrantEntryLaw;
use evenport::law::entry::ReentrantEntry;

use crate::evidence::{Check, assert_all};
use crate::support::{circle, no_jump, range, rows};

const LAW: &str = "entry/reentrant_rennels_2012";

fn coefficient(diameter: f64, thickness: f64) -> f64 {
    ReentrantEntry {
        area: circle(diameter),
        thickness,
        law: ReentrantEntryLaw::Rennels2012,
    }
    .coefficients()
    .forward
    .k
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/entry.csv"))
        .iter()
        .filter(|row| row.text("law") == "distance")
        .map(|row| {
            let (diameter, thickness) = (row.number("diameter"), row.number("size"));
            let ours = coefficient(diameter, thickness);
            let id = format!("K at t/d {:.3}", thickness / diameter);
            if thickness / diameter < 0.049 {
                row.printed(LAW, id, ours)
            } else {
                let because =
                    "the constant starts where the cubic is least, 4.4e-5 below its printed end";
                row.within(LAW, id, ours, 4.5e-5, because)
            }
        })
        .collect();
    checks.push(no_jump(LAW, "K over t/d", [0.0, 0.2], |ratio| {
        coefficient(1.0, ratio)
    }));
    let slope = |ratio: f64| (coefficient(1.0, ratio + 1e-7) - coefficient(1.0, ratio)) / 1e-7;
    checks.push(no_jump(LAW, "slope of K over t/d", [0.0, 0.2], slope));
    let at = |ratio: f64| {
        ReentrantEntry {
            area: circle(0.05),
            thickness: 0.05 * ratio,
            law: ReentrantEntryLaw::Rennels2012,
        }
        .outside()
    };
    checks.push(range(LAW, "t/d 0", &at(0.0), None));
    checks.push(range(LAW, "t/d just under its most", &at(0.3 - 1e-6), None));
    checks.push(range(
        LAW,
        "t/d just over its most",
        &at(0.3 + 1e-6),
        Some("thickness"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
