//! Pipe bend of constant section, Crane TP-410.
//!
//! # Equation
//! K = (n - 1) (pi/4 f r/d + k/2) + k for n = alpha / 90 degrees from 1 on, k = f c, c over r/d by table;
//! f = 0.25 / lg(e / (3.7 d))^2 with e = 0.0457 mm.
//! Below 90 degrees n (2 k - b) + n^2 (b - k), b = pi/4 f r/d + k/2: nothing at no angle, and the same value
//! and slope at 90 degrees.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | d | `diameter` | hydraulic diameter | m |
//! | r/d | `radius_ratio` | radius of the axis over hydraulic diameter | - |
//! | alpha | `angle` | angle turned through | rad |
//! | f | - | Darcy friction factor of commercial steel in complete turbulence | - |
//! | K | result | loss coefficient on the velocity head, friction along the bend included | - |
//!
//! # Source
//! Crane Co., Flow of Fluids Through Valves, Fittings and Pipe, TP-410, 2009 on, page A-30 (pipe bends) and
//! A-27 (f); table read through the `fluids` library (bend_rounded_Crane), which names it; the formula of f from
//! memory, within 1.4 % of that library's fit (ft_Crane) from 16 to 300 mm.
//!
//! # Range of validity
//! r/d from 1 to 20, bends from 90 to 360 degrees.
//!
//! # Limits
//! Made for steel pipe: neither the Reynolds number nor the wall's roughness counts. The bend's own friction is
//! in it: no duct for its length. Below 90 degrees the parabola is this program's, not the source's, whose line
//! leaves a loss at no angle. r/d outside the table counts as its end.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, LN_10};

use super::super::Scatter;
use super::BendTerms;
use crate::curve::Curve;

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [1.0, 20.0];
/// Range of the angle, with room for a right angle typed in rounded digits [rad].
pub const RANGE_ANGLE: [f64; 2] = [FRAC_PI_2 - 1e-3, 4.0 * FRAC_PI_2];

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.25,
    common: 0.5,
    origin: "four authors at r/d 1.5 give 0.23 to 0.28 at 90 degrees, this one the most (fluids 1.3.1: Rennels, Miller, Ito, Crane)",
};

/// K over f, by r/d.
const LENGTHS: Curve = Curve {
    xs: &[
        1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 20.0,
    ],
    ys: &[
        20.0, 14.0, 12.0, 12.0, 14.0, 17.0, 24.0, 30.0, 34.0, 38.0, 42.0, 50.0,
    ],
    flat: [false, false],
};

/// Roughness of commercial steel [m].
const STEEL: f64 = 4.57e-5;

/// Friction factor in complete turbulence; a pipe narrower than 1 mm counts as one [-].
pub fn full_turbulence(diameter: f64) -> f64 {
    let log = (STEEL / (3.7 * diameter.max(1e-3))).ln() / LN_10;
    0.25 / (log * log)
}

/// The coefficient of a bend by its axis radius over diameter, its angle [rad] and its diameter [m].
pub fn terms(radius_ratio: f64, angle: f64, diameter: f64) -> BendTerms {
    let friction = full_turbulence(diameter);
    let ratio = radius_ratio.clamp(RANGE[0], RANGE[1]);
    let quarter = friction * LENGTHS.at(ratio).value;
    let further = FRAC_PI_4 * friction * ratio + 0.5 * quarter;
    let n = angle / FRAC_PI_2;
    let fixed = if n < 1.0 {
        n * (2.0 * quarter - further + n * (further - quarter))
    } else {
        (n - 1.0) * further + quarter
    };
    BendTerms {
        fixed,
        by_friction: 0.0,
    }
}
