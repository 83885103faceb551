//! Paired draws: versions in the same possible truths.

use evenport::{
    Draw, Loss, NodeKind, PairVerdict, RoundedEntryLaw, Split, Study, Told, Worlds, deviations,
    pair_causes, read, tell,
};

use crate::evidence::{Check, Kind};
use crate::support::{Builder, typed};

const DRAWS: [Draw; 3] = [Draw::BenchOneAtATime, Draw::BenchAllOpen, Draw::Running];

fn wanted(draw: Draw, count: u32) -> Worlds {
    Worlds {
        draw,
        seed: 1,
        split: Split::AsStated,
        first: 0,
        count,
    }
}

fn told(versions: &[Study], worlds: &Worlds) -> Told {
    let found = deviations(versions, worlds).expect("valid studies");
    let cylinders = versions[0].engine.cylinders.len();
    tell(&found, versions.len(), cylinders, 0.9)
}

fn even_lid() -> Study {
    read(include_str!("../../examples/symmetric_lid/network.json")).expect("a valid example")
}

/// The lid with every section of its first runner times a factor.
fn with_first_runner(factor: f64) -> Study {
    let mut study = even_lid();
    let runner = study
        .network
        .branches
        .iter_mut()
        .find(|branch| branch.id == "runner 1")
        .expect("the runner");
    for loss in &mut runner.losses {
        match loss {
            Loss::EntryRounded { area, .. } => *area *= factor,
            Loss::Duct {
                area, perimeter, ..
            }
            | Loss::Bend {
                area, perimeter, ..
            } => {
                *area *= factor;
                *perimeter = perimeter.map(|length| length * factor.sqrt());
            }
            other => panic!("{other:?}"),
        }
    }
    study
}

#[test]
fn identical_versions_are_too_close_to_tell() {
    for draw in DRAWS {
        let pair = &told(&[even_lid(), even_lid()], &wanted(draw, 40)).pairs[0];
        assert_eq!(pair.worlds, 40, "{draw:?}");
        assert_eq!(pair.probability, 0.5, "{draw:?}");
        assert_eq!(pair.verdict, PairVerdict::TooCloseToTell, "{draw:?}");
    }
}

/// Windows of little more than a runner's section leave jets, and what the runners feel of them is so
/// uncertain that with all ports open, and running, the cut is not told for sure: 90 and 87 %.
#[test]
fn a_runner_cut_by_thirty_per_cent_is_told_from_an_even_lid_with_windows() {
    let versions = [even_lid(), with_first_runner(0.7)];
    let told = told(&versions, &wanted(Draw::BenchOneAtATime, 400));
    let pair = &told.pairs[0];
    assert_eq!(pair.worlds, 400);
    assert!(pair.probability >= 0.99, "{}", pair.probability);
    assert_eq!(pair.verdict, PairVerdict::First);
}

#[test]
fn a_runner_cut_by_thirty_per_cent_is_told_from_an_even_lid_behind_a_core() {
    let lid = |first: f64| {
        let mut builder = Builder::default();
        builder.source("blower").node("lid", NodeKind::PLENUM);
        builder.branch("core", "blower", "lid", vec![typed(60.0, 0.032)]);
        for port in 1..=8 {
            let area = if port == 1 { first } else { 1.0 } * 1.6e-3;
            let name = format!("port {port}");
            builder.port(&name);
            let losses = vec![
                Loss::EntryRounded {
                    area,
                    radius: 6e-3,
                    law: RoundedEntryLaw::default(),
                },
                Loss::Duct {
                    area,
                    perimeter: None,
                    length: 0.15,
                    roughness: 1e-4,
                },
            ];
            builder.branch(&format!("runner {port}"), "lid", &name, losses);
        }
        let mut study = builder.study(7e3);
        study.engine.speed = Some(100.0);
        study.engine.volumetric_efficiency = Some(0.95);
        study
    };
    for draw in DRAWS {
        let told = told(&[lid(1.0), lid(0.7)], &wanted(draw, 400));
        let pair = &told.pairs[0];
        assert_eq!(pair.worlds, 400, "{draw:?}");
        assert!(pair.probability >= 0.99, "{draw:?}: {}", pair.probability);
    }
}

/// Two ports by a large K each, so that nothing else counts: flows are as K to the power -1/2.
fn two_runners(names: [&str; 2], ratio: f64) -> Study {
    let mut builder = Builder::default();
    builder.source("room").port("port 1").port("port 2");
    for (place, k) in [2e4, 2e4 * ratio].into_iter().enumerate() {
        let port = format!("port {}", place + 1);
        builder.branch(names[place], "room", &port, vec![typed(k, 1e-3)]);
    }
    builder.study(2e3)
}

/// Closed forms for two runners whose K are lognormal, each with a standard deviation of s = 0.1 in its
/// logarithm, half of the variance common: the common part cancels, and the logarithm of the flow ratio is
/// that of the dimensions plus an error of standard deviation 0.1 / 2. Values of the normal distribution
/// from its printed tables.
pub fn checks() -> Vec<Check> {
    let deviation = 0.1 / 2.0;
    let flows = |log_ratio: f64| (2.0 * log_ratio).exp();
    let mut checks = Vec::new();
    let mut check = |id: &str, versions: [Study; 2], expected: f64| {
        let told = told(&versions, &wanted(Draw::BenchOneAtATime, 4000));
        checks.push(Check {
            law: "paired draws of two runners",
            source: "closed form of the probability; normal distribution, printed tables"
                .to_owned(),
            id: id.to_owned(),
            kind: Kind::ClosedForm,
            value: expected,
            ours: told.pairs[0].probability,
            allowed: 0.03,
            allowed_because: "three points, four standard errors of so many worlds",
        });
    };
    // The same places: |a + D| < |b + D| where D > -(a + b) / 2, so the probability is Phi of that over
    // the standard deviation.
    let same = ["runner 1", "runner 2"];
    for (sum, phi) in [(0.5, 0.6915), (1.0, 0.8413), (2.0, 0.9772)] {
        let (a, b) = (-0.02, 0.02 + 2.0 * sum * deviation);
        check(
            &format!("same runners, Phi({sum})"),
            [two_runners(same, flows(a)), two_runners(same, flows(b))],
            phi,
        );
    }
    // Other places: |a + D| < |b + E| with independent errors is U and V of one sign, both normal with
    // 2^(1/2) times the deviation, U = b - a + ... and V = a + b + ...
    let (u, v) = (
        1.5 * 2_f64.sqrt() * deviation,
        0.5 * 2_f64.sqrt() * deviation,
    );
    let (a, b) = ((v - u) / 2.0, (u + v) / 2.0);
    check(
        "other runners, Phi(1.5) Phi(0.5) and both below",
        [
            two_runners(same, flows(a)),
            two_runners(["runner 3", "runner 4"], flows(b)),
        ],
        0.9332 * 0.6915 + (1.0 - 0.9332) * (1.0 - 0.6915),
    );
    checks
}

#[test]
fn what_is_common_hides_nothing_and_what_is_of_the_place_all() {
    let versions = [
        two_runners(["runner 1", "runner 2"], 1.0),
        two_runners(["runner 1", "runner 2"], 1.02),
    ];
    let probability = |split: Split| {
        let worlds = Worlds {
            split,
            ..wanted(Draw::BenchOneAtATime, 400)
        };
        told(&versions, &worlds).pairs[0].probability
    };
    assert_eq!(probability(Split::AllCommon), 1.0);
    let (stated, place) = (probability(Split::AsStated), probability(Split::AllPlace));
    assert!(place < stated && stated < 0.7, "{place} {stated}");
}

#[test]
fn worlds_are_the_same_whatever_part_of_them_is_asked_for() {
    let versions = [even_lid(), with_first_runner(0.95)];
    let whole = deviations(&versions, &wanted(Draw::BenchAllOpen, 30)).expect("valid");
    let mut parts = Vec::new();
    for (first, count) in [(0, 7), (7, 20), (27, 3)] {
        let worlds = Worlds {
            first,
            count,
            ..wanted(Draw::BenchAllOpen, 0)
        };
        parts.extend(deviations(&versions, &worlds).expect("valid"));
    }
    assert_eq!(whole.len(), parts.len());
    for (whole, part) in whole.iter().zip(&parts) {
        assert!((whole - part).abs() < 1e-6, "{whole} {part}");
    }
}

/// Nobody's place moves: an added loss, another order of rows, or a branch more leave every error where it was.
#[test]
fn errors_stay_with_their_places() {
    let base = even_lid();
    let mut other = even_lid();
    other.network.branches.reverse();
    other.network.nodes.reverse();
    let pair = &told(&[base, other], &wanted(Draw::BenchOneAtATime, 25)).pairs[0];
    assert_eq!(pair.probability, 0.5);
    // A loss of nothing before the others.
    let mut with_more = even_lid();
    for branch in &mut with_more.network.branches {
        let area = match branch.losses[0] {
            Loss::EntryRounded { area, .. } => area,
            _ => continue,
        };
        branch.losses.insert(1, typed(0.0, area));
    }
    let found = deviations(&[even_lid(), with_more], &wanted(Draw::BenchOneAtATime, 25));
    let found = found.expect("valid");
    for world in found.chunks_exact(16) {
        for (one, other) in world[..8].iter().zip(&world[8..]) {
            assert!((one - other).abs() < 1e-5, "{one} {other}");
        }
    }
}

/// The law that alone differs between the versions is named first.
#[test]
fn causes_name_what_is_worth_measuring() {
    let worlds = wanted(Draw::BenchOneAtATime, 300);
    let mut screened = even_lid();
    for branch in &mut screened.network.branches {
        if branch.id == "runner 1" {
            branch.losses.insert(
                1,
                Loss::ScreenSquare {
                    area: 0.001664,
                    open_part: 0.5,
                    law: evenport::ScreenLaw::default(),
                },
            );
        }
    }
    let causes = pair_causes(&[even_lid(), screened], &worlds).expect("valid");
    assert_eq!(causes.len(), 1);
    let laws = &causes[0].laws;
    assert_eq!(laws[0].law, "screenSquare", "{laws:?}");
    assert!(laws.windows(2).all(|two| two[0].amount >= two[1].amount));
    let same = pair_causes(&[even_lid(), even_lid()], &worlds).expect("valid");
    assert!(same[0].laws.is_empty(), "{:?}", same[0].laws);
}

#[test]
fn a_version_that_is_wrong_or_has_no_answer_is_told() {
    let mut wrong = even_lid();
    wrong.network.branches[0].from = "nowhere".to_owned();
    assert!(deviations(&[even_lid(), wrong], &wanted(Draw::Running, 2)).is_err());
    let mut without_speed = even_lid();
    without_speed.engine.speed = None;
    let told = told(&[even_lid(), without_speed], &wanted(Draw::Running, 3));
    assert_eq!((told.versions[0].solved, told.versions[1].solved), (3, 0));
    assert!(told.versions[1].spread.is_none());
    assert_eq!(told.pairs[0].worlds, 0);
}
