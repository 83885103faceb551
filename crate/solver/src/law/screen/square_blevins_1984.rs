//! Screen of square bars or perforated plate, Blevins 1984.
//!
//! # Equation
//! K over s by table; between its points K s^2 by a monotone cubic.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | s | `open_part` | open part of the section | - |
//! | K | result over s^2 | loss coefficient on the velocity head of the approach | - |
//!
//! # Source
//! R. D. Blevins, Applied Fluid Dynamics Handbook, Van Nostrand Reinhold 1984; table read through the `fluids`
//! library (filters.square_edge_screen), which names it and goes straight from point to point in K.
//!
//! # Range of validity
//! s from 0.0016 to 1.
//!
//! # Limits
//! The head is taken in the open part with the stagnation pressure that arrives, and the screen chokes
//! when that part does; the jets' own contraction is not told apart. Clean and square to the flow.

use super::super::Scatter;
use crate::curve::Curve;

/// Range of the open part [-].
pub const RANGE: [f64; 2] = [0.0016, 1.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "judged: this one and Idelchik (from memory) differ by up to 9 % at open parts of 0.1 to 0.5, 21 % at 0.8",
};

/// s of K.
const OPEN: [f64; 24] = [
    0.0015625, 0.003125, 0.00625, 0.0125, 0.025, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45,
    0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 1.0,
];
/// K.
const APPROACH: [f64; 24] = [
    1_024_000.0,
    256_000.0,
    64_000.0,
    16_000.0,
    4_000.0,
    1_000.0,
    250.0,
    85.0,
    52.0,
    30.0,
    17.0,
    11.0,
    7.7,
    5.5,
    3.8,
    2.8,
    2.0,
    1.5,
    1.1,
    0.78,
    0.53,
    0.35,
    0.08,
    0.0,
];

const TABLE: Curve = Curve {
    xs: &OPEN,
    ys: &{
        let mut heads = APPROACH;
        let mut point = 0;
        while point < heads.len() {
            heads[point] *= OPEN[point] * OPEN[point];
            point += 1;
        }
        heads
    },
    flat: [true, false],
};

/// The coefficient on the head in the open part.
pub fn coefficient(open_part: f64) -> f64 {
    TABLE.at(open_part).value
}
