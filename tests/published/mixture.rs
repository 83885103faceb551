//! Mixture by cylinder: the published mass balance, and which way a trim goes.

use evenport::law::mixture::{Fuel, lambdas, trims};

use crate::evidence::{Check, assert_all};
use crate::support::{holds, invariant, rows};

const LAW: &str = "mixture";
/// Stoichiometric air-fuel ratio of gasoline in the published rows [-].
const GASOLINE: f64 = 14.7;

/// Eight cylinders, the first off the mean by a part and the others making up for it.
fn one_off(part: f64) -> [f64; 8] {
    let mut air = [0.04 * (1.0 - part / 7.0); 8];
    air[0] = 0.04 * (1.0 + part);
    air
}

pub fn checks() -> Vec<Check> {
    let one_bank = [0; 8];
    let mut checks: Vec<Check> = rows(include_str!("data/mixture.csv"))
        .iter()
        .map(|row| {
            let deviation = row.number("deviation");
            let air = one_off(0.01 * deviation);
            let lambda = lambdas(&air, &one_bank, Fuel::EqualPerPort, 1.0)[0];
            let quantity = row.text("quantity");
            let id = format!("{quantity} of a cylinder with {deviation} % of air over the mean");
            match quantity {
                "lambda" => row.printed(LAW, id, lambda),
                "air-fuel ratio" => row.printed(LAW, id, GASOLINE * lambda),
                other => panic!("unknown quantity {other}"),
            }
        })
        .collect();
    let air = one_off(0.05);
    let trim = trims(&air, &one_bank, Fuel::EqualPerPort).unwrap_or_default();
    checks.push(holds(
        LAW,
        "the overfed cylinder is the lean one and its trim adds fuel".to_owned(),
        lambdas(&air, &one_bank, Fuel::EqualPerPort, 0.85)[0] > 0.85 && trim[0] > 0.049,
    ));
    let (mut burnt, mut given) = (0.0, 0.0);
    for (air, trim) in air.iter().zip(&trim) {
        let fuel = 0.04 * (1.0 + trim);
        given += fuel;
        burnt += (air / fuel - 1.0).abs();
    }
    checks.push(invariant(
        LAW,
        "what trimmed cylinders lie off the target, summed".to_owned(),
        0.0,
        burnt,
        1e-14,
        "rounding",
    ));
    checks.push(invariant(
        LAW,
        "fuel of all cylinders, trimmed over not".to_owned(),
        1.0,
        given / (8.0 * 0.04),
        1e-14,
        "rounding: a trim moves fuel and adds none",
    ));
    // Two banks of two: by hand, 0.9 and 1.1 of the first bank's mean, both 1 of the second's.
    let (air, banks) = ([0.9, 1.2, 1.1, 1.2], [7, 2, 7, 2]);
    let by_bank = lambdas(&air, &banks, Fuel::ClosedLoopPerBank, 0.9);
    for (cylinder, value) in [0.81, 0.9, 0.99, 0.9].into_iter().enumerate() {
        checks.push(invariant(
            LAW,
            format!(
                "lambda of cylinder {} with the loop closed by bank",
                cylinder + 1
            ),
            value,
            by_bank[cylinder],
            1e-15,
            "rounding",
        ));
    }
    let by_bank = trims(&air, &banks, Fuel::ClosedLoopPerBank).unwrap_or_default();
    checks.push(holds(
        LAW,
        "the trim by bank leaves the even bank alone".to_owned(),
        (by_bank[0] + 0.1).abs() < 1e-14 && by_bank[1].abs() < 1e-14,
    ));
    checks.push(holds(
        LAW,
        "fuel upstream: one lambda and no trim".to_owned(),
        lambdas(&air, &banks, Fuel::Upstream, 0.9) == [0.9; 4]
            && trims(&air, &banks, Fuel::Upstream).is_none(),
    ));
    checks.push(holds(
        LAW,
        "no air at all: the target stands".to_owned(),
        lambdas(&[0.0; 3], &[0; 3], Fuel::EqualPerPort, 1.0) == [1.0; 3],
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
