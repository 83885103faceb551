//! Mixture: signs, banks, trims. With equal fuel the cylinder with more air is the lean one.

use evenport::{FuelSetting, State};

use super::{blown_v8, close, running};

/// Mass balance, closed form: lambda over the engine's is air over the mean air.
#[test]
fn with_equal_fuel_the_overfed_cylinder_is_the_lean_one() {
    let study = blown_v8();
    let solved = running(&study);
    let mixture = solved.mixture.as_ref().expect("an engine that runs");
    assert_eq!(mixture.lambda, 0.85);
    let mut seen = (false, false);
    for (cylinder, mixture) in solved.cylinders.iter().zip(&mixture.cylinders) {
        close(mixture.lambda, 0.85 * (1.0 + cylinder.deviation), 1e-12);
        close(mixture.air_fuel_ratio, 14.7 * mixture.lambda, 1e-12);
        // More fuel where there is more air.
        close(mixture.trim.expect("a trim"), cylinder.deviation, 1e-9);
        match cylinder.state {
            State::Overfed => {
                assert!(mixture.lambda > 0.85);
                seen.0 = true;
            }
            State::Starved => {
                assert!(mixture.lambda < 0.85);
                seen.1 = true;
            }
            _ => {}
        }
    }
    assert_eq!(seen, (true, true));
    let most = solved
        .cylinders
        .iter()
        .max_by(|a, b| a.deviation.total_cmp(&b.deviation))
        .expect("cylinders");
    assert_eq!(mixture.at_risk, std::slice::from_ref(&most.cylinder));
    assert!(mixture.sentence.contains("lean"), "{}", mixture.sentence);
    assert!(
        mixture.sentence.contains("hottest charge"),
        "{}",
        mixture.sentence
    );
}

/// Cylinders that tie for the leanest place are named together.
#[test]
fn cylinders_that_tie_share_the_risk() {
    let text = include_str!("../../../examples/twin_feed/network.json");
    let study = evenport::read(text).unwrap_or_else(|errors| panic!("{errors:#?}"));
    let solved = running(&study);
    let mixture = solved.mixture.as_ref().expect("an engine that runs");
    assert_eq!(mixture.at_risk, ["1", "2"]);
    let sentence = &mixture.sentence;
    assert!(
        sentence.starts_with("Cylinders 1 and 2 are most at risk"),
        "{sentence}"
    );
    assert!(
        sentence.contains("cylinders 3 and 4 have the hottest charge"),
        "{sentence}"
    );
}

#[test]
fn a_closed_loop_holds_the_mean_of_each_bank() {
    let mut study = blown_v8();
    study.engine.fuel.setting = FuelSetting::ClosedLoopPerBank;
    let solved = running(&study);
    let mixture = solved.mixture.as_ref().expect("an engine that runs");
    for bank in ["left", "right"] {
        let in_bank: Vec<usize> = study
            .engine
            .cylinders
            .iter()
            .enumerate()
            .filter(|(_, cylinder)| cylinder.bank.as_deref() == Some(bank))
            .map(|(place, _)| place)
            .collect();
        let mean: f64 = in_bank
            .iter()
            .map(|place| solved.cylinders[*place].flow)
            .sum::<f64>()
            / in_bank.len() as f64;
        for place in in_bank {
            let wanted = 0.85 * solved.cylinders[place].flow / mean;
            close(mixture.cylinders[place].lambda, wanted, 1e-12);
        }
    }
}

#[test]
fn fuel_before_the_manifold_gives_no_trim() {
    let mut study = blown_v8();
    study.engine.fuel.setting = FuelSetting::Upstream;
    let solved = running(&study);
    let mixture = solved.mixture.as_ref().expect("an engine that runs");
    for cylinder in &mixture.cylinders {
        assert_eq!((cylinder.trim, cylinder.lambda), (None, 0.85));
    }
    assert!(mixture.sentence.contains("no trim"), "{}", mixture.sentence);
}

/// Air drawn goes with charge temperature to the power -e, and is in step with pressure: two cylinders
/// whose walls differ, in a network without losses.
#[test]
fn a_hotter_charge_draws_less_by_its_exponent() {
    use crate::support::{Builder, typed};
    use evenport::NodeKind;
    for exponent in [0.5, 0.8, 1.0] {
        let mut builder = Builder::default();
        builder
            .source("source")
            .node("chamber", NodeKind::PLENUM)
            .port("cold")
            .port("hot")
            .branch("feed", "source", "chamber", vec![typed(1e-6, 1.0)])
            .branch("to cold", "chamber", "cold", vec![typed(1e-6, 1.0)])
            .branch("to hot", "chamber", "hot", vec![typed(1e-6, 1.0)]);
        let mut study = builder.study(1.0);
        study.engine.speed = Some(50.0);
        study.engine.volumetric_efficiency = Some(1.0);
        study.engine.charge_exponent = Some(exponent);
        study.network.branches[2].temperature_rise = Some(30.0);
        let solved = running(&study);
        close(solved.cylinders[1].temperature, 360.0, 1e-9);
        let wanted = (360.0_f64 / 330.0).powf(-exponent);
        close(
            solved.cylinders[1].flow / solved.cylinders[0].flow,
            wanted,
            1e-6,
        );
    }
}
