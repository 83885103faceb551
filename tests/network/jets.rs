//! Jets in a plenum: who they favour. Directions that any observer would agree on, checked in whole networks;
//! the values behind them stand in tests/published/junction/impinging_jet_beltaos_1974.rs.

use evenport::{Draw, Loss, NodeKind, SharpEntryLaw, Study};

use crate::support::{Builder, answer, solved, typed};

/// Side of a square runner [m].
const W: f64 = 0.01;

/// A box fed through the middle of the wall opposite its five runners, at some height above them.
fn fed_from_above(height: f64, screened: bool) -> Study {
    let feed = 4.0 * W * W;
    let mut entry = vec![typed(0.5, feed)];
    if screened {
        entry = vec![Loss::Core {
            area: feed,
            fraction: 1.0,
            pressure: 101_325.0,
            temperature: 293.15,
            flow_1: 0.01,
            drop_1: 20.0,
            flow_2: 0.02,
            drop_2: 60.0,
            cooler: None,
        }];
    }
    let mut builder = Builder::default();
    builder
        .source("room")
        .node("box", NodeKind::PLENUM)
        .branch("feed", "room", "box", entry);
    for place in 0..5 {
        let port = format!("port {place}");
        let runner = vec![
            Loss::EntrySharp {
                area: W * W,
                law: SharpEntryLaw::default(),
            },
            typed(1.0, W * W),
        ];
        builder
            .port(&port)
            .branch(&format!("runner {place}"), "box", &port, runner);
    }
    let mut study = builder.study(500.0);
    for branch in &mut study.network.branches {
        if let Some(place) = branch.id.strip_prefix("runner ") {
            let place: f64 = place.parse().expect("a number");
            branch.jet_distance = Some(height);
            branch.jet_offset = Some(3.0 * W * (place - 2.0).abs());
        }
    }
    study
}

fn shares(study: &Study) -> Vec<f64> {
    let answer = answer(study);
    let cylinders = &solved(&answer, Draw::BenchAllOpen).cylinders;
    cylinders.iter().map(|one| one.share).collect()
}

#[test]
fn a_feed_through_the_middle_favours_the_runner_beneath_it() {
    let shares = shares(&fed_from_above(4.0 * W, false));
    assert!(shares[2] > shares[1] && shares[1] > shares[0], "{shares:?}");
    assert!(shares[2] > 1.02 * shares[0], "{shares:?}");
    assert!((shares[0] - shares[4]).abs() < 1e-12 && (shares[1] - shares[3]).abs() < 1e-12);
}

#[test]
fn a_far_or_screened_inlet_is_a_plain_plenum() {
    let near = shares(&fed_from_above(4.0 * W, false));
    let far = shares(&fed_from_above(60.0 * W, false));
    assert!(
        (far[2] - 0.2).abs() < 0.05 * (near[2] - 0.2),
        "{far:?} {near:?}"
    );
    for share in shares(&fed_from_above(4.0 * W, true)) {
        assert!((share - 0.2).abs() < 1e-12, "{share}");
    }
}

/// A mouth in a wall along the jet does not feel it, the one in the wall across it does.
#[test]
fn the_end_wall_feels_what_the_side_walls_do_not() {
    let mut study = fed_from_above(6.0 * W, false);
    for branch in &mut study.network.branches {
        if branch.id.starts_with("runner") && branch.id != "runner 4" {
            branch.jet_angle = Some(std::f64::consts::FRAC_PI_2);
        }
    }
    study.network.branches[5].jet_offset = None;
    let shares = shares(&study);
    assert!(shares[4] > shares[0]);
    assert!((shares[0] - shares[2]).abs() < 1e-12, "{shares:?}");
}
