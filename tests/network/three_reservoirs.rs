//! Three reservoirs that meet in one junction, h = R Q^2: a textbook example in water.
//!
//! Square losses of a gas far below Mach 1 follow the same equations whatever the scale. Two levels are
//! sources, air enters one of them; what is drawn at the third is raised until its level is the given one.

use evenport::{Draw, NodeKind};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, draw, solved, typed};

const SOURCE: &str =
    "textbook example 9.12, p. 340, read in FOSSEE/Scilab-TBC-Uploads 1962; exact root computed";
const EXACT: &str = "half of the last printed digit, and 3e-5: compressibility at 2.3 Pa";
/// [m]
const LEVELS: [f64; 3] = [135.0, 120.0, 112.0];
/// [s2/m5]
const RESISTANCES: [f64; 3] = [0.7594, 36.33, 8.168];
/// Pressure for a metre [Pa/m], mass flow for a cubic metre a second [kg/m3], pressure of the lowest level [Pa].
const PER_METRE: f64 = 0.1;
const PER_VOLUME: f64 = 1e-3;
const LOWEST: f64 = 101_325.0;
const TEMPERATURE: f64 = 293.15;
/// So wide that a velocity head is nothing [m2].
const AREA: f64 = 100.0;

/// Level of the junction and of the third reservoir [m], flows of the first and the second [m3/s], for what the
/// third takes [m3/s].
fn state(third: f64) -> [f64; 4] {
    let density = evenport::gas::density(LOWEST, TEMPERATURE);
    let pipe = |place: usize| {
        let head = 0.5 / density * (PER_VOLUME / AREA).powi(2);
        vec![typed(PER_METRE * RESISTANCES[place] / head, AREA)]
    };
    let source =
        |level: f64| NodeKind::source(LOWEST + PER_METRE * (level - LEVELS[2]), TEMPERATURE);
    let mut builder = Builder::default();
    builder
        .node("first", source(LEVELS[0]))
        .node("second", source(LEVELS[1]))
        .node("junction", NodeKind::Joint {})
        .port("third");
    builder
        .branch("from first", "first", "junction", pipe(0))
        .branch("to second", "junction", "second", pipe(1))
        .branch("to third", "junction", "third", pipe(2));
    let mut study = builder.study(1.0);
    draw(&mut study, third * PER_VOLUME);
    let answer = answer(&study);
    let solved = solved(&answer, Draw::CycleMean);
    let level = |node: usize| LEVELS[2] + (solved.nodes[node].pressure - LOWEST) / PER_METRE;
    let flow = |branch: usize| solved.branches[branch].flow / PER_VOLUME;
    [level(2), level(3), flow(0), flow(1)]
}

pub fn checks() -> Vec<Check> {
    let (mut low, mut high) = (0.1, 3.0);
    for _ in 0..50 {
        let middle = 0.5 * (low + high);
        if state(middle)[1] > LEVELS[2] {
            low = middle
        } else {
            high = middle
        }
    }
    let [junction, _, first, second] = state(low);
    let check = |id: &str, kind, value: f64, ours, half: f64, of: f64| Check {
        id: format!("3RES {id}"),
        law: "network",
        source: SOURCE.to_owned(),
        kind,
        value,
        ours,
        allowed: half + 3e-5 * of,
        allowed_because: EXACT,
    };
    let exact = Kind::ClosedForm;
    let height = LEVELS[0] - LEVELS[2];
    vec![
        check(
            "printed junction level [m]",
            Kind::PrintedExample,
            131.6,
            junction,
            0.05,
            height,
        ),
        check("junction level [m]", exact, 131.605, junction, 5e-4, height),
        check("flow from 135 m [m3/s]", exact, 2.11444, first, 5e-6, first),
        check("flow to 120 m [m3/s]", exact, 0.56518, second, 5e-6, second),
        check("flow to 112 m [m3/s]", exact, 1.54926, low, 5e-6, low),
    ]
}

#[test]
fn three_reservoirs_follow_the_textbook() {
    assert_all(&checks());
}
