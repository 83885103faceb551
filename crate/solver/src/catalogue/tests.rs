//! The catalogue, the gate and the document say the same: every field that serde writes is in the
//! catalogue, and no other, and the gate reads it back.

mod samples;

use std::collections::BTreeSet;

use serde::Serialize;
use serde_json::Value;

use self::samples::{
    CYCLES, FUEL_SETTINGS, JUNCTION_LAWS, MIXINGS, ambient, blower, branch, check, cooler,
    cylinder, engine, fuel, full, losses, nodes, reading, valve,
};
use super::{ChoiceInfo, FieldInfo, KindInfo, catalogue};
use crate::gate::decode;
use crate::study::{
    Bench, Engine, FORMAT, JunctionLaw, Loss, NodeKind, Reference, Running, Settings, Study,
    VERSION,
};

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
    assert_eq!(written_numbers(&cylinder()), listed(catalogue.cylinder));
    assert_eq!(written_numbers(&engine()), listed(catalogue.engine));
    assert_eq!(written_numbers(&branch()), listed(catalogue.branch));
    assert_eq!(written_numbers(&blower()), listed(catalogue.blower.fields));
    assert_eq!(written_numbers(&cooler()), listed(catalogue.cooler.fields));
    assert_eq!(written_numbers(&ambient()), listed(catalogue.ambient));
    assert_eq!(written_numbers(&fuel()), listed(catalogue.fuel));
    assert_eq!(written_numbers(&check()), listed(catalogue.check));
    assert_eq!(
        written_numbers(&reading()),
        listed(catalogue.reading.fields)
    );
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
    for setting in FUEL_SETTINGS {
        let mut other = full.clone();
        other.engine.fuel.setting = setting;
        read_back(&other);
    }
    for mixing in MIXINGS {
        let mut other = full.clone();
        other.coolers[0].mixing = mixing;
        read_back(&other);
    }
    for cycle in CYCLES {
        let mut other = full.clone();
        other.engine.cycle = cycle;
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
    let NodeKind::Port {
        valve: Some(valve), ..
    } = &study.network.nodes[2].kind
    else {
        panic!("a port with a valve was written");
    };
    assert_eq!(valve.discharge_coefficient, Some(0.6));
    assert_eq!(valve.count, 1.0);
    assert!(valve.discharge_table.is_empty());
    assert_eq!((valve.throat_diameter, valve.stem_diameter), (None, None));
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
    same_choices(&JUNCTION_LAWS, catalogue().junction_laws);
}

/// Every loss with every author it may have comes back as it was written, and the first is the default.
#[test]
fn every_author_is_read_back() {
    for sample in losses() {
        let mut written = serde_json::to_value(&sample).expect("a sample is written");
        let name = written_kind(&sample);
        let mut kinds = catalogue().losses.iter();
        let info = kinds.find(|info| info.kind == name).expect("listed");
        for (place, law) in info.laws.iter().enumerate() {
            written["law"] = law.name.into();
            let row = written.as_object().expect("an object");
            let loss = decode::loss_alone(row).expect("nothing is wrong");
            let mut again = serde_json::to_value(&loss).expect("a loss is written");
            assert_eq!(
                again.get("law").is_none(),
                place == 0,
                "{name} {}",
                law.name
            );
            again["law"] = law.name.into();
            assert_eq!(again, written);
        }
    }
}

#[test]
fn choices_of_the_engine_are_listed() {
    same_choices(&FUEL_SETTINGS, catalogue().fuel_settings);
    same_choices(&MIXINGS, catalogue().mixings);
    same_choices(&CYCLES, catalogue().cycles);
}

/// The names that serde writes are those of the catalogue.
fn same_choices<T: Serialize>(choices: &[T], listed: &[ChoiceInfo]) {
    let written = choices.iter().map(|choice| {
        let value = serde_json::to_value(choice).expect("a choice is written");
        value.as_str().expect("as a word").to_owned()
    });
    let known = listed.iter().map(|choice| choice.name.to_owned());
    assert_eq!(
        written.collect::<BTreeSet<String>>(),
        known.collect::<BTreeSet<String>>()
    );
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
        catalogue.valve_curve.fields,
        catalogue.bench,
        catalogue.reading.fields,
        catalogue.running,
        catalogue.ambient,
        catalogue.fuel,
        catalogue.blower.fields,
        catalogue.cooler.fields,
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
