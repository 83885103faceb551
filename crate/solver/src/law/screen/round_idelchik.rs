//! Screen of round wires, Idelchik.
//!
//! # Equation
//! K = 1.3 (1 - s) + (1/s - 1)^2.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | s | `open_part` | open part of the section | - |
//! | K | result over s^2 | loss coefficient on the velocity head of the approach | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 8-6, brass wire (from memory).
//!
//! # Range of validity
//! s from 0.2 to 0.9; Reynolds number of the wire from 400.
//!
//! # Limits
//! The head is taken in the open part with the stagnation pressure that arrives, and the screen chokes
//! when that part does; the jets' own contraction is not told apart. Clean and square to the flow.

use super::super::Scatter;

/// Range of the open part [-].
pub const RANGE: [f64; 2] = [0.2, 0.9];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "judged: this one and Blevins differ by 6 % at open parts of 0.5 and 0.7, 21 % at 0.3; from memory",
};

/// The coefficient on the head in the open part.
pub fn coefficient(open_part: f64) -> f64 {
    let shut = 1.0 - open_part;
    1.3 * shut * open_part * open_part + shut * shut
}
