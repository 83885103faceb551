//! Free-standing bellmouth.

use evenport::law::entry::flared_idelchik::{FlaredEntry, SCATTER};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{circle, invariant, no_jump, range, rows};

const LAW: &str = "entry/flared_idelchik";

fn coefficient(ratio: f64) -> f64 {
    FlaredEntry {
        area: circle(1.0),
        radius: ratio,
    }
    .coefficients()
    .forward
    .k
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/entry.csv"))
        .iter()
        .filter(|row| row.text("law").starts_with("flared"))
        .map(|row| {
            let ratio = row.number("size");
            let (id, ours) = (format!("K at r/d {ratio}"), coefficient(ratio));
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(LAW, id, ours, SCATTER.relative * ours),
                _ => row.printed(LAW, id, ours),
            }
        })
        .collect();
    checks.push(no_jump(LAW, "K over r/d", [0.0, 0.4], coefficient));
    let slope = |ratio: f64| (coefficient(ratio + 1e-7) - coefficient(ratio)) / 1e-7;
    checks.push(no_jump(LAW, "slope of K over r/d", [0.0, 0.4], slope));
    let rises = (1..4_000).filter(|step| {
        let ratio = f64::from(*step) * 1e-4;
        coefficient(ratio) > coefficient(ratio - 1e-4)
    });
    checks.push(invariant(
        LAW,
        "steps over which K rises with r/d".to_owned(),
        0.0,
        rises.count() as f64,
        0.0,
        "K falls",
    ));
    let at = |ratio: f64| {
        FlaredEntry {
            area: circle(0.05),
            radius: 0.05 * ratio,
        }
        .outside()
    };
    checks.push(range(LAW, "r/d 0", &at(0.0), None));
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
