//! The examples that the page opens: each says what its name promises.

use evenport::{Answer, Draw, Study, VerdictKind, read, solve};

use crate::support::solved;

fn example(text: &str) -> (Study, Answer) {
    let study = read(text).unwrap_or_else(|errors| panic!("{errors:#?}"));
    let answer = solve(&study).unwrap_or_else(|errors| panic!("{errors:#?}"));
    (study, answer)
}

#[test]
fn the_inline_log_feeds_unevenly_and_the_tapered_one_mends_it() {
    let (_, inline) = example(include_str!("../../examples/inline_log/network.json"));
    let (_, tapered) = example(include_str!("../../examples/tapered_log/network.json"));
    let (before, after) = (
        solved(&inline, Draw::Running),
        solved(&tapered, Draw::Running),
    );
    assert!(before.spread > 0.004, "{}", before.spread);
    assert!(after.spread < 0.004, "{}", after.spread);
    assert_eq!(after.verdict, VerdictKind::Even);
    let sentence = &before.sentence;
    assert!(sentence.starts_with("Cylinder 4 is overfed"), "{sentence}");
    assert!(sentence.contains("from header log 1, "), "{sentence}");
    let (before, after) = (
        solved(&inline, Draw::BenchAllOpen),
        solved(&tapered, Draw::BenchAllOpen),
    );
    assert!(after.spread < 0.7 * before.spread);
    // The far end of an end-fed log gets most when all draw at once.
    assert!(before.cylinders[3].deviation > 0.0 && before.cylinders[0].deviation < 0.0);
}

#[test]
fn the_symmetric_lid_is_even_to_rounding_when_all_draw_alike() {
    let (_, answer) = example(include_str!("../../examples/symmetric_lid/network.json"));
    for draw in [Draw::BenchOneAtATime, Draw::BenchAllOpen, Draw::CycleMean] {
        let solved = solved(&answer, draw);
        assert!(solved.spread < 1e-12, "{draw:?} {}", solved.spread);
        assert_eq!(solved.verdict, VerdictKind::Even);
    }
}

#[test]
fn the_v8_lid_names_its_narrow_pocket() {
    let (study, answer) = example(include_str!("../../examples/v8_lid/network.json"));
    assert!(study.notes.contains("Invented"));
    assert_eq!(answer.headline, Draw::Running);
    let solved = solved(&answer, Draw::Running);
    let gap = solved.gap.as_ref().expect("a gap");
    assert_eq!(gap.worst, "7");
    // The window of that pocket is the smallest of the lid.
    assert!(gap.parts[0].element.contains('7'), "{:?}", gap.parts[0]);
    assert!(
        solved
            .sentence
            .contains("Cylinder 7 is starved while running"),
        "{}",
        solved.sentence
    );
}

#[test]
fn every_draw_of_every_example_has_its_certificate() {
    for text in [
        include_str!("../../examples/inline_log/network.json"),
        include_str!("../../examples/tapered_log/network.json"),
        include_str!("../../examples/v8_lid/network.json"),
        include_str!("../../examples/symmetric_lid/network.json"),
    ] {
        let (_, answer) = example(text);
        assert_eq!(answer.draws.len(), 4);
        for draw in &answer.draws {
            let certificate = solved(&answer, draw.draw).certificate;
            assert!(
                certificate.imbalance <= 1e-10 && certificate.closure <= 1e-9,
                "{certificate:?}"
            );
        }
    }
}
