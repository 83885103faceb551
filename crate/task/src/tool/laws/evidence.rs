//! The checks of the laws against others' numbers, from the table that the tests print.

use std::collections::BTreeMap;

/// One value from outside against the program's.
pub struct Check {
    /// Case and quantity.
    pub case: String,
    /// What stands behind the value.
    pub kind: String,
    /// Where the value comes from.
    pub source: String,
    /// The value.
    pub value: String,
    /// What the program says.
    pub ours: String,
    /// The difference.
    pub difference: String,
    /// What difference is allowed, and why.
    pub allowed: String,
}

/// Checks by the law's file.
pub type Checks = BTreeMap<String, Vec<Check>>;

/// A check that needs no value from outside.
pub const PROPERTY: &str = "invariant";

/// Reads the table, and fails without one.
pub fn checks(table: &str) -> Result<Checks, String> {
    let mut checks = Checks::new();
    let rows = table
        .lines()
        .skip_while(|line| !line.starts_with("law | check"));
    for row in rows
        .skip(1)
        .take_while(|line| !line.starts_with("not used"))
    {
        let cells: Vec<String> = row.split(" | ").map(str::to_owned).collect();
        let count = cells.len();
        let [law, case, kind, source, value, ours, difference, allowed] =
            <[String; 8]>::try_from(cells).map_err(|_| format!("{count} cells in: {row}"))?;
        checks.entry(law).or_default().push(Check {
            case,
            kind,
            source,
            value,
            ours,
            difference,
            allowed,
        });
    }
    if checks.is_empty() {
        return Err("no table of checks on standard input".to_owned());
    }
    Ok(checks)
}
