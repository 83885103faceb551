//! What a section does with its stagnation pressure, from the flow function alone and without iteration.
//!
//! M^2 and the velocity head are analytic in s = x^2, x being the flow function, up to Mach 1. They are
//! kept as polynomials over short pieces of s, made once from `mach` and `head_fraction`, which this file
//! only makes faster: a network's solution is mostly evaluations of this function.

use std::f64::consts::PI;
use std::sync::LazyLock;

use super::{head_fraction, mach};

/// Pieces per unit of s.
const PIECES: f64 = 256.0;
/// Pieces there are; what lies beyond, from nine tenths of the choking flow on, is left to the iteration.
const COUNT: usize = 70;
/// Coefficients of a piece: at the last piece, the nearest to the branch point at Mach 1, the next term is
/// below rounding.
const TERMS: usize = 9;

/// The state in a section.
#[derive(Clone, Copy, Debug)]
pub struct Section {
    /// Mach number squared [-].
    pub mach_square: f64,
    /// 1 - p/p0, the part of the stagnation pressure that is velocity head [-].
    pub head: f64,
}

/// M^2/s and (1 - p/p0)/s over one piece, as powers of the place in it from -1 to 1.
#[derive(Clone, Copy, Debug)]
struct Piece {
    mach_square: [f64; TERMS],
    head: [f64; TERMS],
}

static TABLE: LazyLock<Vec<Piece>> = LazyLock::new(|| (0..COUNT).map(Piece::new).collect());

impl Section {
    /// With a flow function, or nothing when the section would choke.
    #[inline(always)]
    pub fn new(flow_function: f64) -> Option<Self> {
        let s = flow_function * flow_function;
        let along = s * PIECES;
        // A flow function that is no number ends in piece zero and stays none.
        let position = along as u32;
        let Some(piece) = TABLE.get(position as usize) else {
            return Self::iterated(flow_function);
        };
        let place = 2.0 * (along - f64::from(position)) - 1.0;
        Some(Self {
            mach_square: s * polynomial(&piece.mach_square, place),
            head: s * polynomial(&piece.head, place),
        })
    }

    #[cold]
    fn iterated(flow_function: f64) -> Option<Self> {
        let mach = mach(flow_function)?;
        Some(Self {
            mach_square: mach * mach,
            head: head_fraction(mach),
        })
    }
}

impl Piece {
    fn new(position: usize) -> Self {
        // The polynomials meet the functions at the zeros of a Chebyshev polynomial.
        let places: [f64; TERMS] =
            std::array::from_fn(|k| (PI * (k as f64 + 0.5) / TERMS as f64).cos());
        let mut values = [[0.0; TERMS]; 2];
        for (k, place) in places.iter().enumerate() {
            let s = (position as f64 + 0.5 * (1.0 + place)) / PIECES;
            let mach = mach(s.sqrt()).unwrap_or(1.0);
            values[0][k] = mach * mach / s;
            values[1][k] = head_fraction(mach) / s;
        }
        Self {
            mach_square: through(&places, &values[0]),
            head: through(&places, &values[1]),
        }
    }
}

/// Coefficients of the polynomial that takes `values` at `places`, which are zeros of a Chebyshev polynomial.
fn through(places: &[f64; TERMS], values: &[f64; TERMS]) -> [f64; TERMS] {
    let mut coefficients = [0.0; TERMS];
    // Chebyshev polynomials of two neighbouring degrees, as powers.
    let (mut before, mut here) = ([0.0; TERMS], [0.0; TERMS]);
    here[0] = 1.0;
    for degree in 0..TERMS {
        let at = |place: f64| (degree as f64 * place.acos()).cos();
        let sum: f64 = places
            .iter()
            .zip(values)
            .map(|(place, value)| at(*place) * value)
            .sum();
        let weight = if degree == 0 { 1.0 } else { 2.0 } / TERMS as f64 * sum;
        let mut next = [0.0; TERMS];
        for power in 0..TERMS {
            coefficients[power] += weight * here[power];
            let shifted = if power > 0 { here[power - 1] } else { 0.0 };
            let doubled = if degree == 0 { 1.0 } else { 2.0 };
            next[power] = doubled * shifted - before[power];
        }
        (before, here) = (here, next);
    }
    coefficients
}

/// The terms in pairs, so that few multiplications wait for one another.
fn polynomial(c: &[f64; TERMS], z: f64) -> f64 {
    let square = z * z;
    let fourth = square * square;
    let low = (c[0] + c[1] * z) + square * (c[2] + c[3] * z);
    let high = (c[4] + c[5] * z) + square * (c[6] + c[7] * z);
    low + fourth * (high + fourth * c[8])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gas::{CHOKED_FLOW_FUNCTION, flow_function};

    /// Our own arithmetic, two ways: the inverse against the function, at and between the pieces' ends.
    #[test]
    fn the_pieces_are_the_iteration() {
        for step in 1..5_000 {
            let x = CHOKED_FLOW_FUNCTION * f64::from(step) / 5_000.0;
            let section = Section::new(x).expect("short of choking");
            let mach = section.mach_square.sqrt();
            // Near Mach 1 the inverse is ill-conditioned, the function is not.
            assert!(
                (flow_function(mach) - x).abs() <= 1e-15 * x * 4.0,
                "{x}: {mach}"
            );
            let head = head_fraction(mach);
            assert!((section.head - head).abs() <= 4e-15 * head, "{x}: {head}");
        }
        assert!(Section::new(1.000_001 * CHOKED_FLOW_FUNCTION).is_none());
        assert!(Section::new(f64::NAN).is_none_or(|section| section.head.is_nan()));
    }
}
