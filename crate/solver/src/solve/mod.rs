//! One steady network under given conditions: Newton's method with exact derivatives.
//!
//! Unknowns are the mass flow in each branch, the stagnation pressure at each node and, when sources
//! differ in temperature, the stagnation temperature at each node.

mod assemble;
mod heat;
mod newton;
mod response;
mod sensitivity;
mod settle;
mod sparse;
mod start;
mod system;

pub use newton::{Failure, Missed, Progress, Solver};
pub use response::BranchState;
pub use sensitivity::{Cause, Forcing};
pub use sparse::Factors;
pub use system::{Residuals, System};

/// What holds at a node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hold {
    /// Stagnation pressure of a source, or static pressure of the chamber behind a port [Pa].
    Pressure(f64),
    /// Air that leaves the network here [kg/s]; zero at inner nodes and shut ports.
    Draw(f64),
}

/// Everything that stands around a network in one steady state.
#[derive(Clone, Debug)]
pub struct Conditions {
    /// By node.
    pub holds: Vec<Hold>,
    /// Temperature of what enters at each source, by node [K]; ignored elsewhere.
    pub temperatures: Vec<f64>,
    /// Mass flow of each branch that a blower drives, or that is left out; empty when there are none [kg/s].
    pub given: Vec<Option<f64>>,
}

impl Conditions {
    /// The flow of a branch that follows no law, from `from` to `to` [kg/s].
    pub fn given(&self, branch: usize) -> Option<f64> {
        self.given.get(branch).copied().flatten()
    }
}

/// A steady state.
#[derive(Clone, Debug, PartialEq)]
pub struct Flowing {
    /// Mass flow of each branch, positive from `from` to `to` [kg/s].
    pub flow: Vec<f64>,
    /// Stagnation pressure of each node above `datum` [Pa]; differences keep their digits this way.
    pub gauge: Vec<f64>,
    /// Stagnation temperature of each node [K].
    pub temperature: Vec<f64>,
    /// Absolute pressure at gauge zero [Pa].
    pub datum: f64,
    /// Temperature of the air that leaves each passage of a charge cooler [K].
    pub exit: Vec<f64>,
    /// Temperature of the coolant that leaves it [K].
    pub coolant: Vec<f64>,
}

impl Flowing {
    /// Absolute stagnation pressure of a node [Pa].
    pub fn pressure(&self, node: usize) -> f64 {
        self.datum + self.gauge[node]
    }
}
