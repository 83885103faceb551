//! Text on its way into the page.

/// Text that is no markup.
pub fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

/// The same, with names of the code set apart.
pub fn prose(text: &str) -> String {
    let parts = text.split('`').enumerate();
    parts
        .map(|(place, part)| match place % 2 {
            1 => format!("<code>{}</code>", escaped(part)),
            _ => escaped(part),
        })
        .collect()
}

/// Where a law stands on the page.
pub fn anchor(law: &str) -> String {
    law.replace(['/', '_'], "-")
}

/// A figure without the zeros at its end.
pub fn figure(number: &str) -> &str {
    if number.contains('.') {
        number.trim_end_matches('0').trim_end_matches('.')
    } else {
        number
    }
}

/// A part of one in per cent, without digits that say nothing.
pub fn percent(part: f64) -> String {
    let text = format!("{:.1}", 100.0 * part);
    format!("{} %", figure(&text))
}
