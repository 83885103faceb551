//! The engine around the manifold: blower, boost, charge cooler, mixture, speed range.

mod blower;
mod boost;
mod cooler;
mod gate;
mod mixture;
mod range;
mod varied;

use evenport::{Draw, OperatingAnswer, Solved, Study, read, solve};

use crate::support::solved;

/// The invented V8 with a blower, a core in two passages and a lid in two halves.
pub fn blown_v8() -> Study {
    let text = include_str!("../../../examples/blown_v8/network.json");
    read(text).unwrap_or_else(|errors| panic!("{errors:#?}"))
}

/// The running draw of a study that is solved in it.
pub fn running(study: &Study) -> Solved {
    let answer = solve(study).unwrap_or_else(|errors| panic!("{errors:#?}"));
    solved(&answer, Draw::Running).clone()
}

pub fn operating(solved: &Solved) -> &OperatingAnswer {
    solved.operating.as_ref().expect("an engine that runs")
}

/// Asserts that two numbers differ by less than `allowed` of the second.
pub fn close(ours: f64, wanted: f64, allowed: f64) {
    assert!(
        (ours - wanted).abs() <= allowed * wanted.abs(),
        "{ours} is not {wanted} to {allowed}"
    );
}
