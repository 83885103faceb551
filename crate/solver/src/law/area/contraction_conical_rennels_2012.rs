//! Conical contraction, Rennels and Hudson 2012.
//!
//! # Equation
//! K = f (1 - b^4) / (8 sin(alpha/2)) + 0.0696 sin(alpha/2) (1 - b^5) l^2 + (l - 1)^2,
//! l = 1 + 0.622 (alpha/pi)^0.8 (1 - 0.215 b^2 - 0.785 b^5).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | b | from `small`, `large` | diameter ratio behind over before | - |
//! | alpha | from `length` | full angle of the cone | rad |
//! | f | `friction_factor`, assumed 0.02 | Darcy friction factor of the cone's wall | - |
//! | K | result | loss coefficient on the velocity head behind | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, section 10.3;
//! read through the `fluids` library (contraction_conical), which names it.
//!
//! # Range of validity
//! All angles and diameter ratios; length 0 is the sudden contraction, equal areas a straight duct.
//!
//! # Limits
//! The friction factor does not follow the Reynolds number: the term is small. Its term does not vanish at
//! length 0 as printed, where there is no wall; it is faded out from 120 degrees on, by 0.0025 heads at most.

use super::super::Scatter;
use super::{cone_friction, half_angle};

/// Range of the full angle: all [rad].
pub const RANGE: [f64; 2] = [0.0, std::f64::consts::PI];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 1.0,
    common: 0.5,
    origin: "seven methods of fluids 1.3.1 give 0.05 to 0.25 at 30 degrees, this one the least, and 0.10 to 0.32 at 60",
};

/// The coefficient on the head in the small section.
pub fn coefficient(large: f64, small: f64, length: f64, friction_factor: f64) -> f64 {
    let half_angle = half_angle(small, large, length);
    let square = small / large;
    let fifth = square * square * square.sqrt();
    let narrowing = 1.0 - 0.215 * square - 0.785 * fifth;
    let jet = 1.0 + 0.622 * (2.0 * half_angle / std::f64::consts::PI).powf(0.8) * narrowing;
    let sine = half_angle.sin();
    let fade = (3.0 - 6.0 * half_angle / std::f64::consts::PI).clamp(0.0, 1.0);
    let friction =
        cone_friction(small, large, length, friction_factor) * fade * fade * (3.0 - 2.0 * fade);
    friction + 0.0696 * sine * (1.0 - fifth) * jet * jet + (jet - 1.0) * (jet - 1.0)
}
