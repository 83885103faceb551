//! Gradients of the cylinders' air by every uncertain number, gathered over networks.

use crate::solve::{Cause, Forcing};

/// One uncertain number and what it does.
#[derive(Clone, Debug)]
pub struct Gradient {
    /// The number.
    pub cause: Cause,
    /// Change of each result with one standard deviation of the number.
    pub by: Vec<f64>,
}

/// Gradients of several results by all uncertain numbers.
#[derive(Clone, Debug)]
pub struct Gradients {
    results: usize,
    /// Where the next number probably stands.
    next: usize,
    /// By number.
    pub all: Vec<Gradient>,
}

impl Gradients {
    /// No number yet, for so many results.
    pub fn new(results: usize) -> Self {
        Self {
            results,
            next: 0,
            all: Vec::new(),
        }
    }

    /// Adds the part of one network to one result: `adjoint` is the result's gradient by the equations.
    pub fn add(&mut self, result: usize, forcings: &[Forcing], adjoint: &[f64], weight: f64) {
        for forcing in forcings {
            let change: f64 = forcing
                .entries
                .iter()
                .map(|(row, amount)| adjoint[*row] * amount)
                .sum();
            self.row(&forcing.cause)[result] += weight * change;
        }
    }

    /// Replaces every number's row of results by what `transform` makes of it.
    pub fn transform(&mut self, mut transform: impl FnMut(&mut [f64])) {
        for gradient in &mut self.all {
            transform(&mut gradient.by);
        }
    }

    /// The row of a number. Networks list their numbers in the same order, nearly: the search begins behind
    /// the number that was asked for last.
    fn row(&mut self, cause: &Cause) -> &mut [f64] {
        let key = |cause: &Cause| (cause.at_node, cause.element, cause.position);
        let known = self.all.len();
        let place = (self.next..known)
            .chain(0..self.next)
            .find(|place| key(&self.all[*place].cause) == key(cause))
            .unwrap_or(known);
        if place == known {
            self.all.push(Gradient {
                cause: cause.clone(),
                by: vec![0.0; self.results],
            });
        }
        self.next = place + 1;
        &mut self.all[place].by
    }
}
