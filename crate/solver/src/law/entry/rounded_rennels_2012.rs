//! Rounded entry flush with a wall, Rennels and Hudson 2012.
//!
//! # Equation
//! K = 0.0696 (1 - 0.569 r/d) lambda^2 + (lambda - 1)^2,
//! lambda = 1 + 0.622 (1 - 0.30 sqrt(r/d) - 0.70 r/d)^4; r/d above 1 counts as 1.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | r/d | `radius_ratio` | radius of the edge over diameter of a circle of the section's area | - |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, section 9.2.2;
//! read through the `fluids` library (entrance_rounded), which names it.
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
    origin: "six methods of fluids 1.3.1 give 0.05 to 0.20 at r/d 0.1, this one the most, and 0.28 to 0.40 at 0.02",
};

/// The coefficient on the head in the section, by edge radius over diameter.
pub fn coefficient(radius_ratio: f64) -> f64 {
    let ratio = radius_ratio.min(1.0);
    let contraction = 1.0 + 0.622 * (1.0 - 0.30 * ratio.sqrt() - 0.70 * ratio).powi(4);
    0.0696 * (1.0 - 0.569 * ratio) * contraction.powi(2) + (contraction - 1.0).powi(2)
}
