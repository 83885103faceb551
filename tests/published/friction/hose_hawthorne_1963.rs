//! Corrugated hose.

use evenport::law::friction::churchill_1977;
use evenport::law::friction::hose_hawthorne_1963::{full_turbulence, outside, relative_roughness};

use crate::evidence::{Check, assert_all};
use crate::support::{invariant, no_jump, range, rows};

const LAW: &str = "friction/hose_hawthorne_1963";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/hose.csv"))
        .iter()
        .map(|row| {
            let pitch = row.number("pitch");
            let id = format!("f at pitch over diameter {pitch}");
            row.printed(LAW, id, full_turbulence(pitch))
        })
        .collect();
    for pitch in [0.03, 0.1, 0.5] {
        let duct = churchill_1977::darcy(1e9, relative_roughness(pitch)).value;
        let hose = full_turbulence(pitch);
        let id = format!("f of the duct like it in complete turbulence, pitch {pitch}");
        let because = "Reynolds number 1e9 in place of none";
        checks.push(invariant(LAW, id, hose, duct, 1e-4 * hose, because));
    }
    for reynolds in [1e3, 1e5] {
        let name = format!("f over pitch, Reynolds number {reynolds}");
        checks.push(no_jump(LAW, &name, [0.001, 0.8], |pitch| {
            churchill_1977::darcy(reynolds, relative_roughness(pitch)).value
        }));
    }
    for (name, pitch, expected) in [
        ("just wide enough", 0.03 + 1e-6, None),
        ("just too fine", 0.03 - 1e-6, Some("pitch")),
        ("just not too wide", 0.5 - 1e-6, None),
        ("just too wide", 0.5 + 1e-6, Some("pitch")),
    ] {
        checks.push(range(LAW, name, &outside(pitch), expected));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
