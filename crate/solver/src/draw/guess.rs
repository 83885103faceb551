//! Where what all intervals share begins.

use super::operating::{Drive, Operating, ReferenceDensity};
use crate::gas;

/// Where the unknowns begin.
pub(super) struct Guess {
    /// Air of the engine [kg/s].
    pub(super) total: f64,
    /// Pressure behind the blowers [Pa].
    pub(super) pressure: f64,
    /// Temperature there [K].
    pub(super) temperature: f64,
    /// Of the blowers [rev/s].
    pub(super) speeds: Vec<f64>,
}

/// The engine's air without losses: at the sources, at the boost, or where blowers and engine meet.
pub(super) fn guess(operating: &Operating) -> Guess {
    let per_density =
        operating.volumetric_efficiency * operating.cycles * operating.swept.iter().sum::<f64>();
    let air = operating.ambient;
    let before = gas::density(air.pressure, air.temperature);
    let at = |pressure: f64, temperature: f64| match operating.reference {
        ReferenceDensity::Known(density) => density,
        _ => gas::density(pressure, temperature),
    };
    if operating.blowers.is_empty() {
        let densest = operating.sources.iter().flatten();
        let densest = densest.map(|air| at(air.pressure, air.temperature));
        return Guess {
            total: per_density * densest.fold(0.0, f64::max),
            pressure: air.pressure,
            temperature: air.temperature,
            speeds: Vec::new(),
        };
    }
    let boost = operating
        .blowers
        .iter()
        .find_map(|blower| match blower.drive {
            Drive::Boost(boost) => Some(boost.pressure),
            Drive::Speed(_) => None,
        });
    // Heated by half of an ideal compression more than that: about what a core leaves of it.
    let warm = |pressure: f64| air.temperature * (pressure / air.pressure).powf(1.0 / 7.0);
    let moved = |pressure: f64| -> f64 {
        let each = operating.blowers.iter().map(|blower| match blower.drive {
            Drive::Speed(speed) => {
                let efficiency = blower.volumetric.at(speed, pressure / air.pressure).value;
                efficiency * blower.displacement * speed * before
            }
            Drive::Boost(_) => 0.0,
        });
        each.sum()
    };
    let pressure = boost.unwrap_or_else(|| {
        let (mut low, mut high) = (0.2 * air.pressure, 8.0 * air.pressure);
        for _ in 0..40 {
            let middle = 0.5 * (low + high);
            if per_density * at(middle, warm(middle)) > moved(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        0.5 * (low + high)
    });
    let total = per_density * at(pressure, warm(pressure));
    let part = total / operating.blowers.len() as f64;
    let speeds = operating.blowers.iter().map(|blower| match blower.drive {
        Drive::Speed(speed) => speed,
        Drive::Boost(_) => {
            let efficiency = blower.volumetric.at(1.0, pressure / air.pressure).value;
            part / (efficiency * blower.displacement * before)
        }
    });
    Guess {
        total,
        pressure,
        temperature: air.temperature * (pressure / air.pressure).powf(0.4),
        speeds: speeds.collect(),
    }
}
