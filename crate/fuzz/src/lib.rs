//! What is promised of any text that is given to the gate, and of any study that passes it.

pub mod guard;
pub mod mutate;

use evenport::{Outcome, Study, solve};
use serde_json::Value;

/// Longest time that the gate may take over a text of the fuzzer's size [s].
const GATE_TIME: f64 = 0.05;
/// Longest time that all draws of a small study may take [s].
const SOLVE_TIME: f64 = 10.0;
/// Memory that the gate may need beside so many times its text [bytes].
const GATE_MEMORY: usize = 1 << 20;
/// Parsed JSON is larger than its text: an object with one field has room for eleven, and takes 80 times the
/// eight characters that tell it, beside the list that holds it and grows by doubling.
const TIMES_TEXT: usize = 100;
/// Studies with more branches are left to the tests of speed.
const SMALL: usize = 40;
/// How far a number may be from itself once written and read again, of its size: its last place. JSON is read
/// without the last digit of precision, which would take 14 KiB more on the page.
const LAST_PLACE: f64 = f64::EPSILON;

/// Gives a text to the gate. It answers in time and within its memory; what it lets through can be written
/// and read again, and is the same; what it refuses it gives reasons for, and a study that it finds unfinished
/// is the same once written and read again.
///
/// # Panics
/// When any of that is not so.
pub fn gate(text: &str) -> Option<Study> {
    match guard::within(GATE_TIME, most_memory(text), || {
        evenport::read_unfinished(text)
    }) {
        Ok(study) => {
            let again = evenport::read(&written(&study))
                .unwrap_or_else(|errors| panic!("refused once written again: {errors:#?}"));
            same(&study, &again);
            Some(study)
        }
        Err(refused) => {
            assert!(!refused.errors.is_empty(), "refused without a reason");
            for error in &refused.errors {
                assert!(
                    !error.message.is_empty(),
                    "an error that says nothing: {error:?}"
                );
            }
            if let Some(study) = refused.unfinished {
                let again = match evenport::read_unfinished(&written(&study)) {
                    Ok(study) => study,
                    Err(refused) => *refused.unfinished.expect("unfinished, once written again"),
                };
                same(&study, &again);
            }
            None
        }
    }
}

fn written(study: &Study) -> String {
    serde_json::to_string(study).expect("a study can be written")
}

fn same(study: &Study, again: &Study) {
    assert!(
        alike(&value(study), &value(again)),
        "another study once written again: {}",
        written(study)
    );
}

fn value(study: &Study) -> Value {
    serde_json::to_value(study).expect("a study can be written")
}

/// Whether two documents are the same to the last place of their numbers.
fn alike(one: &Value, other: &Value) -> bool {
    match (one, other) {
        (Value::Number(one), Value::Number(other)) => {
            let (one, other) = (one.as_f64(), other.as_f64());
            one.zip(other)
                .is_some_and(|(one, other)| (one - other).abs() <= LAST_PLACE * one.abs())
        }
        (Value::Array(one), Value::Array(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(one, other)| alike(one, other))
        }
        (Value::Object(one), Value::Object(other)) => {
            one.len() == other.len()
                && one
                    .iter()
                    .zip(other)
                    .all(|((name, one), (like, other))| name == like && alike(one, other))
        }
        _ => one == other,
    }
}

/// Memory that the gate may need for a text [bytes].
#[must_use]
pub fn most_memory(text: &str) -> usize {
    GATE_MEMORY + TIMES_TEXT * text.len()
}

/// Solves what the gate lets through, if it is small. Every draw has an answer with its certificate, or
/// says why it has none.
///
/// # Panics
/// When that is not so, or takes too long.
pub fn solver(text: &str) {
    let Ok(study) = evenport::read(text) else {
        return;
    };
    if study.network.branches.len() > SMALL {
        return;
    }
    let answer = guard::within(SOLVE_TIME, usize::MAX, || solve(&study))
        .unwrap_or_else(|errors| panic!("refused behind the gate: {errors:#?}"));
    for draw in &answer.draws {
        match &draw.outcome {
            Outcome::Solved(solved) => {
                let certificate = solved.certificate;
                assert!(
                    certificate.imbalance <= 1e-10 && certificate.closure <= 1e-9,
                    "{:?}: {certificate:?}",
                    draw.draw
                );
            }
            Outcome::Refused(refusal) => {
                assert!(
                    !refusal.sentence.is_empty(),
                    "{:?} refused without a reason",
                    draw.draw
                );
            }
        }
    }
    serde_json::to_string(&answer).expect("an answer can be written");
}
