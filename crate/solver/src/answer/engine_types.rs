//! What the answer says of the engine around the manifold.

use serde::Serialize;

use crate::study::FuelSetting;

answer! {
/// Where the engine runs, and what has been found for it.
pub struct OperatingAnswer {
    /// Crankshaft speed [rev/s].
    pub speed: f64,
    /// Air over swept volume at the reference density [-].
    pub volumetric_efficiency: f64,
    /// Pressure of the air around the engine [Pa].
    pub ambient_pressure: f64,
    /// Its temperature [K].
    pub ambient_temperature: f64,
    /// Temperature of the charge at the ports, mean over the cylinders by their air [K].
    pub charge_temperature: f64,
    /// Highest pressure of a source or behind a blower less the mean at the ports, stagnation [Pa].
    pub loss: f64,
    /// Largest inlet Mach index of a cylinder's valves; absent without bore, stroke and valves [-].
    pub inlet_mach_index: Option<f64>,
    /// Where boost is read.
    pub boost: Option<BoostAnswer>,
    /// Sources in the study's order.
    pub sources: Vec<SourceAnswer>,
    /// Blowers in the order of their branches.
    pub blowers: Vec<BlowerAnswer>,
    /// Charge coolers in the study's order.
    pub coolers: Vec<CoolerAnswer>,
}

/// A boost as found.
pub struct BoostAnswer {
    /// Node id.
    pub node: String,
    /// Static pressure above ambient, mean over the cycle [Pa].
    pub pressure: f64,
}

/// A source as found.
pub struct SourceAnswer {
    /// Node id.
    pub node: String,
    /// Stagnation pressure [Pa].
    pub pressure: f64,
    /// Stagnation temperature [K].
    pub temperature: f64,
    /// Air that enters by it, mean over the cycle, negative when it leaves [kg/s].
    pub flow: f64,
}

/// A blower as found.
pub struct BlowerAnswer {
    /// Branch id.
    pub branch: String,
    /// Its speed [rev/s].
    pub speed: f64,
    /// Its turns a turn of the crankshaft [-].
    pub drive_ratio: f64,
    /// Rim speed of its pulley, when its diameter is given [m/s].
    pub rim_speed: Option<f64>,
    /// Air that it moves [kg/s].
    pub flow: f64,
    /// Stagnation pressure behind over that before [-].
    pub pressure_ratio: f64,
    /// Stagnation pressure before it [Pa].
    pub inlet_pressure: f64,
    /// Stagnation temperature before it [K].
    pub inlet_temperature: f64,
    /// Stagnation pressure behind it [Pa].
    pub outlet_pressure: f64,
    /// Stagnation temperature behind it [K].
    pub outlet_temperature: f64,
    /// Air moved over displacement at inlet density [-].
    pub volumetric_efficiency: f64,
    /// Isentropic temperature rise over the real one [-].
    pub isentropic_efficiency: f64,
    /// Power that it gives to the air [W].
    pub power: f64,
}

/// A charge cooler as found, mean over the cycle.
pub struct CoolerAnswer {
    /// Its id.
    pub cooler: String,
    /// Heat that it takes from the air [W].
    pub heat: f64,
    /// Air through it [kg/s].
    pub flow: f64,
    /// Temperature of the air that enters, by its flow [K].
    pub inlet_temperature: f64,
    /// Temperature of the air that leaves, by its flow [K].
    pub outlet_temperature: f64,
    /// Temperature of the coolant that leaves it [K].
    pub coolant_temperature: f64,
    /// Part of the difference between entering air and entering coolant that the air loses [-].
    pub effectiveness: f64,
    /// Its passages in the order of their branches.
    pub passages: Vec<PassageAnswer>,
}

/// A passage of a charge cooler.
pub struct PassageAnswer {
    /// Branch id.
    pub branch: String,
    /// Air through it [kg/s].
    pub flow: f64,
    /// Temperature of the air that enters, by its flow [K].
    pub inlet_temperature: f64,
    /// Temperature of the air that leaves, by its flow [K].
    pub outlet_temperature: f64,
    /// Heat that it takes from the air [W].
    pub heat: f64,
}

/// What the shares do to the mixture.
pub struct MixtureAnswer {
    /// Who gets how much fuel.
    pub setting: FuelSetting,
    /// Air over the air that the fuel needs, over the whole engine [-].
    pub lambda: f64,
    /// Mass of air that a mass of fuel needs [-].
    pub stoichiometric_ratio: f64,
    /// Cylinders in the engine's order.
    pub cylinders: Vec<CylinderMixture>,
    /// The cylinder most at risk and why, in words.
    pub sentence: String,
    /// The cylinders most at risk; empty when none stands out.
    pub at_risk: Vec<String>,
}

/// One cylinder's mixture.
pub struct CylinderMixture {
    /// Cylinder id.
    pub cylinder: String,
    /// Air over the air that its fuel needs [-].
    pub lambda: f64,
    /// Mass of air over mass of fuel [-].
    pub air_fuel_ratio: f64,
    /// Half-width of the band in which its lambda over the engine's is expected 19 times in 20 [-].
    pub doubt: f64,
    /// Change of its fuel that brings it to the engine's mixture [-]; absent where no trim can.
    pub trim: Option<f64>,
    /// Mean stagnation temperature at its ports while it draws [K].
    pub temperature: f64,
    /// That less the mean over the cylinders by their air [K].
    pub warmer: f64,
}
}

answer! {
/// The running draw at one speed of a range.
pub struct SpeedPoint {
    /// Crankshaft speed [rev/s].
    pub speed: f64,
    /// Its figures, or why there are none.
    pub outcome: PointOutcome,
}

/// The running draw in figures.
pub struct PointFigures {
    /// Total air [kg/s].
    pub total: f64,
    /// (largest - smallest) / mean of the cylinders' air [-].
    pub spread: f64,
    /// Share of each cylinder in the engine's order [-].
    pub shares: Vec<f64>,
    /// Mean stagnation temperature at each cylinder's ports while it draws [K].
    pub temperatures: Vec<f64>,
    /// Temperature of the charge, mean over the cylinders by their air [K].
    pub charge_temperature: f64,
    /// Static pressure above ambient where boost is read, mean over the cycle [Pa].
    pub boost: Option<f64>,
    /// Highest pressure of a source or behind a blower less the mean at the ports, stagnation [Pa].
    pub loss: f64,
    /// Greatest pressure ratio of a blower [-].
    pub pressure_ratio: Option<f64>,
}
}

answer! {
/// Figures, or why there are none.
#[serde(tag = "kind")]
pub enum PointOutcome {
    /// The figures.
    Solved(PointFigures),
    /// Why there are none.
    Refused {
        /// In words.
        sentence: String,
    },
}
}
