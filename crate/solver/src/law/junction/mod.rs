//! Junctions: headers by momentum, tees and wyes by published coefficients.
//!
//! Coefficients are the loss of stagnation pressure between the leg that carries all and the named leg,
//! over the velocity head of the leg that carries all; q is the side leg's part of that leg's flow.

pub mod bassett_2001;
pub mod crane_tp410;
pub mod gardel_1957;
pub mod header_momentum;
pub mod idelchik;
pub mod plenum_jet;
pub mod rennels_2012;
pub mod symmetric_bassett_2001;

pub use symmetric_bassett_2001::{stem_combining, stem_dividing};

use super::Slope;
use crate::study::JunctionLaw;

/// Shape of a junction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Geometry {
    /// Side area over run area [-].
    pub area_ratio: f64,
    /// Angle between side leg and run, 90 degrees for a tee [rad].
    pub angle: f64,
}

/// Coefficients of the straight leg and the side leg, with derivatives by q.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JunctionCoefficients {
    /// Straight leg [-].
    pub run: Slope,
    /// Side leg [-].
    pub side: Slope,
}

/// Air from one run leg to the other and to the side.
pub fn dividing(law: JunctionLaw, geometry: &Geometry, q: f64) -> JunctionCoefficients {
    match law {
        JunctionLaw::Bassett2001 => bassett_2001::dividing(geometry, q),
        JunctionLaw::Idelchik => idelchik::dividing(geometry, q),
        JunctionLaw::Rennels2012 => rennels_2012::dividing(geometry, q),
        JunctionLaw::Gardel1957 => gardel_1957::dividing(geometry, q),
        JunctionLaw::CraneTp410 => crane_tp410::dividing(geometry, q),
    }
}

/// Air from one run leg and the side to the other run leg.
pub fn combining(law: JunctionLaw, geometry: &Geometry, q: f64) -> JunctionCoefficients {
    match law {
        JunctionLaw::Bassett2001 => bassett_2001::combining(geometry, q),
        JunctionLaw::Idelchik => idelchik::combining(geometry, q),
        JunctionLaw::Rennels2012 => rennels_2012::combining(geometry, q),
        JunctionLaw::Gardel1957 => gardel_1957::combining(geometry, q),
        JunctionLaw::CraneTp410 => crane_tp410::combining(geometry, q),
    }
}

/// One standard deviation of a law's coefficients [-]: what the authors differ by.
///
/// At q 0.5 and equal areas four authors lie within 0.76 to 0.88, 0.32 to 0.44 and 0.35 to 0.53; Crane stands apart.
pub fn scatter(law: JunctionLaw) -> f64 {
    match law {
        JunctionLaw::CraneTp410 => 0.2,
        _ => 0.1,
    }
}

/// A polynomial in q and its derivative, coefficients from the constant term on.
pub(crate) fn polynomial(coefficients: &[f64], q: f64) -> Slope {
    let mut result = Slope {
        value: 0.0,
        derivative: 0.0,
    };
    for coefficient in coefficients.iter().rev() {
        result.derivative = result.derivative * q + result.value;
        result.value = result.value * q + coefficient;
    }
    result
}

/// The product of two quantities with their derivatives.
pub(crate) fn product(a: Slope, b: Slope) -> Slope {
    Slope {
        value: a.value * b.value,
        derivative: a.derivative * b.value + a.value * b.derivative,
    }
}

/// `below` under `at`, `above` over it, smooth within `width` of it; `x` is q.
pub(crate) fn blend(below: Slope, above: Slope, x: f64, at: f64, width: f64) -> Slope {
    let t = ((x - at) / (2.0 * width) + 0.5).clamp(0.0, 1.0);
    let part = t * t * (3.0 - 2.0 * t);
    let part_by = if t > 0.0 && t < 1.0 {
        6.0 * t * (1.0 - t) / (2.0 * width)
    } else {
        0.0
    };
    Slope {
        value: below.value + (above.value - below.value) * part,
        derivative: below.derivative
            + (above.derivative - below.derivative) * part
            + (above.value - below.value) * part_by,
    }
}
