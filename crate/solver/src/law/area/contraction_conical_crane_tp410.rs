//! Conical contraction, Crane TP-410.
//!
//! # Equation
//! K = 0.8 sin(alpha/2) (1 - A2/A1) up to 45 degrees of the full angle alpha, 0.5 sqrt(sin(alpha/2)) (1 - A2/A1)
//! above.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | A1, A2 | `large`, `small` | sections before and behind | m2 |
//! | alpha | from `length` | full angle of the cone | rad |
//! | K | result | loss coefficient on the velocity head behind | - |
//!
//! # Source
//! Crane Co., Flow of Fluids Through Valves, Fittings and Pipe, TP-410, 2009 on, page A-27; read through the
//! `fluids` library (contraction_conical_Crane), which names it.
//!
//! # Range of validity
//! All angles; length 0 is a sudden contraction of K = 0.5 (1 - A2/A1).
//!
//! # Limits
//! The cone's wall friction is not told apart, and a long slim cone loses less and less. The printed formula
//! steps by 1 % at 45 degrees; neighbours are blended within 3 degrees of it.

use super::super::Scatter;
use super::{blend, half_angle};

/// Range of the full angle: all [rad].
pub const RANGE: [f64; 2] = [0.0, std::f64::consts::PI];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.7,
    common: 0.5,
    origin: "seven methods of fluids 1.3.1 give 0.05 to 0.25 at 30 degrees and 0.10 to 0.32 at 60, this one in their midst",
};

/// The coefficient on the head in the small section.
pub fn coefficient(large: f64, small: f64, length: f64) -> f64 {
    let half = half_angle(small, large, length);
    let sine = half.sin();
    let degrees = 2.0 * half.to_degrees();
    blend(0.8 * sine, 0.5 * sine.sqrt(), degrees, 45.0, 3.0) * (1.0 - small / large)
}
