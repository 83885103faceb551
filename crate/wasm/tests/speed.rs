//! How long the network itself takes in the browser's wasm; prints, asserts nothing. `cargo task bench`.
#![cfg(target_arch = "wasm32")]

#[path = "../../../examples/bench_network/batch.rs"]
mod batch;
#[path = "../../../examples/bench_network/measure.rs"]
mod measure;
#[path = "../../../examples/bench_network/networks.rs"]
mod networks;

use js_sys::Reflect;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::{console_log, wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::Performance;

wasm_bindgen_test_configure!(run_in_dedicated_worker);

#[wasm_bindgen_test]
fn network_alone() {
    let performance = Reflect::get(&js_sys::global(), &"performance".into());
    let performance: Performance = performance.expect("a clock").unchecked_into();
    measure::all(
        || performance.now() / 1e3,
        |_| true,
        |line| console_log!("  {line}"),
    );
}
