//! Gradients of the cylinders' air by every uncertain number, gathered over networks.

use std::collections::HashMap;

use crate::solve::{Cause, Forcing};

/// One uncertain number and what it does.
#[derive(Clone, Debug)]
pub struct Gradient {
    /// The number.
    pub cause: Cause,
    /// Change of each result with a unit change of the number.
    pub by: Vec<f64>,
}

/// Gradients of several results by all uncertain numbers.
#[derive(Clone, Debug)]
pub struct Gradients {
    results: usize,
    index: HashMap<(bool, usize, usize), usize>,
    /// By number.
    pub all: Vec<Gradient>,
}

impl Gradients {
    /// No number yet, for so many results.
    pub fn new(results: usize) -> Self {
        Self {
            results,
            index: HashMap::new(),
            all: Vec::new(),
        }
    }

    /// Adds the part of one network to one result: `adjoint` is the result's gradient by the equations.
    pub fn add(&mut self, result: usize, forcings: &[Forcing], adjoint: &[f64], weight: f64) {
        for (position, forcing) in forcings.iter().enumerate() {
            let change: f64 = forcing
                .entries
                .iter()
                .map(|(row, amount)| adjoint[*row] * amount)
                .sum();
            self.row(&forcing.cause, position)[result] += weight * change;
        }
    }

    /// Replaces every number's row of results by what `transform` makes of it.
    pub fn transform(&mut self, mut transform: impl FnMut(&mut [f64])) {
        for gradient in &mut self.all {
            transform(&mut gradient.by);
        }
    }

    /// A number's row; `guess` is where it stands if networks list their numbers in the same order.
    fn row(&mut self, cause: &Cause, guess: usize) -> &mut [f64] {
        let key = |cause: &Cause| (cause.at_node, cause.element, cause.position);
        let there = self.all.get(guess).map(|found| key(&found.cause));
        if there == Some(key(cause)) {
            return &mut self.all[guess].by;
        }
        let place = *self.index.entry(key(cause)).or_insert_with(|| {
            self.all.push(Gradient {
                cause: cause.clone(),
                by: vec![0.0; self.results],
            });
            self.all.len() - 1
        });
        &mut self.all[place].by
    }
}
