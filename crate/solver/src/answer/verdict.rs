//! The verdict in words. Each kind of outcome has a sentence of its own.

use super::{CylinderAnswer, Draw, Gap, Refusal, RefusalKind, State, VerdictKind};

/// Cylinders whose distances from the mean differ by less than this are tied [-].
const TIE: f64 = 1e-9;

/// What a verdict speaks of.
pub struct Facts<'a> {
    /// Which draw.
    pub draw: Draw,
    /// Largest acceptable spread [-].
    pub limit: f64,
    /// Spread [-].
    pub spread: f64,
    /// Cylinders.
    pub cylinders: &'a [CylinderAnswer],
    /// Why the worst differs from the best.
    pub gap: Option<&'a Gap>,
    /// Branch whose choked section the worst cylinder's air passes.
    pub choked: Option<&'a str>,
}

/// Where the draw takes place, as it stands in a sentence.
pub fn place(draw: Draw) -> &'static str {
    match draw {
        Draw::BenchOneAtATime => "on the bench, one port at a time",
        Draw::BenchAllOpen => "on the bench with all ports open",
        Draw::Running => "while running",
        Draw::CycleMean => "at mean flow over the cycle",
    }
}

/// The verdict on a solved draw.
pub fn verdict(facts: &Facts<'_>) -> (VerdictKind, String) {
    let place = place(facts.draw);
    let limit = percent(facts.limit);
    let spread = percent(facts.spread);
    let worst = worst(facts.cylinders);
    let Some(first) = worst.first() else {
        return (VerdictKind::Even, format!("Nothing draws {place}."));
    };
    if facts.cylinders.len() == 1 {
        return (
            VerdictKind::Even,
            format!("The only cylinder gets all the air {place}; there is nothing to even out."),
        );
    }
    if let Some(branch) = facts.choked {
        let sentence = format!(
            "Cylinder {} is {} {place}: a section of branch {branch} on its way is choked; the spread is {spread} against a limit of {limit}.",
            first.cylinder,
            by_how_much(first),
        );
        return (VerdictKind::Choked, sentence);
    }
    let within = facts.spread <= facts.limit
        && facts
            .cylinders
            .iter()
            .all(|cylinder| cylinder.state == State::Even);
    if within {
        let doubt = facts
            .cylinders
            .iter()
            .map(|cylinder| cylinder.doubt)
            .fold(0.0, f64::max);
        let sentence = format!(
            "Every cylinder gets its share {place}: the spread is {spread}, inside the limit of {limit}; the estimate itself is good to about {} a cylinder.",
            percent(doubt),
        );
        return (VerdictKind::Even, sentence);
    }
    let found = facts
        .cylinders
        .iter()
        .any(|cylinder| matches!(cylinder.state, State::Starved | State::Overfed));
    if !found {
        let sentence = format!(
            "Too close to tell {place}: the spread of {spread} is over the limit of {limit}, but cylinder {}, the farthest from the mean at {}, is uncertain by {}.",
            first.cylinder,
            signed_percent(first.deviation),
            percent(first.doubt),
        );
        return (VerdictKind::WithinDoubt, sentence);
    }
    if worst.len() > 1 {
        let names: Vec<&str> = worst
            .iter()
            .map(|cylinder| cylinder.cylinder.as_str())
            .collect();
        let sentence = format!(
            "Cylinders {} are farthest from the mean {place}, each {}; the spread is {spread} against a limit of {limit}{}.",
            listed(&names),
            by_how_much(first),
            because(facts.gap),
        );
        return (VerdictKind::Tied, sentence);
    }
    let word = match first.state {
        State::Starved => "is starved",
        State::Overfed => "is overfed",
        State::Even | State::TooCloseToTell => "is farthest from the mean",
    };
    let sentence = format!(
        "Cylinder {} {word} {place}: it gets {} air than the mean (give or take {}), and the spread is {spread} against a limit of {limit}{}.",
        first.cylinder,
        more_or_less(first.deviation),
        percent(first.doubt),
        because(facts.gap),
    );
    (VerdictKind::Uneven, sentence)
}

/// The verdict on a draw without an answer.
pub fn refusal(
    kind: RefusalKind,
    draw: Draw,
    element: &str,
    greatest_speed: Option<f64>,
) -> Refusal {
    let sentence = match (kind, greatest_speed) {
        (RefusalKind::SectionTooSmall, Some(speed)) => format!(
            "The engine asks for more air than a section of {element} can pass: it chokes {}, and feeds at most {:.0} rpm. Enlarge that section or lower the speed.",
            place(draw),
            speed * 60.0,
        ),
        (RefusalKind::SectionTooSmall, None) => format!(
            "More air is asked for than a section of {element} can pass: it chokes {}. Enlarge that section.",
            place(draw),
        ),
        (RefusalKind::NotConverged, _) => format!(
            "No answer {}: the equations could not be met, worst in {element}. Look at that row first; a section far from its neighbours' is the usual cause.",
            place(draw),
        ),
    };
    Refusal {
        kind,
        sentence,
        elements: vec![element.to_owned()],
        greatest_speed,
    }
}

/// Cylinders farthest from the mean; several when they tie.
pub fn worst(cylinders: &[CylinderAnswer]) -> Vec<&CylinderAnswer> {
    let farthest = cylinders
        .iter()
        .map(|cylinder| cylinder.deviation.abs())
        .fold(0.0, f64::max);
    cylinders
        .iter()
        .filter(|cylinder| farthest - cylinder.deviation.abs() <= TIE)
        .collect()
}

fn because(gap: Option<&Gap>) -> String {
    let Some(gap) = gap else { return String::new() };
    // The part that pulls the same way as the whole and is the largest of them.
    let cause = gap.parts.iter().find(|part| part.amount * gap.total > 0.0);
    match cause {
        Some(cause) => {
            let part = (cause.amount / gap.total * 100.0).min(999.0);
            let from = format!("the gap to cylinder {} comes", gap.best);
            if part >= 100.0 {
                format!(
                    "; {from} from {} ({}), less what others give back",
                    cause.label, cause.element
                )
            } else {
                format!(
                    "; {from} mostly from {} ({}), {part:.0} % of it",
                    cause.label, cause.element
                )
            }
        }
        None => String::new(),
    }
}

fn by_how_much(cylinder: &CylinderAnswer) -> String {
    format!("{} of the mean", signed_percent(cylinder.deviation))
        .replace(" of the mean", " off the mean")
}

fn more_or_less(deviation: f64) -> String {
    format!(
        "{} {}",
        percent(deviation.abs()),
        if deviation < 0.0 { "less" } else { "more" }
    )
}

fn listed(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Two significant digits: the doubt is of that order.
fn percent(value: f64) -> String {
    let value = value * 100.0;
    let digits = if value >= 9.95 || value == 0.0 {
        0
    } else if value >= 0.995 {
        1
    } else {
        2
    };
    format!("{value:.digits$} %")
}

fn signed_percent(value: f64) -> String {
    format!(
        "{}{}",
        if value < 0.0 { "-" } else { "+" },
        percent(value.abs())
    )
}
