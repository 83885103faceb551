//! Sudden contraction, Idelchik.
//!
//! # Equation
//! K = 0.5 (1 - A2/A1)^0.75.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | A1 | `large` | section before | m2 |
//! | A2 | `small` | section behind | m2 |
//! | K | result | loss coefficient on the velocity head behind | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-9; the form read through FluidDissipation
//! (dp_suddenChange, dp_thickEdgedOverall), which names it.
//!
//! # Range of validity
//! All area ratios, Reynolds number above 1e4.
//!
//! # Limits
//! Sharp edge, turbulent flow. Towards equal sections K goes to 0 steeper than with their difference.

use super::super::Scatter;

/// Range of the area ratio: all [-].
pub const RANGE: [f64; 2] = [0.0, 1.0];

/// The source begins here [-].
pub const LEAST_REYNOLDS: f64 = 1e4;

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.15,
    common: 0.5,
    origin: "three methods of fluids 1.3.1 give 0.42 to 0.53 at diameter ratio 0.4 and 0.26 to 0.35 at 0.7; this one 0.44 and 0.30",
};

/// The coefficient on the head in the small section.
pub fn coefficient(large: f64, small: f64) -> f64 {
    0.5 * (1.0 - small / large).powf(0.75)
}
