//! Splits computed in three dimensions (large-eddy lattice-Boltzmann, own computation, unpublished):
//! they rank runners and give shares to about the stated band; they are no source for losses.
//!
//! The program must agree within that band plus its own doubt: its laws are not tuned to these cases.

use evenport::{Draw, Leg, Loss, NodeKind, Study};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, solved};

/// Side of a square runner [m]; with the depression below its Reynolds number is about 7,500.
const W: f64 = 0.010;
const DEPRESSION: f64 = 180.0;
const SOURCE: &str =
    "three-dimensional reference, large-eddy lattice-Boltzmann, 36 cells a side, unpublished";

fn duct(width: f64, height: f64, length: f64) -> Loss {
    Loss::Duct {
        area: width * height,
        perimeter: Some(2.0 * (width + height)),
        length,
        roughness: 0.0,
    }
}

fn runner() -> Vec<Loss> {
    vec![
        Loss::EntrySharp {
            area: W * W,
            law: Default::default(),
        },
        duct(W, W, 6.0 * W),
    ]
}

/// A header of given heights above its four runners, stepped midway between them.
fn header(heights: [f64; 4]) -> Study {
    let mut builder = Builder::default();
    builder.source("room");
    for (place, height) in heights.iter().enumerate() {
        let kind = NodeKind::Header {
            area: 2.0 * W * height,
            regain_dividing: None,
            regain_combining: None,
            volume: None,
            cad_volume: None,
        };
        builder
            .node(&format!("take-off {place}"), kind)
            .port(&format!("port {place}"));
        let here = format!("take-off {place}");
        let port = format!("port {place}");
        builder.legs(
            &format!("runner {place}"),
            (&here, Some(Leg::Side)),
            (&port, None),
            runner(),
        );
        if place == 0 {
            let inlet = vec![duct(2.0 * W, *height, 6.0 * W)];
            builder.legs("inlet", ("room", None), (&here, Some(Leg::Run)), inlet);
        } else {
            let before = heights[place - 1];
            let mut way = vec![duct(2.0 * W, before, 1.5 * W)];
            if before != *height {
                way.push(Loss::SuddenChange {
                    area_from: 2.0 * W * before,
                    area_to: 2.0 * W * height,
                    law: Default::default(),
                });
            }
            way.push(duct(2.0 * W, *height, 1.5 * W));
            let last = format!("take-off {}", place - 1);
            builder.legs(
                &format!("run {place}"),
                (&last, Some(Leg::Run)),
                (&here, Some(Leg::Run)),
                way,
            );
        }
    }
    builder.study(DEPRESSION)
}

/// A box plenum fed through the middle of one end.
fn plenum() -> Study {
    let mut builder = Builder::default();
    builder.source("room").node("box", NodeKind::PLENUM);
    builder.branch(
        "inlet",
        "room",
        "box",
        vec![duct(2.0 * W, 2.0 * W, 6.0 * W)],
    );
    for place in 0..4 {
        let port = format!("port {place}");
        builder
            .port(&port)
            .branch(&format!("runner {place}"), "box", &port, runner());
    }
    let mut study = builder.study(DEPRESSION);
    // The runners' mouths lie in the floor, along the jet, 2 W below its axis.
    for (place, branch) in study.network.branches.iter_mut().skip(1).enumerate() {
        branch.jet_distance = Some((2.0 + 3.0 * place as f64) * W);
        branch.jet_offset = Some(2.0 * W);
        branch.jet_angle = Some(std::f64::consts::FRAC_PI_2);
    }
    study
}

pub fn checks() -> Vec<Check> {
    let cases = [
        (
            "A straight header",
            header([2.0 * W; 4]),
            [0.2201, 0.2460, 0.2613, 0.2725],
            0.006,
        ),
        (
            "C stepped header",
            header([2.0 * W, 1.5 * W, W, 0.5 * W]),
            [0.2589, 0.2638, 0.2568, 0.2205],
            0.008,
        ),
        (
            "E box plenum",
            plenum(),
            [0.2326, 0.2683, 0.2511, 0.2480],
            0.012,
        ),
    ];
    cases
        .iter()
        .flat_map(|(name, study, shares, trust)| {
            let answer = answer(study);
            let cylinders = &solved(&answer, Draw::BenchAllOpen).cylinders;
            shares
                .iter()
                .zip(cylinders)
                .map(|(share, cylinder)| Check {
                    id: format!("{name}, runner {}", cylinder.cylinder),
                    law: "network",
                    source: SOURCE.to_owned(),
                    kind: Kind::ThreeDimensionalReference,
                    value: *share,
                    ours: cylinder.share,
                    allowed: trust + cylinder.doubt / 4.0,
                    allowed_because: "the reference's trust band plus the program's own doubt",
                })
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn splits_agree_within_trust_and_doubt() {
    assert_all(&checks());
}

/// The doubt may not be so wide that any answer would pass.
#[test]
fn the_doubt_is_no_excuse() {
    for check in checks() {
        assert!(
            check.allowed < 0.06,
            "{}: allowed {}",
            check.id,
            check.allowed
        );
    }
}

/// In the straight header the order of the runners is the reference's, whatever the doubt.
#[test]
fn the_straight_header_ranks_its_runners() {
    let ours: Vec<f64> = checks().iter().take(4).map(|check| check.ours).collect();
    assert!(ours.windows(2).all(|pair| pair[0] < pair[1]), "{ours:?}");
}
