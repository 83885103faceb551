//! Rounded entry flush with a wall, Idelchik.
//!
//! # Equation
//! K over r/d by table, between its points by a monotone cubic.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | r/d | `radius_ratio` | radius of the edge over diameter of a circle of the section's area | - |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 3-4, edge flush with a wall; table read
//! through the `fluids` library (entrance_rounded, method Idelchik), which names it.
//!
//! # Range of validity
//! r/d from 0 to 1; the table's last line, 0.2, holds for all larger ones.
//!
//! # Limits
//! Round sections, turbulent flow. The `fluids` library joins the same points by another curve, up to 0.003 away.
//! Flow out through a rounded edge loses nothing here; the chamber takes the velocity head.

use super::super::Scatter;
use crate::curve::Curve;

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [0.0, 1.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.4,
    common: 0.5,
    origin: "six methods of fluids 1.3.1 give 0.05 to 0.20 at r/d 0.1, this one 0.11, and 0.28 to 0.40 at 0.02",
};

/// K over r/d.
const TABLE: Curve = Curve {
    xs: &[
        0.0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.12, 0.16, 0.2,
    ],
    ys: &[
        0.5, 0.44, 0.37, 0.31, 0.26, 0.22, 0.20, 0.15, 0.09, 0.06, 0.03,
    ],
    flat: [false, false],
};

/// The coefficient on the head in the section, by edge radius over diameter.
pub fn coefficient(radius_ratio: f64) -> f64 {
    TABLE.at(radius_ratio).value
}
