//! What goes back to the page: a closed union, told apart by `kind`.

use evenport::{Answer, PairCauses, SpeedPoint, Study, StudyError};
use js_sys::Float64Array;
use serde::Serialize;

/// The reply to `solve`.
#[derive(Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(
    tag = "kind",
    rename_all = "camelCase",
    rename_all_fields = "camelCase"
)]
pub enum Solve {
    /// The study is right.
    Solved {
        /// Everything the solver says of it.
        answer: Box<Answer>,
        /// Time from the study's arrival to its answer [ms].
        elapsed_ms: f64,
    },
    /// The study is wrong.
    Wrong {
        /// All that is wrong with it.
        errors: Vec<StudyError>,
    },
}

/// The reply to `answer`.
#[derive(Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "camelCase")]
pub enum Whole {
    /// The study is right.
    Solved {
        /// Everything the solver says of it.
        answer: Box<Answer>,
    },
    /// The study is wrong.
    Wrong {
        /// All that is wrong with it.
        errors: Vec<StudyError>,
    },
}

/// The reply to `range`.
#[derive(Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "camelCase")]
pub enum Range {
    /// The study is right.
    Solved {
        /// The running draw at the speeds that were asked for; none when the study lacks what it needs.
        points: Vec<SpeedPoint>,
        /// Speeds of the whole range.
        of: u32,
    },
    /// The study is wrong.
    Wrong {
        /// All that is wrong with it.
        errors: Vec<StudyError>,
    },
}

/// The reply to `deviations`.
#[derive(Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "camelCase")]
pub enum Deviations {
    /// All versions are right.
    Solved {
        /// Not a number where a version has no answer.
        #[serde(with = "serde_wasm_bindgen::preserve")]
        #[cfg_attr(feature = "generate", ts(type = "Float64Array"))]
        deviations: Float64Array,
    },
    /// One is wrong.
    Wrong {
        /// All that is wrong with the first such one.
        errors: Vec<StudyError>,
    },
}

/// The reply to `causes`.
#[derive(Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "camelCase")]
pub enum Causes {
    /// All versions are right.
    Solved {
        /// Every two versions, the earlier first.
        pairs: Vec<PairCauses>,
    },
    /// One is wrong.
    Wrong {
        /// All that is wrong with the first such one.
        errors: Vec<StudyError>,
    },
}

/// The reply to `read`.
#[derive(Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "camelCase")]
pub enum Read {
    /// The text holds a study.
    Study {
        /// The study with every default filled in.
        study: Box<Study>,
    },
    /// The text holds none that is right.
    Wrong {
        /// All that is wrong with it.
        errors: Vec<StudyError>,
        /// The study that it holds all the same, as an edit that is not finished leaves one.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "generate", ts(optional))]
        unfinished: Option<Box<Study>>,
    },
}
