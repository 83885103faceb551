//! The running draw at one speed after another, in numbers only.

use super::operating::Operating;
use super::running::{Cycle, intervals};
use super::{Found, Refused};
use crate::model::Model;

/// A running draw in numbers.
#[derive(Clone, Debug)]
pub struct Numbers {
    /// Air of each cylinder, mean over the cycle [kg/s].
    pub flows: Vec<f64>,
    /// What has been found beside it.
    pub found: Found,
}

/// Solves the draw at several operating points that differ in speed alone, each from the one before.
pub fn over_speeds(model: &Model, points: &[Operating]) -> Vec<Result<Numbers, Refused>> {
    let Some(first) = points.first() else {
        return Vec::new();
    };
    let intervals = intervals(first);
    let mut cycle = Cycle::new(model, first, &intervals);
    cycle.solver.patient = false;
    let mut results = Vec::with_capacity(points.len());
    for point in points {
        cycle.turn_at(point);
        results.push(cycle.numbers().or_else(|_| {
            // The point before may be no start for this one: begin anew, and tell why if that fails too.
            cycle.states.fill(None);
            let mut fresh = Cycle::new(model, point, &intervals);
            fresh.solver.patient = false;
            let numbers = fresh.numbers();
            numbers.map_err(|refused| match refused {
                Refused::Failed(failure) => fresh.explain(failure),
                other => other,
            })
        }));
    }
    results
}

impl<'a> Cycle<'_, 'a> {
    /// Takes the present state for a start at another speed.
    fn turn_at(&mut self, point: &'a Operating) {
        let first = self.shared.first(point);
        if self.states.iter().all(Option::is_some) {
            let before = self.operating;
            let turns = point.speed / before.speed;
            let breathes = point.volumetric_efficiency / before.volumetric_efficiency;
            self.shared.speed_up(&mut self.values, turns * breathes);
        } else {
            self.values = first;
        }
        self.operating = point;
    }

    fn numbers(&mut self) -> Result<Numbers, Refused> {
        self.agree().map_err(Refused::Failed)?;
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
