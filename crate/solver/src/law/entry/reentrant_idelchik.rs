//! Pipe end that stands into the chamber, Idelchik.
//!
//! # Equation
//! K over t/d by table, between its points by a monotone cubic.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | t/d | `thickness_ratio` | wall thickness of the pipe over diameter of a circle of the section's area | - |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 3-2, the column of a pipe that stands half
//! a diameter or more into the chamber; table read through the `fluids` library (entrance_distance, method
//! Idelchik), which names it.
//!
//! # Range of validity
//! t/d from 0 to 0.3; a pipe that stands at least half a diameter into the chamber.
//!
//! # Limits
//! From t/d 0.05 on the wall is as good as flush, K = 0.5. Flow out through the end loses nothing here; the
//! chamber takes the velocity head.

use super::super::Scatter;
use crate::curve::Curve;

/// Range of t/d [-].
pub const RANGE: [f64; 2] = [0.0, 0.3];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "four methods of fluids 1.3.1 give 0.91 to 1.14 at t/d 0 and 0.62 to 0.78 at 0.02, Crane 0.78 for all",
};

/// K over t/d.
const TABLE: Curve = Curve {
    xs: &[
        0.0, 0.004, 0.008, 0.012, 0.016, 0.02, 0.024, 0.03, 0.04, 0.05,
    ],
    ys: &[1.0, 0.94, 0.88, 0.83, 0.77, 0.72, 0.68, 0.61, 0.54, 0.50],
    flat: [false, true],
};

/// The coefficient on the head in the section, by wall thickness over diameter.
pub fn coefficient(thickness_ratio: f64) -> f64 {
    TABLE.at(thickness_ratio).value
}
