//! The catalogue, the gate and the document say the same: every field that serde writes is in the
//! catalogue, and no other, and the gate reads it back.

use std::collections::BTreeSet;

use serde::Serialize;
use serde_json::Value;

use super::{FieldInfo, KindInfo, catalogue};
use crate::gate::decode;
use crate::study::{
    Bench, Branch, Check, Cylinder, Engine, FORMAT, JunctionLaw, Leg, Loss, Network, Node,
    NodeKind, Reference, Running, Settings, Study, VERSION, Valve, Variant,
};

/// One sample of every loss, with every optional field given.
fn losses() -> Vec<Loss> {
    let area = 1e-3;
    let all = vec![
        Loss::EntrySharp { area },
        Loss::EntryRounded { area, radius: 1e-3 },
        Loss::EntryFlared { area, radius: 1e-3 },
        Loss::EntryReentrant {
            area,
            thickness: 1e-3,
        },
        Loss::Duct {
            area,
            perimeter: Some(0.1),
            length: 0.1,
            roughness: 1e-5,
        },
        Loss::Bend {
            area,
            perimeter: Some(0.1),
            angle: 1.0,
            radius: 0.05,
            roughness: 1e-5,
        },
        Loss::SuddenChange {
            area_from: area,
            area_to: area,
        },
        Loss::GradualChange {
            area_from: area,
            area_to: area,
            length: 0.1,
        },
        Loss::Opening {
            area,
            discharge_coefficient: 0.6,
            area_from: Some(area),
            area_to: Some(area),
        },
        Loss::Throttle {
            diameter: 0.05,
            angle: 1.0,
            closed_angle: 0.1,
            shaft_diameter: 0.005,
            discharge_coefficient: 0.8,
        },
        Loss::Core {
            area,
            fraction: 1.0,
            pressure: 2e5,
            temperature: 300.0,
            flow_1: 0.1,
            drop_1: 100.0,
            flow_2: 0.2,
            drop_2: 300.0,
        },
        Loss::TypedK {
            k: 1.0,
            k_reversed: Some(1.0),
            area,
            origin: "bench".to_owned(),
        },
    ];
    // A new kind does not compile here until it has a sample above.
    for loss in &all {
        match loss {
            Loss::EntrySharp { .. }
            | Loss::EntryRounded { .. }
            | Loss::EntryFlared { .. }
            | Loss::EntryReentrant { .. }
            | Loss::Duct { .. }
            | Loss::Bend { .. }
            | Loss::SuddenChange { .. }
            | Loss::GradualChange { .. }
            | Loss::Opening { .. }
            | Loss::Throttle { .. }
            | Loss::Core { .. }
            | Loss::TypedK { .. } => {}
        }
    }
    all
}

fn valve() -> Valve {
    Valve {
        diameter: 0.03,
        lift: 0.008,
        discharge_coefficient: 0.6,
        count: 1.0,
    }
}

fn check() -> Check {
    Check {
        total_volume: Some(5e-3),
        tolerance: Some(0.05),
    }
}

/// One sample of every node kind, with every optional field given.
fn nodes() -> Vec<NodeKind> {
    let law = JunctionLaw::default();
    let all = vec![
        NodeKind::Source {
            pressure: Some(2e5),
            temperature: Some(300.0),
        },
        NodeKind::Plenum {
            volume: Some(2e-3),
            cad_volume: Some(2e-3),
        },
        NodeKind::Header {
            area: 1e-3,
            regain_dividing: Some(0.5),
            regain_combining: Some(1.0),
            volume: Some(1e-4),
            cad_volume: Some(1e-3),
        },
        NodeKind::Tee {
            area: 1e-3,
            side_area: 1e-3,
            law,
        },
        NodeKind::Wye {
            area: 1e-3,
            side_area: 1e-3,
            angle: 1.0,
            law,
        },
        NodeKind::Joint {},
        NodeKind::Port {
            cylinder: "1".to_owned(),
            valve: Some(valve()),
            cad_section: Some(1e-3),
        },
    ];
    for node in &all {
        match node {
            NodeKind::Source { .. }
            | NodeKind::Plenum { .. }
            | NodeKind::Header { .. }
            | NodeKind::Tee { .. }
            | NodeKind::Wye { .. }
            | NodeKind::Joint {}
            | NodeKind::Port { .. } => {}
        }
    }
    all
}

/// Names of the fields that hold a number when `sample` is written.
fn written_numbers(sample: &impl Serialize) -> BTreeSet<String> {
    let Ok(Value::Object(fields)) = serde_json::to_value(sample) else {
        panic!("a sample is written as an object");
    };
    fields
        .into_iter()
        .filter(|(_, value)| value.is_number())
        .map(|(name, _)| name)
        .collect()
}

fn written_kind(sample: &impl Serialize) -> String {
    let value = serde_json::to_value(sample).expect("a sample is written");
    value["kind"]
        .as_str()
        .expect("a sample names its kind")
        .to_owned()
}

fn listed(fields: &[FieldInfo]) -> BTreeSet<String> {
    fields.iter().map(|field| field.name.to_owned()).collect()
}

fn same_kinds<S: Serialize>(samples: &[S], kinds: &[KindInfo]) {
    let written: BTreeSet<String> = samples.iter().map(written_kind).collect();
    let known: BTreeSet<String> = kinds.iter().map(|kind| kind.kind.to_owned()).collect();
    assert_eq!(written, known);
    for sample in samples {
        let name = written_kind(sample);
        let kind = kinds
            .iter()
            .find(|kind| kind.kind == name)
            .expect("compared above");
        assert_eq!(written_numbers(sample), listed(kind.fields), "{name}");
    }
}

#[test]
fn losses_and_nodes_are_listed_field_by_field() {
    let catalogue = catalogue();
    same_kinds(&losses(), catalogue.losses);
    same_kinds(&nodes(), catalogue.nodes);
    for loss in losses() {
        assert_eq!(loss.kind(), written_kind(&loss));
    }
}

#[test]
fn the_rest_of_the_document_is_listed_field_by_field() {
    let catalogue = catalogue();
    assert_eq!(written_numbers(&valve()), listed(catalogue.valve));
    assert_eq!(written_numbers(&Bench::default()), listed(catalogue.bench));
    assert_eq!(
        written_numbers(&Running::default()),
        listed(catalogue.running)
    );
    assert_eq!(written_numbers(&check()), listed(catalogue.check));
    let cylinder = Cylinder {
        id: "1".to_owned(),
        swept_volume: Some(5e-4),
        bank: None,
    };
    assert_eq!(written_numbers(&cylinder), listed(catalogue.cylinder));
    let engine = Engine {
        speed: Some(100.0),
        volumetric_efficiency: Some(0.9),
        event_angle: Some(4.0),
        charge_exponent: Some(0.5),
        ..Engine::default()
    };
    assert_eq!(written_numbers(&engine), listed(catalogue.engine));
    let branch = Branch {
        id: "a".to_owned(),
        from: "b".to_owned(),
        to: "c".to_owned(),
        from_leg: Some(Leg::Run),
        to_leg: Some(Leg::Side),
        jet_fraction: Some(0.1),
        losses: Vec::new(),
    };
    assert_eq!(written_numbers(&branch), listed(catalogue.branch));
}

/// A study with every field given, none as it is by default. It could not be solved.
fn full() -> Study {
    let text = str::to_owned;
    let laws = JUNCTION_LAWS.map(|law| NodeKind::Tee {
        area: 2e-3,
        side_area: 1e-3,
        law,
    });
    let node = |(place, kind)| Node {
        id: format!("node {place}"),
        kind,
    };
    let network = Network {
        nodes: nodes()
            .into_iter()
            .chain(laws)
            .enumerate()
            .map(node)
            .collect(),
        branches: vec![Branch {
            id: text("way"),
            from: text("here"),
            to: text("there"),
            from_leg: Some(Leg::Run),
            to_leg: Some(Leg::Side),
            jet_fraction: Some(0.1),
            losses: losses(),
        }],
    };
    Study {
        format: text(FORMAT),
        version: VERSION,
        name: text("full"),
        notes: text("of everything"),
        engine: Engine {
            cylinders: vec![Cylinder {
                id: text("1"),
                swept_volume: Some(5e-4),
                bank: Some(text("left")),
            }],
            speed: Some(100.0),
            volumetric_efficiency: Some(0.9),
            reference: Reference::Node { node: text("lid") },
            event_angle: Some(4.0),
            firing_order: vec![text("1")],
            charge_exponent: Some(0.7),
        },
        settings: Settings {
            bench: Bench {
                ambient_pressure: 1e5,
                ambient_temperature: 290.0,
                depression: 5e3,
                blowing: true,
                limit: 0.02,
            },
            running: Running { limit: 0.005 },
            check: check(),
            units: [(text("length"), text("mm"))].into(),
        },
        variants: vec![Variant {
            name: text("other"),
            notes: text("tried"),
            nodes: network.nodes.clone(),
            branches: network.branches.clone(),
            removed: vec![text("way")],
        }],
        network,
    }
}

#[test]
fn the_gate_reads_back_what_serde_writes() {
    let read_back = |study: &Study| {
        let value = serde_json::to_value(study).expect("a study is written");
        assert_eq!(
            decode::study(value.as_object().expect("an object")).as_ref(),
            Some(study)
        );
    };
    let full = full();
    read_back(&full);
    for reference in [Reference::Ambient, Reference::Ports] {
        let mut other = full.clone();
        other.engine.reference = reference;
        read_back(&other);
    }
}

#[test]
fn what_is_left_out_is_as_by_default() {
    let document = serde_json::json!({
        "format": FORMAT, "version": VERSION, "name": "bare", "network": {
            "nodes": [
                {"id": "lid", "kind": "source"},
                {"id": "tee", "kind": "tee", "area": 1e-3, "sideArea": 5e-4},
                {"id": "port", "kind": "port", "cylinder": "1", "valve": {
                    "diameter": 0.03, "lift": 0.008, "dischargeCoefficient": 0.6}}
            ],
            "branches": [{"id": "way", "from": "lid", "to": "port", "losses": [
                {"kind": "duct", "area": 1e-3, "length": 0.1, "roughness": 1e-5},
                {"kind": "typedK", "k": 1.0, "area": 1e-3}]}]
        }
    });
    let study = decode::study(document.as_object().expect("an object")).expect("nothing is wrong");
    assert_eq!(study.engine, Engine::default());
    assert_eq!(study.settings, Settings::default());
    assert!(study.notes.is_empty() && study.variants.is_empty());
    let NodeKind::Tee { law, .. } = study.network.nodes[1].kind else {
        panic!("a tee was written");
    };
    assert_eq!(law, JunctionLaw::Bassett2001);
    let port = NodeKind::Port {
        cylinder: "1".to_owned(),
        valve: Some(valve()),
        cad_section: None,
    };
    assert_eq!(study.network.nodes[2].kind, port);
    let branch = &study.network.branches[0];
    assert_eq!(
        (branch.from_leg, branch.to_leg, branch.jet_fraction),
        (None, None, None)
    );
    let [duct, typed] = [
        Loss::Duct {
            area: 1e-3,
            perimeter: None,
            length: 0.1,
            roughness: 1e-5,
        },
        Loss::TypedK {
            k: 1.0,
            k_reversed: None,
            area: 1e-3,
            origin: String::new(),
        },
    ];
    assert_eq!(branch.losses, [duct, typed]);
}

const JUNCTION_LAWS: [JunctionLaw; 5] = [
    JunctionLaw::Bassett2001,
    JunctionLaw::Idelchik,
    JunctionLaw::Rennels2012,
    JunctionLaw::Gardel1957,
    JunctionLaw::CraneTp410,
];

#[test]
fn junction_laws_are_listed() {
    for law in JUNCTION_LAWS {
        match law {
            JunctionLaw::Bassett2001
            | JunctionLaw::Idelchik
            | JunctionLaw::Rennels2012
            | JunctionLaw::Gardel1957
            | JunctionLaw::CraneTp410 => {}
        }
    }
    let written: BTreeSet<String> = JUNCTION_LAWS
        .iter()
        .map(|law| {
            serde_json::to_value(law)
                .unwrap()
                .as_str()
                .unwrap()
                .to_owned()
        })
        .collect();
    let known: BTreeSet<String> = catalogue()
        .junction_laws
        .iter()
        .map(|choice| choice.name.to_owned())
        .collect();
    assert_eq!(written, known);
}

#[test]
fn defaults_lie_inside_their_bounds_and_names_are_said_once() {
    let catalogue = catalogue();
    let kinds = catalogue.losses.iter().chain(catalogue.nodes);
    let groups = kinds.map(|kind| kind.fields).chain([
        catalogue.branch,
        catalogue.engine,
        catalogue.cylinder,
        catalogue.valve,
        catalogue.bench,
        catalogue.running,
        catalogue.check,
    ]);
    for fields in groups {
        assert_eq!(listed(fields).len(), fields.len());
        for field in fields {
            assert!(field.minimum < field.maximum, "{}", field.name);
            assert!(
                !field.label.is_empty() && !field.help.is_empty(),
                "{}",
                field.name
            );
            if let Some(default) = field.default {
                assert!(
                    field.minimum <= default && default <= field.maximum,
                    "{}",
                    field.name
                );
            } else {
                assert!(
                    !field.required,
                    "{} must be given, so a new row needs a value",
                    field.name
                );
            }
        }
    }
}
