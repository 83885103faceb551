//! One study again and again: over speeds, with a dimension swept, in many possible truths.

use evenport::{Study, StudyError};
use js_sys::{Array, Float64Array};
use wasm_bindgen::prelude::*;

use crate::{Causes, Deviations, Range, Whole, outside, plain};

/// Solves the running draw at some of the speeds of a study's range: `count` of them from the one at
/// `first`, so that a long range need not keep the worker from the next question.
///
/// # Errors
/// None for any study; throws when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../../types').Range")]
pub fn range(
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Study")] study: &JsValue,
    first: u32,
    count: u32,
) -> Result<JsValue, JsError> {
    let solved = read(study).and_then(|study| {
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

/// Solves every draw of a study, as `solve` of the sheet's worker does.
///
/// # Errors
/// None for any study; throws when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../../types').Whole")]
pub fn answer(
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Study")] study: &JsValue,
) -> Result<JsValue, JsError> {
    plain(
        &match read(study).and_then(|study| evenport::solve(&study)) {
            Ok(answer) => Whole::Solved {
                answer: Box::new(answer),
            },
            Err(errors) => Whole::Wrong { errors },
        },
    )
}

/// Solves some draws of several studies in a few numbers: a list by study of lists by draw.
///
/// # Errors
/// None for any studies; throws when the draws are none, or when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../../types').FiguresOutcome[][]")]
pub fn figures(
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Study[]")] studies: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Draw[]")] draws: &JsValue,
) -> Result<JsValue, JsError> {
    let draws = outside::text(draws).ok();
    let draws = draws.and_then(|text| evenport::read_draws(&text));
    let draws = draws.ok_or_else(|| JsError::new("no list of draws"))?;
    let of = |study: JsValue| match read(&study) {
        Ok(study) => evenport::figures(&study, &draws),
        Err(errors) => vec![evenport::FiguresOutcome::Wrong { errors }; draws.len()],
    };
    plain(&Array::from(studies).iter().map(of).collect::<Vec<_>>())
}

/// Solves versions of a study in the same possible truths: every cylinder's deviation, by world, then by
/// version, then by cylinder.
///
/// # Errors
/// None for any versions; throws when the worlds are none, or when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../../types').Deviations")]
pub fn deviations(
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Study[]")] versions: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Worlds")] worlds: &JsValue,
) -> Result<JsValue, JsError> {
    let worlds = read_worlds(worlds)?;
    let found = read_all(versions).and_then(|versions| evenport::deviations(&versions, &worlds));
    plain(&match found {
        Ok(found) => Deviations::Solved {
            deviations: Float64Array::from(&found[..]),
        },
        Err(errors) => Deviations::Wrong { errors },
    })
}

/// What makes every two versions hard to tell apart.
///
/// # Errors
/// As `deviations`.
#[wasm_bindgen(unchecked_return_type = "import('../../types').Causes")]
pub fn causes(
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Study[]")] versions: &JsValue,
    #[wasm_bindgen(unchecked_param_type = "import('../../types').Worlds")] worlds: &JsValue,
) -> Result<JsValue, JsError> {
    let worlds = read_worlds(worlds)?;
    let found = read_all(versions).and_then(|versions| evenport::pair_causes(&versions, &worlds));
    plain(&match found {
        Ok(pairs) => Causes::Solved { pairs },
        Err(errors) => Causes::Wrong { errors },
    })
}

/// Tells of versions from their cylinders' deviations; `confidence` is the probability from which one
/// counts as the more even one.
///
/// # Errors
/// Throws when the browser cannot build the reply.
#[wasm_bindgen(unchecked_return_type = "import('../../types').Told")]
pub fn tell(
    deviations: &[f64],
    versions: u32,
    cylinders: u32,
    confidence: f64,
) -> Result<JsValue, JsError> {
    let (versions, cylinders) = (versions as usize, cylinders as usize);
    plain(&evenport::tell(deviations, versions, cylinders, confidence))
}

fn read_worlds(worlds: &JsValue) -> Result<evenport::Worlds, JsError> {
    let worlds = outside::text(worlds).ok();
    let worlds = worlds.and_then(|text| evenport::read_worlds(&text));
    worlds.ok_or_else(|| JsError::new("no worlds"))
}

fn read_all(versions: &JsValue) -> Result<Vec<Study>, Vec<StudyError>> {
    Array::from(versions)
        .iter()
        .map(|study| read(&study))
        .collect()
}

fn read(study: &JsValue) -> Result<Study, Vec<StudyError>> {
    outside::text(study).and_then(|text| evenport::read(&text))
}
