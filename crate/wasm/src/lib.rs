//! The solver for a browser's workers: whole documents in, whole documents out, nothing to free.
//!
//! No arithmetic and no checks of its own: every outside byte passes the solver's `read`. A reply is
//! always a plain object with a `kind`; only a reply that the browser has no memory for is thrown.
//!
//! Two modules are made of this crate, each for a worker of its own: with `one` what everybody loads, the
//! answer to the study on the sheet; with `many` what solves a study again and again and is loaded by those
//! who compare, sweep, or look over speeds. A long question to the second never keeps the first waiting.

#[cfg(feature = "one")]
mod clock;
#[cfg(feature = "many")]
mod many;
#[cfg(feature = "one")]
mod one;
mod outside;
mod reply;

#[cfg(feature = "many")]
pub use many::{answer, causes, deviations, figures, range, tell};
#[cfg(feature = "one")]
pub use one::{laws, read, solve, version};
pub use reply::{Causes, Deviations, Range, Read, Solve, Whole};

use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::*;

/// A document as plain objects, arrays, numbers and null: what `structuredClone` and JSON can carry.
fn plain(document: &impl Serialize) -> Result<JsValue, JsError> {
    Ok(document.serialize(&Serializer::json_compatible())?)
}
