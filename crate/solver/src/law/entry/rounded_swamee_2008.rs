//! Rounded entry flush with a wall, Swamee and Sharma 2008.
//!
//! # Equation
//! K = 0.5 / (1 + 36 (r/d)^1.2).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | r/d | `radius_ratio` | radius of the edge over diameter of a circle of the section's area | - |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! P. K. Swamee, A. K. Sharma, Design of Water Supply Pipe Networks, Wiley 2008, chapter 2;
//! read through the `fluids` library (entrance_rounded, method Swamee), which names it.
//!
//! # Range of validity
//! r/d from 0 to 1.
//!
//! # Limits
//! Round sections. Methods of other authors differ by a factor of 3 at r/d = 0.1, hence the scatter.
//! Flow out through a rounded edge loses nothing here; the chamber takes the velocity head.

use super::super::Scatter;

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [0.0, 1.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.4,
    common: 0.5,
    origin: "six methods of fluids 1.3.1 give 0.05 to 0.20 at r/d 0.1, this one 0.15, and 0.28 to 0.40 at 0.02",
};

/// The coefficient on the head in the section, by edge radius over diameter.
pub fn coefficient(radius_ratio: f64) -> f64 {
    0.5 / (1.0 + 36.0 * radius_ratio.powf(1.2))
}
