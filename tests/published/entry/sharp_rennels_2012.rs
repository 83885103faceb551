//! Sharp entry, Rennels and Hudson.

use evenport::SharpEntryLaw;

use super::sharp::of_author;
use crate::evidence::{Check, assert_all};

pub fn checks() -> Vec<Check> {
    let author = SharpEntryLaw::Rennels2012;
    of_author("entry/sharp_rennels_2012", "sharp rennels", author)
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
