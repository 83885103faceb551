//! A draw in a few numbers, for many studies that differ a little: a dimension swept, versions compared.

use super::build::refusal;
use super::whole::spread;
use super::{Draw, Figures, FiguresOutcome};
use crate::draw::Redrawn;
use crate::gate;
use crate::model::{Model, Purpose};
use crate::study::Study;

/// The figures of some draws of a study, one for each draw.
pub fn figures(study: &Study, draws: &[Draw]) -> Vec<FiguresOutcome> {
    let errors = gate::check(study);
    let of = |draw: &Draw| {
        if !errors.is_empty() {
            return FiguresOutcome::Wrong {
                errors: errors.clone(),
            };
        }
        match Redrawn::new(study, *draw) {
            Ok(Some(redrawn)) => FiguresOutcome::Solved(tell(&redrawn.as_published)),
            Ok(None) => FiguresOutcome::Incomplete,
            Err(refused) => {
                let model = Model::new(study, Purpose::of(*draw));
                let speed = study.engine.speed.unwrap_or(0.0);
                FiguresOutcome::Refused {
                    sentence: refusal(*draw, &model, &refused, speed).sentence,
                }
            }
        }
    };
    draws.iter().map(of).collect()
}

fn tell(flows: &[f64]) -> Figures {
    let total: f64 = flows.iter().sum();
    Figures {
        total,
        spread: spread(flows),
        shares: flows.iter().map(|flow| flow / total).collect(),
    }
}
