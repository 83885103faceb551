//! Charge coolers in whole networks: passages of one core, coolant side by side and in series.

use evenport::law::cooler::effectiveness::{self, effectiveness};
use evenport::{Cooler, Loss, Mixing, NodeKind, Solved, Study, gas};

use super::{blown_v8, close, operating, running};
use crate::support::{Builder, draw};

const FLOW: f64 = 0.3;
const COOLANT: f64 = 0.25;
const HOT: f64 = 400.0;
const COLD: f64 = 310.0;

/// A core of equal passages between two chambers, drawn at its measured flow at cycle mean.
fn core(passages: usize, mixing: Mixing, in_series: bool) -> Study {
    let mut builder = Builder::default();
    builder
        .node("source", NodeKind::source(200_000.0, HOT))
        .node("chamber", NodeKind::PLENUM)
        .port("port");
    let names: Vec<String> = (0..passages)
        .map(|number| format!("passage {number}"))
        .collect();
    for name in &names {
        let passage = Loss::Core {
            area: 0.03 / passages as f64,
            fraction: 1.0 / passages as f64,
            pressure: 200_000.0,
            temperature: 330.0,
            flow_1: 0.2,
            drop_1: 700.0,
            flow_2: 0.4,
            drop_2: 2_000.0,
            cooler: Some("core".to_owned()),
        };
        builder.branch(name, "source", "chamber", vec![passage]);
    }
    builder.branch(
        "runner",
        "chamber",
        "port",
        vec![crate::support::typed(0.5, 0.02)],
    );
    let mut study = builder.study(1.0);
    draw(&mut study, FLOW);
    study.coolers.push(Cooler {
        id: "core".to_owned(),
        mixing,
        coolant_temperature: COLD,
        coolant_flow: Some(COOLANT),
        coolant_specific_heat: Some(4_000.0),
        effectiveness: 0.7,
        measured_flow: Some(FLOW),
        measured_coolant_flow: None,
        air_part: None,
        air_exponent: None,
        series: if in_series { names } else { Vec::new() },
    });
    study
}

fn mean(study: &Study) -> Solved {
    let answer = evenport::solve(study).unwrap_or_else(|errors| panic!("{errors:#?}"));
    crate::support::solved(&answer, evenport::Draw::CycleMean).clone()
}

/// At its measured flow a core does what was measured, in any number of equal passages side by side.
#[test]
fn passages_side_by_side_are_the_whole_core() {
    for mixing in [Mixing::BothUnmixed, Mixing::CoolantMixed, Mixing::AirMixed] {
        for passages in [1, 2, 5] {
            let solved = mean(&core(passages, mixing, false));
            let found = &operating(&solved).coolers[0];
            close(solved.total, FLOW, 1e-9);
            close(found.effectiveness, 0.7, 1e-9);
            close(found.outlet_temperature, HOT - 0.7 * (HOT - COLD), 1e-9);
            let heat = FLOW * gas::SPECIFIC_HEAT * 0.7 * (HOT - COLD);
            close(found.heat, heat, 1e-9);
            close(
                found.coolant_temperature,
                COLD + heat / (COOLANT * 4_000.0),
                1e-9,
            );
        }
    }
}

/// Coolant that passes one small passage after the other is mixed between them: the more passages, the
/// nearer to the formula with the coolant mixed (Kays and London, as checked in tests/published).
#[test]
fn passages_in_series_tend_to_the_formula_with_the_coolant_mixed() {
    let ratio = FLOW * gas::SPECIFIC_HEAT / (COOLANT * 4_000.0);
    let unmixed = effectiveness::Mixing::BothUnmixed;
    let units = effectiveness::units(unmixed, 0.7, ratio).expect("a core that can be");
    let wanted = effectiveness(effectiveness::Mixing::CoolantMixed, units, ratio).value;
    let missed = |passages: usize| {
        let solved = mean(&core(passages, Mixing::BothUnmixed, true));
        // Passages with warmer coolant carry a little less air: a thousandth of the difference.
        operating(&solved).coolers[0].effectiveness - wanted
    };
    let (two, eight, thirty) = (missed(2), missed(8), missed(30));
    assert!(
        two.abs() > eight.abs() && eight.abs() > thirty.abs(),
        "{two} {eight} {thirty}"
    );
    assert!(thirty.abs() < 2e-3, "{thirty}");
}

/// More air than measured: less effectiveness, more heat.
#[test]
fn more_air_is_cooled_less_far_and_gives_more_heat() {
    let at = |flow: f64| {
        let mut study = core(1, Mixing::BothUnmixed, false);
        draw(&mut study, flow);
        let solved = mean(&study);
        let found = &operating(&solved).coolers[0];
        (found.effectiveness, found.heat)
    };
    let (little, much) = (at(0.2), at(0.4));
    assert!(
        little.0 > 0.7 && 0.7 > much.0 && much.1 > little.1,
        "{little:?} {much:?}"
    );
}

/// A typed effectiveness without a measured flow holds at every flow.
#[test]
fn an_effectiveness_without_its_flow_holds_everywhere() {
    let mut study = core(3, Mixing::BothUnmixed, false);
    study.coolers[0].measured_flow = None;
    for flow in [0.1, 0.4] {
        draw(&mut study, flow);
        close(
            operating(&mean(&study)).coolers[0].effectiveness,
            0.7,
            1e-12,
        );
    }
}

/// Coolant that has passed the front passage is warmer in the rear one: the rear half runs hotter, the
/// other way round with the other order, and with no coolant flow given both are alike.
#[test]
fn the_half_that_the_coolant_reaches_last_runs_hotter() {
    let warmer = |change: fn(&mut Cooler)| {
        let mut study = blown_v8();
        change(&mut study.coolers[0]);
        let solved = running(&study);
        let at = |range: std::ops::Range<usize>| -> f64 {
            solved.cylinders[range]
                .iter()
                .map(|one| one.temperature)
                .sum()
        };
        at(4..8) - at(0..4)
    };
    let forwards = warmer(|_| {});
    let backwards = warmer(|cooler| cooler.series.reverse());
    assert!(forwards > 4.0 && backwards < -4.0, "{forwards} {backwards}");
    let endless = warmer(|cooler| cooler.coolant_flow = None);
    assert!(endless.abs() < 0.2 * forwards, "{endless}");
}

/// The table of nodes tells the temperature of the air that passes a port, which no shut interval changes.
#[test]
fn a_port_is_as_warm_as_its_cylinders_charge() {
    let study = blown_v8();
    let solved = running(&study);
    for cylinder in &solved.cylinders {
        let port = &cylinder.ports[0].port;
        let node = solved.nodes.iter().find(|node| node.node == *port);
        close(
            node.expect("in the study").temperature,
            cylinder.temperature,
            1e-9,
        );
    }
}

/// Nothing depends on the order of the rows, with everything around the engine in place.
#[test]
fn the_order_of_rows_makes_no_difference() {
    let study = blown_v8();
    let mut turned = study.clone();
    turned.network.branches.reverse();
    turned.network.nodes.reverse();
    let (one, other) = (running(&study), running(&turned));
    for (one, other) in one.cylinders.iter().zip(&other.cylinders) {
        close(one.share, other.share, 1e-12);
        close(one.temperature, other.temperature, 1e-12);
    }
    let (one, other) = (&operating(&one).blowers[0], &operating(&other).blowers[0]);
    close(one.pressure_ratio, other.pressure_ratio, 1e-12);
}

/// The doubt knows the core's conductance: exact sensitivity against a difference.
#[test]
fn a_better_core_changes_shares_as_its_sensitivity_says() {
    let study = blown_v8();
    let solved = running(&study);
    let causes = solved.cylinders.iter().flat_map(|one| &one.doubt_causes);
    assert!(causes.clone().count() > 0);
    let knows = solved
        .cylinders
        .iter()
        .any(|one| one.doubt_causes.iter().any(|cause| cause.law == "cooler"));
    assert!(
        knows,
        "no doubt comes from the cooler: {:#?}",
        causes.collect::<Vec<_>>()
    );
}
