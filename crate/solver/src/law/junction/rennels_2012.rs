//! Sharp-edged tee, Rennels and Hudson 2012.
//!
//! # Equation
//! With w = 1 - q and d the diameter ratio side over run: run dividing 0.36 - 0.98 w + 0.62 w^2 + 0.03 w^8;
//! run combining 1 - 0.95 w^2 - 2 Cx (w - w^2) - 2 Cm (1 - w); side dividing 1 - 1.13 q
//! + [0.81 + (1.12 d - 1.08 d^3 + 0.57)/d^4] q^2; side combining -0.92 + 2 (2 - Cx - Cm) q
//! + [(2 Cy - 1)/d^4 + 2 (Cx - 1)] q^2; Cx 0.08, Cm 0.23, Cy 1 - 0.25 d^1.3.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | q | `q` | side flow over the flow of the leg that carries all | - |
//! | d | from `area_ratio` | square root of side over run area | - |
//! | K | result | on the head of the leg that carries all | - |
//!
//! # Source
//! D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide, Wiley 2012, eqs 16.5, 16.13,
//! 16.22, 16.30; read in a secondary text.
//!
//! # Range of validity
//! Right angle, round legs, d from 0.3 to 1.
//!
//! # Limits
//! Sharp edges. The angle is not in the formula: every junction counts as a right one.

use super::{Geometry, JunctionCoefficients, outside_angle, outside_area_ratio, polynomial};
use crate::law::Slope;

/// Range of the area ratio [-].
pub const RANGE: [f64; 2] = [0.09, 1.0];
/// Range of the angle, a right one to the rounding of degrees [rad].
pub const RANGE_ANGLE: [f64; 2] = [1.570, 1.572];

/// One standard deviation of K, dividing [-]: root mean square distance from the mean of the other four
/// authors at equal areas, 0.02 for the run and 0.09 for the side.
pub const SCATTER: f64 = 0.1;
/// One standard deviation of K, combining [-]: the same comparison, 0.08 for the run and 0.09 for the side.
pub const SCATTER_COMBINING: f64 = 0.1;

/// Air from one run leg to the other and to the side.
pub fn dividing(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let d = geometry.area_ratio.sqrt();
    let fourth = d.powi(4);
    let w = polynomial(&[0.36, -0.98, 0.62, 0.0, 0.0, 0.0, 0.0, 0.0, 0.03], 1.0 - q);
    JunctionCoefficients {
        run: Slope {
            value: w.value,
            derivative: -w.derivative,
        },
        side: polynomial(
            &[
                1.0,
                -1.13,
                0.81 + (1.12 * d - 1.08 * d.powi(3) + 0.57) / fourth,
            ],
            q,
        ),
    }
}

/// Air from one run leg and the side to the other run leg.
pub fn combining(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let d = geometry.area_ratio.sqrt();
    let (cx, cm, cy) = (0.08, 0.23, 1.0 - 0.25 * d.powf(1.3));
    let w = polynomial(
        &[1.0 - 2.0 * cm, -2.0 * cx + 2.0 * cm, -0.95 + 2.0 * cx],
        1.0 - q,
    );
    let square = (2.0 * cy - 1.0) / d.powi(4) + 2.0 * (cx - 1.0);
    JunctionCoefficients {
        run: Slope {
            value: w.value,
            derivative: -w.derivative,
        },
        side: polynomial(&[-0.92, 2.0 * (2.0 - cx - cm), square], q),
    }
}

/// Fields outside the range.
pub fn outside(geometry: &Geometry) -> Vec<(&'static str, String)> {
    outside_area_ratio(geometry, RANGE)
        .into_iter()
        .chain(outside_angle(geometry, RANGE_ANGLE))
        .collect()
}
