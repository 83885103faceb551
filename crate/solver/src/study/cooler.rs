//! A charge cooler.

use serde::Serialize;

document! {
/// A charge cooler: a core in cross flow whose passages stand in branches.
pub struct Cooler {
    /// What cores call it.
    pub id: String,
    /// Which side of the core is mixed across its own flow.
    #[serde(default)]
    pub mixing: Mixing,
    /// Temperature of the coolant that enters [K].
    pub coolant_temperature: f64,
    /// Mass flow of the coolant through the whole core [kg/s]; its temperature stays when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coolant_flow: Option<f64>,
    /// Specific heat of the coolant [J/(kg K)].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coolant_specific_heat: Option<f64>,
    /// Part of the difference between entering air and entering coolant that the air loses, whole core [-].
    pub effectiveness: f64,
    /// Air flow through the whole core at which that was measured [kg/s]; it holds at every flow when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured_flow: Option<f64>,
    /// Coolant flow at which it was measured [kg/s]; the present one when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured_coolant_flow: Option<f64>,
    /// Part of the resistance to heat that stands on the air side [-].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub air_part: Option<f64>,
    /// Exponent of the air side's conductance with the air flow [-].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub air_exponent: Option<f64>,
    /// Ids of the branches in the order the coolant passes them; side by side when empty.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub series: Vec<String>,
}

/// Which side of a core in cross flow is mixed across its own flow.
#[derive(Copy, Eq, Default)]
pub enum Mixing {
    /// Neither, as with fins between flat tubes.
    #[default]
    BothUnmixed,
    /// The coolant.
    CoolantMixed,
    /// The air.
    AirMixed,
}
}
