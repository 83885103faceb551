//! Continuous headers without friction: closed forms of the header equation.

use std::f64::consts::SQRT_2;

use evenport::{Leg, NodeKind};

use crate::continuous_header::{Case, Header};
use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, shares, typed};

const DIVIDING: &str =
    "frictionless dividing header, Acrivos, Babcock and Pigford 1959, Chem. Eng. Sci. 10:112-124";
const COMBINING: &str =
    "frictionless combining header, same equation with the sign of the momentum term reversed";

/// Strip fractions [sin m(1-a) - sin m(1-b)] / sin m dividing, [sinh m b - sinh m a] / sinh m combining,
/// m = M sqrt(2 beta).
fn closed_form(header: &Header, strips: usize) -> Vec<f64> {
    let m = header.m * (2.0 * header.beta).sqrt();
    let carried = |x: f64| {
        if header.combining {
            (m * x).sinh() / m.sinh()
        } else {
            1.0 - (m * (1.0 - x)).sin() / m.sin()
        }
    };
    let edge = |strip: usize| strip as f64 / strips as f64;
    (0..strips)
        .map(|strip| carried(edge(strip + 1)) - carried(edge(strip)))
        .collect()
}

pub fn checks() -> Vec<Check> {
    let cases = [
        ("DIV-N4-m0.3", 0.3, 0.5, 4, false),
        ("DIV-N4-m0.9", 0.9, 0.5, 4, false),
        ("DIV-N4-m1.2", 1.2, 0.5, 4, false),
        ("DIV-N6-m0.5", 0.5, 0.5, 6, false),
        ("DIV-N6-m1.0", 1.0, 0.5, 6, false),
        ("DIV-N8-m1.4", 1.4, 0.5, 8, false),
        ("DIV full momentum", 0.9 / SQRT_2, 1.0, 4, false),
        ("COM-N4-m0.6", 0.6 / SQRT_2, 1.0, 4, true),
        ("COM-N6-m1.0", 1.0 / SQRT_2, 1.0, 6, true),
        ("COM-N6-m1.8", 1.8 / SQRT_2, 1.0, 6, true),
    ];
    let continuous = cases.iter().flat_map(|(name, m, beta, strips, combining)| {
        let header = Header {
            m: *m,
            beta: *beta,
            friction: 0.0,
            combining: *combining,
        };
        Case {
            name,
            header,
            source: if *combining { COMBINING } else { DIVIDING },
            kind: Kind::ClosedForm,
            strips: &closed_form(&header, *strips),
            ends: None,
        }
        .checks()
    });
    continuous.chain(default_checks()).collect()
}

/// Splits of a header with no factor typed, against one with the factors that a new header is said to have.
fn default_checks() -> Vec<Check> {
    let split = |factors: [Option<f64>; 2], combining: bool| {
        let [regain_dividing, regain_combining] = factors;
        let kind = NodeKind::Header {
            area: 1e-3,
            regain_dividing,
            regain_combining,
            volume: None,
            cad_volume: None,
        };
        let loss = |k| vec![typed(k, 1e-3)];
        let (run, side) = (("header", Some(Leg::Run)), ("header", Some(Leg::Side)));
        let mut builder = Builder::default();
        builder
            .source("room")
            .node("header", kind)
            .port("first")
            .port("second");
        if combining {
            builder
                .legs("feed", ("room", None), side, loss(0.5))
                .legs("through", ("room", None), run, loss(0.5))
                .legs("outlet", run, ("first", None), loss(0.2))
                .branch("beside", "room", "second", loss(1.0));
        } else {
            builder
                .legs("inlet", ("room", None), run, loss(0.0))
                .legs("first runner", side, ("first", None), loss(0.5))
                .legs("second runner", run, ("second", None), loss(0.5));
        }
        shares(&builder.study(1.0))[0]
    };
    [("dividing", [Some(0.5), None], false), ("combining", [None, Some(1.0)], true)]
        .into_iter()
        .map(|(name, factors, combining)| Check {
            id: format!("share with the default regain factor, {name}"),
            law: "header",
            source: "0.5 dividing and 1 combining, ideal and full momentum (Acrivos, Babcock and Pigford 1959)".to_owned(),
            kind: Kind::Invariant,
            value: split(factors, combining),
            ours: split([None, None], combining),
            allowed: 1e-12,
            allowed_because: "rounding",
        })
        .collect()
}

#[test]
fn continuous_headers_follow_the_closed_forms() {
    assert_all(&checks());
}
