//! From the stem into both run legs, and from both into the stem.

use std::f64::consts::FRAC_PI_2;

use evenport::law::junction::symmetric_bassett_2001::{SCATTER, outside};
use evenport::law::junction::{Geometry, stem_combining, stem_dividing};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{derivative, invariant, no_jump, range, rows};

const LAW: &str = "junction/symmetric_bassett_2001";

pub fn checks() -> Vec<Check> {
    let geometry = |area_ratio, degrees: f64| Geometry {
        area_ratio,
        angle: degrees.to_radians(),
    };
    let mut checks: Vec<Check> = rows(include_str!("../data/junction.csv"))
        .iter()
        .filter(|row| row.text("law") == "symmetric")
        .map(|row| {
            let at = geometry(row.number("area_ratio"), row.number("angle"));
            let q = row.number("q");
            let id = format!("run leg {} at q {q}, equal areas", row.text("flow"));
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(LAW, id, stem_dividing(&at, q).value, SCATTER),
                _ => row.printed(LAW, id, stem_combining(&at, q).value),
            }
        })
        .collect();
    for area_ratio in [0.5, 1.0] {
        let at = geometry(area_ratio, 90.0);
        let name = format!("area ratio {area_ratio}");
        checks.push(derivative(
            LAW,
            &format!("{name}: K dividing by q"),
            [0.0, 1.0],
            |q| stem_dividing(&at, q),
        ));
        checks.push(derivative(
            LAW,
            &format!("{name}: K combining by q"),
            [0.0, 1.0],
            |q| stem_combining(&at, q),
        ));
        // Two equal streams that meet head on and leave at a right angle: the legs' static pressure exceeds the
        // stem's by the momentum gained, two heads, and the leg brings its own head.
        let speed = 0.5 * area_ratio;
        let momentum = 2.0 + speed * speed - 1.0;
        let ours = stem_combining(&at, 0.5).value;
        let id = format!("{name}: momentum balance along the stem at q 0.5");
        checks.push(invariant(LAW, id, momentum, ours, 1e-12, "rounding"));
    }
    checks.push(no_jump(
        LAW,
        "K dividing over area ratio",
        [0.1, 2.0],
        |ratio| stem_dividing(&geometry(ratio, 90.0), 0.4).value,
    ));
    checks.push(no_jump(
        LAW,
        "K combining over area ratio",
        [0.1, 2.0],
        |ratio| stem_combining(&geometry(ratio, 90.0), 0.4).value,
    ));
    let stem = Geometry {
        area_ratio: 0.9,
        angle: FRAC_PI_2,
    };
    checks.push(range(LAW, "inside", &outside(&stem), None));
    checks.push(range(
        LAW,
        "narrow stem",
        &outside(&geometry(0.499, 90.0)),
        Some("sideArea"),
    ));
    checks.push(range(
        LAW,
        "wide stem",
        &outside(&geometry(1.001, 90.0)),
        Some("sideArea"),
    ));
    checks.push(range(
        LAW,
        "slanted",
        &outside(&geometry(0.9, 80.0)),
        Some("angle"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
