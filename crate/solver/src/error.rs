//! Errors: what is wrong with a study, all of it at once.

use std::fmt;

use serde::Serialize;

/// One thing that is wrong with a study.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(rename_all = "camelCase")]
pub struct StudyError {
    /// Which kind.
    pub kind: StudyErrorKind,
    /// Id of the node, branch or cylinder; its place in the list when it has no id; empty for the whole study.
    pub element: String,
    /// Field, with its position for losses: `losses[2].length`; empty when it concerns the whole element.
    pub field: String,
    /// What, where, and what to do.
    pub message: String,
}

/// Kinds of study error.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(rename_all = "camelCase")]
pub enum StudyErrorKind {
    /// Not JSON, or not an object.
    NotAStudy,
    /// Larger than any study can be.
    TooLarge,
    /// The format name is another.
    UnknownFormat,
    /// Written by a newer version of the program.
    UnknownVersion,
    /// A field is missing.
    Missing,
    /// A field has the wrong type.
    WrongType,
    /// A field that the format does not have.
    UnknownField,
    /// A number that is not finite, or outside what the field can be.
    OutOfBounds,
    /// A node kind, loss kind or other choice that does not exist.
    UnknownChoice,
    /// Two elements with the same id.
    DuplicateId,
    /// An id that nothing in the study has.
    UnknownId,
    /// More elements than the program takes.
    TooMany,
    /// A junction with the wrong number of legs, or a leg that does not belong.
    Junction,
    /// A network that cannot carry air: no source, no port, a port that no source reaches.
    Unreachable,
    /// A loss counted twice, or one that does not belong where it stands.
    Misplaced,
    /// Volumetric efficiency, firing order and so on that contradict each other.
    Contradiction,
}

impl StudyErrorKind {
    /// Whether a study with such an error is a study all the same, with nothing in it that would be lost: whoever
    /// edits it is told in its cells what is wrong.
    pub(crate) fn leaves_a_study(self) -> bool {
        use StudyErrorKind::{
            Contradiction, DuplicateId, Junction, Misplaced, Missing, OutOfBounds, TooMany,
            UnknownId, Unreachable,
        };
        matches!(
            self,
            Contradiction
                | DuplicateId
                | Junction
                | Misplaced
                | Missing
                | OutOfBounds
                | TooMany
                | Unreachable
                | UnknownId
        )
    }
}

impl fmt::Display for StudyError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.element.as_str(), self.field.as_str()) {
            ("", "") => write!(formatter, "{}", self.message),
            (element, "") => write!(formatter, "{element}: {}", self.message),
            ("", field) => write!(formatter, "{field}: {}", self.message),
            (element, field) => write!(formatter, "{element}, {field}: {}", self.message),
        }
    }
}
