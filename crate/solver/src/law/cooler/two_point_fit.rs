//! Pressure drop of a core from two measured points.
//!
//! # Equation
//! dp = a m + b m^2 through both points; at other states the linear part goes with viscosity over density,
//! the square part with 1/density, density being the mean before and behind.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | m | `flow_1`, `flow_2` | mass flow of the whole core | kg/s |
//! | dp | `drop_1`, `drop_2` | pressure drop | Pa |
//! | a, b | result | linear and square part | Pa s/kg, Pa s2/kg2 |
//!
//! # Source
//! Two-term (Forchheimer 1901) form of the drop through fins: common practice.
//!
//! # Range of validity
//! Between and near the measured flows, which should differ by a fifth at least; a and b not negative.
//!
//! # Limits
//! The passage's entry and exit are in the measured drop, as between ducts of the face's section: where a chamber
//! follows, the velocity head behind the face is lost besides. Densities are those at rest.

use super::super::Scatter;
use super::super::outside::outside_range;

/// Range of the larger measured flow over the smaller [-]; nearer points fit the measuring error.
pub const RANGE: [f64; 2] = [1.2, f64::INFINITY];

/// Scatter of the drop.
pub const SCATTER: Scatter = Scatter {
    relative: 0.05,
    common: 0.8,
    origin: "common practice for a measured core; the passages are alike",
};

/// A fitted core.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoreFit {
    /// Linear part [Pa s/kg].
    pub a: f64,
    /// Square part [Pa s2/kg2].
    pub b: f64,
}

/// Fits two points.
///
/// # Errors
/// The reason, in words, when no law with a and b not negative passes through them.
pub fn fit(flow_1: f64, drop_1: f64, flow_2: f64, drop_2: f64) -> Result<CoreFit, String> {
    let (low, high) = if flow_1 < flow_2 {
        ((flow_1, drop_1), (flow_2, drop_2))
    } else {
        ((flow_2, drop_2), (flow_1, drop_1))
    };
    if low.0 == high.0 {
        return Err(
            "the two measured points of the core have the same flow; give two different ones"
                .to_owned(),
        );
    }
    if high.1 <= low.1 {
        return Err(
            "the core's drop falls as its flow rises; check the two measured points".to_owned(),
        );
    }
    let b = (high.1 / high.0 - low.1 / low.0) / (high.0 - low.0);
    let a = low.1 / low.0 - b * low.0;
    // Points of an exact square or an exact line give a rounding error either side of zero.
    let rounding = 1e-12 * high.1 / high.0;
    if b * high.0 < -rounding {
        return Err("the core's drop rises less than its flow, which no core does; check the two measured points".to_owned());
    }
    if a < -rounding {
        return Err(
            "the core's drop rises more than the square of its flow; check the two measured points"
                .to_owned(),
        );
    }
    Ok(CoreFit {
        a: a.max(0.0),
        b: b.max(0.0),
    })
}

/// The field `flow2` when the two flows lie too close to tell the two parts apart.
pub fn outside(flow_1: f64, flow_2: f64) -> Vec<(&'static str, String)> {
    let ratio = (flow_1 / flow_2).max(flow_2 / flow_1);
    outside_range("flow2", "larger over smaller measured flow", ratio, RANGE)
        .into_iter()
        .collect()
}
