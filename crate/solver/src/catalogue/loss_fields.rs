//! Fields that losses share.

use super::{
    AREA, BORE_40, FieldInfo, LENGTH, POSITIVE_LENGTH, Quantity, discharge_coefficient, optional,
    required,
};

pub(super) const fn section(
    name: &'static str,
    label: &'static str,
    help: &'static str,
) -> FieldInfo {
    required(
        FieldInfo::new(name, label, Quantity::Area, AREA),
        BORE_40,
        help,
    )
}

pub(super) const fn own_section() -> FieldInfo {
    section("area", "area", "cross-section of the air's way here")
}

pub(super) const fn perimeter() -> FieldInfo {
    optional(
        FieldInfo::new("perimeter", "perimeter", Quantity::Length, POSITIVE_LENGTH),
        "wetted perimeter of a section that is not round; round when left out",
    )
}

pub(super) const fn roughness() -> FieldInfo {
    required(
        FieldInfo::new("roughness", "roughness", Quantity::Length, [0.0, 0.01]),
        10e-6,
        "height of the wall's roughness; machined 2, drawn 2, sand cast 250 micrometres (common practice)",
    )
}

pub(super) const fn length(default: f64, help: &'static str) -> FieldInfo {
    required(
        FieldInfo::new("length", "length", Quantity::Length, LENGTH),
        default,
        help,
    )
}

pub(super) const fn contraction(default: f64) -> FieldInfo {
    discharge_coefficient(
        default,
        "the jet at its narrowest over the opening; 0.61 for a sharp edge (common practice)",
    )
}

pub(super) const fn radius(help: &'static str) -> FieldInfo {
    required(
        FieldInfo::new("radius", "radius", Quantity::Length, LENGTH),
        0.005,
        help,
    )
}

pub(super) const AREA_FROM: FieldInfo = section(
    "areaFrom",
    "area at from",
    "section towards the branch's first end",
);
pub(super) const AREA_TO: FieldInfo = section(
    "areaTo",
    "area at to",
    "section towards the branch's other end",
);

pub(super) const SCREENED: FieldInfo = section("area", "area", "section in front of the screen");
pub(super) const OPEN_PART: FieldInfo = required(
    FieldInfo::new("openPart", "open part", Quantity::Fraction, [0.001, 1.0]),
    0.6,
    "free area over the section in front",
);

/// A section behind an opening, if there is one.
pub(super) const fn behind(
    name: &'static str,
    label: &'static str,
    help: &'static str,
) -> FieldInfo {
    optional(FieldInfo::new(name, label, Quantity::Area, AREA), help)
}

pub(super) const fn flow(
    name: &'static str,
    label: &'static str,
    default: f64,
    help: &'static str,
) -> FieldInfo {
    required(
        FieldInfo::new(name, label, Quantity::MassFlow, [1e-9, 1e3]),
        default,
        help,
    )
}

pub(super) const fn drop(
    name: &'static str,
    label: &'static str,
    default: f64,
    help: &'static str,
) -> FieldInfo {
    required(
        FieldInfo::new(name, label, Quantity::PressureDifference, [1e-6, 1e6]),
        default,
        help,
    )
}

/// Fields of a core.
pub(super) static CORE: [FieldInfo; 8] = [
    section("area", "open area", "open section of this passage"),
    required(
        FieldInfo::new("fraction", "face part", Quantity::Fraction, [1e-6, 1.0]),
        1.0,
        "part of the core's face that this passage is",
    ),
    required(
        FieldInfo::new("pressure", "measured at", Quantity::Pressure, [1e3, 1e7]),
        200_000.0,
        "pressure at which the two points were measured",
    ),
    required(
        FieldInfo::new(
            "temperature",
            "measured at",
            Quantity::Temperature,
            [150.0, 1_000.0],
        ),
        330.0,
        "temperature at which the two points were measured",
    ),
    flow(
        "flow1",
        "flow 1",
        0.3,
        "whole core's mass flow at the first point",
    ),
    drop(
        "drop1",
        "drop 1",
        1_200.0,
        "pressure drop at the first point",
    ),
    flow(
        "flow2",
        "flow 2",
        0.6,
        "whole core's mass flow at the second point",
    ),
    drop(
        "drop2",
        "drop 2",
        4_000.0,
        "pressure drop at the second point",
    ),
];
