//! `cargo task test`: every check there is, the quick ones first.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

use crate::command::{Also, Outcome, cargo, npm, root, run, target, www};
use crate::setup::{self, Browser, WASM};
use crate::{build, fuzz, generate, tidy};

/// Of all surfaces together, two of which run at a time [s].
const FUZZING: u64 = 60;

/// Runs every check and stops at the first that fails.
pub fn everything() -> Outcome {
    setup::for_fuzzing()?;
    let browser = setup::browser()?;
    let started = Instant::now();
    timed("rules", tidy::check)?;
    timed("format", || run(cargo(["fmt", "--all", "--check"])))?;
    timed("page format and lint", || run(npm(["run", "lint"])))?;
    timed("generated files", generate::check)?;
    timed("lint", lint)?;
    timed("Rust tests", || {
        run(cargo(["test", "--quiet", "--workspace"]))
    })?;
    timed("solver in the browser", || in_browser(&browser))?;
    timed("build", build::page)?;
    timed("page types", || run(npm(["run", "check"])))?;
    timed("page parts", page_parts)?;
    timed("fuzzing", || fuzz::shortly(FUZZING))?;
    timed("page in the browser", || {
        run(npm(["run", "page"]).with("EVENPORT_CHROMIUM", &browser.windowless))
    })?;
    println!(
        "every check passed in {:.0} s",
        started.elapsed().as_secs_f64()
    );
    Ok(())
}

fn lint() -> Outcome {
    run(cargo([
        "clippy",
        "--quiet",
        "--workspace",
        "--all-targets",
        "--all-features",
        "--",
        "--deny",
        "warnings",
    ]))
}

/// The binding's own tests, compiled for the browser and run in one.
fn in_browser(browser: &Browser) -> Outcome {
    run(wasm_tests(browser)?.also(["--test", "worker"]))
}

/// A Cargo command that runs the binding's tests in the browser; which ones is for the caller to add.
pub fn wasm_tests(browser: &Browser) -> Result<Command, String> {
    let build = [
        "build",
        "--quiet",
        "--profile",
        "tool",
        "--package",
        "evenport-task",
    ];
    run(cargo(build).also([
        "--features",
        "browser-runner",
        "--bin",
        "evenport-browser-runner",
    ]))?;
    let runner = target()?.join("tool").join(format!(
        "evenport-browser-runner{}",
        std::env::consts::EXE_SUFFIX
    ));
    let tests = cargo(["test", "--package", "evenport-wasm", "--target", WASM]);
    Ok(tests
        .with("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", runner)
        .with("CHROMEDRIVER", &browser.driver))
}

/// Tests of the page's parts outside a browser; there need not be any.
fn page_parts() -> Outcome {
    if has_tests(&www().join("src")) || has_tests(&root().join("tests/www")) {
        return run(npm(["run", "unit"]));
    }
    println!("there are none");
    Ok(())
}

fn has_tests(folder: &Path) -> bool {
    fs::read_dir(folder)
        .into_iter()
        .flatten()
        .flatten()
        .map(|entry| entry.path())
        .any(|path| {
            path.is_dir() && has_tests(&path) || path.to_string_lossy().ends_with(".test.ts")
        })
}

fn timed(name: &str, step: impl FnOnce() -> Outcome) -> Outcome {
    println!("\n== {name}");
    let started = Instant::now();
    step()?;
    println!("== {name}: {:.1} s", started.elapsed().as_secs_f64());
    Ok(())
}
