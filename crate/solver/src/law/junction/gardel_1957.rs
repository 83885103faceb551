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

use super::{Geometry, JunctionCoefficients, polynomial};

/// Range of the area ratio [-].
pub const RANGE: [f64; 2] = [0.4, 1.0];

/// Air from one run leg to the other and to the side.
pub fn dividing(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let a = geometry.area_ratio;
    let c = 1.0 / (0.5 * (std::f64::consts::PI - geometry.angle)).tan();
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

/// `straight` (1 - q)^2 + `side` q^2 + `mixed` q (1 - q).
fn terms(straight: f64, side: f64, mixed: f64, q: f64) -> crate::law::Slope {
    polynomial(
        &[straight, mixed - 2.0 * straight, straight + side - mixed],
        q,
    )
}
