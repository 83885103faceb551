//! What many worlds tell: bands, and how probably one version is the more even one.

use serde::Serialize;

use crate::answer::{answer, range};

/// Part of the worlds that a band leaves out at either end [-].
const LEFT_OUT: f64 = 0.025;
/// Spreads that differ by less are the same: the flows of a world are right to about a millionth [-].
const TIE: f64 = 1e-6;

answer! {
/// What some worlds tell of several versions.
pub struct Told {
    /// Worlds that were drawn.
    pub worlds: u32,
    /// In the order given.
    pub versions: Vec<VersionTold>,
    /// Every two of them, the earlier first.
    pub pairs: Vec<PairTold>,
}

/// One version over the worlds.
pub struct VersionTold {
    /// Worlds in which it has an answer.
    pub solved: u32,
    /// Its spread; absent when no world has an answer [-].
    pub spread: Option<Band>,
    /// Deviation of each cylinder from the mean; empty when no world has an answer [-].
    pub cylinders: Vec<Band>,
}

/// Where a figure lies 19 times in 20, and its median.
#[derive(Copy)]
pub struct Band {
    /// In one world of forty it is lower.
    pub low: f64,
    /// In half of the worlds it is lower.
    pub median: f64,
    /// In one world of forty it is higher.
    pub high: f64,
}

/// Two versions against each other.
pub struct PairTold {
    /// Position of one version.
    pub first: u32,
    /// Position of the other.
    pub second: u32,
    /// Worlds in which both have an answer.
    pub worlds: u32,
    /// Part of these in which the first has the smaller spread, ties counted half [-].
    pub probability: f64,
    /// Standard error of that part, from the number of worlds [-].
    pub standard_error: f64,
    /// What comes of it.
    pub verdict: PairVerdict,
}

/// Which of two versions is the more even one.
#[derive(Copy, Eq)]
pub enum PairVerdict {
    /// The first, with the confidence asked for.
    First,
    /// The second, with the confidence asked for.
    Second,
    /// Neither reaches it.
    TooCloseToTell,
}
}

/// Tells of versions from their cylinders' deviations, as `deviations` lists them; `confidence` is the
/// probability from which one version counts as the more even one, 0.5 to 1 [-].
pub fn tell(deviations: &[f64], versions: usize, cylinders: usize, confidence: f64) -> Told {
    let row = (versions * cylinders).max(1);
    let worlds: Vec<&[f64]> = deviations.chunks_exact(row).collect();
    let of = |world: &&[f64], version: usize| -> Vec<f64> {
        world[version * cylinders..(version + 1) * cylinders].to_vec()
    };
    let spreads: Vec<Vec<f64>> = (0..versions)
        .map(|version| {
            worlds
                .iter()
                .map(|world| spread(&of(world, version)))
                .collect()
        })
        .collect();
    let told = |version: usize| VersionTold {
        solved: spreads[version]
            .iter()
            .filter(|spread| !spread.is_nan())
            .count() as u32,
        spread: band(spreads[version].clone()),
        cylinders: (0..cylinders)
            .filter_map(|cylinder| {
                let place = version * cylinders + cylinder;
                band(worlds.iter().map(|world| world[place]).collect())
            })
            .collect(),
    };
    let pairs =
        (0..versions).flat_map(|first| (first + 1..versions).map(move |second| (first, second)));
    Told {
        worlds: worlds.len() as u32,
        versions: (0..versions).map(told).collect(),
        pairs: pairs
            .map(|(first, second)| pair(&spreads, first, second, confidence))
            .collect(),
    }
}

/// Largest less smallest deviation, not a number without an answer [-].
pub fn spread(deviations: &[f64]) -> f64 {
    if deviations.iter().any(|deviation| deviation.is_nan()) {
        return f64::NAN;
    }
    range(deviations)
}

fn pair(spreads: &[Vec<f64>], first: usize, second: usize, confidence: f64) -> PairTold {
    let mut worlds = 0_u32;
    let mut won = 0.0;
    for (one, other) in spreads[first].iter().zip(&spreads[second]) {
        if one.is_nan() || other.is_nan() {
            continue;
        }
        worlds += 1;
        won += if (one - other).abs() <= TIE {
            0.5
        } else if one < other {
            1.0
        } else {
            0.0
        };
    }
    let count = f64::from(worlds.max(1));
    let probability = if worlds == 0 { 0.5 } else { won / count };
    // With no world against it a probability is still not certain: two worlds are added, one either way.
    let softened = (won + 1.0) / (count + 2.0);
    let standard_error = (softened * (1.0 - softened) / (count + 2.0)).sqrt();
    PairTold {
        first: first as u32,
        second: second as u32,
        worlds,
        probability,
        standard_error,
        verdict: if probability - standard_error >= confidence {
            PairVerdict::First
        } else if 1.0 - probability - standard_error >= confidence {
            PairVerdict::Second
        } else {
            PairVerdict::TooCloseToTell
        },
    }
}

/// The band of some values, those that are no number left out; nothing when none is left.
fn band(mut values: Vec<f64>) -> Option<Band> {
    values.retain(|value| !value.is_nan());
    values.sort_by(f64::total_cmp);
    let last = values.len().checked_sub(1)?;
    let at = |part: f64| values[(part * last as f64).round() as usize];
    Some(Band {
        low: at(LEFT_OUT),
        median: at(0.5),
        high: at(1.0 - LEFT_OUT),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two cylinders that deviate by half the spread each.
    fn world(spreads: [f64; 2]) -> [f64; 4] {
        let [a, b] = spreads;
        [a / 2.0, -a / 2.0, b / 2.0, -b / 2.0]
    }

    #[test]
    fn ties_count_half_and_worlds_without_an_answer_do_not() {
        let worlds = [[0.1, 0.2], [0.3, 0.2], [0.2, 0.2], [f64::NAN, 0.2]].map(world);
        let told = tell(&worlds.concat(), 2, 2, 0.9);
        let pair = &told.pairs[0];
        assert_eq!((told.worlds, pair.worlds), (4, 3));
        assert!((pair.probability - 0.5).abs() < 1e-12);
        assert_eq!(pair.verdict, PairVerdict::TooCloseToTell);
        assert_eq!((told.versions[0].solved, told.versions[1].solved), (3, 4));
    }

    #[test]
    fn a_verdict_needs_the_confidence_beyond_its_own_error() {
        let of = |wins: usize, confidence: f64| {
            let worlds: Vec<[f64; 4]> = (0..200)
                .map(|place| world(if place < wins { [0.1, 0.2] } else { [0.2, 0.1] }))
                .collect();
            tell(&worlds.concat(), 2, 2, confidence).pairs[0].verdict
        };
        assert_eq!(of(181, 0.9), PairVerdict::TooCloseToTell);
        assert_eq!(of(190, 0.9), PairVerdict::First);
        assert_eq!(of(10, 0.9), PairVerdict::Second);
        assert_eq!(of(200, 0.99), PairVerdict::First);
        assert_eq!(of(100, 0.5), PairVerdict::TooCloseToTell);
    }

    #[test]
    fn a_band_leaves_out_one_in_forty_at_either_end() {
        let found = band((0..=400).rev().map(f64::from).collect()).expect("values");
        assert_eq!((found.low, found.median, found.high), (10.0, 200.0, 390.0));
    }
}
