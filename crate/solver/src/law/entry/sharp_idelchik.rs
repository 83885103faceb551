//! Sharp-edged entry flush with a wall, Idelchik.
//!
//! # Equation
//! K = 0.5.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 3-1; read through the `fluids`
//! library (entrance_sharp, method Idelchik), which names it.
//!
//! # Range of validity
//! Turbulent flow (Reynolds number above 1e4), a wall much wider than the section.
//!
//! # Limits
//! Flow out through the entry loses nothing here; the chamber takes the velocity head.

use super::super::Scatter;

/// Range of the Reynolds number, not checked: the law knows the geometry alone [-].
pub const RANGE: [f64; 2] = [1e4, f64::INFINITY];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.5,
    origin: "six methods of fluids 1.3.1 give 0.50 to 0.57; real edges are a little rounded, which lowers it",
};

/// The coefficient on the head in the section.
pub const COEFFICIENT: f64 = 0.5;
