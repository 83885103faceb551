//! Sharp entry.

use evenport::law::entry::sharp_idelchik::{SCATTER, SharpEntry};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{invariant, range, rows};

const LAW: &str = "entry/sharp_idelchik";

pub fn checks() -> Vec<Check> {
    let entry = SharpEntry { area: 1e-3 };
    let k = entry.coefficients().forward.k;
    let mut checks: Vec<Check> = rows(include_str!("../data/entry.csv"))
        .iter()
        .filter(|row| row.text("law") == "sharp")
        .map(|row| match row.kind() {
            Kind::AnotherAuthor => row.scattered(
                LAW,
                "K, flush, by Rennels".to_owned(),
                k,
                SCATTER.relative * k,
            ),
            _ => row.printed(LAW, "K, flush".to_owned(), k),
        })
        .collect();
    checks.push(invariant(
        LAW,
        "outward flow loses nothing here".to_owned(),
        0.0,
        entry.coefficients().reversed.k,
        0.0,
        "the chamber takes the velocity head",
    ));
    checks.push(range(LAW, "any size", &entry.outside(), None));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
