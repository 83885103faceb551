//! What every author's sharp entry goes through.

use evenport::SharpEntryLaw;
use evenport::law::entry::SharpEntry;

use crate::evidence::{Check, Kind};
use crate::support::{invariant, range, rows};

/// The rows of the data file under `name`, and what a sharp entry must do.
pub fn of_author(path: &'static str, name: &str, law: SharpEntryLaw) -> Vec<Check> {
    let entry = SharpEntry { area: 1e-3, law };
    let k = entry.coefficients().forward.k;
    let mut checks: Vec<Check> = rows(include_str!("../data/entry.csv"))
        .iter()
        .filter(|row| row.text("law") == name)
        .map(|row| match row.kind() {
            Kind::AnotherAuthor => {
                let deviation = law.scatter().relative * k;
                row.scattered(path, "K, flush, by others".to_owned(), k, deviation)
            }
            _ => row.printed(path, "K, flush".to_owned(), k),
        })
        .collect();
    checks.push(invariant(
        path,
        "outward flow loses nothing here".to_owned(),
        0.0,
        entry.coefficients().reversed.k,
        0.0,
        "the chamber takes the velocity head",
    ));
    checks.push(range(path, "any size", &entry.outside(), None));
    checks
}
