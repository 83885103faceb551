//! Bench readings carried over to the study's own bench, through the gate and in the answer.

use evenport::{Reading, Study, StudyErrorKind as Kind, read_value};

use crate::support::{Builder, answer, typed};

const INCH_OF_WATER: f64 = 249.089;

fn study(readings: Vec<Reading>) -> Study {
    let mut builder = Builder::default();
    builder
        .source("room")
        .port("port")
        .branch("branch", "room", "port", vec![typed(1.0, 1e-3)]);
    let mut study = builder.study(28.0 * INCH_OF_WATER);
    study.settings.bench.readings = readings;
    study
}

fn reading(inches: f64) -> Reading {
    Reading {
        depression: inches * INCH_OF_WATER,
        flow: 0.1,
        pressure: None,
        temperature: None,
    }
}

fn near(ours: f64, wanted: f64, allowed: f64) {
    assert!((ours / wanted - 1.0).abs() < allowed, "{ours} {wanted}");
}

/// From 10 to 28 inches of water the compressible factor is 1.63208 (published.md, St Venant), the trade's 1.67332.
#[test]
fn ten_inches_become_twenty_eight() {
    let answer = answer(&study(vec![reading(10.0), reading(28.0)]));
    let [first, same] = answer.readings.as_slice() else {
        panic!("two readings");
    };
    near(first.flow, 0.163208, 5e-6);
    near(first.by_square_root, 0.1 * 2.8_f64.sqrt(), 1e-12);
    let sharp = first.sharp_edged.expect("far from choking");
    assert!(first.flow < sharp && sharp < first.by_square_root);
    assert!(!first.choked && !first.read_choked);
    for flow in [
        same.flow,
        same.by_square_root,
        same.sharp_edged.unwrap_or(0.0),
    ] {
        near(flow, 0.1, 1e-12);
    }
}

/// What a branch of the network passes at one depression, read there, is what it passes at another.
#[test]
fn a_reading_of_the_network_itself_agrees_with_it() {
    let valve = evenport::Valve {
        diameter: 0.03,
        lift: 0.006,
        discharge_coefficient: Some(0.6),
        discharge_table: Vec::new(),
        throat_diameter: None,
        stem_diameter: None,
        count: 1.0,
    };
    let mut study = study(Vec::new());
    study.network.branches[0].losses = vec![typed(0.0, 1.0)];
    if let evenport::NodeKind::Port { valve: place, .. } = &mut study.network.nodes[1].kind {
        *place = Some(valve);
    }
    let flow = |study: &Study| {
        let answer = answer(study);
        crate::support::solved(&answer, evenport::Draw::BenchAllOpen).total
    };
    let there = flow(&study);
    let mut low = study.clone();
    low.settings.bench.depression = 10.0 * INCH_OF_WATER;
    study.settings.bench.readings = vec![Reading {
        flow: flow(&low),
        ..reading(10.0)
    }];
    near(answer(&study).readings[0].flow, there, 1e-6);
}

/// Thinner, warmer air: flow goes with the pressure and one over the root of the temperature at one ratio.
#[test]
fn the_room_of_the_reading_counts() {
    let far = Reading {
        pressure: Some(0.5 * 101_325.0),
        temperature: Some(4.0 * 293.15 / 3.0),
        ..reading(14.0)
    };
    let found = &answer(&study(vec![far])).readings[0];
    near(found.flow, 0.1 * 2.0 * (4.0_f64 / 3.0).sqrt(), 1e-12);
}

#[test]
fn a_choked_bench_passes_no_more() {
    let mut study = study(vec![
        reading(28.0),
        Reading {
            depression: 8e4,
            ..reading(0.0)
        },
    ]);
    study.settings.bench.depression = 6e4;
    let answer = answer(&study);
    assert!(answer.readings[0].choked && !answer.readings[0].read_choked);
    assert!(answer.readings[1].choked && answer.readings[1].read_choked);
    assert_eq!(answer.readings[0].sharp_edged, None);
    near(answer.readings[1].flow, 0.1, 1e-12);
    assert!(answer.readings[1].by_square_root < 0.09);
}

/// A bench that blows raises the pressure before the port.
#[test]
fn blowing_is_told_from_sucking() {
    let mut study = study(vec![reading(10.0)]);
    let sucked = answer(&study).readings[0].flow;
    study.settings.bench.blowing = true;
    let blown = answer(&study).readings[0].flow;
    assert!(blown > 1.01 * sucked, "{blown} {sucked}");
}

#[test]
fn readings_without_sense_are_refused_by_row() {
    let errors = |readings: Vec<Reading>| {
        let document = serde_json::to_value(study(readings)).expect("a study is written");
        let errors = read_value(&document).expect_err("a wrong study");
        let all = errors.into_iter().map(|error| (error.kind, error.field));
        all.collect::<Vec<_>>()
    };
    let thin = Reading {
        pressure: Some(2e4),
        depression: 3e4,
        ..reading(0.0)
    };
    let field = |name: &str| format!("bench.readings[1].{name}");
    assert_eq!(
        errors(vec![reading(10.0), thin]),
        [(Kind::Contradiction, field("depression"))]
    );
    let none = Reading {
        flow: 0.0,
        ..reading(10.0)
    };
    assert_eq!(
        errors(vec![reading(10.0), none]),
        [(Kind::OutOfBounds, field("flow"))]
    );
}
