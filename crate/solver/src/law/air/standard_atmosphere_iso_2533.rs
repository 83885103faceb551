//! Pressure and temperature of still air by altitude, ISO 2533, 1975.
//!
//! # Equation
//! H = r h/(r + h), T = T_0 - L H, p = p_0 (T/T_0)^(g/(R L)).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | h | `altitude` | height above sea level | m |
//! | H | - | geopotential height | m |
//! | T, p | `temperature`, `pressure` | of the air at rest | K, Pa |
//! | T_0, p_0 | - | at sea level, 288.15 and 101325 | K, Pa |
//! | L, r | - | lapse 0.0065, nominal radius of the earth 6356766 | K/m, m |
//! | g, R | - | 9.80665, 287.05287 | m/s2, J/(kg K) |
//!
//! # Source
//! ISO 2533:1975, Standard Atmosphere, constants from memory; below 32 km it is the U.S. Standard Atmosphere 1976.
//!
//! # Range of validity
//! The troposphere, from 2000 m below sea level to 11000 m above.
//!
//! # Limits
//! Dry air of a mean year at middle latitudes: a day's weather moves pressure by 3 % and temperature by 20 K, so
//! a typed ambient state is better. Beyond the range the state at its border stands.

use super::super::outside::outside_range;

/// Range of the altitude [m].
pub const RANGE: [f64; 2] = [-2_000.0, 11_000.0];

const PRESSURE: f64 = 101_325.0;
const TEMPERATURE: f64 = 288.15;
const LAPSE: f64 = 0.006_5;
const RADIUS: f64 = 6_356_766.0;
const GRAVITY: f64 = 9.806_65;
/// The standard's own gas constant [J/(kg K)]; the rest of the program has it to five digits.
const GAS_CONSTANT: f64 = 287.052_87;

/// Air at rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Atmosphere {
    /// Pressure [Pa].
    pub pressure: f64,
    /// Temperature [K].
    pub temperature: f64,
}

/// The air at an altitude above sea level [m].
pub fn at(altitude: f64) -> Atmosphere {
    let altitude = altitude.clamp(RANGE[0], RANGE[1]);
    let geopotential = RADIUS * altitude / (RADIUS + altitude);
    let temperature = TEMPERATURE - LAPSE * geopotential;
    let exponent = GRAVITY / (GAS_CONSTANT * LAPSE);
    Atmosphere {
        pressure: PRESSURE * (temperature / TEMPERATURE).powf(exponent),
        temperature,
    }
}

/// The field `altitude` when it is outside the range.
pub fn outside(altitude: f64) -> Vec<(&'static str, String)> {
    outside_range("altitude", "altitude in metres", altitude, RANGE)
        .into_iter()
        .collect()
}
