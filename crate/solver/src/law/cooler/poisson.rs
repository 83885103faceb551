//! Two independent Poisson counts, by which crossflow with both fluids unmixed is summed.
//!
//! # Equation
//! X and Y with means x and y. The series' bracket 1 - e^-x sum_{m<=n} x^m/m! is P(X > n), so its sum over n is the
//! mean of the smaller count: E min(X, Y) = x P(Y - X >= 2) + y P(X > Y).
//! By modified Bessel functions, with z = 2 sqrt(x y), u = ln(y/x)/2, g = e^-(sqrt(y) - sqrt(x))^2:
//! P(Y - X = 1) = e^u g e^-z I_1(z), and P(X > Y) = (1 - g e^-z I_0(z))/2 - z J/2,
//! J the integral of e^(-z cosh v) (I_0(z) cosh v + I_1(z)) over v from 0 to u.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | x, y | arguments | means | - |
//! | P(Y - X = 1)/y | `next` | Y is ahead by one | - |
//! | P(Y - X >= 2)/y^2 | `ahead` | Y is ahead by two or more | - |
//! | P(X > Y) | `behind` | Y is behind | - |
//!
//! # Source
//! The series: J. L. Mason, Heat transfer in crossflow, Proceedings of the Second U.S. National Congress of Applied
//! Mechanics, 1954, from memory. Its reading as counts and the integral are derived here.
//!
//! # Range of validity
//! Means from 0 without bound.
//!
//! # Limits
//! The integral stands for the sum where both means exceed 30; at that seam they agree to 1e-12.

use std::f64::consts::PI;

/// Both means beyond which the integral stands for the sum.
const MANY: f64 = 30.0;
/// Most terms of the sum; see `last_term`.
const TERMS: usize = 96;
/// Exponent below which a bell's flank is nothing.
const FLANK: f64 = 37.0;

/// Chances of the difference between two counts, divided so that they stand at y = 0.
#[derive(Clone, Copy, Debug)]
pub struct Counts {
    /// P(Y - X = 1)/y.
    pub next: f64,
    /// P(Y - X >= 2)/y^2.
    pub ahead: f64,
    /// P(X > Y).
    pub behind: f64,
}

/// The chances for means x and y.
pub fn counts(x: f64, y: f64) -> Counts {
    if x > MANY && y > MANY {
        by_integral(x, y)
    } else {
        by_sum(x, y)
    }
}

/// Every term is positive and tails are summed from their far end, so small means keep all digits.
fn by_sum(x: f64, y: f64) -> Counts {
    let last = last_term(x.min(y));
    // P(X = n), and P(Y = n + 2)/y^2.
    let (mut of_x, mut of_y) = ([0.0; TERMS], [0.0; TERMS]);
    let none = (-y).exp();
    let mut more_than = terms(x, (-x).exp(), 0, 1.0, &mut of_x[..=last]);
    let whole = (1.0 - none * (1.0 + y)) / (y * y);
    let mut two_more = terms(y, 0.5 * none, 2, whole, &mut of_y[..=last]);
    let mut result = Counts {
        next: 0.0,
        ahead: 0.0,
        behind: 0.0,
    };
    for n in (0..=last).rev() {
        let one = (n + 2) as f64 * of_y[n];
        two_more += of_y[n];
        result.next += of_x[n] * one;
        result.ahead += of_x[n] * two_more;
        result.behind += (n + 1) as f64 * one * more_than;
        more_than += of_x[n];
    }
    result
}

/// Term beyond which a count of a mean lies with a chance below 1e-17.
fn last_term(mean: f64) -> usize {
    (10.0 + mean + 9.0 * mean.sqrt()) as usize
}

/// Fills in terms that begin with `first` and grow by mean/(n + shift); gives the sum of all that follow, where
/// `whole` is the sum of all.
fn terms(mean: f64, first: f64, shift: usize, whole: f64, into: &mut [f64]) -> f64 {
    let mut term = first;
    let mut sum = first;
    into[0] = first;
    for n in 1..into.len() {
        term *= mean / (n + shift) as f64;
        into[n] = term;
        sum += term;
    }
    if mean > into.len() as f64 {
        return whole - sum;
    }
    let mut following = 0.0;
    let mut n = into.len();
    while term > 1e-17 * sum {
        term *= mean / (n + shift) as f64;
        following += term;
        n += 1;
    }
    following
}

fn by_integral(x: f64, y: f64) -> Counts {
    let q = (x * y).sqrt();
    let z = 2.0 * q;
    let apart = y.sqrt() - x.sqrt();
    let bell = (-apart * apart).exp();
    let (zero, one) = (scaled_bessel(z, 0.0), scaled_bessel(z, 1.0));
    let end = 0.5 * (y / x).ln();
    // The bell e^(-z (cosh v - 1)) ends where 2 z sinh^2(v/2) is `FLANK`.
    let reach = 2.0 * (FLANK / (2.0 * z)).sqrt().asinh();
    let level = 0.5 * (1.0 - bell * zero);
    let half_difference = if end.abs() < reach {
        q * end.signum()
            * integral_from_zero(end.abs(), |v| {
                let half = (0.5 * v).sinh();
                let cosh_less_one = 2.0 * half * half;
                (-z * cosh_less_one).exp() * (zero * (1.0 + cosh_less_one) + one)
            })
    } else {
        // Nothing but rounding is left of the smaller chance.
        level.copysign(end)
    };
    let next = bell * one / q;
    Counts {
        next,
        ahead: (level + half_difference - y * next).max(0.0) / (y * y),
        behind: level - half_difference,
    }
}

/// e^-z I_n(z) by its expansion for large z, of order 0 or 1.
fn scaled_bessel(z: f64, order: f64) -> f64 {
    let mut term = 1.0;
    let mut sum = 1.0;
    for k in 1..=12 {
        let k = f64::from(k);
        let odd = 2.0 * k - 1.0;
        term *= (odd * odd - 4.0 * order * order) / (8.0 * k * z);
        sum += term;
    }
    sum / (2.0 * PI * z).sqrt()
}

/// Gauss and Legendre with 16 points in either half.
fn integral_from_zero(end: f64, f: impl Fn(f64) -> f64) -> f64 {
    const POINTS: [(f64, f64); 8] = [
        (0.095_012_509_837_637_44, 0.189_450_610_455_068_5),
        (0.281_603_550_779_258_9, 0.182_603_415_044_923_59),
        (0.458_016_777_657_227_37, 0.169_156_519_395_002_54),
        (0.617_876_244_402_643_7, 0.149_595_988_816_576_73),
        (0.755_404_408_355_003, 0.124_628_971_255_533_87),
        (0.865_631_202_387_831_7, 0.095_158_511_682_492_78),
        (0.944_575_023_073_232_6, 0.062_253_523_938_647_89),
        (0.989_400_934_991_649_9, 0.027_152_459_411_754_095),
    ];
    let quarter = 0.25 * end;
    let sum: f64 = POINTS
        .iter()
        .map(|&(at, weight)| {
            let half = |middle: f64| f(quarter * (middle - at)) + f(quarter * (middle + at));
            weight * (half(1.0) + half(3.0))
        })
        .sum();
    quarter * sum
}
