//! The running draw at one speed after another, in numbers only.

use super::events::Interval;
use super::operating::Operating;
use super::running::{Cycle, intervals};
use super::{Found, Refused};
use crate::model::Model;
use crate::solve::Flowing;

/// A running draw in numbers.
#[derive(Clone, Debug)]
pub struct Numbers {
    /// Air of each cylinder, mean over the cycle [kg/s].
    pub flows: Vec<f64>,
    /// What has been found beside it.
    pub found: Found,
}

/// Solves the draw at several operating points that differ in speed alone, each from those before.
pub fn over_speeds(model: &Model, points: &[Operating]) -> Vec<Result<Numbers, Refused>> {
    let Some(first) = points.first() else {
        return Vec::new();
    };
    let intervals = intervals(first, false);
    let mut cycle = Cycle::new(model, first, &intervals);
    cycle.solver.patient = false;
    let mut past: Vec<Solved> = Vec::new();
    let mut results = Vec::with_capacity(points.len());
    for point in points {
        cycle.turn_to(point, &past);
        let found = cycle.numbers();
        if found.is_ok() {
            past.extend(cycle.solved());
            if past.len() > LOOKED_BACK {
                past.remove(0);
            }
        } else {
            past.clear();
        }
        results.push(found.or_else(|_| {
            // The points before may be no start for this one: begin anew, and tell why if that fails too.
            anew(model, point, &intervals).map(|(_, numbers)| numbers)
        }));
    }
    results
}

/// A cycle solved from nothing by plain steps, with its numbers.
pub(super) fn anew<'m, 'a>(
    model: &'m Model,
    operating: &'a Operating,
    intervals: &'a [Interval],
) -> Result<(Cycle<'m, 'a>, Numbers), Refused> {
    let mut cycle = Cycle::new(model, operating, intervals);
    cycle.solver.patient = false;
    match cycle.numbers() {
        Ok(numbers) => Ok((cycle, numbers)),
        Err(Refused::Failed(failure)) => Err(cycle.explain(failure)),
        Err(other) => Err(other),
    }
}

/// Points that are looked back at: through three the start of the next lies on a parabola.
const LOOKED_BACK: usize = 3;

/// A point that has been solved.
struct Solved {
    speed: f64,
    states: Vec<Flowing>,
    values: Vec<f64>,
}

impl<'a> Cycle<'_, 'a> {
    /// Begins at another point, where the points before it lead to.
    fn turn_to(&mut self, point: &'a Operating, past: &[Solved]) {
        self.operating = point;
        self.values = self.shared.first(point);
        self.states.fill(None);
        let Some(last) = past.last() else { return };
        let weights = weights(past, point.speed);
        self.values = ahead(past, &weights, |solved| &solved.values);
        for (interval, state) in self.states.iter_mut().enumerate() {
            let of = |read: fn(&Flowing) -> &Vec<f64>| {
                ahead(past, &weights, |solved| read(&solved.states[interval]))
            };
            *state = Some(Flowing {
                flow: of(|state| &state.flow),
                gauge: of(|state| &state.gauge),
                temperature: of(|state| &state.temperature),
                exit: of(|state| &state.exit),
                coolant: of(|state| &state.coolant),
                datum: last.states[interval].datum,
            });
        }
    }

    /// The present point, once it is solved.
    fn solved(&self) -> Option<Solved> {
        let states: Option<Vec<Flowing>> = self.states.iter().cloned().collect();
        Some(Solved {
            speed: self.operating.speed,
            states: states?,
            values: self.values.clone(),
        })
    }

    fn numbers(&mut self) -> Result<Numbers, Refused> {
        self.agree(false).map_err(Refused::Failed)?;
        let mut swept = self.nothing_swept();
        for interval in 0..self.intervals.len() {
            if let Some(state) = &self.states[interval] {
                for reading in self.readings(interval, state) {
                    swept.readings[reading.result] += reading.value;
                }
            }
        }
        self.set_draws(0);
        let found = self.found(&swept);
        self.inside_tables(&found)?;
        Ok(Numbers {
            flows: self.flows().to_vec(),
            found,
        })
    }
}

/// Lagrange's weights of points for a speed.
fn weights(past: &[Solved], speed: f64) -> Vec<f64> {
    let mut weights = Vec::with_capacity(past.len());
    for (place, own) in past.iter().enumerate() {
        let others = past.iter().enumerate().filter(|(other, _)| *other != place);
        let factors = others.map(|(_, other)| (speed - other.speed) / (own.speed - other.speed));
        weights.push(factors.product());
    }
    weights
}

fn ahead<'s>(
    past: &'s [Solved],
    weights: &[f64],
    read: impl Fn(&'s Solved) -> &'s Vec<f64>,
) -> Vec<f64> {
    let mut sum = vec![0.0; past.first().map_or(0, |first| read(first).len())];
    for (solved, weight) in past.iter().zip(weights) {
        for (sum, value) in sum.iter_mut().zip(read(solved)) {
            *sum += weight * value;
        }
    }
    sum
}
