//! Two parallel pipes between two levels, with a pump of given power: a textbook example in water.
//!
//! A gas far below Mach 1 follows the same equations: with the same Reynolds numbers, roughness and length over
//! diameter, flows scale as viscosity over density times size, pressures as viscosity squared over density
//! times size squared. The pipes are enlarged so that the gas hardly moves.

use evenport::gas::{density, viscosity};
use evenport::{Draw, Loss, NodeKind};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, solved, typed};

const SOURCE: &str = "Cengel and Cimbala, Fluid Mechanics, example 8-7; inputs read in FOSSEE/Scilab-TBC-Uploads 797, \
    value computed with Colebrook's factor";
const COLEBROOK: &str = "0.35 %: Churchill's factor lies up to 0.7 % from Colebrook's at these Reynolds numbers \
    (tests/published/friction), flow goes as its square root";
/// How much larger than in the book.
const SIZE: f64 = 100.0;
/// Length, roughness, the two diameters [m].
const LENGTH: f64 = 36.0;
const ROUGHNESS: f64 = 4.5e-5;
const DIAMETERS: [f64; 2] = [0.04, 0.08];
/// Water's density [kg/m3] and viscosity [Pa s].
const WATER: f64 = 998.0;
const WATER_VISCOSITY: f64 = 1.002e-3;
/// Pump's power in the water [W], rise of the level [m], gravity [m/s2].
const POWER: f64 = 0.7 * 8_000.0;
const RISE: f64 = 8.0;
const GRAVITY: f64 = 9.81;

/// Volume flows of the pipes in water [m3/s] for their friction's fall in water [Pa].
fn flows(fall: f64) -> Vec<f64> {
    let (room, temperature) = (101_325.0, 293.15);
    let kinematic = viscosity(temperature).value / density(room, temperature);
    let water = WATER_VISCOSITY / WATER;
    let pressures = density(room, temperature) / WATER * (kinematic / (water * SIZE)).powi(2);
    let mut builder = Builder::default();
    builder.source("low").node("high", NodeKind::Joint {});
    for (pipe, diameter) in DIAMETERS.iter().enumerate() {
        let across = diameter * SIZE;
        let loss = Loss::Duct {
            area: 0.25 * std::f64::consts::PI * across * across,
            perimeter: None,
            length: LENGTH * SIZE,
            roughness: ROUGHNESS * SIZE,
        };
        builder.branch(&format!("pipe {pipe}"), "low", "high", vec![loss]);
    }
    // So wide that the velocity head lost at its end is nothing.
    builder
        .port("out")
        .branch("end", "high", "out", vec![typed(0.0, 1e6)]);
    let answer = answer(&builder.study(fall * pressures));
    let branches = solved(&answer, Draw::BenchAllOpen).branches.iter();
    let in_water = water / (kinematic * SIZE) / density(room, temperature);
    branches
        .filter(|branch| branch.branch.starts_with("pipe"))
        .map(|branch| branch.flow * in_water)
        .collect()
}

pub fn checks() -> Vec<Check> {
    let (mut low, mut high) = (1e3, 1e6);
    for _ in 0..50 {
        let middle = 0.5 * (low + high);
        let total: f64 = flows(middle).iter().sum();
        if total * (WATER * GRAVITY * RISE + middle) < POWER {
            low = middle
        } else {
            high = middle
        }
    }
    let pipes = flows(low);
    let check = |id: &str, value: f64, ours| Check {
        id: format!("CENGEL-8-7 {id} [m3/s]"),
        law: "network",
        source: SOURCE.to_owned(),
        kind: Kind::ReferenceLibrary,
        value,
        ours,
        allowed: 3.5e-3 * value,
        allowed_because: COLEBROOK,
    };
    // The printed answers are from memory: 0.0300, 0.00415, 0.0259.
    vec![
        check("total flow", 0.0300122, pipes.iter().sum()),
        check("pipe 1", 0.00415138, pipes[0]),
        check("pipe 2", 0.0258608, pipes[1]),
    ]
}

#[test]
fn parallel_pipes_follow_the_textbook() {
    assert_all(&checks());
}
