//! Variants: what each makes of the base, and what the gate says of those that fit nothing.

use evenport::{Study, StudyErrorKind as Kind, read, solve};
use serde_json::{Value, json};

/// A study, and the network that comes of each of its variants; the page is tested against the same.
fn cases() -> Value {
    serde_json::from_str(include_str!("variants.json")).expect("the cases are JSON")
}

fn study() -> Study {
    read(&cases()["study"].to_string()).expect("the cases pass the gate")
}

/// What the gate says of the cases, changed.
fn told(change: impl FnOnce(&mut Value)) -> Vec<(Kind, String, String, String)> {
    let mut study = cases()["study"].take();
    change(&mut study);
    let errors = read(&study.to_string()).err().unwrap_or_default();
    let told =
        |error: evenport::StudyError| (error.kind, error.element, error.field, error.message);
    errors.into_iter().map(told).collect()
}

/// The one thing that is wrong.
fn only(kind: Kind, element: &str, field: &str, message: &str, change: impl FnOnce(&mut Value)) {
    let wanted = (
        kind,
        element.to_owned(),
        field.to_owned(),
        message.to_owned(),
    );
    assert_eq!(told(change), [wanted]);
}

#[test]
fn a_variant_replaces_adds_leaves_out_and_orders_rows() {
    let study = study();
    let networks = cases()["networks"].take();
    for (place, variant) in study.variants.iter().enumerate() {
        let version = study.version(place);
        let network = serde_json::to_value(&version.network).expect("it can be written");
        assert_eq!(network, networks[place], "{}", variant.name);
        assert!(version.variants.is_empty());
    }
    assert_eq!(study.version(study.variants.len()).network, study.network);
}

#[test]
fn a_version_is_solved_like_the_same_network_typed_in() {
    let study = study();
    let solved = |study: &Study| serde_json::to_string(&solve(study).expect("it is right")).ok();
    let mut typed = cases()["study"].take();
    typed["network"] = cases()["networks"][1].take();
    let typed = read(&typed.to_string());
    let typed = typed.expect("nothing that this variant changes is named by the others");
    assert_eq!(
        solved(&study.version(1)),
        solved(&typed.version(usize::MAX))
    );
    assert_ne!(solved(&study.version(1)), solved(&study.version(0)));
}

#[test]
fn every_variant_has_a_name_of_its_own() {
    let renamed =
        |name: &'static str| move |study: &mut Value| study["variants"][2]["name"] = json!(name);
    let message =
        "in variant one runner wider: two variants have this name; give one of them another";
    let twice = renamed("one runner wider");
    only(Kind::DuplicateId, "variant 3", "name", message, twice);
    let message = "in variant variant 3: is empty";
    only(Kind::Missing, "variant 3", "name", message, renamed("  "));
}

#[test]
fn what_is_left_out_is_in_the_base_once_and_not_given_too() {
    let removed = |variant: usize, ids: &'static [&str]| {
        move |study: &mut Value| study["variants"][variant]["removed"] = json!(ids)
    };
    let message = "in variant another feed: feed is left out twice; name it once";
    let twice = removed(3, &["air", "feed", "feed"]);
    only(Kind::DuplicateId, "variant 4", "removed[2]", message, twice);
    let message =
        "in variant another feed: the base has no row called fead, so it cannot be left out";
    let unknown = removed(3, &["air", "feed", "fead"]);
    only(Kind::UnknownId, "variant 4", "removed[2]", message, unknown);
    let message = "in variant one runner wider: run 2 is left out and has a row here too; keep one of the two";
    let both = removed(1, &["run 2"]);
    only(
        Kind::Contradiction,
        "variant 2",
        "removed[0]",
        message,
        both,
    );
}

#[test]
fn an_order_names_rows_of_the_variant_once() {
    let ordered =
        |ids: &'static [&str]| move |study: &mut Value| study["variants"][4]["order"] = json!(ids);
    let message = "in variant a row between: run 2 stands in the order twice; name it once";
    let twice = ordered(&["run 2", "run 2"]);
    only(Kind::DuplicateId, "variant 5", "order[1]", message, twice);
    let message = "in variant a row between: this variant has no row called run 3";
    let unknown = ordered(&["run 2", "run 3"]);
    only(Kind::UnknownId, "variant 5", "order[1]", message, unknown);
}

#[test]
fn what_comes_of_a_variant_is_checked_like_a_base() {
    let message = "in variant a second feed: no node is called air 2";
    only(Kind::UnknownId, "second feed", "from", message, |study| {
        study["variants"][2]["nodes"] = json!([]);
    });
    let message = "in variant a second feed: area is −1, outside 1e-9 to 10 (SI units)";
    only(
        Kind::OutOfBounds,
        "second feed",
        "losses[0].area",
        message,
        |study| {
            study["variants"][2]["branches"][0]["losses"][0]["area"] = json!(-1.0);
        },
    );
}

#[test]
fn what_is_wrong_with_the_base_is_told_once() {
    let told = told(|study| study["engine"]["firingOrder"] = json!(["1", "3"]));
    assert!(
        told.iter().all(|(_, element, ..)| element == "engine"),
        "{told:?}"
    );
    assert!(
        told.iter()
            .all(|(.., message)| !message.contains("variant")),
        "{told:?}"
    );
}

#[test]
fn more_variants_than_anybody_compares_are_refused() {
    let with = |count: usize| {
        told(move |study| {
            let named = |place: usize| json!({"name": format!("variant {place}")});
            study["variants"] = (0..count).map(named).collect();
        })
    };
    assert_eq!(with(64), []);
    let wanted = (
        Kind::TooMany,
        String::new(),
        "variants".to_owned(),
        "has 65 variants, at most 64 are taken".to_owned(),
    );
    assert_eq!(with(65), [wanted]);
}

#[test]
fn many_variants_of_a_very_large_base_are_refused() {
    let with = |count: usize| {
        told(move |study| {
            let twin = study["network"]["branches"][0].clone();
            let branches = study["network"]["branches"].as_array_mut();
            let branches = branches.expect("a list");
            for place in 0..994 {
                let mut branch = twin.clone();
                branch["id"] = json!(format!("twin {place}"));
                branches.push(branch);
            }
            let named = |place: usize| json!({"name": format!("variant {place}")});
            study["variants"] = (0..count).map(named).collect();
        })
    };
    assert_eq!(with(20), []);
    let message =
        "have 42000 rows and losses together, at most 40000 are taken; leave out variants or rows"
            .to_owned();
    let wanted = (Kind::TooMany, String::new(), "variants".to_owned(), message);
    assert_eq!(with(21), [wanted]);
}
