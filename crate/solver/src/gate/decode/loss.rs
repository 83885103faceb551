//! Losses, and whose formula each follows.

use super::Row;
use crate::study::{
    BendLaw, ConeLaw, Loss, ReentrantEntryLaw, RoundedEntryLaw, ScheduleLaw, ScreenLaw,
    SharpEntryLaw, Station, StationBend, StepLaw,
};

const SHARP_ENTRY: [(&str, SharpEntryLaw); 2] = [
    ("idelchik", SharpEntryLaw::Idelchik),
    ("rennels2012", SharpEntryLaw::Rennels2012),
];
const ROUNDED_ENTRY: [(&str, RoundedEntryLaw); 3] = [
    ("rennels2012", RoundedEntryLaw::Rennels2012),
    ("idelchik", RoundedEntryLaw::Idelchik),
    ("swamee2008", RoundedEntryLaw::Swamee2008),
];
const REENTRANT_ENTRY: [(&str, ReentrantEntryLaw); 2] = [
    ("rennels2012", ReentrantEntryLaw::Rennels2012),
    ("idelchik", ReentrantEntryLaw::Idelchik),
];
const BEND: [(&str, BendLaw); 3] = [
    ("rennels2012", BendLaw::Rennels2012),
    ("idelchik", BendLaw::Idelchik),
    ("craneTp410", BendLaw::CraneTp410),
];
const STEP: [(&str, StepLaw); 2] = [
    ("rennels2012", StepLaw::Rennels2012),
    ("idelchik", StepLaw::Idelchik),
];
const CONE: [(&str, ConeLaw); 2] = [
    ("rennels2012", ConeLaw::Rennels2012),
    ("craneTp410", ConeLaw::CraneTp410),
];

const SCHEDULE: [(&str, ScheduleLaw); 3] = [
    ("rennels2012", ScheduleLaw::Rennels2012),
    ("idelchik", ScheduleLaw::Idelchik),
    ("craneTp410", ScheduleLaw::CraneTp410),
];
const SCREEN: [(&str, ScreenLaw); 2] = [
    ("blevins1984", ScreenLaw::Blevins1984),
    ("idelchik", ScreenLaw::Idelchik),
];

/// A loss of a branch.
pub(super) fn loss(row: Row) -> Option<Loss> {
    Some(match row.word("kind")? {
        "entrySharp" => Loss::EntrySharp {
            area: row.number("area")?,
            law: row.choice("law", &SHARP_ENTRY)?,
        },
        "entryRounded" => Loss::EntryRounded {
            area: row.number("area")?,
            radius: row.number("radius")?,
            law: row.choice("law", &ROUNDED_ENTRY)?,
        },
        "entryFlared" => Loss::EntryFlared {
            area: row.number("area")?,
            radius: row.number("radius")?,
        },
        "entryReentrant" => Loss::EntryReentrant {
            area: row.number("area")?,
            thickness: row.number("thickness")?,
            law: row.choice("law", &REENTRANT_ENTRY)?,
        },
        "duct" => Loss::Duct {
            area: row.number("area")?,
            perimeter: row.number("perimeter"),
            length: row.number("length")?,
            roughness: row.number("roughness")?,
        },
        "bend" => Loss::Bend {
            area: row.number("area")?,
            perimeter: row.number("perimeter"),
            angle: row.number("angle")?,
            radius: row.number("radius")?,
            roughness: row.number("roughness")?,
            law: row.choice("law", &BEND)?,
        },
        "bendPair" => Loss::BendPair {
            area: row.number("area")?,
            perimeter: row.number("perimeter"),
            angle: row.number("angle")?,
            radius: row.number("radius")?,
            spacing: row.number("spacing")?,
            twist: row.number("twist")?,
            roughness: row.number("roughness")?,
        },
        "suddenChange" => Loss::SuddenChange {
            area_from: row.number("areaFrom")?,
            area_to: row.number("areaTo")?,
            law: row.choice("law", &STEP)?,
        },
        "gradualChange" => Loss::GradualChange {
            area_from: row.number("areaFrom")?,
            area_to: row.number("areaTo")?,
            length: row.number("length")?,
            law: row.choice("law", &CONE)?,
        },
        "opening" => Loss::Opening {
            area: row.number("area")?,
            discharge_coefficient: row.number("dischargeCoefficient")?,
            area_from: row.number("areaFrom"),
            area_to: row.number("areaTo"),
            thickness: row.number("thickness"),
        },
        "screenRound" => Loss::ScreenRound {
            area: row.number("area")?,
            open_part: row.number("openPart")?,
            gap: row.number("gap")?,
            law: row.choice("law", &SCREEN)?,
        },
        "screenSquare" => Loss::ScreenSquare {
            area: row.number("area")?,
            open_part: row.number("openPart")?,
            law: row.choice("law", &SCREEN)?,
        },
        "hose" => Loss::Hose {
            area: row.number("area")?,
            length: row.number("length")?,
            pitch: row.number("pitch")?,
        },
        "throttle" => Loss::Throttle {
            diameter: row.number("diameter")?,
            angle: row.number("angle")?,
            closed_angle: row.number("closedAngle")?,
            shaft_diameter: row.number("shaftDiameter")?,
            discharge_coefficient: row.number("dischargeCoefficient")?,
        },
        "core" => Loss::Core {
            area: row.number("area")?,
            fraction: row.number("fraction")?,
            pressure: row.number("pressure")?,
            temperature: row.number("temperature")?,
            flow_1: row.number("flow1")?,
            drop_1: row.number("drop1")?,
            flow_2: row.number("flow2")?,
            drop_2: row.number("drop2")?,
            cooler: row.text("cooler"),
        },
        "schedule" => Loss::Schedule {
            roughness: row.number("roughness")?,
            stations: row.list("stations", station)?,
            bends: row.list("bends", station_bend)?,
            law: row.choice("law", &SCHEDULE)?,
        },
        "typedK" => Loss::TypedK {
            k: row.number("k")?,
            k_reversed: row.number("kReversed"),
            area: row.number("area")?,
            origin: row.text("origin").unwrap_or_default(),
        },
        _ => return None,
    })
}
fn station(row: Row) -> Option<Station> {
    Some(Station {
        at: row.number("at")?,
        area: row.number("area")?,
        perimeter: row.number("perimeter"),
    })
}

fn station_bend(row: Row) -> Option<StationBend> {
    Some(StationBend {
        at: row.number("at")?,
        angle: row.number("angle")?,
        radius: row.number("radius")?,
    })
}
