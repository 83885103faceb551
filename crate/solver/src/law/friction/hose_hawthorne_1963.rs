//! Corrugated hose, Hawthorne and von Helms 1963.
//!
//! # Equation
//! Each corrugation is a sudden expansion of a jet that widens by 0.438 of the pitch: f = (d/p) [1 - 1/(1 + 0.438 p/d)^2]^2.
//! The hose is then marched as a duct whose roughness gives this friction factor in complete turbulence
//! (Churchill 1977): e = exp(-sqrt(8/f)/2.457)/0.27.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | p/d | `pitch_ratio` | distance from corrugation to corrugation over free diameter | - |
//! | e | result | roughness over diameter of the duct like it | - |
//! | f | - | Darcy friction factor | - |
//!
//! # Source
//! R. C. Hawthorne, H. C. von Helms, Flow in corrugated hose, Product Engineering 34, 10 June 1963, 98-100; the
//! jet's 0.219 of the pitch to either side and the expansion read in a note on modelling corrugated pipes
//! (kb.eng-software.com, which names it).
//!
//! # Range of validity
//! p/d from 0.03 to 0.5.
//!
//! # Limits
//! A straight hose; a bent one loses more, which a bend beside it may count. The depth of the corrugations does not
//! count, since the air in them stands nearly still. Whistling, which can multiply the loss, is not foreseen.

use super::super::Scatter;
use super::super::outside::outside_range;

/// Range of p/d, judged [-].
pub const RANGE: [f64; 2] = [0.03, 0.5];

/// Scatter of the friction factor.
pub const SCATTER: Scatter = Scatter {
    relative: 0.3,
    common: 0.5,
    origin: "judged: shapes of corrugation differ, and the source gives one curve for all",
};

/// Friction factor in complete turbulence [-].
pub fn full_turbulence(pitch_ratio: f64) -> f64 {
    let wider = 1.0 + 0.438 * pitch_ratio;
    let rest = 1.0 - 1.0 / (wider * wider);
    rest * rest / pitch_ratio
}

/// Roughness over diameter of a duct of the same friction factor.
pub fn relative_roughness(pitch_ratio: f64) -> f64 {
    (-(8.0 / full_turbulence(pitch_ratio)).sqrt() / 2.457).exp() / 0.27
}

/// The field `pitch` when it is outside the range.
pub fn outside(pitch_ratio: f64) -> Vec<(&'static str, String)> {
    outside_range("pitch", "pitch over diameter", pitch_ratio, RANGE)
        .into_iter()
        .collect()
}
