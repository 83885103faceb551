//! Conical diffuser, Rennels and Hudson 2012.
//!
//! # Equation
//! K = c (1 - b^2)^2 + f (1 - b^4) / (8 sin(alpha/2)), with c by the full angle alpha:
//! to 20 degrees 8.30 tan(alpha/2)^1.75;
//! to 60 degrees 1.366 sqrt(sin(2 (alpha - 15))) - 0.170, less 3.28 (0.0625 - b^4) sqrt(0.025 (alpha - 20)) for b < 0.5;
//! above 60, without the friction term, 1.205 - 0.20 sqrt((alpha - 60)/120) for b >= 0.5 and
//! 1.205 - 3.28 (0.0625 - b^4) - 12.8 b^6 sqrt((alpha - 60)/120) for b < 0.5.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | b | from `small`, `large` | diameter ratio before over behind | - |
//! | alpha | from `length` | full angle of the cone | degree |
//! | f | `friction_factor`, assumed 0.02 | Darcy friction factor of the cone's wall | - |
//! | K | result | loss coefficient on the velocity head before | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, section 11.1;
//! read through the `fluids` library (diffuser_conical), which names it.
//!
//! # Range of validity
//! All angles; length 0 is the sudden expansion, equal areas a straight duct.
//!
//! # Limits
//! The printed formula jumps by up to 0.01 at 20 and 60 degrees and ends 0.5 % from Borda and Carnot at
//! 180: neighbours are blended within 2 degrees of 20, 5 of 60 and over the last 20, far inside the scatter.

use super::super::Scatter;
use super::{blend, cone_friction, half_angle};

/// Range of the full angle: all [rad].
pub const RANGE: [f64; 2] = [0.0, std::f64::consts::PI];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.5,
    common: 0.5,
    origin: "six methods of fluids 1.3.1 give 0.09 to 0.44 at 10 degrees (diameters 1 to 2), 0.21 to 0.84 at 20",
};

/// The coefficient on the head in the small section.
pub fn coefficient(small: f64, large: f64, length: f64, friction_factor: f64) -> f64 {
    let half_angle = half_angle(small, large, length);
    let angle = 2.0 * half_angle.to_degrees();
    let square = small / large;
    let fourth = square * square;
    let narrow = (0.0625 - fourth).max(0.0);
    let slim = 8.30 * half_angle.tan().min(1.0).powf(1.75);
    let middle = {
        let held = angle.clamp(18.0, 65.0);
        1.366 * (2.0 * (held - 15.0)).to_radians().sin().sqrt()
            - 0.170
            - 3.28 * narrow * (0.025 * (held - 20.0).max(0.0)).sqrt()
    };
    let wide = {
        let root = ((angle - 60.0).max(0.0) / 120.0).sqrt();
        let sixth = fourth * square;
        if fourth < 0.0625 {
            1.205 - 3.28 * narrow - 12.8 * sixth * root
        } else {
            1.205 - 0.20 * root
        }
    };
    let mut factor = blend(slim, middle, angle, 20.0, 2.0);
    factor = blend(factor, wide, angle, 60.0, 5.0);
    factor = blend(factor, 1.0, angle, 170.0, 10.0);
    let friction = blend(
        cone_friction(small, large, length, friction_factor),
        0.0,
        angle,
        60.0,
        5.0,
    );
    factor * (1.0 - square) * (1.0 - square) + friction
}
