//! Pipe end that stands into the chamber, Rennels and Hudson 2012.
//!
//! # Equation
//! K = 1.12 - 22 t/d + 216 (t/d)^2 + 80 (t/d)^3; constant from t/d 0.05 on, where K = 0.57.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | d | from `area` | diameter of a circle of the section's area | m |
//! | t | `thickness` | wall thickness of the pipe | m |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, section 9.2;
//! read through the `fluids` library (entrance_distance), which names it.
//!
//! # Range of validity
//! t/d from 0 to 0.3; a pipe that stands at least half a diameter into the chamber.
//!
//! # Limits
//! The cubic has its least value, 0.56996, at t/d 0.04956 and the constant holds from there, so that the slope
//! is continuous too; the constant is the same authors' flush entry, 0.57, while the flush entry of this
//! library is Idelchik's 0.5. Flow out through the end loses nothing here; the chamber takes the velocity head.

use super::super::outside::outside_range;
use super::super::{Head, Scatter, TwoWay};

/// Range of t/d [-].
pub const RANGE: [f64; 2] = [0.0, 0.3];

/// Where the cubic is least, the root of its derivative; a thicker wall is as good as flush [-].
const THICK: f64 = 0.049_561_302_216_274_326;

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "four methods of fluids 1.3.1 give 0.91 to 1.14 at t/d 0 and 0.62 to 0.78 at 0.02, Crane 0.78 for all",
};

/// A re-entrant pipe end.
#[derive(Clone, Copy, Debug)]
pub struct ReentrantEntry {
    /// Area of the section entered [m2].
    pub area: f64,
    /// Wall thickness [m].
    pub thickness: f64,
}

impl ReentrantEntry {
    /// Loss coefficients for either direction.
    pub fn coefficients(&self) -> TwoWay {
        let ratio = self.thickness_ratio().min(THICK);
        let k = 1.12 + ratio * (ratio * (80.0 * ratio + 216.0) - 22.0);
        TwoWay {
            forward: Head { k, area: self.area },
            reversed: Head {
                k: 0.0,
                area: self.area,
            },
        }
    }

    /// Wall thickness over diameter [-].
    pub fn thickness_ratio(&self) -> f64 {
        self.thickness / (4.0 * self.area / std::f64::consts::PI).sqrt()
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        outside_range(
            "thickness",
            "wall thickness over diameter",
            self.thickness_ratio(),
            RANGE,
        )
        .into_iter()
        .collect()
    }
}
