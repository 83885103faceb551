//! The document: one study, as it stands in a JSON file.
//!
//! Plain data in SI units: pressures absolute in pascal, temperatures in kelvin, angles in radian.
//! Nothing here computes; `gate` turns outside bytes into these types or into the list of what is wrong.

use std::collections::BTreeMap;

use serde::Serialize;

pub use settings::{Bench, Check, Running, Settings};

/// The value of a study's `format` field.
pub const FORMAT: &str = "evenport-study";
/// The newest version of the format that this program reads and the one it writes.
pub const VERSION: u32 = 1;

/// Derives what every document type needs; the schema and the TypeScript types only when generating.
macro_rules! document {
    ($($item:item)*) => {$(
        #[derive(Clone, Debug, PartialEq, Serialize)]
        #[cfg_attr(feature = "generate", derive(ts_rs::TS, schemars::JsonSchema))]
        #[cfg_attr(feature = "generate", ts(optional_fields))]
        #[serde(rename_all = "camelCase")]
        $item
    )*};
}

mod settings;

document! {
/// One manifold with its engine and settings.
pub struct Study {
    /// Always `evenport-study`.
    pub format: String,
    /// Format version, 1.
    pub version: u32,
    /// What the designer calls it.
    pub name: String,
    /// Free text.
    #[serde(default)]
    pub notes: String,
    /// The engine that draws.
    #[serde(default)]
    pub engine: Engine,
    /// Bench and running conditions, limits, display units.
    #[serde(default)]
    pub settings: Settings,
    /// The base manifold.
    pub network: Network,
    /// Other versions of the manifold, as differences from the base. Kept, not yet solved.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub variants: Vec<Variant>,
}

/// A named set of differences from the base network.
pub struct Variant {
    /// What the designer calls it.
    pub name: String,
    /// Free text.
    #[serde(default)]
    pub notes: String,
    /// Nodes that replace the base's node of the same id, or join it.
    #[serde(default)]
    pub nodes: Vec<Node>,
    /// Branches that replace the base's branch of the same id, or join it.
    #[serde(default)]
    pub branches: Vec<Branch>,
    /// Ids of nodes and branches that this variant leaves out.
    #[serde(default)]
    pub removed: Vec<String>,
}

/// The manifold as a graph.
pub struct Network {
    /// Points where pressure is known or sought.
    pub nodes: Vec<Node>,
    /// Ways the air can go between them.
    pub branches: Vec<Branch>,
}

/// A point where pressure is known or sought.
pub struct Node {
    /// Unique among nodes and branches.
    pub id: String,
    /// What stands at this point.
    #[serde(flatten)]
    pub kind: NodeKind,
}

/// A way the air can go.
pub struct Branch {
    /// Unique among nodes and branches.
    pub id: String,
    /// Id of the node at its first end; flow out of it counts as positive.
    pub from: String,
    /// Id of the node at its other end.
    pub to: String,
    /// Which leg of the header, tee or wye at `from` this end is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_leg: Option<Leg>,
    /// Which leg of the header, tee or wye at `to` this end is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to_leg: Option<Leg>,
    /// Fraction of the velocity head of what enters the plenum at `from` that this branch feels [-].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub jet_fraction: Option<f64>,
    /// What costs stagnation pressure, in order from `from` to `to`.
    pub losses: Vec<Loss>,
}

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
    /// Crank angle over which a cylinder draws [rad]; 240 degrees when not given (common practice).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub event_angle: Option<f64>,
    /// Cylinder ids in firing order, evenly spaced over the 720 degree cycle; empty when not known.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub firing_order: Vec<String>,
    /// Exponent e in "air drawn varies as charge temperature to the power -e" [-]; 0.5 when not given (common practice).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub charge_exponent: Option<f64>,
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
}

document! {
/// What stands at a node.
#[serde(tag = "kind", rename_all_fields = "camelCase")]
pub enum NodeKind {
    /// Where air enters.
    Source {
        /// Absolute stagnation pressure while running [Pa].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pressure: Option<f64>,
        /// Stagnation temperature while running [K].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        temperature: Option<f64>,
    },
    /// A chamber in which the velocity head of what enters is lost.
    Plenum {
        /// Volume of the chamber itself, for the check against CAD only [m3].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        volume: Option<f64>,
        /// Volume of the chamber as CAD gives it, for the check [m3].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cad_volume: Option<f64>,
    },
    /// A flowing chamber: a run section that keeps part of the velocity head, with side legs.
    Header {
        /// Area of the run section [m2].
        area: f64,
        /// Static-pressure regain factor where side legs leave [-].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        regain_dividing: Option<f64>,
        /// Static-pressure regain factor where side legs join [-].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        regain_combining: Option<f64>,
        /// Volume at this node beside the ducts of its chamber, for the check against CAD only [m3].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        volume: Option<f64>,
        /// Its part of the chamber's volume as CAD gives it, or all of it, for the check [m3].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cad_volume: Option<f64>,
    },
    /// A junction of a straight run and a side leg at a right angle.
    Tee {
        /// Area of the run [m2].
        area: f64,
        /// Area of the side leg [m2].
        side_area: f64,
        /// Whose loss coefficients are used.
        #[serde(default)]
        law: JunctionLaw,
    },
    /// A junction of a straight run and a slanted side leg.
    Wye {
        /// Area of the run [m2].
        area: f64,
        /// Area of the side leg [m2].
        side_area: f64,
        /// Angle between the side leg and the run, 90 degrees being a tee [rad].
        angle: f64,
        /// Whose loss coefficients are used.
        #[serde(default)]
        law: JunctionLaw,
    },
    /// Two legs end to end, nothing lost.
    Joint {},
    /// Where air leaves the manifold.
    Port {
        /// Id of the cylinder it feeds.
        cylinder: String,
        /// The valve behind it, used at fixed lift on the bench only.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        valve: Option<Valve>,
        /// Smallest section on the way to it as CAD gives it, for the check [m2].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cad_section: Option<f64>,
    },
}

/// What the volumetric efficiency refers to.
#[serde(tag = "at", rename_all_fields = "camelCase")]
#[derive(Default)]
pub enum Reference {
    /// The density of the bench's room air.
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

document! {
/// An intake valve held at one lift. The curtain area is pi times diameter times lift.
pub struct Valve {
    /// Inner seat diameter [m].
    pub diameter: f64,
    /// Lift [m].
    pub lift: f64,
    /// Discharge coefficient on the curtain area [-].
    pub discharge_coefficient: f64,
    /// How many such valves the port feeds [-].
    #[serde(default = "crate::defaults::one")]
    pub count: f64,
}

/// Which leg of a header, tee or wye a branch's end is.
#[derive(Copy, Eq)]
pub enum Leg {
    /// One of the two ends of the straight run.
    Run,
    /// A leg at the side.
    Side,
}

/// Whose junction loss coefficients are used.
#[derive(Copy, Eq, Default)]
pub enum JunctionLaw {
    /// Bassett, Winterbone and Pearson 2001.
    #[default]
    Bassett2001,
    /// Idelchik, Handbook of Hydraulic Resistance, section VII.
    Idelchik,
    /// Rennels and Hudson 2012, sharp edges; right angle only.
    Rennels2012,
    /// Gardel 1957, sharp edges.
    Gardel1957,
    /// Crane TP-410 (2009 on).
    CraneTp410,
}

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

impl Network {
    /// Position of every node by its id.
    pub fn positions(&self) -> BTreeMap<&str, usize> {
        let mut positions = BTreeMap::new();
        for (position, node) in self.nodes.iter().enumerate() {
            positions.insert(node.id.as_str(), position);
        }
        positions
    }
}

impl NodeKind {
    /// A plenum of which no volume is known.
    pub const PLENUM: Self = Self::Plenum {
        volume: None,
        cad_volume: None,
    };
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
            Self::TypedK { .. } => "typedK",
        }
    }
}
