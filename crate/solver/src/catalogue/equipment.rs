//! Blowers and charge coolers.

use super::{
    ChoiceInfo, FieldInfo, KindInfo, POSITIVE_LENGTH, Quantity, defaulted, optional, required,
};
use crate::law::cooler::conductance::{AIR_PART, EXPONENT};
use crate::law::cooler::effectiveness;

/// A blower in a branch.
pub const BLOWER: KindInfo = KindInfo {
    kind: "blower",
    label: "blower",
    help: "a positive-displacement blower that the crankshaft drives",
    equation: "m = efficiency x displacement x speed x inlet density; T2 = T1 (1 + ((p2/p1)^(2/7) - 1) / efficiency)",
    source: "isentropic relation for air, any textbook of thermodynamics; efficiencies from the maker",
    range: "the speeds and pressure ratios of its efficiency tables",
    scatter: 0.0,
    scatter_origin: "",
    laws: &[],
    fields: &[
        required(
            FieldInfo::new(
                "displacement",
                "displacement a turn",
                Quantity::Volume,
                [1e-6, 1.0],
            ),
            1.5e-3,
            "air that one turn of the blower would move without leaking",
        ),
        optional(
            FieldInfo::new("driveRatio", "drive ratio", Quantity::Number, [0.01, 50.0]),
            "turns of the blower a turn of the crankshaft; found when a boost is given",
        ),
        optional(
            FieldInfo::new(
                "crankPulley",
                "crank pulley",
                Quantity::Length,
                POSITIVE_LENGTH,
            ),
            "diameter; with the blower's pulley instead of a drive ratio",
        ),
        optional(
            FieldInfo::new(
                "blowerPulley",
                "blower pulley",
                Quantity::Length,
                POSITIVE_LENGTH,
            ),
            "diameter",
        ),
        optional(
            FieldInfo::new("boost", "boost", Quantity::Boost, [-1e5, 1e6]),
            "above ambient pressure, static, at the node named; the drive ratio is found for it",
        ),
        optional(
            FieldInfo::new(
                "volumetricEfficiency",
                "volumetric efficiency",
                Quantity::Fraction,
                [0.01, 1.2],
            ),
            "air moved over displacement, at the density of its inlet",
        ),
        optional(
            FieldInfo::new(
                "isentropicEfficiency",
                "isentropic efficiency",
                Quantity::Fraction,
                [0.05, 1.0],
            ),
            "isentropic temperature rise over the real one",
        ),
        optional(
            FieldInfo::new(
                "greatestSpeed",
                "greatest speed",
                Quantity::Speed,
                [1.0, 10_000.0],
            ),
            "the maker's limit of its rotors",
        ),
        optional(
            FieldInfo::new(
                "greatestRimSpeed",
                "greatest rim speed",
                Quantity::Velocity,
                [1.0, 1_000.0],
            ),
            "the maker's limit of its pulley",
        ),
    ],
};

/// A charge cooler.
pub const COOLER: KindInfo = KindInfo {
    kind: "cooler",
    label: "charge cooler",
    help: "a core in cross flow; its passages are the cores in branches that name it",
    equation: "effectiveness by number of transfer units; 1/UA = air part/(f UA0) (f m0/m)^n + the rest/(f UA0)",
    source: "Kays and London, Compact Heat Exchangers; Mason 1954 for both sides unmixed",
    range: "near the measured flow; dry air, no water condensed",
    scatter: effectiveness::SCATTER.relative,
    scatter_origin: effectiveness::SCATTER.origin,
    laws: &[],
    fields: &[
        required(
            FieldInfo::new(
                "coolantTemperature",
                "coolant temperature",
                Quantity::Temperature,
                [200.0, 450.0],
            ),
            313.15,
            "of the coolant that enters the core",
        ),
        optional(
            FieldInfo::new(
                "coolantFlow",
                "coolant flow",
                Quantity::MassFlow,
                [1e-4, 100.0],
            ),
            "through the whole core; left out, the coolant keeps its temperature",
        ),
        defaulted(
            FieldInfo::new(
                "coolantSpecificHeat",
                "coolant specific heat",
                Quantity::SpecificHeat,
                [500.0, 10_000.0],
            ),
            crate::defaults::COOLANT_SPECIFIC_HEAT,
            "3500 J/(kg K) when left out: water with antifreeze (common practice)",
        ),
        required(
            FieldInfo::new(
                "effectiveness",
                "effectiveness",
                Quantity::Fraction,
                [0.01, 0.999],
            ),
            0.75,
            "part of the difference between entering air and entering coolant that the air loses, whole core",
        ),
        optional(
            FieldInfo::new(
                "measuredFlow",
                "measured at air flow",
                Quantity::MassFlow,
                [1e-4, 100.0],
            ),
            "whole core; left out, the effectiveness holds at every flow",
        ),
        optional(
            FieldInfo::new(
                "measuredCoolantFlow",
                "measured at coolant flow",
                Quantity::MassFlow,
                [1e-4, 100.0],
            ),
            "whole core; the present coolant flow when left out",
        ),
        defaulted(
            FieldInfo::new("airPart", "air-side part", Quantity::Fraction, [0.0, 1.0]),
            AIR_PART,
            "part of the resistance to heat that stands on the air side (from memory)",
        ),
        defaulted(
            FieldInfo::new(
                "airExponent",
                "air-side exponent",
                Quantity::Number,
                [0.0, 1.0],
            ),
            EXPONENT,
            "the air side's conductance goes with its flow to this power (from memory)",
        ),
    ],
};

/// Which side of a core is mixed across its own flow.
pub static MIXINGS: [ChoiceInfo; 3] = [
    ChoiceInfo {
        name: "bothUnmixed",
        label: "neither side mixed",
        help: "fins or separate passages on both sides",
    },
    ChoiceInfo {
        name: "coolantMixed",
        label: "coolant mixed",
        help: "fins on the air side, one wide passage of coolant",
    },
    ChoiceInfo {
        name: "airMixed",
        label: "air mixed",
        help: "no fins on the air side, separate passages of coolant",
    },
];
