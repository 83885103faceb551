//! The one gate for everything from outside: bytes in, a study or the list of all that is wrong out.
//!
//! `fields` checks every value against the catalogue, `names` that ids are single and ends exist, `decode`
//! makes the study of it, `meaning` checks what the values say together, and `variants` the same of every
//! variant. That is asked of what comes from outside only: an answer is of one version.

pub mod decode;
mod fields;
mod meaning;
mod names;
mod variants;

use serde_json::{Map, Value};

use crate::answer::{Draw, Part};
use crate::error::{StudyError, StudyErrorKind};
use crate::paired::Worlds;
use crate::study::{FORMAT, Study, VERSION};

pub use meaning::check;

/// No study needs more: thirty times a network of 200 branches. A file beyond it is refused before it is parsed
/// [bytes].
const LARGEST_TEXT: usize = 1 << 20;
/// More errors are counted as one: whoever has put these right is told the next, and a document made to be
/// wrong everywhere does not fill the memory.
const MOST_ERRORS: usize = 1_000;
/// Longest id or name: it stands in every error of its element [bytes].
const LONGEST_NAME: usize = 500;

/// A JSON object.
type Object = Map<String, Value>;

/// The value of an object's field. Not inlined: every question would bring its own search through the
/// fields, and there are some hundred.
#[inline(never)]
fn value<'d>(object: &'d Object, field: &str) -> Option<&'d Value> {
    object.get(field)
}

/// Why a document is refused.
#[derive(Clone, Debug, PartialEq)]
pub struct Refused {
    /// Everything that is wrong with it, each with its element and field.
    pub errors: Vec<StudyError>,
    /// The study that it holds all the same, with every default filled in: nothing else is wrong with it than
    /// what an edit that is not finished leaves behind.
    pub unfinished: Option<Box<Study>>,
}

impl From<Vec<StudyError>> for Refused {
    fn from(errors: Vec<StudyError>) -> Self {
        Refused {
            errors,
            unfinished: None,
        }
    }
}

/// Reads a study from the text of a file.
///
/// # Errors
/// Everything that is wrong with it, each with its element and field.
pub fn read(text: &str) -> Result<Study, Vec<StudyError>> {
    read_unfinished(text).map_err(|refused| refused.errors)
}

/// As `read`, for whoever can go on with a study that is not right yet.
///
/// # Errors
/// Everything that is wrong with it, and the study itself where there is one.
pub fn read_unfinished(text: &str) -> Result<Study, Refused> {
    if text.len() > LARGEST_TEXT {
        return Err(refusal(
            StudyErrorKind::TooLarge,
            "",
            format!(
                "the file has {} kB, a study at most {} kB",
                text.len() >> 10,
                LARGEST_TEXT >> 10
            ),
        ));
    }
    let value: Value = serde_json::from_str(text).map_err(|error| {
        refusal(
            StudyErrorKind::NotAStudy,
            "",
            format!("not a JSON file that can be read: {error}"),
        )
    })?;
    check_value(&value)
}

/// Reads which part of an answer is wanted from JSON text; nothing when it names none.
pub fn read_part(text: &str) -> Option<Part> {
    decode::part(&serde_json::from_str(text).ok()?)
}

/// Reads which worlds are wanted from JSON text; nothing when it names none.
pub fn read_worlds(text: &str) -> Option<Worlds> {
    decode::worlds(&serde_json::from_str(text).ok()?)
}

/// Reads which draws are wanted from JSON text; nothing when it lists anything else.
pub fn read_draws(text: &str) -> Option<Vec<Draw>> {
    decode::draws(&serde_json::from_str(text).ok()?)
}

/// Reads a study from a JSON value.
///
/// # Errors
/// As `read`.
pub fn read_value(value: &Value) -> Result<Study, Vec<StudyError>> {
    check_value(value).map_err(|refused| refused.errors)
}

fn check_value(value: &Value) -> Result<Study, Refused> {
    let Value::Object(document) = value else {
        return Err(refusal(
            StudyErrorKind::NotAStudy,
            "",
            "a study is a JSON object".to_owned(),
        ));
    };
    match document.get("format").and_then(Value::as_str) {
        Some(FORMAT) => {}
        found => {
            let found = found.map_or("nothing".to_owned(), |name| format!("\"{name}\""));
            let message = format!(
                "this is no study of this program: the format should read \"{FORMAT}\", it reads {found}"
            );
            return Err(refusal(StudyErrorKind::UnknownFormat, "format", message));
        }
    }
    match document.get("version").and_then(Value::as_u64) {
        Some(version) if version == u64::from(VERSION) => {}
        found => {
            let found = found.map_or("nothing readable".to_owned(), |version| version.to_string());
            let message = format!(
                "this program reads version {VERSION}, the file has {found}; open it with a newer program"
            );
            return Err(refusal(StudyErrorKind::UnknownVersion, "version", message));
        }
    }
    let mut errors = fields::check(document);
    if !errors.is_empty() {
        let is_whole = errors.iter().all(|error| error.kind.leaves_a_study());
        errors.extend(names::check_document(document));
        return Err(Refused {
            errors: first_of(errors),
            unfinished: is_whole
                .then(|| decode::study(document).map(Box::new))
                .flatten(),
        });
    }
    let study = decode::study(document).ok_or_else(|| {
        let message = "holds a value that this program cannot take; it should have said which";
        refusal(StudyErrorKind::WrongType, "", message.to_owned())
    })?;
    errors = check(&study);
    errors.extend(variants::check(&study, &errors));
    if errors.is_empty() {
        Ok(study)
    } else {
        Err(Refused {
            errors: first_of(errors),
            unfinished: Some(Box::new(study)),
        })
    }
}

/// As many errors as anybody reads, and that there are more.
fn first_of(mut errors: Vec<StudyError>) -> Vec<StudyError> {
    if errors.len() >= MOST_ERRORS {
        errors.truncate(MOST_ERRORS - 1);
        let message = "more is wrong than is told here; put this right first".to_owned();
        errors.push(whole(StudyErrorKind::TooMany, "", message));
    }
    errors
}

/// What is wrong with the document as a whole.
fn refusal(kind: StudyErrorKind, field: &str, message: String) -> Refused {
    vec![whole(kind, field, message)].into()
}

fn whole(kind: StudyErrorKind, field: &str, message: String) -> StudyError {
    StudyError {
        kind,
        element: String::new(),
        field: field.to_owned(),
        message,
    }
}
