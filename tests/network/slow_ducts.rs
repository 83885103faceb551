//! Ducts with a given flow far below Mach 1: what falls along them in pascal.

use evenport::{Draw, Loss, NodeKind};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, draw, solved};

const PRESSURE: f64 = 101_325.0;
const TEMPERATURE: f64 = 293.15;
/// Sutherland's formula with the constants of the U.S. Standard Atmosphere 1976 [Pa s].
const VISCOSITY: f64 = 1.458e-6 * 293.15 * 17.121_623_7 / (293.15 + 110.4);
const DENSITY: f64 = PRESSURE / (287.05 * TEMPERATURE);
const LENGTH: f64 = 1.0;
const ALLOWED: &str = "half of the factor's last printed digit, 0.05 % for rectangles, and 2e-5: Mach numbers to 0.0022, squared";

/// A section: sides of a rectangle [m], or a circle's diameter twice.
#[derive(Clone, Copy)]
enum Section {
    Round(f64),
    Rectangle(f64, f64),
}

impl Section {
    /// Area [m2] and wetted perimeter [m].
    fn size(self) -> (f64, f64) {
        match self {
            Self::Round(d) => (
                0.25 * std::f64::consts::PI * d * d,
                std::f64::consts::PI * d,
            ),
            Self::Rectangle(a, b) => (a * b, 2.0 * (a + b)),
        }
    }

    /// Stagnation pressure that falls along it at a Reynolds number, over f's part: L/D rho V^2/2 [Pa], and ours [Pa].
    fn falls(self, reynolds: f64, relative_roughness: f64) -> (f64, f64) {
        let (area, perimeter) = self.size();
        let diameter = 4.0 * area / perimeter;
        let velocity = reynolds * VISCOSITY / (DENSITY * diameter);
        let source = NodeKind::source(PRESSURE, TEMPERATURE);
        let loss = Loss::Duct {
            area,
            perimeter: Some(perimeter),
            length: LENGTH,
            roughness: relative_roughness * diameter,
        };
        let mut builder = Builder::default();
        builder.node("before", source).port("behind");
        builder.branch("duct", "before", "behind", vec![loss]);
        let mut study = builder.study(1.0);
        draw(&mut study, DENSITY * velocity * area);
        let answer = answer(&study);
        let nodes = &solved(&answer, Draw::CycleMean).nodes;
        let heads = LENGTH / diameter * 0.5 * DENSITY * velocity * velocity;
        (heads, nodes[0].pressure - nodes[1].pressure)
    }
}

/// A section, its Reynolds number and roughness, the factor, what it may be off by.
struct Case {
    name: &'static str,
    section: Section,
    reynolds: f64,
    relative_roughness: f64,
    factor: f64,
    half: f64,
    kind: Kind,
    source: &'static str,
}

pub fn checks() -> Vec<Check> {
    let laminar = |name, section, reynolds: f64, group: f64, half: f64, kind, source| Case {
        name,
        section,
        reynolds,
        relative_roughness: 0.0,
        factor: group / reynolds,
        half: half / reynolds,
        kind,
        source,
    };
    let round = Section::Round(0.01);
    let exact = Kind::ClosedForm;
    let poiseuille = "Hagen and Poiseuille, f = 64/Re";
    let table = "Cengel and Cimbala, Fluid Mechanics, table 8-1, f Re of rectangles, from memory";
    // The series for rectangles is good to 0.05 % (tests/published/friction).
    let square = 5e-3 + 5e-4 * 56.92;
    let slot = 5e-3 + 5e-4 * 72.92;
    let library = "Churchill 1977 as coded in fluids 1.3.1";
    let rough = |name, reynolds, relative_roughness, factor| Case {
        name,
        section: Section::Round(2.0),
        reynolds,
        relative_roughness,
        factor,
        half: 5e-8,
        kind: Kind::ReferenceLibrary,
        source: library,
    };
    let cases = [
        laminar("round, Mach 4e-6", round, 1.0, 64.0, 0.0, exact, poiseuille),
        laminar(
            "round, Mach 4e-5",
            round,
            10.0,
            64.0,
            0.0,
            exact,
            poiseuille,
        ),
        laminar(
            "round, Mach 4e-4",
            round,
            100.0,
            64.0,
            0.0,
            exact,
            poiseuille,
        ),
        laminar(
            "square",
            Section::Rectangle(0.01, 0.01),
            100.0,
            56.92,
            square,
            Kind::Memory,
            table,
        ),
        laminar(
            "rectangle 4 to 1",
            Section::Rectangle(0.02, 0.005),
            100.0,
            72.92,
            slot,
            Kind::Memory,
            table,
        ),
        rough("Re 1e4, smooth", 1e4, 0.0, 0.0310021),
        rough("Re 1e5, roughness 0.001", 1e5, 0.001, 0.0223432),
        rough("Re 1e5, roughness 0.01", 1e5, 0.01, 0.0387336),
    ];
    cases
        .iter()
        .map(|case| {
            let (heads, ours) = case.section.falls(case.reynolds, case.relative_roughness);
            Check {
                id: format!("fall along a duct, {} [Pa]", case.name),
                law: "duct",
                source: case.source.to_owned(),
                kind: case.kind,
                value: case.factor * heads,
                ours,
                allowed: (case.half + 2e-5 * case.factor) * heads,
                allowed_because: ALLOWED,
            }
        })
        .collect()
}

#[test]
fn slow_ducts_follow_their_factors() {
    assert_all(&checks());
}
