//! Darcy friction factor.

use evenport::law::friction::churchill_1977::{SCATTER, darcy, friction_group, outside};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{derivative, invariant, no_jump, range, rows};

const LAW: &str = "friction/churchill_1977";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/friction.csv"))
        .iter()
        .map(|row| {
            let (reynolds, roughness) = (row.number("reynolds"), row.number("relative_roughness"));
            let ours = darcy(reynolds, roughness).value;
            let id = format!("f at Re {reynolds:.0}, roughness {roughness}");
            match row.kind() {
                Kind::AnotherAuthor => row.within(
                    LAW,
                    id,
                    ours,
                    SCATTER.relative * ours,
                    "one standard deviation of the law's scatter",
                ),
                _ => row.printed(LAW, id, ours),
            }
        })
        .collect();
    for reynolds in [0.0, 1e-300, 1.0, 299.0] {
        let group = friction_group(reynolds, 0.01);
        let id = format!("f Re at Re {reynolds:e}");
        checks.push(invariant(
            LAW,
            id,
            64.0,
            group.value,
            1e-12,
            "laminar flow in a round duct",
        ));
        let id = format!("slope of f Re at Re {reynolds:e}");
        checks.push(invariant(
            LAW,
            id,
            0.0,
            group.derivative,
            1e-12,
            "laminar flow in a round duct",
        ));
    }
    for roughness in [0.0, 1e-4, 0.05, 1.0] {
        let name = format!("f Re by Re, roughness {roughness}");
        for span in [[1.0, 2_000.0], [2_000.0, 1e4], [1e4, 1e6], [1e6, 1e9]] {
            checks.push(derivative(
                LAW,
                &format!("{name}, to {:.0e}", span[1]),
                span,
                |re| friction_group(re, roughness),
            ));
        }
        checks.push(derivative(
            LAW,
            &format!("f by Re, roughness {roughness}"),
            [500.0, 1e5],
            |re| darcy(re, roughness),
        ));
        let over_log = |log: f64| darcy(log.exp(), roughness).value.ln();
        checks.push(no_jump(
            LAW,
            &format!("ln f over ln Re, roughness {roughness}"),
            [0.0, 20.0],
            over_log,
        ));
        let slope = |log: f64| friction_group(log.exp(), roughness).derivative;
        checks.push(no_jump(
            LAW,
            &format!("slope of f Re over ln Re, roughness {roughness}"),
            [0.0, 12.0],
            slope,
        ));
    }
    checks.push(no_jump(LAW, "f over roughness", [0.0, 0.1], |roughness| {
        darcy(1e5, roughness).value
    }));
    checks.push(range(LAW, "smooth", &outside(0.0), None));
    checks.push(range(
        LAW,
        "just under its most",
        &outside(0.05 - 1e-6),
        None,
    ));
    checks.push(range(
        LAW,
        "just over its most",
        &outside(0.05 + 1e-6),
        Some("roughness"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
