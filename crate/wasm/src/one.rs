//! The answer to one study.

use wasm_bindgen::prelude::*;

use crate::{Read, Solve, clock, outside, plain};

/// Solves a study given as a plain object, or the wanted part of its draws.
///
/// # Errors
/// None for any study; throws when the part is none, or when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../../types').Solve")]
pub fn solve(
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Study")] study: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Part")] part: &JsValue,
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

/// Reads a study from the text of a file.
///
/// # Errors
/// None for any text; throws when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../../types').Read")]
pub fn read(text: &str) -> Result<JsValue, JsError> {
    plain(&match evenport::read_unfinished(text) {
        Ok(study) => Read::Study {
            study: Box::new(study),
        },
        Err(refused) => Read::Wrong {
            errors: refused.errors,
            unfinished: refused.unfinished,
        },
    })
}

/// What a study can hold: kinds, fields, units, ranges, sources.
///
/// # Errors
/// Throws when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../../types').Catalogue")]
pub fn laws() -> Result<JsValue, JsError> {
    plain(&evenport::catalogue())
}

/// The program's version.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    evenport::VERSION_TEXT.to_owned()
}
