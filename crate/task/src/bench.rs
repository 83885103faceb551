//! `cargo task bench`: how long things take. Prints figures and fails on none.

use crate::command::{Also, Outcome, cargo, find, npm, root, run};
use crate::{build, setup, test};

/// Native, in the browser's wasm, the page, and other people's solvers when Python has them.
pub fn everything() -> Outcome {
    setup::for_build()?;
    let browser = setup::browser()?;
    run(cargo([
        "run",
        "--quiet",
        "--release",
        "--example",
        "bench_network",
    ]))?;
    // Nothing is captured, or the browser would keep the figures to itself.
    run(test::wasm_tests(&browser)?
        .also(["--release", "--features", "bench", "--test", "speed"])
        .also(["--", "--nocapture"]))?;
    build::page()?;
    run(npm(["run", "bench"]).with("EVENPORT_CHROMIUM", &browser.program))?;
    peers()
}

/// The same simple network by general-purpose libraries from the Python registry.
fn peers() -> Outcome {
    let Some(python) = find(&["python3", "python"]) else {
        println!("no Python: the comparison with other solvers is left out");
        return Ok(());
    };
    let mut command = std::process::Command::new(python);
    command
        .current_dir(root())
        .arg("examples/bench_peers/peers.py");
    run(command)
}
