//! Sharp-edged entry flush with a wall, Idelchik.
//!
//! # Equation
//! K = 0.5.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | A | `area` | section entered | m2 |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 3-1; read through the `fluids`
//! library (entrance_sharp, method Idelchik), which names it. Rennels and Hudson give 0.57.
//!
//! # Range of validity
//! Turbulent flow (Reynolds number above 1e4), a wall much wider than the section.
//!
//! # Limits
//! Flow out through the entry loses nothing here; the chamber takes the velocity head.

use super::super::{Head, Scatter, TwoWay};

/// Range of the Reynolds number, not checked: the law knows the geometry alone [-].
pub const RANGE: [f64; 2] = [1e4, f64::INFINITY];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.5,
    origin: "six methods of fluids 1.3.1 give 0.50 to 0.57; real edges are a little rounded, which lowers it",
};

/// A sharp entry.
#[derive(Clone, Copy, Debug)]
pub struct SharpEntry {
    /// Area of the section entered [m2].
    pub area: f64,
}

impl SharpEntry {
    /// Loss coefficients for either direction.
    pub fn coefficients(&self) -> TwoWay {
        TwoWay {
            forward: Head {
                k: 0.5,
                area: self.area,
            },
            reversed: Head {
                k: 0.0,
                area: self.area,
            },
        }
    }

    /// Fields outside the range: none, since any size is inside it.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        Vec::new()
    }
}
