//! Inlet Mach index: how near the mean flow through the inlet valves comes to what they can pass.
//!
//! # Equation
//! Z = (A_p/A_v) s / (C_i a).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | A_p | `piston_area` | of the piston | m2 |
//! | A_v | `valve_area` | of all inlet valves' seats, pi/4 D^2 each | m2 |
//! | s | `piston_speed` | mean, twice the stroke times speed | m/s |
//! | C_i | `flow_coefficient` | mean over the event on the valve area, 0.35 when not known | - |
//! | a | `sound_speed` | in the charge | m/s |
//! | Z | result | | - |
//!
//! # Source
//! C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, volume 1, 1966, chapter 6 (from memory).
//!
//! # Range of validity
//! Volumetric efficiency falls once Z passes about 0.5 to 0.6 (from memory).
//!
//! # Limits
//! One number for an engine: it knows neither valve timing nor tuning.

/// Range in which breathing does not suffer yet [-].
pub const RANGE: [f64; 2] = [0.0, 0.6];

/// Mean flow coefficient over an event with L/D to 0.25, on the valve area: 0.33 to 0.40 (from memory) [-].
pub const MEAN_FLOW_COEFFICIENT: f64 = 0.35;

/// The index [-].
pub fn index(piston_area: f64, valve_area: f64, piston_speed: f64, sound_speed: f64) -> f64 {
    piston_area / valve_area * piston_speed / (MEAN_FLOW_COEFFICIENT * sound_speed)
}
