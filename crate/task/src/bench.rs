//! `cargo task bench`: how long things take.

use std::fs;

use crate::command::{Outcome, cargo, root, run};

/// Runs every example whose name starts with `bench_`, optimised.
pub fn everything() -> Outcome {
    let entries =
        fs::read_dir(root().join("examples")).map_err(|error| format!("examples: {error}"))?;
    let mut names: Vec<String> = entries
        .flatten()
        .filter_map(|entry| entry.file_name().into_string().ok())
        .collect();
    names.retain(|name| name.starts_with("bench_"));
    names.sort();
    if names.is_empty() {
        return Err("there is no example whose name starts with bench_".to_owned());
    }
    for name in names {
        run(cargo([
            "run",
            "--quiet",
            "--release",
            "--example",
            name.trim_end_matches(".rs"),
        ]))?;
    }
    Ok(())
}
