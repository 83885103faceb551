//! Engine and settings.

use std::f64::consts::PI;

use super::{
    ChoiceInfo, CurveInfo, FieldInfo, KindInfo, POSITIVE_LENGTH, Quantity, VOLUME, defaulted,
    optional, required,
};
use crate::defaults::{
    bench_limit, cad_tolerance, running_limit, standard_depression, standard_pressure,
    standard_temperature,
};
use crate::law::valve::curtain_area;

/// Numeric fields of the engine.
pub static ENGINE: [FieldInfo; 8] = [
    optional(
        FieldInfo::new("speed", "speed", Quantity::Speed, [1e-3, 1_000.0]),
        "crankshaft speed",
    ),
    optional(
        FieldInfo::new(
            "volumetricEfficiency",
            "volumetric efficiency",
            Quantity::Fraction,
            [0.01, 5.0],
        ),
        "air drawn over swept volume at the reference density",
    ),
    optional(
        FieldInfo::new("bore", "bore", Quantity::Length, POSITIVE_LENGTH),
        "with the stroke, the swept volume of every cylinder that states none",
    ),
    optional(
        FieldInfo::new("stroke", "stroke", Quantity::Length, POSITIVE_LENGTH),
        "with the bore, the swept volume of every cylinder that states none",
    ),
    optional(
        FieldInfo::new("speedFrom", "range from", Quantity::Speed, [1e-3, 1_000.0]),
        "lowest crankshaft speed of the speed range; three tenths of the speed when left out",
    ),
    optional(
        FieldInfo::new("speedTo", "range to", Quantity::Speed, [1e-3, 1_000.0]),
        "highest crankshaft speed of the speed range; a tenth above the speed when left out",
    ),
    defaulted(
        FieldInfo::new(
            "eventAngle",
            "intake event",
            Quantity::Angle,
            [0.1, 4.0 * PI],
        ),
        240.0_f64.to_radians(),
        "crank angle over which a cylinder draws; 240 degrees when left out, 120 with two strokes (common practice)",
    ),
    defaulted(
        FieldInfo::new(
            "chargeExponent",
            "charge exponent",
            Quantity::Number,
            [0.0, 1.0],
        ),
        0.5,
        "air drawn varies as charge temperature to the power of minus this; 0.5 to 1 (common practice)",
    ),
];

/// Turns of the crankshaft in which every cylinder fills once.
pub static CYCLES: [ChoiceInfo; 2] = [
    ChoiceInfo {
        name: "fourStroke",
        label: "four-stroke",
        help: "a cylinder fills once in two turns",
    },
    ChoiceInfo {
        name: "twoStroke",
        label: "two-stroke",
        help: "a cylinder fills once a turn",
    },
];

/// Numeric fields of the fuel.
pub static FUEL: [FieldInfo; 2] = [
    defaulted(
        FieldInfo::new("lambda", "lambda", Quantity::Number, [0.3, 5.0]),
        1.0,
        "air over the air that the fuel needs, over the whole engine; 1 when left out",
    ),
    defaulted(
        FieldInfo::new(
            "stoichiometricRatio",
            "stoichiometric ratio",
            Quantity::Number,
            [1.0, 40.0],
        ),
        14.7,
        "mass of air that a mass of fuel needs; 14.7 when left out (petrol, common practice)",
    ),
];

/// Who gets how much fuel.
pub static FUEL_SETTINGS: [ChoiceInfo; 3] = [
    ChoiceInfo {
        name: "equalPerPort",
        label: "equal at every port",
        help: "more air than the mean is a lean cylinder, less a rich one",
    },
    ChoiceInfo {
        name: "closedLoopPerBank",
        label: "closed loop by bank",
        help: "equal at every port of a bank, whose mean mixture is held",
    },
    ChoiceInfo {
        name: "upstream",
        label: "before the manifold",
        help: "fuel goes with the air: no trim by cylinder, its distribution is not estimated",
    },
];

/// Numeric fields of the air around the running engine.
pub static AMBIENT: [FieldInfo; 3] = [
    optional(
        FieldInfo::new(
            "altitude",
            "altitude",
            Quantity::Altitude,
            [-2_000.0, 11_000.0],
        ),
        "standard atmosphere (ISO 2533) at this height above sea level",
    ),
    optional(
        FieldInfo::new(
            "pressure",
            "ambient pressure",
            Quantity::Pressure,
            [1e4, 2e5],
        ),
        "instead of the altitude's; the bench's room pressure when neither is given",
    ),
    optional(
        FieldInfo::new(
            "temperature",
            "ambient temperature",
            Quantity::Temperature,
            [200.0, 400.0],
        ),
        "instead of the altitude's; the bench's room temperature when neither is given",
    ),
];

/// Numeric fields of a cylinder.
pub static CYLINDER: [FieldInfo; 1] = [optional(
    FieldInfo::new("sweptVolume", "swept volume", Quantity::Volume, [1e-7, 1.0]),
    "needed for the running draw",
)];

/// Numeric fields of a port's valve.
pub static VALVE: [FieldInfo; 6] = [
    required(
        FieldInfo::new(
            "diameter",
            "seat diameter",
            Quantity::Length,
            POSITIVE_LENGTH,
        ),
        0.035,
        "inner seat diameter",
    ),
    required(
        FieldInfo::new("lift", "lift", Quantity::Length, POSITIVE_LENGTH),
        0.008,
        "held at this lift on the bench",
    ),
    optional(
        FieldInfo::new(
            "dischargeCoefficient",
            "discharge coefficient",
            Quantity::Number,
            [0.05, 1.0],
        ),
        "on the curtain area, pi times seat diameter times lift; the usual curve over lift when left out (from memory)",
    ),
    optional(
        FieldInfo::new(
            "throatDiameter",
            "throat diameter",
            Quantity::Length,
            POSITIVE_LENGTH,
        ),
        "smallest bore before the seat; limits the flow at large lifts",
    ),
    optional(
        FieldInfo::new(
            "stemDiameter",
            "stem diameter",
            Quantity::Length,
            POSITIVE_LENGTH,
        ),
        "of the stem in that bore",
    ),
    defaulted(
        FieldInfo::new("count", "valves", Quantity::Number, [1.0, 4.0]),
        1.0,
        "valves of this port",
    ),
];

/// A valve's discharge coefficient over lift.
pub const VALVE_CURVE: CurveInfo = CurveInfo {
    fields: &VALVE_POINT,
    usual: &curtain_area::DEFAULT_CURVE,
    origin: "the middle of the ranges read loosely from curves in Heywood 1988, section 6.3.2, and Annand and Roe 1974 (from memory)",
};

static VALVE_POINT: [FieldInfo; 2] = [
    required(
        FieldInfo::new(
            "liftRatio",
            "lift over seat diameter",
            Quantity::Number,
            [0.0, 2.0],
        ),
        0.1,
        "rising from point to point; between points the coefficient goes straight, beyond them it stays",
    ),
    required(
        FieldInfo::new(
            "dischargeCoefficient",
            "discharge coefficient",
            Quantity::Number,
            [0.01, 1.0],
        ),
        0.6,
        "on the curtain area, pi times seat diameter times lift",
    ),
];

/// Numeric fields of the bench settings.
pub static BENCH: [FieldInfo; 4] = [
    defaulted(
        FieldInfo::new(
            "ambientPressure",
            "room pressure",
            Quantity::Pressure,
            [1e4, 2e5],
        ),
        standard_pressure(),
        "of the still room air",
    ),
    defaulted(
        FieldInfo::new(
            "ambientTemperature",
            "room temperature",
            Quantity::Temperature,
            [200.0, 400.0],
        ),
        standard_temperature(),
        "of the still room air",
    ),
    defaulted(
        FieldInfo::new(
            "depression",
            "depression",
            Quantity::PressureDifference,
            [1.0, 9e4],
        ),
        standard_depression(),
        "between room and settling chamber; 28 inches of water (common practice)",
    ),
    defaulted(
        FieldInfo::new("limit", "bench limit", Quantity::Fraction, [1e-6, 1.0]),
        bench_limit(),
        "largest acceptable spread on the bench; 3 % (common practice)",
    ),
];

/// A reading of some bench, carried over to the study's own.
pub const READING: KindInfo = KindInfo {
    kind: "reading",
    label: "bench reading at another depression",
    help: "the same effective area at the study's own bench; what Reynolds number and Mach number do to its coefficient is not included",
    equation: "m = A_eff p0 (R T0)^-1/2 psi(1 - dp/p0); square root rule: m = A_eff (2 rho dp)^1/2; sharp edge: that times 1 - 0.351 (1 - (1 - dp/p0)^(1/1.4))",
    source: "St Venant and Wantzel 1839 as in Heywood 1988, appendix C; square root rule: common practice; sharp edge: ISO 5167-2:2003",
    range: "any depression; a sharp edge to a quarter of the room's pressure",
    scatter: 0.0,
    scatter_origin: "",
    laws: &[],
    fields: &READING_FIELDS,
};

static READING_FIELDS: [FieldInfo; 4] = [
    required(
        FieldInfo::new(
            "depression",
            "depression",
            Quantity::PressureDifference,
            [1.0, 9e4],
        ),
        standard_depression(),
        "at which it was read",
    ),
    required(
        FieldInfo::new("flow", "air read", Quantity::MassFlow, [1e-7, 100.0]),
        0.1,
        "as a mass; a volume that a bench shows of other air is first to be brought to the air that its unit is stated for",
    ),
    optional(
        FieldInfo::new("pressure", "room pressure", Quantity::Pressure, [1e4, 2e5]),
        "of the still room air when it was read; the study's bench's when left out",
    ),
    optional(
        FieldInfo::new(
            "temperature",
            "room temperature",
            Quantity::Temperature,
            [200.0, 400.0],
        ),
        "of the still room air when it was read; the study's bench's when left out",
    ),
];

/// Numeric fields of the running settings.
pub static RUNNING: [FieldInfo; 1] = [defaulted(
    FieldInfo::new("limit", "running limit", Quantity::Fraction, [1e-6, 1.0]),
    running_limit(),
    "largest acceptable spread while running; 0.4 % (proposed)",
)];

/// Numeric fields of the check against CAD.
pub static CHECK: [FieldInfo; 2] = [
    optional(
        FieldInfo::new("totalVolume", "CAD volume in all", Quantity::Volume, VOLUME),
        "of all chambers and branches as CAD gives it; here ducts, bends and gradual changes enclose their length, other losses nothing",
    ),
    defaulted(
        FieldInfo::new(
            "tolerance",
            "differs beyond",
            Quantity::Fraction,
            [1e-6, 1.0],
        ),
        cad_tolerance(),
        "largest acceptable difference from CAD; 2 % (common practice)",
    ),
];
