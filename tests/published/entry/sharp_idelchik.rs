//! Sharp entry, Idelchik.

use evenport::SharpEntryLaw;

use super::sharp::of_author;
use crate::evidence::{Check, assert_all};

pub fn checks() -> Vec<Check> {
    of_author("entry/sharp_idelchik", "sharp", SharpEntryLaw::Idelchik)
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
