//! A network solved again and again, in numbers only, for the benches.

use super::bench;
use super::events::Interval;
use super::operating::{Operating, operating};
use super::running::{Cycle, intervals};
use crate::error::StudyError;
use crate::gate;
use crate::model::{Model, Purpose};
use crate::solve::{Conditions, Flowing, Solver};
use crate::study::Study;

/// A study's network on the bench with all ports open.
#[derive(Clone, Debug)]
pub struct Prepared {
    model: Model,
    conditions: Conditions,
}

/// A steady state of a prepared network.
#[derive(Clone, Debug, PartialEq)]
pub struct SteadyState(Flowing);

/// A solver for one prepared network; keeps its tables between solutions.
#[derive(Clone, Debug)]
pub struct Repeated<'p> {
    prepared: &'p Prepared,
    solver: Solver<'p>,
}

impl Prepared {
    /// Prepares a study.
    ///
    /// # Errors
    /// Everything that is wrong with the study, as `read` would tell it.
    pub fn new(study: &Study) -> Result<Self, Vec<StudyError>> {
        let errors = gate::check(study);
        if !errors.is_empty() {
            return Err(errors);
        }
        let model = Model::new(study, Purpose::Bench);
        let ports = &bench::open_ports(&model, true)[0];
        let conditions = bench::conditions(&model, &study.settings.bench, ports);
        Ok(Self { model, conditions })
    }

    /// Lays out the equations.
    pub fn solver(&self) -> Repeated<'_> {
        Repeated {
            prepared: self,
            solver: Solver::new(&self.model, false),
        }
    }

    /// Mass flow out of each port in a state [kg/s].
    pub fn port_flows(&self, state: &SteadyState) -> Vec<f64> {
        let ports = self.model.ports.iter();
        ports
            .map(|port| self.model.inflow(port.node, &state.0.flow))
            .collect()
    }
}

impl Repeated<'_> {
    /// The state found from `from`, or from nothing; `None` when there is none to be found.
    pub fn solve(&mut self, from: Option<&SteadyState>) -> Option<SteadyState> {
        let from = from.map(|state| &state.0);
        let solved = self.solver.solve(&self.prepared.conditions, from);
        solved.ok().map(SteadyState)
    }

    /// How far a state is from closing every branch [Pa]: each law evaluated once, and nothing else.
    pub fn closure(&mut self, state: &SteadyState) -> f64 {
        let Prepared { model, conditions } = self.prepared;
        let residuals = self.solver.system.evaluate(model, conditions, &state.0);
        residuals.closure
    }

    /// Newton steps taken so far.
    pub fn iterations(&self) -> u32 {
        self.solver.iterations
    }
}

/// A study's network with its engine running.
#[derive(Clone, Debug)]
pub struct PreparedCycle {
    model: Model,
    operating: Operating,
    intervals: Vec<Interval>,
}

/// The steady states over a cycle that agree with the cylinders' air.
#[derive(Clone, Debug, PartialEq)]
pub struct CycleState {
    states: Vec<Option<Flowing>>,
    values: Vec<f64>,
    cylinders: usize,
}

/// A solver for one prepared cycle; keeps its tables between solutions.
pub struct RepeatedCycle<'p>(Cycle<'p, 'p>);

impl PreparedCycle {
    /// Prepares a study; `None` when it lacks what the running engine needs.
    ///
    /// # Errors
    /// Everything that is wrong with the study, as `read` would tell it.
    pub fn new(study: &Study) -> Result<Option<Self>, Vec<StudyError>> {
        let errors = gate::check(study);
        if !errors.is_empty() {
            return Err(errors);
        }
        let Ok(operating) = operating(study) else {
            return Ok(None);
        };
        Ok(Some(Self {
            model: Model::new(study, Purpose::Running),
            intervals: intervals(&operating, false),
            operating,
        }))
    }

    /// Lays out the equations.
    pub fn solver(&self) -> RepeatedCycle<'_> {
        RepeatedCycle(Cycle::new(&self.model, &self.operating, &self.intervals))
    }
}

impl RepeatedCycle<'_> {
    /// The states found from `from`, or from where the last solution ended; `None` when there are none.
    pub fn solve(&mut self, from: Option<&CycleState>) -> Option<CycleState> {
        if let Some(from) = from {
            self.0.states.clone_from(&from.states);
            self.0.values.clone_from(&from.values);
        }
        self.0.agree(false).ok()?;
        Some(CycleState {
            states: self.0.states.clone(),
            values: self.0.values.clone(),
            cylinders: self.0.flows().len(),
        })
    }

    /// Newton steps taken so far.
    pub fn iterations(&self) -> u32 {
        self.0.solver.iterations
    }
}

impl CycleState {
    /// Air of each cylinder, mean over the cycle [kg/s].
    pub fn cylinder_flows(&self) -> &[f64] {
        &self.values[..self.cylinders]
    }

    /// Networks solved together.
    pub fn networks(&self) -> usize {
        self.states.len()
    }
}
