//! The speed range is the running draw at each of its speeds.

use evenport::{PointOutcome, speed_range, speeds};

use super::{blown_v8, close, operating, running};

#[test]
fn every_speed_of_the_range_is_its_own_running_draw() {
    let mut study = blown_v8();
    let all = speeds(&study);
    assert_eq!(all.len(), 60);
    close(all[0], 30.0, 1e-12);
    close(all[59], 110.0, 1e-12);
    let points = speed_range(&study, &all).expect("a valid study");
    for place in [0, 17, 40, 59] {
        study.engine.speed = Some(all[place]);
        let alone = running(&study);
        let PointOutcome::Solved(point) = &points[place].outcome else {
            panic!("{:?}", points[place]);
        };
        close(point.total, alone.total, 1e-9);
        close(point.spread, alone.spread, 1e-8);
        let found = operating(&alone);
        close(
            point.boost.expect("a boost"),
            found.boost.as_ref().expect("too").pressure,
            1e-8,
        );
        close(point.loss, found.loss, 1e-8);
        close(point.charge_temperature, found.charge_temperature, 1e-10);
        close(
            point.pressure_ratio.expect("a blower"),
            found.blowers[0].pressure_ratio,
            1e-9,
        );
        for (point, alone) in point.shares.iter().zip(&alone.cylinders) {
            close(*point, alone.share, 1e-9);
        }
        for (point, alone) in point.temperatures.iter().zip(&alone.cylinders) {
            close(*point, alone.temperature, 1e-10);
        }
    }
}

#[test]
fn speeds_that_a_section_does_not_feed_are_refused_alone() {
    let mut study = blown_v8();
    study.network.branches.iter_mut().for_each(|branch| {
        if branch.id == "runner 5" {
            branch.losses.truncate(2);
            branch.losses.push(crate::support::typed(0.5, 3.4e-4));
        }
    });
    let all = speeds(&study);
    let points = speed_range(&study, &all).expect("a valid study");
    let refused: Vec<bool> = points
        .iter()
        .map(|point| matches!(point.outcome, PointOutcome::Refused { .. }))
        .collect();
    assert!(!refused[0] && refused[59], "{refused:?}");
    // Once too fast, always too fast.
    assert!(
        refused.windows(2).all(|pair| pair[0] <= pair[1]),
        "{refused:?}"
    );
    let PointOutcome::Refused { sentence } = &points[59].outcome else {
        panic!("seen above");
    };
    assert!(sentence.contains("runner 5"), "{sentence}");
}

#[test]
fn a_study_without_an_engine_has_no_range() {
    let mut study = blown_v8();
    study.engine.speed = None;
    assert_eq!(speeds(&study).len(), 60, "the ends are typed");
    study.engine.speed_to = None;
    assert!(speeds(&study).is_empty());
    study.engine.volumetric_efficiency = None;
    assert!(
        speed_range(&study, &[50.0])
            .expect("a valid study")
            .is_empty()
    );
}

/// What a sweep shows of a study is what its own answer says, refusals past a blower's table included.
#[test]
fn figures_are_refused_where_the_answer_is() {
    let mut study = blown_v8();
    let mut refused = 0;
    for speed in [50.0, 100.0, 140.0, 200.0] {
        study.engine.speed = Some(speed);
        let answer = evenport::solve(&study).expect("a valid study");
        let running = answer
            .draws
            .iter()
            .find(|draw| draw.draw == evenport::Draw::Running)
            .expect("a complete engine");
        let figures = evenport::figures(&study, &[evenport::Draw::Running]);
        match (&running.outcome, &figures[0]) {
            (evenport::Outcome::Solved(solved), evenport::FiguresOutcome::Solved(figures)) => {
                close(figures.spread, solved.spread, 1e-8);
            }
            (evenport::Outcome::Refused(said), evenport::FiguresOutcome::Refused { sentence }) => {
                assert_eq!(&said.sentence, sentence);
                refused += 1;
            }
            (answer, figures) => panic!("{speed}: {answer:?} {figures:?}"),
        }
    }
    assert!(refused > 0);
}
