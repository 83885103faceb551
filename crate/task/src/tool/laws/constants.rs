//! The constants that stand in a law's code.

/// A constant as its file writes it.
pub struct Constant<'t> {
    /// What the code says above it.
    pub of: String,
    /// Its name.
    pub name: &'t str,
    /// Its type.
    pub kind: &'t str,
    /// Its value, line by line, without the semicolon.
    pub value: String,
}

/// Every constant of a law's file that has a name of its own.
pub fn constants(text: &str) -> Result<Vec<Constant<'_>>, String> {
    let mut found = Vec::new();
    let mut comment = String::new();
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        if let Some(words) = line.strip_prefix("///") {
            comment.push_str(words);
            continue;
        }
        let of = std::mem::take(&mut comment).trim().to_owned();
        let constant = line.trim_start_matches("pub ").strip_prefix("const ");
        let Some((name, rest)) = constant.and_then(|line| line.split_once(": ")) else {
            continue;
        };
        let Some((kind, start)) = rest.split_once(" =") else {
            continue;
        };
        let mut value = start.trim_start().to_owned();
        while !value.ends_with(';') {
            value.push('\n');
            value.push_str(lines.next().ok_or_else(|| format!("{name} does not end"))?);
        }
        value.pop();
        found.push(Constant {
            of,
            name,
            kind,
            value,
        });
    }
    Ok(found)
}
