//! Rounded entry.

use evenport::law::entry::rounded_rennels_2012::{RoundedEntry, SCATTER};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{circle, no_jump, range, rows};

const LAW: &str = "entry/rounded_rennels_2012";

fn coefficient(diameter: f64, radius: f64) -> f64 {
    RoundedEntry {
        area: circle(diameter),
        radius,
    }
    .coefficients()
    .forward
    .k
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/entry.csv"))
        .iter()
        .filter(|row| row.text("law") == "rounded")
        .map(|row| {
            let (diameter, radius) = (row.number("diameter"), row.number("size"));
            let ours = coefficient(diameter, radius);
            let id = format!("K at r/d {:.3}", radius / diameter);
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(LAW, id, ours, SCATTER.relative * ours),
                _ => row.printed(LAW, id, ours),
            }
        })
        .collect();
    checks.push(no_jump(LAW, "K over r/d", [0.0, 1.5], |ratio| {
        coefficient(1.0, ratio)
    }));
    let at = |ratio: f64| {
        RoundedEntry {
            area: circle(0.04),
            radius: 0.04 * ratio,
        }
        .outside()
    };
    checks.push(range(LAW, "r/d at its least", &at(0.0), None));
    checks.push(range(LAW, "r/d just under its most", &at(1.0 - 1e-6), None));
    checks.push(range(
        LAW,
        "r/d just over its most",
        &at(1.0 + 1e-6),
        Some("radius"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
