//! The page: devices, their kinds, and beside each other the laws that a kind can follow.

use std::fmt::Write as _;

use evenport::law::junction;
use evenport::{ChoiceInfo, FOLLOWS, Follows, KindInfo, catalogue};

use crate::evidence::{Check, Checks, PROPERTY};
use crate::law::{Law, Laws, Scatter};
use crate::values::Values;
use crate::write::{anchor, escaped, figure, percent, prose};

const HEAD: &str = r#"<!doctype html>
<html lang="en">
	<head>
		<meta charset="utf-8" />
		<meta name="viewport" content="width=device-width, initial-scale=1" />
		<meta name="color-scheme" content="light dark" />
		<meta name="description" content="Every law that Evenport computes with: equation, symbols, source, range and scatter." />
		<title>Laws and sources – Evenport</title>
		<link rel="icon" href="./icon.svg" type="image/svg+xml" />
		<link rel="stylesheet" href="./src/style/laws.css" />
	</head>
	<body>
"#;

const INTRODUCTION: &str = "Every law that this version computes with, as its own file in the program tells it. \
    Where authors differ they stand side by side, the one that is used unless you choose another first. \
    Scatter is one standard deviation of what the truth may lie off. A part of its variance is common: the same error at \
    every place and in all variants. The rest belongs to the place and is the same there in all variants. \
    A value marked “from memory” was not read from its source.";

/// What the page knows.
struct Page<'a> {
    laws: &'a Laws,
    checks: &'a Checks,
}

/// A folder of laws, and the kinds whose first law lies in it.
struct Device {
    folder: &'static str,
    kinds: Vec<&'static str>,
}

/// The whole page.
pub fn page(laws: &Laws, checks: &Checks) -> Result<String, String> {
    let page = Page { laws, checks };
    let devices = devices();
    let mut text = HEAD.to_owned();
    let _ = write!(
        text,
        "<div class=\"sheet\">\n<header><h1>Laws and sources</h1><p class=\"hint\">Evenport {}</p>\
         <p><a href=\"./index.html\">To the sheet</a></p></header>\n<main>\n<p class=\"introduction\">{}</p>\n",
        evenport::VERSION_TEXT,
        escaped(INTRODUCTION)
    );
    text.push_str(&page.contents(&devices)?);
    for device in &devices {
        let _ = write!(
            text,
            "<section aria-labelledby=\"{0}\">\n<h2 id=\"{0}\">{1}</h2>\n",
            anchor(&format!("device/{}", device.folder)),
            escaped(&page.name(device))
        );
        for kind in &device.kinds {
            text.push_str(&page.kind(kind)?);
        }
        text.push_str("</section>\n");
    }
    text.push_str("</main>\n</div>\n</body>\n</html>\n");
    Ok(text)
}

fn folder(law: &'static str) -> &'static str {
    law.split('/').next().unwrap_or(law)
}

/// Devices and their kinds, in the order of the list.
fn devices() -> Vec<Device> {
    let mut devices: Vec<Device> = Vec::new();
    let mut seen: Vec<&str> = Vec::new();
    for Follows { kind, law, .. } in &FOLLOWS {
        if seen.contains(kind) {
            continue;
        }
        seen.push(kind);
        let folder = folder(law);
        match devices.iter_mut().find(|device| device.folder == folder) {
            Some(device) => device.kinds.push(kind),
            None => devices.push(Device {
                folder,
                kinds: vec![kind],
            }),
        }
    }
    devices
}

/// Label and help of a kind.
fn words(kind: &str) -> Result<(&'static str, &'static str), String> {
    if let Some(info) = info(kind) {
        return Ok((info.label, info.help));
    }
    Ok(match kind {
        "engine" => ("engine", "what its inlet valves can pass"),
        "ambient" => (
            "air around the engine",
            "by altitude, where it is not typed",
        ),
        "bench" => ("flow bench", "readings taken at another depression"),
        "fuel" => (
            "fuel",
            "who gets how much of it, and what mixture that makes",
        ),
        other => return Err(format!("the kind {other} is in no list of the catalogue")),
    })
}

fn info(kind: &str) -> Option<&'static KindInfo> {
    let all = catalogue();
    let listed = all.losses.iter().chain(all.nodes);
    let mut listed = listed.chain([&all.blower, &all.cooler]);
    listed.find(|info| info.kind == kind)
}

/// Authors that a kind offers, the default first.
fn authors(kind: &str) -> &'static [ChoiceInfo] {
    match kind {
        "tee" | "wye" => catalogue().junction_laws,
        _ => info(kind).map_or(&[], |info| info.laws),
    }
}

/// For whom of a kind's authors a law holds, in words; empty where there is no choice.
fn when(follows: &Follows) -> String {
    let authors = authors(follows.kind);
    let place = authors
        .iter()
        .position(|author| author.name == follows.author);
    match place.map(|place| (place, authors[place].label)) {
        Some((0, label)) => format!("{label}, the default"),
        Some((_, label)) => format!("{label}, to choose"),
        None if authors.is_empty() => String::new(),
        None => "with every author".to_owned(),
    }
}

impl Page<'_> {
    fn name(&self, device: &Device) -> String {
        let named = self.laws.folders.get(device.folder);
        // A law that lies in no folder is a device of its own.
        let alone = || match device.folder.split_at_checked(1) {
            Some((first, rest)) => first.to_uppercase() + rest,
            None => String::new(),
        };
        named.cloned().unwrap_or_else(alone)
    }

    fn law(&self, name: &str) -> Result<&Law, String> {
        let law = self.laws.laws.get(name);
        law.ok_or_else(|| format!("no law in {name}"))
    }

    fn contents(&self, devices: &[Device]) -> Result<String, String> {
        let mut text = "<nav aria-label=\"Contents\">\n<ul>\n".to_owned();
        for device in devices {
            let _ = write!(
                text,
                "<li><a href=\"#{}\">{}</a>\n<ul>\n",
                anchor(&format!("device/{}", device.folder)),
                escaped(&self.name(device))
            );
            for kind in &device.kinds {
                let label = escaped(words(kind)?.0);
                let _ = writeln!(text, "<li><a href=\"#{kind}\">{label}</a></li>");
            }
            text.push_str("</ul></li>\n");
        }
        text.push_str("</ul>\n</nav>\n");
        Ok(text)
    }

    fn kind(&self, kind: &str) -> Result<String, String> {
        let (label, help) = words(kind)?;
        let mut text = format!(
            "<section class=\"kind\" aria-labelledby=\"{kind}\">\n<h3 id=\"{kind}\">{}</h3>\n<p>{}.</p>\n",
            escaped(&sentence(label)),
            escaped(&sentence(help))
        );
        let rows: Vec<&Follows> = FOLLOWS.iter().filter(|row| row.kind == kind).collect();
        // In full at the first kind that follows a law, by link at the others.
        let (full, linked): (Vec<&Follows>, Vec<&Follows>) = rows.into_iter().partition(|row| {
            let first = FOLLOWS.iter().find(|other| other.law == row.law);
            first.is_some_and(|first| first.kind == kind)
        });
        if !linked.is_empty() {
            let said = if full.is_empty() {
                "Follows"
            } else {
                "Follows also"
            };
            let _ = writeln!(text, "<p>{said}:</p>\n<ul class=\"follows\">");
            for row in linked {
                let when = when(row);
                let when = if when.is_empty() {
                    when
                } else {
                    format!(" ({when})")
                };
                let title = escaped(&self.law(row.law)?.title);
                let here = anchor(row.law);
                let _ = writeln!(
                    text,
                    "<li><a href=\"#{here}\">{title}</a>{}</li>",
                    escaped(&when)
                );
            }
            text.push_str("</ul>\n");
        }
        text.push_str("<div class=\"laws\">\n");
        for row in full {
            text.push_str(&self.article(row)?);
        }
        text.push_str("</div>\n</section>\n");
        Ok(text)
    }

    fn article(&self, row: &Follows) -> Result<String, String> {
        let law = self.law(row.law)?;
        let here = anchor(row.law);
        let mut text = format!(
            "<article id=\"{here}\" aria-labelledby=\"{here}-title\">\n<h4 id=\"{here}-title\">{}</h4>\n",
            escaped(&law.title)
        );
        let when = when(row);
        if !when.is_empty() {
            let _ = writeln!(text, "<p class=\"when\">{}</p>", escaped(&when));
        }
        let equation: Vec<String> = law.equation.iter().map(|line| prose(line)).collect();
        let _ = writeln!(
            text,
            "<p class=\"equation\"><span class=\"unseen\">Equation: </span>{}</p>",
            equation.join("<br />")
        );
        for values in &law.values {
            text.push_str(&table(values));
        }
        text.push_str(&symbols(law));
        let _ = write!(
            text,
            "<dl>\n<dt>Source</dt><dd>{}</dd>\n<dt>Holds for</dt><dd>{}</dd>\n<dt>Scatter</dt><dd>{}</dd>\n\
             <dt>Limits</dt><dd>{}</dd>\n</dl>\n",
            prose(&law.source),
            prose(&law.range),
            self.scatter(row.law, law)?,
            prose(&law.limits)
        );
        let also = FOLLOWS
            .iter()
            .filter(|other| other.law == row.law && other.kind != row.kind);
        let also: Result<Vec<String>, String> = also
            .map(|other| {
                Ok(format!(
                    "<a href=\"#{}\">{}</a>",
                    other.kind,
                    escaped(words(other.kind)?.0)
                ))
            })
            .collect();
        let also = also?;
        if !also.is_empty() {
            let _ = writeln!(
                text,
                "<p class=\"also\">Also followed by {}.</p>",
                also.join(", ")
            );
        }
        if let Some(checks) = self.checks.get(row.law) {
            text.push_str(&evidence(checks, &law.title)?);
        }
        text.push_str("</article>\n");
        Ok(text)
    }

    fn scatter(&self, name: &str, law: &Law) -> Result<String, String> {
        if law.scatter.is_empty() {
            return Ok("None of its own.".to_owned());
        }
        let parts: Result<Vec<String>, String> = law
            .scatter
            .iter()
            .map(|scatter| match scatter {
                Scatter::Relative {
                    of,
                    relative,
                    common,
                    origin,
                } => Ok(format!(
                    "± {} {}, {} of its variance common: {}.",
                    percent(*relative),
                    prose(of.trim_start_matches("Scatter ").trim_end_matches('.')),
                    shared(*common),
                    prose(origin)
                )),
                Scatter::Absolute { of, deviation } => Ok(format!(
                    "± {deviation}, {} of its variance common. {}",
                    shared(junction::COMMON),
                    prose(&of.replace(" [-]", ""))
                )),
                Scatter::As(other) => {
                    let path = format!("{}/{other}", name.split('/').next().unwrap_or_default());
                    let title = escaped(&self.law(&path)?.title);
                    Ok(format!(
                        "As that of <a href=\"#{}\">{title}</a>.",
                        anchor(&path)
                    ))
                }
            })
            .collect();
        Ok(parts?.join("<br />"))
    }
}

/// A sentence's beginning in capitals.
fn sentence(words: &str) -> String {
    match words.split_at_checked(1) {
        Some((first, rest)) => first.to_uppercase() + rest,
        None => words.to_owned(),
    }
}

/// Which part of a variance is common.
fn shared(common: f64) -> String {
    if common == 1.0 {
        "all".to_owned()
    } else if common == 0.5 {
        "half".to_owned()
    } else {
        percent(common)
    }
}

/// A difference as it is printed; no difference is a plain zero.
fn difference(printed: &str) -> &str {
    if printed.ends_with("0.0e0") {
        "0"
    } else {
        printed
    }
}

/// A table of the code, as text that a narrow page can break.
fn table(values: &Values) -> String {
    let row = |row: &Vec<String>| {
        let numbers: Vec<&str> = row
            .iter()
            .map(|number| number.strip_suffix(".0").unwrap_or(number))
            .collect();
        numbers.join(if values.pairs { ": " } else { ", " })
    };
    let rows: Vec<String> = values.rows.iter().map(row).collect();
    let between = if values.pairs { "; " } else { "<br />" };
    let of = prose(&values.of);
    format!(
        "<p class=\"values\"><strong>{of}</strong><br />{}</p>\n",
        rows.join(between)
    )
}

fn symbols(law: &Law) -> String {
    let mut text =
        "<table>\n<thead><tr><th scope=\"col\">symbol</th><th scope=\"col\">meaning</th>\
        <th scope=\"col\">unit</th><th scope=\"col\">in the code</th></tr></thead>\n<tbody>\n"
            .to_owned();
    for [symbol, code, meaning, unit] in &law.symbols {
        let _ = writeln!(
            text,
            "<tr><td>{}</td><td>{}</td><td>{}</td><td>{}</td></tr>",
            prose(symbol),
            prose(meaning),
            prose(unit),
            prose(code)
        );
    }
    text.push_str("</tbody>\n</table>\n");
    text
}

/// The checks against values from outside, folded, and how many properties are checked beside them.
fn evidence(checks: &[Check], title: &str) -> Result<String, String> {
    let (properties, outside): (Vec<_>, Vec<_>) =
        checks.iter().partition(|check| check.kind == PROPERTY);
    let count = outside.len();
    let noun = if count == 1 { "value" } else { "values" };
    let mut text = format!(
        "<details>\n<summary>Checked against {count} {noun} from outside and {} properties</summary>\n\
         <div class=\"box\" role=\"group\" tabindex=\"0\" aria-label=\"Checks of {}\">\n<table>\n<thead><tr><th scope=\"col\">case</th>\
         <th scope=\"col\">value</th><th scope=\"col\">ours</th><th scope=\"col\">difference</th>\
         <th scope=\"col\">allowed</th><th scope=\"col\">kind</th><th scope=\"col\">source</th></tr></thead>\n<tbody>\n",
        properties.len(),
        escaped(title)
    );
    for check in outside {
        let _ = writeln!(
            text,
            "<tr><td>{}</td><td class=\"number\">{}</td><td class=\"number\">{}</td><td class=\"number\">{}</td>\
             <td>{}</td><td>{}</td><td>{}</td></tr>",
            escaped(&check.case),
            figure(&check.value),
            figure(&check.ours),
            difference(&check.difference),
            escaped(&check.allowed),
            escaped(&check.kind),
            escaped(&check.source)
        );
    }
    text.push_str("</tbody>\n</table>\n</div>\n</details>\n");
    Ok(text)
}
