//! What the scatter of a tee's coefficients does to a split, from two equations for one tee.

use evenport::law::junction::{Geometry, combining, dividing, scatter, scatter_combining};
use evenport::{Draw, JunctionLaw, Leg, NodeKind};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, solved, typed};

const AREA: f64 = 2e-3;
const DEPRESSION: f64 = 0.1;
/// Typed losses of the run leg and of the side leg, and of a branch beside the tee [-].
const TYPED: [f64; 3] = [0.9, 0.6, 1.4];
const LAWS: [JunctionLaw; 5] = [
    JunctionLaw::Bassett2001,
    JunctionLaw::Idelchik,
    JunctionLaw::Rennels2012,
    JunctionLaw::Gardel1957,
    JunctionLaw::CraneTp410,
];
const ROUNDING: &str = "1e-5 of it: compressibility at 0.1 Pa and the finite difference";

fn geometry() -> Geometry {
    Geometry {
        area_ratio: 1.0,
        angle: std::f64::consts::FRAC_PI_2,
    }
}

/// The first cylinder's deviation with the run's and the side's coefficient shifted, from both legs' balances.
fn deviation(law: JunctionLaw, divides: bool, shifts: [f64; 2]) -> f64 {
    let own = if divides { 1.0 } else { 0.0 };
    let falls = |q: f64| {
        let both = if divides {
            dividing(law, &geometry(), q)
        } else {
            combining(law, &geometry(), q)
        };
        let run = both.run.value + shifts[0] + (TYPED[0] + own) * (1.0 - q).powi(2);
        let side = both.side.value + shifts[1] + (TYPED[1] + own) * q * q;
        (run, side)
    };
    let (mut low, mut high) = (0.02, 0.98);
    for _ in 0..60 {
        let q = 0.5 * (low + high);
        let (run, side) = falls(q);
        if side < run { low = q } else { high = q }
    }
    if divides {
        // Run and side are the two cylinders.
        return 2.0 * (1.0 - low) - 1.0;
    }
    // The tee feeds one cylinder, the branch beside it the other.
    let (tee, beside) = (
        (falls(low).0 + 1.0).sqrt().recip(),
        (TYPED[2] + 1.0).sqrt().recip(),
    );
    2.0 * tee / (tee + beside) - 1.0
}

/// Half of the variance of the two coefficients is common to both.
fn expected(law: JunctionLaw, divides: bool) -> f64 {
    let by = |shifts: fn(f64) -> [f64; 2]| {
        let step = 1e-5;
        (deviation(law, divides, shifts(step)) - deviation(law, divides, shifts(-step)))
            / (2.0 * step)
    };
    let (run, side) = (by(|x| [x, 0.0]), by(|x| [0.0, x]));
    let sigma = if divides {
        scatter(law)
    } else {
        scatter_combining(law)
    };
    1.96 * sigma * (0.5 * (run + side).powi(2) + 0.5 * (run * run + side * side)).sqrt()
}

/// What the program says the tee adds to the first cylinder's doubt.
fn answered(law: JunctionLaw, divides: bool) -> f64 {
    let mut builder = Builder::default();
    let kind = NodeKind::Tee {
        area: AREA,
        side_area: AREA,
        law,
    };
    let (run, side) = (("tee", Some(Leg::Run)), ("tee", Some(Leg::Side)));
    let loss = |leg: usize| vec![typed(TYPED[leg], AREA)];
    builder
        .source("room")
        .node("tee", kind)
        .port("first")
        .port("second");
    let plain = vec![typed(0.0, AREA)];
    if divides {
        builder
            .legs("inlet", ("room", None), run, plain)
            .legs("run", run, ("first", None), loss(0))
            .legs("side", side, ("second", None), loss(1));
    } else {
        builder
            .legs("run", ("room", None), run, loss(0))
            .legs("side", ("room", None), side, loss(1))
            .legs("outlet", run, ("first", None), plain)
            .branch("beside", "room", "second", loss(2));
    }
    let answer = answer(&builder.study(DEPRESSION));
    let causes = &solved(&answer, Draw::BenchAllOpen).cylinders[0].doubt_causes;
    let tee = causes.iter().find(|cause| cause.law == "tee");
    tee.expect("a tee's doubt").amount
}

pub fn checks() -> Vec<Check> {
    let check = |law: JunctionLaw, divides: bool| {
        let value = expected(law, divides);
        Check {
            id: format!(
                "doubt of a tee, {law:?}, {}",
                if divides { "dividing" } else { "combining" }
            ),
            law: "doubt",
            source: "both legs' balances with shifted coefficients, times the author's scatter"
                .to_owned(),
            kind: Kind::Invariant,
            value,
            ours: answered(law, divides),
            allowed: 1e-5 * value,
            allowed_because: ROUNDING,
        }
    };
    let both = |law| [check(law, true), check(law, false)];
    LAWS.into_iter().flat_map(both).collect()
}

#[test]
fn a_tees_doubt_follows_its_scatter() {
    assert_all(&checks());
}
