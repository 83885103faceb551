//! Crossflow effectiveness of a passage, on its air side, by number of transfer units.
//!
//! # Equation
//! P = (T_air,in - T_air,out)/(T_air,in - T_coolant,in), N = UA/C_air, R = C_air/C_coolant.
//! Both unmixed: P = 1/(R N) sum_n [1 - e^-N sum_{m<=n} N^m/m!] [1 - e^-(R N) sum_{m<=n} (R N)^m/m!].
//! Coolant mixed, air unmixed: P = (1 - exp(-R (1 - e^-N)))/R.
//! Air mixed, coolant unmixed: P = 1 - exp(-(1 - e^-(R N))/R).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | N | `units` | transfer units of the air side | - |
//! | R | `ratio` | capacity flow of the air over the coolant's; above 1 the coolant warms more than the air cools | - |
//! | P | `value` | effectiveness of the air side | - |
//! | UA | - | conductance of the passage | W/K |
//! | C | - | capacity flow, mass flow times specific heat | W/K |
//!
//! # Source
//! W. M. Kays and A. L. London, Compact Heat Exchangers, chapter 2, and F. P. Incropera and D. P. DeWitt,
//! Fundamentals of Heat and Mass Transfer, table 11.3, from memory, turned from the smaller capacity flow to the
//! air's; both unmixed by the exact series of J. L. Mason, 1954, not by the textbooks' fit, which lies up to 2.5 % off.
//!
//! # Range of validity
//! N to 10: beyond, heat along the fins and walls, which is left out, takes over.
//!
//! # Limits
//! One pass, even flow over the passage, constant conductance, no heat along walls or to the surroundings. Without
//! coolant R is infinite and P is 0; without air N is, and P is its greatest.

use super::super::outside::outside_range;
use super::super::{Scatter, Slope};
use super::poisson::counts;
use crate::digits::rounded;

/// Range of the transfer units [-].
pub const RANGE: [f64; 2] = [0.0, 10.0];

/// Scatter of the conductance, as an error of it acts through N.
pub const SCATTER: Scatter = super::conductance::SCATTER;

/// Transfer units that no core has; an effectiveness that needs more is refused.
const MOST_UNITS: f64 = 1e6;
/// Stands for infinite transfer units and ratios, so that their products stay numbers.
const ENDLESS: f64 = 1e15;

/// Which of the fluids is mixed across its own flow within a passage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mixing {
    /// Fins or walls keep both apart.
    BothUnmixed,
    /// The coolant is one stream.
    CoolantMixed,
    /// The air is one stream.
    AirMixed,
}

/// Effectiveness of the air side and its derivatives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effectiveness {
    /// The air's fall of temperature over the difference that drives it [-].
    pub value: f64,
    /// Derivative with the transfer units at one ratio [-].
    pub by_units: f64,
    /// Derivative with the ratio at the same transfer units [-].
    pub by_ratio: f64,
}

/// Effectiveness for transfer units and ratio, both 0 or more; either may be infinite.
pub fn effectiveness(mixing: Mixing, units: f64, ratio: f64) -> Effectiveness {
    let (units, ratio) = (units.min(ENDLESS), ratio.min(ENDLESS));
    match mixing {
        Mixing::BothUnmixed => {
            let second = ratio * units;
            let counts = counts(units, second);
            Effectiveness {
                value: counts.behind + units * second * counts.ahead,
                by_units: counts.next,
                by_ratio: -units * units * counts.ahead,
            }
        }
        Mixing::CoolantMixed => {
            let row = -(-units).exp_m1();
            let saturation = saturation(ratio * row);
            Effectiveness {
                value: row * saturation.value,
                by_units: (-units - ratio * row).exp(),
                by_ratio: row * row * saturation.derivative,
            }
        }
        Mixing::AirMixed => {
            let saturation = saturation(ratio * units);
            let rest = (-units * saturation.value).exp();
            Effectiveness {
                value: -(-units * saturation.value).exp_m1(),
                by_units: rest * (-ratio * units).exp(),
                by_ratio: rest * units * units * saturation.derivative,
            }
        }
    }
}

/// The effectiveness that no conductance exceeds.
pub fn greatest(mixing: Mixing, ratio: f64) -> f64 {
    match mixing {
        Mixing::BothUnmixed => 1.0 / ratio.max(1.0),
        Mixing::CoolantMixed => saturation(ratio).value,
        Mixing::AirMixed => -(-1.0 / ratio).exp_m1(),
    }
}

/// Transfer units that give an effectiveness.
///
/// # Errors
/// The reason, in words, when no conductance gives it.
pub fn units(mixing: Mixing, effectiveness: f64, ratio: f64) -> Result<f64, String> {
    if effectiveness.is_nan() {
        return Err(
            "air and coolant enter the core at one temperature, which tells nothing of it; measure with the air hotter"
                .to_owned(),
        );
    }
    if effectiveness < 0.0 {
        return Err(
            "the air moves away from the coolant's temperature in the core; check the temperatures of the measured point"
                .to_owned(),
        );
    }
    let greatest = greatest(mixing, ratio);
    let found = if effectiveness < greatest {
        below_greatest(mixing, effectiveness, ratio)
    } else {
        f64::INFINITY
    };
    // Asked this way round, what is not a number is refused as well.
    if found <= MOST_UNITS {
        return Ok(found);
    }
    Err(format!(
        "the core would have to bring the air {} of the way to the coolant's temperature, and with these two flows every \
         core stays below {}; check the temperatures and flows of the measured point",
        rounded(effectiveness, 4),
        rounded(greatest, 4),
    ))
}

/// The field `conductance` when a passage's transfer units are outside the range.
pub fn outside(units: f64) -> Vec<(&'static str, String)> {
    outside_range(
        "conductance",
        "conductance over the air's capacity flow",
        units,
        RANGE,
    )
    .into_iter()
    .collect()
}

/// Transfer units for an effectiveness below the greatest.
fn below_greatest(mixing: Mixing, effectiveness: f64, ratio: f64) -> f64 {
    let alone = -(-effectiveness).ln_1p();
    match mixing {
        // Without coolant warming all formulas are 1 - e^-N.
        _ if ratio == 0.0 => alone,
        Mixing::CoolantMixed => -((-effectiveness * ratio).ln_1p() / ratio).ln_1p(),
        Mixing::AirMixed => -(-ratio * alone).ln_1p() / ratio,
        Mixing::BothUnmixed => {
            // The curve bends down, so tangents from its left stay left of the root and climb to it.
            let mut units = alone;
            for _ in 0..200 {
                let here = self::effectiveness(mixing, units, ratio);
                let step = (effectiveness - here.value) / here.by_units;
                units += step;
                // The last step may be rounding of either sign; past `MOST_UNITS` the caller refuses.
                if step.is_nan() || step <= 1e-14 * units || units > MOST_UNITS {
                    break;
                }
            }
            units
        }
    }
}

/// (1 - e^-w)/w and its derivative, also at and near w = 0.
fn saturation(w: f64) -> Slope {
    if w < 0.5 {
        // sum (-w)^k/(k + 1)!, and its derivative, -sum (k + 1) (-w)^k/(k + 2)!.
        let (mut value, mut derivative) = (0.0, 0.0);
        let mut term = 1.0;
        for k in 0..14 {
            let next = f64::from(k + 2);
            value += term;
            derivative -= term * (next - 1.0) / next;
            term *= -w / next;
        }
        return Slope { value, derivative };
    }
    let rest = (-w).exp();
    let value = (1.0 - rest) / w;
    Slope {
        value,
        derivative: (rest - value) / w,
    }
}
