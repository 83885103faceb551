//! Pipe end that stands into the chamber, Rennels and Hudson 2012.
//!
//! # Equation
//! K = 1.12 - 22 t/d + 216 (t/d)^2 + 80 (t/d)^3; constant from t/d 0.05 on, where K = 0.57.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | t/d | `thickness_ratio` | wall thickness of the pipe over diameter of a circle of the section's area | - |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, section 9.2;
//! read through the `fluids` library (entrance_distance), which names it.
//!
//! # Range of validity
//! t/d from 0 to 0.3; a pipe that stands at least half a diameter into the chamber.
//!
//! # Limits
//! The cubic has its least value, 0.56996, at t/d 0.04956 and the constant holds from there, so that the slope
//! is continuous too; the constant is the same authors' flush entry, 0.57, while the flush entry of this
//! library is Idelchik's 0.5. Flow out through the end loses nothing here; the chamber takes the velocity head.

use super::super::Scatter;

/// Range of t/d [-].
pub const RANGE: [f64; 2] = [0.0, 0.3];

/// Where the cubic is least, the root of its derivative; a thicker wall is as good as flush [-].
const THICK: f64 = 0.049_561_302_216_274_326;

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "four methods of fluids 1.3.1 give 0.91 to 1.14 at t/d 0 and 0.62 to 0.78 at 0.02, Crane 0.78 for all",
};

/// The coefficient on the head in the section, by wall thickness over diameter.
pub fn coefficient(thickness_ratio: f64) -> f64 {
    let ratio = thickness_ratio.min(THICK);
    1.12 + ratio * (ratio * (80.0 * ratio + 216.0) - 22.0)
}
