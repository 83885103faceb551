//! Two equal bends close to each other.
//!
//! # Equation
//! K = 2 K_1(alpha) (1 - g) + K_1(2 alpha) g + f s/d, g = exp(-s/(4 d)) (1 + cos(twist)) / 2, with K_1 of a single
//! bend after Rennels and Hudson.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | r/d | `radius_ratio` | radius of either axis over hydraulic diameter | - |
//! | alpha | `angle` | angle that each turns through | rad |
//! | s/d | `spacing_ratio` | straight length between them over hydraulic diameter | - |
//! | twist | `twist` | between their planes: 0 goes on turning (U), pi turns back (Z) | rad |
//! | f | of `BendTerms` | Darcy friction factor of the wall | - |
//! | K | result | loss coefficient on the velocity head, both bends and what lies between included | - |
//!
//! # Source
//! The ends of the equation only: with nothing between and no twist two bends are one of twice the angle, and far
//! apart they are two (within 10 % in the measurements of Mylaram and Idem, ASHRAE winter meeting 2005, by its
//! abstract). What lies between, and that bends which turn back or aside cost as two, is judged: no author's
//! table for smooth bends was at hand.
//!
//! # Range of validity
//! r/d from 1 to 20, each bend to 90 degrees, s/d to 30.
//!
//! # Limits
//! Not for mitres and bends sharper than r/d 1: after Idelchik (diagram 6-13, from memory) two square elbows that turn
//! back 1.8 widths apart cost 1.8 times as much as two single ones. Counts the straight length between, so no duct for it.

use std::f64::consts::FRAC_PI_2;

use super::super::Scatter;
use super::super::outside::outside_range;
use super::{BendTerms, rennels_2012};

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [1.0, 20.0];
/// Range of each angle, with room for a right angle typed in rounded digits [rad].
pub const RANGE_ANGLE: [f64; 2] = [0.0, FRAC_PI_2 + 1e-3];
/// Range of s/d [-].
pub const RANGE_SPACING: [f64; 2] = [0.0, 30.0];

/// Diameters over which one bend forgets the other, judged [-].
const FORGOTTEN: f64 = 4.0;

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.35,
    common: 0.5,
    origin: "judged: 20 % of the single bend, and as much again for how they act on each other",
};

/// Two bends.
#[derive(Clone, Copy, Debug)]
pub struct BendPair {
    /// Radius of either axis over hydraulic diameter [-].
    pub radius_ratio: f64,
    /// Angle that each turns through [rad].
    pub angle: f64,
    /// Straight length between them over hydraulic diameter [-].
    pub spacing_ratio: f64,
    /// Angle between their planes [rad].
    pub twist: f64,
}

impl BendPair {
    /// The coefficient, alike in either direction.
    pub fn terms(&self) -> BendTerms {
        let together = (-self.spacing_ratio / FORGOTTEN).exp() * 0.5 * (1.0 + self.twist.cos());
        let single = rennels_2012::terms(self.radius_ratio, self.angle);
        let whole = rennels_2012::terms(self.radius_ratio, 2.0 * self.angle);
        let mixed = |two: f64, one: f64| 2.0 * two * (1.0 - together) + one * together;
        BendTerms {
            fixed: mixed(single.fixed, whole.fixed),
            by_friction: mixed(single.by_friction, whole.by_friction) + self.spacing_ratio,
        }
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        let apart = "straight length between over hydraulic diameter";
        let mut found = super::outside((self.radius_ratio, RANGE), (self.angle, RANGE_ANGLE));
        let spacing = outside_range("spacing", apart, self.spacing_ratio, RANGE_SPACING);
        found.extend(spacing);
        found
    }
}
