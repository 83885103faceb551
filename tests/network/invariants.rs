//! What must hold for every network, whatever its numbers.

use evenport::{
    ConeLaw, Draw, Leg, Loss, NodeKind, Reference, ScheduleLaw, Station, StationBend, StepLaw,
    Study,
};

use crate::support::{Builder, answer, solved, typed};

const AREA: f64 = 1.2e-3;

fn runner(k: f64) -> Vec<Loss> {
    vec![
        typed(k, AREA),
        Loss::Duct {
            area: AREA,
            perimeter: None,
            length: 0.15,
            roughness: 5e-5,
        },
    ]
}

/// A plenum with runners of the given coefficients.
fn plenum(coefficients: &[f64]) -> Study {
    let mut builder = Builder::default();
    builder.source("room").node("box", NodeKind::PLENUM);
    builder.branch("neck", "room", "box", vec![typed(0.5, 6e-3)]);
    for (place, k) in coefficients.iter().enumerate() {
        let port = format!("port {place}");
        builder
            .port(&port)
            .branch(&format!("runner {place}"), "box", &port, runner(*k));
    }
    builder.study(7_000.0)
}

fn complete(mut study: Study) -> Study {
    study.engine.speed = Some(100.0);
    study.engine.volumetric_efficiency = Some(1.0);
    study.engine.reference = Reference::Node {
        node: "box".to_owned(),
    };
    study
}

#[test]
fn identical_runners_get_identical_shares() {
    for count in [2, 3, 8] {
        let study = complete(plenum(&vec![0.7; count]));
        let answer = answer(&study);
        for draw in [
            Draw::BenchAllOpen,
            Draw::BenchOneAtATime,
            Draw::CycleMean,
            Draw::Running,
        ] {
            let spread = solved(&answer, draw).spread;
            assert!(spread < 1e-12, "{draw:?} with {count}: {spread}");
        }
    }
}

#[test]
fn nothing_depends_on_the_order_of_rows() {
    let study = complete(plenum(&[0.4, 0.7, 1.1, 0.6]));
    let mut turned = study.clone();
    turned.network.nodes.reverse();
    turned.network.branches.reverse();
    let (first, second) = (answer(&study), answer(&turned));
    for draw in [Draw::BenchAllOpen, Draw::Running] {
        let pairs = solved(&first, draw)
            .cylinders
            .iter()
            .zip(&solved(&second, draw).cylinders);
        for (a, b) in pairs {
            assert!(
                (a.share - b.share).abs() < 1e-12,
                "{draw:?} cylinder {}",
                a.cylinder
            );
            assert!(
                (a.doubt - b.doubt).abs() < 1e-9,
                "{draw:?} cylinder {}",
                a.cylinder
            );
        }
    }
}

/// Two boxes, between them every loss that is not alike both ways; `turned` draws that branch from its other end.
fn drawn(turned: bool, scheduled: bool) -> Study {
    let (wide, narrow) = (4e-3, 2e-3);
    let either = |from: f64, to: f64| if turned { (to, from) } else { (from, to) };
    let sudden = |from: f64, to: f64| {
        let (area_from, area_to) = either(from, to);
        let law = StepLaw::default();
        Loss::SuddenChange {
            area_from,
            area_to,
            law,
        }
    };
    let gradual = |from: f64, to: f64| {
        let (area_from, area_to) = either(from, to);
        Loss::GradualChange {
            area_from,
            area_to,
            length: 0.05,
            law: ConeLaw::default(),
        }
    };
    let opening = |from: Option<f64>, to: Option<f64>| Loss::Opening {
        area: 1.8e-3,
        discharge_coefficient: 0.65,
        area_from: if turned { to } else { from },
        area_to: if turned { from } else { to },
        thickness: None,
    };
    let station = |at: f64, area: f64| Station {
        at,
        area,
        perimeter: None,
    };
    let mut stations = vec![
        station(0.0, narrow),
        station(0.1, wide),
        station(0.2, narrow),
        station(0.25, 1.5 * narrow),
    ];
    let mut bends = vec![StationBend {
        at: 0.05,
        angle: 1.0,
        radius: 0.1,
    }];
    if turned {
        stations.reverse();
        stations
            .iter_mut()
            .for_each(|station| station.at = 0.25 - station.at);
        bends[0].at = 0.25 - bends[0].at;
    }
    let schedule = Loss::Schedule {
        roughness: 5e-5,
        stations,
        bends,
        law: ScheduleLaw::default(),
    };
    let mut losses = vec![
        sudden(wide, narrow),
        gradual(narrow, wide),
        gradual(wide, narrow),
        opening(Some(narrow), None),
        sudden(1.5 * narrow, wide),
    ];
    if scheduled {
        losses.push(schedule);
    }
    let mut builder = Builder::default();
    builder
        .source("room")
        .node("box", NodeKind::PLENUM)
        .node("far", NodeKind::PLENUM)
        .port("near port")
        .port("far port")
        .branch("neck", "room", "box", vec![typed(0.5, 6e-3)])
        .branch("near runner", "box", "near port", runner(0.5))
        .branch("far runner", "far", "far port", runner(0.5));
    if turned {
        losses.reverse();
        builder.branch("between", "far", "box", losses);
    } else {
        builder.branch("between", "box", "far", losses);
    }
    complete(builder.study(7_000.0))
}

#[test]
fn nothing_depends_on_which_way_a_branch_is_drawn() {
    // Within a step of a schedule friction, bend and change of section come one after the other.
    for (scheduled, allowed) in [(false, 1e-12), (true, 1e-7)] {
        let [one, other] = [false, true].map(|turned| answer(&drawn(turned, scheduled)));
        for draw in [
            Draw::BenchAllOpen,
            Draw::BenchOneAtATime,
            Draw::CycleMean,
            Draw::Running,
        ] {
            let (one, other) = (solved(&one, draw), solved(&other, draw));
            for (a, b) in one.cylinders.iter().zip(&other.cylinders) {
                let at = format!("{draw:?} cylinder {}", a.cylinder);
                let off = (a.share - b.share).abs();
                assert!(off < allowed, "{at}: {} {}", a.share, b.share);
                let off = (a.doubt - b.doubt).abs();
                assert!(off < allowed.max(1e-9), "{at}: {} {}", a.doubt, b.doubt);
            }
        }
    }
}

/// Half as much loss again in one runner is about 10 % on the bench and about 1.2 % while running.
#[test]
fn the_bench_shows_far_more_than_the_running_engine() {
    let answer = answer(&complete(plenum(&[1.0, 1.0, 1.0, 2.2])));
    let bench = solved(&answer, Draw::BenchOneAtATime).spread;
    let running = solved(&answer, Draw::Running).spread;
    assert!(bench > 5.0 * running, "{bench} {running}");
}

#[test]
fn budgets_and_gaps_add_up() {
    let answer = answer(&complete(plenum(&[0.4, 0.7, 1.1, 0.6])));
    for draw in [
        Draw::BenchAllOpen,
        Draw::BenchOneAtATime,
        Draw::Running,
        Draw::CycleMean,
    ] {
        let solved = solved(&answer, draw);
        for path in &solved.paths {
            let sum: f64 = path.items.iter().map(|item| item.fall).sum();
            assert!(
                (sum - path.fall).abs() < 1e-6,
                "{draw:?} {}: {sum} {}",
                path.port,
                path.fall
            );
        }
        let gap = solved.gap.as_ref().expect("a gap");
        let sum: f64 = gap.parts.iter().map(|part| part.amount).sum();
        assert!(
            (sum - gap.total).abs() <= 1e-9 * gap.total.abs(),
            "{draw:?}: {sum} {}",
            gap.total
        );
    }
}

/// The doubt rests on exact sensitivities: a typed coefficient moved by hand moves the share as they say.
#[test]
fn doubt_follows_a_finite_difference() {
    let shares = |k: f64| -> Vec<f64> {
        let mut study = complete(plenum(&[k, 0.8]));
        // Only the first runner's typed coefficient is uncertain enough to matter.
        for branch in &mut study.network.branches {
            branch
                .losses
                .retain(|loss| matches!(loss, Loss::TypedK { .. }));
        }
        let answer = answer(&study);
        [Draw::BenchAllOpen, Draw::Running]
            .iter()
            .map(|draw| solved(&answer, *draw).cylinders[0].deviation)
            .collect()
    };
    let (k, step) = (0.8, 1e-4);
    let (high, low) = (shares(k * (1.0 + step)), shares(k * (1.0 - step)));
    let study = {
        let mut study = complete(plenum(&[k, 0.8]));
        for branch in &mut study.network.branches {
            branch
                .losses
                .retain(|loss| matches!(loss, Loss::TypedK { .. }));
        }
        study
    };
    let answer = answer(&study);
    for (place, draw) in [Draw::BenchAllOpen, Draw::Running].iter().enumerate() {
        let by_log_k = (high[place] - low[place]) / (2.0 * step);
        // Two equal runners: common parts cancel, place parts (half the variance, 10 %) add as squares.
        let expected = 1.96 * 0.1 * 0.5_f64.sqrt() * by_log_k.abs() * 2.0_f64.sqrt();
        let causes = &solved(&answer, *draw).cylinders[0].doubt_causes;
        let typed = causes
            .iter()
            .find(|cause| cause.law == "typedK")
            .expect("typedK");
        assert!(
            (typed.amount / expected - 1.0).abs() < 1e-3,
            "{draw:?}: {} {expected}",
            typed.amount
        );
    }
}

#[test]
fn a_balance_tube_between_equals_carries_nothing_and_harms_nothing() {
    let mut builder = Builder::default();
    builder.source("room");
    for place in 0..2 {
        let (pocket, port) = (format!("pocket {place}"), format!("port {place}"));
        builder.node(&pocket, NodeKind::PLENUM).port(&port);
        builder.branch(
            &format!("neck {place}"),
            "room",
            &pocket,
            vec![typed(0.5, 2e-3)],
        );
        builder.branch(&format!("runner {place}"), &pocket, &port, runner(0.5));
    }
    builder.branch("tube", "pocket 0", "pocket 1", vec![typed(1.5, 1e-4)]);
    let answer = answer(&builder.study(7_000.0));
    let solved = solved(&answer, Draw::BenchAllOpen);
    let tube = solved
        .branches
        .iter()
        .find(|branch| branch.branch == "tube")
        .expect("the tube");
    assert!(tube.flow.abs() < 1e-12 * solved.total, "{}", tube.flow);
    assert!(solved.spread < 1e-12);
}

#[test]
fn sections_over_four_decades_meet_in_one_network() {
    let mut builder = Builder::default();
    builder.source("room").node("box", NodeKind::PLENUM);
    builder.branch("neck", "room", "box", vec![typed(0.1, 1e-2)]);
    for (place, area) in [1e-6, 1e-4, 1e-2].iter().enumerate() {
        let port = format!("port {place}");
        let losses = vec![
            typed(0.5, *area),
            Loss::Duct {
                area: *area,
                perimeter: None,
                length: 0.1,
                roughness: 1e-5,
            },
        ];
        builder
            .port(&port)
            .branch(&format!("runner {place}"), "box", &port, losses);
    }
    let answer = answer(&builder.study(7_000.0));
    let solved = solved(&answer, Draw::BenchAllOpen);
    assert!(solved.certificate.closure <= 1e-9);
    assert!(
        solved.cylinders[0].flow > 0.0
            && solved.cylinders[0].flow < 1e-3 * solved.cylinders[1].flow * 100.0
    );
}

/// A choked nozzle passes what ISO 9300's ideal critical flow function says, and the excess is a shock.
#[test]
fn a_choked_runner_passes_its_critical_flow_and_names_the_shock() {
    let mut builder = Builder::default();
    builder.source("room").port("port 0").port("port 1");
    builder.branch(
        "nozzle",
        "room",
        "port 0",
        vec![Loss::Opening {
            area: 1e-4,
            discharge_coefficient: 0.97,
            area_from: None,
            area_to: None,
            thickness: None,
        }],
    );
    builder.branch(
        "twin",
        "room",
        "port 1",
        vec![Loss::Opening {
            area: 1e-4,
            discharge_coefficient: 0.97,
            area_from: None,
            area_to: None,
            thickness: None,
        }],
    );
    let answer = answer(&builder.study(60_000.0));
    let solved = solved(&answer, Draw::BenchAllOpen);
    let expected = 0.684731 * 0.97e-4 * 101_325.0 / (287.05_f64 * 293.15).sqrt();
    assert!(
        (solved.cylinders[0].flow / expected - 1.0).abs() < 2e-6,
        "{} {expected}",
        solved.cylinders[0].flow
    );
    assert!(solved.branches[0].choked);
    let path = &solved.paths[0];
    assert!(
        path.items
            .iter()
            .any(|item| item.label.contains("shock") && item.fall > 0.0),
        "{path:?}"
    );
    let sum: f64 = path.items.iter().map(|item| item.fall).sum();
    assert!((sum - path.fall).abs() < 1e-6);
}

/// An engine that asks for more than a section passes is refused, with the section and a speed it can feed.
#[test]
fn an_engine_too_large_for_its_neck_is_refused_by_name() {
    let mut study = complete(plenum(&[0.5, 0.5]));
    study.network.branches[0].losses = vec![typed(0.1, 4e-4)];
    study.engine.reference = Reference::Ambient;
    study.engine.volumetric_efficiency = Some(5.0);
    let refused = answer(&study);
    let evenport::Outcome::Refused(refusal) = &refused.draws[0].outcome else {
        panic!("not refused")
    };
    assert_eq!(
        refusal.reason,
        evenport::RefusalKind::SectionTooSmall,
        "{}",
        refusal.sentence
    );
    assert_eq!(refusal.elements, ["neck"]);
    let speed = refusal.greatest_speed.expect("a speed");
    // At that speed it solves, a little above it does not.
    study.engine.speed = Some(speed * 0.99);
    assert!(matches!(
        answer(&study).draws[0].outcome,
        evenport::Outcome::Solved(_)
    ));
    study.engine.speed = Some(speed * 1.02);
    assert!(matches!(
        answer(&study).draws[0].outcome,
        evenport::Outcome::Refused(_)
    ));
}

/// The side leg of a tee swept through zero flow: shares follow without a jump.
#[test]
fn a_tee_leg_goes_through_zero_without_a_jump() {
    let share = |k: f64| {
        let mut builder = Builder::default();
        builder.source("left").source("right").node(
            "tee",
            NodeKind::Tee {
                area: 2e-3,
                side_area: 1e-3,
                law: Default::default(),
            },
        );
        builder
            .port("port 0")
            .port("port 1")
            .node("box", NodeKind::PLENUM);
        builder.legs(
            "left run",
            ("left", None),
            ("tee", Some(Leg::Run)),
            vec![typed(0.5, 2e-3)],
        );
        builder.branch("right neck", "right", "box", vec![typed(k, 2e-3)]);
        builder.legs(
            "side",
            ("tee", Some(Leg::Side)),
            ("box", None),
            vec![typed(0.5, 1e-3)],
        );
        builder.legs(
            "right run",
            ("tee", Some(Leg::Run)),
            ("port 0", None),
            vec![typed(0.5, 2e-3)],
        );
        builder.branch("runner", "box", "port 1", vec![typed(0.5, 1e-3)]);
        let answer = answer(&builder.study(7_000.0));
        let solved = solved(&answer, Draw::BenchAllOpen);
        let side = solved
            .branches
            .iter()
            .find(|branch| branch.branch == "side")
            .expect("the side leg")
            .flow;
        (side, solved.cylinders[0].share)
    };
    let sweep: Vec<(f64, f64)> = (0..400)
        .map(|step| share(0.05 * 1.02_f64.powi(step)))
        .collect();
    assert!(
        sweep[0].0 < 0.0 && sweep[399].0 > 0.0,
        "{:?} {:?}",
        sweep[0],
        sweep[399]
    );
    let largest = sweep
        .windows(2)
        .map(|pair| (pair[1].1 - pair[0].1).abs())
        .fold(0.0, f64::max);
    let usual = (sweep[399].1 - sweep[0].1).abs() / 399.0;
    assert!(largest < 20.0 * usual.max(1e-4), "{largest} {usual}");
}

/// Our own arithmetic: velocity over the speed of sound at the static temperature is the Mach number.
#[test]
fn velocity_belongs_to_the_mach_number() {
    let mut study = complete(plenum(&[0.5, 0.5]));
    study.settings.bench.depression = 60_000.0;
    let answer = answer(&study);
    let solved = solved(&answer, Draw::BenchAllOpen);
    for branch in &solved.branches {
        let temperature = study.settings.bench.ambient_temperature;
        let still = temperature / (1.0 + 0.2 * branch.mach * branch.mach);
        let sound = (1.4 * 287.05 * still).sqrt();
        assert!(branch.mach > 0.1);
        assert!((branch.velocity / sound - branch.mach).abs() < 1e-12);
    }
}
