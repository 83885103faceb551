//! The running draw over a range of speeds.

use super::build::refusal;
use super::whole::{charge_temperature, spread};
use super::{Draw, PointFigures, PointOutcome, SpeedPoint};
use crate::draw::{self, Numbers, Operating};
use crate::error::StudyError;
use crate::gate;
use crate::model::{Model, Purpose};
use crate::study::Study;

/// Speeds of a range.
const POINTS: usize = 60;
/// Ends of the range over the study's speed, where they are not given [-].
const FROM: f64 = 0.3;
const TO: f64 = 1.1;

/// The speeds of a study's range [rev/s]; none when it names neither a speed nor a range.
pub fn speeds(study: &Study) -> Vec<f64> {
    let engine = &study.engine;
    let end = |given: Option<f64>, part: f64| given.or_else(|| Some(part * engine.speed?));
    let (Some(from), Some(to)) = (end(engine.speed_from, FROM), end(engine.speed_to, TO)) else {
        return Vec::new();
    };
    let step = (to - from) / (POINTS - 1) as f64;
    (0..POINTS)
        .map(|point| from + step * point as f64)
        .collect()
}

/// Solves the running draw at each speed [rev/s]; nothing where the study lacks what that draw needs.
///
/// # Errors
/// Everything that is wrong with the study, as `read` would tell it.
pub fn speed_range(study: &Study, speeds: &[f64]) -> Result<Vec<SpeedPoint>, Vec<StudyError>> {
    let errors = gate::check(study);
    if !errors.is_empty() {
        return Err(errors);
    }
    let mut points: Vec<Operating> = Vec::with_capacity(speeds.len());
    for speed in speeds {
        let Ok(point) = draw::operating_at(study, Some(*speed)) else {
            return Ok(Vec::new());
        };
        points.push(point);
    }
    let model = Model::new(study, Purpose::Running);
    let solved = draw::over_speeds(&model, &points);
    Ok(solved
        .into_iter()
        .zip(speeds)
        .map(|(solved, speed)| {
            let outcome = match solved {
                Ok(numbers) => PointOutcome::Solved(figures(&numbers)),
                Err(refused) => PointOutcome::Refused {
                    sentence: refusal(Draw::Running, &model, &refused, *speed).sentence,
                },
            };
            SpeedPoint {
                speed: *speed,
                outcome,
            }
        })
        .collect())
}

fn figures(numbers: &Numbers) -> PointFigures {
    let flows = &numbers.flows;
    let found = &numbers.found;
    let total: f64 = flows.iter().sum();
    let ratios = found
        .blowers
        .iter()
        .map(|blower| blower.outlet_pressure / blower.inlet_pressure);
    PointFigures {
        total,
        spread: spread(flows),
        shares: flows.iter().map(|flow| flow / total).collect(),
        temperatures: found.temperatures.clone(),
        charge_temperature: charge_temperature(flows, found.temperatures.iter().copied()),
        boost: found.boost.map(|(_, pressure)| pressure - found.ambient),
        loss: found.loss,
        pressure_ratio: ratios.reduce(f64::max),
    }
}
