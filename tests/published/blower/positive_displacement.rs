//! Blower: outlet temperature and work against gas tables, examples and the real gas; flow; below pressure ratio 1.

use evenport::gas::{density, pressure_ratio};
use evenport::law::Slope;
use evenport::law::blower::positive_displacement::{
    Heated, RANGE, flow, outlet_temperature, outside, power,
};

use crate::evidence::{Check, assert_all};
use crate::support::{derivative, holds, invariant, no_jump, range, rows};

const LAW: &str = "blower/positive_displacement";
const REAL_RISE: &str = "1 % of the rise: constant specific heats against the real gas";
const REAL_WORK: &str = "0.1 %: constant specific heats against the real gas";
const TWO_DIGITS: &str = "1.1 K: the efficiency is printed to two digits";
const BOOK_RISE: &str = "2 % of the rise: air tables with variable specific heats at a ratio of 8";
const BOOK_WORK: &str = "0.3 %: printed to three digits, with variable specific heats";
const BOOK_POWER: &str = "0.05 %: specific heat 1005 against 1004.7, and the last printed digit";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/blower.csv"))
        .iter()
        .map(|row| {
            let (inlet, value) = (row.number("inlet"), row.number("value"));
            let quantity = row.text("quantity");
            match quantity {
                // An isentropic flow's stagnation state is what it would be compressed to.
                "temperature over stagnation" => {
                    let outlet = outlet_temperature(1.0, 1.0 / pressure_ratio(inlet), 1.0).value;
                    let id = format!("{quantity} temperature at Mach {inlet}");
                    row.printed(LAW, id, 1.0 / outlet)
                }
                "power" => {
                    let ours = power(row.number("flow"), inlet, row.number("second"));
                    row.within(LAW, quantity.to_owned(), ours, 5e-4 * value, BOOK_POWER)
                }
                "outlet" | "work" => {
                    let (ratio, efficiency) = (row.number("second"), row.number("efficiency"));
                    let outlet = outlet_temperature(inlet, ratio, efficiency).value;
                    let id = format!(
                        "{quantity} from {inlet} K at ratio {ratio}, efficiency {efficiency}"
                    );
                    let rise = value - inlet;
                    let printed = row.text("source").contains("exercise");
                    match (quantity, ratio > RANGE[1]) {
                        ("outlet", true) if printed => row.within(LAW, id, outlet, 1.1, TWO_DIGITS),
                        ("outlet", true) => row.within(LAW, id, outlet, 0.02 * rise, BOOK_RISE),
                        ("outlet", false) => row.within(LAW, id, outlet, 0.01 * rise, REAL_RISE),
                        (_, beyond) => {
                            let work = power(1.0, inlet, outlet);
                            let (part, because) = if beyond {
                                (3e-3, BOOK_WORK)
                            } else {
                                (1e-3, REAL_WORK)
                            };
                            row.within(LAW, id, work, part * value, because)
                        }
                    }
                }
                other => panic!("unknown quantity {other}"),
            }
        })
        .collect();
    checks.push(invariant(
        LAW,
        "flow of 1.9 l a turn at 200 turns a second, 0.9 of it, from 1 bar and 300 K".to_owned(),
        0.9 * 0.0019 * 200.0 * 1e5 / (287.05 * 300.0),
        flow(0.9, 0.0019, 200.0, density(1e5, 300.0)),
        1e-12,
        "rounding",
    ));
    checks.extend(derivatives());
    checks.extend(below_one());
    for (name, ratio, expected) in [
        ("no boost", 1.0, None),
        ("most boost", 3.5, None),
        ("below 1", 1.0 - 1e-6, Some("pressureRatio")),
        ("too much boost", 3.5 + 1e-6, Some("pressureRatio")),
    ] {
        checks.push(range(LAW, name, &outside(ratio), expected));
    }
    checks
}

fn derivatives() -> Vec<Check> {
    let slope = |heated: Heated, derivative| Slope {
        value: heated.value,
        derivative,
    };
    let mut checks = vec![
        derivative(LAW, "outlet by inlet", [250.0, 350.0], |inlet| {
            let heated = outlet_temperature(inlet, 2.0, 0.6);
            slope(heated, heated.by_inlet)
        }),
        derivative(LAW, "outlet by efficiency", [0.3, 1.0], |efficiency| {
            let heated = outlet_temperature(300.0, 2.0, efficiency);
            slope(heated, heated.by_efficiency)
        }),
    ];
    for (name, ratios) in [("", [1.01, 3.5]), (" below 1", [0.5, 0.99])] {
        let name = format!("outlet by pressure ratio{name}");
        checks.push(derivative(LAW, &name, ratios, |ratio| {
            let heated = outlet_temperature(300.0, ratio, 0.6);
            slope(heated, heated.by_ratio)
        }));
    }
    checks
}

/// What the blower does while it only stands in the way.
fn below_one() -> Vec<Check> {
    let at = |ratio| outlet_temperature(300.0, ratio, 0.5);
    let mut checks = vec![
        invariant(
            LAW,
            "outlet at a pressure ratio of 1".to_owned(),
            300.0,
            at(1.0).value,
            0.0,
            "no work",
        ),
        invariant(
            LAW,
            "derivative just below over just above a pressure ratio of 1".to_owned(),
            1.0,
            at(1.0 - 1e-9).by_ratio / at(1.0 + 1e-9).by_ratio,
            1e-6,
            "what it changes over 2e-9",
        ),
        invariant(
            LAW,
            "outlet at a pressure ratio of 0.6".to_owned(),
            300.0,
            at(0.6).value,
            1e-5,
            "a restriction keeps the temperature",
        ),
        no_jump(
            LAW,
            "outlet by pressure ratio through 1",
            [0.5, 1.5],
            |ratio| at(ratio).value,
        ),
    ];
    let coldest = (0..=1_000).fold(300.0_f64, |least, step| {
        least.min(at(f64::from(step) / 1_000.0).value)
    });
    checks.push(holds(
        LAW,
        "the dip below 1 stays under half a per cent of the inlet's temperature".to_owned(),
        coldest > 0.995 * 300.0,
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
