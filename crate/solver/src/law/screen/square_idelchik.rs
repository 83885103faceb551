//! Screen of square bars or perforated plate, Idelchik.
//!
//! # Equation
//! K = (0.707 sqrt(1 - s) + 1 - s)^2 / s^2.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | s | `open_part` | open part of the section | - |
//! | K | result over s^2 | loss coefficient on the velocity head of the approach | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 8-1, thin grid with sharp edges (from memory).
//!
//! # Range of validity
//! s from 0.02 to 1; Reynolds number of the holes from 1e5.
//!
//! # Limits
//! The head is taken in the open part with the stagnation pressure that arrives, and the screen chokes
//! when that part does; the jets' own contraction is not told apart. Clean and square to the flow.

use super::super::Scatter;

/// Range of the open part [-].
pub const RANGE: [f64; 2] = [0.02, 1.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "judged: this one and Blevins differ by up to 9 % at open parts of 0.1 to 0.5, 21 % at 0.8; from memory",
};

/// The coefficient on the head in the open part.
pub fn coefficient(open_part: f64) -> f64 {
    let shut = 1.0 - open_part;
    (0.707 * shut.sqrt() + shut).powi(2)
}
