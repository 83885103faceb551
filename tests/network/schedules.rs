//! Section schedules in whole networks, and what the gate says of bad lists.

use evenport::{
    Draw, Loss, NodeKind, Station, StationBend, Study, StudyErrorKind as Kind, read_value, solve,
};
use serde_json::{Value, json};

use crate::support::{Builder, answer, solved, typed};

fn station(at: f64, area: f64) -> Station {
    Station {
        at,
        area,
        perimeter: None,
    }
}

fn runner(losses: Vec<Loss>) -> Study {
    let mut builder = Builder::default();
    builder
        .source("room")
        .node("box", NodeKind::PLENUM)
        .port("port")
        .branch("feed", "room", "box", vec![typed(0.5, 2e-3)])
        .branch("runner", "box", "port", losses);
    builder.study(7_000.0)
}

fn flow(losses: Vec<Loss>) -> f64 {
    let answer = answer(&runner(losses));
    solved(&answer, Draw::BenchAllOpen).total
}

/// A schedule of one section is a duct, with its bend the duct and the bend.
#[test]
fn a_constant_section_is_a_duct() {
    let area = 1.2e-3;
    let duct = |length: f64| Loss::Duct {
        area,
        perimeter: None,
        length,
        roughness: 5e-5,
    };
    let schedule = |bends: Vec<StationBend>| Loss::Schedule {
        roughness: 5e-5,
        stations: vec![station(0.0, area), station(0.25, area)],
        bends,
        law: Default::default(),
    };
    let (ours, wanted) = (flow(vec![schedule(Vec::new())]), flow(vec![duct(0.25)]));
    assert!((ours / wanted - 1.0).abs() < 1e-10, "{ours} {wanted}");
    let bend = StationBend {
        at: 0.1,
        angle: 1.0,
        radius: 0.06,
    };
    let alone = Loss::Bend {
        area,
        perimeter: None,
        angle: 1.0,
        radius: 0.06,
        roughness: 5e-5,
        law: Default::default(),
    };
    let (ours, wanted) = (
        flow(vec![schedule(vec![bend])]),
        flow(vec![duct(0.25 - 0.06), alone]),
    );
    assert!((ours / wanted - 1.0).abs() < 1e-4, "{ours} {wanted}");
}

/// A cone in any number of stations flows as the conical law has it; what differs is that the schedule's
/// wall friction goes with the Reynolds number, where the law assumes a factor of 0.02: about that of
/// walls this rough.
#[test]
fn a_cone_converges_to_the_conical_law() {
    for (from, to) in [(8e-4_f64, 1.6e-3_f64), (1.6e-3, 8e-4)] {
        let schedule = |steps: usize| {
            let part = |step: usize| step as f64 / steps as f64;
            let root = |step: usize| from.sqrt() + part(step) * (to.sqrt() - from.sqrt());
            let stations = (0..=steps).map(|step| station(0.15 * part(step), root(step).powi(2)));
            flow(vec![Loss::Schedule {
                roughness: 3.5e-5,
                stations: stations.collect(),
                bends: Vec::new(),
                law: Default::default(),
            }])
        };
        let law = flow(vec![Loss::GradualChange {
            area_from: from,
            area_to: to,
            length: 0.15,
            law: Default::default(),
        }]);
        let (few, many, more) = (schedule(2), schedule(12), schedule(48));
        assert!((many / more - 1.0).abs() < 1e-4 && (few / more - 1.0).abs() < 2e-3);
        assert!((more / law - 1.0).abs() < 5e-3, "{more} {law}");
    }
}

/// What a schedule costs is told as one loss, in the order of the branch, and adds up.
#[test]
fn a_schedule_is_one_loss_of_its_branch() {
    let losses = vec![
        Loss::EntryRounded {
            area: 2e-3,
            radius: 0.008,
            law: Default::default(),
        },
        Loss::Schedule {
            roughness: 5e-5,
            stations: vec![
                station(0.0, 2e-3),
                station(0.1, 1.4e-3),
                station(0.2, 1.1e-3),
                station(0.3, 1.2e-3),
            ],
            bends: Vec::new(),
            law: Default::default(),
        },
    ];
    let answer = answer(&runner(losses));
    let solved = solved(&answer, Draw::BenchAllOpen);
    let runner = &solved.branches[1];
    let labels: Vec<&str> = runner
        .losses
        .iter()
        .map(|loss| loss.label.as_str())
        .collect();
    assert_eq!(labels[..2], ["rounded entry", "section schedule"]);
    let path = &solved.paths[0];
    let sum: f64 = path.items.iter().map(|item| item.fall).sum();
    assert!((sum / path.fall - 1.0).abs() < 1e-9);
}

#[test]
fn bad_lists_are_refused_with_row_and_reason() {
    let refuse = |loss: Value, kind: Kind, field: &str| {
        let mut study = serde_json::to_value(runner(vec![typed(1.0, 1e-3)])).expect("a study");
        study["network"]["branches"][1]["losses"] = json!([loss]);
        let errors = read_value(&study).expect_err("should be refused");
        let told = errors
            .iter()
            .any(|error| error.kind == kind && error.element == "runner" && error.field == field);
        assert!(told, "{kind:?} {field} is not in {errors:#?}");
    };
    let row = |at: f64, area: f64| json!({"at": at, "area": area});
    let list = |rows: Value| json!({"kind": "schedule", "roughness": 1e-5, "stations": rows});
    refuse(
        list(json!([row(0.0, 1e-3), row(0.1, 0.0)])),
        Kind::OutOfBounds,
        "losses[0].stations[1].area",
    );
    refuse(
        list(json!([row(0.0, 1e-3), row(0.2, 1e-3), row(0.1, 1e-3)])),
        Kind::Contradiction,
        "losses[0].stations[2].at",
    );
    refuse(
        list(json!([{"at": 0.0}, row(0.1, 1e-3)])),
        Kind::Missing,
        "losses[0].stations[0].area",
    );
    refuse(list(json!([])), Kind::Missing, "losses[0].stations");
    refuse(
        list(json!([row(0.0, 1e-3)])),
        Kind::Missing,
        "losses[0].stations",
    );
    refuse(
        list(json!([row(0.1, 1e-3), row(0.1, 2e-3)])),
        Kind::Missing,
        "losses[0].stations",
    );
    refuse(list(json!(["a"])), Kind::WrongType, "losses[0].stations[0]");
    let mut bent = list(json!([row(0.0, 1e-3), row(0.1, 1e-3)]));
    bent["bends"] = json!([{"at": 0.2, "angle": 1.0, "radius": 0.05}]);
    refuse(bent, Kind::Contradiction, "losses[0].bends[0].at");
    // A step between two stations at one place is a sudden change, and right.
    let study = runner(vec![Loss::Schedule {
        roughness: 1e-5,
        stations: vec![
            station(0.0, 1e-3),
            station(0.1, 1e-3),
            station(0.1, 2e-3),
            station(0.2, 2e-3),
        ],
        bends: Vec::new(),
        law: Default::default(),
    }]);
    solve(&study).expect("a valid study");
}
