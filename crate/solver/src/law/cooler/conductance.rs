//! Conductance of a passage of a core, from the whole core's at one measured point.
//!
//! # Equation
//! 1/UA = [s (m/(f m_0))^-n + 1 - s]/(f UA_0).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | UA_0 | `conductance` | of the whole core at the measured point | W/K |
//! | m_0 | `flow` | the whole core's air there | kg/s |
//! | s | `air_part` | part of the resistance on the air side there | - |
//! | n | `exponent` | the air-side coefficient goes with (flow per face)^n | - |
//! | f | `fraction` | part of the core's face that is the passage | - |
//! | m | `flow` of `passage` | air in the passage | kg/s |
//! | UA | result | of the passage | W/K |
//!
//! # Source
//! Resistances in series, F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass Transfer, section 11.2,
//! and the Colburn factor of fins as a power of the Reynolds number, W. M. Kays and A. L. London, Compact Heat
//! Exchangers; both from memory.
//!
//! # Range of validity
//! Flow per face from a quarter of the measured one to twice it: over more one power does not hold.
//!
//! # Limits
//! The coolant side and the fins stay as at the measured point. Below a thousandth of the measured flow per face
//! the air side follows a parabola to a constant coefficient, as still air has one: conductance and derivative stay
//! finite through zero. Reversed flow counts as forward.

use super::super::outside::outside_range;
use super::super::{Scatter, Slope};

/// Range of the flow per face over the measured one [-].
pub const RANGE: [f64; 2] = [0.25, 2.0];

/// Scatter of the conductance.
pub const SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.8,
    origin: "judged: a measured core at another flow, its air-side part and exponent not known; the passages are alike",
};

/// Part of a water-cooled core's resistance on the air side, unless typed [-].
pub const AIR_PART: f64 = 0.7;
/// Where `AIR_PART` comes from.
pub const AIR_PART_ORIGIN: &str = "judged: gas films conduct a tenth to a fiftieth of what liquid films do, fins make up for most of it; 0.5 to 0.9 is usual";

/// Exponent of the air-side coefficient, unless typed [-].
pub const EXPONENT: f64 = 0.6;
/// Where `EXPONENT` comes from.
pub const EXPONENT_ORIGIN: &str = "judged: louvred and offset fins 0.5 to 0.6, plain turbulent passages 0.8 (from memory: Kays and London; Manglik and Bergles 1995; Chang and Wang 1997)";

/// Flow per face over the measured one below which the coefficient levels out [-].
const STILL: f64 = 1e-3;

/// A core's heat transfer at its measured point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Core {
    /// Conductance UA of the whole core at the measured point [W/K].
    pub conductance: f64,
    /// Air flow of the whole core at the measured point [kg/s].
    pub flow: f64,
    /// Part of the resistance on the air side there [-].
    pub air_part: f64,
    /// Exponent of the air-side coefficient over flow per face [-].
    pub exponent: f64,
}

impl Core {
    /// Conductance [W/K] of a passage of a face fraction [-] at its air flow [kg/s], and its derivative with that
    /// flow [W s/(K kg)].
    pub fn passage(&self, fraction: f64, flow: f64) -> Slope {
        let measured = fraction * self.flow;
        let air = film(flow / measured, self.exponent);
        // UA = f UA_0 h/(s + (1 - s) h) with h the film's coefficient over the measured one.
        let resistance = self.air_part + (1.0 - self.air_part) * air.value;
        let whole = fraction * self.conductance;
        Slope {
            value: whole * air.value / resistance,
            derivative: whole * self.air_part * air.derivative
                / (resistance * resistance * measured),
        }
    }

    /// The named field when a passage's flow per face is outside the range.
    pub fn outside(&self, fraction: f64, flow: f64) -> Vec<(&'static str, String)> {
        let ratio = flow.abs() / (fraction * self.flow);
        outside_range(
            "flow",
            "a passage's flow per face over the measured one",
            ratio,
            RANGE,
        )
        .into_iter()
        .collect()
    }
}

/// The air-side coefficient over the measured one, and its derivative with the flow ratio.
fn film(ratio: f64, exponent: f64) -> Slope {
    let size = ratio.abs();
    if size < STILL {
        let edge = STILL.powf(exponent);
        let square = ratio / STILL;
        return Slope {
            value: edge * (1.0 + 0.5 * exponent * (square * square - 1.0)),
            derivative: edge * exponent * square / STILL,
        };
    }
    let value = size.powf(exponent);
    Slope {
        value,
        derivative: exponent * value / ratio,
    }
}
