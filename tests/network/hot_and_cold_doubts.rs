//! The doubt's sensitivities where temperatures are sought too, against the answer's own finite differences.
//!
//! They rest on the derivative of every loss with the temperature of the air that arrives.

use evenport::{Draw, JunctionLaw, Loss, NodeKind, Study};

use crate::evidence::{Check, assert_all};
use crate::junction_doubts::{
    DEPRESSION, Network, RUN, RUN_LEG, SIDE, SIDE_LEG, duct, typed_checks,
};
use crate::support::{Builder, typed};

fn bend() -> Loss {
    Loss::Bend {
        area: RUN,
        perimeter: None,
        angle: 1.2,
        radius: 0.05,
        roughness: 5e-5,
        law: Default::default(),
    }
}

fn core() -> Loss {
    Loss::Core {
        area: RUN,
        fraction: 1.0,
        pressure: 150_000.0,
        temperature: 320.0,
        flow_1: 0.05,
        drop_1: 800.0,
        flow_2: 0.1,
        drop_2: 2_500.0,
        cooler: None,
    }
}

/// A hot and a cold plenum with a tube between them: its coefficient moves the temperatures behind them. A law more
/// would push the tube's off the list of an answer's five largest causes.
fn hot_and_cold(k: f64, tested: Loss) -> Study {
    let source = NodeKind::source;
    let kind = NodeKind::Tee {
        area: RUN,
        side_area: SIDE,
        law: JunctionLaw::Rennels2012,
    };
    let mut builder = Builder::default();
    builder
        .node("hot", source(160_000.0, 380.0))
        .node("cold", source(158_000.0, 300.0))
        .node("hot box", NodeKind::PLENUM)
        .node("cold box", NodeKind::PLENUM)
        .node("pocket", NodeKind::PLENUM)
        .node("cold pocket", NodeKind::PLENUM)
        .node("tee", kind)
        .port("first")
        .port("second");
    let (run, side) = (("tee", RUN_LEG), ("tee", SIDE_LEG));
    builder
        .branch("hot neck", "hot", "hot box", vec![duct(RUN)])
        .branch("cold neck", "cold", "cold box", vec![duct(RUN)])
        .branch("tube", "hot box", "cold box", vec![typed(k, 0.5 * SIDE)])
        .branch("hot way", "hot box", "pocket", vec![duct(RUN)])
        .branch("first runner", "pocket", "first", vec![duct(SIDE)])
        .legs("hot side", ("pocket", None), side, vec![duct(SIDE)])
        .branch(
            "cold way",
            "cold box",
            "cold pocket",
            vec![tested, duct(RUN)],
        )
        .legs("cold run", ("cold pocket", None), run, vec![duct(RUN)])
        .legs("second runner", run, ("second", None), vec![duct(RUN)]);
    let mut study = builder.study(DEPRESSION);
    study.engine.speed = Some(80.0);
    study.engine.volumetric_efficiency = Some(2.0);
    study
}

pub fn checks() -> Vec<Check> {
    let mut networks: Vec<Network> = Vec::new();
    for draw in [Draw::Running, Draw::CycleMean] {
        for tested in [bend, core] {
            let name = format!("hot and cold, {}, {draw:?}", tested().kind());
            networks.push((name, draw, Box::new(move |k| hot_and_cold(k, tested()))));
        }
    }
    networks.iter().flat_map(typed_checks).collect()
}

#[test]
fn doubts_follow_finite_differences_through_unlike_temperatures() {
    assert_all(&checks());
}
