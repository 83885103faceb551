//! `cargo task evidence`: what the checks against others' numbers compare, as tables.

use crate::command::{Also, Outcome, cargo, run};

/// Prints the tables of the published and of the whole-network checks.
pub fn tables() -> Outcome {
    for suite in ["published", "network"] {
        // One thread, or the tables of two checks would run into each other.
        let check = cargo(["test", "--quiet", "--package", "evenport", "--test", suite]);
        run(check
            .also(["--", "--nocapture", "--test-threads=1"])
            .with("EVENPORT_EVIDENCE", "1"))?;
    }
    Ok(())
}
