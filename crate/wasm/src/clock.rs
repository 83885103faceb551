//! The browser's clock. The solver has none: it is pure.

use js_sys::Date;
use wasm_bindgen::JsCast;
use web_sys::{Performance, Window, WorkerGlobalScope};

/// Now [ms], from no particular beginning.
pub fn now() -> f64 {
    performance().map_or_else(Date::now, |performance| performance.now())
}

/// The scope is a worker's on the page; a window's when a script calls the module directly.
fn performance() -> Option<Performance> {
    match js_sys::global().dyn_into::<WorkerGlobalScope>() {
        Ok(worker) => worker.performance(),
        Err(scope) => scope.dyn_into::<Window>().ok()?.performance(),
    }
}
