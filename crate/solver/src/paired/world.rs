//! Possible truths: in each world every uncertain number has its own error, the same one in all versions
//! of a manifold, so that what two versions have in common is off by the same amount in both.

use std::f64::consts::TAU;

/// How the variance of every law is split between what is the same everywhere and what belongs to the place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[cfg_attr(feature = "generate", ts(rename_all = "camelCase"))]
pub enum Split {
    /// As each law states it.
    AsStated,
    /// A law is off by the same everywhere.
    AllCommon,
    /// A law is off by something else at every place.
    AllPlace,
}

/// One possible truth; the same figures always give the same one.
#[derive(Clone, Copy, Debug)]
pub struct World {
    /// Which series of worlds.
    pub seed: u64,
    /// Which of them.
    pub sample: u64,
    /// How errors are split.
    pub split: Split,
}

/// Whose error it is: names that are the same in every version.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Names {
    /// Of the law.
    pub law: u64,
    /// Of the place where it acts.
    pub place: u64,
}

impl World {
    /// Standard normal error of a number, `common` being the part of its variance that is the same everywhere.
    pub fn error(&self, names: Names, common: f64) -> f64 {
        let common = match self.split {
            Split::AsStated => common,
            Split::AllCommon => 1.0,
            Split::AllPlace => 0.0,
        };
        let part = |weight: f64, name: u64| {
            if weight == 0.0 {
                0.0
            } else {
                weight.sqrt() * self.normal(name)
            }
        };
        part(common, names.law) + part(1.0 - common, names.place)
    }

    /// Which of `count` authors of a law is right: one for all places, or with nothing common one for each.
    pub fn author(&self, names: Names, count: usize) -> usize {
        let name = match self.split {
            Split::AsStated | Split::AllCommon => names.law,
            Split::AllPlace => names.place,
        };
        let part = uniform(self.draw(name, AUTHOR));
        ((part * count as f64) as usize).min(count - 1)
    }

    /// By Box and Muller 1958.
    fn normal(&self, name: u64) -> f64 {
        let size = (-2.0 * uniform(self.draw(name, SIZE)).ln()).sqrt();
        size * (TAU * uniform(self.draw(name, TURN))).cos()
    }

    fn draw(&self, name: u64, which: u64) -> u64 {
        mixed(mixed(mixed(self.seed ^ name).wrapping_add(self.sample)).wrapping_add(which))
    }
}

/// What a random number is for.
const SIZE: u64 = 1;
const TURN: u64 = 2;
const AUTHOR: u64 = 3;

/// A name for words.
pub fn name(words: &[&str]) -> u64 {
    hash(words.iter().flat_map(|word| word.bytes().chain([0])))
}

/// The hash of Fowler, Noll and Vo (FNV-1a, 64 bits).
fn hash(bytes: impl Iterator<Item = u8>) -> u64 {
    bytes.fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

/// The step of SplitMix64 (Steele, Lea and Flood 2014): every bit of the result depends on every one given.
fn mixed(bits: u64) -> u64 {
    let bits = bits.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^ (bits >> 31)
}

/// Between 0 and 1, neither of them.
fn uniform(bits: u64) -> f64 {
    ((bits >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    const COUNT: u64 = 40_000;

    fn errors(names: Names, common: f64, split: Split) -> Vec<f64> {
        (0..COUNT)
            .map(|sample| {
                let world = World {
                    seed: 7,
                    sample,
                    split,
                };
                world.error(names, common)
            })
            .collect()
    }

    fn names(law: &str, place: &str) -> Names {
        Names {
            law: name(&[law]),
            place: name(&[law, place]),
        }
    }

    fn product(a: &[f64], b: &[f64]) -> f64 {
        a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>() / a.len() as f64
    }

    /// The first output of SplitMix64 seeded with 0, as its authors' C program prints it.
    #[test]
    fn mixes_as_published() {
        assert_eq!(mixed(0), 0xe220_a839_7b1d_cdaf);
    }

    /// Test vectors of the hash's authors.
    #[test]
    fn hashes_as_published() {
        assert_eq!(hash("a".bytes()), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(hash("foobar".bytes()), 0x8594_4171_f739_67e8);
        assert_ne!(name(&["ab", "c"]), name(&["a", "bc"]));
    }

    /// Against the table of the normal distribution (printed in every handbook): 0.15866 below -1, 0.02275
    /// above 2, variance 1; four standard errors of so many draws are allowed.
    #[test]
    fn errors_are_standard_normal() {
        let drawn = errors(names("bend", "r1"), 0.5, Split::AsStated);
        let part = |inside: &dyn Fn(f64) -> bool| {
            drawn.iter().filter(|error| inside(**error)).count() as f64 / COUNT as f64
        };
        let allowed = |p: f64| 4.0 * (p * (1.0 - p) / COUNT as f64).sqrt();
        for (found, table) in [
            (part(&|error| error < -1.0), 0.15866),
            (part(&|error| error > 2.0), 0.02275),
            (part(&|error| error > 0.0), 0.5),
        ] {
            assert!((found - table).abs() < allowed(table), "{found} {table}");
        }
        let variance = product(&drawn, &drawn);
        assert!((variance - 1.0).abs() < 4.0 * (2.0 / COUNT as f64).sqrt());
    }

    /// Two places of a law share the part of their variance that is common, and other laws nothing.
    #[test]
    fn places_share_what_is_common() {
        let near = 4.0 / (COUNT as f64).sqrt();
        for (split, expected) in [
            (Split::AsStated, 0.3),
            (Split::AllCommon, 1.0),
            (Split::AllPlace, 0.0),
        ] {
            let one = errors(names("bend", "r1"), 0.3, split);
            let two = errors(names("bend", "r2"), 0.3, split);
            let other = errors(names("duct", "r1"), 0.3, split);
            assert!((product(&one, &two) - expected).abs() < near, "{split:?}");
            assert!(product(&one, &other).abs() < near, "{split:?}");
        }
    }
}
