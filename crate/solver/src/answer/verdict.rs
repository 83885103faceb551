//! The verdict in words. Each kind of outcome has a sentence of its own.

use super::{CylinderAnswer, Draw, Gap, GapPart, Refusal, RefusalKind, State, VerdictKind};
use crate::digits::rounded;

/// Cylinders whose distances from the mean differ by less than this are tied [-].
pub const TIE: f64 = 1e-9;

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
            "Too close to tell {place}: the spread is {spread} against a limit of {limit}, but cylinder {}, the farthest from the mean at {}, is uncertain by {}.",
            first.cylinder,
            signed_percent(first.deviation),
            percent(first.doubt),
        );
        return (VerdictKind::WithinDoubt, sentence);
    }
    if worst.len() > 1 {
        let sentence = format!(
            "{} {place}; the spread is {spread} against a limit of {limit}{}.",
            farthest(&worst),
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
        "Cylinder {} {word} {place}: {} (give or take {}), and the spread is {spread} against a limit of {limit}{}.",
        first.cylinder,
        gets(first.deviation),
        percent(first.doubt),
        because(facts.gap),
    );
    (VerdictKind::Uneven, sentence)
}

/// The refusal of a blower that would run beyond one of its efficiency tables.
pub fn past_table(branch: &str, which: &str, side: &str) -> Refusal {
    Refusal {
        reason: RefusalKind::PastTable,
        sentence: format!(
            "No answer while running: {branch} runs {side}, where its {which} efficiency is not known. Change its drive, or extend the table."
        ),
        elements: vec![branch.to_owned()],
        greatest_speed: None,
    }
}

/// The refusal of a bypass that heats the blower's own inlet without end.
pub fn hot_bypass(draw: Draw, branch: &str) -> Refusal {
    Refusal {
        reason: RefusalKind::HotBypass,
        sentence: format!(
            "No answer {}: with {branch} shut there is one, but open it returns so much heated air to the blower's inlet that no steady state is left. Make it smaller, or lead it to where its air is cooled.",
            place(draw)
        ),
        elements: vec![branch.to_owned()],
        greatest_speed: None,
    }
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
            "The engine asks for more air than a section of {element} can pass: it chokes {}, and feeds at most {} rpm. Enlarge that section or lower the speed.",
            place(draw),
            rounded(speed * 60.0, 0),
        ),
        (RefusalKind::SectionTooSmall, None) => format!(
            "More air is asked for than a section of {element} can pass: it chokes {}. Enlarge that section.",
            place(draw),
        ),
        (_, _) => format!(
            "No answer {}: the equations could not be met, worst in {element}. Look at that row first; a section far from its neighbours' is the usual cause.",
            place(draw),
        ),
    };
    Refusal {
        reason: kind,
        sentence,
        elements: vec![element.to_owned()],
        greatest_speed,
    }
}

/// Cylinders farthest from the mean; several when they tie. Those that are starved or overfed for
/// certain go before those that are too close to tell.
pub fn worst(cylinders: &[CylinderAnswer]) -> Vec<&CylinderAnswer> {
    let certain =
        |cylinder: &&CylinderAnswer| matches!(cylinder.state, State::Starved | State::Overfed);
    let mut those: Vec<&CylinderAnswer> = cylinders.iter().filter(certain).collect();
    if those.is_empty() {
        those = cylinders.iter().collect();
    }
    let farthest = those
        .iter()
        .map(|cylinder| cylinder.deviation.abs())
        .fold(0.0, f64::max);
    those.retain(|cylinder| farthest - cylinder.deviation.abs() <= TIE);
    those
}

fn because(gap: Option<&Gap>) -> String {
    let Some(gap) = gap else { return String::new() };
    // The part that pulls the same way as the whole and is the largest of them.
    let cause = gap.parts.iter().find(|part| part.amount * gap.total > 0.0);
    match cause {
        Some(cause) => {
            let part = (cause.amount / gap.total * 100.0).min(999.0);
            let from = format!("the gap to cylinder {} comes", gap.best);
            let GapPart { label, element, .. } = cause;
            // What the ends of a branch cost is told with the node's name.
            let what = if label.ends_with(element) {
                label.clone()
            } else {
                format!("{label} ({element})")
            };
            if part >= 100.0 {
                format!("; {from} from {what}, less what others give back")
            } else {
                format!("; {from} mostly from {what}, {} % of it", rounded(part, 0))
            }
        }
        None => String::new(),
    }
}

/// Cylinders that tie for the farthest place, which may lie on either side of the mean.
fn farthest(tied: &[&CylinderAnswer]) -> String {
    let named = |less: bool| -> Vec<&str> {
        let side = tied.iter().filter(|one| (one.deviation < 0.0) == less);
        side.map(|one| one.cylinder.as_str()).collect()
    };
    let (less, more) = (named(true), named(false));
    let noun = |names: &[&str]| {
        if names.len() > 1 {
            "Cylinders"
        } else {
            "Cylinder"
        }
    };
    let verb = |names: &[&str]| if names.len() > 1 { "get" } else { "gets" };
    if less.is_empty() || more.is_empty() {
        let names = if less.is_empty() { more } else { less };
        return format!(
            "Cylinders {} each get {} air than the mean",
            listed(&names),
            more_or_less(tied[0].deviation)
        );
    }
    format!(
        "{} {} {} {} less air than the mean, {} as much more",
        noun(&less),
        listed(&less),
        verb(&less),
        percent(tied[0].deviation.abs()),
        listed(&more)
    )
}

fn by_how_much(cylinder: &CylinderAnswer) -> String {
    format!("{} off the mean", signed_percent(cylinder.deviation))
}

/// What a cylinder gets; nobody gets less than nothing.
fn gets(deviation: f64) -> String {
    if deviation < -1.0 {
        format!(
            "air comes out of it, {} of a mean share",
            percent(-1.0 - deviation)
        )
    } else {
        format!("it gets {} air than the mean", more_or_less(deviation))
    }
}

fn more_or_less(deviation: f64) -> String {
    format!(
        "{} {}",
        percent(deviation.abs()),
        if deviation < 0.0 { "less" } else { "more" }
    )
}

/// Names as they stand in a sentence.
pub fn listed(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Two significant digits: the doubt is of that order.
fn percent(value: f64) -> String {
    let value = value * 100.0;
    let decimals = if value >= 9.95 || value == 0.0 {
        0
    } else if value >= 0.995 {
        1
    } else {
        2
    };
    format!("{} %", rounded(value, decimals))
}

fn signed_percent(value: f64) -> String {
    format!(
        "{}{}",
        if value < 0.0 { "−" } else { "+" },
        percent(value.abs())
    )
}

#[cfg(test)]
mod tests {
    use super::super::{GapPart, GapQuantity};
    use super::*;

    fn cylinder(name: &str, deviation: f64, doubt: f64, state: State) -> CylinderAnswer {
        CylinderAnswer {
            cylinder: name.to_owned(),
            share: 0.25 * (1.0 + deviation),
            deviation,
            doubt,
            state,
            flow: 0.1,
            pressure: 1.5e5,
            temperature: 330.0,
            ports: Vec::new(),
            doubt_causes: Vec::new(),
        }
    }

    fn told(
        cylinders: &[CylinderAnswer],
        spread: f64,
        choked: Option<&str>,
    ) -> (VerdictKind, String) {
        let gap = Gap {
            worst: "1".to_owned(),
            best: "3".to_owned(),
            quantity: GapQuantity::Share,
            total: -0.02,
            parts: vec![GapPart {
                element: "window 1".to_owned(),
                loss: Some(0),
                label: "opening in a wall".to_owned(),
                amount: -0.015,
            }],
        };
        verdict(&Facts {
            draw: Draw::BenchAllOpen,
            limit: 0.03,
            spread,
            cylinders,
            gap: Some(&gap),
            choked,
        })
    }

    #[test]
    fn an_even_engine_is_told_its_spread_and_how_good_the_estimate_is() {
        let even = [
            cylinder("1", -0.005, 0.012, State::Even),
            cylinder("2", 0.005, 0.01, State::Even),
        ];
        let (kind, sentence) = told(&even, 0.01, None);
        assert_eq!(kind, VerdictKind::Even);
        assert_eq!(
            sentence,
            "Every cylinder gets its share on the bench with all ports open: the spread is 1.0 %, inside the limit of 3.0 %; the estimate itself is good to about 1.2 % a cylinder."
        );
    }

    #[test]
    fn a_starved_cylinder_is_named_with_the_cause_of_its_gap() {
        let uneven = [
            cylinder("1", -0.05, 0.02, State::Starved),
            cylinder("2", 0.02, 0.03, State::TooCloseToTell),
            cylinder("3", 0.03, 0.02, State::Overfed),
        ];
        let (kind, sentence) = told(&uneven, 0.08, None);
        assert_eq!(kind, VerdictKind::Uneven);
        assert!(sentence.starts_with("Cylinder 1 is starved"), "{sentence}");
        assert!(
            sentence.contains("5.0 % less air than the mean (give or take 2.0 %)"),
            "{sentence}"
        );
        assert!(
            sentence.contains("mostly from opening in a wall (window 1), 75 % of it"),
            "{sentence}"
        );
    }

    #[test]
    fn a_cylinder_that_air_comes_out_of_gets_no_negative_share() {
        let backwards = [
            cylinder("1", -2.43, 0.2, State::Starved),
            cylinder("2", 0.0, 0.2, State::Even),
        ];
        let (_, sentence) = told(&backwards, 2.43, None);
        assert!(
            sentence.contains("air comes out of it, 143 % of a mean share (give or take 20 %)"),
            "{sentence}"
        );
    }

    #[test]
    fn what_is_certain_goes_before_what_is_farther_but_too_close_to_tell() {
        let mixed = [
            cylinder("1", -0.06, 0.09, State::TooCloseToTell),
            cylinder("2", 0.05, 0.01, State::Overfed),
        ];
        let (_, sentence) = told(&mixed, 0.11, None);
        assert!(sentence.starts_with("Cylinder 2 is overfed"), "{sentence}");
    }

    #[test]
    fn cylinders_that_tie_are_named_together() {
        let tied = [
            cylinder("1", -0.05, 0.02, State::Starved),
            cylinder("2", 0.1 - 0.05, 0.02, State::Overfed),
        ];
        let (kind, sentence) = told(&tied, 0.1, None);
        assert_eq!(kind, VerdictKind::Tied);
        assert!(
            sentence.starts_with("Cylinder 1 gets 5.0 % less air than the mean, 2 as much more"),
            "{sentence}"
        );
        let tied = [
            cylinder("1", 0.05, 0.02, State::Overfed),
            cylinder("2", -0.02, 0.02, State::Even),
            cylinder("3", 0.05, 0.02, State::Overfed),
        ];
        let (_, sentence) = told(&tied, 0.07, None);
        assert!(
            sentence.starts_with("Cylinders 1 and 3 each get 5.0 % more air than the mean on the"),
            "{sentence}"
        );
    }

    #[test]
    fn a_spread_inside_the_doubt_is_too_close_to_tell() {
        let unsure = [
            cylinder("1", -0.03, 0.06, State::TooCloseToTell),
            cylinder("2", 0.02, 0.06, State::TooCloseToTell),
        ];
        let (kind, sentence) = told(&unsure, 0.05, None);
        assert_eq!(kind, VerdictKind::WithinDoubt);
        assert!(sentence.starts_with("Too close to tell"), "{sentence}");
        assert!(
            sentence.contains(
                "cylinder 1, the farthest from the mean at −3.0 %, is uncertain by 6.0 %"
            ),
            "{sentence}"
        );
    }

    #[test]
    fn a_choked_way_is_named() {
        let starved = [
            cylinder("1", -0.2, 0.02, State::Starved),
            cylinder("2", 0.1, 0.02, State::Overfed),
        ];
        let (kind, sentence) = told(&starved, 0.3, Some("runner 1"));
        assert_eq!(kind, VerdictKind::Choked);
        assert!(
            sentence.contains("a section of branch runner 1 on its way is choked"),
            "{sentence}"
        );
    }

    #[test]
    fn a_refusal_says_what_and_where_and_what_to_do() {
        let refused = refusal(
            RefusalKind::SectionTooSmall,
            Draw::Running,
            "runner 1",
            Some(50.0),
        );
        assert!(refused.sentence.contains("runner 1"));
        assert!(
            refused.sentence.contains("at most 3000 rpm"),
            "{}",
            refused.sentence
        );
        assert!(
            refused
                .sentence
                .ends_with("Enlarge that section or lower the speed.")
        );
        let refused = refusal(RefusalKind::NotConverged, Draw::BenchAllOpen, "leg 2", None);
        assert!(
            refused
                .sentence
                .starts_with("No answer on the bench with all ports open")
        );
    }
}
