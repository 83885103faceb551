//! Bends. Every author's coefficient is a number plus a multiple of the wall's friction factor.

pub mod crane_tp410;
pub mod idelchik;
pub mod pair_miller_1990;
pub mod rennels_2012;

use super::outside::outside_range;
use super::{Scatter, Slope};
use crate::study::BendLaw;

/// A bend.
#[derive(Clone, Copy, Debug)]
pub struct RoundedBend {
    /// Axis radius over hydraulic diameter [-].
    pub radius_ratio: f64,
    /// Angle turned through [rad].
    pub angle: f64,
    /// Hydraulic diameter [m].
    pub diameter: f64,
    /// Whose coefficient is used.
    pub law: BendLaw,
}

/// How a bend's coefficient goes with the Darcy friction factor of its wall.
#[derive(Clone, Copy, Debug)]
pub struct BendTerms {
    /// What does not depend on it [-].
    pub fixed: f64,
    /// What is multiplied with it [-].
    pub by_friction: f64,
}

impl BendTerms {
    /// The coefficient and its derivative with the friction factor.
    pub fn coefficient(&self, friction_factor: f64) -> Slope {
        Slope {
            value: self.fixed + friction_factor * self.by_friction,
            derivative: self.by_friction,
        }
    }
}

impl RoundedBend {
    /// The author's coefficient, alike in either direction.
    pub fn terms(&self) -> BendTerms {
        match self.law {
            BendLaw::Rennels2012 => rennels_2012::terms(self.radius_ratio, self.angle),
            BendLaw::Idelchik => idelchik::terms(self.radius_ratio, self.angle),
            BendLaw::CraneTp410 => crane_tp410::terms(self.radius_ratio, self.angle, self.diameter),
        }
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        let (radius, angle) = match self.law {
            BendLaw::Rennels2012 => (rennels_2012::RANGE, rennels_2012::RANGE_ANGLE),
            BendLaw::Idelchik => (idelchik::RANGE, idelchik::RANGE_ANGLE),
            BendLaw::CraneTp410 => (crane_tp410::RANGE, crane_tp410::RANGE_ANGLE),
        };
        outside((self.radius_ratio, radius), (self.angle, angle))
    }
}

/// The fields `radius` and `angle`, each value with its range, where they are outside it.
fn outside(
    (radius_ratio, radius): (f64, [f64; 2]),
    (angle, angles): (f64, [f64; 2]),
) -> Vec<(&'static str, String)> {
    let tight = "axis radius over hydraulic diameter";
    let mut found = Vec::new();
    found.extend(outside_range("radius", tight, radius_ratio, radius));
    found.extend(outside_range("angle", "angle in radians", angle, angles));
    found
}

impl BendLaw {
    /// How far the author's coefficient may lie from the truth.
    pub fn scatter(self) -> Scatter {
        match self {
            Self::Rennels2012 => rennels_2012::SCATTER,
            Self::Idelchik => idelchik::SCATTER,
            Self::CraneTp410 => crane_tp410::SCATTER,
        }
    }
}
