//! The linear doubt: what the laws' own scatter does to each deviation, by exact sensitivities.
//!
//! Each law's error is a common part, the same everywhere, plus a part of its place. Common parts of
//! one law add up with their signs, place parts as squares; laws are independent of each other.

use std::collections::BTreeMap;

use super::DoubtCause;
use crate::draw::Gradients;

/// Half-widths are given so that 19 in 20 fall inside, for a normal error.
const HALF_WIDTH: f64 = 1.96;
/// How many causes are named.
const NAMED: usize = 5;

/// One cylinder's doubt.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubt {
    /// Half-width of the deviation's band [-].
    pub half_width: f64,
    /// Laws by what each alone would cause, largest first.
    pub causes: Vec<DoubtCause>,
}

/// Doubt of every cylinder's deviation from the mean, from the gradients of the cylinders' air.
pub fn doubts(gradients: &Gradients, flows: &[f64]) -> Vec<Doubt> {
    let count = flows.len() as f64;
    let mean = flows.iter().sum::<f64>() / count;
    (0..flows.len())
        .map(|cylinder| {
            let mut laws: BTreeMap<&'static str, (f64, f64)> = BTreeMap::new();
            for gradient in &gradients.all {
                let mean_by = gradient.by[..flows.len()].iter().sum::<f64>() / count;
                let by = (gradient.by[cylinder] - flows[cylinder] / mean * mean_by) / mean;
                let spread = by * gradient.cause.scatter;
                let (common, place) = laws.entry(gradient.cause.law).or_default();
                *common += spread * gradient.cause.common.sqrt();
                *place += spread * spread * (1.0 - gradient.cause.common);
            }
            let mut causes: Vec<DoubtCause> = laws
                .into_iter()
                .map(|(law, (common, place))| DoubtCause {
                    law: law.to_owned(),
                    amount: HALF_WIDTH * (common * common + place).sqrt(),
                })
                .collect();
            let half_width = causes
                .iter()
                .map(|cause| cause.amount * cause.amount)
                .sum::<f64>()
                .sqrt();
            causes.sort_by(|a, b| b.amount.total_cmp(&a.amount));
            causes.truncate(NAMED);
            Doubt { half_width, causes }
        })
        .collect()
}
