//! Tee and wye, Crane TP-410 (2009 on).
//!
//! # Equation
//! Side dividing G [1 + H (q psi)^2 - J q psi cos theta]; run dividing M q^2; side combining
//! C [1 + (q psi)^2 - 2 (1 - q)^2 - F psi q^2]; run combining 1.55 q - q^2 for a tee and
//! 1 - (1 - q)^2 - F psi q^2 for a wye. H, J are 1, 2 below 60 degrees or for d_side/d_run to 2/3, else 0.3, 0.
//! With a the area ratio: G is for a tee 1 for a to 2/3 and 1 + 0.3 q^2 above, for a wye, a to 0.35,
//! 1.1 - 0.7 q to q 0.4 and 0.85 above, a over 0.35, 1 - 0.6 q to q 0.6 and 0.6 above. M is 0.4 for a to 0.4,
//! else 2 (2 q - 1) to q 0.5 and 0.3 (2 q - 1) above; C is 1 for a to 0.35, else 0.9 (1 - q) to q 0.4 and 0.55
//! above; F is 1.74, 1.41, 1 and 0 at 30, 45, 60 and 90 degrees.
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
//! Crane Co., Flow of Fluids, Technical Paper 410, 2009 on, chapter 2; as coded in the `fluids` library
//! (K_branch_diverging_Crane and its three relatives). Between wye and tee that library switches at 75
//! degrees by its author's choice.
//!
//! # Range of validity
//! 30 to 90 degrees, diameter ratio from 0.3 to 1.
//!
//! # Limits
//! The source jumps at each of its limits, by more than any scatter at the diameter ratio 2/3 (side dividing
//! 2.27 against 1.38 at q 0.5). Neighbours are blended within 0.03 of a ratio, between 50 and 60 and between
//! 70 and 80 degrees; corners in q are rounded as in `idelchik`. It stands apart from the other authors for
//! large side legs, so it is not the default.

use super::idelchik::{run_factor, side_factor};
use super::{
    Geometry, JunctionCoefficients, blend, constant, larger, mix, outside_angle,
    outside_area_ratio, over, polynomial, product,
};
use crate::law::Slope;

/// Range of the area ratio [-].
pub const RANGE: [f64; 2] = [0.09, 1.0];
/// Range of the angle [rad].
pub const RANGE_ANGLE: [f64; 2] = [0.52, 1.571];

/// One standard deviation of K, dividing [-]: root mean square distance from the mean of the other four
/// authors at equal areas and a right angle, 0.05 for the run and 0.32 for the side.
pub const SCATTER: f64 = 0.3;
/// One standard deviation of K, combining [-]: the same comparison, 0.05 for the run and 0.15 for the side.
pub const SCATTER_COMBINING: f64 = 0.15;

/// Air from one run leg to the other and to the side.
pub fn dividing(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let psi = 1.0 / geometry.area_ratio;
    // 1 for a wide tee or a steep wye, 0 where the momentum form with H 1 and J 2 holds.
    let wide = over(geometry.area_ratio.sqrt(), 2.0 / 3.0) * between(geometry.angle, 50.0, 60.0);
    let square = 1.0 - 0.7 * wide;
    let slant = 2.0 * (1.0 - wide) * geometry.angle.cos();
    JunctionCoefficients {
        run: product(
            run_factor(geometry.area_ratio, q),
            polynomial(&[0.0, 0.0, 1.0], q),
        ),
        side: product(
            side_dividing_factor(geometry, q),
            polynomial(&[1.0, -slant * psi, square * psi * psi], q),
        ),
    }
}

/// Air from one run leg and the side to the other run leg.
pub fn combining(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let psi = 1.0 / geometry.area_ratio;
    let wye = polynomial(
        &[0.0, 2.0, -1.0 - slant_factor(geometry.angle).max(1.0) * psi],
        q,
    );
    let tee = polynomial(&[0.0, 1.55, -1.0], q);
    JunctionCoefficients {
        run: mix(wye, tee, between(geometry.angle, 70.0, 80.0)),
        side: product(
            side_factor(geometry.area_ratio, q),
            polynomial(
                &[
                    -1.0,
                    4.0,
                    psi * psi - 2.0 - slant_factor(geometry.angle) * psi,
                ],
                q,
            ),
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

/// G.
fn side_dividing_factor(geometry: &Geometry, q: f64) -> Slope {
    let small = larger(polynomial(&[1.1, -0.7], q), constant(0.85), 0.02);
    let large = larger(polynomial(&[1.0, -0.6], q), constant(0.6), 0.02);
    let wye = mix(small, large, over(geometry.area_ratio, 0.35));
    let tee = polynomial(&[1.0, 0.0, 0.3 * over(geometry.area_ratio, 2.0 / 3.0)], q);
    mix(wye, tee, between(geometry.angle, 70.0, 80.0))
}

/// F, linear between the printed angles.
fn slant_factor(angle: f64) -> f64 {
    let degrees = angle.to_degrees();
    let line = |from: [f64; 2], to: [f64; 2]| {
        from[1] + (to[1] - from[1]) * (degrees - from[0]) / (to[0] - from[0])
    };
    if degrees <= 30.0 {
        1.74
    } else if degrees <= 45.0 {
        line([30.0, 1.74], [45.0, 1.41])
    } else if degrees <= 60.0 {
        line([45.0, 1.41], [60.0, 1.0])
    } else {
        line([60.0, 1.0], [90.0, 0.0]).max(0.0)
    }
}

/// 0 up to the angle `from`, 1 from the angle `to` on [degree].
fn between(angle: f64, from: f64, to: f64) -> f64 {
    blend(
        constant(0.0),
        constant(1.0),
        angle.to_degrees(),
        0.5 * (from + to),
        0.5 * (to - from),
    )
    .value
}
