//! Air as an ideal gas: R 287.05 J/(kg K) (ISO 2533), ratio of specific heats 1.4, Sutherland viscosity.
//!
//! With that ratio the flow function is M / (1 + M^2/5)^3 and the pressure ratio (1 + M^2/5)^(7/2):
//! whole and half powers, no transcendental. The ratio is therefore a constant of the program.

mod section;

pub use section::Section;

use crate::law::Slope;

/// Specific gas constant of dry air [J/(kg K)]; ISO 2533.
pub const GAS_CONSTANT: f64 = 287.05;
/// Ratio of specific heats [-].
pub const GAMMA: f64 = 1.4;
/// Specific heat at constant pressure, gamma R/(gamma - 1) [J/(kg K)].
pub const SPECIFIC_HEAT: f64 = GAMMA * GAS_CONSTANT / (GAMMA - 1.0);
/// Largest value of `flow_function`, reached at Mach 1 [-].
pub const CHOKED_FLOW_FUNCTION: f64 = 0.578_703_703_703_703_7;

/// Dynamic viscosity by Sutherland's law [Pa s] and its derivative with temperature.
///
/// Constants 1.458e-6 kg/(m s sqrt(K)) and 110.4 K: U.S. Standard Atmosphere 1976, ISO 2533.
pub fn viscosity(temperature: f64) -> Slope {
    let value = 1.458e-6 * temperature * temperature.sqrt() / (temperature + 110.4);
    Slope {
        value,
        derivative: value * (1.5 / temperature - 1.0 / (temperature + 110.4)),
    }
}

/// What depends on the stagnation temperature alone.
#[derive(Clone, Copy, Debug)]
pub struct Warmth {
    /// Stagnation temperature [K].
    pub temperature: f64,
    /// Square root of R T / gamma: what a mass flow is multiplied with in the flow function [m/s].
    pub root: f64,
    /// Dynamic viscosity [Pa s] and its derivative with temperature.
    pub viscosity: Slope,
    /// One over the temperature [1/K].
    pub inverse: f64,
    /// One over the viscosity [1/(Pa s)].
    pub inverse_viscosity: f64,
    /// Derivative of the viscosity's logarithm with temperature [1/K].
    pub log_viscosity: f64,
}

impl Warmth {
    /// Of air at a stagnation temperature [K].
    pub fn at(temperature: f64) -> Self {
        let viscosity = viscosity(temperature);
        let inverse_viscosity = 1.0 / viscosity.value;
        Self {
            temperature,
            root: (temperature * (GAS_CONSTANT / GAMMA)).sqrt(),
            viscosity,
            inverse: 1.0 / temperature,
            inverse_viscosity,
            log_viscosity: viscosity.derivative * inverse_viscosity,
        }
    }
}

/// Stagnation density [kg/m3] at stagnation `pressure` [Pa] and `temperature` [K].
pub fn density(pressure: f64, temperature: f64) -> f64 {
    pressure / (GAS_CONSTANT * temperature)
}

/// M / (1 + M^2/5)^3, which is m sqrt(R T / gamma) / (A p) with stagnation p and T [-].
pub fn flow_function(mach: f64) -> f64 {
    mach / (1.0 + 0.2 * mach * mach).powi(3)
}

/// The flow function that a mass flow needs in a section [-].
pub fn needed_flow_function(mass_flow: f64, pressure: f64, temperature: f64, area: f64) -> f64 {
    mass_flow * (temperature * (GAS_CONSTANT / GAMMA)).sqrt() / (area * pressure)
}

/// Subsonic Mach number of a flow function, or nothing when the section would choke.
pub fn mach(flow_function: f64) -> Option<f64> {
    let x = flow_function;
    let short_of_choking = 1.0 - x / CHOKED_FLOW_FUNCTION;
    if short_of_choking < 0.0 || x.is_nan() {
        return None;
    }
    // Left of the root Newton's steps on a concave function never overshoot; near Mach 1, where the
    // root is double, the expansion of the flow function about its top starts them close enough.
    let mut mach = if short_of_choking < 0.05 {
        1.0 - (1.2 * short_of_choking).sqrt()
    } else {
        x * inverted_series(x * x)
    };
    for _ in 0..30 {
        let base = 1.0 + 0.2 * mach * mach;
        let square = base * base;
        let slope = 1.0 - 1.2 * x * mach * square;
        if slope <= 1e-12 {
            break;
        }
        let step = (x * square * base - mach) / slope;
        mach = (mach + step).clamp(0.0, 1.0);
        // The error after a step is its square times half the ratio of second to first derivative.
        if step * step <= 1e-16 * mach * slope {
            break;
        }
    }
    Some(mach)
}

/// M/x by Lagrange's inversion of M = x (1 + M^2/5)^3, in `s` = x^2: coefficients
/// C(3(2k+1), k) / ((2k+1) 5^k), good to 1e-9 below x = 0.2.
fn inverted_series(s: f64) -> f64 {
    let tail = 6.904_32 + s * (16.062_144 + s * 38.723_942_4);
    1.0 + s * (0.6 + s * (0.84 + s * (1.52 + s * (3.12 + s * tail))))
}

/// 1 - p/p0, the part of the stagnation pressure that is velocity head, without cancellation at low Mach.
pub fn head_fraction(mach: f64) -> f64 {
    let u = 0.2 * mach * mach;
    let s = (1.0 + u).sqrt();
    let sum = 1.0 + s * (1.0 + s * (1.0 + s * (1.0 + s * (1.0 + s * (1.0 + s)))));
    u / (s + 1.0) * sum / s.powi(7)
}

/// p/p0 [-].
pub fn pressure_ratio(mach: f64) -> f64 {
    let base = 1.0 + 0.2 * mach * mach;
    1.0 / (base * base * base * base.sqrt())
}
