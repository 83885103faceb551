//! Air: density, viscosity, gas constant and ratio of specific heats.

pub mod standard_atmosphere_iso_2533;

use evenport::gas::{GAMMA, GAS_CONSTANT, density, viscosity};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{derivative, rows};

const LAW: &str = "gas";
const REAL_DENSITY: &str = "0.3 %: what the ideal gas leaves out from 250 to 450 K and 1 to 3 bar";
const REAL_RATIO: &str = "1 %: the constant 1.4 against 1.392 to 1.409";
const REAL_SOUND: &str = "0.5 %: half of the 1 % that the constant 1.4 leaves out";
const REAL_VISCOSITY: &str =
    "1.3 %: Sutherland's two constants against the measured fit; 0.3 % in turbulent friction";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("data/air.csv"))
        .iter()
        .map(|row| {
            let temperature = row.number("temperature");
            let value = row.number("value");
            let quantity = row.text("quantity");
            let id = format!("{quantity} at {temperature} K {}", row.text("pressure"));
            let mu = viscosity(temperature).value;
            match quantity {
                "viscosity" if row.kind() == Kind::ClosedForm => row.printed(LAW, id, mu),
                "viscosity" | "real viscosity" => {
                    row.within(LAW, id, mu, 0.013 * value, REAL_VISCOSITY)
                }
                "atmosphere viscosity" => row.printed(LAW, id, mu),
                "real density" => {
                    let ours = density(row.number("pressure"), temperature);
                    row.within(LAW, id, ours, 0.003 * value, REAL_DENSITY)
                }
                "real ratio of specific heats" => {
                    row.within(LAW, id, GAMMA, 0.01 * value, REAL_RATIO)
                }
                "atmosphere density" => {
                    let ours = density(row.number("pressure"), temperature);
                    let because = "1.5e-5 of it: R 287.05 against the standard's 287.053";
                    row.within(LAW, id, ours, 1.5e-5 * value, because)
                }
                "real sound speed" => {
                    let ours = (GAMMA * GAS_CONSTANT * temperature).sqrt();
                    row.within(LAW, id, ours, 0.005 * value, REAL_SOUND)
                }
                "sound speed" => {
                    let ours = (GAMMA * GAS_CONSTANT * temperature).sqrt();
                    row.within(
                        LAW,
                        id,
                        ours,
                        1e-5 * value,
                        "1e-5 of it: R 287.05 against the standard's 287.053",
                    )
                }
                other => panic!("unknown quantity {other}"),
            }
        })
        .collect();
    checks.push(derivative(
        LAW,
        "viscosity by temperature",
        [200.0, 500.0],
        viscosity,
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
