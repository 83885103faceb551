//! The nodes a network can hold.

use std::f64::consts::PI;

use super::{
    AREA, BORE_40, ChoiceInfo, FieldInfo, KindInfo, Quantity, VOLUME, defaulted, optional, required,
};
use crate::law::junction::header_momentum::{
    DEFAULT_REGAIN_COMBINING, DEFAULT_REGAIN_DIVIDING, SCATTER_DIVIDING,
};
use crate::law::junction::plenum_jet::PLENUM_JET_SCATTER;

/// Every node kind.
pub static NODES: [KindInfo; 7] = [
    KindInfo {
        fields: &[
            optional(
                FieldInfo::new("pressure", "pressure", Quantity::Pressure, [1e3, 1e7]),
                "stagnation pressure while running; needed for the running draw",
            ),
            optional(
                FieldInfo::new(
                    "temperature",
                    "temperature",
                    Quantity::Temperature,
                    [150.0, 1_000.0],
                ),
                "temperature while running; needed for the running draw",
            ),
            optional(
                FieldInfo::new("boost", "boost", Quantity::Boost, [-1e5, 1e6]),
                "above ambient pressure, static, at the node named; the source's pressure is found for it",
            ),
        ],
        ..plain(
            "source",
            "source",
            "where air enters; on the bench it is the room, or the blowing side",
        )
    },
    KindInfo {
        scatter: PLENUM_JET_SCATTER,
        scatter_origin: "fraction of the entering head that a leg feels; judged from a three-dimensional reference",
        fields: &[
            own_volume(
                "of the chamber itself, as entered here; read by the check against CAD alone",
            ),
            cad_volume("of the chamber as CAD gives it, for the check"),
        ],
        ..plain(
            "plenum",
            "plenum",
            "a chamber in which the velocity head of what enters is lost",
        )
    },
    KindInfo {
        equation: "dp = -2 beta rho V dV along the run; side legs see the static pressure before their take-off",
        source: "Acrivos, Babcock and Pigford 1959; Bajura and Jones 1976 (factors from memory)",
        range: "sharp side legs at right angles",
        scatter: SCATTER_DIVIDING,
        scatter_origin: "standard deviation of the dividing factor, judged",
        fields: &[
            RUN,
            regain(
                "regainDividing",
                "regain dividing",
                DEFAULT_REGAIN_DIVIDING,
                "static-pressure regain where side legs leave: 0.5 loses no stagnation pressure",
            ),
            regain(
                "regainCombining",
                "regain combining",
                DEFAULT_REGAIN_COMBINING,
                "static-pressure regain where side legs join: 1 is full momentum",
            ),
            own_volume(
                "at this node beside the ducts that join it to other headers; read by the check against CAD alone",
            ),
            cad_volume(
                "of the chamber as CAD gives it, or a part of it: headers in a row are one chamber, their values are added",
            ),
        ],
        ..plain(
            "header",
            "header",
            "a flowing chamber: its run keeps part of the velocity head, side legs leave it",
        )
    },
    KindInfo {
        fields: &[RUN, SIDE],
        ..junction(
            "tee",
            "tee",
            "a straight run with one side leg at a right angle",
        )
    },
    KindInfo {
        fields: &[
            RUN,
            SIDE,
            required(
                FieldInfo::new("angle", "angle", Quantity::Angle, [0.1, PI / 2.0]),
                PI / 4.0,
                "angle between the side leg and the run",
            ),
        ],
        ..junction("wye", "wye", "a straight run with one slanted side leg")
    },
    plain("joint", "joint", "two legs end to end, nothing lost"),
    KindInfo {
        fields: &[optional(
            FieldInfo::new("cadSection", "CAD section", Quantity::Area, AREA),
            "smallest section on the widest way to this port as CAD gives it; here an opening counts by its hole, a throttle wide open, and ways side by side are not added up",
        )],
        ..plain(
            "port",
            "port",
            "where air leaves the manifold into a cylinder",
        )
    },
];

/// What is entered of a chamber's volume beside its ducts; a chamber that has none is a zero.
const fn own_volume(help: &'static str) -> FieldInfo {
    optional(
        FieldInfo::new("volume", "volume", Quantity::Volume, [0.0, VOLUME[1]]),
        help,
    )
}

const fn cad_volume(help: &'static str) -> FieldInfo {
    optional(
        FieldInfo::new("cadVolume", "CAD volume", Quantity::Volume, VOLUME),
        help,
    )
}

/// A kind that computes nothing and has no numbers.
const fn plain(kind: &'static str, label: &'static str, help: &'static str) -> KindInfo {
    KindInfo {
        kind,
        label,
        help,
        equation: "",
        source: "",
        range: "",
        scatter: 0.0,
        scatter_origin: "",
        fields: &[],
        laws: &[],
    }
}

/// A tee or wye.
const fn junction(kind: &'static str, label: &'static str, help: &'static str) -> KindInfo {
    KindInfo {
        equation: "K of each leg on the head of the leg that carries all, by the split, area ratio and angle",
        source: "the chosen author; Bassett, Winterbone and Pearson 2001 unless chosen",
        range: "side area up to the run's",
        scatter: 0.1,
        scatter_origin: "standard deviation of K: what four authors differ by at equal areas",
        ..plain(kind, label, help)
    }
}

const RUN: FieldInfo = required(
    FieldInfo::new("area", "run area", Quantity::Area, AREA),
    4.0 * BORE_40,
    "section of the straight run",
);
const SIDE: FieldInfo = required(
    FieldInfo::new("sideArea", "side area", Quantity::Area, AREA),
    BORE_40,
    "section of the side leg",
);

const fn regain(
    name: &'static str,
    label: &'static str,
    default: f64,
    help: &'static str,
) -> FieldInfo {
    defaulted(
        FieldInfo::new(name, label, Quantity::Number, [0.0, 2.0]),
        default,
        help,
    )
}

/// Authors of junction coefficients.
pub static JUNCTION_LAWS: [ChoiceInfo; 5] = [
    ChoiceInfo {
        name: "bassett2001",
        label: "Bassett 2001",
        help: "momentum balances, any area ratio, 30 to 90 degrees; combining, well above the others",
    },
    ChoiceInfo {
        name: "idelchik",
        label: "Idelchik",
        help: "handbook section VII, to 90 degrees; its tables switch with area ratio and split",
    },
    ChoiceInfo {
        name: "rennels2012",
        label: "Rennels 2012",
        help: "sharp edges, round legs, right angle",
    },
    ChoiceInfo {
        name: "gardel1957",
        label: "Gardel 1957",
        help: "sharp edges, area ratio 0.4 to 1; from memory",
    },
    ChoiceInfo {
        name: "craneTp410",
        label: "Crane TP-410",
        help: "30 to 90 degrees; apart from the others for large side legs",
    },
];
