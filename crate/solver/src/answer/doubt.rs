//! The linear doubt: what the laws' own scatter does to each deviation, by exact sensitivities.
//!
//! Each law's error is a common part, the same everywhere, plus a part of its place. Common parts of
//! one law add up with their signs, place parts as squares; laws are independent of each other.

use super::DoubtCause;
use super::whole::deviations_by;
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
    let (laws, law_of) = laws(gradients);
    let mut cylinders = vec![vec![(0.0, 0.0); laws.len()]; flows.len()];
    for (gradient, law) in gradients.all.iter().zip(law_of) {
        let cause = &gradient.cause;
        for (parts, spread) in cylinders.iter_mut().zip(deviations_by(flows, &gradient.by)) {
            let (common, place) = &mut parts[law];
            *common += spread * cause.common.sqrt();
            *place += spread * spread * (1.0 - cause.common);
        }
    }
    let doubts = cylinders.into_iter().map(|parts| {
        let causes: Vec<DoubtCause> = laws
            .iter()
            .zip(parts)
            .map(|(law, (common, place))| DoubtCause {
                law: (*law).to_owned(),
                amount: HALF_WIDTH * (common * common + place).sqrt(),
            })
            .collect();
        let squares = causes.iter().map(|cause| cause.amount * cause.amount);
        Doubt {
            half_width: squares.sum::<f64>().sqrt(),
            causes: named(causes),
        }
    });
    doubts.collect()
}

/// The causes that are named, largest first.
pub fn named(mut causes: Vec<DoubtCause>) -> Vec<DoubtCause> {
    short::sort(&mut causes, |a, b| a.amount > b.amount);
    causes.truncate(NAMED);
    causes
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
