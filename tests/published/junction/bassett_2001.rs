//! Bassett, Winterbone and Pearson's junction.

use evenport::JunctionLaw;

use super::author::{self, Author};
use crate::evidence::{Check, assert_all};

pub fn checks() -> Vec<Check> {
    let author = Author {
        law: JunctionLaw::Bassett2001,
        path: "junction/bassett_2001",
        name: "bassett",
        area_ratios: &[0.3, 1.0],
        angles: &[45.0, 90.0],
        limits: &[
            (0.051, 89.9, None),
            (0.999, 30.0, None),
            (0.049, 90.0, Some("sideArea")),
            (1.001, 90.0, Some("sideArea")),
            (0.5, 29.7, Some("angle")),
            (0.5, 90.1, Some("angle")),
        ],
    };
    author::checks(&author, |_| None)
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
