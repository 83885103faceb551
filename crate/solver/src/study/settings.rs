//! Conditions, limits and display units of a study.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::defaults::{
    bench_limit, running_limit, standard_depression, standard_pressure, standard_temperature,
};

document! {
/// Conditions, limits and display units.
#[derive(Default)]
pub struct Settings {
    /// Flow bench.
    #[serde(default)]
    pub bench: Bench,
    /// Running engine.
    #[serde(default)]
    pub running: Running,
    /// The air around the running engine; the bench's room air when nothing is given.
    #[serde(default, skip_serializing_if = "super::is_default")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub ambient: Ambient,
    /// What is entered against values from CAD; the draws never read this.
    #[serde(default, skip_serializing_if = "Check::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub check: Check,
    /// Display unit by quantity, as the page writes them; the solver never reads this.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub units: BTreeMap<String, String>,
}

/// Flow bench conditions.
pub struct Bench {
    /// Absolute pressure of the still room air [Pa].
    #[serde(default = "standard_pressure")]
    pub ambient_pressure: f64,
    /// Temperature of the still room air [K].
    #[serde(default = "standard_temperature")]
    pub ambient_temperature: f64,
    /// Pressure difference between room and settling chamber [Pa]; 28 inH2O when not given (common practice).
    #[serde(default = "standard_depression")]
    pub depression: f64,
    /// Whether the bench blows into the source instead of sucking at the port.
    #[serde(default)]
    pub blowing: bool,
    /// Largest acceptable spread [-]; 3 % when not given (common practice).
    #[serde(default = "bench_limit")]
    pub limit: f64,
    /// Readings of some bench at other depressions, to be carried over to this one; the draws never read them.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub readings: Vec<Reading>,
}

/// One reading of a flow bench.
pub struct Reading {
    /// Pressure difference between room and settling chamber [Pa].
    pub depression: f64,
    /// Air read [kg/s].
    pub flow: f64,
    /// Absolute pressure of the still room air, this bench's when not given [Pa].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pressure: Option<f64>,
    /// Temperature of the still room air, this bench's when not given [K].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature: Option<f64>,
}

/// The air around the running engine.
#[derive(Default)]
pub struct Ambient {
    /// Height above sea level in the standard atmosphere [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub altitude: Option<f64>,
    /// Absolute pressure, instead of the altitude's [Pa].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pressure: Option<f64>,
    /// Temperature, instead of the altitude's [K].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature: Option<f64>,
}

/// Running engine conditions.
pub struct Running {
    /// Largest acceptable spread [-]; 0.4 % when not given (proposed).
    #[serde(default = "running_limit")]
    pub limit: f64,
}

/// What is entered against values from CAD.
#[derive(Default)]
pub struct Check {
    /// Volume of all chambers and ways together as CAD gives it [m3].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub total_volume: Option<f64>,
    /// Largest acceptable difference from CAD [-]; 2 % when not given (common practice).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<f64>,
}
}

impl Default for Bench {
    fn default() -> Self {
        Self {
            ambient_pressure: standard_pressure(),
            ambient_temperature: standard_temperature(),
            depression: standard_depression(),
            blowing: false,
            limit: bench_limit(),
            readings: Vec::new(),
        }
    }
}

impl Default for Running {
    fn default() -> Self {
        Self {
            limit: running_limit(),
        }
    }
}

impl Check {
    fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}
