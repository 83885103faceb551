//! Thin-edged opening: a jet that contracts, then spreads.
//!
//! # Equation
//! The air accelerates without loss to the jet's section A_j = C_d A (St Venant and Wantzel 1839) and then
//! loses K = (1 - A_j/A_2)^2 of the jet's velocity head; into a chamber it loses all of it.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | A | `area` | opening | m2 |
//! | C_d | `discharge_coefficient` | jet at its narrowest over opening | - |
//! | A_2 | `area_to`, `area_from` | section behind, a chamber when absent | m2 |
//! | K | result | loss coefficient on the jet's velocity head | - |
//!
//! # Source
//! St Venant and Wantzel 1839 as in J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, appendix C;
//! Borda and Carnot for the spreading. C_d 0.61 for a sharp edge: common practice.
//!
//! A wall with a thickness: what it saves and costs stands in `thick_edge_idelchik`. The jet's section is then that
//! of the thin opening that lets as much through between chambers.
//!
//! # Range of validity
//! C_d from 0.5 to 1; an opening no larger than the sections beside it.
//!
//! # Limits
//! A jet larger than the section behind counts as filling it. The jet chokes at Mach 1; its contraction is taken as constant with pressure ratio.

use super::super::outside::outside_range;
use super::super::{Head, Scatter, TwoWay};
use super::thick_edge_idelchik;

/// Range of the discharge coefficient [-].
pub const RANGE: [f64; 2] = [0.5, 1.0];

/// Scatter of the loss.
pub const SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.5,
    origin: "5 % of the discharge coefficient, 10 % of the loss; common practice",
};

/// An opening.
#[derive(Clone, Copy, Debug)]
pub struct ContractedJet {
    /// Opening [m2].
    pub area: f64,
    /// Jet over opening [-].
    pub discharge_coefficient: f64,
    /// Section towards `from`, a chamber when absent [m2].
    pub area_from: Option<f64>,
    /// Section towards `to`, a chamber when absent [m2].
    pub area_to: Option<f64>,
    /// Thickness of the wall [m].
    pub thickness: f64,
}

impl ContractedJet {
    /// The jet at its narrowest; in a thick wall, that of the thin opening that lets as much through [m2].
    pub fn jet_area(&self) -> f64 {
        if self.thickness > 0.0 {
            self.area / self.heads(0.0).sqrt()
        } else {
            self.area * self.discharge_coefficient
        }
    }

    /// Loss coefficients for either direction; into a chamber 0, since the chamber takes the whole head.
    pub fn coefficients(&self) -> TwoWay {
        let jet = self.jet_area();
        let spreading = |behind: Option<f64>| Head {
            k: behind.map_or(0.0, |area| {
                if self.thickness > 0.0 {
                    self.heads(self.area / area) * (jet / self.area).powi(2)
                } else {
                    (1.0 - jet / area).max(0.0).powi(2)
                }
            }),
            area: jet,
        };
        TwoWay {
            forward: spreading(self.area_to),
            reversed: spreading(self.area_from),
        }
    }

    /// Thickness over diameter [-].
    fn thickness_ratio(&self) -> f64 {
        self.thickness / (4.0 * self.area / std::f64::consts::PI).sqrt()
    }

    /// The loss in heads of the opening, by opening over section behind.
    fn heads(&self, part: f64) -> f64 {
        let narrow = 1.0 / self.discharge_coefficient;
        let ratio = self.thickness_ratio();
        let thin = (narrow - part).max(0.0).powi(2);
        let saved = 2.0 * (narrow - 1.0) * (1.0 - part).max(0.0);
        thin - saved * thick_edge_idelchik::filled(ratio)
            + thick_edge_idelchik::wall_friction(ratio)
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        let beside = |field, area: Option<f64>| {
            let area = area?;
            outside_range(
                field,
                "opening over the section beside it",
                self.area / area,
                [0.0, 1.0],
            )
        };
        outside_range(
            "dischargeCoefficient",
            "discharge coefficient",
            self.discharge_coefficient,
            RANGE,
        )
        .into_iter()
        .chain(beside("areaFrom", self.area_from))
        .chain(beside("areaTo", self.area_to))
        .chain(outside_range(
            "thickness",
            "thickness over the opening's diameter",
            self.thickness_ratio(),
            thick_edge_idelchik::RANGE,
        ))
        .collect()
    }
}
