//! Wire screen, Blevins.

use evenport::ScreenLaw;
use evenport::law::screen::RoundScreen;
use evenport::law::screen::round_blevins_1984::{by_reynolds, factor};

use crate::evidence::{Check, assert_all};
use crate::support::{derivative, no_jump, range, rows};

const LAW: &str = "screen/round_blevins_1984";

/// The coefficient on the head of the approach, as the source has it.
fn approach(open_part: f64, reynolds: f64) -> f64 {
    by_reynolds(reynolds).value * factor(open_part) / (open_part * open_part)
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/screen.csv"))
        .iter()
        .filter(|row| row.text("law") == "round")
        .map(|row| {
            let (open, reynolds) = (row.number("open"), row.number("reynolds"));
            let id = format!("K at open part {open}, Reynolds number {reynolds}");
            row.printed(LAW, id, approach(open, reynolds))
        })
        .collect();
    checks.push(derivative(
        LAW,
        "beta by Reynolds number",
        [5.0, 600.0],
        by_reynolds,
    ));
    let name = "beta over Reynolds number";
    checks.push(no_jump(LAW, name, [0.0, 600.0], |re| by_reynolds(re).value));
    let name = "slope of beta over Reynolds number";
    checks.push(no_jump(LAW, name, [0.0, 600.0], |re| {
        by_reynolds(re).derivative
    }));
    checks.push(no_jump(LAW, "K over open part", [0.04, 1.0], |open| {
        approach(open, 150.0)
    }));
    let at = |open_part| {
        RoundScreen {
            open_part,
            law: ScreenLaw::Blevins1984,
        }
        .outside()
    };
    checks.push(range(LAW, "just open enough", &at(0.05 + 1e-6), None));
    checks.push(range(
        LAW,
        "just too shut",
        &at(0.05 - 1e-6),
        Some("openPart"),
    ));
    checks.push(range(LAW, "just not too open", &at(0.8 - 1e-6), None));
    checks.push(range(
        LAW,
        "just too open",
        &at(0.8 + 1e-6),
        Some("openPart"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
