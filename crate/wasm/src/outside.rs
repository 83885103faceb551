//! Objects from outside, as the text that the solver's one gate reads.
//!
//! JSON text rather than a walk of the object: the browser's own writer ends on objects that contain
//! themselves or throw when looked at, and the gate's limits on size and depth hold for objects too.

use evenport::{StudyError, StudyErrorKind};
use js_sys::JSON;
use wasm_bindgen::prelude::*;

/// The JSON text of an object. A number that is not finite becomes null, which the gate takes nowhere; a
/// property that is `undefined` counts as not given.
pub fn text(object: &JsValue) -> Result<String, Vec<StudyError>> {
    // What JSON has no word for, a function say, comes back as `undefined` instead of text.
    JSON::stringify(object)
        .ok()
        .and_then(|text| text.as_string())
        .ok_or_else(|| vec![not_a_study()])
}

fn not_a_study() -> StudyError {
    StudyError {
        kind: StudyErrorKind::NotAStudy,
        element: String::new(),
        field: String::new(),
        message: "this is no plain object that a file could hold".to_owned(),
    }
}
