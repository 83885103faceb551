//! Smooth bend.

use std::f64::consts::PI;

use evenport::BendLaw;
use evenport::law::bend::RoundedBend;
use evenport::law::bend::rennels_2012::SCATTER;

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{derivative, invariant, no_jump, range, rows};

const LAW: &str = "bend/rennels_2012";

/// Friction factor of a smooth wall at Reynolds number 1e5, the state of the other authors' values; Colebrook,
/// fluids 1.3.1 [-].
const SMOOTH: f64 = 0.0179898;

pub fn checks() -> Vec<Check> {
    let bend = |radius_ratio, angle| RoundedBend {
        radius_ratio,
        angle,
        diameter: 0.04,
        law: BendLaw::Rennels2012,
    };
    let mut checks: Vec<Check> = rows(include_str!("../data/bend.csv"))
        .iter()
        .map(|row| {
            let ratio = row.number("radius") / row.number("diameter");
            let degrees = row.number("angle");
            let id = format!("K at r/d {ratio:.1}, {degrees} degrees");
            let at = bend(ratio, degrees.to_radians());
            match row.kind() {
                Kind::AnotherAuthor => {
                    let ours = at.terms().coefficient(SMOOTH).value;
                    row.scattered(LAW, id, ours, SCATTER.relative * ours)
                }
                _ => row.printed(
                    LAW,
                    id,
                    at.terms().coefficient(row.number("friction_factor")).value,
                ),
            }
        })
        .collect();
    checks.push(derivative(LAW, "K by friction factor", [0.005, 0.1], |f| {
        bend(1.2, 1.0).terms().coefficient(f)
    }));
    checks.push(no_jump(LAW, "K over r/d", [0.1, 25.0], |ratio| {
        bend(ratio, PI / 2.0).terms().coefficient(0.02).value
    }));
    checks.push(no_jump(LAW, "K over angle", [0.0, 1.5 * PI], |angle| {
        bend(1.0, angle).terms().coefficient(0.02).value
    }));
    let (half_turn, three) = (
        bend(3.0, PI).terms().coefficient(0.02),
        bend(3.0, 3.0 * PI).terms().coefficient(0.02),
    );
    checks.push(invariant(
        LAW,
        "K of three half turns over that of one".to_owned(),
        3.0,
        three.value / half_turn.value,
        1e-12,
        "rounding",
    ));
    let (square, sharper) = (
        bend(0.5, 1.0).terms().coefficient(0.02),
        bend(0.2, 1.0).terms().coefficient(0.02),
    );
    checks.push(invariant(
        LAW,
        "K of an edge sharper than square".to_owned(),
        square.value,
        sharper.value,
        1e-12,
        "counts as a square one",
    ));
    let straight = bend(1.0, 0.0).terms().coefficient(0.02).value;
    checks.push(invariant(
        LAW,
        "K at no angle".to_owned(),
        0.0,
        straight,
        0.0,
        "no bend, no loss",
    ));
    for (name, ratio, angle, expected) in [
        ("inside", 0.5 + 1e-6, PI - 1e-6, None),
        ("r/d just too small", 0.5 - 1e-6, 1.0, Some("radius")),
        ("r/d just too large", 20.0 + 1e-6, 1.0, Some("radius")),
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
