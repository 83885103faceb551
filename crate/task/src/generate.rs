//! `cargo task generate`: the files that are written from the solver's types.

use crate::command::{Also, Outcome, root, run, tool};

/// Writes them.
pub fn write() -> Outcome {
    run(tool("generate").also([root()]))
}

/// Fails when one is stale.
pub fn check() -> Outcome {
    run(tool("generate").also([root()]).also(["--check"]))
}
