//! A blower in a branch.

use serde::Serialize;

use crate::law::blower::table::Table;

document! {
/// A positive-displacement blower driven by the crankshaft.
pub struct Blower {
    /// Air it would move in one turn without leaking [m3].
    pub displacement: f64,
    /// Its turns a turn of the crankshaft [-]; found when a boost is given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drive_ratio: Option<f64>,
    /// Diameter of the crankshaft's pulley, with `blower_pulley` instead of a drive ratio [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub crank_pulley: Option<f64>,
    /// Diameter of the blower's pulley [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blower_pulley: Option<f64>,
    /// The boost that the drive ratio is found for, static and above ambient pressure [Pa].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boost: Option<f64>,
    /// Id of the node where the boost is read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boost_node: Option<String>,
    /// Air moved over displacement, at its inlet's density [-].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub volumetric_efficiency: Option<f64>,
    /// The same over its speed and pressure ratio, instead of one number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub volumetric_table: Option<EfficiencyTable>,
    /// Isentropic temperature rise over the real one [-].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub isentropic_efficiency: Option<f64>,
    /// The same over its speed and pressure ratio, instead of one number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub isentropic_table: Option<EfficiencyTable>,
    /// The speed that it must not pass [rev/s].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub greatest_speed: Option<f64>,
    /// The rim speed that its pulley must not pass [m/s].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub greatest_rim_speed: Option<f64>,
}

/// An efficiency over speed and pressure ratio, linear between its points.
pub struct EfficiencyTable {
    /// Rising [rev/s].
    pub speeds: Vec<f64>,
    /// Rising pressure ratios [-]; empty when the efficiency depends on the speed alone.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub ratios: Vec<f64>,
    /// Speed by speed, for every pressure ratio [-].
    pub values: Vec<f64>,
}
}

impl From<&EfficiencyTable> for Table {
    fn from(given: &EfficiencyTable) -> Self {
        Self {
            speeds: given.speeds.clone(),
            ratios: if given.ratios.is_empty() {
                vec![1.0]
            } else {
                given.ratios.clone()
            },
            values: given.values.clone(),
        }
    }
}
