//! Valve at fixed lift, and the conversion of bench flows between depressions.

use evenport::gas::density;
use evenport::law::valve::curtain_area::{effective_area, outside};

use crate::evidence::{Check, assert_all};
use crate::opening::contracted_jet::mass_flow;
use crate::support::{invariant, range, rows};

const LAW: &str = "valve/curtain_area";
/// 1 ft3/min, NIST SP 811 [m3/s].
const CUBIC_FOOT_PER_MINUTE: f64 = 0.000_471_947;
/// 1 inch of water at 4 degrees C, NIST SP 811 [Pa].
const INCH_OF_WATER: f64 = 249.089;

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/valve.csv"))
        .iter()
        .filter(|row| row.text("quantity") != "depression root")
        .map(|row| {
            let (pressure, temperature) = (row.number("pressure"), row.number("temperature"));
            let quantity = row.text("quantity");
            if quantity == "depression" {
                let text = row.text("depression");
                let mut inches = text
                    .split(" to ")
                    .map(|inches| inches.parse().expect("inches of water"));
                let mut flow = || {
                    let depression: f64 = inches.next().expect("two depressions");
                    mass_flow(
                        1e-3,
                        pressure,
                        temperature,
                        1.0 - depression * INCH_OF_WATER / pressure,
                    )
                };
                let first = flow();
                let ours = flow() / first;
                return row.printed(
                    LAW,
                    format!("flow factor from {text} inches of water"),
                    ours,
                );
            }
            let diameter = row.number("diameter");
            let lift = diameter * row.number("lift_ratio");
            let area = effective_area(diameter, lift, row.number("discharge_coefficient"), 1.0);
            let ours = mass_flow(
                area,
                pressure,
                temperature,
                1.0 - row.number("depression") / pressure,
            );
            let id = format!(
                "{quantity}, seat {} mm, lift {} of it",
                1e3 * diameter,
                row.text("lift_ratio")
            );
            if quantity == "volume flow" {
                let volume = ours / density(pressure, temperature) / CUBIC_FOOT_PER_MINUTE;
                let because = "half of the last printed digit, and 1e-6 for the rounded cubic foot";
                row.within(LAW, id, volume, row.number("half") + 1e-6 * volume, because)
            } else {
                row.printed(LAW, id, ours)
            }
        })
        .collect();
    let one = effective_area(0.03, 0.006, 0.6, 1.0);
    let two = effective_area(0.03, 0.006, 0.6, 2.0);
    checks.push(invariant(
        LAW,
        "two valves over one".to_owned(),
        2.0,
        two / one,
        1e-15,
        "rounding",
    ));
    checks.push(range(
        LAW,
        "lift just under its most",
        &outside(0.03, 0.03 * (0.25 - 1e-6)),
        None,
    ));
    checks.push(range(
        LAW,
        "lift just over its most",
        &outside(0.03, 0.03 * (0.25 + 1e-6)),
        Some("lift"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
