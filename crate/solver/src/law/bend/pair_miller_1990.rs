//! Two equal bends close to each other, Miller 1990.
//!
//! # Equation
//! K = 2 C K_1(alpha) + f s/d, with K_1 of a single bend after Rennels and Hudson; C over r/d, s/d and twist by
//! table for s/d 0, 1, 4 and 8, and 1 from s/d 30 on; between its points by monotone cubics, over s/d in
//! ln(1 + s/d).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | r/d | `radius_ratio` | radius of either axis over hydraulic diameter | - |
//! | alpha | `angle` | angle that each turns through | rad |
//! | s/d | `spacing_ratio` | straight length between them over hydraulic diameter | - |
//! | twist | `twist` | between their planes: 0 goes on turning (U), pi turns back (Z) | rad |
//! | f | of `BendTerms` | Darcy friction factor of the wall | - |
//! | C | `interaction` | what two bends cost over what they would far apart | - |
//! | K | result | loss coefficient on the velocity head, both bends and what lies between included | - |
//!
//! # Source
//! D. S. Miller, Internal Flow Systems, 2nd ed., 1990, table 10.1, bends alike; read through a public program for
//! pipe bends in series that names the table and takes C as 1 from 30 diameters on after the same author. There 0
//! degrees is what turns back and 180 what goes on turning: so read, Miller's own single bend of 180 degrees costs
//! 0.58, 0.62 and 0.71 times two of 90 at r/d 1, 2 and 3 (bend_rounded_Miller of `fluids` 1.3.1), where the table
//! has 0.53, 0.58 and 0.71.
//!
//! # Range of validity
//! r/d from 1 to 3, each bend about 90 degrees, s/d to 30.
//!
//! # Limits
//! The factor is that of right angles; other bends take the same one. A point at r/d 1, s/d 8 and 150 degrees reads
//! 0.91 between 0.81 and 0.80 and counts as 0.81. Not for mitres and bends sharper than r/d 1: after Idelchik
//! (diagram 6-13, from memory) two square elbows that turn back 1.8 widths apart cost 1.8 times as much as two
//! single ones. Counts the straight length between, so no duct for it.

use std::f64::consts::{FRAC_PI_2, PI};

use super::super::Scatter;
use super::super::outside::outside_range;
use super::{BendTerms, rennels_2012};
use crate::curve::Curve;

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [1.0, 3.0];
/// Range of each angle: a right one, with room for what is nearly so [rad].
pub const RANGE_ANGLE: [f64; 2] = [FRAC_PI_2 - 0.1, FRAC_PI_2 + 0.1];
/// Range of s/d [-].
pub const RANGE_SPACING: [f64; 2] = [0.0, 30.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.25,
    common: 0.5,
    origin: "20 % of the single bend and 15 % of the factor: with nothing between and no twist it is 0 to 9 % below one bend of 180 degrees after Miller, 6 to 24 % below one after Rennels",
};

/// Twists of C [degrees].
const TWISTS: [f64; 7] = [0.0, 30.0, 60.0, 90.0, 120.0, 150.0, 180.0];
/// s/d of C, and the one from which it is 1.
const SPACINGS: [f64; 5] = [0.0, 1.0, 4.0, 8.0, 30.0];
/// r/d of C.
const RADII: [f64; 3] = [1.0, 2.0, 3.0];
/// C: a row by spacing for each r/d in turn, over the twist.
const FACTORS: [[[f64; 7]; 4]; 3] = [
    [
        [0.53, 0.60, 0.69, 0.81, 1.04, 1.16, 1.00],
        [0.58, 0.63, 0.69, 0.79, 0.93, 1.04, 0.86],
        [0.71, 0.73, 0.72, 0.74, 0.76, 0.94, 0.71],
        [0.80, 0.81, 0.81, 0.82, 0.82, 0.83, 0.81],
    ],
    [
        [0.58, 0.63, 0.68, 0.73, 0.77, 0.79, 0.86],
        [0.62, 0.65, 0.68, 0.71, 0.74, 0.79, 0.83],
        [0.72, 0.69, 0.69, 0.70, 0.70, 0.71, 0.72],
        [0.80, 0.80, 0.80, 0.80, 0.81, 0.81, 0.77],
    ],
    [
        [0.71, 0.74, 0.76, 0.78, 0.81, 0.83, 0.86],
        [0.73, 0.75, 0.77, 0.79, 0.83, 0.85, 0.87],
        [0.79, 0.79, 0.80, 0.80, 0.81, 0.81, 0.82],
        [0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85],
    ],
];

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
        let single = rennels_2012::terms(self.radius_ratio, self.angle);
        let two = 2.0 * self.interaction();
        BendTerms {
            fixed: two * single.fixed,
            by_friction: two * single.by_friction + self.spacing_ratio,
        }
    }

    /// What the two cost over what they would far apart [-].
    pub fn interaction(&self) -> f64 {
        let degrees = 180.0 * self.twist / PI;
        let by_radius = FACTORS.map(|table| {
            let mut by_spacing = [1.0; 5];
            for (factor, row) in by_spacing.iter_mut().zip(&table) {
                // Twisted a little one way or the other is the same, so the curve is flat at both ends.
                *factor = through(&TWISTS, row, degrees);
            }
            let settled = Curve {
                xs: &SPACINGS.map(f64::ln_1p),
                ys: &by_spacing,
                flat: [false, true],
            };
            settled.at(self.spacing_ratio.ln_1p()).value
        });
        through(&RADII, &by_radius, self.radius_ratio)
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

/// A curve through points that keeps the ends' values without a corner.
fn through(xs: &[f64], ys: &[f64], x: f64) -> f64 {
    let flat = [true, true];
    Curve { xs, ys, flat }.at(x).value
}
