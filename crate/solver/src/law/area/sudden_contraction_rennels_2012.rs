//! Sudden contraction, Rennels and Hudson 2012.
//!
//! # Equation
//! K = 0.0696 (1 - b^5) l^2 + (l - 1)^2, l = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | b | from `small`, `large` | diameter ratio behind over before | - |
//! | K | result | loss coefficient on the velocity head behind | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, section 10.2;
//! read through the `fluids` library (contraction_sharp), which names it.
//!
//! # Range of validity
//! All diameter ratios up to 1.
//!
//! # Limits
//! Sharp edge, turbulent flow. The head is taken with the stagnation pressure that arrives.

use super::super::Scatter;

/// Range of the diameter ratio: all [-].
pub const RANGE: [f64; 2] = [0.0, 1.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.15,
    common: 0.5,
    origin: "three methods of fluids 1.3.1 give 0.42 to 0.53 at diameter ratio 0.4 and 0.26 to 0.35 at 0.7",
};

/// The coefficient on the head in the small section.
pub fn coefficient(large: f64, small: f64) -> f64 {
    let square = small / large;
    let fifth = square * square * square.sqrt();
    let jet = 1.0 + 0.622 * (1.0 - 0.215 * square - 0.785 * fifth);
    0.0696 * (1.0 - fifth) * jet * jet + (jet - 1.0) * (jet - 1.0)
}
