//! Openings and a throttle between chambers and ducts, far below Mach 1: jet, Borda and Carnot, exit.

use std::f64::consts::PI;

use evenport::{Draw, Loss, ScreenLaw};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, solved, typed};

/// Low enough that the air is incompressible to a part in a million [Pa].
const DEPRESSION: f64 = 0.1;
const BORE: f64 = 0.06;
const SOURCE: &str =
    "Bernoulli to the jet, Borda and Carnot behind it, the last section's head lost in the chamber";
const COMPRESSIBLE: &str = "2e-6 of it: compressibility at 0.1 Pa";

/// Mass flow of a branch between two chambers [kg/s].
fn flow(losses: Vec<Loss>) -> f64 {
    let mut builder = Builder::default();
    builder
        .source("room")
        .port("port")
        .branch("branch", "room", "port", losses);
    solved(&answer(&builder.study(DEPRESSION)), Draw::BenchAllOpen).total
}

/// Mass flow where `heads` velocity heads of a section fall [kg/s].
fn by_heads(area: f64, heads: f64) -> f64 {
    let density = evenport::gas::density(101_325.0, 293.15);
    area * (2.0 * density * DEPRESSION / heads).sqrt()
}

/// Heads of a jet that widens into a section whose own head is lost at the end.
fn into_section(jet: f64, section: f64) -> f64 {
    let ratio = jet / section;
    (1.0 - ratio).powi(2) + ratio * ratio
}

pub fn checks() -> Vec<Check> {
    let bore = 0.25 * PI * BORE * BORE;
    let hole = 0.3 * bore;
    let opening = |area_from, area_to| Loss::Opening {
        area: hole,
        discharge_coefficient: 0.62,
        area_from,
        area_to,
        thickness: None,
    };
    let thick = Loss::Opening {
        area: hole,
        discharge_coefficient: 0.62,
        area_from: None,
        area_to: None,
        thickness: Some(2.4 * (4.0 * hole / PI).sqrt()),
    };
    let screen = Loss::ScreenSquare {
        area: bore,
        open_part: 0.5,
        law: ScreenLaw::Blevins1984,
    };
    let wires = Loss::ScreenRound {
        area: bore,
        open_part: 0.5,
        gap: 0.05,
        law: ScreenLaw::Blevins1984,
    };
    let jet = 0.62 * hole;
    let (angle, closed_angle) = (60.0_f64.to_radians(), 0.1_f64);
    let throttle = Loss::Throttle {
        diameter: BORE,
        angle,
        closed_angle,
        shaft_diameter: 0.0,
        discharge_coefficient: 0.8,
    };
    // Without a shaft the plate's shadow is an ellipse.
    let gap = 0.8 * bore * (1.0 - angle.cos() / closed_angle.cos());
    let wide = vec![typed(0.0, 100.0 * bore)];
    let stepped = Loss::SuddenChange {
        area_from: hole,
        area_to: bore,
        law: Default::default(),
    };
    let cases = [
        (
            "opening between chambers",
            vec![opening(None, None)],
            by_heads(jet, 1.0),
        ),
        (
            "opening in a thick wall between chambers: narrowed jet, filled again, exit",
            vec![thick],
            by_heads(hole, (1.0 / 0.62 - 1.0_f64).powi(2) + 1.0 + 0.02 * 2.4),
        ),
        (
            "screen of bars half open, 3.8 heads of the approach, exit",
            vec![screen],
            by_heads(bore, 3.8 + 1.0),
        ),
        (
            "screen of wires half open, 1.56 heads of the approach, exit",
            vec![wires],
            by_heads(bore, 1.56 + 1.0),
        ),
        (
            "opening into a duct",
            vec![opening(None, Some(bore))],
            by_heads(jet, into_section(jet, bore)),
        ),
        (
            "opening in a duct",
            vec![opening(Some(bore), Some(bore))],
            by_heads(jet, into_section(jet, bore)),
        ),
        (
            "opening after a wide duct into a chamber",
            [wide, vec![opening(None, None)]].concat(),
            by_heads(jet, 1.0),
        ),
        (
            "throttle plate",
            vec![throttle],
            by_heads(gap, into_section(gap, bore)),
        ),
        (
            "sudden enlargement",
            vec![stepped],
            by_heads(hole, into_section(hole, bore)),
        ),
    ];
    cases
        .into_iter()
        .map(|(name, losses, value)| Check {
            id: format!("flow, {name} [kg/s]"),
            law: "branch",
            source: SOURCE.to_owned(),
            kind: Kind::ClosedForm,
            value,
            ours: flow(losses),
            allowed: 2e-6 * value,
            allowed_because: COMPRESSIBLE,
        })
        .collect()
}

#[test]
fn openings_follow_bernoulli_and_borda() {
    assert_all(&checks());
}
