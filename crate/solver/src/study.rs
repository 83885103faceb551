//! The document: one study, as it stands in a JSON file.
//!
//! Plain data in SI units: pressures absolute in pascal, temperatures in kelvin, angles in radian.
//! Nothing here computes; `gate` turns outside bytes into these types or into the list of what is wrong.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::law::valve::curtain_area;

pub use self::blower::{Blower, EfficiencyTable};
pub use self::cooler::{Cooler, Mixing};
pub use self::engine::{Cycle, Cylinder, Engine, Fuel, FuelSetting, Reference};
pub use self::loss::{Loss, Station, StationBend};
pub use self::loss_law::{
    BendLaw, ConeLaw, ReentrantEntryLaw, RoundedEntryLaw, ScheduleLaw, ScreenLaw, SharpEntryLaw,
    StepLaw,
};
pub use self::settings::{Ambient, Bench, Check, Reading, Running, Settings};

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

mod blower;
mod cooler;
mod engine;
mod loss;
mod loss_law;
mod settings;
mod version;

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
    /// Charge coolers, whose passages are the cores in branches.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub coolers: Vec<Cooler>,
    /// Other versions of the manifold, as differences from the base. An answer is of the base.
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
    /// Ids of its rows in their order, when that is not the base's with the rows that join at the end.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub order: Vec<String>,
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
    /// Distance of this branch's mouth from where air enters the plenum at `from`, along that jet's axis;
    /// the fraction is then estimated [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub jet_distance: Option<f64>,
    /// Distance of this branch's mouth from that axis [m]; 0 when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub jet_offset: Option<f64>,
    /// Angle between that axis and this branch's [rad]; 0, facing the jet, when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub jet_angle: Option<f64>,
    /// What costs stagnation pressure, in order from `from` to `to`; empty with a blower.
    pub losses: Vec<Loss>,
    /// The blower that moves the air from `from` to `to`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub blower: Option<Blower>,
    /// Whether this branch leads round a blower, back to its inlet; left out on the bench.
    #[serde(default, skip_serializing_if = "is_default")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub bypass: bool,
    /// How much warmer the walls make the air that passes [K]; 0 when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_rise: Option<f64>,
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
        /// The boost that its pressure is found for, static and above ambient pressure [Pa].
        #[serde(default, skip_serializing_if = "Option::is_none")]
        boost: Option<f64>,
        /// Id of the node where the boost is read; sources that name the same node share one pressure.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        boost_node: Option<String>,
        /// Whether it is the air around the engine, which air may also leave to.
        #[serde(default, skip_serializing_if = "is_default")]
        #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
        ambient: bool,
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

}

document! {
/// An intake valve held at one lift. The curtain area is pi times diameter times lift.
pub struct Valve {
    /// Inner seat diameter [m].
    pub diameter: f64,
    /// Lift [m].
    pub lift: f64,
    /// Discharge coefficient on the curtain area [-]; by lift over diameter from a table, or from the usual curve, when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub discharge_coefficient: Option<f64>,
    /// The same over lift over diameter, instead of one number: rising pairs of both [-].
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "generate", ts(as = "Option<_>"))]
    pub discharge_table: Vec<[f64; 2]>,
    /// Smallest bore before the seat [m].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub throat_diameter: Option<f64>,
    /// Diameter of the stem in that bore [m]; none when not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stem_diameter: Option<f64>,
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

}

fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

impl Study {
    /// A study of a network, with nothing else in it.
    pub fn new(name: &str, network: Network) -> Self {
        Self {
            format: FORMAT.to_owned(),
            version: VERSION,
            name: name.to_owned(),
            notes: String::new(),
            engine: Engine::default(),
            settings: Settings::default(),
            network,
            coolers: Vec::new(),
            variants: Vec::new(),
        }
    }
}

impl Branch {
    /// A branch of plain losses.
    pub fn new(id: &str, from: &str, to: &str, losses: Vec<Loss>) -> Self {
        Self {
            id: id.to_owned(),
            from: from.to_owned(),
            to: to.to_owned(),
            from_leg: None,
            to_leg: None,
            jet_fraction: None,
            jet_distance: None,
            jet_offset: None,
            jet_angle: None,
            losses,
            blower: None,
            bypass: false,
            temperature_rise: None,
        }
    }
}

impl NodeKind {
    /// A plenum of which no volume is known.
    pub const PLENUM: Self = Self::Plenum {
        volume: None,
        cad_volume: None,
    };

    /// A source at a stagnation pressure [Pa] and temperature [K] while running.
    pub fn source(pressure: f64, temperature: f64) -> Self {
        Self::Source {
            pressure: Some(pressure),
            temperature: Some(temperature),
            boost: None,
            boost_node: None,
            ambient: false,
        }
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

impl Valve {
    /// What the air passes at one of these valves.
    pub fn passage(&self) -> curtain_area::Passage {
        let throat = self.throat_diameter;
        curtain_area::Passage {
            diameter: self.diameter,
            lift: self.lift,
            throat: throat
                .map(|throat| curtain_area::throat_area(throat, self.stem_diameter.unwrap_or(0.0))),
        }
    }

    /// Discharge coefficient at its lift [-].
    pub fn coefficient(&self) -> f64 {
        let curve: &[[f64; 2]] = if self.discharge_table.is_empty() {
            &curtain_area::DEFAULT_CURVE
        } else {
            &self.discharge_table
        };
        let on_curve = || curtain_area::on_curve(curve, self.lift / self.diameter);
        self.discharge_coefficient.unwrap_or_else(on_curve)
    }

    /// Effective area of all of them [m2].
    pub fn effective_area(&self) -> f64 {
        self.count * self.passage().effective_area(self.coefficient())
    }
}
