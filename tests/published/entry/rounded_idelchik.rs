//! Rounded entry, Idelchik.

use evenport::RoundedEntryLaw;

use super::rounded::{coefficient, of_author};
use crate::evidence::{Check, assert_all};
use crate::support::rows;

const LAW: &str = "entry/rounded_idelchik";

pub fn checks() -> Vec<Check> {
    let author = RoundedEntryLaw::Idelchik;
    let mut checks = of_author(LAW, "rounded idelchik", author);
    let because = "another curve through the same points of the table";
    for row in rows(include_str!("../data/entry.csv"))
        .iter()
        .filter(|row| row.text("law") == "rounded idelchik between")
    {
        let ratio = row.number("size");
        let id = format!("K between points, at r/d {ratio}");
        let ours = coefficient(author, 1.0, ratio);
        checks.push(row.within(LAW, id, ours, 0.003, because));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
