//! Entries from a chamber into a section. Out through them nothing is lost: the chamber takes the velocity head.

pub mod flared_idelchik;
pub mod reentrant_idelchik;
pub mod reentrant_rennels_2012;
pub mod rounded_idelchik;
pub mod rounded_rennels_2012;
pub mod rounded_swamee_2008;
pub mod sharp_idelchik;
pub mod sharp_rennels_2012;

use super::outside::outside_range;
use super::{Head, Scatter, TwoWay};
use crate::study::{ReentrantEntryLaw, RoundedEntryLaw, SharpEntryLaw};

/// Both authors of a sharp entry begin here [-].
pub const SHARP_LEAST_REYNOLDS: f64 = 1e4;

/// A sharp-edged entry, flush with the wall.
#[derive(Clone, Copy, Debug)]
pub struct SharpEntry {
    /// Area of the section entered [m2].
    pub area: f64,
    /// Whose coefficient is used.
    pub law: SharpEntryLaw,
}

/// An entry with a rounded edge, flush with the wall.
#[derive(Clone, Copy, Debug)]
pub struct RoundedEntry {
    /// Area of the section entered [m2].
    pub area: f64,
    /// Radius of the edge [m].
    pub radius: f64,
    /// Whose coefficient is used.
    pub law: RoundedEntryLaw,
}

/// A pipe end that stands into the chamber.
#[derive(Clone, Copy, Debug)]
pub struct ReentrantEntry {
    /// Area of the section entered [m2].
    pub area: f64,
    /// Wall thickness [m].
    pub thickness: f64,
    /// Whose coefficient is used.
    pub law: ReentrantEntryLaw,
}

impl SharpEntry {
    /// Loss coefficients for either direction.
    pub fn coefficients(&self) -> TwoWay {
        let k = match self.law {
            SharpEntryLaw::Idelchik => sharp_idelchik::COEFFICIENT,
            SharpEntryLaw::Rennels2012 => sharp_rennels_2012::COEFFICIENT,
        };
        inwards(k, self.area)
    }

    /// Fields outside the range: none, since any size is inside it.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        Vec::new()
    }
}

impl RoundedEntry {
    /// Loss coefficients for either direction.
    pub fn coefficients(&self) -> TwoWay {
        let ratio = self.radius_ratio();
        let k = match self.law {
            RoundedEntryLaw::Rennels2012 => rounded_rennels_2012::coefficient(ratio),
            RoundedEntryLaw::Idelchik => rounded_idelchik::coefficient(ratio),
            RoundedEntryLaw::Swamee2008 => rounded_swamee_2008::coefficient(ratio),
        };
        inwards(k, self.area)
    }

    /// Edge radius over diameter [-].
    pub fn radius_ratio(&self) -> f64 {
        diameter_ratio(self.radius, self.area)
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        let range = match self.law {
            RoundedEntryLaw::Rennels2012 => rounded_rennels_2012::RANGE,
            RoundedEntryLaw::Idelchik => rounded_idelchik::RANGE,
            RoundedEntryLaw::Swamee2008 => rounded_swamee_2008::RANGE,
        };
        outside_range("radius", "radius over diameter", self.radius_ratio(), range)
            .into_iter()
            .collect()
    }
}

impl ReentrantEntry {
    /// Loss coefficients for either direction.
    pub fn coefficients(&self) -> TwoWay {
        let ratio = self.thickness_ratio();
        let k = match self.law {
            ReentrantEntryLaw::Rennels2012 => reentrant_rennels_2012::coefficient(ratio),
            ReentrantEntryLaw::Idelchik => reentrant_idelchik::coefficient(ratio),
        };
        inwards(k, self.area)
    }

    /// Wall thickness over diameter [-].
    pub fn thickness_ratio(&self) -> f64 {
        diameter_ratio(self.thickness, self.area)
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        let range = match self.law {
            ReentrantEntryLaw::Rennels2012 => reentrant_rennels_2012::RANGE,
            ReentrantEntryLaw::Idelchik => reentrant_idelchik::RANGE,
        };
        let ratio = self.thickness_ratio();
        outside_range("thickness", "wall thickness over diameter", ratio, range)
            .into_iter()
            .collect()
    }
}

impl SharpEntryLaw {
    /// How far the author's coefficient may lie from the truth.
    pub fn scatter(self) -> Scatter {
        match self {
            Self::Idelchik => sharp_idelchik::SCATTER,
            Self::Rennels2012 => sharp_rennels_2012::SCATTER,
        }
    }
}

impl RoundedEntryLaw {
    /// How far the author's coefficient may lie from the truth.
    pub fn scatter(self) -> Scatter {
        match self {
            Self::Rennels2012 => rounded_rennels_2012::SCATTER,
            Self::Idelchik => rounded_idelchik::SCATTER,
            Self::Swamee2008 => rounded_swamee_2008::SCATTER,
        }
    }
}

impl ReentrantEntryLaw {
    /// How far the author's coefficient may lie from the truth.
    pub fn scatter(self) -> Scatter {
        match self {
            Self::Rennels2012 => reentrant_rennels_2012::SCATTER,
            Self::Idelchik => reentrant_idelchik::SCATTER,
        }
    }
}

fn inwards(k: f64, area: f64) -> TwoWay {
    TwoWay {
        forward: Head { k, area },
        reversed: Head { k: 0.0, area },
    }
}

/// A length over the diameter of a circle of an area [-].
fn diameter_ratio(length: f64, area: f64) -> f64 {
    length / (4.0 * area / std::f64::consts::PI).sqrt()
}
