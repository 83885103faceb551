//! Continuous headers: many runners off a header against the closed forms of the header equation.

use std::f64::consts::SQRT_2;

use evenport::{Leg, NodeKind};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, shares, typed};

/// Runners in the whole header; the discretisation error then is below 0.0004 of the total.
const RUNNERS: usize = 240;
const DISCRETISATION: &str =
    "finite runners against the continuous header; falls with their number";
/// Low enough that the air is incompressible to a part in 10,000 [Pa].
const DEPRESSION: f64 = 20.0;
const HEADER_AREA: f64 = 1e-3;
const DISCHARGE: f64 = 0.6;

/// A header with equal runners; dividing from the source, or combining towards a port at its end.
struct Case {
    name: &'static str,
    /// C n a / A [-].
    m: f64,
    beta: f64,
    strips: usize,
    combining: bool,
    source: &'static str,
    kind: Kind,
}

/// Strip fractions of the program's discrete header.
fn strips(case: &Case) -> Vec<f64> {
    let runner_area = case.m * HEADER_AREA / (DISCHARGE * RUNNERS as f64);
    // 1/C^2 velocity heads in all, of which the end takes one.
    let runner = || vec![typed(1.0 / (DISCHARGE * DISCHARGE) - 1.0, runner_area)];
    let run = || vec![typed(0.0, HEADER_AREA)];
    let mut builder = Builder::default();
    builder.source("room");
    for place in 0..RUNNERS {
        let kind = NodeKind::Header {
            area: HEADER_AREA,
            regain_dividing: Some(case.beta),
            regain_combining: Some(case.beta),
        };
        builder.node(&format!("header {place}"), kind);
    }
    for place in 0..RUNNERS {
        let here = format!("header {place}");
        if place > 0 {
            let before = format!("header {}", place - 1);
            builder.legs(
                &format!("run {place}"),
                (&before, Some(Leg::Run)),
                (&here, Some(Leg::Run)),
                run(),
            );
        }
        if case.combining {
            builder.legs(
                &format!("runner {place}"),
                ("room", None),
                (&here, Some(Leg::Side)),
                runner(),
            );
        } else {
            let port = format!("port {place}");
            builder.port(&port);
            builder.legs(
                &format!("runner {place}"),
                (&here, Some(Leg::Side)),
                (&port, None),
                runner(),
            );
        }
    }
    if case.combining {
        let last = format!("header {}", RUNNERS - 1);
        builder.port("outlet").legs(
            "outlet run",
            (&last, Some(Leg::Run)),
            ("outlet", None),
            run(),
        );
    } else {
        builder.legs(
            "inlet run",
            ("room", None),
            ("header 0", Some(Leg::Run)),
            run(),
        );
    }
    let study = builder.study(DEPRESSION);
    let runners: Vec<f64> = if case.combining {
        let answer = crate::support::answer(&study);
        let solved = crate::support::solved(&answer, evenport::Draw::BenchAllOpen);
        let flows = solved
            .branches
            .iter()
            .filter(|branch| branch.branch.starts_with("runner"));
        let flows: Vec<f64> = flows.map(|branch| branch.flow).collect();
        let total: f64 = flows.iter().sum();
        flows.iter().map(|flow| flow / total).collect()
    } else {
        shares(&study)
    };
    runners
        .chunks(RUNNERS / case.strips)
        .map(|strip| strip.iter().sum())
        .collect()
}

/// [sin m(1-a) - sin m(1-b)] / sin m dividing, [sinh m b - sinh m a] / sinh m combining, m = M sqrt(2 beta).
fn closed_form(case: &Case) -> Vec<f64> {
    let m = case.m * (2.0 * case.beta).sqrt();
    (0..case.strips)
        .map(|strip| {
            let (a, b) = (
                strip as f64 / case.strips as f64,
                (strip + 1) as f64 / case.strips as f64,
            );
            if case.combining {
                ((m * b).sinh() - (m * a).sinh()) / m.sinh()
            } else {
                ((m * (1.0 - a)).sin() - (m * (1.0 - b)).sin()) / m.sin()
            }
        })
        .collect()
}

pub fn checks() -> Vec<Check> {
    let dividing = "frictionless dividing header, Acrivos, Babcock and Pigford 1959, Chem. Eng. Sci. 10:112-124";
    let combining =
        "frictionless combining header, same equation with the sign of the momentum term reversed";
    let case = |name, m, beta, strips, combines| Case {
        name,
        m,
        beta,
        strips,
        combining: combines,
        source: if combines { combining } else { dividing },
        kind: Kind::ClosedForm,
    };
    let cases = [
        case("DIV-N4-m0.3", 0.3, 0.5, 4, false),
        case("DIV-N4-m0.9", 0.9, 0.5, 4, false),
        case("DIV-N6-m0.5", 0.5, 0.5, 6, false),
        case("DIV-N8-m1.4", 1.4, 0.5, 8, false),
        case("DIV full momentum", 0.9 / SQRT_2, 1.0, 4, false),
        case("COM-N4-m0.6", 0.6 / SQRT_2, 1.0, 4, true),
        case("COM-N6-m1.0", 1.0 / SQRT_2, 1.0, 6, true),
        case("COM-N6-m1.8", 1.8 / SQRT_2, 1.0, 6, true),
    ];
    cases
        .iter()
        .flat_map(|case| {
            let ours = strips(case);
            closed_form(case)
                .into_iter()
                .zip(ours)
                .enumerate()
                .map(|(strip, (value, ours))| Check {
                    id: format!("{} strip {}", case.name, strip + 1),
                    law: "header",
                    source: case.source.to_owned(),
                    kind: case.kind,
                    value,
                    ours,
                    allowed: 1e-3,
                    allowed_because: DISCRETISATION,
                })
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn continuous_headers_follow_the_closed_forms() {
    assert_all(&checks());
}
