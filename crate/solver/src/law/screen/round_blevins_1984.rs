//! Screen of round wires, Blevins 1984.
//!
//! # Equation
//! K = beta (1 - s^2) / s^2; beta over the Reynolds number by table, between its points by a monotone cubic.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | s | `open_part` | open part of the section | - |
//! | K | result over s^2 | loss coefficient on the velocity head of the approach | - |
//! | - | `reynolds` | Reynolds number of the gap between two wires at the speed in it | - |
//!
//! # Source
//! R. D. Blevins, Applied Fluid Dynamics Handbook, Van Nostrand Reinhold 1984; table read through the `fluids`
//! library (filters.round_edge_screen), which names it.
//!
//! # Range of validity
//! s from 0.05 to 0.8; Reynolds number from 20 to 400, beyond which the end's value holds.
//!
//! # Limits
//! The head is taken in the open part with the stagnation pressure that arrives, and the screen chokes
//! when that part does; the jets' own contraction is not told apart. Clean and square to the flow.

use super::super::{Scatter, Slope};
use crate::curve::Curve;

/// Range of the open part [-].
pub const RANGE: [f64; 2] = [0.05, 0.8];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "judged: this one and Idelchik (from memory) differ by 6 % at open parts of 0.5 and 0.7, 21 % at 0.3",
};

/// beta over the Reynolds number.
const BETA: Curve = Curve {
    xs: &[20.0, 30.0, 40.0, 60.0, 80.0, 100.0, 200.0, 400.0],
    ys: &[1.3, 1.1, 0.95, 0.83, 0.75, 0.70, 0.60, 0.52],
    flat: [true, true],
};

/// What is multiplied with beta, on the head in the open part.
pub fn factor(open_part: f64) -> f64 {
    1.0 - open_part * open_part
}

/// Beta and its derivative with the Reynolds number.
pub fn by_reynolds(reynolds: f64) -> Slope {
    BETA.at(reynolds)
}
