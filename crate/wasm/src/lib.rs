//! The solver for a browser's worker: whole documents in, whole documents out, nothing to free.
//!
//! No arithmetic and no checks of its own: every outside byte passes the solver's `read`. A reply is
//! always a plain object with a `kind`; only a reply that the browser has no memory for is thrown.

mod clock;
mod outside;
mod reply;

pub use reply::{Range, Read, Solve};

use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::*;

/// Solves a study given as a plain object, or the wanted part of its draws.
///
/// # Errors
/// None for any study; throws when the part is none, or when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../types').Solve")]
pub fn solve(
    #[wasm_bindgen(unchecked_param_type = "import('../types').Study")] study: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "import('../types').Part")] part: &JsValue,
) -> Result<JsValue, JsError> {
    let start = clock::now();
    let part = outside::text(part).ok();
    let part = part.and_then(|text| evenport::read_part(&text));
    let part = part.ok_or_else(|| JsError::new("no part of an answer"))?;
    let reply = match outside::text(study)
        .and_then(|text| evenport::read(&text))
        .and_then(|study| evenport::solve_part(&study, part))
    {
        Ok(answer) => Solve::Solved {
            answer: Box::new(answer),
            elapsed_ms: clock::now() - start,
        },
        Err(errors) => Solve::Wrong { errors },
    };
    plain(&reply)
}

/// Solves the running draw at some of the speeds of a study's range: `count` of them from the one at
/// `first`, so that a long range need not keep the worker from the next question.
///
/// # Errors
/// None for any study; throws when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../types').Range")]
pub fn range(
    #[wasm_bindgen(unchecked_param_type = "import('../types').Study")] study: &JsValue,
    first: u32,
    count: u32,
) -> Result<JsValue, JsError> {
    let read = outside::text(study).and_then(|text| evenport::read(&text));
    let solved = read.and_then(|study| {
        let speeds = evenport::speeds(&study);
        let wanted = speeds.iter().skip(first as usize).take(count as usize);
        let points = evenport::speed_range(&study, &wanted.copied().collect::<Vec<f64>>())?;
        Ok(Range::Solved {
            points,
            of: speeds.len() as u32,
        })
    });
    plain(&solved.unwrap_or_else(|errors| Range::Wrong { errors }))
}

/// Reads a study from the text of a file.
///
/// # Errors
/// None for any text; throws when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../types').Read")]
pub fn read(text: &str) -> Result<JsValue, JsError> {
    plain(&match evenport::read(text) {
        Ok(study) => Read::Study {
            study: Box::new(study),
        },
        Err(errors) => Read::Wrong { errors },
    })
}

/// What a study can hold: kinds, fields, units, ranges, sources.
///
/// # Errors
/// Throws when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../types').Catalogue")]
pub fn laws() -> Result<JsValue, JsError> {
    plain(&evenport::catalogue())
}

/// The program's version.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    evenport::VERSION_TEXT.to_owned()
}

/// A document as plain objects, arrays, numbers and null: what `structuredClone` and JSON can carry.
fn plain(document: &impl Serialize) -> Result<JsValue, JsError> {
    Ok(document.serialize(&Serializer::json_compatible())?)
}
