//! Poppet valve at fixed lift: its curtain as an opening.
//!
//! # Equation
//! A_eff = n C_d pi D L.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | D | `diameter` | inner seat diameter | m |
//! | L | `lift` | lift | m |
//! | C_d | `discharge_coefficient` | on the curtain area | - |
//! | n | `count` | valves of the port | - |
//! | A_eff | result | section to which the air accelerates without loss | m2 |
//!
//! # Source
//! J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, section 6.3.2 and appendix C.
//!
//! # Range of validity
//! L/D to 0.25: beyond it the seat, not the curtain, is the narrowest section.
//!
//! # Limits
//! The jet's whole head is lost in what follows. Flow back into the port is not treated as a jet.

use super::super::Scatter;
use super::super::outside::outside_range;

/// Range of L/D [-].
pub const RANGE: [f64; 2] = [0.0, 0.25];

/// Scatter of the head the valve costs.
pub const SCATTER: Scatter = Scatter {
    relative: 0.15,
    common: 0.8,
    origin: "published inlet valves lie within 6 to 12 % of a mean coefficient at one L/D (from memory), twice that in head",
};

/// Effective area of a port's valves [m2].
pub fn effective_area(diameter: f64, lift: f64, discharge_coefficient: f64, count: f64) -> f64 {
    count * discharge_coefficient * std::f64::consts::PI * diameter * lift
}

/// The field `lift` when it is outside the range.
pub fn outside(diameter: f64, lift: f64) -> Vec<(&'static str, String)> {
    outside_range("lift", "lift over seat diameter", lift / diameter, RANGE)
        .into_iter()
        .collect()
}
