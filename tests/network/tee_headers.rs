//! Headers made of tees, with published tee coefficients, against a march along the header.

use evenport::{Draw, JunctionLaw, Leg, NodeKind};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, solved, typed};

const RUNNER: f64 = 1e-3;
/// Low enough that the air is incompressible to a part in a million [Pa].
const DEPRESSION: f64 = 0.1;
/// Density [kg/m3] and depression [Pa] of the march.
const MARCHED: [f64; 2] = [1.2, 2_000.0];

/// Volume flow of each runner at the march's density and depression, for a header of `ratio` runner areas [m3/s].
fn volume_flows(law: Option<JunctionLaw>, count: usize, ratio: f64) -> Vec<f64> {
    let area = ratio * RUNNER;
    let mut builder = Builder::default();
    builder.source("room");
    for place in 0..count {
        let kind = match law {
            Some(law) => NodeKind::Tee {
                area,
                side_area: RUNNER,
                law,
            },
            None => NodeKind::Header {
                area,
                regain_dividing: Some(0.5),
                regain_combining: None,
                volume: None,
                cad_volume: None,
            },
        };
        builder
            .node(&format!("tee {place}"), kind)
            .port(&format!("port {place}"));
    }
    for place in 0..count {
        let here = format!("tee {place}");
        let before = format!("tee {}", place.wrapping_sub(1));
        let from = if place == 0 {
            ("room", None)
        } else {
            (before.as_str(), Some(Leg::Run))
        };
        builder.legs(
            &format!("run {place}"),
            from,
            (&here, Some(Leg::Run)),
            vec![typed(0.0, area)],
        );
        // 1.5 velocity heads of the runner in all, of which its end takes one.
        let port = format!("port {place}");
        builder.legs(
            &format!("runner {place}"),
            (&here, Some(Leg::Side)),
            (&port, None),
            vec![typed(0.5, RUNNER)],
        );
    }
    if law.is_some() {
        // The last runner is a tee whose run goes on to a closed stub.
        let last = format!("tee {}", count - 1);
        builder.node("stub", NodeKind::PLENUM);
        builder.legs(
            "stub run",
            (&last, Some(Leg::Run)),
            ("stub", None),
            vec![typed(0.0, area)],
        );
    }
    let study = builder.study(DEPRESSION);
    let bench = &study.settings.bench;
    let density = evenport::gas::density(bench.ambient_pressure, bench.ambient_temperature);
    // Incompressible flow goes as the root of depression over density.
    let scale = (MARCHED[1] / MARCHED[0]).sqrt() / (density * DEPRESSION).sqrt();
    let answer = answer(&study);
    let cylinders = solved(&answer, Draw::BenchAllOpen).cylinders.iter();
    cylinders.map(|cylinder| cylinder.flow * scale).collect()
}

/// Name, author, header over runner area, source, volume flows [m3/s].
type Case<'a> = (&'a str, Option<JunctionLaw>, f64, &'a str, &'a [f64]);

pub fn checks() -> Vec<Check> {
    let bernoulli =
        "Bernoulli header, K_run 0 and K_branch 1, marched by bracketing (scipy 1.17 brentq)";
    let bassett =
        "Bassett, Winterbone and Pearson 2001 tees, marched by bracketing (scipy 1.17 brentq)";
    let gardel =
        "Gardel 1957 tees (formula from memory), marched by bracketing (scipy 1.17 brentq)";
    let cases: [Case<'_>; 5] = [
        (
            "TEE-BERN-4",
            None,
            4.0,
            bernoulli,
            &[0.0335358, 0.0391326, 0.043445, 0.046188],
        ),
        (
            "TEE-BERN-6",
            None,
            6.0,
            bernoulli,
            &[
                0.0331337, 0.0371469, 0.0405927, 0.0433825, 0.0454419, 0.0467099,
            ],
        ),
        (
            "TEE-BAS-4a",
            Some(JunctionLaw::Bassett2001),
            4.0,
            bassett,
            &[0.0342843, 0.0369662, 0.0382517, 0.0382201],
        ),
        (
            "TEE-BAS-4b",
            Some(JunctionLaw::Bassett2001),
            2.0,
            bassett,
            &[0.0143902, 0.0277161, 0.0362098, 0.0393929],
        ),
        (
            "TEE-GAR-4",
            Some(JunctionLaw::Gardel1957),
            4.0,
            gardel,
            &[0.0324538, 0.0364612, 0.039494, 0.0413368],
        ),
    ];
    cases
        .iter()
        .flat_map(|(name, law, ratio, source, values)| {
            let ours = volume_flows(*law, values.len(), *ratio);
            values
                .iter()
                .zip(ours)
                .enumerate()
                .map(|(runner, (value, ours))| Check {
                    id: format!("{name} runner {} [m3/s]", runner + 1),
                    law: if law.is_some() { "tee" } else { "header" },
                    source: (*source).to_owned(),
                    kind: Kind::ClosedForm,
                    value: *value,
                    ours,
                    allowed: 5e-8 + 2e-6 * value,
                    allowed_because: "half of the last printed digit, and 2e-6 of it: compressibility at 0.1 Pa",
                })
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn tee_headers_follow_the_march() {
    assert_all(&checks());
}
