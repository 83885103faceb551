//! The doubt's sensitivities through headers, tees and jets against the answer's own finite differences.
//!
//! They rest on the derivative of every leg's loss with every leg's flow, so a wrong one shows here.

use evenport::law::junction::header_momentum::{SCATTER_COMBINING, SCATTER_DIVIDING};
use evenport::law::junction::plenum_jet::PLENUM_JET_SCATTER;
use evenport::{Draw, JunctionLaw, Leg, Loss, NodeKind, Study};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, solved, typed};

pub const RUN: f64 = 2e-3;
pub const SIDE: f64 = 1.2e-3;
pub const DEPRESSION: f64 = 3_000.0;
/// Typed coefficients are uncertain by 10 %; a band is 1.96 deviations.
const TYPED: f64 = 0.1;
const BAND: f64 = 1.96;
const STEP: f64 = 1e-4;
const BENCH: Draw = Draw::BenchAllOpen;
const DIFFERENCE: &str = "1e-5 of it and of the largest: the finite difference's own error";

pub const RUN_LEG: Option<Leg> = Some(Leg::Run);
pub const SIDE_LEG: Option<Leg> = Some(Leg::Side);

/// Deviation of each cylinder.
fn deviations(study: &Study, draw: Draw) -> Vec<f64> {
    let answer = answer(study);
    let cylinders = &solved(&answer, draw).cylinders;
    cylinders.iter().map(|one| one.deviation).collect()
}

/// Derivative of each deviation with a number of the study.
fn slopes(study: impl Fn(f64) -> Study, draw: Draw) -> Vec<f64> {
    let at = |x: f64| deviations(&study(x), draw);
    let (high, low) = (at(STEP), at(-STEP));
    let pairs = high.iter().zip(&low);
    pairs.map(|(a, b)| (a - b) / (2.0 * STEP)).collect()
}

/// What one law's scatter does to each deviation, as answered.
fn amounts(study: &Study, draw: Draw, law: &str) -> Vec<f64> {
    let answer = answer(study);
    let cylinders = solved(&answer, draw).cylinders.iter();
    cylinders
        .map(|one| {
            let cause = one.doubt_causes.iter().find(|cause| cause.law == law);
            cause.map_or(0.0, |cause| cause.amount)
        })
        .collect()
}

fn compare(name: &str, expected: &[f64], ours: &[f64]) -> Vec<Check> {
    let largest = expected.iter().copied().fold(0.0, f64::max);
    let pairs = expected.iter().zip(ours).enumerate();
    pairs
        .map(|(cylinder, (value, ours))| Check {
            id: format!("doubt from {name}, cylinder {}", cylinder + 1),
            law: "doubt",
            source: "finite difference of the answer".to_owned(),
            kind: Kind::Invariant,
            value: *value,
            ours: *ours,
            allowed: 1e-5 * value + 1e-5 * largest,
            allowed_because: DIFFERENCE,
        })
        .collect()
}

/// A study with one typed coefficient, as a function of that coefficient.
pub type Network = (String, Draw, Box<dyn Fn(f64) -> Study>);

/// One coefficient, uncertain at one place only.
pub fn typed_checks((name, draw, study): &Network) -> Vec<Check> {
    let k = 0.8;
    let by_log = slopes(|x| study(k * (1.0 + x)), *draw);
    let expected: Vec<f64> = by_log
        .iter()
        .map(|slope| BAND * TYPED * slope.abs())
        .collect();
    compare(
        &format!("K, {name}"),
        &expected,
        &amounts(&study(k), *draw, "typedK"),
    )
}

/// A header fed through one run leg, another run leg and two side legs leaving; `k` in the first side leg.
fn dividing_header(k: f64, regain: f64) -> Study {
    let mut builder = Builder::default();
    builder.source("room").port("end").port("near").port("far");
    let kind = NodeKind::Header {
        area: RUN,
        regain_dividing: Some(regain),
        regain_combining: None,
        volume: None,
        cad_volume: None,
    };
    builder.node("header", kind);
    let (run, side) = (("header", RUN_LEG), ("header", SIDE_LEG));
    builder
        .legs("inlet", ("room", None), run, vec![typed(0.0, RUN)])
        .legs("outlet", run, ("end", None), vec![duct(RUN)])
        .legs("first", side, ("near", None), vec![typed(k, SIDE)])
        .legs(
            "second",
            side,
            ("far", None),
            vec![Loss::EntrySharp {
                area: SIDE,
                law: Default::default(),
            }],
        );
    builder.study(DEPRESSION)
}

/// A header that two side legs feed and both run ends leave; `k` in one side leg, `l` in one run end.
fn combining_header(k: f64, regain: f64) -> Study {
    let mut builder = Builder::default();
    builder
        .source("room")
        .port("left")
        .port("right")
        .port("apart");
    let kind = NodeKind::Header {
        area: RUN,
        regain_dividing: None,
        regain_combining: Some(regain),
        volume: None,
        cad_volume: None,
    };
    builder.node("header", kind).node("box", NodeKind::PLENUM);
    let (run, side) = (("header", RUN_LEG), ("header", SIDE_LEG));
    builder
        .branch(
            "neck",
            "room",
            "box",
            vec![Loss::EntrySharp {
                area: RUN,
                law: Default::default(),
            }],
        )
        .legs("feed", ("box", None), side, vec![typed(k, SIDE)])
        .legs("second feed", ("room", None), side, vec![duct(SIDE)])
        .branch(
            "apart runner",
            "box",
            "apart",
            vec![Loss::EntrySharp {
                area: SIDE,
                law: Default::default(),
            }],
        )
        .legs("left end", run, ("left", None), vec![typed(0.0, RUN)])
        .legs(
            "right end",
            run,
            ("right", None),
            vec![duct(0.5 * RUN), duct(RUN)],
        );
    builder.study(DEPRESSION)
}

/// A header whose side leg brings air while the port at its run's end is open, and takes air, beside the run, for the
/// port behind both.
fn two_way_header(dividing: f64, combining: f64) -> Study {
    let mut builder = Builder::default();
    let kind = NodeKind::Header {
        area: RUN,
        regain_dividing: Some(dividing),
        regain_combining: Some(combining),
        volume: None,
        cad_volume: None,
    };
    builder
        .source("room")
        .port("at the end")
        .port("behind")
        .node("box", NodeKind::PLENUM)
        .node("end", NodeKind::PLENUM)
        .node("header", kind);
    let (run, side) = (("header", RUN_LEG), ("header", SIDE_LEG));
    builder
        .legs("inlet", ("room", None), run, vec![duct(RUN)])
        .legs("outlet", run, ("end", None), vec![duct(RUN)])
        .branch("end runner", "end", "at the end", vec![duct(RUN)])
        .branch("round", "end", "box", vec![duct(SIDE)])
        .legs("across", side, ("box", None), vec![typed(0.5, SIDE)])
        .branch("neck", "room", "box", vec![duct(SIDE)])
        .branch("runner", "box", "behind", vec![duct(RUN)]);
    builder.study(DEPRESSION)
}

pub fn duct(area: f64) -> Loss {
    Loss::Duct {
        area,
        perimeter: None,
        length: 0.5,
        roughness: 5e-5,
    }
}

/// A tee whose legs (run, run, side) bring air or lead to ports. The first that brings air comes from a box that
/// feeds a port of its own, through the coefficient, so that the parts vary with it.
fn tee(law: JunctionLaw, brings: [bool; 3], k: f64) -> Study {
    let mut builder = Builder::default();
    let kind = NodeKind::Tee {
        area: RUN,
        side_area: SIDE,
        law,
    };
    let entry = |area| {
        vec![Loss::EntrySharp {
            area,
            law: Default::default(),
        }]
    };
    builder
        .source("room")
        .node("box", NodeKind::PLENUM)
        .port("beside")
        .node("tee", kind);
    builder.branch("neck", "room", "box", entry(RUN)).branch(
        "runner",
        "box",
        "beside",
        entry(SIDE),
    );
    let first = brings.iter().position(|brings| *brings);
    for (leg, brings) in brings.into_iter().enumerate() {
        let (id, port) = (format!("leg {leg}"), format!("port {leg}"));
        let (area, at) = match leg {
            2 => (SIDE, ("tee", SIDE_LEG)),
            _ => (RUN, ("tee", RUN_LEG)),
        };
        if Some(leg) == first {
            builder.legs(&id, ("box", None), at, vec![typed(k, area)]);
        } else if brings {
            builder.legs(&id, ("room", None), at, vec![duct(area)]);
        } else {
            builder
                .port(&port)
                .legs(&id, at, (&port, None), vec![duct(area)]);
        }
    }
    builder.study(DEPRESSION)
}

/// A plenum whose two runners feel parts of the head that enters; `k` in the first.
fn plenum(k: f64, fractions: [f64; 2]) -> Study {
    let mut builder = Builder::default();
    builder
        .source("room")
        .node("box", NodeKind::PLENUM)
        .port("near")
        .port("far");
    builder
        .branch("neck", "room", "box", vec![duct(RUN)])
        .branch("near runner", "box", "near", vec![typed(k, SIDE)])
        .branch(
            "far runner",
            "box",
            "far",
            vec![Loss::EntrySharp {
                area: SIDE,
                law: Default::default(),
            }],
        );
    let mut study = builder.study(DEPRESSION);
    for (runner, fraction) in fractions.into_iter().enumerate() {
        study.network.branches[runner + 1].jet_fraction = Some(fraction);
    }
    study
}

fn networks() -> Vec<Network> {
    let mut networks: Vec<Network> = vec![
        (
            "header dividing".to_owned(),
            BENCH,
            Box::new(|k| dividing_header(k, 0.6)),
        ),
        (
            "header combining".to_owned(),
            BENCH,
            Box::new(|k| combining_header(k, 0.8)),
        ),
        (
            "plenum with jets".to_owned(),
            BENCH,
            Box::new(|k| plenum(k, [0.4, -0.2])),
        ),
    ];
    let laws = [
        JunctionLaw::Bassett2001,
        JunctionLaw::Idelchik,
        JunctionLaw::Rennels2012,
        JunctionLaw::Gardel1957,
        JunctionLaw::CraneTp410,
    ];
    let patterns = [
        [true, false, false],
        [false, true, false],
        [false, false, true],
        [true, false, true],
        [false, true, true],
        [true, true, false],
    ];
    for law in laws {
        for brings in patterns {
            let name = format!("{law:?} tee, legs that bring air {brings:?}");
            networks.push((name, BENCH, Box::new(move |k| tee(law, brings, k))));
        }
    }
    networks
}

/// The regain factor of the only header.
fn regain_checks() -> Vec<Check> {
    let of = |name, scatter: f64, study: fn(f64, f64) -> Study, regain: f64| {
        let slopes = slopes(|x| study(0.8, regain + x), BENCH);
        let expected: Vec<f64> = slopes
            .iter()
            .map(|slope| BAND * scatter * slope.abs())
            .collect();
        compare(
            name,
            &expected,
            &amounts(&study(0.8, regain), BENCH, "header"),
        )
    };
    let mut checks = of(
        "regain, header dividing",
        SCATTER_DIVIDING,
        dividing_header,
        0.6,
    );
    let combining = of(
        "regain, header combining",
        SCATTER_COMBINING,
        combining_header,
        0.8,
    );
    checks.extend(combining);
    // One number, off by as much as it scatters in the draw of each port.
    let draw = Draw::BenchOneAtATime;
    let (dividing, combining) = (0.6, 0.8);
    let slopes = slopes(
        |x| {
            two_way_header(
                dividing + SCATTER_DIVIDING * x,
                combining + SCATTER_COMBINING * x,
            )
        },
        draw,
    );
    let expected: Vec<f64> = slopes.iter().map(|slope| BAND * slope.abs()).collect();
    let ours = amounts(&two_way_header(dividing, combining), draw, "header");
    checks.extend(compare("regain, header both ways", &expected, &ours));
    checks
}

/// Both runners' jet fractions: half of the variance is common to them.
fn jet_checks() -> Vec<Check> {
    let fractions = [0.4, -0.2];
    let by = |runner: usize| {
        let at = |x: f64| {
            let mut moved = fractions;
            moved[runner] += x;
            plenum(0.8, moved)
        };
        slopes(at, BENCH)
    };
    let (near, far) = (by(0), by(1));
    let expected: Vec<f64> = near
        .iter()
        .zip(&far)
        .map(|(a, b)| {
            let variance = 0.5 * (a + b).powi(2) + 0.5 * (a * a + b * b);
            BAND * PLENUM_JET_SCATTER * variance.sqrt()
        })
        .collect();
    let ours = amounts(&plenum(0.8, fractions), BENCH, "plenum");
    compare("jet fractions, plenum", &expected, &ours)
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = networks().iter().flat_map(typed_checks).collect();
    checks.extend(regain_checks());
    checks.extend(jet_checks());
    checks
}

#[test]
fn doubts_follow_finite_differences_through_junctions() {
    assert_all(&checks());
}
