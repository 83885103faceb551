//! Many blown engines at random: solved with a certificate, or refused for a reason that names a limit.

use evenport::{Loss, Mixing, Outcome, RefusalKind, Study, solve};

use super::blown_v8;

/// A stream of numbers between 0 and 1, the same each time: a linear congruential generator (Knuth's).
struct Stream(u64);

impl Stream {
    fn next(&mut self) -> f64 {
        let (factor, increment) = (6_364_136_223_846_793_005, 1_442_695_040_888_963_407);
        self.0 = self.0.wrapping_mul(factor).wrapping_add(increment);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.next())
    }
}

fn varied(stream: &mut Stream) -> Study {
    let mut study = blown_v8();
    for branch in &mut study.network.branches {
        let factor = stream.between(0.5, 2.0);
        for loss in &mut branch.losses {
            match loss {
                Loss::Opening { area, .. } if branch.bypass => *area = stream.between(1e-6, 1e-3),
                Loss::Opening { area, .. }
                | Loss::EntryRounded { area, .. }
                | Loss::Core { area, .. } => *area *= factor,
                Loss::Duct {
                    area, perimeter, ..
                }
                | Loss::Bend {
                    area, perimeter, ..
                } => {
                    *area *= factor;
                    *perimeter = perimeter.map(|perimeter| perimeter * factor.sqrt());
                }
                Loss::TypedK { k, .. } => *k *= factor,
                _ => {}
            }
        }
        if let Some(blower) = &mut branch.blower {
            (blower.volumetric_table, blower.isentropic_table) = (None, None);
            blower.volumetric_efficiency = Some(stream.between(0.7, 1.0));
            blower.isentropic_efficiency = Some(stream.between(0.4, 0.8));
            blower.drive_ratio = Some(stream.between(1.0, 3.5));
            if stream.next() < 0.3 {
                blower.drive_ratio = None;
                blower.boost = Some(stream.between(1e4, 2e5));
                blower.boost_node = Some("lid rear".to_owned());
            }
        }
        if branch.id.starts_with("runner") && stream.next() < 0.3 {
            branch.temperature_rise = Some(stream.between(0.5, 20.0));
        }
    }
    let cooler = &mut study.coolers[0];
    let mixings = [Mixing::BothUnmixed, Mixing::CoolantMixed, Mixing::AirMixed];
    cooler.mixing = mixings[(3.0 * stream.next()) as usize];
    cooler.coolant_flow = (stream.next() < 0.8).then(|| stream.between(0.4, 3.0));
    cooler.coolant_temperature = stream.between(275.0, 370.0);
    cooler.effectiveness = stream.between(0.2, 0.7);
    if stream.next() < 0.3 {
        cooler.series.clear();
    }
    study.engine.speed = Some(stream.between(15.0, 130.0));
    study.engine.volumetric_efficiency = Some(stream.between(0.6, 1.1));
    study.engine.charge_exponent = Some(stream.next());
    if stream.next() < 0.3 {
        study.engine.firing_order.clear();
    }
    study
}

/// Area of the bypass's opening [m2].
fn bypass(study: &Study) -> f64 {
    let branch = study.network.branches.iter().find(|branch| branch.bypass);
    match branch.map(|branch| &branch.losses[0]) {
        Some(Loss::Opening { area, .. }) => *area,
        other => panic!("{other:?}"),
    }
}

#[test]
fn every_blown_engine_is_solved_or_refused_for_a_limit() {
    let count =
        std::env::var("EVENPORT_BLOWN").map_or(150, |count| count.parse().expect("a number"));
    let mut stream = Stream(20_261_126);
    let mut refused = 0;
    for number in 0..count {
        let study = varied(&mut stream);
        let answer = solve(&study).unwrap_or_else(|errors| panic!("{number}: {errors:#?}"));
        for draw in &answer.draws {
            match &draw.outcome {
                Outcome::Solved(solved) => {
                    let certificate = &solved.certificate;
                    assert!(certificate.imbalance <= 1e-10 && certificate.energy <= 1e-9);
                }
                Outcome::Refused(refusal) => {
                    refused += 1;
                    let limit = match refusal.reason {
                        RefusalKind::SectionTooSmall => true,
                        // Only a bypass that is wide for the engine's air can do that.
                        RefusalKind::HotBypass => bypass(&study) > 2e-4,
                        _ => false,
                    };
                    assert!(limit, "{number}, {:?}: {}", draw.draw, refusal.sentence);
                }
            }
        }
    }
    println!("{refused} draws refused of {count} studies");
    assert!(refused < count, "most should be solved: {refused}");
}
