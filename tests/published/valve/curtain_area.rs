//! Valve at fixed lift, and the conversion of bench flows between depressions.

use evenport::gas::density;
use evenport::law::valve::curtain_area::{DEFAULT_CURVE, Passage, on_curve, throat_area};

use crate::evidence::{Check, Kind, assert_all};
use crate::opening::contracted_jet::mass_flow;
use crate::support::{invariant, range, rows};

const LAW: &str = "valve/curtain_area";
/// 1 ft3/min, NIST SP 811 [m3/s].
const CUBIC_FOOT_PER_MINUTE: f64 = 0.000_471_947;
/// 1 inch of water at 4 degrees C, NIST SP 811 [Pa].
const INCH_OF_WATER: f64 = 249.089;

fn passage(diameter: f64, lift: f64, throat: Option<f64>) -> Passage {
    Passage {
        diameter,
        lift,
        throat,
    }
}

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
            let area =
                passage(diameter, lift, None).effective_area(row.number("discharge_coefficient"));
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
    for (ratio, least, most) in [
        (0.05, 0.60, 0.68),
        (0.1, 0.58, 0.66),
        (0.2, 0.52, 0.62),
        (0.25, 0.45, 0.58),
    ] {
        checks.push(Check {
            id: format!("usual coefficient at lift {ratio} of the seat"),
            law: LAW,
            source:
                "Heywood 1988 section 6.3.2, Annand and Roe 1974: curves read loosely (from memory)"
                    .to_owned(),
            kind: Kind::Memory,
            value: 0.5 * (least + most),
            ours: on_curve(&DEFAULT_CURVE, ratio),
            allowed: 0.25 * (most - least),
            allowed_because: "within the middle half of the range",
        });
    }
    let throat = throat_area(0.030, 0.007);
    let wide_open = passage(0.034, 0.03, Some(throat)).effective_area(0.6);
    checks.push(invariant(
        LAW,
        "far open, the throat over the effective area".to_owned(),
        1.0,
        wide_open / throat,
        1e-2,
        "the curtain is 2.9 times the throat: its eighth power",
    ));
    let little = passage(0.034, 0.002, Some(throat)).effective_area(0.6);
    let free = passage(0.034, 0.002, None).effective_area(0.6);
    checks.push(invariant(
        LAW,
        "hardly open, with a throat over without".to_owned(),
        1.0,
        little / free,
        1e-3,
        "the throat is five times the curtain",
    ));
    let just = 0.03 * 0.25;
    for (name, lift, expected) in [
        ("lift just under its most", just * (1.0 - 1e-6), None),
        ("lift just over its most", just * (1.0 + 1e-6), Some("lift")),
    ] {
        let found = passage(0.03, lift, None).outside();
        checks.push(range(LAW, name, &found, expected));
        let found = passage(0.03, lift, Some(throat)).outside();
        let name = format!("{name}, throat given");
        checks.push(range(LAW, &name, &found, None));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}

/// Swept over lift, neither the curve nor the throat makes the area jump or fall.
#[test]
fn nothing_jumps() {
    let throat = throat_area(0.030, 0.007);
    let at = |step: u32| {
        let lift = 1e-5 * f64::from(step);
        let coefficient = on_curve(&DEFAULT_CURVE, lift / 0.034);
        (
            coefficient,
            passage(0.034, lift, Some(throat)).effective_area(coefficient),
        )
    };
    let mut last = at(1);
    for step in 2..2_000 {
        let now = at(step);
        assert!((now.0 - last.0).abs() < 1e-3 && (now.1 - last.1).abs() < 2e-3 * throat);
        last = now;
    }
}
