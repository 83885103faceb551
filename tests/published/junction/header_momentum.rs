//! Header: the regain factors that a new header starts with.

use evenport::law::junction::header_momentum::{
    DEFAULT_REGAIN_COMBINING, DEFAULT_REGAIN_DIVIDING, SCATTER_COMBINING, SCATTER_DIVIDING, outside,
};

use crate::evidence::{Check, assert_all};
use crate::support::{THREE_DEVIATIONS, range, rows};

const LAW: &str = "junction/header_momentum";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/junction.csv"))
        .iter()
        .filter(|row| row.text("law") == "header")
        .map(|row| {
            let flow = row.text("flow");
            let (default, scatter) = match flow {
                "dividing" => (DEFAULT_REGAIN_DIVIDING, SCATTER_DIVIDING),
                _ => (DEFAULT_REGAIN_COMBINING, SCATTER_COMBINING),
            };
            // The measured number is theta = 2 beta.
            let id = format!("twice the regain factor, {flow}");
            row.within(LAW, id, 2.0 * default, 6.0 * scatter, THREE_DEVIATIONS)
        })
        .collect();
    for (name, dividing, combining, expected) in [
        ("left out", None, None, None),
        ("at their ends", Some(0.0), Some(1.5), None),
        (
            "dividing over",
            Some(1.5 + 1e-6),
            Some(1.0),
            Some("regainDividing"),
        ),
        (
            "combining over",
            Some(0.5),
            Some(1.5 + 1e-6),
            Some("regainCombining"),
        ),
    ] {
        checks.push(range(LAW, name, &outside(dividing, combining), expected));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
