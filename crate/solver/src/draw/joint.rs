//! One Newton's method over all intervals' networks and what they share together.
//!
//! Solving every network for each guess of the cylinders' air wastes most of its steps on guesses. Here each network
//! takes one step towards where the air is going to be: what it will then say follows from its residuals
//! by the same adjoints that give the derivatives by the air.

use super::gathered::Gathered;
use super::running::{Cycle, Swept};
use crate::solve::{Factors, Failure, Missed, Progress};

/// Largest change of a flow in the last step, over the total flow, of a network that is solved for the first air: that
/// is a guess, and worth no last digit. Where the networks begin farther off, all of them need a step more [-].
const FIRST_STEP: f64 = 1e-4;
/// Steps before the networks are solved in turn.
const STEPS: u32 = 20;
/// Largest part by which a shared equation may be missed [-].
const BALANCE: f64 = 1e-12;

/// What is kept of an interval's network while the others are evaluated.
#[derive(Clone, Debug, Default)]
pub(super) struct Lane {
    factors: Factors,
    /// Right-hand side, then the step [kg/s, Pa, K].
    step: Vec<f64>,
}

impl Cycle<'_, '_> {
    /// Finds flows and states that agree, and gathers, if wanted, what they tell; false when the steps lead nowhere.
    ///
    /// # Errors
    /// When a network has no state at the first flows.
    pub(super) fn agree_together(&mut self, gather: bool) -> Result<bool, Failure> {
        let enough = std::mem::replace(&mut self.solver.enough, FIRST_STEP);
        let begun = (0..self.intervals.len()).try_for_each(|interval| {
            if self.states[interval].is_some() {
                return Ok(());
            }
            self.solve_interval(interval)
        });
        self.solver.enough = enough;
        begun?;
        let mut progress = Progress::default();
        let mut last_step = f64::INFINITY;
        for _ in 0..STEPS {
            // What may be the last look gathers on the way: another would have to evaluate everything again.
            let mut gathered =
                (gather && Progress::may_end(last_step)).then(|| self.nothing_gathered());
            let Some((missed, swept)) = self.look_ahead(gathered.as_mut()) else {
                return Ok(false);
            };
            let (largest, change) = self.next_change(&swept);
            if progress.ends(missed, last_step) && largest <= BALANCE {
                self.gathered = gathered.map(|gathered| (swept, gathered));
                return Ok(true);
            }
            let part = self.step(&change);
            let steps = self.lanes.iter();
            let flow = steps.map(|lane| self.solver.system.largest_flow(&lane.step));
            last_step = part * flow.fold(0.0, f64::max) / missed.total;
            if part == 1.0 && last_step < self.solver.enough {
                return Ok(true);
            }
            if !last_step.is_finite() {
                return Ok(false);
            }
        }
        Ok(false)
    }

    /// Evaluates and factorises every network, and reads what it will say after its step at the present air.
    fn look_ahead(&mut self, mut gathered: Option<&mut Gathered>) -> Option<(Missed, Swept)> {
        let mut missed = Missed::default();
        let mut swept = self.nothing_swept();
        for interval in 0..self.intervals.len() {
            self.set_draws(interval);
            let mut state = self.states[interval].take()?;
            let system = &mut self.solver.system;
            let residuals = system.evaluate_exactly(self.model, &self.conditions, &mut state);
            missed = missed.worse(self.solver.missed(&residuals, &state));
            let regular = self.solver.linearise(&self.conditions, &state);
            self.states[interval] = Some(state);
            if !regular {
                return None;
            }
            self.solver.iterations += 1;
            let mut readings = self.readings(interval, self.states[interval].as_ref()?);
            for reading in &mut readings {
                self.solver.adjoint(&mut reading.gradient);
                let right = &self.solver.system.right;
                let ahead: f64 = reading.gradient.iter().zip(right).map(|(a, b)| a * b).sum();
                reading.value += ahead;
                self.book(&mut swept, interval, reading);
            }
            if let Some(gathered) = &mut gathered {
                self.gather_interval(interval, residuals, &readings, gathered);
            }
            let lane = &mut self.lanes[interval];
            lane.step.clone_from(&self.solver.system.right);
            std::mem::swap(&mut lane.factors, &mut self.solver.system.matrix.factors);
        }
        Some((missed, swept))
    }

    /// Takes every network's step together with a change of the air, and tells which part of it.
    fn step(&mut self, change: &[f64]) -> f64 {
        let mut part = self.shared.allowed_part(&self.values, change);
        for interval in 0..self.intervals.len() {
            let mut right = std::mem::take(&mut self.lanes[interval].step);
            self.push(interval, change, &mut right);
            self.lanes[interval].step = right;
            let lane = &mut self.lanes[interval];
            let matrix = &mut self.solver.system.matrix;
            std::mem::swap(&mut lane.factors, &mut matrix.factors);
            matrix.solve(&mut lane.step);
            if let Some(state) = &self.states[interval] {
                part = part.min(self.solver.allowed_part(state, &lane.step));
            }
        }
        for (state, lane) in self.states.iter_mut().zip(&self.lanes) {
            if let Some(state) = state {
                self.solver.system.apply_step(state, part, &lane.step);
            }
        }
        self.change_values(part, change);
        part
    }
}

#[cfg(test)]
mod tests {
    use super::super::operating::operating;
    use super::super::running::intervals;
    use super::*;
    use crate::gate;
    use crate::model::{Model, Purpose};

    /// Our own arithmetic, two ways: the air that all networks find together is the air for which each
    /// of them is solved in turn.
    #[test]
    fn together_and_in_turn_find_the_same_air() {
        let text = include_str!("../../../../examples/v8_lid/network.json");
        let study = gate::read(text).expect("the example is valid");
        let model = Model::new(&study, Purpose::Running);
        let operating = operating(&study).expect("its engine is complete");
        let intervals = intervals(&operating, false);
        let cycle = || Cycle::new(&model, &operating, &intervals);
        let (mut together, mut in_turn) = (cycle(), cycle());
        assert!(
            together
                .agree_together(false)
                .expect("states at the first flows")
        );
        in_turn.agree_in_turn().expect("the example is solved");
        let total: f64 = in_turn.flows().iter().sum();
        for (one, other) in together.flows().iter().zip(in_turn.flows()) {
            assert!((one - other).abs() <= 1e-11 * total, "{one} {other}");
        }
        assert!(together.solver.iterations < in_turn.solver.iterations);
    }
}
