//! What the gate says of engines whose numbers contradict each other: each with its element and field.

use evenport::{StudyErrorKind as Kind, read_value};
use serde_json::{Value, json};

fn blown() -> Value {
    let text = include_str!("../../../examples/blown_v8/network.json");
    serde_json::from_str(text).expect("the example is JSON")
}

fn twin() -> Value {
    let text = include_str!("../../../examples/twin_feed/network.json");
    serde_json::from_str(text).expect("the example is JSON")
}

fn row<'v>(study: &'v mut Value, list: &str, id: &str) -> &'v mut Value {
    let rows = study["network"][list].as_array_mut().expect("a list");
    let mut rows = rows.iter_mut();
    rows.find(|row| row["id"] == id).expect("in the example")
}

fn branch<'v>(study: &'v mut Value, id: &str) -> &'v mut Value {
    row(study, "branches", id)
}

/// The study is refused with exactly this, or with this among others.
fn refuses(study: &Value, kind: Kind, element: &str, field: &str) {
    let errors = read_value(study).expect_err("should be refused");
    let told = errors
        .iter()
        .any(|error| error.kind == kind && error.element == element && error.field == field);
    assert!(told, "{kind:?} {element} {field} is not in {errors:#?}");
}

#[test]
fn a_blower_that_contradicts_itself_is_refused() {
    let cases: [(&str, Value, Kind, &str); 12] = [
        (
            "boost",
            json!(5e4),
            Kind::Contradiction,
            "blower.driveRatio",
        ),
        ("boost", json!(5e4), Kind::Missing, "blower.boostNode"),
        (
            "boostNode",
            json!("nowhere"),
            Kind::UnknownId,
            "blower.boostNode",
        ),
        (
            "boostNode",
            json!("port 1"),
            Kind::Misplaced,
            "blower.boostNode",
        ),
        (
            "boostNode",
            json!("inlet"),
            Kind::Contradiction,
            "blower.boostNode",
        ),
        (
            "crankPulley",
            json!(0.2),
            Kind::Missing,
            "blower.crankPulley",
        ),
        (
            "displacement",
            json!(0.0),
            Kind::OutOfBounds,
            "blower.displacement",
        ),
        (
            "displacement",
            json!(null),
            Kind::Missing,
            "blower.displacement",
        ),
        (
            "driveRatio",
            json!("two"),
            Kind::WrongType,
            "blower.driveRatio",
        ),
        ("speed", json!(2.0), Kind::UnknownField, "blower.speed"),
        (
            "volumetricEfficiency",
            json!(0.9),
            Kind::Contradiction,
            "blower.volumetricTable",
        ),
        (
            "isentropicTable",
            json!({"speeds": [100.0, 50.0], "values": [0.6, 0.7]}),
            Kind::Contradiction,
            "blower.isentropicTable",
        ),
    ];
    for (name, value, kind, field) in cases {
        let mut study = blown();
        branch(&mut study, "blower")["blower"][name] = value;
        refuses(&study, kind, "blower", field);
    }
}

#[test]
fn tables_are_refused_with_their_fault() {
    for (table, kind, field) in [
        (
            json!({"speeds": [50.0], "values": ["a"]}),
            Kind::WrongType,
            ".values",
        ),
        (
            json!({"speeds": 50.0, "values": [0.9]}),
            Kind::WrongType,
            ".speeds",
        ),
        (json!({"values": [0.9]}), Kind::Missing, ".speeds"),
        (
            json!({"speeds": [50.0], "values": [0.9, 0.8]}),
            Kind::Contradiction,
            "",
        ),
        (
            json!({"speeds": [50.0], "values": [90.0]}),
            Kind::Contradiction,
            "",
        ),
        (
            json!({"speeds": [50.0], "values": [0.9], "rows": 1}),
            Kind::UnknownField,
            ".rows",
        ),
    ] {
        let mut study = blown();
        branch(&mut study, "blower")["blower"]["volumetricTable"] = table.clone();
        refuses(
            &study,
            kind,
            "blower",
            &format!("blower.volumetricTable{field}"),
        );
        let mut study = blown();
        let engine = &mut study["engine"];
        engine
            .as_object_mut()
            .expect("an engine")
            .remove("volumetricEfficiency");
        engine["volumetricTable"] = table;
        refuses(&study, kind, "engine", &format!("volumetricTable{field}"));
    }
    // Referred to room air a boosted engine breathes more than its volume: no fault.
    let mut study = twin();
    let engine = &mut study["engine"];
    engine
        .as_object_mut()
        .expect("an engine")
        .remove("volumetricEfficiency");
    engine["reference"] = json!({"at": "ambient"});
    engine["volumetricTable"] = json!({"speeds": [20.0, 120.0], "values": [1.3, 1.7]});
    read_value(&study).expect("a valid study");
}

#[test]
fn a_blower_in_the_wrong_place_is_refused() {
    let mut study = blown();
    branch(&mut study, "blower")["losses"] = json!([{"kind": "typedK", "k": 1.0, "area": 1e-3}]);
    refuses(&study, Kind::Misplaced, "blower", "losses");

    let mut study = blown();
    branch(&mut study, "blower")["to"] = json!("port 1");
    refuses(&study, Kind::Misplaced, "blower", "to");

    // A way round that is not marked, a mark where there is no way round, a mark without a blower.
    let mut study = blown();
    branch(&mut study, "bypass")["bypass"] = json!(false);
    refuses(&study, Kind::Contradiction, "blower", "blower");
    let mut study = blown();
    branch(&mut study, "lid gap")["bypass"] = json!(true);
    refuses(&study, Kind::Misplaced, "lid gap", "bypass");
    let mut study = twin();
    branch(&mut study, "balance tube")["bypass"] = json!(true);
    refuses(&study, Kind::Misplaced, "balance tube", "bypass");

    let mut study = blown();
    let mut second = branch(&mut study, "blower").clone();
    second["id"] = json!("second");
    let branches = study["network"]["branches"].as_array_mut().expect("a list");
    branches.push(second);
    refuses(&study, Kind::Misplaced, "second", "to");
}

/// With a blower the engine's flow is given by what it draws behind it: ambient air would give it twice.
#[test]
fn a_volumetric_efficiency_before_the_blower_is_refused() {
    for reference in [
        json!({"at": "ambient"}),
        json!({"at": "node", "node": "inlet"}),
    ] {
        let mut study = blown();
        study["engine"]["reference"] = reference;
        refuses(&study, Kind::Contradiction, "engine", "reference");
    }
    let mut study = blown();
    study["engine"]["reference"] = json!({"at": "ports"});
    read_value(&study).expect("a valid study");
}

#[test]
fn sources_and_engines_that_contradict_themselves_are_refused() {
    let node = "left compressor";
    for (name, value, kind, field) in [
        ("pressure", json!(2e5), Kind::Contradiction, "pressure"),
        ("ambient", json!(true), Kind::Contradiction, "pressure"),
        ("boost", json!(7e4), Kind::Contradiction, "boost"),
        ("boostNode", json!(null), Kind::WrongType, "boostNode"),
        ("boostNode", json!("nowhere"), Kind::UnknownId, "boostNode"),
        ("ambient", json!(1), Kind::WrongType, "ambient"),
    ] {
        let mut study = twin();
        row(&mut study, "nodes", node)[name] = value;
        refuses(&study, kind, node, field);
    }
    for (name, value, kind, field) in [
        ("bore", json!(0.09), Kind::Missing, "stroke"),
        ("stroke", json!(0.09), Kind::Missing, "bore"),
        ("cycle", json!("sixStroke"), Kind::UnknownChoice, "cycle"),
        (
            "fuel",
            json!({"setting": "some"}),
            Kind::UnknownChoice,
            "fuel.setting",
        ),
        (
            "fuel",
            json!({"lambda": 0.0}),
            Kind::OutOfBounds,
            "fuel.lambda",
        ),
        ("speedFrom", json!(120.0), Kind::Contradiction, "speedTo"),
        (
            "volumetricTable",
            json!({"speeds": [50.0], "values": [0.9]}),
            Kind::Contradiction,
            "volumetricTable",
        ),
        (
            "volumetricTable",
            json!({"speeds": [50.0], "ratios": [1.0], "values": [0.9]}),
            Kind::Contradiction,
            "volumetricTable",
        ),
    ] {
        let mut study = blown();
        study["engine"][name] = value;
        refuses(&study, kind, "engine", field);
    }
    let mut study = blown();
    study["settings"] = json!({"ambient": {"altitude": 20_000.0}});
    refuses(&study, Kind::OutOfBounds, "settings", "ambient.altitude");
}

#[test]
fn charge_coolers_that_no_core_can_be_are_refused() {
    let cooler = |change: fn(&mut Value)| {
        let mut study = blown();
        change(&mut study["coolers"][0]);
        study
    };
    // 0.45 kg/s of air against so little coolant cannot lose three quarters of the difference.
    let study = cooler(|cooler| cooler["coolantFlow"] = json!(0.05));
    refuses(&study, Kind::Contradiction, "core", "effectiveness");
    let study = cooler(|cooler| cooler["series"] = json!(["core front"]));
    refuses(&study, Kind::Contradiction, "core", "series");
    let study = cooler(|cooler| cooler["series"] = json!(["core front", "core front"]));
    refuses(&study, Kind::Contradiction, "core", "series");
    let study = cooler(|cooler| cooler["mixing"] = json!("stirred"));
    refuses(&study, Kind::UnknownChoice, "core", "mixing");
    let study = cooler(|cooler| cooler["id"] = json!("other"));
    refuses(&study, Kind::UnknownId, "core front", "losses[0].cooler");

    let mut study = blown();
    branch(&mut study, "core front")["losses"][0]["fraction"] = json!(0.6);
    refuses(&study, Kind::Contradiction, "core", "");
    let mut study = blown();
    let passage = branch(&mut study, "core front")["losses"][0].clone();
    branch(&mut study, "core front")["losses"] = json!([passage, passage]);
    refuses(&study, Kind::Misplaced, "core front", "losses[1].cooler");
    let mut study = blown();
    let second = study["coolers"][0].clone();
    study["coolers"]
        .as_array_mut()
        .expect("a list")
        .push(second);
    refuses(&study, Kind::DuplicateId, "core", "id");
    // A drop that falls with the flow, told with the reason as before.
    let mut study = blown();
    branch(&mut study, "core rear")["losses"][0]["drop2"] = json!(900.0);
    refuses(&study, Kind::Contradiction, "core rear", "losses[0]");
}

#[test]
fn valves_that_contradict_themselves_are_refused() {
    let valve = json!({"diameter": 0.034, "lift": 0.009});
    for (name, value, kind, field) in [
        (
            "throatDiameter",
            json!(0.006),
            Kind::Contradiction,
            "valve.stemDiameter",
        ),
        (
            "dischargeTable",
            json!([[0.1, 0.6], [0.05, 0.7]]),
            Kind::Contradiction,
            "valve.dischargeTable",
        ),
        (
            "dischargeTable",
            json!([[0.1, 60.0]]),
            Kind::Contradiction,
            "valve.dischargeTable",
        ),
        (
            "dischargeTable",
            json!([[0.1]]),
            Kind::WrongType,
            "valve.dischargeTable[0]",
        ),
        (
            "dischargeTable",
            json!(0.6),
            Kind::WrongType,
            "valve.dischargeTable",
        ),
    ] {
        let mut study = twin();
        let port = row(&mut study, "nodes", "port 1");
        port["valve"] = valve.clone();
        port["valve"]["stemDiameter"] = json!(0.007);
        port["valve"][name] = value;
        refuses(&study, kind, "port 1", field);
    }
    let mut study = twin();
    let port = row(&mut study, "nodes", "port 1");
    port["valve"] = valve;
    port["valve"]["dischargeTable"] = json!([[0.1, 0.62], [0.3, 0.5]]);
    port["valve"]["dischargeCoefficient"] = json!(0.6);
    refuses(
        &study,
        Kind::Contradiction,
        "port 1",
        "valve.dischargeTable",
    );
    let port = row(&mut study, "nodes", "port 1");
    port["valve"]
        .as_object_mut()
        .expect("a valve")
        .remove("dischargeCoefficient");
    read_value(&study).expect("a valid study");
}
