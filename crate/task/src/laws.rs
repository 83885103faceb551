//! The page of all laws, written before the rest of the page is bundled with it.

use std::io::Write as _;
use std::process::Stdio;

use crate::command::{Also, Outcome, cargo, output, root, tool, www};

/// Writes `www/laws.html` from the laws' files, the catalogue and the checks against others' numbers.
pub fn page() -> Outcome {
    // Of the whole workspace, so that what the tests have compiled is used again.
    let checks = cargo(["test", "--quiet", "--workspace", "--test", "published"]);
    let checks = checks
        .also(["--", "--nocapture", "evidence_table"])
        .with("EVENPORT_EVIDENCE", "1");
    println!("> checks of the laws, for their page");
    let table = output(checks).ok_or("the checks of the laws could not be printed")?;
    let mut write = tool("laws")
        .also([root(), www().join("laws.html")])
        .stdin(Stdio::piped())
        .spawn()
        .map_err(|error| error.to_string())?;
    if let Some(mut input) = write.stdin.take() {
        input
            .write_all(table.as_bytes())
            .map_err(|error| error.to_string())?;
    }
    let status = write.wait().map_err(|error| error.to_string())?;
    if status.success() {
        Ok(())
    } else {
        Err("the page of all laws could not be written".to_owned())
    }
}
