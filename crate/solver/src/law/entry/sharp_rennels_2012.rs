//! Sharp-edged entry flush with a wall, Rennels and Hudson 2012.
//!
//! # Equation
//! K = 0.57.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, section 9.2.1;
//! read through the `fluids` library (entrance_sharp), which names it.
//!
//! # Range of validity
//! Turbulent flow (Reynolds number above 1e4), a wall much wider than the section.
//!
//! # Limits
//! A truly sharp edge. Flow out through the entry loses nothing here; the chamber takes the velocity head.

use super::super::Scatter;

/// Range of the Reynolds number, not checked: the law knows the geometry alone [-].
pub const RANGE: [f64; 2] = [1e4, f64::INFINITY];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.5,
    origin: "six methods of fluids 1.3.1 give 0.50 to 0.57, this one the most",
};

/// The coefficient on the head in the section.
pub const COEFFICIENT: f64 = 0.57;
