//! Sudden expansion.

use evenport::StepLaw;
use evenport::law::area::SuddenChange;
use evenport::law::area::sudden_expansion_borda_carnot::{SCATTER, coefficient};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{invariant, no_jump, range, rows};

const LAW: &str = "area/sudden_expansion_borda_carnot";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/area.csv"))
        .iter()
        .filter(|row| row.text("law") == "expansion")
        .map(|row| {
            let ratio = row.number("area_ratio");
            let ours = coefficient(ratio, 1.0);
            let id = format!("K at area ratio {ratio}");
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(LAW, id, ours, SCATTER.relative * ours),
                _ => row.printed(LAW, id, ours),
            }
        })
        .collect();
    let step = |area_to: f64| SuddenChange {
        area_from: 1e-3,
        area_to,
        law: StepLaw::default(),
    };
    checks.push(no_jump(
        LAW,
        "K over the section behind, from narrowing to widening",
        [1e-4, 1e-2],
        |area| step(area).coefficients().forward.k,
    ));
    checks.push(invariant(
        LAW,
        "K of equal areas".to_owned(),
        0.0,
        step(1e-3).coefficients().forward.k,
        0.0,
        "no step",
    ));
    let turned = SuddenChange {
        area_from: 3e-3,
        area_to: 1e-3,
        law: StepLaw::default(),
    }
    .coefficients();
    let straight = SuddenChange {
        area_from: 1e-3,
        area_to: 3e-3,
        law: StepLaw::default(),
    }
    .coefficients();
    let same = f64::from(u8::from(
        turned.forward == straight.reversed && turned.reversed == straight.forward,
    ));
    checks.push(invariant(
        LAW,
        "turned round, the directions change places".to_owned(),
        1.0,
        same,
        0.0,
        "yes or no",
    ));
    checks.push(range(LAW, "any ratio", &step(1e-9).outside(), None));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
