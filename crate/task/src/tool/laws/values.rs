//! The tables of numbers that stand in a law's code.

use crate::constants::Constant;

/// A table, row by row; of two rows that belong together the first says where the other's values stand.
pub struct Values {
    /// What the code says above it.
    pub of: String,
    /// Numbers as they are written.
    pub rows: Vec<Vec<String>>,
    /// Whether the numbers are pairs.
    pub pairs: bool,
}

/// Every list of numbers and every curve through points among a law's constants, but for its ranges.
pub fn values(constants: &[Constant<'_>]) -> Result<Vec<Values>, String> {
    let mut found = Vec::new();
    for constant in constants {
        let curve = constant.kind == "Curve";
        if constant.name.starts_with("RANGE") || !(curve || constant.kind.starts_with('[')) {
            continue;
        }
        let rows = rows(&constant.value);
        let numbers = rows
            .iter()
            .flatten()
            .all(|number| number.parse::<f64>().is_ok());
        // A curve through lists that stand in the code by themselves adds nothing to them.
        if rows.len() < 2 && curve || !numbers {
            continue;
        }
        let of = constant.of.trim_end_matches('.').to_owned();
        if of.is_empty() {
            return Err(format!("{} is a table without a comment", constant.name));
        }
        let pairs = curve || rows.len() > 1 && rows.iter().all(|row| row.len() == 2);
        let rows = if curve { turned(&rows) } else { rows };
        found.push(Values { of, rows, pairs });
    }
    Ok(found)
}

/// The innermost lists of an expression.
fn rows(body: &str) -> Vec<Vec<String>> {
    let parts = body.split('[').filter_map(|part| part.split_once(']'));
    let cells = |part: &str| {
        let cells = part.split(',').map(|cell| cell.trim().replace('_', ""));
        cells.filter(|cell| !cell.is_empty()).collect::<Vec<_>>()
    };
    let rows = parts.map(|(inside, _)| cells(inside));
    // Whether a curve's ends are flat is no number.
    let rows = rows.filter(|row| row.iter().all(|cell| cell != "true" && cell != "false"));
    rows.filter(|row| !row.is_empty()).collect()
}

/// Pairs of what stands in two rows.
fn turned(rows: &[Vec<String>]) -> Vec<Vec<String>> {
    let [places, values] = rows else {
        return rows.to_vec();
    };
    let pairs = places.iter().zip(values);
    pairs
        .map(|(place, value)| vec![place.clone(), value.clone()])
        .collect()
}
