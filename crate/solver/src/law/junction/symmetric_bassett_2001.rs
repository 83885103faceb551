//! Air from the side leg into both runs, or from both runs into the side leg: the stated fallback.
//!
//! # Equation
//! Dividing, each run leg: K = 1 + (q psi)^2 - 2 q psi cos(0.75 theta), with q its part of the stem's flow.
//! Combining, each run leg: K = 1 + psi^2 + 3 psi^2 (q^2 - q).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | q | `q` | this run leg's flow over the stem's | - |
//! | psi | from `area_ratio` | stem (side) area over run area | - |
//! | theta | `angle` | taken as 90 degrees: one run leg turns more, the other less | rad |
//! | K | result | on the head of the stem | - |
//!
//! # Source
//! Dividing: Bassett, Winterbone and Pearson 2001, eq. 27, each run leg as a branch of the stem. Combining:
//! Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 7-29 and p. 471, read in two secondary texts,
//! one for equal areas and one for any, which agree but for a factor A (table 7-1, 0.55 to 1) of the second.
//! At q 0.5 and equal areas the value, 1.25, is what the momentum balance along the stem gives.
//!
//! # Range of validity
//! Right angle, equal areas; used for other angles for want of better.
//!
//! # Limits
//! Idelchik gives 1.08 (welded) to 1.38 (threaded) where the dividing formula gives 0.87 at equal parts.

use super::{Geometry, outside_angle, outside_area_ratio, polynomial};
use crate::law::Slope;

/// Range of the area ratio [-].
pub const RANGE: [f64; 2] = [0.5, 1.0];
/// Range of the angle, a right one to the rounding of degrees [rad].
pub const RANGE_ANGLE: [f64; 2] = [1.570, 1.572];

/// One standard deviation of K, dividing [-]: 0.21 to Idelchik's value for welded tees.
pub const SCATTER: f64 = 0.2;
/// One standard deviation of K, combining [-]: half of the 0.56 by which the factor A lowers K at q 0.5.
pub const SCATTER_COMBINING: f64 = 0.3;

/// Loss from the stem to one run leg.
pub fn stem_dividing(geometry: &Geometry, q: f64) -> Slope {
    let psi = geometry.area_ratio;
    let cosine = (0.75 * std::f64::consts::FRAC_PI_2).cos();
    polynomial(&[1.0, -2.0 * psi * cosine, psi * psi], q)
}

/// Loss from one run leg to the stem.
pub fn stem_combining(geometry: &Geometry, q: f64) -> Slope {
    let square = geometry.area_ratio * geometry.area_ratio;
    polynomial(&[1.0 + square, -3.0 * square, 3.0 * square], q)
}

/// Fields outside the range.
pub fn outside(geometry: &Geometry) -> Vec<(&'static str, String)> {
    outside_area_ratio(geometry, RANGE)
        .into_iter()
        .chain(outside_angle(geometry, RANGE_ANGLE))
        .collect()
}
