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
//! | f | `friction_factor` | Darcy friction factor of the bend's wall | - |
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

use super::super::{Scatter, Slope};

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [0.5, 20.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "0.22 to 0.28 among Rennels, Miller, Crane and Ito at r/d 1.5, 90 degrees",
};

/// A bend.
#[derive(Clone, Copy, Debug)]
pub struct RoundedBend {
    /// Axis radius over hydraulic diameter [-].
    pub radius_ratio: f64,
    /// Angle turned through [rad].
    pub angle: f64,
}

impl RoundedBend {
    /// The coefficient and its derivative with the friction factor.
    pub fn coefficient(&self, friction_factor: f64) -> Slope {
        let sine = (0.5 * self.angle).sin();
        let tightness = self
            .radius_ratio
            .powf(-4.0 * self.angle / std::f64::consts::PI);
        let derivative =
            self.angle * self.radius_ratio + 2.4 * sine + 6.6 * (sine.sqrt() + sine) * tightness;
        Slope {
            value: 0.10 * sine + friction_factor * derivative,
            derivative,
        }
    }
}
