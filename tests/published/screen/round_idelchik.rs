//! Wire screen, Idelchik.

use evenport::ScreenLaw;
use evenport::law::screen::RoundScreen;
use evenport::law::screen::round_idelchik::{SCATTER, coefficient};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{no_jump, range, rows};

const LAW: &str = "screen/round_idelchik";

/// The coefficient on the head of the approach, as the source has it.
fn approach(open_part: f64) -> f64 {
    coefficient(open_part) / (open_part * open_part)
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/screen.csv"))
        .iter()
        .filter(|row| row.text("law") == "round idelchik")
        .map(|row| {
            let open = row.number("open");
            let id = format!("K at open part {open}");
            let ours = approach(open);
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(LAW, id, ours, SCATTER.relative * ours),
                _ => row.printed(LAW, id, ours),
            }
        })
        .collect();
    let name = "K in the open part over open part";
    checks.push(no_jump(LAW, name, [0.001, 1.0], coefficient));
    let at = |open_part| {
        RoundScreen {
            open_part,
            law: ScreenLaw::Idelchik,
        }
        .outside()
    };
    checks.push(range(LAW, "just open enough", &at(0.2 + 1e-6), None));
    checks.push(range(
        LAW,
        "just too shut",
        &at(0.2 - 1e-6),
        Some("openPart"),
    ));
    checks.push(range(LAW, "just not too open", &at(0.9 - 1e-6), None));
    checks.push(range(
        LAW,
        "just too open",
        &at(0.9 + 1e-6),
        Some("openPart"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
