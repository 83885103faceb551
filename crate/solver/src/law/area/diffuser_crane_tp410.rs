//! Conical diffuser, Crane TP-410.
//!
//! # Equation
//! K = 2.6 sin(alpha/2) (1 - A1/A2)^2 up to 45 degrees of the full angle alpha, (1 - A1/A2)^2 above.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | A1, A2 | `small`, `large` | sections before and behind | m2 |
//! | alpha | from `length` | full angle of the cone | rad |
//! | K | result | loss coefficient on the velocity head before | - |
//!
//! # Source
//! Crane Co., Flow of Fluids Through Valves, Fittings and Pipe, TP-410, 2009 on, page A-27; read through the
//! `fluids` library (diffuser_conical_Crane), which names it.
//!
//! # Range of validity
//! All angles; length 0 is the sudden expansion.
//!
//! # Limits
//! The cone's wall friction is not told apart, and a long slim cone loses less and less. The printed formula
//! steps by 0.5 % at 45 degrees; neighbours are blended within 3 degrees of it.

use super::super::Scatter;
use super::{blend, half_angle};

/// Range of the full angle: all [rad].
pub const RANGE: [f64; 2] = [0.0, std::f64::consts::PI];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.5,
    common: 0.5,
    origin: "six methods of fluids 1.3.1 give 0.09 to 0.44 at 10 degrees (diameters 1 to 2), 0.21 to 0.84 at 20",
};

/// The coefficient on the head in the small section.
pub fn coefficient(small: f64, large: f64, length: f64) -> f64 {
    let half = half_angle(small, large, length);
    let rest = 1.0 - small / large;
    let part = blend(2.6 * half.sin(), 1.0, 2.0 * half.to_degrees(), 45.0, 3.0);
    part * rest * rest
}
