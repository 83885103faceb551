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
//! every formula is a guess. Re is on Sutherland's viscosity at the stagnation temperature T in K,
//! 1.458e-6 T^1.5/(T + 110.4) Pa s (U.S. Standard Atmosphere 1976).

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

/// Above this Reynolds number the terms of laminar flow and transition are short series [-].
const TURBULENT: f64 = 40_000.0;
/// Provided that A is at least this to the sixteenth power, which it is in the range of roughness [-].
const ROUGHEST: f64 = 10.0;

/// f Re and its derivative with Re.
pub fn friction_group(reynolds: f64, relative_roughness: f64) -> Slope {
    if reynolds < LAMINAR {
        return Slope {
            value: 64.0,
            derivative: 0.0,
        };
    }
    let inverse = 1.0 / reynolds;
    let smooth = (0.9 * (7.0 * inverse).ln()).exp();
    let inside = smooth + 0.27 * relative_roughness;
    let log = 2.457 * -inside.ln();
    let log_by = 2.457 * 0.9 * smooth / inside;
    if reynolds > TURBULENT && log > ROUGHEST {
        return turbulent(reynolds, inverse, log, log_by);
    }
    general(reynolds, inverse, log, log_by)
}

/// The equation as it stands, for f Re; `log_by` is the derivative of `log` with ln Re.
fn general(reynolds: f64, inverse: f64, log: f64, log_by: f64) -> Slope {
    // With f = 8 (L + T)^(1/12), L = (8/Re)^12, T = (A + B)^(-3/2), all as powers of whole numbers.
    let laminar = (8.0 * inverse).powi(12);
    // The sixteenth power in two steps: the derivative needs the fifteenth, also where the logarithm is zero.
    let fifteenth = log.powi(15);
    let a = fifteenth * log;
    let b = (37_530.0 * inverse).powi(16);
    let sum = a + b;
    let turbulent = 1.0 / (sum * sum.sqrt());
    let both = laminar + turbulent;
    let friction = 8.0 * both.sqrt().sqrt().cbrt();
    // Derivatives with ln Re.
    let a_by = 16.0 * fifteenth * log_by;
    let b_by = -16.0 * b;
    let turbulent_by = -1.5 * turbulent / sum * (a_by + b_by);
    let friction_by = friction / 12.0 * (-12.0 * laminar + turbulent_by) / both;
    Slope {
        value: friction * reynolds,
        derivative: friction + friction_by,
    }
}

/// The same where B is below the rounding of A and L is small against T: f = 8 / log^2 (1 + L/T)^(1/12).
fn turbulent(reynolds: f64, inverse: f64, log: f64, log_by: f64) -> Slope {
    let ratio = {
        let cube = 8.0 * inverse * log * log;
        let cube = cube * cube * cube;
        (cube * cube) * (cube * cube)
    };
    // Two terms of the binomial; the third is below rounding.
    let factor = 1.0 + ratio / 12.0 * (1.0 - 11.0 / 24.0 * ratio);
    let friction = 8.0 / (log * log) * factor;
    let ratio_by = ratio * (24.0 * log_by / log - 12.0);
    let friction_by =
        friction * (-2.0 * log_by / log + ratio_by / 12.0 * (1.0 - 11.0 / 12.0 * ratio) / factor);
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Our own arithmetic, two ways.
    #[test]
    fn the_short_form_is_the_equation() {
        for reynolds in [40_001.0, 1e5, 1e6, 1e8] {
            for roughness in [0.0, 1e-4, 0.01, 0.05] {
                let inverse = 1.0 / reynolds;
                let smooth = (7.0_f64 * inverse).powf(0.9);
                let inside = smooth + 0.27 * roughness;
                let (log, log_by) = (-2.457 * inside.ln(), 2.457 * 0.9 * smooth / inside);
                let long = general(reynolds, inverse, log, log_by);
                let short = friction_group(reynolds, roughness);
                assert!((short.value / long.value - 1.0).abs() < 1e-14);
                assert!(
                    (short.derivative - long.derivative).abs()
                        < 1e-14 * long.value / reynolds * 10.0
                );
            }
        }
    }
}
