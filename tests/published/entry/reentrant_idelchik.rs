//! Re-entrant pipe end, Idelchik.

use evenport::ReentrantEntryLaw;
use evenport::law::entry::ReentrantEntry;
use evenport::law::entry::reentrant_idelchik::SCATTER;

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{circle, no_jump, range, rows};

const LAW: &str = "entry/reentrant_idelchik";

fn coefficient(diameter: f64, thickness: f64) -> f64 {
    ReentrantEntry {
        area: circle(diameter),
        thickness,
        law: ReentrantEntryLaw::Idelchik,
    }
    .coefficients()
    .forward
    .k
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/entry.csv"))
        .iter()
        .filter(|row| row.text("law") == "distance idelchik")
        .map(|row| {
            let (diameter, thickness) = (row.number("diameter"), row.number("size"));
            let ours = coefficient(diameter, thickness);
            let id = format!("K at t/d {:.3}", thickness / diameter);
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(LAW, id, ours, SCATTER.relative * ours),
                _ => row.printed(LAW, id, ours),
            }
        })
        .collect();
    checks.push(no_jump(LAW, "K over t/d", [0.0, 0.2], |ratio| {
        coefficient(1.0, ratio)
    }));
    let at = |ratio: f64| {
        ReentrantEntry {
            area: circle(0.05),
            thickness: 0.05 * ratio,
            law: ReentrantEntryLaw::Idelchik,
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
