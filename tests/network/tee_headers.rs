//! Headers made of tees, with published tee coefficients, against a march along the header.

use evenport::{JunctionLaw, Leg, NodeKind};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, shares, typed};

const RUNNER: f64 = 1e-3;
/// Low enough that the air is incompressible to a part in 10,000 [Pa].
const DEPRESSION: f64 = 20.0;

/// Flow of each runner over the mean, for a header of `ratio` runner areas.
fn over_mean(law: Option<JunctionLaw>, count: usize, ratio: f64) -> Vec<f64> {
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
        builder.node("stub", NodeKind::Plenum {});
        builder.legs(
            "stub run",
            (&last, Some(Leg::Run)),
            ("stub", None),
            vec![typed(0.0, area)],
        );
    }
    shares(&builder.study(DEPRESSION))
        .iter()
        .map(|share| share * count as f64)
        .collect()
}

/// Name, author, header over runner area, source, flows over the mean.
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
            &[0.8265, 0.9644, 1.0707, 1.1383],
        ),
        (
            "TEE-BERN-6",
            None,
            6.0,
            bernoulli,
            &[0.8068, 0.9045, 0.9884, 1.0564, 1.1065, 1.1374],
        ),
        (
            "TEE-BAS-4a",
            Some(JunctionLaw::Bassett2001),
            4.0,
            bassett,
            &[0.9283, 1.0010, 1.0358, 1.0349],
        ),
        (
            "TEE-BAS-4b",
            Some(JunctionLaw::Bassett2001),
            2.0,
            bassett,
            &[0.4890, 0.9419, 1.2305, 1.3387],
        ),
        (
            "TEE-GAR-4",
            Some(JunctionLaw::Gardel1957),
            4.0,
            gardel,
            &[0.8669, 0.9739, 1.0550, 1.1042],
        ),
    ];
    cases
        .iter()
        .flat_map(|(name, law, ratio, source, values)| {
            let ours = over_mean(*law, values.len(), *ratio);
            values
                .iter()
                .zip(ours)
                .enumerate()
                .map(|(runner, (value, ours))| Check {
                    id: format!("{name} runner {} over mean", runner + 1),
                    law: if law.is_some() { "tee" } else { "header" },
                    source: (*source).to_owned(),
                    kind: Kind::ClosedForm,
                    value: *value,
                    ours,
                    allowed: 3e-4,
                    allowed_because: "printed to 4 digits; compressibility at 20 Pa adds 1e-4",
                })
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn tee_headers_follow_the_march() {
    assert_all(&checks());
}
