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
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 3-4, bellmouth without a wall;
//! table values from memory.
//!
//! # Range of validity
//! r/d from 0 to 1; the table's last line, 0.2, holds for all larger ones.
//!
//! # Limits
//! Round sections. Flow out through the bell loses nothing here; the chamber takes the velocity head.

use super::super::outside::outside_range;
use super::super::{Head, Scatter, TwoWay};

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [0.0, 1.0];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.3,
    common: 0.5,
    origin: "judged: a table from memory",
};

const RATIO: [f64; 11] = [
    0.0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.12, 0.16, 0.2,
];
const COEFFICIENT: [f64; 11] = [
    1.0, 0.87, 0.74, 0.61, 0.51, 0.40, 0.32, 0.20, 0.10, 0.06, 0.03,
];

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
                k: coefficient(self.radius_ratio()),
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
        self.radius / (4.0 * self.area / std::f64::consts::PI).sqrt()
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        outside_range("radius", "radius over diameter", self.radius_ratio(), RANGE)
            .into_iter()
            .collect()
    }
}

fn coefficient(ratio: f64) -> f64 {
    let last = RATIO.len() - 1;
    if ratio >= RATIO[last] {
        return COEFFICIENT[last];
    }
    let interval = RATIO
        .iter()
        .rposition(|left| *left <= ratio)
        .unwrap_or(0)
        .min(last - 1);
    let width = RATIO[interval + 1] - RATIO[interval];
    let t = (ratio - RATIO[interval]) / width;
    let (left, right) = (slope(interval) * width, slope(interval + 1) * width);
    let (from, to) = (COEFFICIENT[interval], COEFFICIENT[interval + 1]);
    let (square, cube) = (t * t, t * t * t);
    from * (2.0 * cube - 3.0 * square + 1.0)
        + left * (cube - 2.0 * square + t)
        + to * (3.0 * square - 2.0 * cube)
        + right * (cube - square)
}

/// Slope at a table point: the harmonic mean of its two chords keeps the curve monotone; flat at the end.
fn slope(point: usize) -> f64 {
    let chord =
        |left: usize| (COEFFICIENT[left + 1] - COEFFICIENT[left]) / (RATIO[left + 1] - RATIO[left]);
    match point {
        0 => chord(0),
        last if last == RATIO.len() - 1 => 0.0,
        inner => {
            let (before, after) = (chord(inner - 1), chord(inner));
            2.0 * before * after / (before + after)
        }
    }
}
