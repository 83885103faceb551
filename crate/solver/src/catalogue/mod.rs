//! What a study can hold, said once: the gate checks against it, the page builds its menus, labels,
//! units and ranges from it.

mod equipment;
mod follows;
mod loss_fields;
mod loss_laws;
mod losses;
mod nodes;
mod settings;
#[cfg(test)]
mod tests;

pub use follows::{FOLLOWS, Follows};
use serde::Serialize;

/// Derives what every catalogue type needs; the TypeScript types only when generating.
macro_rules! catalogue {
    ($($item:item)*) => {$(
        #[derive(Clone, Copy, Debug, PartialEq, Serialize)]
        #[cfg_attr(feature = "generate", derive(ts_rs::TS))]
        #[serde(rename_all = "camelCase")]
        $item
    )*};
}

catalogue! {
/// Everything a study can hold.
pub struct Catalogue {
    /// Node kinds.
    pub nodes: &'static [KindInfo],
    /// Loss kinds.
    pub losses: &'static [KindInfo],
    /// Authors of junction laws, for `law` of tees and wyes.
    pub junction_laws: &'static [ChoiceInfo],
    /// Numeric fields of a branch beside its ends and losses.
    pub branch: &'static [FieldInfo],
    /// Numeric fields of a schedule's station.
    pub station: &'static [FieldInfo],
    /// Numeric fields of a schedule's bend.
    pub station_bend: &'static [FieldInfo],
    /// Numeric fields of the engine.
    pub engine: &'static [FieldInfo],
    /// Numeric fields of a cylinder.
    pub cylinder: &'static [FieldInfo],
    /// Numeric fields of a port's valve.
    pub valve: &'static [FieldInfo],
    /// A valve's discharge coefficient over lift.
    pub valve_curve: CurveInfo,
    /// Numeric fields of the bench settings.
    pub bench: &'static [FieldInfo],
    /// What a bench reading is, and how it is carried over to another depression.
    pub reading: KindInfo,
    /// Numeric fields of the running settings.
    pub running: &'static [FieldInfo],
    /// Numeric fields of the air around the running engine.
    pub ambient: &'static [FieldInfo],
    /// Numeric fields of the fuel.
    pub fuel: &'static [FieldInfo],
    /// Who gets how much fuel, for `setting` of the fuel.
    pub fuel_settings: &'static [ChoiceInfo],
    /// Turns in which every cylinder fills once, for `cycle` of the engine.
    pub cycles: &'static [ChoiceInfo],
    /// What a blower is.
    pub blower: KindInfo,
    /// What a charge cooler is.
    pub cooler: KindInfo,
    /// Which side of a core is mixed, for `mixing` of a cooler.
    pub mixings: &'static [ChoiceInfo],
    /// Numeric fields of the check against CAD.
    pub check: &'static [FieldInfo],
}

/// One kind of node or loss.
pub struct KindInfo {
    /// Its name in the JSON file, `entryRounded`.
    pub kind: &'static str,
    /// Its name on the page.
    pub label: &'static str,
    /// One line on what it is and when to use it.
    pub help: &'static str,
    /// The equation, in words or plain symbols; empty when nothing is computed.
    pub equation: &'static str,
    /// Where the law comes from; empty when nothing is computed.
    pub source: &'static str,
    /// Range of validity, in words; empty when unlimited.
    pub range: &'static str,
    /// One standard deviation of the loss over the loss [-]; 0 when nothing is computed.
    pub scatter: f64,
    /// Where the scatter comes from.
    pub scatter_origin: &'static str,
    /// Its numeric fields.
    pub fields: &'static [FieldInfo],
    /// Whose formula it can follow, for `law`, the default first; empty where there is one only.
    pub laws: &'static [ChoiceInfo],
}

/// One numeric field.
pub struct FieldInfo {
    /// Its name in the JSON file.
    pub name: &'static str,
    /// Its name on the page.
    pub label: &'static str,
    /// What it measures; the page picks the display unit by it.
    pub quantity: Quantity,
    /// Smallest value accepted, SI.
    pub minimum: f64,
    /// Largest value accepted, SI.
    pub maximum: f64,
    /// Whether it must be given.
    pub required: bool,
    /// What is used when it is not given, SI, and what a new row starts with.
    pub default: Option<f64>,
    /// One line on what to type.
    pub help: &'static str,
}

/// A table of two columns that takes the place of a usual curve.
pub struct CurveInfo {
    /// Its columns.
    pub fields: &'static [FieldInfo],
    /// The points that are used when none are given.
    pub usual: &'static [[f64; 2]],
    /// Where those come from.
    pub origin: &'static str,
}

/// One choice of a closed list.
pub struct ChoiceInfo {
    /// Its name in the JSON file.
    pub name: &'static str,
    /// Its name on the page.
    pub label: &'static str,
    /// Where it comes from and where it holds.
    pub help: &'static str,
}

/// What a number measures.
#[derive(Eq)]
pub enum Quantity {
    /// [m].
    Length,
    /// [m2].
    Area,
    /// [m3].
    Volume,
    /// [rad].
    Angle,
    /// Absolute pressure [Pa].
    Pressure,
    /// Pressure difference [Pa].
    PressureDifference,
    /// Pressure above that of the air around the engine [Pa].
    Boost,
    /// [K].
    Temperature,
    /// Temperature difference [K].
    TemperatureDifference,
    /// Height above sea level [m].
    Altitude,
    /// [m/s].
    Velocity,
    /// [J/(kg K)].
    SpecificHeat,
    /// [kg/s].
    MassFlow,
    /// Rotational speed [rev/s].
    Speed,
    /// A plain number [-].
    Number,
    /// A part of one, shown as per cent [-].
    Fraction,
}
}

/// Everything a study can hold.
pub fn catalogue() -> &'static Catalogue {
    &CATALOGUE
}

static CATALOGUE: Catalogue = Catalogue {
    nodes: &nodes::NODES,
    losses: &losses::LOSSES,
    junction_laws: &nodes::JUNCTION_LAWS,
    branch: &[
        optional(
            FieldInfo::new(
                "jetFraction",
                "jet fraction",
                Quantity::Fraction,
                [-1.0, 1.0],
            ),
            "part of the velocity head entering the plenum that this branch feels; 0 when left out",
        ),
        optional(
            FieldInfo::new("jetDistance", "from the jet", Quantity::Length, LENGTH),
            "instead of a jet fraction: how far this branch's mouth is from where air enters the plenum, along that jet",
        ),
        optional(
            FieldInfo::new("jetOffset", "off the jet's axis", Quantity::Length, LENGTH),
            "how far this branch's mouth lies beside the jet's axis; on it when left out",
        ),
        optional(
            FieldInfo::new(
                "jetAngle",
                "angle to the jet",
                Quantity::Angle,
                [0.0, std::f64::consts::PI],
            ),
            "between the jet's axis and this branch's; 0, facing the jet, when left out; from 90 degrees on the jet passes by",
        ),
        optional(
            FieldInfo::new(
                "temperatureRise",
                "wall heating",
                Quantity::TemperatureDifference,
                [-200.0, 200.0],
            ),
            "how much warmer hot walls make the air that passes while running; 0 when left out",
        ),
    ],
    station: &losses::STATION,
    station_bend: &losses::STATION_BEND,
    engine: &settings::ENGINE,
    cylinder: &settings::CYLINDER,
    valve: &settings::VALVE,
    valve_curve: settings::VALVE_CURVE,
    bench: &settings::BENCH,
    reading: settings::READING,
    running: &settings::RUNNING,
    ambient: &settings::AMBIENT,
    fuel: &settings::FUEL,
    fuel_settings: &settings::FUEL_SETTINGS,
    cycles: &settings::CYCLES,
    blower: equipment::BLOWER,
    cooler: equipment::COOLER,
    mixings: &equipment::MIXINGS,
    check: &settings::CHECK,
};

impl FieldInfo {
    const fn new(
        name: &'static str,
        label: &'static str,
        quantity: Quantity,
        bounds: [f64; 2],
    ) -> Self {
        Self {
            name,
            label,
            quantity,
            minimum: bounds[0],
            maximum: bounds[1],
            required: true,
            default: None,
            help: "",
        }
    }
}

/// A field that must be given; a new row starts with `default`.
const fn required(field: FieldInfo, default: f64, help: &'static str) -> FieldInfo {
    FieldInfo {
        default: Some(default),
        help,
        ..field
    }
}

/// A field that may be left out.
const fn optional(field: FieldInfo, help: &'static str) -> FieldInfo {
    FieldInfo {
        required: false,
        help,
        ..field
    }
}

/// A field that may be left out, and what is then used.
const fn defaulted(field: FieldInfo, default: f64, help: &'static str) -> FieldInfo {
    FieldInfo {
        required: false,
        default: Some(default),
        help,
        ..field
    }
}

/// The field of openings and throttles alike.
const fn discharge_coefficient(default: f64, help: &'static str) -> FieldInfo {
    required(
        FieldInfo::new(
            "dischargeCoefficient",
            "discharge coefficient",
            Quantity::Number,
            [0.05, 1.0],
        ),
        default,
        help,
    )
}

/// Section of a round 40 mm bore [m2].
const BORE_40: f64 = 1.2566e-3;
const AREA: [f64; 2] = [1e-9, 10.0];
const VOLUME: [f64; 2] = [1e-9, 100.0];
const LENGTH: [f64; 2] = [0.0, 100.0];
const POSITIVE_LENGTH: [f64; 2] = [1e-6, 100.0];
