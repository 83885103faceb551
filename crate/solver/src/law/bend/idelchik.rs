//! Smooth bend of constant section, Idelchik.
//!
//! # Equation
//! K = A B + f alpha r/d; A over the angle by table, 1 at 90 degrees;
//! B = 0.21 (r/d)^-2.5 up to r/d 1, 0.21 (r/d)^-0.5 above.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | r/d | `radius_ratio` | radius of the axis over hydraulic diameter | - |
//! | alpha | `angle` | angle turned through | rad |
//! | f | of `BendTerms` | Darcy friction factor of the bend's wall, with sqrt(Re^2 + 4000^2) for Re | - |
//! | K | result | loss coefficient on the velocity head, friction along the bend included | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 6-1; B and the form as FluidDissipation
//! (dp_curvedOverall) codes them, A by its table from memory, which agrees with the round elbows in pyduct
//! (fitting_types, elbow_round, after Hendiger, Zietek and Chludzinska) to their printed digit.
//!
//! # Range of validity
//! r/d from 0.5 to 3, angle to 180 degrees, Reynolds number from 3e5.
//!
//! # Limits
//! Round or square section, settled flow before and behind. The bend's own friction is in it: no duct for its
//! length. The source's rise below Reynolds number 3e5, 11.5/Re^0.19 (1.29 at 1e5), is left out, so it says less
//! than its source there; the scatter counts it. r/d below 0.5 counts as 0.5; beyond 180 degrees K grows with the angle.

use std::f64::consts::PI;

use super::super::Scatter;
use super::BendTerms;
use crate::curve::Curve;

/// Range of r/d [-].
pub const RANGE: [f64; 2] = [0.5, 3.0];
/// Range of the angle [rad].
pub const RANGE_ANGLE: [f64; 2] = [0.0, PI];

/// The source begins here [-].
pub const LEAST_REYNOLDS: f64 = 3e5;

/// Scatter of the coefficient.
pub const SCATTER: Scatter = Scatter {
    relative: 0.25,
    common: 0.5,
    origin: "authors at r/d 1.5 give 0.23 to 0.28 at 90 degrees (fluids 1.3.1: Rennels, Miller, Ito, Crane), this one 0.21 at Reynolds number 3e5",
};

/// A over the angle in degrees.
const TURN: Curve = Curve {
    xs: &[
        0.0, 20.0, 30.0, 45.0, 60.0, 75.0, 90.0, 110.0, 130.0, 150.0, 180.0,
    ],
    ys: &[
        0.0, 0.31, 0.45, 0.60, 0.78, 0.90, 1.0, 1.13, 1.20, 1.28, 1.40,
    ],
    flat: [false, false],
};

/// The coefficient of a bend by its axis radius over diameter and its angle [rad].
pub fn terms(radius_ratio: f64, angle: f64) -> BendTerms {
    let ratio = radius_ratio.max(RANGE[0]);
    let tightness = if ratio < 1.0 {
        ratio.powf(-2.5)
    } else {
        1.0 / ratio.sqrt()
    };
    let turns = (angle / PI).max(1.0);
    BendTerms {
        fixed: turns * TURN.at(angle.to_degrees()).value * 0.21 * tightness,
        by_friction: angle * ratio,
    }
}
