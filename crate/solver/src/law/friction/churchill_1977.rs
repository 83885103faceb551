//! Darcy friction factor in all regimes, Churchill 1977.
//!
//! # Equation
//! f = 8 [(8/Re)^12 + (A + B)^(-3/2)]^(1/12), A = {2.457 ln 1/[(7/Re)^0.9 + 0.27 e]}^16, B = (37530/Re)^16.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | Re | `reynolds` | Reynolds number on the hydraulic diameter | - |
//! | e | `relative_roughness` | roughness over hydraulic diameter | - |
//! | f Re | result | Darcy friction factor times Reynolds number, 64 in laminar flow | - |
//!
//! # Source
//! S. W. Churchill, Friction-factor equation spans all fluid-flow regimes, Chemical Engineering 84 (1977)
//! 91-92; form and values checked against the `fluids` library (Churchill_1977).
//!
//! # Range of validity
//! All Reynolds numbers; e from 0 to 0.05.
//!
//! # Limits
//! Settled flow. Written for f Re, which stays finite at zero flow. In the transition (Re 2000 to 4000)
//! every formula is a guess.

use super::super::outside::outside_range;
use super::super::{Scatter, Slope};

/// Range of relative roughness [-].
pub const RANGE: [f64; 2] = [0.0, 0.05];

/// Scatter of the friction factor.
pub const SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.5,
    origin: "common practice: turbulent friction in settled flow is known to 10 %",
};

/// Below this Reynolds number the turbulent part is smaller than rounding [-].
const LAMINAR: f64 = 300.0;

/// f Re and its derivative with Re.
pub fn friction_group(reynolds: f64, relative_roughness: f64) -> Slope {
    if reynolds < LAMINAR {
        return Slope {
            value: 64.0,
            derivative: 0.0,
        };
    }
    // With f = 8 (L + T)^(1/12), L = (8/Re)^12, T = (A + B)^(-3/2), all as powers of whole numbers.
    let inverse = 1.0 / reynolds;
    let laminar = (8.0 * inverse).powi(12);
    let smooth = (7.0 * inverse).powf(0.9);
    let inside = smooth + 0.27 * relative_roughness;
    let log = 2.457 * -inside.ln();
    // The sixteenth power in two steps: the derivative needs the fifteenth, also where the logarithm is zero.
    let fifteenth = log.powi(15);
    let a = fifteenth * log;
    let b = (37_530.0 * inverse).powi(16);
    let sum = a + b;
    let turbulent = 1.0 / (sum * sum.sqrt());
    let both = laminar + turbulent;
    let friction = 8.0 * both.sqrt().sqrt().cbrt();
    // Derivatives with ln Re.
    let a_by = 16.0 * fifteenth * 2.457 * 0.9 * smooth / inside;
    let b_by = -16.0 * b;
    let turbulent_by = -1.5 * turbulent / sum * (a_by + b_by);
    let friction_by = friction / 12.0 * (-12.0 * laminar + turbulent_by) / both;
    Slope {
        value: friction * reynolds,
        derivative: friction + friction_by,
    }
}

/// The friction factor and its derivative with Re; Re above 0.
pub fn darcy(reynolds: f64, relative_roughness: f64) -> Slope {
    let group = friction_group(reynolds, relative_roughness);
    let value = group.value / reynolds;
    Slope {
        value,
        derivative: (group.derivative - value) / reynolds,
    }
}

/// The field `roughness` when the relative roughness is outside the range.
pub fn outside(relative_roughness: f64) -> Vec<(&'static str, String)> {
    outside_range(
        "roughness",
        "roughness over diameter",
        relative_roughness,
        RANGE,
    )
    .into_iter()
    .collect()
}
