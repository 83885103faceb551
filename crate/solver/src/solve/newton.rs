//! Newton's method: full steps limited in pressure, then damped ones, then continuation in an added
//! linear resistance that has shrunk to nothing before an answer is given.

use super::system::{Residuals, System};
use super::{Conditions, Flowing, start};
use crate::model::Model;

/// Mass imbalance that ends the iteration, over the total flow [-].
const IMBALANCE: f64 = 1e-13;
/// Closure that ends the iteration, over the largest fall [-].
const CLOSURE: f64 = 1e-12;
/// Largest change of a flow in the last step, over the total flow: the next would be of the order of its
/// square [-].
const STEP: f64 = 1e-6;
/// Largest change of a flow in the last step, over the total flow, of a state that is one of thousands and
/// goes into statistics only: the flows are then right to a millionth [-].
const QUICK_STEP: f64 = 1e-3;
/// What is still an answer when rounding stops the iteration from getting better [-].
const ACCEPTED_IMBALANCE: f64 = 2e-11;
const ACCEPTED_CLOSURE: f64 = 2e-10;
/// Steps without progress after which rounding is taken to have stopped the iteration.
const PATIENCE: u32 = 4;
/// Largest part of a node's absolute pressure that one step may take [-].
const LARGEST_FALL: f64 = 0.4;
/// The same for a rise [-].
const LARGEST_RISE: f64 = 1.0;
/// Steps of one attempt.
pub(super) const FULL_STEPS: u32 = 60;
const DAMPED_STEPS: u32 = 120;
/// The continuation: added resistance over each branch's reference slope, and the part of the junctions'
/// leg losses that acts. With no leg losses every fall grows with its flow, and the state is unique.
const CONTINUATION: [(f64, f64); 11] = [
    (0.3, 0.0),
    (0.03, 0.0),
    (0.03, 0.2),
    (0.03, 0.4),
    (0.03, 0.6),
    (0.03, 0.8),
    (0.03, 0.9),
    (0.03, 1.0),
    (0.01, 1.0),
    (1e-3, 1.0),
    (0.0, 1.0),
];

/// What nodes store while the flows settle, see `System::storage`, one attempt each [-].
const STORAGES: [f64; 4] = [0.1, 1e-3, 1.0, 10.0];

/// Why no state was found.
#[derive(Clone, Copy, Debug)]
pub struct Failure {
    /// Branch with the largest closure at its end.
    pub branch: usize,
}

/// How far the equations are from being met.
#[derive(Clone, Copy, Debug, Default)]
pub struct Missed {
    /// Air that passes the network [kg/s].
    pub total: f64,
    /// Mass imbalance over the total flow [-].
    pub imbalance: f64,
    /// Closure over the largest fall [-].
    pub closure: f64,
}

impl Missed {
    /// One number for both.
    fn merit(self) -> f64 {
        self.imbalance.max(0.1 * self.closure)
    }

    /// The worse of two.
    pub fn worse(self, other: Self) -> Self {
        Self {
            total: self.total.max(other.total),
            imbalance: self.imbalance.max(other.imbalance),
            closure: self.closure.max(other.closure),
        }
    }
}

/// Tells when Newton's steps have come as near as they get.
#[derive(Clone, Copy, Debug)]
pub struct Progress {
    best: f64,
    idle: u32,
}

impl Default for Progress {
    fn default() -> Self {
        Self {
            best: f64::INFINITY,
            idle: 0,
        }
    }
}

impl Progress {
    /// Whether the state may be found to be an answer after a step of this size.
    pub fn may_end(last_step: f64) -> bool {
        last_step <= STEP
    }

    /// Whether the state is an answer; `last_step` is the last change of a flow over the total [-].
    pub fn ends(&mut self, missed: Missed, last_step: f64) -> bool {
        let Missed {
            imbalance, closure, ..
        } = missed;
        if imbalance <= IMBALANCE && closure <= CLOSURE && Self::may_end(last_step) {
            return true;
        }
        let merit = missed.merit();
        self.idle = if merit < 0.5 * self.best {
            0
        } else {
            self.idle + 1
        };
        self.best = self.best.min(merit);
        self.idle >= PATIENCE && imbalance <= ACCEPTED_IMBALANCE && closure <= ACCEPTED_CLOSURE
    }
}

/// Solves one model under changing conditions, reusing pattern and last state.
#[derive(Clone, Debug)]
pub struct Solver<'m> {
    /// The network.
    pub model: &'m Model,
    /// Its equations, as last evaluated.
    pub system: System,
    /// Newton steps taken so far.
    pub iterations: u32,
    /// Whether a state is looked for by every means, or only by plain steps.
    pub patient: bool,
    /// Largest change of a flow in the last step, over the total flow, after which a state is near enough for what
    /// it serves; none does for an answer [-].
    pub enough: f64,
}

impl<'m> Solver<'m> {
    /// Prepares a model; `thermal` makes temperatures unknowns.
    pub fn new(model: &'m Model, thermal: bool) -> Self {
        Self {
            model,
            system: System::new(model, thermal),
            iterations: 0,
            patient: true,
            enough: 0.0,
        }
    }

    /// The same for a model of the same pattern whose laws are other ones, with the tables of its `system`.
    pub fn again(model: &'m Model, system: System) -> Self {
        Self {
            model,
            system,
            iterations: 0,
            patient: false,
            enough: QUICK_STEP,
        }
    }

    /// The steady state under `conditions`, from `warm` if given.
    pub fn solve(
        &mut self,
        conditions: &Conditions,
        warm: Option<&Flowing>,
    ) -> Result<Flowing, Failure> {
        if let Some(warm) = warm {
            let mut state = warm.clone();
            if self
                .attempt(conditions, &mut state, FULL_STEPS, false)
                .is_ok()
            {
                return Ok(state);
            }
        }
        let first = start::simple(self.model, conditions, &mut self.system);
        let mut state = first.clone();
        let plain = self.attempt(conditions, &mut state, FULL_STEPS, false);
        if plain.is_ok() || !self.patient {
            return plain.map(|()| state);
        }
        state.clone_from(&first);
        if self
            .attempt(conditions, &mut state, DAMPED_STEPS, true)
            .is_ok()
        {
            return Ok(state);
        }
        for storage in STORAGES {
            if let Some(state) = self.settle(conditions, &first, storage) {
                return Ok(state);
            }
        }
        self.continuation(conditions, first)
    }

    /// As `solve`, from a start of the caller's own and without falling back to another.
    pub fn solve_from(
        &mut self,
        conditions: &Conditions,
        start: &Flowing,
    ) -> Result<Flowing, Failure> {
        let mut state = start.clone();
        self.attempt(conditions, &mut state, FULL_STEPS, false)
            .or_else(|_| {
                state.clone_from(start);
                self.attempt(conditions, &mut state, DAMPED_STEPS, true)
            })
            .map(|()| state)
    }

    fn continuation(
        &mut self,
        conditions: &Conditions,
        first: Flowing,
    ) -> Result<Flowing, Failure> {
        let mut state = first;
        let mut outcome = Ok(());
        for (added, legs) in CONTINUATION {
            self.system.added_slope = added;
            self.system.leg_part = legs;
            let kept = state.clone();
            outcome = self
                .attempt(conditions, &mut state, FULL_STEPS, false)
                .or_else(|_| {
                    state.clone_from(&kept);
                    self.attempt(conditions, &mut state, DAMPED_STEPS, true)
                });
            if outcome.is_err() && (added, legs) != (0.0, 1.0) {
                state = kept;
            }
        }
        self.system.added_slope = 0.0;
        self.system.leg_part = 1.0;
        outcome.map(|()| state)
    }

    pub(super) fn attempt(
        &mut self,
        conditions: &Conditions,
        state: &mut Flowing,
        steps: u32,
        damped: bool,
    ) -> Result<(), Failure> {
        let mut last_step = f64::INFINITY;
        let mut progress = Progress::default();
        let mut residuals = self.system.evaluate(self.model, conditions, state);
        for _ in 0..steps {
            let missed = self.missed(&residuals, state);
            if progress.ends(missed, last_step) {
                self.system.settle_choked(state);
                return Ok(());
            }
            let merit = missed.merit();
            self.iterations += 1;
            self.system.assemble(self.model, conditions, state);
            if self.system.step().is_err() {
                break;
            }
            let factor = self.allowed_factor(state);
            last_step = factor * self.system.largest_flow_step() / missed.total;
            // A step that was cut short tells nothing of how near the state is.
            if factor == 1.0 && last_step < self.enough {
                self.system.apply(state, factor);
                return Ok(());
            }
            residuals = if damped {
                self.damped_step(conditions, state, factor, merit)
            } else {
                self.system.apply(state, factor);
                self.system.evaluate(self.model, conditions, state)
            };
            if !(residuals.closure.is_finite() && residuals.imbalance.is_finite()) {
                break;
            }
        }
        Err(Failure {
            branch: self.system.worst_branch(),
        })
    }

    /// How far the equations are from being met.
    pub fn missed(&self, residuals: &Residuals, state: &Flowing) -> Missed {
        let total = residuals.total.max(1e-9);
        let imbalance = residuals
            .imbalance
            .max(residuals.energy / state.temperature[0]);
        Missed {
            total,
            imbalance: imbalance / total,
            closure: residuals.closure / reference_fall(self.model, state),
        }
    }

    /// Halves the step while the residuals grow; takes a short one rather than none.
    fn damped_step(
        &mut self,
        conditions: &Conditions,
        state: &mut Flowing,
        factor: f64,
        merit: f64,
    ) -> Residuals {
        let kept = state.clone();
        let mut factor = factor;
        for _ in 0..6 {
            self.system.apply(state, factor);
            let kept_step = self.system.right.clone();
            let residuals = self.system.evaluate(self.model, conditions, state);
            let fall = reference_fall(self.model, state);
            let now = (residuals.imbalance / residuals.total.max(1e-9))
                .max(0.1 * residuals.closure / fall);
            if now < merit * (1.0 - 0.1 * factor) {
                return residuals;
            }
            state.clone_from(&kept);
            self.system.right = kept_step;
            factor *= 0.5;
        }
        self.system.apply(state, 4.0 * factor);
        self.system.evaluate(self.model, conditions, state)
    }

    pub(super) fn allowed_factor(&self, state: &Flowing) -> f64 {
        self.allowed_part(state, &self.system.right)
    }

    /// How much of a step the pressures allow [-].
    pub fn allowed_part(&self, state: &Flowing, step: &[f64]) -> f64 {
        let mut factor: f64 = 1.0;
        for node in 0..state.gauge.len() {
            let change = step[self.system.pressure_unknown(node)];
            let allowed = LARGEST_FALL * state.pressure(node);
            if change < -allowed {
                factor = factor.min(-allowed / change);
            }
            let allowed = LARGEST_RISE * state.pressure(node);
            if change > allowed {
                factor = factor.min(allowed / change);
            }
        }
        factor
    }
}

/// Largest difference between a source and a port, at least 1 Pa.
pub fn reference_fall(model: &Model, state: &Flowing) -> f64 {
    let highest = model
        .sources
        .iter()
        .map(|node| state.gauge[*node])
        .fold(f64::NEG_INFINITY, f64::max);
    let lowest = model
        .ports
        .iter()
        .map(|port| state.gauge[port.draws_at])
        .fold(f64::INFINITY, f64::min);
    (highest - lowest).abs().max(1.0)
}
