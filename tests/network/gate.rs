//! The gate: whatever comes from outside ends as a study or as the list of all that is wrong with it.

use evenport::{StudyErrorKind, read, read_unfinished};
use proptest::prelude::*;
use serde_json::{Value, json};

fn good() -> Value {
    serde_json::from_str(include_str!("../../examples/inline_log/network.json"))
        .expect("the example is JSON")
}

fn wrong(change: impl FnOnce(&mut Value)) -> Vec<(StudyErrorKind, String, String)> {
    let mut study = good();
    change(&mut study);
    match read(&study.to_string()) {
        Ok(_) => Vec::new(),
        Err(errors) => errors
            .into_iter()
            .map(|error| (error.kind, error.element, error.field))
            .collect(),
    }
}

fn says(
    found: &[(StudyErrorKind, String, String)],
    kind: StudyErrorKind,
    element: &str,
    field: &str,
) {
    let wanted = (kind, element.to_owned(), field.to_owned());
    assert!(found.contains(&wanted), "{wanted:?} not in {found:?}");
}

#[test]
fn everything_wrong_is_told_at_once_with_its_row_and_field() {
    let found = wrong(|study| {
        study["network"]["branches"][1]["losses"][0]["area"] = json!(-1.0);
        study["network"]["branches"][1]["losses"][0]["length"] = json!("long");
        study["network"]["branches"][2]["losses"][0]["kind"] = json!("magic");
        study["network"]["nodes"][1]["area"] = Value::Null;
        study["engine"]["speed"] = json!(1e12);
    });
    let row = good()["network"]["branches"][1]["id"]
        .as_str()
        .unwrap_or_default()
        .to_owned();
    says(&found, StudyErrorKind::OutOfBounds, &row, "losses[0].area");
    says(&found, StudyErrorKind::WrongType, &row, "losses[0].length");
    says(
        &found,
        StudyErrorKind::UnknownChoice,
        "run 2",
        "losses[0].kind",
    );
    says(&found, StudyErrorKind::Missing, "log 1", "area");
    says(&found, StudyErrorKind::OutOfBounds, "engine", "speed");
}

#[test]
fn a_study_in_the_middle_of_an_edit_comes_back_with_its_errors_whole() {
    let mut study = good();
    study["network"]["branches"][1]["losses"][0]["area"] = json!(-1.0);
    study["network"]["branches"][2]["id"] = json!("");
    study["network"]["branches"][3]["losses"] = json!([]);
    study["network"]["nodes"][2]["id"] = study["network"]["nodes"][1]["id"].clone();
    let refused = read_unfinished(&study.to_string()).expect_err("it is wrong");
    let unfinished = refused.unfinished.expect("it is a study all the same");
    let again = serde_json::to_value(*unfinished).expect("a study can be written");
    for way in ["/network/branches", "/network/nodes", "/engine/cylinders"] {
        assert_eq!(again.pointer(way), study.pointer(way), "{way}");
    }
}

/// What the page would lose if it went on with such a document.
#[test]
fn no_study_is_made_of_a_document_that_holds_what_no_study_has() {
    let changes: [fn(&mut Value); 5] = [
        |study| study["engine"]["speed"] = json!("fast"),
        |study| study["network"]["colour"] = json!("red"),
        |study| study["network"]["branches"][2]["losses"][0]["kind"] = json!("magic"),
        |study| study["network"]["nodes"][1]["area"] = Value::Null,
        |study| study["version"] = json!(2),
    ];
    for (place, change) in changes.into_iter().enumerate() {
        let mut study = good();
        change(&mut study);
        let refused = read_unfinished(&study.to_string()).expect_err("it is wrong");
        assert_eq!(refused.unfinished, None, "change {place}");
    }
}

#[test]
fn a_loss_takes_the_authors_of_its_own_kind_only() {
    let bend = |law: Value| json!({"kind": "bend", "area": 1e-3, "angle": 1.0, "radius": 0.05, "roughness": 1e-5, "law": law});
    let with = |loss: Value| wrong(|study| study["network"]["branches"][2]["losses"][0] = loss);
    assert_eq!(with(bend(json!("craneTp410"))), []);
    for none in [json!("swamee2008"), json!("nobody"), json!(3)] {
        let found = with(bend(none));
        says(
            &found,
            StudyErrorKind::UnknownChoice,
            "run 2",
            "losses[0].law",
        );
    }
    let duct =
        json!({"kind": "duct", "area": 1e-3, "length": 0.1, "roughness": 1e-5, "law": "idelchik"});
    says(
        &with(duct),
        StudyErrorKind::UnknownField,
        "run 2",
        "losses[0].law",
    );
}

#[test]
fn what_is_wrong_inside_a_variant_is_told() {
    let found = wrong(|study| {
        study["variants"] = json!([
            {"name": "first", "notes": 5, "removed": ["run 1", 2]},
            {"name": "second", "removed": "run 1", "nodes": [{"id": "lid", "kind": "bucket"}]}
        ]);
    });
    says(&found, StudyErrorKind::WrongType, "variant 1", "notes");
    says(&found, StudyErrorKind::WrongType, "variant 1", "removed[1]");
    says(&found, StudyErrorKind::WrongType, "variant 2", "removed");
    says(&found, StudyErrorKind::UnknownChoice, "lid", "kind");
}

#[test]
fn unknown_versions_and_formats_are_refused_by_name() {
    says(
        &wrong(|study| study["version"] = json!(99)),
        StudyErrorKind::UnknownVersion,
        "",
        "version",
    );
    says(
        &wrong(|study| study["format"] = json!("other")),
        StudyErrorKind::UnknownFormat,
        "",
        "format",
    );
}

#[test]
fn ids_and_ends_are_checked() {
    let found = wrong(|study| {
        study["network"]["branches"][0]["to"] = json!("nowhere");
        study["network"]["branches"][1]["id"] = json!("runner 2");
        study["network"]["nodes"][2]["cylinder"] = json!("9");
    });
    says(&found, StudyErrorKind::UnknownId, "run 1", "to");
    says(&found, StudyErrorKind::DuplicateId, "runner 2", "id");
    says(&found, StudyErrorKind::UnknownId, "port 1", "cylinder");
}

#[test]
fn names_are_checked_whatever_else_is_wrong_and_told_once() {
    let found = wrong(|study| {
        study["network"]["branches"][0]["to"] = json!("nowhere");
        study["network"]["nodes"][1]["kind"] = json!("bucket");
        study["network"]["nodes"][2]["id"] = json!("port 2");
    });
    says(&found, StudyErrorKind::UnknownId, "run 1", "to");
    says(&found, StudyErrorKind::DuplicateId, "port 2", "id");
    let nowhere = found.iter().filter(|(_, element, _)| element == "run 1");
    assert_eq!(nowhere.count(), 1, "{found:?}");
}

#[test]
fn values_from_cad_are_checked_like_any_other() {
    let found = wrong(|study| {
        study["settings"]["check"] = json!({"totalVolume": "5 L", "tolerance": 0.0, "spare": 1});
        study["network"]["nodes"][1]["volume"] = json!(-1e-4);
        study["network"]["nodes"][1]["cadVolume"] = json!(0.0);
        study["network"]["nodes"][2]["cadSection"] = json!(-1e-3);
        // What a number that is not finite becomes in JSON.
        study["network"]["nodes"][4]["cadSection"] = Value::Null;
        study["network"]["nodes"][0]["cadVolume"] = json!(1e-3);
    });
    let cad = [
        (StudyErrorKind::WrongType, "settings", "check.totalVolume"),
        (StudyErrorKind::OutOfBounds, "settings", "check.tolerance"),
        (StudyErrorKind::UnknownField, "settings", "check.spare"),
        (StudyErrorKind::OutOfBounds, "log 1", "volume"),
        (StudyErrorKind::OutOfBounds, "log 1", "cadVolume"),
        (StudyErrorKind::OutOfBounds, "port 1", "cadSection"),
        (StudyErrorKind::OutOfBounds, "port 2", "cadSection"),
        (StudyErrorKind::UnknownField, "blower", "cadVolume"),
    ];
    for (kind, element, field) in cad {
        says(&found, kind, element, field);
    }
    assert_eq!(found.len(), cad.len(), "{found:?}");
    says(
        &wrong(|study| study["settings"]["check"] = json!([])),
        StudyErrorKind::WrongType,
        "settings",
        "check",
    );
    let found = wrong(|study| {
        study["settings"]["check"] = json!({"totalVolume": 5e-3});
        study["network"]["nodes"][1]["volume"] = json!(0.0);
        study["network"]["nodes"][2]["cadSection"] = json!(1e-3);
    });
    assert_eq!(found, []);
}

#[test]
fn a_port_without_air_is_named() {
    let found = wrong(|study| {
        study["network"]["branches"]
            .as_array_mut()
            .expect("branches")
            .retain(|branch| branch["id"] != "runner 3");
    });
    says(&found, StudyErrorKind::Unreachable, "port 3", "");
}

#[test]
fn an_entry_loss_on_a_run_leg_is_counted_twice() {
    let found = wrong(|study| {
        study["network"]["branches"][2]["losses"] = json!([{"kind": "entrySharp", "area": 1e-3}])
    });
    says(&found, StudyErrorKind::Misplaced, "run 2", "losses[0]");
}

#[test]
fn huge_files_and_ten_thousand_branches_are_told_not_suffered() {
    for size in [(1 << 20) + 1, 50 << 20] {
        let errors = read(&" ".repeat(size)).expect_err("too large");
        assert_eq!(errors[0].kind, StudyErrorKind::TooLarge);
    }
    let found = wrong(|study| {
        study["network"]["branches"] = Value::Array(vec![json!({"id": "b"}); 10_000]);
    });
    says(&found, StudyErrorKind::TooMany, "", "branches");
}

#[test]
fn a_name_too_long_to_repeat_in_every_error_is_told_by_its_place() {
    let found = wrong(|study| study["network"]["branches"][1]["id"] = json!("b".repeat(501)));
    says(&found, StudyErrorKind::TooLarge, "branch 2", "id");
    let found = wrong(|study| study["name"] = json!("n".repeat(501)));
    says(&found, StudyErrorKind::TooLarge, "", "name");
    let longest = wrong(|study| study["name"] = json!("n".repeat(500)));
    assert!(longest.is_empty(), "{longest:?}");
}

#[test]
fn of_errors_without_end_a_thousand_are_told_and_that_there_are_more() {
    let found = wrong(|study| {
        for field in 0..1_500 {
            study["engine"][format!("field {field}")] = json!(0);
        }
    });
    assert_eq!(found.len(), 1_000);
    let more = (StudyErrorKind::TooMany, String::new(), String::new());
    assert_eq!(found.last(), Some(&more));
}

#[test]
fn more_charge_coolers_than_any_engine_has_are_told() {
    let found = wrong(|study| study["coolers"] = json!(vec![json!({"id": "a"}); 101]));
    says(&found, StudyErrorKind::TooMany, "", "coolers");
}

#[test]
fn what_was_read_is_written_back_the_same() {
    let study = read(&good().to_string()).expect("the example");
    let again = read(&serde_json::to_string(&study).expect("JSON")).expect("its own JSON");
    assert_eq!(study, again);
}

proptest! {
    /// No text makes the gate panic, and no study that passes makes the solver panic.
    #[test]
    fn damaged_files_end_as_errors_or_answers(place in 0usize..6000, byte in 0u8..128) {
        let mut text = include_str!("../../examples/v8_lid/network.json").as_bytes().to_vec();
        let place = place % text.len();
        text[place] = byte;
        if let Ok(text) = String::from_utf8(text)
            && let Ok(study) = read(&text)
        {
            let _ = evenport::solve(&study);
        }
    }
}
