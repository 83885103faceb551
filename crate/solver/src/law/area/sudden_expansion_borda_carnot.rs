//! Sudden expansion, Borda and Carnot.
//!
//! # Equation
//! K = (1 - A1/A2)^2.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | A1 | `small` | section before | m2 |
//! | A2 | `large` | section behind | m2 |
//! | K | result | loss coefficient on the velocity head before | - |
//!
//! # Source
//! Momentum balance; any textbook, for instance Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-1.
//!
//! # Range of validity
//! Turbulent flow, uniform profile.
//!
//! # Limits
//! Head at low speed; near Mach 1 the true loss differs.

use super::super::Scatter;

/// Range of the area ratio: all [-].
pub const RANGE: [f64; 2] = [0.0, 1.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.5,
    origin: "momentum factor of real profiles, 1.0 to 1.1; common practice",
};

/// The coefficient on the head in the small section.
pub fn coefficient(small: f64, large: f64) -> f64 {
    let rest = 1.0 - small / large;
    rest * rest
}
