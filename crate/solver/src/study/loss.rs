//! What costs pressure in a branch.

use serde::Serialize;

use super::is_default;
use super::loss_law::{
    BendLaw, ConeLaw, ReentrantEntryLaw, RoundedEntryLaw, ScheduleLaw, ScreenLaw, SharpEntryLaw,
    StepLaw,
};

document! {
/// One thing in a branch that costs stagnation pressure.
#[serde(tag = "kind", rename_all_fields = "camelCase")]
pub enum Loss {
    /// Sharp-edged entry flush with a wall.
    EntrySharp {
        /// Area of the section entered [m2].
        area: f64,
        /// Whose coefficient is used; the first that the catalogue lists when not given.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: SharpEntryLaw,
    },
    /// Rounded entry flush with a wall.
    EntryRounded {
        /// Area of the section entered [m2].
        area: f64,
        /// Radius of the edge [m].
        radius: f64,
        /// Whose coefficient is used; the first that the catalogue lists when not given.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: RoundedEntryLaw,
    },
    /// Free-standing bellmouth.
    EntryFlared {
        /// Area of the section entered [m2].
        area: f64,
        /// Radius of the bell [m].
        radius: f64,
    },
    /// Pipe end that stands into the chamber.
    EntryReentrant {
        /// Area of the section entered [m2].
        area: f64,
        /// Wall thickness of the pipe [m].
        thickness: f64,
        /// Whose coefficient is used; the first that the catalogue lists when not given.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: ReentrantEntryLaw,
    },
    /// Straight duct with wall friction.
    Duct {
        /// Area of its section [m2].
        area: f64,
        /// Wetted perimeter [m]; a circle when not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        perimeter: Option<f64>,
        /// Length along the axis [m].
        length: f64,
        /// Height of the wall's roughness [m].
        roughness: f64,
    },
    /// Corrugated hose.
    Hose {
        /// Free area inside the corrugations [m2].
        area: f64,
        /// Length along the axis [m].
        length: f64,
        /// Distance from one corrugation to the next [m].
        pitch: f64,
    },
    /// Bend of constant section.
    Bend {
        /// Area of its section [m2].
        area: f64,
        /// Wetted perimeter [m]; a circle when not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        perimeter: Option<f64>,
        /// Angle turned through [rad].
        angle: f64,
        /// Radius of the axis [m].
        radius: f64,
        /// Height of the wall's roughness [m].
        roughness: f64,
        /// Whose coefficient is used; the first that the catalogue lists when not given.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: BendLaw,
    },
    /// Two equal bends close to each other.
    BendPair {
        /// Area of their section [m2].
        area: f64,
        /// Wetted perimeter [m]; a circle when not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        perimeter: Option<f64>,
        /// Angle that each turns through [rad].
        angle: f64,
        /// Radius of either axis [m].
        radius: f64,
        /// Straight length between them [m].
        spacing: f64,
        /// Angle between their planes, 0 when they go on turning [rad].
        twist: f64,
        /// Height of the wall's roughness [m].
        roughness: f64,
    },
    /// Sudden change of section.
    SuddenChange {
        /// Area towards the branch's `from` end [m2].
        area_from: f64,
        /// Area towards the branch's `to` end [m2].
        area_to: f64,
        /// Whose coefficient is used; the first that the catalogue lists when not given.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: StepLaw,
    },
    /// Conical change of section.
    GradualChange {
        /// Area towards the branch's `from` end [m2].
        area_from: f64,
        /// Area towards the branch's `to` end [m2].
        area_to: f64,
        /// Length along the axis [m].
        length: f64,
        /// Whose coefficient is used; the first that the catalogue lists when not given.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: ConeLaw,
    },
    /// Thin-edged opening in a wall.
    Opening {
        /// Area of the opening [m2].
        area: f64,
        /// Area of the jet at its narrowest over the area of the opening [-].
        discharge_coefficient: f64,
        /// Section towards the branch's `from` end [m2]; a chamber when not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        area_from: Option<f64>,
        /// Section towards the branch's `to` end [m2]; a chamber when not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        area_to: Option<f64>,
        /// Thickness of the wall [m]; a thin edge when not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        thickness: Option<f64>,
    },
    /// Screen of round wires across a section.
    ScreenRound {
        /// Section in front of the screen [m2].
        area: f64,
        /// Open part of it [-].
        open_part: f64,
        /// Width of the gap between two wires [m].
        gap: f64,
        /// Whose coefficient is used; the first that the catalogue lists when not given.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: ScreenLaw,
    },
    /// Screen of square bars, or a perforated plate, across a section.
    ScreenSquare {
        /// Section in front of the screen [m2].
        area: f64,
        /// Open part of it [-].
        open_part: f64,
        /// Whose coefficient is used; the first that the catalogue lists when not given.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: ScreenLaw,
    },
    /// Throttle plate in a round bore.
    Throttle {
        /// Diameter of the bore [m].
        diameter: f64,
        /// Angle of the plate from the plane across the bore [rad].
        angle: f64,
        /// That angle when the plate touches the bore [rad].
        closed_angle: f64,
        /// Diameter of the shaft [m].
        shaft_diameter: f64,
        /// Effective area over open area [-].
        discharge_coefficient: f64,
    },
    /// A passage of a charge-cooler core, from two measured points of the whole core.
    Core {
        /// Open area of this passage [m2].
        area: f64,
        /// Part of the core's face that this passage is [-].
        fraction: f64,
        /// Absolute pressure at which the points were measured [Pa].
        pressure: f64,
        /// Temperature at which the points were measured [K].
        temperature: f64,
        /// Mass flow of the first point, whole core [kg/s].
        flow_1: f64,
        /// Pressure drop of the first point [Pa].
        drop_1: f64,
        /// Mass flow of the second point, whole core [kg/s].
        flow_2: f64,
        /// Pressure drop of the second point [Pa].
        drop_2: f64,
        /// Id of the charge cooler that the passage is part of; no heat is exchanged when not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cooler: Option<String>,
    },
    /// Sections along a way, as CAD gives them: friction, changes of section and bends follow.
    Schedule {
        /// Height of the wall's roughness [m].
        roughness: f64,
        /// Sections in the order from the branch's `from` end.
        stations: Vec<Station>,
        /// Bends along the way.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        bends: Vec<StationBend>,
        /// Whose coefficients its changes of section and its bends follow.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        law: ScheduleLaw,
    },
    /// A loss coefficient typed in.
    TypedK {
        /// Loss coefficient on the velocity head in `area` [-].
        k: f64,
        /// The same for flow from `to` to `from` [-]; as `k` when not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        k_reversed: Option<f64>,
        /// Reference section [m2].
        area: f64,
        /// Where the value comes from.
        #[serde(default)]
        origin: String,
    },
}
}

document! {
/// A section of a schedule.
pub struct Station {
    /// Where it lies along the axis [m].
    pub at: f64,
    /// Its area [m2].
    pub area: f64,
    /// Wetted perimeter [m]; a circle when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub perimeter: Option<f64>,
}

/// A bend of a schedule.
pub struct StationBend {
    /// Where its middle lies along the axis [m].
    pub at: f64,
    /// Angle turned through [rad].
    pub angle: f64,
    /// Radius of the axis [m].
    pub radius: f64,
}
}

impl Loss {
    /// Whether it is what the entry of a pipe costs.
    pub(crate) fn is_entry(&self) -> bool {
        matches!(
            self,
            Self::EntrySharp { .. }
                | Self::EntryRounded { .. }
                | Self::EntryFlared { .. }
                | Self::EntryReentrant { .. }
        )
    }

    /// The kind's name in the JSON file.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::EntrySharp { .. } => "entrySharp",
            Self::EntryRounded { .. } => "entryRounded",
            Self::EntryFlared { .. } => "entryFlared",
            Self::EntryReentrant { .. } => "entryReentrant",
            Self::Duct { .. } => "duct",
            Self::Hose { .. } => "hose",
            Self::Bend { .. } => "bend",
            Self::BendPair { .. } => "bendPair",
            Self::SuddenChange { .. } => "suddenChange",
            Self::GradualChange { .. } => "gradualChange",
            Self::Opening { .. } => "opening",
            Self::ScreenRound { .. } => "screenRound",
            Self::ScreenSquare { .. } => "screenSquare",
            Self::Throttle { .. } => "throttle",
            Self::Core { .. } => "core",
            Self::Schedule { .. } => "schedule",
            Self::TypedK { .. } => "typedK",
        }
    }
}
