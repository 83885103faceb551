//! Throttle plate in a round bore, Heywood 1988.
//!
//! # Equation
//! The open area is the bore less the shadow of the plate and its shaft along the axis: chord by chord
//! across the bore, at distance y from its axis the chord is 2 sqrt(R^2 - y^2) and the plate covers
//! what lies within sqrt(R^2 - y^2) cos(angle)/cos(closed angle), or within half the shaft's diameter.
//! Behind, the jet C_d A spreads to the bore with (1 - C_d A/A_bore)^2 of its velocity head.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | R | `diameter` | half the bore's diameter | m |
//! | - | `angle`, `closed_angle` | plate from the plane across the bore | rad |
//! | - | `shaft_diameter` | shaft | m |
//! | C_d | `discharge_coefficient` | effective over open area | - |
//!
//! # Source
//! J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, section 7.6.2, eq. 7.18 (closed form of the
//! same shadow, from memory); here the chords are summed, which is the same area.
//!
//! # Range of validity
//! Angle from closed to 90 degrees.
//!
//! # Limits
//! A closed plate keeps a leak of 1e-4 of the bore, so that the branch stays in the network.

use std::f64::consts::PI;

use super::super::{Head, Scatter, TwoWay};

/// Leak of a closed plate over the bore's area [-].
const LEAK: f64 = 1e-4;
/// Chords across half the bore; the area is then good to 1e-5.
const CHORDS: usize = 200;

/// Scatter of the loss.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "10 % of the discharge coefficient; common practice",
};

/// A throttle plate.
#[derive(Clone, Copy, Debug)]
pub struct ThrottlePlate {
    /// Diameter of the bore [m].
    pub diameter: f64,
    /// Angle of the plate from the plane across the bore [rad].
    pub angle: f64,
    /// That angle when closed [rad].
    pub closed_angle: f64,
    /// Diameter of the shaft [m].
    pub shaft_diameter: f64,
    /// Effective over open area [-].
    pub discharge_coefficient: f64,
}

impl ThrottlePlate {
    /// What the plate leaves open, seen along the bore [m2].
    pub fn open_area(&self) -> f64 {
        let radius = 0.5 * self.diameter;
        let shadow = (self.angle.min(PI / 2.0).cos() / self.closed_angle.cos()).clamp(0.0, 1.0);
        let shaft = 0.5 * self.shaft_diameter;
        // Substituting y = R sin(t) keeps the ends of the sum smooth.
        let step = PI / 2.0 / CHORDS as f64;
        let sum: f64 = (0..CHORDS)
            .map(|chord| {
                let t = (chord as f64 + 0.5) * step;
                let half = radius * t.cos();
                let covered = (half * shadow).max(shaft.min(half));
                (half - covered) * radius * t.cos() * step
            })
            .sum();
        (4.0 * sum).max(LEAK * PI * radius * radius)
    }

    /// Loss coefficients for either direction on the head of the contracted jet.
    pub fn coefficients(&self) -> TwoWay {
        let bore = 0.25 * PI * self.diameter * self.diameter;
        let jet = self.open_area() * self.discharge_coefficient;
        let head = Head {
            k: (1.0 - jet / bore).powi(2),
            area: jet,
        };
        TwoWay {
            forward: head,
            reversed: head,
        }
    }
}
