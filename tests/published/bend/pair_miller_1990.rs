//! Two bends close together: Miller's table, Miller's own half turn, and an abstract's 10 %.

use std::f64::consts::{FRAC_PI_2, PI};

use evenport::law::bend::pair_miller_1990::BendPair;
use evenport::law::bend::rennels_2012;

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{derivative, invariant, no_jump, range, rows};

const LAW: &str = "bend/pair_miller_1990";

/// The part of the scatter that belongs to the factor [-].
const OF_FACTOR: f64 = 0.15;

fn pair(radius_ratio: f64, spacing_ratio: f64, twist: f64) -> BendPair {
    BendPair {
        radius_ratio,
        angle: FRAC_PI_2,
        spacing_ratio,
        twist,
    }
}

fn coefficient(bends: &BendPair) -> f64 {
    bends.terms().coefficient(0.02).value
}

pub fn checks() -> Vec<Check> {
    let single = rennels_2012::terms(1.5, FRAC_PI_2).coefficient(0.02).value;
    let mut checks: Vec<Check> = rows(include_str!("../data/bend_pair.csv"))
        .iter()
        .map(|row| {
            let (ratio, spacing) = (row.number("ratio"), row.number("spacing"));
            let degrees = 180.0 - row.number("angle");
            let ours = pair(ratio, spacing, degrees.to_radians()).interaction();
            let id = format!("C at r/d {ratio}, {spacing} diameters apart, twist {degrees}");
            match row.text("what") {
                "factor" => row.printed(LAW, id, ours),
                _ => {
                    let id = format!("{id}: one bend of 180 degrees over two of 90");
                    row.scattered(LAW, id, ours, OF_FACTOR * ours)
                }
            }
        })
        .collect();
    for twist in [0.0, FRAC_PI_2, PI] {
        checks.push(Check {
            id: format!("30 diameters apart, twist {twist:.2}: two bends, less the duct between"),
            law: LAW,
            source: "Mylaram and Idem, ASHRAE winter meeting 2005, abstract at aivc.org: two elbows far apart within about 10 % of twice one".to_owned(),
            kind: Kind::Measurement,
            value: 2.0 * single,
            ours: coefficient(&pair(1.5, 30.0, twist)) - 0.02 * 30.0,
            allowed: 0.1 * 2.0 * single,
            allowed_because: "the abstract's 10 %",
        });
    }
    checks.push(derivative(LAW, "K by friction factor", [0.005, 0.1], |f| {
        pair(1.5, 1.0, 1.0).terms().coefficient(f)
    }));
    for twist in [0.0, FRAC_PI_2, PI] {
        let name = format!("K over spacing, twist {twist:.2}");
        checks.push(no_jump(LAW, &name, [0.0, 40.0], |spacing| {
            coefficient(&pair(1.5, spacing, twist))
        }));
    }
    checks.push(no_jump(LAW, "K over twist", [0.0, PI], |twist| {
        coefficient(&pair(1.0, 0.5, twist))
    }));
    checks.push(no_jump(LAW, "K over r/d", [0.5, 4.0], |ratio| {
        coefficient(&pair(ratio, 0.5, PI))
    }));
    let turned = |angle| BendPair {
        angle,
        ..pair(1.5, 0.0, 0.0)
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
    for (name, bends, expected) in [
        ("inside, tight", pair(1.0 + 1e-6, 1.0, 0.0), None),
        ("just too tight", pair(1.0 - 1e-6, 1.0, 0.0), Some("radius")),
        ("inside, wide", pair(3.0 - 1e-6, 1.0, 0.0), None),
        ("just too wide", pair(3.0 + 1e-6, 1.0, 0.0), Some("radius")),
        ("inside, angle", turned(FRAC_PI_2 + 0.099), None),
        (
            "angle just too large",
            turned(FRAC_PI_2 + 0.101),
            Some("angle"),
        ),
        (
            "angle just too small",
            turned(FRAC_PI_2 - 0.101),
            Some("angle"),
        ),
        ("inside, far apart", pair(1.5, 30.0 - 1e-6, 0.0), None),
        (
            "just too far apart",
            pair(1.5, 30.0 + 1e-6, 0.0),
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
