//! Poppet valve at fixed lift: its curtain as an opening, as far as its throat lets the air.
//!
//! # Equation
//! A_eff = n ((C_d pi D L)^-8 + A_t^-8)^(-1/8), A_t = pi/4 (D_t^2 - D_s^2).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | D | `diameter` | inner seat diameter | m |
//! | L | `lift` | lift | m |
//! | C_d | `discharge_coefficient` | on the curtain area; by L/D where it is a table or not given | - |
//! | D_t | `throat_diameter` | smallest bore before the seat; no limit when not given | m |
//! | D_s | `stem_diameter` | stem in that bore | m |
//! | n | `count` | valves of the port | - |
//! | A_eff | result | section to which the air accelerates without loss | m2 |
//!
//! # Source
//! J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, section 6.3.2 and appendix C; the default curve of
//! C_d is the middle of the ranges read loosely from its curves and Annand and Roe 1974 (from memory).
//!
//! # Range of validity
//! L/D to 0.25 where no throat is given: beyond it the seat, not the curtain, is the narrowest section.
//!
//! # Limits
//! The jet's whole head is lost in what follows. Flow back into the port is not treated as a jet. Curtain and
//! throat are joined so that neither takes over with a jump: where they are equal, 8 % less than either.

use std::f64::consts::PI;

use super::super::Scatter;
use super::super::outside::outside_range;

/// Range of L/D [-].
pub const RANGE: [f64; 2] = [0.0, 0.25];

/// Scatter of the head the valve costs.
pub const SCATTER: Scatter = Scatter {
    relative: 0.15,
    common: 0.8,
    origin: "published inlet valves lie within 6 to 12 % of a mean coefficient at one L/D (from memory), twice that in head",
};

/// Discharge coefficient on the curtain area by L/D, for a valve of which nothing else is known.
pub const DEFAULT_CURVE: [[f64; 2]; 4] = [[0.05, 0.64], [0.1, 0.62], [0.2, 0.57], [0.25, 0.515]];

/// One valve's geometry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Passage {
    /// Inner seat diameter [m].
    pub diameter: f64,
    /// Lift [m].
    pub lift: f64,
    /// Area of the throat that the stem leaves, if it is known [m2].
    pub throat: Option<f64>,
}

impl Passage {
    /// The cylinder between seat and valve at its lift [m2].
    pub fn curtain(&self) -> f64 {
        PI * self.diameter * self.lift
    }

    /// Effective area with a discharge coefficient on the curtain [m2].
    pub fn effective_area(&self, discharge_coefficient: f64) -> f64 {
        let curtain = discharge_coefficient * self.curtain();
        match self.throat {
            Some(throat) => (curtain.powi(-8) + throat.powi(-8)).powf(-0.125),
            None => curtain,
        }
    }

    /// The field `lift` when it is outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        if self.throat.is_some() {
            return Vec::new();
        }
        let ratio = self.lift / self.diameter;
        outside_range("lift", "lift over seat diameter", ratio, RANGE)
            .into_iter()
            .collect()
    }
}

/// A throat's area beside the stem in it [m2].
pub fn throat_area(throat_diameter: f64, stem_diameter: f64) -> f64 {
    0.25 * PI * (throat_diameter * throat_diameter - stem_diameter * stem_diameter)
}

/// The coefficient of a curve of points [L/D, C_d], rising in L/D: linear between them, level beyond [-].
pub fn on_curve(curve: &[[f64; 2]], lift_ratio: f64) -> f64 {
    let Some(last) = curve.last() else {
        return f64::NAN;
    };
    let above = curve.iter().position(|point| point[0] >= lift_ratio);
    match above {
        None => last[1],
        Some(0) => curve[0][1],
        Some(place) => {
            let ([low, below], [high, above]) = (curve[place - 1], curve[place]);
            below + (lift_ratio - low) / (high - low) * (above - below)
        }
    }
}
