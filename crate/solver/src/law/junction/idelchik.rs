//! Tee and wye, Idelchik section VII.
//!
//! # Equation
//! Side combining A [1 + (q psi)^2 - 2 (1 - q)^2 - 2 psi q^2 cos theta]; run combining
//! 1 - (1 - q)^2 - (1.4 - q) q^2 sin theta - 2 K' psi q cos theta; side dividing
//! A' [1 + (q psi)^2 - 2 q psi cos theta]; run dividing tau q^2. With a the area ratio:
//! A is 1 for a to 0.35, else 0.9 (1 - q) to q 0.4 and 0.55 above; K' is 0.8 q for a to 0.35, else 0.5 to
//! q 0.6 and 0.8 q above; A' is, for a to 0.35, 1.1 - 0.7 q to q 0.4 and 0.85 above, else 1 - 0.6 q to q 0.6
//! and 0.6 above; tau is 0.4 for a to 0.4, else 2 (2 q - 1) to q 0.5 and 0.3 (2 q - 1) above.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | q | `q` | side flow over the flow of the leg that carries all | - |
//! | a, psi | `area_ratio` | side over run area, and its inverse | - |
//! | theta | `angle` | side leg to run | rad |
//! | K | result | on the head of the leg that carries all | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., section VII, paragraphs 15 and 16, eqs 7-1, 7-2,
//! tables 7-1, 7-3, 7-4, diagram 7-20 (pp. 416-419, 453), both runs of equal area; formula and table values
//! read in a secondary text (FluidDissipation, dp_Tjoin and dp_Tsplit).
//!
//! # Range of validity
//! Angles to 90 degrees, side area up to the run's.
//!
//! # Limits
//! The tables switch. Where two rows meet in q the corner is rounded over 0.02 to 0.07 of q, and the rows are
//! carried on to where they cross: at most 0.04 of A', 0.02 of K', 0.01 of A and tau. At area ratios 0.35 and
//! 0.4 the two rows differ by up to half, far more than the scatter; they are blended within 0.03 of the switch.

use super::{
    Geometry, JunctionCoefficients, constant, larger, mix, outside_angle, outside_area_ratio, over,
    polynomial, product,
};
use crate::law::Slope;

/// Range of the area ratio [-].
pub const RANGE: [f64; 2] = [0.05, 1.0];
/// Range of the angle [rad].
pub const RANGE_ANGLE: [f64; 2] = [0.26, 1.571];

/// One standard deviation of K, dividing [-]: root mean square distance from the mean of the other four
/// authors at equal areas and a right angle, 0.05 for the run and 0.09 for the side.
pub const SCATTER: f64 = 0.1;
/// One standard deviation of K, combining [-]: the same comparison, 0.06 for the run and 0.15 for the side.
pub const SCATTER_COMBINING: f64 = 0.15;

/// Air from one run leg to the other and to the side.
pub fn dividing(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let psi = 1.0 / geometry.area_ratio;
    let small = larger(polynomial(&[1.1, -0.7], q), constant(0.85), 0.02);
    let large = larger(polynomial(&[1.0, -0.6], q), constant(0.6), 0.02);
    let factor = mix(small, large, over(geometry.area_ratio, 0.35));
    JunctionCoefficients {
        run: product(
            run_factor(geometry.area_ratio, q),
            polynomial(&[0.0, 0.0, 1.0], q),
        ),
        side: product(
            factor,
            polynomial(&[1.0, -2.0 * psi * geometry.angle.cos(), psi * psi], q),
        ),
    }
}

/// Air from one run leg and the side to the other run leg.
pub fn combining(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let psi = 1.0 / geometry.area_ratio;
    let (sine, cosine) = geometry.angle.sin_cos();
    let part = over(geometry.area_ratio, 0.35);
    let slant = mix(
        polynomial(&[0.0, 0.8], q),
        larger(polynomial(&[0.0, 0.8], q), constant(0.5), 0.02),
        part,
    );
    let straight = polynomial(&[0.0, 2.0, -1.0 - 1.4 * sine, sine], q);
    let drag = product(slant, polynomial(&[0.0, 2.0 * psi * cosine], q));
    JunctionCoefficients {
        run: Slope {
            value: straight.value - drag.value,
            derivative: straight.derivative - drag.derivative,
        },
        side: product(
            side_factor(geometry.area_ratio, q),
            polynomial(&[-1.0, 4.0, psi * psi - 2.0 - 2.0 * psi * cosine], q),
        ),
    }
}

/// Fields outside the range.
pub fn outside(geometry: &Geometry) -> Vec<(&'static str, String)> {
    outside_area_ratio(geometry, RANGE)
        .into_iter()
        .chain(outside_angle(geometry, RANGE_ANGLE))
        .collect()
}

/// A of table 7-1; Crane takes the same.
pub(super) fn side_factor(area_ratio: f64, q: f64) -> Slope {
    let large = larger(polynomial(&[0.9, -0.9], q), constant(0.55), 0.03);
    mix(constant(1.0), large, over(area_ratio, 0.35))
}

/// tau of diagram 7-20; Crane takes the same.
pub(super) fn run_factor(area_ratio: f64, q: f64) -> Slope {
    // 2 (2 q - 1) lies below 0.3 (2 q - 1) up to q 0.5 and above it from there: the smaller of the two holds.
    let steep = polynomial(&[2.0, -4.0], q);
    let flat = polynomial(&[0.3, -0.6], q);
    let negative = larger(steep, flat, 0.03);
    let large = Slope {
        value: -negative.value,
        derivative: -negative.derivative,
    };
    mix(constant(0.4), large, over(area_ratio, 0.4))
}
