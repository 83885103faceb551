//! Rennels and Hudson's junction.

use evenport::JunctionLaw;

use super::author::{self, Author};
use crate::evidence::{Check, assert_all};

pub fn checks() -> Vec<Check> {
    let author = Author {
        law: JunctionLaw::Rennels2012,
        path: "junction/rennels_2012",
        name: "rennels",
        area_ratios: &[0.3, 1.0],
        angles: &[90.0],
        limits: &[
            (0.091, 90.0, None),
            (0.999, 90.0, None),
            (0.089, 90.0, Some("sideArea")),
            (1.001, 90.0, Some("sideArea")),
            (0.5, 89.9, Some("angle")),
            (0.5, 90.1, Some("angle")),
        ],
    };
    author::checks(&author, |_| None)
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
