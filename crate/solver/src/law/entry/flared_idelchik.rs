//! Free-standing bellmouth, Idelchik.
//!
//! # Equation
//! K over r/d by table, between its points by a monotone cubic (Fritsch and Carlson 1980).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | d | from `area` | diameter of a circle of the section's area | m |
//! | r | `radius` | radius of the bell | m |
//! | K | result | loss coefficient on the velocity head in the section | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 3-4, bellmouth without a wall. A second
//! handbook, SMACNA's duct fitting A-12B, prints the same values and 0.15 at 0.10; read there, through a public
//! library that names it.
//!
//! # Range of validity
//! r/d from 0 to 1; the table's last line, 0.2, holds for all larger ones.
//!
//! # Limits
//! Round sections. Other handbooks repeat this table, and no measurement of a free-standing bell by its radius was at
//! hand beside it; Weisbach's bells in the form of the contracted jet cost 0.012 to 0.052 at heads above 3 m. Flow out through the bell loses nothing here; the chamber takes the velocity head.

use super::super::outside::outside_range;
use super::super::{Head, Scatter, TwoWay};
use super::diameter_ratio;
use crate::curve::Curve;

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [0.0, 1.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.3,
    common: 0.5,
    origin: "judged: both handbooks print one table; Weisbach measured 0.012 to 0.052 where it says 0.03",
};

/// K over r/d.
const TABLE: Curve = Curve {
    xs: &[
        0.0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.10, 0.12, 0.16, 0.2,
    ],
    ys: &[
        1.0, 0.87, 0.74, 0.61, 0.51, 0.40, 0.32, 0.20, 0.15, 0.10, 0.06, 0.03,
    ],
    flat: [false, true],
};

/// A bellmouth.
#[derive(Clone, Copy, Debug)]
pub struct FlaredEntry {
    /// Area of the section entered [m2].
    pub area: f64,
    /// Radius of the bell [m].
    pub radius: f64,
}

impl FlaredEntry {
    /// Loss coefficients for either direction.
    pub fn coefficients(&self) -> TwoWay {
        TwoWay {
            forward: Head {
                k: TABLE.at(self.radius_ratio()).value,
                area: self.area,
            },
            reversed: Head {
                k: 0.0,
                area: self.area,
            },
        }
    }

    /// Bell radius over diameter [-].
    pub fn radius_ratio(&self) -> f64 {
        diameter_ratio(self.radius, self.area)
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        outside_range("radius", "radius over diameter", self.radius_ratio(), RANGE)
            .into_iter()
            .collect()
    }
}
