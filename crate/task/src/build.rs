//! `cargo task build`: from the solver's Rust and the page's Svelte to a folder of static files.

use std::path::Path;
use std::process::Command;
use std::{env, fs};

use crate::command::{Also, Outcome, cargo, npm, run, target, tool, up_to_date, www};
use crate::laws;
use crate::setup::{self, WASM};

/// What Rust's wasm may use beyond the first version of WebAssembly; the optimiser refuses it unasked.
const FEATURES: [&str; 6] = [
    "--enable-bulk-memory",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
];

/// Features of the binding that make a module each: what everybody loads, and what only some do.
const MODULES: [&str; 2] = ["one", "many"];

/// Writes `www/dist`.
pub fn page() -> Outcome {
    setup::for_build()?;
    solver()?;
    laws::page()?;
    run(npm(["run", "build"]))
}

/// Writes both modules of the solver.
pub fn solver() -> Outcome {
    MODULES.iter().try_for_each(|name| module(name))
}

/// Writes a folder of `www/src/solver/wasm`, when the solver or this program has changed.
fn module(name: &str) -> Outcome {
    let build = [
        "build",
        "--quiet",
        "--release",
        "--package",
        "evenport-wasm",
    ];
    let features = ["--no-default-features", "--features", name];
    run(cargo(build).also(features).also(["--target", WASM]))?;
    let compiled = target()?.join(WASM).join("release/evenport_wasm.wasm");
    let folder = www().join("src/solver/wasm").join(name);
    let optimised = folder.join("evenport_wasm_bg.wasm");
    let program = env::current_exe().map_err(|error| error.to_string())?;
    if up_to_date(&optimised, &[&compiled, &program]) {
        return Ok(());
    }
    // Bundled elsewhere, and the file whose age counts is copied last: a cut leaves nothing that looks done.
    let bundled = target()?.join("bundle").join(name);
    run(tool("bundle").also([&compiled, &bundled]))?;
    let optimise = node().also(["node_modules/binaryen/bin/wasm-opt"]);
    run(optimise
        .also(["-O3"])
        .also(FEATURES)
        .also([bundled.join("evenport_wasm_bg.wasm")])
        .also(["-o"])
        .also([bundled.join("optimised.wasm")]))?;
    fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let copy = |name: &str, to: &Path| {
        fs::copy(bundled.join(name), to)
            .map(drop)
            .map_err(|error| format!("{}: {error}", to.display()))
    };
    copy("evenport_wasm.js", &folder.join("evenport_wasm.js"))?;
    copy("evenport_wasm.d.ts", &folder.join("evenport_wasm.d.ts"))?;
    copy("optimised.wasm", &optimised)
}

/// Node in the page's folder.
fn node() -> Command {
    let mut command = Command::new("node");
    command.current_dir(www());
    command
}
