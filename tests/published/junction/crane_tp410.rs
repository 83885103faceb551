//! Crane's junction.

use evenport::JunctionLaw;

use super::author::{self, Author};
use crate::evidence::{Check, Kind, assert_all};

pub fn checks() -> Vec<Check> {
    let author = Author {
        law: JunctionLaw::CraneTp410,
        path: "junction/crane_tp410",
        name: "crane",
        area_ratios: &[0.3, 0.36, 0.45, 0.66, 1.0],
        angles: &[45.0, 57.0, 76.0, 90.0],
        limits: &[
            (0.091, 30.0, None),
            (0.999, 89.9, None),
            (0.089, 90.0, Some("sideArea")),
            (1.001, 90.0, Some("sideArea")),
            (0.5, 29.7, Some("angle")),
            (0.5, 90.1, Some("angle")),
        ],
    };
    author::checks(&author, |row| {
        let corner =
            row.text("flow") == "dividing" && row.text("leg") == "run" && row.number("q") == 0.5;
        if corner && row.number("area_ratio") > 0.4 {
            return Some((
                0.002,
                "the corner of M at q 0.5 is rounded by 0.0075, times q squared",
            ));
        }
        // K changes by up to 3 per unit of q, and the printed flows carry three digits.
        (row.kind() == Kind::PrintedExample && row.text("leg") == "side")
            .then_some((1e-4, "rounded flows of the printed example: 3e-5 of q"))
    })
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
