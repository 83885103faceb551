//! What every author's rounded entry goes through.

use evenport::RoundedEntryLaw;
use evenport::law::entry::RoundedEntry;

use crate::evidence::{Check, Kind};
use crate::support::{circle, no_jump, range, rows};

/// An author's coefficient.
pub fn coefficient(law: RoundedEntryLaw, diameter: f64, radius: f64) -> f64 {
    RoundedEntry {
        area: circle(diameter),
        radius,
        law,
    }
    .coefficients()
    .forward
    .k
}

/// The rows of the data file under `name`, and what a rounded entry must do.
pub fn of_author(path: &'static str, name: &str, law: RoundedEntryLaw) -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/entry.csv"))
        .iter()
        .filter(|row| row.text("law") == name)
        .map(|row| {
            let (diameter, radius) = (row.number("diameter"), row.number("size"));
            let ours = coefficient(law, diameter, radius);
            let id = format!("K at r/d {:.3}", radius / diameter);
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(path, id, ours, law.scatter().relative * ours),
                _ => row.printed(path, id, ours),
            }
        })
        .collect();
    checks.push(no_jump(path, "K over r/d", [0.0, 1.5], |ratio| {
        coefficient(law, 1.0, ratio)
    }));
    let at = |ratio: f64| {
        RoundedEntry {
            area: circle(0.04),
            radius: 0.04 * ratio,
            law,
        }
        .outside()
    };
    checks.push(range(path, "r/d at its least", &at(0.0), None));
    checks.push(range(
        path,
        "r/d just under its most",
        &at(1.0 - 1e-6),
        None,
    ));
    let over = at(1.0 + 1e-6);
    checks.push(range(path, "r/d just over its most", &over, Some("radius")));
    checks
}
