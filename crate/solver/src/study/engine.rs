//! The engine that draws through the manifold.

use serde::Serialize;

use super::EfficiencyTable;

document! {
/// The engine that draws through the manifold.
#[derive(Default)]
pub struct Engine {
    /// Cylinders in the order of the engine's own numbering.
    #[serde(default)]
    pub cylinders: Vec<Cylinder>,
    /// Crankshaft speed [rev/s].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub speed: Option<f64>,
    /// Air drawn over swept volume at the reference density [-].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub volumetric_efficiency: Option<f64>,
    /// What the volumetric efficiency refers to.
    #[serde(default)]
    pub reference: Reference,
    /// Volumetric efficiency over crankshaft speed, instead of one number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub volumetric_table: Option<EfficiencyTable>,
    /// Turns of the crankshaft in which every cylinder fills once.
    #[serde(default, skip_serializing_if = "crate::study::is_default")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub cycle: Cycle,
    /// Bore [m]; with the stroke, the swept volume of each cylinder that states none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bore: Option<f64>,
    /// Stroke [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stroke: Option<f64>,
    /// Lowest crankshaft speed of the speed range [rev/s].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub speed_from: Option<f64>,
    /// Highest crankshaft speed of the speed range [rev/s].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub speed_to: Option<f64>,
    /// How fuel is metered.
    #[serde(default, skip_serializing_if = "crate::study::is_default")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub fuel: Fuel,
    /// Crank angle over which a cylinder draws [rad]; 240 degrees when not given, 120 with two strokes (common practice).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub event_angle: Option<f64>,
    /// Cylinder ids in firing order, evenly spaced over the cycle; empty when not known.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub firing_order: Vec<String>,
    /// Exponent e in "air drawn varies as charge temperature to the power -e" [-]; 0.5 when not given (common practice).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub charge_exponent: Option<f64>,
}

/// How fuel is metered.
#[derive(Default)]
pub struct Fuel {
    /// Who gets how much of it.
    #[serde(default)]
    pub setting: FuelSetting,
    /// Air over the air that the fuel needs, over the whole engine [-]; 1 when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lambda: Option<f64>,
    /// Mass of air that a mass of fuel needs [-]; 14.7 when not given (petrol, common practice).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stoichiometric_ratio: Option<f64>,
}

/// One cylinder.
pub struct Cylinder {
    /// Its number or name.
    pub id: String,
    /// Swept volume [m3].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub swept_volume: Option<f64>,
    /// Bank it stands in, for drawing and for fuel control by bank.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bank: Option<String>,
}

/// Turns of the crankshaft in which every cylinder fills once.
#[derive(Copy, Eq, Default)]
pub enum Cycle {
    /// Two.
    #[default]
    FourStroke,
    /// One.
    TwoStroke,
}

/// Who gets how much fuel.
#[derive(Copy, Eq, Default)]
pub enum FuelSetting {
    /// The same mass at every port.
    #[default]
    EqualPerPort,
    /// The same at every port of a bank, of which the mean mixture is held.
    ClosedLoopPerBank,
    /// Fuel enters before the manifold and goes with the air.
    Upstream,
}

/// What the volumetric efficiency refers to.
#[serde(tag = "at", rename_all_fields = "camelCase")]
#[derive(Default)]
pub enum Reference {
    /// The density of the ambient air.
    #[default]
    Ambient,
    /// The time-mean stagnation density at a named node.
    Node {
        /// Id of that node.
        node: String,
    },
    /// The mean stagnation density at the ports while their cylinders draw.
    Ports,
}
}

impl Engine {
    /// Position of a cylinder by its id.
    pub fn position(&self, id: &str) -> Option<usize> {
        let mut cylinders = self.cylinders.iter();
        cylinders.position(|cylinder| cylinder.id == id)
    }
}
