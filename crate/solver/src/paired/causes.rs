//! Which laws make two versions hard to tell apart: each law alone, by the exact sensitivities of both.
//!
//! To first order in the errors, kinks of the spread included; whose author is right is left out.

use serde::Serialize;

use super::told::spread;
use super::uncertain::{self, Number};
use super::{Worlds, cylinders};
use crate::answer::{self, DoubtCause, Draw, HALF_WIDTH};
use crate::draw;
use crate::error::StudyError;
use crate::model::{Model, Purpose};
use crate::study::Study;

/// What makes the difference of two versions' spreads uncertain.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[serde(rename_all = "camelCase")]
pub struct PairCauses {
    /// Position of one version.
    pub first: u32,
    /// Position of the other.
    pub second: u32,
    /// Laws by the half-width of the difference's band that each alone would cause [-], largest first.
    pub laws: Vec<DoubtCause>,
}

/// What makes every two versions hard to tell apart, the earlier first.
///
/// # Errors
/// Everything that is wrong with the versions, as `read` would tell it.
pub fn pair_causes(
    versions: &[Study],
    worlds: &Worlds,
) -> Result<Vec<PairCauses>, Vec<StudyError>> {
    cylinders(versions)?;
    let known: Vec<Option<Sensitive>> = versions
        .iter()
        .map(|study| Sensitive::new(study, worlds.draw))
        .collect();
    let mut laws: Vec<&'static str> = Vec::new();
    for number in known.iter().flatten().flat_map(|version| &version.numbers) {
        if !laws.contains(&number.0.law) {
            laws.push(number.0.law);
        }
    }
    // By law, version and world.
    let spreads: Vec<Vec<Option<Vec<f64>>>> = laws
        .iter()
        .map(|law| {
            let of = |version: &Option<Sensitive>| Some(version.as_ref()?.spreads(law, worlds));
            known.iter().map(of).collect()
        })
        .collect();
    let mut pairs = Vec::new();
    for first in 0..versions.len() {
        for second in first + 1..versions.len() {
            let found = laws
                .iter()
                .zip(&spreads)
                .filter_map(|(law, by_version)| {
                    let one = by_version[first].as_ref()?;
                    let other = by_version[second].as_ref()?;
                    Some(DoubtCause {
                        law: (*law).to_owned(),
                        amount: HALF_WIDTH * deviation_of_difference(one, other),
                    })
                })
                .filter(|cause| cause.amount > 0.0);
            pairs.push(PairCauses {
                first: first as u32,
                second: second as u32,
                laws: answer::named(found.collect()),
            });
        }
    }
    Ok(pairs)
}

/// A version's deviations with every law as published, and their change with each number.
struct Sensitive {
    deviations: Vec<f64>,
    /// With the change of each cylinder's deviation with one standard deviation of the number.
    numbers: Vec<(Number, Vec<f64>)>,
}

impl Sensitive {
    /// Nothing when the version has no answer.
    fn new(study: &Study, wanted: Draw) -> Option<Self> {
        let purpose = Purpose::of(wanted);
        let model = Model::new(study, purpose);
        let operating = draw::operating(study).ok();
        let drawn = draw::drawn(study, &model, operating.as_ref(), wanted)?.ok()?;
        let flows = &drawn.cylinder_flow;
        let numbers = uncertain::numbers(study, &model).into_iter();
        Some(Self {
            deviations: answer::deviations(flows),
            numbers: numbers
                .filter_map(|number| {
                    let mut gradients = drawn.gradients.all.iter();
                    let gradient = gradients.find(|gradient| number.is(&gradient.cause))?;
                    let change = answer::deviations_by(flows, &gradient.by);
                    Some((number, change.collect()))
                })
                .collect(),
        })
    }

    /// Spread in each world if this law alone were off.
    fn spreads(&self, law: &str, worlds: &Worlds) -> Vec<f64> {
        let own: Vec<_> = self
            .numbers
            .iter()
            .filter(|(number, _)| number.law == law)
            .collect();
        (0..worlds.count)
            .map(|place| {
                let world = worlds.world(place);
                let mut deviations = self.deviations.clone();
                for (number, change) in &own {
                    let error = number.error(&world);
                    for (deviation, change) in deviations.iter_mut().zip(change) {
                        *deviation += error * change;
                    }
                }
                spread(&deviations)
            })
            .collect()
    }
}

fn deviation_of_difference(one: &[f64], other: &[f64]) -> f64 {
    let differences: Vec<f64> = one
        .iter()
        .zip(other)
        .map(|(one, other)| one - other)
        .collect();
    let count = differences.len().max(1) as f64;
    let mean = differences.iter().sum::<f64>() / count;
    let squares = differences
        .iter()
        .map(|difference| (difference - mean).powi(2));
    (squares.sum::<f64>() / count).sqrt()
}
