//! What costs pressure in a branch.

use serde::Serialize;

document! {
/// One thing in a branch that costs stagnation pressure.
#[serde(tag = "kind", rename_all_fields = "camelCase")]
pub enum Loss {
    /// Sharp-edged entry flush with a wall.
    EntrySharp {
        /// Area of the section entered [m2].
        area: f64,
    },
    /// Rounded entry flush with a wall.
    EntryRounded {
        /// Area of the section entered [m2].
        area: f64,
        /// Radius of the edge [m].
        radius: f64,
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
    },
    /// Sudden change of section.
    SuddenChange {
        /// Area towards the branch's `from` end [m2].
        area_from: f64,
        /// Area towards the branch's `to` end [m2].
        area_to: f64,
    },
    /// Conical change of section.
    GradualChange {
        /// Area towards the branch's `from` end [m2].
        area_from: f64,
        /// Area towards the branch's `to` end [m2].
        area_to: f64,
        /// Length along the axis [m].
        length: f64,
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
    /// The kind's name in the JSON file.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::EntrySharp { .. } => "entrySharp",
            Self::EntryRounded { .. } => "entryRounded",
            Self::EntryFlared { .. } => "entryFlared",
            Self::EntryReentrant { .. } => "entryReentrant",
            Self::Duct { .. } => "duct",
            Self::Bend { .. } => "bend",
            Self::SuddenChange { .. } => "suddenChange",
            Self::GradualChange { .. } => "gradualChange",
            Self::Opening { .. } => "opening",
            Self::Throttle { .. } => "throttle",
            Self::Core { .. } => "core",
            Self::Schedule { .. } => "schedule",
            Self::TypedK { .. } => "typedK",
        }
    }
}
