//! Header: static-pressure regain along the run.
//!
//! # Equation
//! dp = -2 beta rho V dV along the run; a side leg that leaves is driven by the static pressure before it.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | beta | `regain_dividing`, `regain_combining` | regain factor; 0.5 loses no stagnation pressure, 1 is full momentum | - |
//!
//! # Source
//! A. Acrivos, B. D. Babcock, R. L. Pigford, Chem. Eng. Sci. 10 (1959) 112-124; R. A. Bajura, E. H. Jones,
//! J. Fluids Eng. 98 (1976) 654-666, whose theta = 2 beta is 1.05 dividing and 2.66 combining (from memory).
//!
//! # Range of validity
//! Turbulent headers with sharp side legs at right angles; factors from 0 to 1.5 have been measured.
//!
//! # Limits
//! The default for dividing is the ideal 0.5, close to the measured 0.525; for combining full momentum.

use super::super::outside::outside_range;

/// Range of either regain factor [-].
pub const RANGE: [f64; 2] = [0.0, 1.5];

/// Regain factor where side legs leave [-].
pub const DEFAULT_REGAIN_DIVIDING: f64 = 0.5;
/// Regain factor where side legs join [-].
pub const DEFAULT_REGAIN_COMBINING: f64 = 1.0;
/// One standard deviation of the dividing factor [-]; judged from 0.525 (from memory) and 0.25 to 0.5 for lids.
pub const SCATTER_DIVIDING: f64 = 0.1;
/// One standard deviation of the combining factor [-]; judged from 1.33 (from memory) against 1.
pub const SCATTER_COMBINING: f64 = 0.3;

/// Regain factors, where they are given, outside the range.
pub fn outside(dividing: Option<f64>, combining: Option<f64>) -> Vec<(&'static str, String)> {
    let given = [("regainDividing", dividing), ("regainCombining", combining)];
    let found = given
        .into_iter()
        .filter_map(|(field, factor)| outside_range(field, "regain factor", factor?, RANGE));
    found.collect()
}
