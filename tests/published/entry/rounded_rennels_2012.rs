//! Rounded entry, Rennels and Hudson.

use evenport::RoundedEntryLaw;

use super::rounded::of_author;
use crate::evidence::{Check, assert_all};

pub fn checks() -> Vec<Check> {
    let author = RoundedEntryLaw::Rennels2012;
    of_author("entry/rounded_rennels_2012", "rounded", author)
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
