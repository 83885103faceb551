//! Two bends close together: the ends of the equation, and an abstract's 10 %.

use std::f64::consts::{FRAC_PI_2, PI};

use evenport::law::bend::pair::BendPair;
use evenport::law::bend::rennels_2012;

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{derivative, invariant, no_jump, range};

const LAW: &str = "bend/pair";

fn pair(spacing_ratio: f64, twist: f64) -> BendPair {
    BendPair {
        radius_ratio: 1.5,
        angle: FRAC_PI_2,
        spacing_ratio,
        twist,
    }
}

fn coefficient(bends: &BendPair) -> f64 {
    bends.terms().coefficient(0.02).value
}

pub fn checks() -> Vec<Check> {
    let single = |angle| rennels_2012::terms(1.5, angle).coefficient(0.02).value;
    let mut checks = Vec::new();
    checks.push(invariant(
        LAW,
        "nothing between, no twist: one bend of twice the angle".to_owned(),
        single(PI),
        coefficient(&pair(0.0, 0.0)),
        1e-12,
        "rounding",
    ));
    for twist in [0.0, FRAC_PI_2, PI] {
        checks.push(Check {
            id: format!("30 diameters apart, twist {twist:.2}: two bends, less the duct between"),
            law: LAW,
            source: "Mylaram and Idem, ASHRAE winter meeting 2005, abstract at aivc.org: two elbows far apart within about 10 % of twice one".to_owned(),
            kind: Kind::Measurement,
            value: 2.0 * single(FRAC_PI_2),
            ours: coefficient(&pair(30.0, twist)) - 0.02 * 30.0,
            allowed: 0.1 * 2.0 * single(FRAC_PI_2),
            allowed_because: "the abstract's 10 %",
        });
    }
    checks.push(derivative(LAW, "K by friction factor", [0.005, 0.1], |f| {
        pair(1.0, 1.0).terms().coefficient(f)
    }));
    for twist in [0.0, FRAC_PI_2, PI] {
        let name = format!("K over spacing, twist {twist:.2}");
        checks.push(no_jump(LAW, &name, [0.0, 40.0], |spacing| {
            coefficient(&pair(spacing, twist))
        }));
    }
    checks.push(no_jump(LAW, "K over twist", [0.0, PI], |twist| {
        coefficient(&pair(0.5, twist))
    }));
    let turned = |angle| BendPair {
        angle,
        ..pair(0.0, 0.0)
    };
    checks.push(no_jump(LAW, "K over angle", [0.0, PI], |angle| {
        coefficient(&turned(angle))
    }));
    checks.push(invariant(
        LAW,
        "K at no angle and nothing between".to_owned(),
        0.0,
        coefficient(&turned(0.0)),
        0.0,
        "no bend, no loss",
    ));
    let tight = |radius_ratio| BendPair {
        radius_ratio,
        ..pair(1.0, 0.0)
    };
    for (name, bends, expected) in [
        ("inside", tight(1.0 + 1e-6), None),
        ("just too tight", tight(1.0 - 1e-6), Some("radius")),
        ("just too wide", tight(20.0 + 1e-6), Some("radius")),
        (
            "angle just too large",
            turned(FRAC_PI_2 + 1.1e-3),
            Some("angle"),
        ),
        (
            "just too far apart",
            pair(30.0 + 1e-6, 0.0),
            Some("spacing"),
        ),
    ] {
        checks.push(range(LAW, name, &bends.outside(), expected));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
