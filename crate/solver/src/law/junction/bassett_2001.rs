//! Tee and wye, Bassett, Winterbone and Pearson 2001.
//!
//! # Equation
//! With w = 1 - q and psi = A_run/A_side: run dividing w^2 - 1.5 w + 0.5; side dividing
//! 1 + (q psi)^2 - 2 q psi cos(0.75 theta); side combining 2 psi/(psi + 0.5 cos theta)
//! [1 - w^2 - q^2 psi cos theta] + (q psi)^2 - 1; run combining the same bracket - 1 + w^2.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | q | `q` | side flow over the flow of the leg that carries all | - |
//! | psi | from `area_ratio` | run area over side area | - |
//! | theta | `angle` | side leg to run | rad |
//! | K | result | on the head of the leg that carries all | - |
//!
//! # Source
//! M. D. Bassett, D. E. Winterbone, R. J. Pearson, Proc. IMechE C 215 (2001) 861-881,
//! doi 10.1177/095440620121500801, eqs 12, 15, 27 and table 2; as given by a secondary text that names them.
//!
//! # Range of validity
//! Angles from 30 to 90 degrees, side area up to the run's.
//!
//! # Limits
//! From momentum balances, sharp edges, high Reynolds number. Combining, it stands well above the other four
//! authors (equal areas, q 0.5: side 0.75 against 0.32 to 0.44, run 0.75 against 0.41 to 0.53); the formula was
//! read in a secondary text only. Beyond 90 degrees the factor psi + 0.5 cos theta is kept above 0.2.

use super::{Geometry, JunctionCoefficients, outside_angle, outside_area_ratio, polynomial};

/// Range of the area ratio [-].
pub const RANGE: [f64; 2] = [0.05, 1.0];
/// Range of the angle [rad].
pub const RANGE_ANGLE: [f64; 2] = [0.52, 1.571];

/// One standard deviation of K, dividing [-]: root mean square distance from the mean of the other four
/// authors at a right angle, 0.07 for the run; for the side 0.06 at equal areas, 0.16 at half the area.
pub const SCATTER: f64 = 0.1;
/// One standard deviation of K, combining [-]: the same comparison at equal areas, 0.28 for the run and 0.47
/// for the side.
pub const SCATTER_COMBINING: f64 = 0.4;

/// Air from one run leg to the other and to the side.
pub fn dividing(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let psi = 1.0 / geometry.area_ratio;
    JunctionCoefficients {
        // (1 - q)^2 - 1.5 (1 - q) + 0.5
        run: polynomial(&[0.0, -0.5, 1.0], q),
        side: polynomial(
            &[1.0, -2.0 * psi * (0.75 * geometry.angle).cos(), psi * psi],
            q,
        ),
    }
}

/// Air from one run leg and the side to the other run leg.
pub fn combining(geometry: &Geometry, q: f64) -> JunctionCoefficients {
    let psi = 1.0 / geometry.area_ratio;
    let cosine = geometry.angle.cos();
    let factor = 2.0 * psi / (psi + 0.5 * cosine).max(0.2);
    // The bracket, 1 - (1 - q)^2 - q^2 psi cos(theta).
    let square = -1.0 - psi * cosine;
    JunctionCoefficients {
        run: polynomial(&[0.0, 2.0 * factor - 2.0, factor * square + 1.0], q),
        side: polynomial(&[-1.0, 2.0 * factor, factor * square + psi * psi], q),
    }
}

/// Fields outside the range.
pub fn outside(geometry: &Geometry) -> Vec<(&'static str, String)> {
    outside_area_ratio(geometry, RANGE)
        .into_iter()
        .chain(outside_angle(geometry, RANGE_ANGLE))
        .collect()
}
