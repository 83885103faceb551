//! Where Newton's steps cycle: the flows are followed as they would settle in time.
//!
//! Implicit Euler steps of a made-up motion in which every branch is equally hard to accelerate, over
//! its own resistance, and every node takes up a little air as its pressure rises. What the motion
//! settles to does not depend on either. Inertia rises when a step misses its own equations by much,
//! falls when it meets them, and Newton's method tries again from where the motion has come to.

use super::newton::{FULL_STEPS, Solver, reference_fall};
use super::response::Form;
use super::system::Residuals;
use super::{Conditions, Flowing};

/// Inertia of the first step, see `System::inertia` [-].
const FIRST: f64 = 1.0;
/// Largest number of steps.
const STEPS: u32 = 400;
/// Steps after which Newton's method tries at the latest.
const TRY_EVERY: u32 = 16;
/// Imbalance and closure at which it tries at once, given an inertia below `LIGHT` [-].
const READY: f64 = 1e-3;
const LIGHT: f64 = 0.1;
/// A step that misses its equations by more than this part of what is out of balance is taken back [-].
const REFUSED: f64 = 0.5;
/// What is out of balance counts as at least this much for it [-].
const LEAST: f64 = 1e-2;

impl Solver<'_> {
    /// The steady state that the motion from `start` leads to, if Newton's method finds one on the way.
    pub(super) fn settle(
        &mut self,
        conditions: &Conditions,
        start: &Flowing,
        storage: f64,
    ) -> Option<Flowing> {
        self.system.storage = storage;
        let found = self.settle_from(conditions, start.clone());
        self.system.inertia = 0.0;
        self.system.storage = 0.0;
        found
    }

    fn settle_from(&mut self, conditions: &Conditions, mut state: Flowing) -> Option<Flowing> {
        let mut inertia = FIRST;
        let residuals = self.system.evaluate(self.model, conditions, &state);
        let mut unrest = self.unrest(&residuals, &state);
        for step in 1..=STEPS {
            self.iterations += 1;
            self.system.inertia = inertia;
            self.system.evaluate(self.model, conditions, &state);
            self.system.assemble(self.model, conditions, &state);
            let kept = state.clone();
            let (now, error) = self
                .move_on(conditions, &mut state)
                .unwrap_or((f64::NAN, f64::NAN));
            if !now.is_finite() || error > REFUSED * unrest.max(LEAST) {
                state = kept;
                inertia *= 4.0;
                continue;
            }
            inertia *= match error / unrest {
                part if part < 0.1 => 0.4,
                part if part < 0.25 => 0.7,
                _ => 1.0,
            };
            unrest = now;
            if (unrest < READY && inertia < LIGHT) || step % TRY_EVERY == 0 {
                self.system.inertia = 0.0;
                let mut trial = state.clone();
                if self
                    .attempt(conditions, &mut trial, FULL_STEPS, false)
                    .is_ok()
                {
                    return Some(trial);
                }
            }
        }
        None
    }

    /// One step: what is out of balance after it, and by how much it missed its own equations [-].
    fn move_on(&mut self, conditions: &Conditions, state: &mut Flowing) -> Option<(f64, f64)> {
        self.system.step().ok()?;
        let factor = self.allowed_factor(state);
        let forms: Vec<Form> = self.system.branches.iter().map(|own| own.form).collect();
        let change: Vec<f64> = self
            .system
            .right
            .iter()
            .map(|change| factor * change)
            .collect();
        self.system.apply(state, factor);
        let residuals = self.system.evaluate(self.model, conditions, state);
        // A branch whose equation is now written another way moves at another rate: that is no error.
        let branches = self.system.branches.iter().zip(&change).zip(&forms);
        let missed = branches
            .filter(|((own, _), form)| own.form == **form)
            .map(|((own, change), _)| own.step_error(*change))
            .fold(0.0, f64::max)
            / reference_fall(self.model, state);
        let unstored = self
            .system
            .storage_error(self.model, conditions, state, &change)
            / residuals.total.max(1e-9);
        Some((self.unrest(&residuals, state), missed.max(unstored)))
    }

    fn unrest(&self, residuals: &Residuals, state: &Flowing) -> f64 {
        let closure = residuals.closure / reference_fall(self.model, state);
        closure.max(residuals.imbalance / residuals.total.max(1e-9))
    }
}
