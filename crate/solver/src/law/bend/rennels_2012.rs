//! Smooth bend of constant section, Rennels and Hudson 2012.
//!
//! # Equation
//! K = f alpha r/d + (0.10 + 2.4 f) sin(alpha/2) + 6.6 f [sqrt(sin(alpha/2)) + sin(alpha/2)] / (r/d)^(4 alpha/pi).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | r/d | `radius_ratio` | radius of the axis over hydraulic diameter | - |
//! | alpha | `angle` | angle turned through | rad |
//! | f | of `BendTerms` | Darcy friction factor of the bend's wall, with sqrt(Re^2 + 4000^2) for Re | - |
//! | K | result | loss coefficient on the velocity head, friction along the bend included | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, section 15.4;
//! read through the `fluids` library (bend_rounded), which names it.
//!
//! # Range of validity
//! r/d from 0.5 to 20, angle to 180 degrees.
//!
//! # Limits
//! Settled turbulent flow before and behind. The bend's own friction is in it: no duct for its length.
//! r/d below 0.5, an inner edge sharper than square, counts as 0.5; beyond 180 degrees K grows with the angle.
//! Towards angle 0 K goes to 0 with its square root.

use std::f64::consts::PI;

use super::super::Scatter;
use super::BendTerms;

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [0.5, 20.0];
/// Range of the angle [rad].
pub const RANGE_ANGLE: [f64; 2] = [0.0, PI];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "four authors at r/d 1.5 give 0.23 to 0.28 at 90 degrees, 0.11 to 0.20 at 45 (fluids 1.3.1: Rennels, Miller, Ito, Crane)",
};

/// The coefficient of a bend by its axis radius over diameter and its angle [rad].
pub fn terms(radius_ratio: f64, angle: f64) -> BendTerms {
    let held = angle.min(PI);
    let ratio = radius_ratio.max(RANGE[0]);
    let sine = (0.5 * held).sin();
    let tightness = ratio.powf(-4.0 * held / PI);
    let turns = (angle / PI).max(1.0);
    BendTerms {
        fixed: turns * 0.10 * sine,
        by_friction: turns * (held * ratio + 2.4 * sine + 6.6 * (sine.sqrt() + sine) * tightness),
    }
}
