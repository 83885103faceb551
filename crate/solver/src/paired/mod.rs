//! Paired draws: versions of a manifold solved in the same possible truths, so that what they have in
//! common cancels and a difference is told from the doubt.
//!
//! A world gives every uncertain number its error: a law is off by a part that is the same everywhere and
//! by a part of the place (`world.rs`), one of its authors is right, regain factors and what legs feel of
//! a jet are off too (`uncertain.rs`). Each version is solved in each world with all its equations.

mod authors;
mod causes;
mod told;
mod uncertain;
mod world;

pub use causes::{PairCauses, pair_causes};
pub use told::{Band, PairTold, PairVerdict, Told, VersionTold, tell};
pub use world::Split;

use crate::answer::{self, Draw};
use crate::draw::Redrawn;
use crate::error::StudyError;
use crate::gate;
use crate::study::Study;
use world::World;

/// Which worlds are wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[cfg_attr(feature = "generate", ts(rename_all = "camelCase"))]
pub struct Worlds {
    /// What pulls.
    pub draw: Draw,
    /// Which series of worlds.
    pub seed: u32,
    /// How errors are split.
    pub split: Split,
    /// The first world.
    pub first: u32,
    /// How many from there on.
    pub count: u32,
}

impl Worlds {
    fn world(&self, place: u32) -> World {
        World {
            seed: u64::from(self.seed),
            sample: u64::from(self.first + place),
            split: self.split,
        }
    }
}

/// Solves versions of a study in the same worlds: every cylinder's deviation from the mean [-], by world,
/// then by version, then by cylinder. Not a number where a version has no answer.
///
/// # Errors
/// Everything that is wrong with the versions, as `read` would tell it.
pub fn deviations(versions: &[Study], worlds: &Worlds) -> Result<Vec<f64>, Vec<StudyError>> {
    let cylinders = cylinders(versions)?;
    let row = versions.len() * cylinders;
    let mut deviations = vec![f64::NAN; worlds.count as usize * row];
    for (version, study) in versions.iter().enumerate() {
        // Of a version without an answer the draw itself tells why.
        let Ok(Some(mut redrawn)) = Redrawn::new(study, worlds.draw) else {
            continue;
        };
        let numbers = uncertain::numbers(study, &redrawn.published);
        for place in 0..worlds.count {
            uncertain::apply(&numbers, &worlds.world(place), &mut redrawn);
            let Some(flows) = redrawn.flows() else {
                continue;
            };
            let start = place as usize * row + version * cylinders;
            deviations[start..start + cylinders].copy_from_slice(&answer::deviations(&flows));
        }
    }
    Ok(deviations)
}

/// How many cylinders the versions have, all alike.
fn cylinders(versions: &[Study]) -> Result<usize, Vec<StudyError>> {
    let count = versions
        .first()
        .map_or(0, |study| study.engine.cylinders.len());
    let mut errors: Vec<StudyError> = Vec::new();
    for study in versions {
        errors.extend(gate::check(study));
        if study.engine.cylinders.len() != count {
            errors.push(StudyError {
                kind: crate::error::StudyErrorKind::Contradiction,
                element: "engine".to_owned(),
                field: "cylinders".to_owned(),
                message: "versions that are compared have the same cylinders".to_owned(),
            });
        }
    }
    if errors.is_empty() {
        Ok(count)
    } else {
        Err(errors)
    }
}
