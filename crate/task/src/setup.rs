//! `cargo task setup`: installs what is missing and says what it cannot install.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::command::{Also, Outcome, find, npm, output, run, up_to_date, www};

/// The target that browsers run.
pub const WASM: &str = "wasm32-unknown-unknown";

/// A browser and the program that drives it.
pub struct Browser {
    /// Path of the browser.
    pub program: PathBuf,
    /// Path of its driver.
    pub driver: PathBuf,
    /// Path of the same engine without windows of its own, in which the page's tests take a third less time; of the
    /// browser where there is none.
    pub windowless: PathBuf,
}

const WINDOWLESS: &str = "chromium-headless-shell";

/// All that any verb needs.
pub fn everything() -> Outcome {
    for_build()?;
    for_fuzzing()?;
    browser().map(drop)
}

/// What fuzzing needs beside: libFuzzer, which comes as C++.
pub fn for_fuzzing() -> Outcome {
    for_build()?;
    if find(&["c++"]).is_none() {
        install(&["g++"])?;
    }
    match find(&["c++"]) {
        Some(_) => Ok(()),
        None => Err(
            "fuzzing needs a C++ compiler, c++, on the PATH; on Debian: apt-get install g++"
                .to_owned(),
        ),
    }
}

/// What building the page needs.
pub fn for_build() -> Outcome {
    wasm_target()?;
    packages()
}

/// Chromium and its driver. They are not part of `for_build`: whoever only serves the page has a browser.
pub fn browser() -> Result<Browser, String> {
    if find_browser().is_none() {
        install(&["chromium", "chromium-driver"])?;
    }
    if find(&[WINDOWLESS]).is_none() {
        // Not every distribution has it, and every test passes without.
        install(&[WINDOWLESS]).ok();
    }
    find_browser().ok_or_else(|| {
        "the tests need Chromium and chromedriver of the same version on the PATH; on Debian: \
         apt-get install chromium chromium-driver"
            .to_owned()
    })
}

/// Installs Debian's packages, where that can be done without asking anybody.
fn install(packages: &[&str]) -> Outcome {
    let is_root = output(command("id", &["-u"])).as_deref() == Some("0");
    if !is_root || find(&["apt-get"]).is_none() {
        return Ok(());
    }
    run(command("apt-get", &["update", "--quiet"]))?;
    let install = command(
        "apt-get",
        &["install", "--quiet", "--yes", "--no-install-recommends"],
    );
    run(install
        .also(packages)
        .with("DEBIAN_FRONTEND", "noninteractive"))
}

fn find_browser() -> Option<Browser> {
    let program = find(&[
        "chromium",
        "chromium-browser",
        "google-chrome",
        "google-chrome-stable",
        "chrome",
    ])?;
    let driver = find(&["chromedriver"])?;
    let windowless = find(&[WINDOWLESS]).unwrap_or_else(|| program.clone());
    Some(Browser {
        program,
        driver,
        windowless,
    })
}

fn wasm_target() -> Outcome {
    let library = output(command(
        "rustc",
        &["--print", "target-libdir", "--target", WASM],
    ));
    if library.is_some_and(|folder| Path::new(&folder).is_dir()) {
        return Ok(());
    }
    if find(&["rustup"]).is_none() {
        return Err(format!(
            "building the page needs Rust's {WASM} target: install it as you installed Rust"
        ));
    }
    run(command("rustup", &["target", "add", WASM]))
}

fn packages() -> Outcome {
    if find(&["node"]).is_none() {
        return Err(
            "building the page needs Node.js 20.19 or newer, with npm, on the PATH".to_owned(),
        );
    }
    let www = www();
    // Npm writes this file last, so an installation that was cut short starts again.
    let installed = www.join("node_modules/.package-lock.json");
    if up_to_date(
        &installed,
        &[&www.join("package.json"), &www.join("package-lock.json")],
    ) {
        return Ok(());
    }
    run(npm(["ci"]))
}

fn command(program: &str, arguments: &[&str]) -> Command {
    Command::new(program).also(arguments)
}
