//! Rules of the repository that no other tool checks.

use std::fs;
use std::path::Path;

use crate::command::{Outcome, output, root};

/// What stands at the top, dot files aside.
const TOP: [&str; 9] = [
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "crate",
    "examples",
    "tests",
    "www",
];
/// Longest source file; longer ones hold more than one idea.
const LONGEST: usize = 500;
/// Beginnings of paths that exist on one machine only.
const MACHINE: [&str; 4] = ["/home/", "/root/", "/tmp/", "/Users/"];
/// Headings that every law's file needs.
const LAW: [&str; 5] = [
    "# Equation",
    "# Symbols",
    "# Source",
    "# Range of validity",
    "# Limits",
];

/// Looks through every tracked file and lists what breaks a rule.
pub fn check() -> Outcome {
    let mut git = std::process::Command::new("git");
    git.current_dir(root()).args(["ls-files"]);
    let files = output(git).ok_or("git could not list the files")?;
    let mut faults = Vec::new();
    for file in files.lines() {
        let top = file.split('/').next().unwrap_or(file);
        if !top.starts_with('.') && !TOP.contains(&top) {
            faults.push(format!("{file}: does not belong at the top"));
        }
        // Pictures are no text; a file that is deleted but not yet committed is no file.
        if let Ok(text) = fs::read_to_string(root().join(file)) {
            look(file, &text, &mut faults);
        }
    }
    if faults.is_empty() {
        Ok(())
    } else {
        Err(faults.join("\n"))
    }
}

fn look(file: &str, text: &str, faults: &mut Vec<String>) {
    let extension = Path::new(file).extension().and_then(|name| name.to_str());
    let written = matches!(extension, Some("rs" | "ts" | "svelte" | "css" | "md"));
    let generated = file.ends_with("types.ts");
    if written && !generated && text.lines().count() > LONGEST {
        faults.push(format!("{file}: longer than {LONGEST} lines"));
    }
    if file != "crate/task/src/tidy.rs" && file != "Cargo.lock" {
        for path in MACHINE.iter().filter(|path| text.contains(**path)) {
            faults.push(format!("{file}: names {path}, a path of one machine"));
        }
    }
    let law = file.starts_with("crate/solver/src/law/")
        && !file.ends_with("mod.rs")
        && !file.ends_with("outside.rs");
    if law {
        for heading in LAW.iter().filter(|heading| !text.contains(**heading)) {
            faults.push(format!("{file}: a law without \"{heading}\""));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_rule_finds_what_breaks_it() {
        let mut faults = Vec::new();
        look("examples/long.rs", &"\n".repeat(LONGEST + 1), &mut faults);
        look("README.md", "see /home/somebody", &mut faults);
        look(
            "crate/solver/src/law/bend/new.rs",
            "# Equation",
            &mut faults,
        );
        assert_eq!(faults.len(), 2 + LAW.len() - 1, "{faults:?}");
    }
}
