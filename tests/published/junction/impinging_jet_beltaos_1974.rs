//! Jets in a plenum: values of free and impinging jets, the momentum that a wall takes up, and limits.

use std::f64::consts::{FRAC_PI_2, PI};

use evenport::law::junction::impinging_jet_beltaos_1974::{fraction, outside};
use evenport::law::junction::plenum_jet::PLENUM_JET_SCATTER;

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{holds, range};

const LAW: &str = "junction/impinging_jet_beltaos_1974";

/// Integral of the fraction over a wall across the jet, over the nozzle's area: 2 where the wall takes up
/// all of the jet's momentum, since the force is its head times that, and its momentum two heads.
fn force(distance: f64) -> f64 {
    let steps = 4_000;
    let width = 2.0 * (1.0 + 0.2 * distance);
    let step = width / f64::from(steps);
    let ring = |place: i32| {
        let radius = (f64::from(place) + 0.5) * step;
        2.0 * PI * radius * step * fraction(1.0, distance, radius, 0.0)
    };
    (0..steps).map(ring).sum::<f64>() / (0.25 * PI)
}

pub fn checks() -> Vec<Check> {
    let mut checks = Vec::new();
    for distance in [10.0, 20.0, 35.0] {
        checks.push(Check {
            id: format!("wall on the axis at {distance} diameters"),
            law: LAW,
            source: "Beltaos and Rajaratnam 1974, 50 (d/x)^2 (from memory)".to_owned(),
            kind: Kind::Memory,
            value: 50.0 / (distance * distance),
            ours: fraction(1.0, distance, 0.0, 0.0),
            allowed: 0.02 * 50.0 / (distance * distance),
            allowed_because: "what joins the near form still shows by 2 % at 10 diameters",
        });
        // The head of a free jet whose centreline velocity decays as 6.11 d/x: what stands before a mouth.
        let free = (6.11 / distance) * (6.11 / distance);
        checks.push(Check {
            id: format!("head of a free jet at {distance} diameters"),
            law: LAW,
            source: "Abdel-Rahman, Al-Fahed and Chakroun 1996, decay constant 6.11 at Re 19 400".to_owned(),
            kind: Kind::Measurement,
            value: free,
            ours: fraction(1.0, distance, 0.0, 0.0),
            allowed: 0.4 * free,
            allowed_because: "a wall's pressure and a free jet's mean head differ by the turbulence between; inside the scatter of 0.2 of the entering head everywhere",
        });
        let half = distance * (f64::ln(2.0) / 114.0).sqrt();
        checks.push(Check {
            id: format!("offset that halves the pressure at {distance} diameters"),
            law: LAW,
            source: "Beltaos and Rajaratnam 1974, exp(-114 (r/x)^2) (from memory)".to_owned(),
            kind: Kind::Memory,
            value: 0.5,
            ours: fraction(1.0, distance, half, 0.0) / fraction(1.0, distance, 0.0, 0.0),
            allowed: 0.01,
            allowed_because: "what joins the near form",
        });
    }
    for distance in [0.0, 3.0, 6.0, 10.0, 20.0, 35.0] {
        checks.push(Check {
            id: format!("force on a wall at {distance} diameters over twice the nozzle's head and area"),
            law: LAW,
            source: "momentum theorem: a wall across a jet takes up its momentum".to_owned(),
            kind: Kind::Invariant,
            value: 1.0,
            ours: 0.5 * force(distance),
            allowed: 0.3,
            allowed_because: "the measured pressures carry 88 % of it far away; near the nozzle they are taken over the jet's section",
        });
    }
    checks.push(holds(
        LAW,
        "a mouth along the jet feels nothing".to_owned(),
        fraction(1.0, 3.0, 0.0, FRAC_PI_2) == 0.0,
    ));
    checks.push(holds(
        LAW,
        "at the nozzle the whole head is felt".to_owned(),
        fraction(1.0, 0.0, 0.0, 0.0) == 1.0,
    ));
    checks.push(holds(
        LAW,
        "far away less than the scatter is felt".to_owned(),
        fraction(1.0, 40.0, 0.0, 0.0) < 0.2 * PLENUM_JET_SCATTER,
    ));
    checks.push(range(LAW, "40 diameters", &outside(1.0, 40.0), None));
    checks.push(range(
        LAW,
        "41 diameters",
        &outside(1.0, 41.0),
        Some("jetDistance"),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}

#[test]
fn nothing_jumps() {
    let mut last = fraction(1.0, 0.0, 0.3, 0.2);
    for step in 1..=4_000 {
        let now = fraction(1.0, f64::from(step) * 0.01, 0.3, 0.2);
        assert!((now - last).abs() < 5e-3, "at {step}");
        last = now;
    }
    let mut last = fraction(1.0, 5.0, 0.3, 0.0);
    for step in 1..=400 {
        let now = fraction(1.0, 5.0, 0.3, f64::from(step) * 0.01);
        assert!((now - last).abs() < 0.02);
        last = now;
    }
}
