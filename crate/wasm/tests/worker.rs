//! The binding as the page uses it: in a worker of a real browser.
#![cfg(target_arch = "wasm32")]

use evenport_wasm::{answer, causes, deviations, figures, laws, range, read, solve, tell, version};
use js_sys::{Array, Float64Array, Function, JSON, JsString, Object, Reflect};
use serde::Serialize;
use serde_json::Value;
use wasm_bindgen::prelude::*;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_dedicated_worker);

/// One plenum, two runners, the second one longer.
const STUDY: &str = r#"{
    "format": "evenport-study", "version": 1, "name": "two runners",
    "engine": {"cylinders": [{"id": "1"}, {"id": "2"}]},
    "network": {
        "nodes": [
            {"id": "inlet", "kind": "source"},
            {"id": "lid", "kind": "plenum"},
            {"id": "port 1", "kind": "port", "cylinder": "1"},
            {"id": "port 2", "kind": "port", "cylinder": "2"}
        ],
        "branches": [
            {"id": "throat", "from": "inlet", "to": "lid", "losses": [
                {"kind": "entrySharp", "area": 4e-3}]},
            {"id": "runner 1", "from": "lid", "to": "port 1", "losses": [
                {"kind": "entryRounded", "area": 1.2e-3, "radius": 6e-3},
                {"kind": "duct", "area": 1.2e-3, "length": 0.1, "roughness": 5e-6}]},
            {"id": "runner 2", "from": "lid", "to": "port 2", "losses": [
                {"kind": "entryRounded", "area": 1.2e-3, "radius": 6e-3},
                {"kind": "duct", "area": 1.2e-3, "length": 0.3, "roughness": 5e-6}]}
        ]
    }
}"#;

/// All draws.
fn whole() -> JsValue {
    JsValue::from_str("whole")
}

fn object(text: &str) -> JsValue {
    JSON::parse(text).expect("the test's own text is JSON")
}

fn field(object: &JsValue, name: &str) -> JsValue {
    Reflect::get(object, &name.into()).expect("the reply is an object")
}

/// A property of a node, a branch or a loss, by the way to it: `network.branches.1.losses.0`.
fn inside(object: &JsValue, way: &str) -> JsValue {
    way.split('.')
        .fold(object.clone(), |object, name| field(&object, name))
}

fn set(object: &JsValue, way: &str, name: &str, value: &JsValue) {
    assert!(
        Reflect::set(&inside(object, way), &name.into(), value).expect("the study is an object")
    );
}

/// A reply as JSON, which holds nothing but plain objects, lists, texts, numbers and null.
fn json(reply: Result<JsValue, JsError>) -> Value {
    let Ok(reply) = reply else {
        panic!("the binding threw")
    };
    let text: String = JSON::stringify(&reply).expect("the reply is plain").into();
    serde_json::from_str(&text).expect("the browser writes JSON")
}

/// The solver's own value as the browser writes it, which has one kind of number only.
fn written(value: &impl Serialize) -> Value {
    let text = serde_json::to_string(value).expect("documents are JSON");
    json(Ok(object(&text)))
}

/// Element and field of every error in a reply that must list some.
fn places(reply: &Value) -> Vec<(String, String)> {
    assert_eq!(reply["kind"], "wrong", "{reply}");
    let errors = reply["errors"].as_array().expect("a list of errors");
    assert!(!errors.is_empty());
    let text = |error: &Value, name: &str| error[name].as_str().expect("a text").to_owned();
    errors
        .iter()
        .map(|error| (text(error, "element"), text(error, "field")))
        .collect()
}

#[wasm_bindgen_test]
fn a_study_comes_back_as_the_solver_answers_it() {
    let reply = json(solve(&object(STUDY), &whole()));
    assert_eq!(reply["kind"], "solved", "{reply}");
    let study = evenport::read(STUDY).expect("the study is right");
    let answer = evenport::solve(&study).expect("the study is right");
    assert!(reply["answer"] == written(&answer), "{reply}");
    assert!(!answer.draws.is_empty());
}

#[wasm_bindgen_test]
fn the_time_is_taken_from_the_worker() {
    let reply = json(solve(&object(STUDY), &whole()));
    let elapsed = reply["elapsedMs"].as_f64().expect("a time");
    assert!((0.0..20_000.0).contains(&elapsed), "{elapsed}");
}

#[wasm_bindgen_test]
fn the_parts_of_an_answer_are_those_of_the_whole() {
    let draws = |part: &str| json(solve(&object(STUDY), &object(part)))["answer"]["draws"].clone();
    let whole = draws(r#""whole""#);
    // The engine is not complete, so what stands first is a port at a time on the bench.
    for first in [
        r#""headline""#,
        r#"{"first": "running"}"#,
        r#"{"first": "benchOneAtATime"}"#,
    ] {
        assert_eq!(draws(first), serde_json::json!([whole[0]]), "{first}");
    }
    assert_eq!(
        draws(r#"{"first": "benchAllOpen"}"#),
        serde_json::json!([whole[1]])
    );
    assert_eq!(
        draws(r#"{"rest": "benchAllOpen"}"#),
        serde_json::json!([whole[0]])
    );
    assert_eq!(
        draws(r#"{"rest": "benchOneAtATime"}"#),
        serde_json::json!([whole[1]])
    );
    for none in [
        "5",
        r#""half""#,
        "{}",
        r#"{"first": "later"}"#,
        r#"{"first": "running", "rest": "running"}"#,
    ] {
        assert!(solve(&object(STUDY), &object(none)).is_err(), "{none}");
    }
}

/// A range comes in parts, each with the number of all its speeds.
#[wasm_bindgen_test]
fn a_range_in_parts_is_the_solvers_own() {
    let text = include_str!("../../../examples/leaky_lid/network.json");
    let study = evenport::read(text).expect("the example is valid");
    let speeds = evenport::speeds(&study);
    let reply = json(range(&object(text), 10, 3));
    assert_eq!(reply["kind"], "solved");
    assert_eq!(reply["of"], speeds.len());
    let points = evenport::speed_range(&study, &speeds[10..13]).expect("a valid study");
    assert_eq!(reply["points"], written(&points));
    let beyond = json(range(&object(text), 60, 3));
    assert_eq!(beyond["points"], written(&[(); 0]));
    let wrong = json(range(&JsValue::from_str("no study"), 0, 1));
    assert_eq!(wrong["kind"], "wrong");
    // Two runners without an engine have no range.
    let none = json(range(&object(STUDY), 0, 10));
    assert_eq!(
        (&none["kind"], &none["of"]),
        (&Value::from("solved"), &Value::from(0))
    );
}

/// Two runners as a list of two versions.
fn twice() -> JsValue {
    Array::of2(&object(STUDY), &object(STUDY)).into()
}

const WORLDS: &str =
    r#"{"draw": "benchAllOpen", "seed": 3, "split": "asStated", "first": 5, "count": 4}"#;

#[wasm_bindgen_test]
fn paired_draws_are_the_solvers_own() {
    let study = evenport::read(STUDY).expect("a valid study");
    let versions = [study.clone(), study];
    let worlds = evenport::read_worlds(WORLDS).expect("worlds");
    let own = evenport::deviations(&versions, &worlds).expect("valid versions");
    let reply = deviations(&twice(), &object(WORLDS)).ok();
    let reply = reply.expect("the binding does not throw");
    let found = Float64Array::from(field(&reply, "deviations"));
    assert_eq!(found.to_vec(), own);
    assert_eq!(
        json(tell(&own, 2, 2, 0.9)),
        written(&evenport::tell(&own, 2, 2, 0.9))
    );
    let pairs = evenport::pair_causes(&versions, &worlds).expect("valid versions");
    let reply = json(causes(&twice(), &object(WORLDS)));
    assert_eq!(reply["pairs"], written(&pairs));
    let wrong = json(deviations(
        &Array::of1(&JsValue::NULL).into(),
        &object(WORLDS),
    ));
    assert_eq!(wrong["kind"], "wrong");
    assert!(deviations(&twice(), &object("{}")).is_err());
}

#[wasm_bindgen_test]
fn either_module_gives_the_same_answer() {
    let reply = json(answer(&object(STUDY)));
    assert_eq!(
        reply["answer"],
        json(solve(&object(STUDY), &whole()))["answer"]
    );
    assert_eq!(json(answer(&JsValue::NULL))["kind"], "wrong");
}

#[wasm_bindgen_test]
fn figures_are_those_of_the_answer() {
    let draws = object(r#"["benchAllOpen", "running"]"#);
    let list = Array::of2(&object(STUDY), &JsValue::from_str("no study"));
    let reply = json(figures(&list, &draws));
    let answer = json(solve(&object(STUDY), &whole()));
    let all_open = answer["answer"]["draws"].as_array().expect("draws");
    let all_open = all_open.iter().find(|draw| draw["draw"] == "benchAllOpen");
    let solved = &all_open.expect("the draw")["outcome"];
    let near = |one: &Value, other: &Value| {
        let (one, other) = (
            one.as_f64().expect("a number"),
            other.as_f64().expect("a number"),
        );
        assert!((one - other).abs() <= 1e-9 * other.abs(), "{one} {other}");
    };
    near(&reply[0][0]["spread"], &solved["spread"]);
    near(&reply[0][0]["total"], &solved["total"]);
    near(&reply[0][0]["shares"][1], &solved["cylinders"][1]["share"]);
    assert_eq!(reply[0][1]["kind"], "incomplete");
    assert_eq!(reply[1][0]["kind"], "wrong");
    assert!(figures(&list, &object(r#"["crank"]"#)).is_err());
}

#[wasm_bindgen_test]
fn a_read_study_is_solved_like_its_text() {
    let study = read(STUDY).map(|reply| field(&reply, "study"));
    let Ok(study) = study else {
        panic!("the binding threw")
    };
    assert_eq!(
        json(solve(&study, &whole()))["answer"],
        json(solve(&object(STUDY), &whole()))["answer"]
    );
}

#[wasm_bindgen_test]
fn replies_are_plain_objects() {
    let reply = solve(&object(STUDY), &whole())
        .ok()
        .expect("the binding does not throw");
    let ours = Object::get_prototype_of(&reply);
    assert_eq!(
        ours,
        Object::get_prototype_of(&Object::new()),
        "not a Map: the page reads properties"
    );
    assert!(Array::is_array(&inside(&reply, "answer.draws")));
}

#[wasm_bindgen_test]
fn a_refused_draw_comes_back_as_refused() {
    let study = object(STUDY);
    for cylinder in ["0", "1"] {
        let way = format!("engine.cylinders.{cylinder}");
        set(&study, &way, "sweptVolume", &5e-4.into());
    }
    set(&study, "engine", "speed", &150.into());
    set(&study, "engine", "volumetricEfficiency", &0.9.into());
    set(&study, "network.nodes.0", "pressure", &101_325.into());
    set(&study, "network.nodes.0", "temperature", &293.into());
    // A hundredth of what the engine needs.
    set(&study, "network.branches.0.losses.0", "area", &4e-5.into());
    let reply = json(solve(&study, &whole()));
    let outcome = &reply["answer"]["draws"][0]["outcome"];
    assert_eq!(outcome["kind"], "refused", "{outcome}");
    assert_eq!(outcome["elements"][0], "throat", "{outcome}");
}

#[wasm_bindgen_test]
fn errors_come_back_all_at_once_with_their_places() {
    let text =
        STUDY
            .replacen("4e-3", "-4e-3", 1)
            .replacen("\"length\": 0.3", "\"length\": \"long\"", 1);
    let expected = evenport::read(&text).expect_err("the study is wrong");
    let places: Vec<_> = expected
        .iter()
        .map(|error| (error.element.as_str(), error.field.as_str()))
        .collect();
    assert_eq!(
        places,
        [
            ("throat", "losses[0].area"),
            ("runner 2", "losses[1].length")
        ]
    );
    assert_eq!(json(read(&text))["errors"], written(&expected));
    assert_eq!(
        json(solve(&object(&text), &whole()))["errors"],
        written(&expected)
    );
}

#[wasm_bindgen_test]
fn numbers_that_are_not_finite_are_wrong_and_never_not_given() {
    let way = "network.branches.1.losses.1";
    for number in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        // A number that must be given, one that may be left out.
        for name in ["length", "perimeter"] {
            let study = object(STUDY);
            set(&study, way, name, &number.into());
            let place = ("runner 1".to_owned(), format!("losses[1].{name}"));
            assert_eq!(places(&json(solve(&study, &whole()))), [place]);
        }
        // Where a text belongs, or a list.
        for (way, name) in [("network.nodes.0", "id"), ("engine", "firingOrder")] {
            let study = object(STUDY);
            set(&study, way, name, &number.into());
            places(&json(solve(&study, &whole())));
        }
    }
}

#[wasm_bindgen_test]
fn undefined_is_not_given() {
    let may_be_left_out = object(STUDY);
    set(
        &may_be_left_out,
        "network.branches.1.losses.1",
        "perimeter",
        &JsValue::UNDEFINED,
    );
    assert_eq!(json(solve(&may_be_left_out, &whole()))["kind"], "solved");
    let must_be_given = object(STUDY);
    set(
        &must_be_given,
        "network.branches.1.losses.1",
        "length",
        &JsValue::UNDEFINED,
    );
    let reply = json(solve(&must_be_given, &whole()));
    assert_eq!(reply["errors"][0]["kind"], "missing", "{reply}");
}

#[wasm_bindgen_test]
fn what_no_file_could_hold_is_wrong_and_throws_nothing() {
    let contains_itself = object(STUDY);
    set(
        &contains_itself,
        "network.branches.0",
        "losses",
        &contains_itself,
    );
    let thrower = Closure::<dyn Fn() -> Result<JsValue, JsValue>>::new(|| Err("no".into()));
    let throws_when_written = object(STUDY);
    set(&throws_when_written, "network", "toJSON", thrower.as_ref());
    let shapeless = [
        contains_itself,
        throws_when_written,
        JsValue::UNDEFINED,
        JsValue::NULL,
        JsValue::from(f64::NAN),
        JsValue::from("study"),
        JsValue::symbol(Some("study")),
        JsValue::bigint_from_str("12"),
        Array::new().into(),
        Object::new().into(),
        Function::new_no_args("").into(),
    ];
    for object in shapeless {
        places(&json(solve(&object, &whole())));
    }
}

#[wasm_bindgen_test]
fn text_of_any_length_and_depth_ends_as_a_list() {
    for text in ["", "x", "nul", "\u{0}", "{\"format\": \"evenport-study\""] {
        places(&json(read(text)));
    }
    places(&json(read(&" ".repeat(30_000_000))));
    places(&json(read(&"[".repeat(1_000_000))));
    places(&json(read(&"{\"network\":".repeat(100_000))));
    let deep = (0..20_000).fold(JsValue::NULL, |inner, _| Array::of1(&inner).into());
    places(&json(solve(&deep, &whole())));
    let long = object(STUDY);
    set(
        &long,
        "network.nodes.0",
        "id",
        &JsString::from("x").repeat(30_000_000),
    );
    places(&json(solve(&long, &whole())));
}

#[wasm_bindgen_test]
fn the_catalogue_and_the_version_are_the_solvers() {
    assert!(json(laws()) == written(&evenport::catalogue()));
    assert!(!evenport::catalogue().losses.is_empty());
    assert_eq!(version(), evenport::VERSION_TEXT);
}
