//! Positive-displacement blower: flow, outlet temperature and power by its efficiencies.
//!
//! # Equation
//! m = eta_v V n rho_1; T_2 = T_1 (1 + (r^(2/7) - 1)/eta_s) for r of 1 and more; power = m c_p (T_2 - T_1).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | eta_v | `volumetric_efficiency` | delivered over displaced air, at the inlet's state | - |
//! | V | `displacement` | volume per turn of the blower | m3 |
//! | n | `speed` | turns of the blower | 1/s |
//! | rho_1 | `density` | stagnation density at its inlet | kg/m3 |
//! | T_1, T_2 | `inlet`, `outlet` | stagnation temperatures | K |
//! | r | `pressure_ratio` | stagnation pressure behind over before | - |
//! | eta_s | `isentropic_efficiency` | isentropic over real rise of temperature | - |
//! | c_p | - | gamma R/(gamma - 1) | J/(kg K) |
//!
//! # Source
//! Definitions of the efficiencies, as in J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, section 6.8,
//! and Y. A. Cengel and M. A. Boles, Thermodynamics, section 7-12; both from memory.
//!
//! # Range of validity
//! Pressure ratio from 1 to 3.5.
//!
//! # Limits
//! All of the work that is not isentropic heats the air: no heat to the casing, no bearing and drive losses in the
//! power. Constant gamma of 1.4: the rise of temperature is up to 1 % too large. Below a pressure ratio of 1, where
//! the blower only stands in the way, the efficiency has no meaning (divided by it, the air would leave colder than
//! any expansion makes it). The air then leaves as warm as it came, as through any restriction; so that the derivative
//! does not jump at 1, the law gets there over some hundredths of pressure ratio, with a dip of less than 0.5 % of
//! T_1 at an efficiency of 0.5. That dip is no physics.

use super::super::Scatter;
use super::super::outside::outside_range;
use crate::gas::SPECIFIC_HEAT;

/// Range of the pressure ratio [-].
pub const RANGE: [f64; 2] = [1.0, 3.5];

/// Scatter of the rise of temperature.
pub const SCATTER: Scatter = Scatter {
    relative: 0.07,
    common: 1.0,
    origin: "judged: 5 points of 70 in the efficiency read from a map; one blower feeds all",
};

/// (gamma - 1)/gamma.
const EXPONENT: f64 = 2.0 / 7.0;
/// Pressure ratio below 1 over which the outlet returns to the inlet's temperature [-].
const RETURN: f64 = 0.02;

/// An outlet temperature and its derivatives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heated {
    /// Stagnation temperature behind the blower [K].
    pub value: f64,
    /// Derivative with the inlet's temperature [-].
    pub by_inlet: f64,
    /// Derivative with the pressure ratio [K].
    pub by_ratio: f64,
    /// Derivative with the isentropic efficiency [K].
    pub by_efficiency: f64,
}

/// Stagnation temperature behind the blower from that before it [K].
pub fn outlet_temperature(inlet: f64, pressure_ratio: f64, isentropic_efficiency: f64) -> Heated {
    let (rise, by_ratio) = isentropic_rise(pressure_ratio);
    let by_inlet = 1.0 + rise / isentropic_efficiency;
    Heated {
        value: inlet * by_inlet,
        by_inlet,
        by_ratio: inlet * by_ratio / isentropic_efficiency,
        by_efficiency: -inlet * rise / (isentropic_efficiency * isentropic_efficiency),
    }
}

/// Mass flow [kg/s] of a blower that turns at a speed [1/s], by the density at its inlet [kg/m3].
pub fn flow(volumetric_efficiency: f64, displacement: f64, speed: f64, density: f64) -> f64 {
    volumetric_efficiency * displacement * speed * density
}

/// Power that the air takes from the shaft [W], from flow [kg/s] and stagnation temperatures [K].
pub fn power(flow: f64, inlet: f64, outlet: f64) -> f64 {
    flow * SPECIFIC_HEAT * (outlet - inlet)
}

/// The field `pressureRatio` when it is outside the range.
pub fn outside(pressure_ratio: f64) -> Vec<(&'static str, String)> {
    outside_range("pressureRatio", "pressure ratio", pressure_ratio, RANGE)
        .into_iter()
        .collect()
}

/// Rise of temperature over the inlet's at an efficiency of 1, and its derivative with the pressure ratio.
fn isentropic_rise(ratio: f64) -> (f64, f64) {
    if ratio >= 1.0 {
        let rise = (EXPONENT * ratio.ln()).exp_m1();
        return (rise, EXPONENT * (1.0 + rise) / ratio);
    }
    let short = (1.0 - ratio) / RETURN;
    let fading = EXPONENT * (-short).exp();
    (-RETURN * short * fading, fading * (1.0 - short))
}
