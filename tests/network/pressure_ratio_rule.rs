//! How uneven rungs between two headers are when a header's drop is a given part of a rung's.
//!
//! Drops go as powers of the flow between a line and a square: each part is a core, measured at 0.95 and 1.05
//! of the flow that it carries when all rungs are even.

use evenport::{Draw, Loss};

use crate::evidence::{Check, Kind, assert_all};
use crate::ladders::{rung_parts, two_headers};
use crate::support::draw;

const EQUATIONS: &str = "network equations solved by scipy 1.17.1 root, residual below 1e-9";
const RULE: &str = "US DoD Unified Facilities Criteria 3-440-01, 14 June 2002, reverse-return solar bank: within \
    5 % when a header's drop is 30 % of the riser's; branch law not stated, 1.75 taken";
const POWERS: &str = "half of the last printed digit, and 0.02 %: what a line and a square, met in two points, miss \
    of a power 6 % away from them";
const SQUARES: &str = "half of the last printed digit, and 0.001 %: compressibility at 1 Pa";
/// Flow of a rung when all are even [kg/s], its drop then [Pa], and a section without a velocity head [m2].
const EVEN: f64 = 1e-3;
const DROP: f64 = 1.0;
const AREA: f64 = 1.0;
/// Room air of the bench, where the cores count as measured.
const PRESSURE: f64 = 101_325.0;
const TEMPERATURE: f64 = 293.15;

/// A part that drops `drop` at `flow` and as a power of the flow near it.
fn part(flow: f64, drop: f64, power: f64) -> Vec<Loss> {
    let at = |ratio: f64| (ratio * flow, drop * ratio.powf(power));
    let ((flow_1, drop_1), (flow_2, drop_2)) = (at(0.95), at(1.05));
    vec![Loss::Core {
        area: AREA,
        fraction: 1.0,
        pressure: PRESSURE,
        temperature: TEMPERATURE,
        flow_1,
        drop_1,
        flow_2,
        drop_2,
        cooler: None,
    }]
}

struct Case {
    name: &'static str,
    /// Whether air leaves at the far end (Z) or the inlet's (U).
    far: bool,
    rungs: usize,
    /// A header's drop over a rung's, all rungs even [-].
    ratio: f64,
    header_power: f64,
    rung_power: f64,
    /// Largest and smallest deviation from the mean, the first rung's and the last's [%].
    values: [f64; 4],
}

impl Case {
    /// Each rung's deviation from the mean [%].
    fn deviations(&self) -> Vec<f64> {
        let even = |fed: usize| fed as f64;
        let sum: f64 = (1..self.rungs)
            .map(|fed| even(fed).powf(self.header_power))
            .sum();
        let segment = |fed: usize| {
            let drop = self.ratio * DROP * even(fed).powf(self.header_power) / sum;
            part(even(fed) * EVEN, drop, self.header_power)
        };
        let rung = part(EVEN, DROP, self.rung_power);
        let mut study = two_headers(self.rungs, self.far, segment, &rung).study(1.0);
        for node in &mut study.network.nodes {
            if let evenport::NodeKind::Source {
                pressure,
                temperature,
                ..
            } = &mut node.kind
            {
                (*pressure, *temperature) = (Some(PRESSURE), Some(TEMPERATURE));
            }
        }
        draw(&mut study, EVEN * self.rungs as f64);
        rung_parts(&study, Draw::CycleMean)
            .iter()
            .map(|part| 100.0 * (part * self.rungs as f64 - 1.0))
            .collect()
    }
}

pub fn checks() -> Vec<Check> {
    let case = |name, far, rungs, ratio, header_power, rung_power, values| Case {
        name,
        far,
        rungs,
        ratio,
        header_power,
        rung_power,
        values,
    };
    let z = [5.005, -2.922, 5.005, 5.005];
    let thin = [1.699, -0.986, 1.699, 1.699];
    let turbulent = [6.095, -4.413, 6.095, 6.095];
    let u = [18.023, -7.926, 18.023, -7.926];
    let cases = [
        case("Z-N20-R0.3-h1-r1.75", true, 20, 0.3, 1.0, 1.75, z),
        case("Z-N20-R0.1-h1-r1.75", true, 20, 0.1, 1.0, 1.75, thin),
        case("Z-N8-R0.3-h1.75-r1.75", true, 8, 0.3, 1.75, 1.75, turbulent),
        case("U-N8-R0.3-h2-r2", false, 8, 0.3, 2.0, 2.0, u),
    ];
    let mut checks = Vec::new();
    for case in &cases {
        let ours = case.deviations();
        let most = ours.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let least = ours.iter().copied().fold(f64::INFINITY, f64::min);
        let ours = [most, least, ours[0], ours[case.rungs - 1]];
        let exact = case.rung_power == 2.0 && case.header_power == 2.0;
        for (place, quantity) in ["largest", "smallest", "first", "last"].iter().enumerate() {
            checks.push(Check {
                id: format!("{} {quantity} deviation [%]", case.name),
                law: "network",
                source: EQUATIONS.to_owned(),
                kind: Kind::ReferenceLibrary,
                value: case.values[place],
                ours: ours[place],
                allowed: 5e-4 + if exact { 1e-3 } else { 0.02 },
                allowed_because: if exact { SQUARES } else { POWERS },
            });
        }
        if case.name == "Z-N20-R0.3-h1-r1.75" {
            checks.push(Check {
                id: "UFC-2002 largest deviation [%]".to_owned(),
                law: "network",
                source: RULE.to_owned(),
                kind: Kind::PrintedTable,
                value: 5.0,
                ours: most,
                allowed: 0.5,
                allowed_because: "half of the last printed digit",
            });
        }
    }
    checks
}

#[test]
fn headers_follow_the_pressure_ratio_rule() {
    assert_all(&checks());
}
