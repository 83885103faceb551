//! Rounded entry, Swamee and Sharma.

use evenport::RoundedEntryLaw;

use super::rounded::of_author;
use crate::evidence::{Check, assert_all};

pub fn checks() -> Vec<Check> {
    let author = RoundedEntryLaw::Swamee2008;
    of_author("entry/rounded_swamee_2008", "rounded swamee", author)
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
