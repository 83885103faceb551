//! A law as its file tells it: the headings that every law has, and the scatter that stands in its code.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use crate::constants::{Constant, constants};
use crate::values::{Values, values};

/// One law.
pub struct Law {
    /// Its first line.
    pub title: String,
    /// One line each.
    pub equation: Vec<String>,
    /// Symbol, name in the code, meaning and unit.
    pub symbols: Vec<[String; 4]>,
    /// Where it comes from.
    pub source: String,
    /// Where it holds.
    pub range: String,
    /// What it leaves out.
    pub limits: String,
    /// What its code says of its scatter.
    pub scatter: Vec<Scatter>,
    /// Tables in its code.
    pub values: Vec<Values>,
}

/// One standard deviation.
pub enum Scatter {
    /// Over the value, with the common part of the variance and where the figures come from.
    Relative {
        /// Of what.
        of: String,
        /// Over the value [-].
        relative: f64,
        /// Common part of the variance [-].
        common: f64,
        /// Where it comes from.
        origin: String,
    },
    /// In the number itself.
    Absolute {
        /// Of what, and where it comes from.
        of: String,
        /// The figure.
        deviation: f64,
    },
    /// As of another law in the same folder.
    As(String),
}

/// All laws by their files below the folder, and the folders' names by their own.
pub struct Laws {
    /// Laws.
    pub laws: BTreeMap<String, Law>,
    /// What each folder holds.
    pub folders: BTreeMap<String, String>,
}

/// Reads every law.
pub fn all(folder: &Path) -> Result<Laws, String> {
    let mut found = Laws {
        laws: BTreeMap::new(),
        folders: BTreeMap::new(),
    };
    read(folder, "", &mut found)?;
    Ok(found)
}

fn read(folder: &Path, below: &str, found: &mut Laws) -> Result<(), String> {
    let fault = |error: std::io::Error| format!("{}: {error}", folder.display());
    for entry in fs::read_dir(folder).map_err(fault)? {
        let path = entry.map_err(fault)?.path();
        let name = path.file_stem().unwrap_or_default().to_string_lossy();
        if path.is_dir() {
            read(&path, &format!("{below}{name}/"), found)?;
            continue;
        }
        let text = fs::read_to_string(&path).map_err(fault)?;
        if name == "mod" {
            let name = opening(&text);
            let name = name.split(['.', ':']).next().unwrap_or_default();
            let below = below.trim_end_matches('/');
            found.folders.insert(below.to_owned(), name.to_owned());
        } else if name != "outside" {
            let name = format!("{below}{name}");
            let law = law(&text).map_err(|fault| format!("law/{name}.rs: {fault}"))?;
            found.laws.insert(name, law);
        }
    }
    Ok(())
}

/// What a file says of itself before its first heading.
fn opening(text: &str) -> String {
    let lines = header(text);
    let before: Vec<&str> = lines.take_while(|line| !line.starts_with('#')).collect();
    before.join(" ").trim().to_owned()
}

fn header(text: &str) -> impl Iterator<Item = &str> {
    text.lines()
        .filter_map(|line| line.strip_prefix("//!"))
        .map(str::trim)
}

fn law(text: &str) -> Result<Law, String> {
    let mut sections: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    let mut heading = "";
    for line in header(text) {
        match line.strip_prefix("# ") {
            Some(next) => heading = next,
            None => sections.entry(heading).or_default().push(line),
        }
    }
    let section = |name: &str| {
        let lines = sections.get(name).cloned().unwrap_or_default();
        let text = lines.join(" ").trim().to_owned();
        if text.is_empty() {
            Err(format!("nothing under \"{name}\""))
        } else {
            Ok((lines, text))
        }
    };
    let rows = section("Symbols")?.0.into_iter().skip(2);
    let symbols: Option<Vec<[String; 4]>> = rows
        .filter(|line| !line.is_empty())
        .map(|line| {
            let cells = line.strip_prefix('|')?.strip_suffix('|')?.split('|');
            let cells: Vec<String> = cells.map(|cell| cell.trim().to_owned()).collect();
            cells.try_into().ok()
        })
        .collect();
    let constants = constants(text)?;
    Ok(Law {
        title: opening(text).trim_end_matches('.').to_owned(),
        equation: sentences(&section("Equation")?.0),
        symbols: symbols.ok_or("a symbol without its four cells")?,
        source: section("Source")?.1,
        range: section("Range of validity")?.1,
        limits: section("Limits")?.1,
        scatter: scatter(&constants)?,
        values: values(&constants)?,
    })
}

/// Lines of an equation, each ended where its file ends a sentence or a part of one.
fn sentences(lines: &[&str]) -> Vec<String> {
    let mut sentences = vec![String::new()];
    for line in lines.iter().filter(|line| !line.is_empty()) {
        if let Some(last) = sentences.last_mut() {
            if !last.is_empty() {
                last.push(' ');
            }
            last.push_str(line);
        }
        if line.ends_with(['.', ';', ':']) {
            sentences.push(String::new());
        }
    }
    sentences.retain(|sentence| !sentence.is_empty());
    sentences
}

/// Every constant that is a law's scatter, by its name.
fn scatter(constants: &[Constant<'_>]) -> Result<Vec<Scatter>, String> {
    let named = constants
        .iter()
        .filter(|constant| constant.name.contains("SCATTER"));
    let read = |constant: &Constant<'_>| {
        let fault = || {
            format!(
                "{} is written in a way that is not understood",
                constant.name
            )
        };
        one_scatter(constant).ok_or_else(fault)
    };
    named.map(read).collect()
}

fn one_scatter(constant: &Constant<'_>) -> Option<Scatter> {
    let Constant { of, value, .. } = constant;
    if constant.kind != "Scatter" {
        return Some(Scatter::Absolute {
            of: of.clone(),
            deviation: value.parse().ok()?,
        });
    }
    if let Some(other) = value.strip_prefix("super::") {
        return Some(Scatter::As(other.split_once("::")?.0.to_owned()));
    }
    let field = |name: &str| {
        let value = value.split_once(&format!("{name}: "))?.1;
        Some(value.split(",\n").next()?.trim_matches('"'))
    };
    Some(Scatter::Relative {
        of: of.clone(),
        relative: field("relative")?.parse().ok()?,
        common: field("common")?.parse().ok()?,
        origin: field("origin")?.to_owned(),
    })
}
