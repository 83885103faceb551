//! Junctions: headers by momentum, tees and wyes by published coefficients.
//!
//! Coefficients are the loss of stagnation pressure between the leg that carries all and the named leg,
//! over the velocity head of the leg that carries all; q is the side leg's part of that leg's flow.

pub mod bassett_2001;
pub mod crane_tp410;
pub mod gardel_1957;
pub mod header_momentum;
pub mod idelchik;
pub mod impinging_jet_beltaos_1974;
pub mod plenum_jet;
pub mod rennels_2012;
pub mod symmetric_bassett_2001;

pub use symmetric_bassett_2001::{stem_combining, stem_dividing};

use super::Slope;
use super::outside::outside_range;
use crate::study::JunctionLaw;

/// Part of the variance of every junction's numbers that is the same everywhere [-]: half, as no source says otherwise.
pub const COMMON: f64 = 0.5;

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

/// One standard deviation of a law's coefficients while the air divides [-].
pub fn scatter(law: JunctionLaw) -> f64 {
    match law {
        JunctionLaw::Bassett2001 => bassett_2001::SCATTER,
        JunctionLaw::Idelchik => idelchik::SCATTER,
        JunctionLaw::Rennels2012 => rennels_2012::SCATTER,
        JunctionLaw::Gardel1957 => gardel_1957::SCATTER,
        JunctionLaw::CraneTp410 => crane_tp410::SCATTER,
    }
}

/// One standard deviation of a law's coefficients while the air combines [-].
pub fn scatter_combining(law: JunctionLaw) -> f64 {
    match law {
        JunctionLaw::Bassett2001 => bassett_2001::SCATTER_COMBINING,
        JunctionLaw::Idelchik => idelchik::SCATTER_COMBINING,
        JunctionLaw::Rennels2012 => rennels_2012::SCATTER_COMBINING,
        JunctionLaw::Gardel1957 => gardel_1957::SCATTER_COMBINING,
        JunctionLaw::CraneTp410 => crane_tp410::SCATTER_COMBINING,
    }
}

/// Fields of a junction outside its author's range.
pub fn outside(law: JunctionLaw, geometry: &Geometry) -> Vec<(&'static str, String)> {
    match law {
        JunctionLaw::Bassett2001 => bassett_2001::outside(geometry),
        JunctionLaw::Idelchik => idelchik::outside(geometry),
        JunctionLaw::Rennels2012 => rennels_2012::outside(geometry),
        JunctionLaw::Gardel1957 => gardel_1957::outside(geometry),
        JunctionLaw::CraneTp410 => crane_tp410::outside(geometry),
    }
}

fn outside_area_ratio(geometry: &Geometry, range: [f64; 2]) -> Option<(&'static str, String)> {
    outside_range(
        "sideArea",
        "side area over run area",
        geometry.area_ratio,
        range,
    )
}

fn outside_angle(geometry: &Geometry, range: [f64; 2]) -> Option<(&'static str, String)> {
    outside_range("angle", "angle in radians", geometry.angle, range)
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

/// A number as a quantity that does not change with q.
pub(crate) fn constant(value: f64) -> Slope {
    Slope {
        value,
        derivative: 0.0,
    }
}

/// `from` where `part` is 0, `to` where it is 1; `part` does not change with q.
pub(crate) fn mix(from: Slope, to: Slope, part: f64) -> Slope {
    Slope {
        value: from.value + (to.value - from.value) * part,
        derivative: from.derivative + (to.derivative - from.derivative) * part,
    }
}

/// The larger of two quantities, the corner rounded by a parabola where they differ by less than `width`.
pub(crate) fn larger(a: Slope, b: Slope, width: f64) -> Slope {
    let lead = a.value - b.value;
    let (ramp, part) = if lead <= -width {
        (0.0, 0.0)
    } else if lead >= width {
        (lead, 1.0)
    } else {
        (
            (lead + width) * (lead + width) / (4.0 * width),
            (lead + width) / (2.0 * width),
        )
    };
    Slope {
        value: b.value + ramp,
        derivative: b.derivative + (a.derivative - b.derivative) * part,
    }
}

/// 0 for a ratio well under `at`, 1 well over it, smooth within 0.03 of it.
pub(crate) fn over(ratio: f64, at: f64) -> f64 {
    blend(constant(0.0), constant(1.0), ratio, at, 0.03).value
}
