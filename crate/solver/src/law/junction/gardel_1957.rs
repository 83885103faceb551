//! Sharp-edged tee and wye, Gardel 1957.
//!
//! # Equation
//! With a = A_side/A_run and c = cot((180 - theta)/2): side dividing 0.95 (1 - q)^2
//! + q^2 [1.3 c - 0.3 + (0.4 - 0.1 a)/a^2] + 0.4 q (1 - q) (1 + 1/a) c; run dividing 0.03 (1 - q)^2
//! + 0.35 q^2 - 0.2 q (1 - q); side combining -0.92 (1 - q)^2 - q^2 [1.2 (cos/a - 1) + 0.8 (1 - 1/a^2)
//! - (1 - a) cos/a] + (2 - a) (1 - q) q; run combining 0.03 (1 - q)^2 - q^2 [1 + 1.62 (cos/a - 1)
//! - 0.38 (1 - a)] + (2 - a) (1 - q) q.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | q | `q` | side flow over the flow of the leg that carries all | - |
//! | a | `area_ratio` | side over run area | - |
//! | theta | `angle` | side leg to run | rad |
//! | K | result | on the head of the leg that carries all | - |
//!
//! # Source
//! A. Gardel, Bulletin Technique de la Suisse Romande 83 (1957) 123-130 and 143-148; formula from memory.
//!
//! # Range of validity
//! Angles 45 to 135 degrees, a from 0.4 to 1, sharp edges.
//!
//! # Limits
//! From memory: used as a second opinion beside the default.

use super::{Geometry, JunctionCoefficients, outside_angle, outside_area_ratio, polynomial};

/// Range of the area ratio [-].
pub const RANGE: [f64; 2] = [0.4, 1.0];
/// Range of the angle [rad].
pub const RANGE_ANGLE: [f64; 2] = [0.785, 2.357];

/// One standard deviation of K, dividing [-]: root mean square distance from the mean of the other four
/// authors at equal areas and a right angle, 0.04 for the run and 0.12 for the side.
pub const SCATTER: f64 = 0.12;
/// One standard deviation of K, combining [-]: the same comparison, 0.12 for the run and 0.16 for the side.
pub const SCATTER_COMBINING: f64 = 0.16;

/// Air from one run leg to the other and to the side.
pub fn dividing(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let a = geometry.area_ratio;
    // The cotangent grows without bound towards 180 degrees; it is held from 150 on.
    let c = (0.5 * geometry.angle.min(2.618)).tan();
    let side = 1.3 * c - 0.3 + (0.4 - 0.1 * a) / (a * a);
    JunctionCoefficients {
        run: terms(0.03, 0.35, -0.2, q),
        side: terms(0.95, side, 0.4 * (1.0 + 1.0 / a) * c, q),
    }
}

/// Air from one run leg and the side to the other run leg.
pub fn combining(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let a = geometry.area_ratio;
    let slant = geometry.angle.cos() / a;
    let side = -(1.2 * (slant - 1.0) + 0.8 * (1.0 - 1.0 / (a * a)) - (1.0 - a) * slant);
    let run = -(1.0 + 1.62 * (slant - 1.0) - 0.38 * (1.0 - a));
    JunctionCoefficients {
        run: terms(0.03, run, 2.0 - a, q),
        side: terms(-0.92, side, 2.0 - a, q),
    }
}

/// Fields outside the range.
pub fn outside(geometry: &Geometry) -> Vec<(&'static str, String)> {
    outside_area_ratio(geometry, RANGE)
        .into_iter()
        .chain(outside_angle(geometry, RANGE_ANGLE))
        .collect()
}

/// `straight` (1 - q)^2 + `side` q^2 + `mixed` q (1 - q).
fn terms(straight: f64, side: f64, mixed: f64, q: f64) -> crate::law::Slope {
    polynomial(
        &[straight, mixed - 2.0 * straight, straight + side - mixed],
        q,
    )
}
