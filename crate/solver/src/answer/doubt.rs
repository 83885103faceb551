//! The linear doubt: what the laws' own scatter does to each deviation, by exact sensitivities.
//!
//! Each law's error is a common part, the same everywhere, plus a part of its place. Common parts of
//! one law add up with their signs, place parts as squares; laws are independent of each other.

use super::DoubtCause;
use crate::draw::Gradients;
use crate::short;

/// Half-widths are given so that 19 in 20 fall inside, for a normal error.
pub const HALF_WIDTH: f64 = 1.96;
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
    let (laws, law_of) = laws(gradients);
    (0..flows.len())
        .map(|cylinder| {
            let mut parts = vec![(0.0, 0.0); laws.len()];
            for (gradient, law) in gradients.all.iter().zip(&law_of) {
                let mean_by = gradient.by[..flows.len()].iter().sum::<f64>() / count;
                let by = (gradient.by[cylinder] - flows[cylinder] / mean * mean_by) / mean;
                let spread = by * gradient.cause.scatter;
                let (common, place) = &mut parts[*law];
                *common += spread * gradient.cause.common.sqrt();
                *place += spread * spread * (1.0 - gradient.cause.common);
            }
            let mut causes: Vec<DoubtCause> = laws
                .iter()
                .zip(parts)
                .map(|(law, (common, place))| DoubtCause {
                    law: (*law).to_owned(),
                    amount: HALF_WIDTH * (common * common + place).sqrt(),
                })
                .collect();
            let squares = causes.iter().map(|cause| cause.amount * cause.amount);
            let half_width = squares.sum::<f64>().sqrt();
            short::sort(&mut causes, |a, b| a.amount > b.amount);
            causes.truncate(NAMED);
            Doubt { half_width, causes }
        })
        .collect()
}

/// The laws that cause doubt, and which of them each gradient belongs to.
fn laws(gradients: &Gradients) -> (Vec<&'static str>, Vec<usize>) {
    let mut laws = Vec::new();
    let law_of = gradients.all.iter().map(|gradient| {
        let known = laws.iter().position(|law| *law == gradient.cause.law);
        known.unwrap_or_else(|| {
            laws.push(gradient.cause.law);
            laws.len() - 1
        })
    });
    let law_of = law_of.collect();
    (laws, law_of)
}
