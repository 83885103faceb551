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
}

/// All that any verb needs.
pub fn everything() -> Outcome {
    for_build()?;
    browser().map(drop)
}

/// What building the page needs.
pub fn for_build() -> Outcome {
    wasm_target()?;
    packages()
}

/// Chromium and its driver. They are not part of `for_build`: whoever only serves the page has a browser.
pub fn browser() -> Result<Browser, String> {
    if let Some(browser) = find_browser() {
        return Ok(browser);
    }
    let is_root = output(command("id", &["-u"])).as_deref() == Some("0");
    if is_root && find(&["apt-get"]).is_some() {
        run(command("apt-get", &["update", "--quiet"]))?;
        let install = command(
            "apt-get",
            &["install", "--quiet", "--yes", "--no-install-recommends"],
        );
        run(install
            .also(["chromium", "chromium-driver"])
            .with("DEBIAN_FRONTEND", "noninteractive"))?;
    }
    find_browser().ok_or_else(|| {
        "the tests need Chromium and chromedriver of the same version on the PATH; on Debian: \
         apt-get install chromium chromium-driver"
            .to_owned()
    })
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
    Some(Browser { program, driver })
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
