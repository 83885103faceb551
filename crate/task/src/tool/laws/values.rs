//! The tables of numbers that stand in a law's code.

/// A table, row by row; of two rows that belong together the first says where the other's values stand.
pub struct Values {
    /// What the code says above it.
    pub of: String,
    /// Numbers as they are written.
    pub rows: Vec<Vec<String>>,
    /// Whether the numbers are pairs.
    pub pairs: bool,
}

/// Every list of numbers and every curve through points in a law's file, but for its ranges.
pub fn values(text: &str) -> Result<Vec<Values>, String> {
    let mut found = Vec::new();
    let mut comment = String::new();
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        if let Some(words) = line.strip_prefix("///") {
            comment.push_str(words);
            continue;
        }
        let of = std::mem::take(&mut comment)
            .trim()
            .trim_end_matches('.')
            .to_owned();
        let constant = line.trim_start_matches("pub ").strip_prefix("const ");
        let Some((name, rest)) = constant.and_then(|line| line.split_once(": ")) else {
            continue;
        };
        let Some((kind, start)) = rest.split_once(" = ") else {
            continue;
        };
        let curve = kind == "Curve";
        if name.starts_with("RANGE") || !(curve || kind.starts_with('[')) {
            continue;
        }
        let mut body = start.to_owned();
        while !body.ends_with(';') {
            body.push_str(lines.next().ok_or_else(|| format!("{name} does not end"))?);
        }
        let rows = rows(&body);
        let numbers = rows
            .iter()
            .flatten()
            .all(|number| number.parse::<f64>().is_ok());
        // A curve through lists that stand in the code by themselves adds nothing to them.
        if rows.len() < 2 && curve || !numbers {
            continue;
        }
        if of.is_empty() {
            return Err(format!("{name} is a table without a comment"));
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
