//! Gardel's junction.

use evenport::JunctionLaw;

use super::author::{self, Author};
use crate::evidence::{Check, assert_all};

pub fn checks() -> Vec<Check> {
    let author = Author {
        law: JunctionLaw::Gardel1957,
        path: "junction/gardel_1957",
        name: "gardel",
        area_ratios: &[0.4, 1.0],
        angles: &[45.0, 90.0, 135.0],
        limits: &[
            (0.401, 45.0, None),
            (0.999, 135.0, None),
            (0.399, 90.0, Some("sideArea")),
            (1.001, 90.0, Some("sideArea")),
            (0.5, 44.9, Some("angle")),
            (0.5, 135.1, Some("angle")),
        ],
    };
    author::checks(&author, |_| None)
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
