//! Pipe end that stands into the chamber, Rennels and Hudson 2012.
//!
//! # Equation
//! K = 1.12 - 22 t/d + 216 (t/d)^2 + 80 (t/d)^3; t/d above 0.05 counts as 0.05, where K = 0.57.
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
//! t/d from 0; a pipe that stands at least half a diameter into the chamber.
//!
//! # Limits
//! Flow out through the end loses nothing here; the chamber takes the velocity head.

use super::super::{Head, Scatter, TwoWay};

/// Wall thickness over diameter from which the wall is as good as flush [-].
const THICK: f64 = 0.05;

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "0.78 (Crane) against this formula",
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
        let diameter = (4.0 * self.area / std::f64::consts::PI).sqrt();
        let ratio = (self.thickness / diameter).min(THICK);
        let k = 1.12 + ratio * (ratio * (80.0 * ratio + 216.0) - 22.0);
        TwoWay {
            forward: Head { k, area: self.area },
            reversed: Head {
                k: 0.0,
                area: self.area,
            },
        }
    }
}
