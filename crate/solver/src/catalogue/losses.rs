//! The losses a branch can hold.

use std::f64::consts::PI;

use super::loss_fields::{
    AREA_FROM, AREA_TO, CORE, OPEN_PART, SCREENED, behind, contraction, length, own_section,
    perimeter, radius, roughness, section,
};
use super::{
    ChoiceInfo, FieldInfo, KindInfo, LENGTH, POSITIVE_LENGTH, Quantity, loss_laws, optional,
    required,
};
use crate::law::{Scatter, area, bend, cooler, entry, friction, opening, screen, throttle};

struct Text {
    kind: &'static str,
    label: &'static str,
    help: &'static str,
    equation: &'static str,
    source: &'static str,
    range: &'static str,
}

const fn kind(text: Text, scatter: Scatter, fields: &'static [FieldInfo]) -> KindInfo {
    let Text {
        kind,
        label,
        help,
        equation,
        source,
        range,
    } = text;
    KindInfo {
        kind,
        label,
        help,
        equation,
        source,
        range,
        scatter: scatter.relative,
        scatter_origin: scatter.origin,
        fields,
        laws: &[],
    }
}

/// The same with authors to choose from.
const fn by_author(kind: KindInfo, laws: &'static [ChoiceInfo]) -> KindInfo {
    KindInfo { laws, ..kind }
}

/// Every loss kind.
pub static LOSSES: [KindInfo; 17] = [
    by_author(
        kind(
            Text {
                kind: "entrySharp",
                label: "sharp entry",
                help: "from a chamber into a section with a sharp edge, flush with the wall",
                equation: "K = 0.5",
                source: "Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 3-1",
                range: "turbulent flow",
            },
            entry::sharp_idelchik::SCATTER,
            &[own_section()],
        ),
        &loss_laws::SHARP_ENTRY,
    ),
    by_author(
        kind(
            Text {
                kind: "entryRounded",
                label: "rounded entry",
                help: "from a chamber into a section with a rounded edge, flush with the wall",
                equation: "K = 0.0696 (1 - 0.569 r/d) L^2 + (L - 1)^2, L = 1 + 0.622 (1 - 0.30 sqrt(r/d) - 0.70 r/d)^4",
                source: "Rennels and Hudson, Pipe Flow, 2012, section 9.2",
                range: "r/d from 0 to 1",
            },
            entry::rounded_rennels_2012::SCATTER,
            &[own_section(), radius("radius of the edge")],
        ),
        &loss_laws::ROUNDED_ENTRY,
    ),
    kind(
        Text {
            kind: "entryFlared",
            label: "bellmouth",
            help: "from a chamber into a bellmouth that stands free of the wall",
            equation: "K over r/d by table: 1.0 at 0, 0.40 at 0.05, 0.10 at 0.12, 0.03 from 0.2",
            source: "Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 3-4; SMACNA duct fitting A-12B prints the same",
            range: "r/d from 0 to 1; from 0.2 on the same",
        },
        entry::flared_idelchik::SCATTER,
        &[own_section(), radius("radius of the bell")],
    ),
    by_author(
        kind(
            Text {
                kind: "entryReentrant",
                label: "re-entrant entry",
                help: "a pipe end that stands into the chamber",
                equation: "K = 1.12 - 22 t/d + 216 (t/d)^2 + 80 (t/d)^3, t/d at most 0.05",
                source: "Rennels and Hudson, Pipe Flow, 2012, section 9.2",
                range: "stands at least half a diameter into the chamber",
            },
            entry::reentrant_rennels_2012::SCATTER,
            &[
                own_section(),
                required(
                    FieldInfo::new("thickness", "wall thickness", Quantity::Length, LENGTH),
                    0.002,
                    "wall thickness of the pipe's end",
                ),
            ],
        ),
        &loss_laws::REENTRANT_ENTRY,
    ),
    kind(
        Text {
            kind: "duct",
            label: "duct friction",
            help: "straight duct of constant section",
            equation: "Fanno flow with f of Churchill 1977; not round: Re 64/(f Re) with the laminar f Re of a rectangle",
            source: "Churchill, Chemical Engineering 84 (1977) 91-92; Shah and London 1978; Jones 1976",
            range: "all Reynolds numbers, roughness over diameter to 0.05",
        },
        friction::churchill_1977::SCATTER,
        &[
            own_section(),
            perimeter(),
            length(0.1, "length along the axis"),
            roughness(),
        ],
    ),
    kind(
        Text {
            kind: "hose",
            label: "corrugated hose",
            help: "flexible hose with corrugations inside; a smooth but rough one is a duct",
            equation: "f = (d/p) (1 - 1/(1 + 0.438 p/d)^2)^2 in complete turbulence, then as a duct as rough as that",
            source: "Hawthorne and von Helms, Product Engineering, June 1963; Churchill 1977",
            range: "pitch over diameter 0.03 to 0.5",
        },
        friction::hose_hawthorne_1963::SCATTER,
        &[
            section("area", "free area", "cross-section inside the corrugations"),
            length(0.2, "length along the axis"),
            required(
                FieldInfo::new("pitch", "pitch", Quantity::Length, POSITIVE_LENGTH),
                0.004,
                "distance from one corrugation to the next",
            ),
        ],
    ),
    by_author(
        kind(
            Text {
                kind: "bend",
                label: "bend",
                help: "bend of constant section; its own friction is in it",
                equation: "K = f a r/d + (0.10 + 2.4 f) sin(a/2) + 6.6 f (sqrt(sin(a/2)) + sin(a/2)) / (r/d)^(4 a/pi)",
                source: "Rennels and Hudson, Pipe Flow, 2012, section 15.4",
                range: "r/d from 0.5 to 20, to 180 degrees",
            },
            bend::rennels_2012::SCATTER,
            &[
                own_section(),
                perimeter(),
                required(
                    FieldInfo::new("angle", "angle", Quantity::Angle, [0.0, PI]),
                    PI / 2.0,
                    "angle turned through",
                ),
                required(
                    FieldInfo::new("radius", "axis radius", Quantity::Length, POSITIVE_LENGTH),
                    0.06,
                    "radius of the bend's axis",
                ),
                roughness(),
            ],
        ),
        &loss_laws::BEND,
    ),
    kind(
        Text {
            kind: "bendPair",
            label: "two bends close together",
            help: "two equal bends and the straight length between; their friction is in it",
            equation: "K = 2 C K1(a) + f s/d; C over r/d, s/d and twist by table: at r/d 1 with nothing between 0.53 (U), 0.81 (90 degrees), 1.0 (Z), at s/d 8 about 0.8, from 30 on 1; K1 of the single bend",
            source: "Miller, Internal Flow Systems, 2nd ed., 1990, table 10.1, for C; Rennels and Hudson 2012, section 15.4, for K1",
            range: "r/d from 1 to 3, each bend about 90 degrees, s/d to 30; not for mitres",
        },
        bend::pair_miller_1990::SCATTER,
        &[
            own_section(),
            perimeter(),
            required(
                FieldInfo::new("angle", "angle", Quantity::Angle, [0.0, PI]),
                PI / 2.0,
                "angle that each turns through",
            ),
            required(
                FieldInfo::new("radius", "axis radius", Quantity::Length, POSITIVE_LENGTH),
                0.06,
                "radius of either axis",
            ),
            required(
                FieldInfo::new("spacing", "spacing", Quantity::Length, LENGTH),
                0.04,
                "straight length between them",
            ),
            required(
                FieldInfo::new("twist", "twist", Quantity::Angle, [0.0, PI]),
                0.0,
                "angle between their planes: 0 goes on turning (U), 90 degrees turns aside, 180 turns back (Z)",
            ),
            roughness(),
        ],
    ),
    by_author(
        kind(
            Text {
                kind: "suddenChange",
                label: "sudden change of section",
                help: "a step in the section, either way",
                equation: "widening K = (1 - A1/A2)^2; narrowing K = 0.0696 (1 - b^5) L^2 + (L - 1)^2, L = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5)",
                source: "Borda and Carnot; Rennels and Hudson, Pipe Flow, 2012, section 10.2",
                range: "turbulent flow",
            },
            area::sudden_expansion_borda_carnot::SCATTER,
            &[AREA_FROM, AREA_TO],
        ),
        &loss_laws::STEP,
    ),
    by_author(
        kind(
            Text {
                kind: "gradualChange",
                label: "gradual change of section",
                help: "a cone, either way; its own wall friction is in it",
                equation: "widening by the cone's angle; narrowing K = f (1 - b^4)/(8 sin(a/2)) + 0.0696 sin(a/2) (1 - b^5) L^2 + (L - 1)^2; f 0.02",
                source: "Rennels and Hudson, Pipe Flow, 2012, sections 10.3 and 11.1",
                range: "all angles; length 0 is the sudden change",
            },
            area::diffuser_rennels_2012::SCATTER,
            &[AREA_FROM, AREA_TO, length(0.1, "length along the axis")],
        ),
        &loss_laws::CONE,
    ),
    kind(
        Text {
            kind: "opening",
            label: "opening in a wall",
            help: "a sharp-edged window between chambers or sections",
            equation: "no loss to the jet's section C_d A, then (1 - C_d A/A_behind)^2 of the jet's head; all of it into a chamber; a thick wall saves 2 (1/C_d - 1)(1 - A/A_behind) w heads in A",
            source: "St Venant and Wantzel 1839, as in Heywood 1988, appendix C; Borda and Carnot; w by Idelchik, diagram 4-12",
            range: "C_d from 0.5 to 1, thickness to 3 diameters",
        },
        opening::contracted_jet::SCATTER,
        &[
            own_section(),
            contraction(0.61),
            behind(
                "areaFrom",
                "area at from",
                "section towards the first end; a chamber when left out",
            ),
            behind(
                "areaTo",
                "area at to",
                "section towards the other end; a chamber when left out",
            ),
            optional(
                FieldInfo::new("thickness", "thickness", Quantity::Length, LENGTH),
                "thickness of the wall, in which the jet fills the opening again; a thin edge when left out",
            ),
        ],
    ),
    by_author(
        kind(
            Text {
                kind: "screenRound",
                label: "wire screen",
                help: "a screen of round wires across the section",
                equation: "K = beta (1 - s^2) / s^2 heads of the approach; beta over the gap's Reynolds number by table, 1.3 at 20, 0.7 at 100, 0.52 from 400",
                source: "Blevins, Applied Fluid Dynamics Handbook, 1984",
                range: "open part 0.05 to 0.8; chokes in the open part",
            },
            screen::round_blevins_1984::SCATTER,
            &[
                SCREENED,
                OPEN_PART,
                required(
                    FieldInfo::new("gap", "gap", Quantity::Length, POSITIVE_LENGTH),
                    0.002,
                    "free width between two wires",
                ),
            ],
        ),
        &loss_laws::ROUND_SCREEN,
    ),
    by_author(
        kind(
            Text {
                kind: "screenSquare",
                label: "plate or bar screen",
                help: "a perforated plate, or a screen of bars with square edges, across the section",
                equation: "K heads of the approach over the open part by table",
                source: "Blevins, Applied Fluid Dynamics Handbook, 1984",
                range: "open part from 0.0016; chokes in the open part",
            },
            screen::square_blevins_1984::SCATTER,
            &[SCREENED, OPEN_PART],
        ),
        &loss_laws::SQUARE_SCREEN,
    ),
    kind(
        Text {
            kind: "throttle",
            label: "throttle plate",
            help: "a plate in a round bore",
            equation: "open area: the bore less the plate's and shaft's shadow; then as an opening in the bore",
            source: "Heywood 1988, section 7.6.2, eq. 7.18 (from memory)",
            range: "closed to 90 degrees",
        },
        throttle::plate_heywood_1988::SCATTER,
        &[
            required(
                FieldInfo::new("diameter", "bore", Quantity::Length, POSITIVE_LENGTH),
                0.07,
                "diameter of the bore",
            ),
            required(
                FieldInfo::new("angle", "plate angle", Quantity::Angle, [0.0, PI / 2.0]),
                PI / 2.0,
                "angle of the plate from the plane across the bore; 90 degrees is wide open",
            ),
            required(
                FieldInfo::new("closedAngle", "closed angle", Quantity::Angle, [0.0, 0.6]),
                0.1,
                "that angle when the plate touches the bore",
            ),
            required(
                FieldInfo::new("shaftDiameter", "shaft", Quantity::Length, LENGTH),
                0.008,
                "diameter of the shaft",
            ),
            contraction(0.65),
        ],
    ),
    kind(
        Text {
            kind: "core",
            label: "cooler core",
            help: "a passage of a charge-cooler core: its pressure loss, and its heat where it names a charge cooler",
            equation: "dp = a (m/f) (mu/mu0) (rho0/rho) + b (m/f)^2 (rho0/rho), rho the mean before and behind",
            source: "two-term drop through fins (Forchheimer 1901): common practice; a and b from the two measured points",
            range: "near the measured flows; a and b not negative",
        },
        cooler::two_point_fit::SCATTER,
        &CORE,
    ),
    by_author(
        kind(
            Text {
                kind: "schedule",
                label: "section schedule",
                help: "areas along a way, as CAD gives them: friction, changes of section and bends follow",
                equation: "friction of each step by its own section; each stretch that widens or narrows by the cone's K at every step's own angle",
                source: "the laws of duct friction, gradual change and bend",
                range: "as those laws; sections change little across the way",
            },
            friction::churchill_1977::SCATTER,
            &[roughness()],
        ),
        &loss_laws::SCHEDULE,
    ),
    kind(
        Text {
            kind: "typedK",
            label: "typed K",
            help: "a loss coefficient of your own, with its origin",
            equation: "K velocity heads in the reference section",
            source: "typed",
            range: "",
        },
        Scatter {
            relative: 0.1,
            common: 0.5,
            origin: "assumed: a typed value comes without scatter",
        },
        &[
            required(
                FieldInfo::new("k", "K", Quantity::Number, [0.0, 1e6]),
                1.0,
                "loss coefficient on the head in the section",
            ),
            optional(
                FieldInfo::new("kReversed", "K reversed", Quantity::Number, [0.0, 1e6]),
                "the same for air from to towards from; as K when left out",
            ),
            own_section(),
        ],
    ),
];

/// Fields of a schedule's station.
pub static STATION: [FieldInfo; 3] = [
    required(
        FieldInfo::new("at", "station", Quantity::Length, LENGTH),
        0.0,
        "where the section lies along the axis",
    ),
    own_section(),
    perimeter(),
];

/// Fields of a schedule's bend.
pub static STATION_BEND: [FieldInfo; 3] = [
    required(
        FieldInfo::new("at", "station", Quantity::Length, LENGTH),
        0.0,
        "where the bend's middle lies along the axis",
    ),
    required(
        FieldInfo::new("angle", "angle", Quantity::Angle, [1e-3, 2.0 * PI]),
        PI / 4.0,
        "angle turned through",
    ),
    radius("radius of the axis"),
];
