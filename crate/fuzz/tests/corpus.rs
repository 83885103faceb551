//! Every input of the committed corpus keeps every promise; so does a document made as large and as wrong
//! as the gate's own bounds allow.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Instant;

use evenport_fuzz::{gate, guard, most_memory, solver};
use serde_json::{Value, json};

/// Memory is measured of the whole program, so these tests wait for each other.
fn alone() -> MutexGuard<'static, ()> {
    static TURN: Mutex<()> = Mutex::new(());
    TURN.lock().unwrap_or_else(PoisonError::into_inner)
}

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../tests/fuzz")
        .join(name)
}

/// The texts of a folder by name; bytes that are no text never reach the gate.
fn texts(name: &str) -> Vec<(String, String)> {
    let mut found: Vec<_> = fs::read_dir(folder(name))
        .expect("a folder of the corpus")
        .map(|entry| {
            let path = entry.expect("a file of the corpus").path();
            let bytes = fs::read(&path).expect("a file of the corpus");
            let text = String::from_utf8_lossy(&bytes).into_owned();
            (path.display().to_string(), text)
        })
        .collect();
    found.sort();
    assert!(!found.is_empty(), "no corpus in {name}");
    found
}

#[test]
fn the_gate_keeps_its_promises() {
    let _turn = alone();
    for (name, text) in texts("gate").iter().chain(&texts("solver")) {
        println!("{name}");
        gate(text);
    }
}

#[test]
fn the_solver_answers_or_refuses_whatever_the_gate_lets_through() {
    let _turn = alone();
    for (name, text) in texts("solver") {
        println!("{name}");
        assert!(gate(&text).is_some(), "{name} does not pass the gate");
        solver(&text);
    }
    for (name, text) in texts("gate") {
        println!("{name}");
        solver(&text);
    }
}

/// A document that passes, to be made worse.
fn smallest() -> Value {
    let text = fs::read_to_string(folder("gate").join("smallest.json")).expect("the corpus");
    serde_json::from_str(&text).expect("JSON")
}

/// How many errors the gate tells of a document, within its memory and a time that a debug build keeps.
fn told(document: &Value) -> usize {
    let text = document.to_string();
    let started = Instant::now();
    let read = guard::within(2.0, most_memory(&text), || evenport::read(&text));
    let time = started.elapsed().as_secs_f64();
    println!("{} bytes in {time:.3} s", text.len());
    read.map_or_else(|errors| errors.len(), |_| 0)
}

#[test]
fn a_long_name_with_many_errors_does_not_fill_the_memory() {
    let _turn = alone();
    let mut document = smallest();
    let fields = (0..2_000).map(|field| (format!("no field {field}"), json!(0)));
    document["network"]["branches"][0] = Value::Object(fields.collect());
    document["network"]["branches"][0]["id"] = json!("b".repeat(1 << 19));
    assert_eq!(told(&document), 1_000);
    let mut document = smallest();
    document["variants"] = json!([{"name": "v".repeat(1 << 19), "nodes": vec![json!({}); 2_000]}]);
    assert_eq!(told(&document), 1_000);
}

#[test]
fn every_choice_unknown_does_not_fill_the_memory() {
    let _turn = alone();
    let mut document = smallest();
    let losses = vec![json!({"kind": ""}); 200];
    document["network"]["branches"] = vec![json!({"losses": losses}); 425].into();
    assert_eq!(told(&document), 1_000);
}

#[test]
fn errors_of_the_base_in_every_variant_are_compared_in_time() {
    let _turn = alone();
    let mut document = smallest();
    let branch = json!({"id": "b", "from": "room", "to": "room", "losses": []});
    document["network"]["branches"] = vec![branch; 2_000].into();
    let variants = (0..19).map(|place| json!({"name": place.to_string()}));
    document["variants"] = variants.collect();
    assert_eq!(told(&document), 1_000);
}

#[test]
fn passages_of_coolers_are_found_in_time() {
    let _turn = alone();
    let mut document = smallest();
    let core = |cooler: usize| {
        json!({
            "kind": "core", "area": 0.02, "fraction": 0.001, "pressure": 1e5, "temperature": 300.0,
            "flow1": 0.1, "drop1": 200.0, "flow2": 0.2, "drop2": 700.0, "cooler": cooler.to_string(),
        })
    };
    let losses: Vec<Value> = (0..10).map(core).collect();
    let branch = |place: usize| json!({"id": format!("b{place}"), "from": "room", "to": "lid", "losses": losses});
    document["network"]["branches"] = (0..600).map(branch).collect();
    let series: Vec<String> = (0..600).map(|place| format!("b{place}")).collect();
    let cooler = |id: usize| json!({"id": id.to_string(), "coolantTemperature": 300.0, "effectiveness": 0.5, "series": series});
    document["coolers"] = (0..10).map(cooler).collect();
    assert_eq!(told(&document), 1_000);
}

#[test]
fn a_large_base_with_many_variants_is_checked_in_time() {
    let _turn = alone();
    let mut document = smallest();
    let branch = |place: usize| {
        let losses = [json!({"kind": "typedK", "k": 1, "area": 0.001})];
        json!({"id": format!("b{place}"), "from": "room", "to": "lid", "losses": losses})
    };
    let branches = document["network"]["branches"]
        .as_array_mut()
        .expect("a list");
    branches.extend((0..1_200).map(branch));
    let order: Vec<String> = (0..1_200).rev().map(|place| format!("b{place}")).collect();
    let variants = (0..16).map(|place| json!({"name": place.to_string(), "order": order}));
    document["variants"] = variants.collect();
    assert_eq!(told(&document), 0);
}

#[test]
fn the_largest_text_is_refused_or_read_in_time() {
    let _turn = alone();
    let mut document = smallest();
    document["notes"] = json!(vec![json!({"a": 0}); 130_000]);
    assert_eq!(told(&document), 1);
}
