//! What was entered against CAD: volumes and smallest sections worked out by hand.

use std::f64::consts::PI;

use evenport::{CadVerdict, Compared, Entered, Leg, Loss, NodeKind, Study};

use super::support::{Builder, answer, typed};

const AREA: f64 = 1e-3;
const RUN: Option<Leg> = Some(Leg::Run);
const SIDE: Option<Leg> = Some(Leg::Side);

fn duct(area: f64, length: f64) -> Loss {
    Loss::Duct {
        area,
        perimeter: None,
        length,
        roughness: 1e-5,
    }
}

fn plenum(volume: Option<f64>, cad_volume: Option<f64>) -> NodeKind {
    NodeKind::Plenum { volume, cad_volume }
}

fn header(volume: Option<f64>, cad_volume: Option<f64>) -> NodeKind {
    NodeKind::Header {
        area: 4e-3,
        regain_dividing: None,
        regain_combining: None,
        volume,
        cad_volume,
    }
}

fn entered(study: &Study) -> Entered {
    answer(study).entered.expect("the whole was asked for")
}

fn near(value: Option<f64>, wanted: f64) {
    let value = value.expect("a value");
    assert!(
        (value - wanted).abs() < 1e-12 * wanted.abs(),
        "{value} for {wanted}"
    );
}

fn place(port: &Compared) -> (&str, &str, Option<u32>) {
    (&port.nodes[0], &port.element, port.loss)
}

fn holds(compared: &Compared, entered: f64, verdict: CadVerdict) {
    near(compared.entered, entered);
    assert_eq!(compared.verdict, verdict);
}

/// A box between the room and one port, and a way of these losses from it to the port.
fn boxed(kind: NodeKind, losses: Vec<Loss>) -> Study {
    let mut builder = Builder::default();
    builder.source("room").node("lid", kind).port("port");
    builder.branch("inlet", "room", "lid", vec![typed(1.0, 5e-3)]);
    builder.branch("runner", "lid", "port", losses);
    builder.study(5_000.0)
}

#[test]
fn ducts_bends_and_cones_enclose_their_own_length() {
    let losses = vec![
        Loss::EntrySharp {
            area: 4e-3,
            law: Default::default(),
        },
        duct(4e-3, 0.1),
        Loss::GradualChange {
            area_from: 4e-3,
            area_to: 1e-3,
            length: 0.3,
            law: Default::default(),
        },
        Loss::Bend {
            area: AREA,
            perimeter: None,
            angle: PI / 2.0,
            radius: 0.06,
            roughness: 1e-5,
            law: Default::default(),
        },
        typed(0.1, AREA),
    ];
    let found = entered(&boxed(plenum(Some(2e-3), None), losses));
    // A frustum of 40 and 10 cm2, 30 cm high: 10 (40 + 10 + 20) cm3. A bend of 6 cm: 10 cm2 times 9.4248 cm.
    let runner = 4e-4 + 7e-4 + 0.06 * PI / 2.0 * 1e-3;
    holds(&found.total, runner + 2e-3, CadVerdict::NoCad);
    assert_eq!(found.chambers.len(), 1);
    holds(&found.chambers[0], 2e-3, CadVerdict::NoCad);
    assert_eq!(found.chambers[0].difference, None);
    // The cone is the first that has it; what follows is as small.
    assert_eq!(place(&found.ports[0]), ("port", "runner", Some(2)));
    holds(&found.ports[0], AREA, CadVerdict::NoCad);
}

#[test]
fn a_difference_counts_beyond_the_tolerance_and_two_per_cent_when_none_is_given() {
    let check = |cad: f64, tolerance: Option<f64>| {
        let mut study = boxed(plenum(Some(2e-3), Some(cad)), vec![duct(AREA, 0.1)]);
        study.settings.check.tolerance = tolerance;
        let found = entered(&study);
        let volume = found.chambers.into_iter().next().expect("the lid");
        (volume, found.tolerance)
    };
    let (close, tolerance) = check(2.03e-3, None);
    assert_eq!((close.verdict, tolerance), (CadVerdict::Agrees, 0.02));
    near(close.difference, -0.03 / 2.03);
    assert_eq!(check(2.03e-3, Some(0.01)).0.verdict, CadVerdict::Differs);
    assert_eq!(check(2.05e-3, None).0.verdict, CadVerdict::Differs);
    let (larger, _) = check(1.9e-3, None);
    assert_eq!(larger.verdict, CadVerdict::Differs);
    near(larger.difference, 0.1 / 1.9);
    assert_eq!(check(2.05e-3, Some(0.05)).0.verdict, CadVerdict::Agrees);
}

#[test]
fn a_chamber_of_which_nothing_is_entered_is_told_and_spoils_the_total() {
    let mut study = boxed(plenum(None, Some(2e-3)), vec![duct(AREA, 0.1)]);
    study.settings.check.total_volume = Some(2.1e-3);
    let found = entered(&study);
    let lid = &found.chambers[0];
    assert_eq!((lid.entered, lid.difference), (None, None));
    assert_eq!(lid.verdict, CadVerdict::NothingEntered);
    holds(&found.total, 1e-4, CadVerdict::Incomplete);
    assert_eq!(found.total.difference, None);
    study.network.nodes[1].kind = plenum(Some(2e-3), Some(2e-3));
    let found = entered(&study);
    holds(&found.total, 2.1e-3, CadVerdict::Agrees);
    holds(&found.chambers[0], 2e-3, CadVerdict::Agrees);
}

/// Three headers in a row, fed at one end, and a fourth by itself behind a side leg of the second.
fn row() -> Study {
    let mut builder = Builder::default();
    builder.source("room");
    builder.node("a", header(Some(1e-4), Some(2e-3)));
    builder.node("b", header(None, None));
    builder.node("c", header(Some(3e-4), Some(5e-4)));
    builder.node("apart", header(None, Some(1e-3)));
    for port in ["p1", "p2", "p3", "p4"] {
        builder.port(port);
    }
    let at = |node, leg| (node, leg);
    builder.legs(
        "inlet",
        at("room", None),
        at("a", RUN),
        vec![duct(4e-3, 0.2)],
    );
    builder.legs("ab", at("a", RUN), at("b", RUN), vec![duct(4e-3, 0.25)]);
    builder.legs(
        "cb",
        at("c", RUN),
        at("b", RUN),
        vec![duct(4e-3, 0.15), typed(0.1, 4e-3)],
    );
    builder.legs(
        "bridge",
        at("b", SIDE),
        at("apart", RUN),
        vec![duct(2e-3, 0.1)],
    );
    for (runner, from, port) in [
        ("r1", "a", "p1"),
        ("r2", "b", "p2"),
        ("r3", "c", "p3"),
        ("r4", "apart", "p4"),
    ] {
        builder.legs(
            runner,
            at(from, SIDE),
            at(port, None),
            vec![duct(AREA, 0.1)],
        );
    }
    builder.study(5_000.0)
}

#[test]
fn headers_in_one_run_are_a_chamber_with_the_ducts_between_them() {
    let mut study = row();
    study.settings.check.total_volume = Some(3.4e-3);
    let found = entered(&study);
    let ids: Vec<Vec<String>> = found
        .chambers
        .iter()
        .map(|each| each.nodes.clone())
        .collect();
    assert_eq!(ids, [vec!["a", "b", "c"], vec!["apart"]]);
    // 100 and 300 cm3 typed, ducts of 40 cm2 over 25 and 15 cm; CAD gives 2,000 and 500.
    let volume = &found.chambers[0];
    holds(volume, 2e-3, CadVerdict::Differs);
    near(volume.cad, 2.5e-3);
    near(volume.difference, -0.2);
    assert_eq!(found.chambers[1].verdict, CadVerdict::NothingEntered);
    // With the inlet's 800, the bridge's 200 and four runners of 100 cm3, each once.
    holds(&found.total, 3.4e-3, CadVerdict::Incomplete);
    study.network.nodes[4].kind = header(Some(0.0), None);
    holds(&entered(&study).total, 3.4e-3, CadVerdict::Agrees);
}

#[test]
fn of_ways_side_by_side_the_widest_counts() {
    let mut builder = Builder::default();
    builder.source("room").node("lid", plenum(Some(1e-3), None));
    builder
        .node("pocket", NodeKind::PLENUM)
        .port("port")
        .port("other");
    builder.branch("inlet", "room", "lid", vec![typed(1.0, 9e-3)]);
    // The wide way narrows in its middle to 15 cm2, the short one has 12 cm2 throughout.
    builder.branch("short", "lid", "pocket", vec![duct(1.2e-3, 0.05)]);
    builder.branch(
        "wide",
        "lid",
        "pocket",
        vec![duct(8e-3, 0.05), typed(0.5, 1.5e-3), duct(8e-3, 0.1)],
    );
    builder.branch("runner", "pocket", "port", vec![duct(2e-3, 0.1)]);
    builder.branch(
        "thin",
        "pocket",
        "other",
        vec![duct(2e-3, 0.1), typed(0.1, 5e-4)],
    );
    let mut study = builder.study(5_000.0);
    let NodeKind::Port { cad_section, .. } = &mut study.network.nodes[3].kind else {
        panic!("a port");
    };
    *cad_section = Some(1.2e-3);
    let found = entered(&study);
    assert_eq!(place(&found.ports[0]), ("port", "wide", Some(1)));
    holds(&found.ports[0], 1.5e-3, CadVerdict::Differs);
    near(found.ports[0].difference, 0.25);
    assert_eq!(place(&found.ports[1]), ("other", "thin", Some(1)));
    holds(&found.ports[1], 5e-4, CadVerdict::NoCad);
}

#[test]
fn around_a_loop_and_from_several_sources_air_takes_the_wider_way() {
    let mut builder = Builder::default();
    builder.source("left").source("right");
    for node in ["west", "north", "east"] {
        builder.node(node, plenum(Some(1e-3), None));
    }
    builder.port("port");
    builder.branch("feed", "left", "west", vec![typed(1.0, 2e-3)]);
    builder.branch("leak", "right", "east", vec![typed(1.0, 1e-3)]);
    builder.branch("direct", "west", "east", vec![duct(1.4e-3, 0.1)]);
    builder.branch("round 1", "west", "north", vec![duct(1.8e-3, 0.1)]);
    builder.branch(
        "round 2",
        "east",
        "north",
        vec![duct(3e-3, 0.1), typed(0.1, 1.6e-3)],
    );
    builder.branch("runner", "east", "port", vec![duct(5e-3, 0.1)]);
    let found = entered(&builder.study(5_000.0));
    assert_eq!(place(&found.ports[0]), ("port", "round 2", Some(1)));
    near(found.ports[0].entered, 1.6e-3);
    // A wide way from the other source betters it.
    builder.branch("gate", "right", "east", vec![typed(1.0, 4e-3)]);
    let found = entered(&builder.study(5_000.0));
    assert_eq!(place(&found.ports[0]), ("port", "gate", Some(0)));
}

#[test]
fn openings_count_by_their_hole_throttles_wide_open_and_junctions_by_their_legs() {
    let opening = Loss::Opening {
        area: 2e-3,
        discharge_coefficient: 0.6,
        area_from: None,
        area_to: Some(1.9e-3),
        thickness: None,
    };
    let lid = || plenum(Some(1e-3), None);
    let found = entered(&boxed(lid(), vec![opening, duct(1.9e-3, 0.1)]));
    holds(&found.ports[0], 1.9e-3, CadVerdict::NoCad);
    assert_eq!(found.ports[0].loss, Some(0));
    let throttle = Loss::Throttle {
        diameter: 0.05,
        angle: 0.3,
        closed_angle: 0.1,
        shaft_diameter: 0.0,
        discharge_coefficient: 0.8,
    };
    let found = entered(&boxed(lid(), vec![duct(5e-3, 0.1), throttle]));
    near(found.ports[0].entered, PI / 4.0 * 0.05 * 0.05);
    assert_eq!(found.ports[0].loss, Some(1));
    // The run of these headers, 40 cm2, is all that a duct of 50 cm2 between them gives air to pass.
    let mut study = row();
    study.network.branches[0].losses = vec![duct(5e-3, 0.2)];
    for runner in &mut study.network.branches[4..] {
        runner.losses = vec![duct(6e-3, 0.1)];
    }
    let found = entered(&study);
    assert_eq!(place(&found.ports[0]), ("p1", "a", None));
    near(found.ports[0].entered, 4e-3);
    assert_eq!(place(&found.ports[3]), ("p4", "bridge", Some(0)));
}
