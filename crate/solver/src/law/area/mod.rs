//! Changes of section.

pub mod contraction_conical_crane_tp410;
pub mod contraction_conical_rennels_2012;
pub mod diffuser_crane_tp410;
pub mod diffuser_rennels_2012;
pub mod sudden_contraction_idelchik;
pub mod sudden_contraction_rennels_2012;
pub mod sudden_expansion_borda_carnot;

use super::{Head, Scatter, TwoWay};
use crate::study::{ConeLaw, StepLaw};

/// A sudden change of section.
#[derive(Clone, Copy, Debug)]
pub struct SuddenChange {
    /// Area towards the `from` end [m2].
    pub area_from: f64,
    /// Area towards the `to` end [m2].
    pub area_to: f64,
    /// Whose coefficient is used where it narrows; where it widens it is Borda's and Carnot's.
    pub law: StepLaw,
}

/// A conical change of section.
#[derive(Clone, Copy, Debug)]
pub struct GradualChange {
    /// Area towards the `from` end [m2].
    pub area_from: f64,
    /// Area towards the `to` end [m2].
    pub area_to: f64,
    /// Length along the axis [m].
    pub length: f64,
    /// Whose coefficients are used.
    pub law: ConeLaw,
}

impl SuddenChange {
    /// Loss coefficients for either direction, both on the head in the smaller section.
    pub fn coefficients(&self) -> TwoWay {
        let small = self.area_from.min(self.area_to);
        let large = self.area_from.max(self.area_to);
        let widening = Head {
            k: sudden_expansion_borda_carnot::coefficient(small, large),
            area: small,
        };
        let narrowing = Head {
            k: match self.law {
                StepLaw::Rennels2012 => sudden_contraction_rennels_2012::coefficient(large, small),
                StepLaw::Idelchik => sudden_contraction_idelchik::coefficient(large, small),
            },
            area: small,
        };
        two_way(self.area_from <= self.area_to, widening, narrowing)
    }

    /// Fields outside the range: none, since all ratios and angles are inside it.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        Vec::new()
    }
}

impl GradualChange {
    /// Loss coefficients for either direction, both on the head in the smaller section.
    pub fn coefficients(&self) -> TwoWay {
        let small = self.area_from.min(self.area_to);
        let large = self.area_from.max(self.area_to);
        let widening = self.law.widening(small, large, self.length, CONE_FRICTION);
        let narrowing = self.law.narrowing(large, small, self.length, CONE_FRICTION);
        let head = |k: f64| Head { k, area: small };
        let (widening, narrowing) = (head(widening), head(narrowing));
        two_way(self.area_from <= self.area_to, widening, narrowing)
    }

    /// Fields outside the range: none, since all ratios and angles are inside it.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        Vec::new()
    }
}

impl StepLaw {
    /// How far the coefficient may lie from the truth where the section widens, or narrows.
    pub fn scatter(self, widens: bool) -> Scatter {
        match (widens, self) {
            (true, _) => sudden_expansion_borda_carnot::SCATTER,
            (false, Self::Rennels2012) => sudden_contraction_rennels_2012::SCATTER,
            (false, Self::Idelchik) => sudden_contraction_idelchik::SCATTER,
        }
    }
}

impl ConeLaw {
    /// Coefficient of a widening cone, on the head in its smaller section; Crane's has no wall friction of its own.
    pub fn widening(self, small: f64, large: f64, length: f64, friction_factor: f64) -> f64 {
        match self {
            Self::Rennels2012 => {
                diffuser_rennels_2012::coefficient(small, large, length, friction_factor)
            }
            Self::CraneTp410 => diffuser_crane_tp410::coefficient(small, large, length),
        }
    }

    /// The same of a narrowing one.
    pub fn narrowing(self, large: f64, small: f64, length: f64, friction_factor: f64) -> f64 {
        match self {
            Self::Rennels2012 => {
                contraction_conical_rennels_2012::coefficient(large, small, length, friction_factor)
            }
            Self::CraneTp410 => contraction_conical_crane_tp410::coefficient(large, small, length),
        }
    }

    /// How far the coefficient may lie from the truth where the section widens, or narrows.
    pub fn scatter(self, widens: bool) -> Scatter {
        match (widens, self) {
            (true, Self::Rennels2012) => diffuser_rennels_2012::SCATTER,
            (true, Self::CraneTp410) => diffuser_crane_tp410::SCATTER,
            (false, Self::Rennels2012) => contraction_conical_rennels_2012::SCATTER,
            (false, Self::CraneTp410) => contraction_conical_crane_tp410::SCATTER,
        }
    }
}

fn two_way(widens: bool, widening: Head, narrowing: Head) -> TwoWay {
    if widens {
        TwoWay {
            forward: widening,
            reversed: narrowing,
        }
    } else {
        TwoWay {
            forward: narrowing,
            reversed: widening,
        }
    }
}

/// Darcy friction factor assumed in the conical laws, since the cone's own wall friction is part of them [-].
pub const CONE_FRICTION: f64 = 0.02;

/// Diameter of a circle of an area [m].
pub(crate) fn diameter(area: f64) -> f64 {
    (4.0 * area / std::f64::consts::PI).sqrt()
}

/// Half of a cone's full angle [rad].
pub(crate) fn half_angle(small: f64, large: f64, length: f64) -> f64 {
    (0.5 * (diameter(large) - diameter(small))).atan2(length)
}

/// `below` well under `at`, `above` well over it, smooth within `width` of it.
pub(crate) fn blend(below: f64, above: f64, angle: f64, at: f64, width: f64) -> f64 {
    let t = ((angle - at) / (2.0 * width) + 0.5).clamp(0.0, 1.0);
    below + (above - below) * t * t * (3.0 - 2.0 * t)
}

/// Wall friction of a cone in heads of its small end; that of a straight duct for equal ends.
pub(crate) fn cone_friction(small: f64, large: f64, length: f64, friction_factor: f64) -> f64 {
    let (d, big) = (diameter(small), diameter(large));
    let slant = length.hypot(0.5 * (big - d));
    let ratio = d / big;
    // f (1 - ratio^4) / (8 sin(half angle)), with the factor (1 - ratio) of numerator and sine cancelled.
    friction_factor * (1.0 + ratio) * (1.0 + ratio * ratio) * slant / (4.0 * big)
}
