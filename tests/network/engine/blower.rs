//! Blowers: closed forms without losses, the balance of energy, drive ratio and boost as each other's
//! inverse, limits named.

use evenport::law::blower::positive_displacement::outlet_temperature;
use evenport::{
    Blower, Branch, Draw, NodeKind, Outcome, Reference, RefusalKind, Study, WarningKind, gas, solve,
};

use super::{blown_v8, close, operating, running};
use crate::support::{Builder, typed};

fn blower(study: &mut Study) -> &mut Blower {
    let mut branches = study.network.branches.iter_mut();
    let blower = branches.find_map(|branch| branch.blower.as_mut());
    blower.expect("a blower")
}

fn ambient() -> NodeKind {
    NodeKind::Source {
        pressure: None,
        temperature: None,
        boost: None,
        boost_node: None,
        ambient: true,
    }
}

/// One cylinder behind a blower, through sections so wide that nothing is lost.
fn one_cylinder(drive_ratio: f64) -> Study {
    let wide = || vec![typed(1e-3, 1.0)];
    let mut builder = Builder::default();
    builder
        .node("outside", ambient())
        .node("inlet", NodeKind::PLENUM)
        .node("chamber", NodeKind::PLENUM)
        .port("port")
        .branch("intake", "outside", "inlet", wide())
        .branch("blower", "inlet", "chamber", Vec::new())
        .branch("runner", "chamber", "port", wide());
    let mut study = builder.study(1.0);
    study.engine.speed = Some(50.0);
    study.engine.volumetric_efficiency = Some(0.95);
    study.engine.reference = Reference::Node {
        node: "chamber".to_owned(),
    };
    study.network.branches[1].blower = Some(Blower {
        displacement: 4e-4,
        drive_ratio: Some(drive_ratio),
        crank_pulley: None,
        blower_pulley: None,
        boost: None,
        boost_node: None,
        volumetric_efficiency: Some(0.9),
        volumetric_table: None,
        isentropic_efficiency: Some(0.6),
        isentropic_table: None,
        greatest_speed: None,
        greatest_rim_speed: None,
    });
    study
}

/// Closed form: what the blower moves at the room's density is what the engine takes at the chamber's,
/// so p/T in the chamber follows, and p from the isentropic relation by bisection.
#[test]
fn without_losses_the_pressure_ratio_is_that_of_the_displacements() {
    for drive_ratio in [1.2, 1.8, 2.6] {
        let study = one_cylinder(drive_ratio);
        let solved = running(&study);
        let found = &operating(&solved).blowers[0];
        let (pressure, temperature) = (101_325.0, 293.15);
        let swept = study.engine.cylinders[0].swept_volume.expect("given");
        let moved = 0.9 * 4e-4 * 50.0 * drive_ratio * gas::density(pressure, temperature);
        let taken = 0.95 * swept * 25.0;
        let density = moved / taken;
        let behind = |ratio: f64| {
            let heated = outlet_temperature(temperature, ratio, 0.6).value;
            gas::density(ratio * pressure, heated)
        };
        let (mut low, mut high) = (1.0, 20.0);
        for _ in 0..80 {
            let middle = 0.5 * (low + high);
            if behind(middle) < density {
                low = middle;
            } else {
                high = middle;
            }
        }
        // The wide sections still lose their velocity heads: some millionths.
        close(found.pressure_ratio, low, 1e-5);
        close(solved.total, moved, 1e-5);
        close(
            found.outlet_temperature,
            outlet_temperature(temperature, low, 0.6).value,
            1e-5,
        );
    }
}

/// First law over the whole engine: what the blower puts in leaves by the coolant and the ports.
#[test]
fn the_energy_of_the_whole_engine_closes() {
    let mut heated = blown_v8();
    for branch in &mut heated.network.branches {
        if branch.id.starts_with("runner") {
            branch.temperature_rise = Some(2.5);
        }
    }
    for study in [blown_v8(), heated] {
        let solved = running(&study);
        let found = operating(&solved);
        let specific_heat = gas::SPECIFIC_HEAT;
        let mut branches = study.network.branches.iter();
        let rise = branches.find_map(|branch| branch.temperature_rise);
        let sources = found.sources.iter();
        let entering: f64 = sources.map(|source| source.flow * source.temperature).sum();
        let cylinders = solved.cylinders.iter();
        let leaving: f64 = cylinders.map(|one| one.flow * one.temperature).sum();
        let power: f64 = found.blowers.iter().map(|blower| blower.power).sum();
        let heat: f64 = found.coolers.iter().map(|cooler| cooler.heat).sum();
        let walls = rise.unwrap_or(0.0) * specific_heat * solved.total;
        let missed = specific_heat * (entering - leaving) + power - heat + walls;
        let carried = specific_heat * leaving;
        assert!(missed.abs() <= 1e-9 * carried, "{missed} W of {carried} W");
        // Mass too: all that enters reaches a port.
        let sources: f64 = found.sources.iter().map(|source| source.flow).sum();
        close(sources, solved.total, 1e-9);
    }
}

/// A drive ratio gives a boost; asked for that boost, the same drive ratio is found.
#[test]
fn drive_ratio_and_boost_are_each_others_inverse() {
    for drive_ratio in [1.6, 2.1, 2.3] {
        let mut study = blown_v8();
        blower(&mut study).drive_ratio = Some(drive_ratio);
        let driven = running(&study);
        let boost = operating(&driven).boost.clone().expect("a boost");
        assert_eq!(boost.node, "lid front");
        let blower = blower(&mut study);
        blower.drive_ratio = None;
        blower.boost = Some(boost.pressure);
        blower.boost_node = Some(boost.node);
        let boosted = running(&study);
        close(
            operating(&boosted).blowers[0].drive_ratio,
            drive_ratio,
            1e-9,
        );
        for (one, other) in driven.cylinders.iter().zip(&boosted.cylinders) {
            close(one.share, other.share, 1e-9);
        }
    }
}

/// Drive ratios from next to no boost to a pressure ratio of 3.5 are solved; with the example's own
/// tables, those beyond are refused with the table's name.
#[test]
fn pressure_ratios_up_to_three_and_a_half_are_matched_or_the_limit_is_named() {
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    for step in 0..=40 {
        let drive_ratio = 1.1 + 0.1 * f64::from(step);
        let mut study = blown_v8();
        let plain = blower(&mut study);
        plain.drive_ratio = Some(drive_ratio);
        (plain.volumetric_table, plain.isentropic_table) = (None, None);
        (plain.volumetric_efficiency, plain.isentropic_efficiency) = (Some(0.92), Some(0.65));
        let ratio = operating(&running(&study)).blowers[0].pressure_ratio;
        least = least.min(ratio);
        most = most.max(ratio);

        let mut study = blown_v8();
        blower(&mut study).drive_ratio = Some(drive_ratio);
        let answer = solve(&study).expect("a valid study");
        match &answer.draws[0].outcome {
            Outcome::Solved(solved) => {
                let found = &operating(solved).blowers[0];
                assert!(found.pressure_ratio <= 2.4 && found.speed <= 250.0);
            }
            Outcome::Refused(refusal) => {
                assert_eq!(refusal.reason, RefusalKind::PastTable, "{drive_ratio}");
                assert!(refusal.sentence.contains("table"), "{}", refusal.sentence);
                assert_eq!(refusal.elements, ["blower"]);
            }
        }
    }
    assert!(least < 1.05 && most > 3.5, "{least} to {most}");
}

/// An inlet too small for the engine is named as what chokes.
#[test]
fn an_inlet_that_chokes_is_named() {
    let mut study = blown_v8();
    let plain = blower(&mut study);
    (plain.volumetric_table, plain.isentropic_table) = (None, None);
    (plain.volumetric_efficiency, plain.isentropic_efficiency) = (Some(0.92), Some(0.65));
    plain.drive_ratio = None;
    plain.boost = Some(80_000.0);
    plain.boost_node = Some("lid front".to_owned());
    let intake = study.network.branches.iter_mut();
    for branch in intake.filter(|branch| branch.id == "intake") {
        branch.losses = vec![typed(1.0, 1.6e-3)];
    }
    let answer = solve(&study).expect("a valid study");
    let Outcome::Refused(refusal) = &answer.draws[0].outcome else {
        panic!("0.55 kg/s do not pass 16 cm2 of room air");
    };
    assert_eq!(
        refusal.reason,
        RefusalKind::SectionTooSmall,
        "{}",
        refusal.sentence
    );
    assert_eq!(refusal.elements, ["intake"]);
}

#[test]
fn limits_that_are_passed_are_told_first_of_all() {
    let mut study = blown_v8();
    let plain = blower(&mut study);
    plain.greatest_speed = Some(200.0);
    plain.drive_ratio = None;
    (plain.crank_pulley, plain.blower_pulley) = (Some(0.21), Some(0.1));
    plain.greatest_rim_speed = Some(60.0);
    let solved = running(&study);
    let found = &operating(&solved).blowers[0];
    close(found.speed, 2.1 * 108.333_333, 1e-6);
    close(
        found.rim_speed.expect("pulleys are given"),
        std::f64::consts::PI * 0.1 * found.speed,
        1e-12,
    );
    let warnings = solved.warnings.iter();
    let past: Vec<&str> = warnings
        .filter(|warning| warning.kind == WarningKind::PastLimit)
        .map(|warning| warning.field.as_str())
        .collect();
    assert_eq!(past, ["blower.greatestSpeed", "blower.greatestRimSpeed"]);
}

/// The bench begins behind the blower: blower, bypass and inlet make no difference to it.
#[test]
fn the_bench_leaves_out_what_lies_before_the_blower() {
    let study = blown_v8();
    let mut plain = study.clone();
    plain.coolers.clear();
    let upper = |id: &str| !["outside", "inlet"].contains(&id);
    plain.network.nodes.retain(|node| upper(&node.id));
    for node in &mut plain.network.nodes {
        if node.id == "upper" {
            node.kind = NodeKind::source(101_325.0, 293.15);
        }
    }
    let kept = |branch: &Branch| upper(&branch.from) && upper(&branch.to);
    plain.network.branches.retain(kept);
    for branch in &mut plain.network.branches {
        for loss in &mut branch.losses {
            if let evenport::Loss::Core { cooler, .. } = loss {
                *cooler = None;
            }
        }
    }
    plain.engine.reference = Reference::Ports;
    let (ours, wanted) = (
        solve(&study).expect("a valid study"),
        solve(&plain).expect("a valid study"),
    );
    for draw in [Draw::BenchOneAtATime, Draw::BenchAllOpen] {
        let (ours, wanted) = (
            crate::support::solved(&ours, draw),
            crate::support::solved(&wanted, draw),
        );
        for (ours, wanted) in ours.cylinders.iter().zip(&wanted.cylinders) {
            close(ours.flow, wanted.flow, 1e-12);
        }
        assert!(ours.operating.is_none() && ours.mixture.is_none());
    }
}
