//! Bend, Idelchik.

use std::f64::consts::{FRAC_PI_2, PI};

use evenport::BendLaw;
use evenport::law::bend::RoundedBend;
use evenport::law::bend::idelchik::SCATTER;

use crate::evidence::{Check, assert_all};
use crate::support::{PRINTED, derivative, invariant, no_jump, range, rows};

const LAW: &str = "bend/idelchik";

/// Friction factor of a smooth wall at Reynolds number 1e5, the state of the other authors' values; Colebrook,
/// fluids 1.3.1 [-].
const SMOOTH: f64 = 0.0179898;

fn bend(radius_ratio: f64, angle: f64) -> RoundedBend {
    RoundedBend {
        radius_ratio,
        angle,
        diameter: 0.04,
        law: BendLaw::Idelchik,
    }
}

fn local(radius_ratio: f64, angle: f64) -> f64 {
    bend(radius_ratio, angle).terms().fixed
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/bend_idelchik.csv"))
        .iter()
        .map(|row| {
            let (ratio, degrees) = (row.number("ratio"), row.number("angle"));
            let angle = degrees.to_radians();
            let what = row.text("what");
            let id = format!("{what} K at r/d {ratio}, {degrees} degrees");
            let half = row.number("half");
            match what {
                "turn" => {
                    let ours = local(ratio, angle) / local(ratio, FRAC_PI_2);
                    row.within(LAW, id, ours, half, PRINTED)
                }
                "local" => row.within(LAW, id, local(ratio, angle), half, PRINTED),
                _ => {
                    let ours = bend(ratio, angle).terms().coefficient(SMOOTH).value;
                    row.scattered(LAW, id, ours, SCATTER.relative * ours)
                }
            }
        })
        .collect();
    checks.push(derivative(LAW, "K by friction factor", [0.005, 0.1], |f| {
        bend(1.2, 1.0).terms().coefficient(f)
    }));
    let at = |ratio, angle| bend(ratio, angle).terms().coefficient(0.02).value;
    checks.push(no_jump(LAW, "K over r/d", [0.1, 25.0], |ratio| {
        at(ratio, FRAC_PI_2)
    }));
    checks.push(no_jump(LAW, "K over r/d near 1", [0.97, 1.03], |ratio| {
        at(ratio, FRAC_PI_2)
    }));
    checks.push(no_jump(LAW, "K over angle", [0.0, 1.5 * PI], |angle| {
        at(1.0, angle)
    }));
    checks.push(invariant(
        LAW,
        "K at no angle".to_owned(),
        0.0,
        at(1.0, 0.0),
        0.0,
        "no bend, no loss",
    ));
    for (name, ratio, angle, expected) in [
        ("inside", 0.5 + 1e-6, PI - 1e-6, None),
        ("r/d just too small", 0.5 - 1e-6, 1.0, Some("radius")),
        ("r/d just too large", 3.0 + 1e-6, 1.0, Some("radius")),
        ("angle just too large", 1.0, PI + 1e-6, Some("angle")),
    ] {
        checks.push(range(LAW, name, &bend(ratio, angle).outside(), expected));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
