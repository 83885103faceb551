//! Which fields of a loss lie outside its law's range of validity.

use super::{bend, entry, friction, opening};
use crate::model::hydraulic_diameter;
use crate::study::Loss;

/// Field and message for each value outside its law's range.
pub fn outside(loss: &Loss) -> Vec<(&'static str, String)> {
    let mut found = Vec::new();
    let mut check = |field: &'static str, what: &str, value: f64, range: [f64; 2]| {
        if value < range[0] || value > range[1] {
            let message = format!(
                "{what} is {value:.3}, outside the law's {} to {}",
                range[0], range[1]
            );
            found.push((field, message));
        }
    };
    match *loss {
        Loss::EntryRounded { area, radius } => {
            let ratio = entry::rounded_rennels_2012::RoundedEntry { area, radius }.radius_ratio();
            check(
                "radius",
                "radius over diameter",
                ratio,
                entry::rounded_rennels_2012::RANGE,
            );
        }
        Loss::EntryFlared { area, radius } => {
            let ratio = entry::flared_idelchik::FlaredEntry { area, radius }.radius_ratio();
            // A larger bell is as good as the largest of the table.
            check(
                "radius",
                "radius over diameter",
                ratio.min(0.2),
                entry::flared_idelchik::RANGE,
            );
        }
        Loss::Duct {
            area,
            perimeter,
            roughness,
            ..
        } => {
            let ratio = roughness / hydraulic_diameter(area, perimeter);
            check(
                "roughness",
                "roughness over diameter",
                ratio,
                friction::churchill_1977::RANGE,
            );
        }
        Loss::Bend {
            area,
            perimeter,
            radius,
            ..
        } => {
            let ratio = radius / hydraulic_diameter(area, perimeter);
            check(
                "radius",
                "radius over diameter",
                ratio,
                bend::rennels_2012::RANGE,
            );
        }
        Loss::Opening {
            discharge_coefficient,
            ..
        } => {
            check(
                "dischargeCoefficient",
                "discharge coefficient",
                discharge_coefficient,
                opening::contracted_jet::RANGE,
            );
        }
        _ => {}
    }
    found
}
