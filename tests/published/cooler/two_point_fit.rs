//! Cooler core: the fit through two points, and what it refuses.

use evenport::law::cooler::two_point_fit::{fit, outside};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{invariant, range};

const LAW: &str = "cooler/two_point_fit";

pub fn checks() -> Vec<Check> {
    let mut checks = Vec::new();
    for (a, b) in [
        (1_000.0, 4_000.0),
        (0.0, 5_000.0),
        (2_000.0, 0.0),
        (1e-3, 7e5),
    ] {
        let drop = |flow: f64| a * flow + b * flow * flow;
        for (first, second) in [(0.3, 0.6), (0.6, 0.3), (0.1, 0.13)] {
            let core = fit(first, drop(first), second, drop(second));
            let (ours_a, ours_b) = core.map_or((f64::NAN, f64::NAN), |core| (core.a, core.b));
            for (name, value, ours) in [("linear", a, ours_a), ("square", b, ours_b)] {
                checks.push(Check {
                    id: format!("{name} part of {a} m + {b} m^2 through {first} and {second} kg/s"),
                    law: LAW,
                    source: "two equations for two unknowns".to_owned(),
                    kind: Kind::ClosedForm,
                    value,
                    ours,
                    allowed: 1e-9 * (a + b),
                    allowed_because: "rounding of the differences between the points",
                });
            }
        }
    }
    for (name, points, word) in [
        ("a drop that falls", (0.3, 900.0, 0.6, 800.0), "falls"),
        ("one point twice", (0.3, 900.0, 0.3, 900.0), "same flow"),
        (
            "steeper than the square",
            (0.3, 900.0, 0.6, 3_700.0),
            "more than the square",
        ),
        (
            "flatter than the line",
            (0.3, 900.0, 0.6, 1_700.0),
            "less than its flow",
        ),
    ] {
        let (flow_1, drop_1, flow_2, drop_2) = points;
        let refusal = fit(flow_1, drop_1, flow_2, drop_2)
            .err()
            .unwrap_or_default();
        let says = f64::from(u8::from(refusal.contains(word)));
        checks.push(invariant(
            LAW,
            format!("{name} is refused with its reason"),
            1.0,
            says,
            0.0,
            "yes or no",
        ));
    }
    checks.push(range(
        LAW,
        "far apart",
        &outside(0.3, 0.3 * 1.2 + 1e-6),
        None,
    ));
    checks.push(range(
        LAW,
        "far apart, the other way round",
        &outside(0.6, 0.3),
        None,
    ));
    checks.push(range(
        LAW,
        "too close",
        &outside(0.3, 0.3 * 1.2 - 1e-6),
        Some("flow2"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
