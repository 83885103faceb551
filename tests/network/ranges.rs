//! A loss outside its author's range is answered, and the warning names its branch and its field.

use std::f64::consts::PI;

use evenport::{
    BendLaw, Loss, RoundedEntryLaw, ScheduleLaw, ScreenLaw, Station, StationBend, WarningKind,
};

use crate::support::{Builder, answer, typed};

const AREA: f64 = 1e-3;

/// Fields of the second loss of `way` that the answer calls outside their range.
fn warned(loss: Loss) -> Vec<String> {
    let mut builder = Builder::default();
    builder
        .source("room")
        .port("port")
        .branch("way", "room", "port", vec![typed(0.5, AREA), loss]);
    let answer = answer(&builder.study(1_000.0));
    let outside = answer
        .warnings
        .iter()
        .filter(|warning| warning.kind == WarningKind::OutsideRange);
    outside
        .map(|warning| {
            assert_eq!(warning.element, "way");
            warning.field.clone()
        })
        .collect()
}

fn bend(radius: f64, law: BendLaw) -> Loss {
    Loss::Bend {
        area: AREA,
        perimeter: None,
        angle: PI / 2.0,
        radius,
        roughness: 1e-5,
        law,
    }
}

fn pair(spacing: f64, radius: f64, angle: f64) -> Loss {
    Loss::BendPair {
        area: AREA,
        perimeter: None,
        angle,
        radius,
        spacing,
        twist: 0.0,
        roughness: 1e-5,
    }
}

fn hose(pitch: f64) -> Loss {
    Loss::Hose {
        area: AREA,
        length: 0.2,
        pitch,
    }
}

fn round(open_part: f64, law: ScreenLaw) -> Loss {
    Loss::ScreenRound {
        area: AREA,
        open_part,
        gap: 1e-3,
        law,
    }
}

fn square(open_part: f64) -> Loss {
    Loss::ScreenSquare {
        area: AREA,
        open_part,
        law: ScreenLaw::Idelchik,
    }
}

fn opening(thickness: f64) -> Loss {
    Loss::Opening {
        area: AREA,
        discharge_coefficient: 0.61,
        area_from: None,
        area_to: None,
        thickness: Some(thickness),
    }
}

#[test]
fn the_warning_names_branch_and_field() {
    let diameter = (4.0 * AREA / PI).sqrt();
    let cases = [
        (
            "radius",
            bend(2.9 * diameter, BendLaw::Idelchik),
            bend(3.1 * diameter, BendLaw::Idelchik),
        ),
        (
            "radius",
            bend(1.1 * diameter, BendLaw::CraneTp410),
            bend(0.9 * diameter, BendLaw::CraneTp410),
        ),
        (
            "spacing",
            pair(29.0 * diameter, 0.05, PI / 2.0),
            pair(31.0 * diameter, 0.05, PI / 2.0),
        ),
        (
            "radius",
            pair(0.05, 2.9 * diameter, PI / 2.0),
            pair(0.05, 3.1 * diameter, PI / 2.0),
        ),
        (
            "angle",
            pair(0.05, 0.05, PI / 2.0),
            pair(0.05, 0.05, PI / 4.0),
        ),
        ("pitch", hose(0.49 * diameter), hose(0.51 * diameter)),
        (
            "openPart",
            round(0.79, ScreenLaw::Blevins1984),
            round(0.81, ScreenLaw::Blevins1984),
        ),
        (
            "openPart",
            round(0.21, ScreenLaw::Idelchik),
            round(0.19, ScreenLaw::Idelchik),
        ),
        ("openPart", square(0.021), square(0.019)),
        (
            "thickness",
            opening(2.9 * diameter),
            opening(3.1 * diameter),
        ),
    ];
    for (field, inside, outside) in cases {
        assert!(warned(inside.clone()).is_empty(), "{inside:?}");
        assert_eq!(
            warned(outside.clone()),
            [format!("losses[1].{field}")],
            "{outside:?}"
        );
    }
}

#[test]
fn an_author_brings_a_range_of_its_own() {
    let bend_by = |law| warned(bend(0.15, law));
    assert!(bend_by(BendLaw::Rennels2012).is_empty());
    assert_eq!(bend_by(BendLaw::Idelchik), ["losses[1].radius"]);
    let entry = |radius| {
        let mut builder = Builder::default();
        let law = RoundedEntryLaw::Swamee2008;
        let first = Loss::EntryRounded {
            area: AREA,
            radius,
            law,
        };
        builder
            .source("room")
            .port("port")
            .branch("way", "room", "port", vec![first]);
        let answer = answer(&builder.study(1_000.0));
        answer
            .warnings
            .iter()
            .any(|warning| warning.field == "losses[0].radius")
    };
    assert!(!entry(0.03) && entry(0.04));
}

#[test]
fn a_schedule_names_its_station_and_its_bend() {
    let diameter = (4.0 * AREA / PI).sqrt();
    let round = PI * diameter;
    let schedule = |roughness: f64, perimeter: f64, radius: f64, angle: f64| {
        let station = |at, perimeter| Station {
            at,
            area: AREA,
            perimeter,
        };
        warned(Loss::Schedule {
            law: ScheduleLaw::default(),
            roughness,
            stations: vec![
                station(0.0, None),
                station(0.1, None),
                station(0.4, Some(perimeter)),
            ],
            bends: vec![
                StationBend {
                    at: 0.05,
                    angle: 0.5,
                    radius: diameter,
                },
                // At the last station, where its section is that one's.
                StationBend {
                    at: 0.4,
                    angle,
                    radius,
                },
            ],
        })
    };
    let rough = 0.05 * diameter;
    assert!(schedule(0.99 * rough, round, 0.51 * diameter, 0.99 * PI).is_empty());
    assert_eq!(
        schedule(1.01 * rough, round, diameter, 1.0),
        ["losses[1].roughness"]
    );
    assert_eq!(
        schedule(1e-5, 0.99 * round, diameter, 1.0),
        ["losses[1].stations[2].perimeter"]
    );
    assert_eq!(
        schedule(1e-5, round, 0.49 * diameter, 1.0),
        ["losses[1].bends[1].radius"]
    );
    assert_eq!(
        schedule(1e-5, round, diameter, 1.01 * PI),
        ["losses[1].bends[1].angle"]
    );
}

/// Reynolds numbers of a loss by itself on a bench of this depression, as the answer calls them
/// outside their range.
fn slow(loss: Loss, depression: f64) -> Vec<String> {
    let mut builder = Builder::default();
    builder.source("room").port("port 1");
    builder.branch("way", "room", "port 1", vec![loss]);
    let answer = answer(&builder.study(depression));
    let warnings = &crate::support::solved(&answer, evenport::Draw::BenchAllOpen).warnings;
    let outside = warnings
        .iter()
        .filter(|warning| warning.kind == WarningKind::OutsideRange);
    outside
        .map(|warning| format!("{} {}: {}", warning.element, warning.field, warning.message))
        .collect()
}

/// At 7 kPa air of 1.2 kg/m3 goes at some 80 m/s, which in a round section of 1,000 mm2 is a Reynolds
/// number of about 2e5; it goes with the root of the depression.
#[test]
fn a_flow_too_slow_for_a_law_is_told_with_its_reynolds_number() {
    let bend = || bend(0.05, BendLaw::Idelchik);
    let told = slow(bend(), 7e3);
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(
        told[0].starts_with("way losses[0]: Reynolds number is "),
        "{told:?}"
    );
    assert!(told[0].ends_with("below the law's 300000"), "{told:?}");
    assert!(slow(bend(), 4e4).is_empty(), "{:?}", slow(bend(), 4e4));
    let entry = || Loss::EntrySharp {
        area: AREA,
        law: evenport::SharpEntryLaw::default(),
    };
    assert!(slow(entry(), 7e3).is_empty());
    assert_eq!(slow(entry(), 10.0).len(), 1);
    assert!(slow(self::bend(0.05, BendLaw::Rennels2012), 10.0).is_empty());
}
