//! Idelchik's junction.

use evenport::JunctionLaw;

use super::author::{self, Author};
use crate::evidence::{Check, assert_all};

pub fn checks() -> Vec<Check> {
    let author = Author {
        law: JunctionLaw::Idelchik,
        path: "junction/idelchik",
        name: "idelchik",
        area_ratios: &[0.3, 0.36, 0.41, 1.0],
        angles: &[45.0, 90.0],
        limits: &[
            (0.051, 89.9, None),
            (0.999, 15.0, None),
            (0.049, 90.0, Some("sideArea")),
            (1.001, 90.0, Some("sideArea")),
            (0.5, 14.8, Some("angle")),
            (0.5, 90.1, Some("angle")),
        ],
    };
    author::checks(&author, |row| {
        let corner =
            row.text("flow") == "dividing" && row.text("leg") == "run" && row.number("q") == 0.5;
        corner.then_some((
            0.002,
            "the corner of tau at q 0.5 is rounded by 0.0075, times q squared",
        ))
    })
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
