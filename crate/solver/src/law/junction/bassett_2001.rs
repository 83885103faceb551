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
//! From momentum balances, sharp edges, high Reynolds number.

use super::{Geometry, JunctionCoefficients, polynomial};

/// Range of the angle [rad].
pub const RANGE: [f64; 2] = [0.52, 1.571];

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
    let factor = 2.0 * psi / (psi + 0.5 * cosine);
    // The bracket, 1 - (1 - q)^2 - q^2 psi cos(theta).
    let square = -1.0 - psi * cosine;
    JunctionCoefficients {
        run: polynomial(&[0.0, 2.0 * factor - 2.0, factor * square + 1.0], q),
        side: polynomial(&[-1.0, 2.0 * factor, factor * square + psi * psi], q),
    }
}
