//! The running engine: each cylinder draws over its own event, all cylinders' air is solved together.
//!
//! With M the cylinders' mean flows, each interval's network gives the ports' states, and
//! M_i = total * w_i / sum w, w_i = swept volume * mean over the event of p T^-e. Whatever else the
//! intervals share stands in `shared.rs`. The derivatives of the readings by what is shared come from
//! the same adjoints that give the sensitivities.

use super::dense::solve_dense;
use super::events::{self, Interval};
use super::gathered::Gathered;
use super::joint::Lane;
use super::operating::{Operating, ReferenceDensity};
use super::reading::Reading;
use super::shared::{Equations, Shared, Unknown};
use super::{Drawn, Refused};
use crate::model::Model;
use crate::solve::{Conditions, Failure, Flowing, Hold, Solver, System};

/// Change of a cylinder's flow that ends the outer iteration, over the total [-].
const STEP: f64 = 1e-12;
const OUTER_STEPS: u32 = 30;

/// Solves the draw; `at_mean` takes every cylinder at its mean flow over the cycle instead of its event.
pub fn running<'m>(
    model: &'m Model,
    operating: &Operating,
    at_mean: bool,
) -> Result<Drawn<'m>, Refused> {
    let intervals = intervals(operating, at_mean);
    // An engine that asks for more than a section passes is common, and plain steps tell; only what
    // they cannot explain is worth looking for a state by every means.
    let mut cycle = Cycle::new(model, operating, &intervals);
    cycle.solver.patient = false;
    let failure = match cycle.solve() {
        Ok(told) => return cycle.drawn(told),
        Err(failure) => failure,
    };
    if let section @ Refused::Section { .. } = cycle.explain(failure) {
        return Err(section);
    }
    if let Some(bypass) = hot_bypass(model, operating, &intervals) {
        return Err(bypass);
    }
    let mut cycle = Cycle::new(model, operating, &intervals);
    let told = cycle.solve().map_err(Refused::Failed)?;
    cycle.drawn(told)
}

/// A bypass without which there would be an answer: what it returns heats the blower's inlet, and the
/// blower heats that again, until no steady state is left.
fn hot_bypass(model: &Model, operating: &Operating, intervals: &[Interval]) -> Option<Refused> {
    let bypass = *model.bypasses.first()?;
    let mut cycle = Cycle::new(model, operating, intervals);
    cycle.solver.patient = false;
    for bypass in &model.bypasses {
        cycle.conditions.given[*bypass] = Some(0.0);
    }
    cycle.agree(false).ok()?;
    Some(Refused::HotBypass { branch: bypass })
}

/// The intervals of a cycle, by firing order if it is known; one when every cylinder draws all the time.
pub(super) fn intervals(operating: &Operating, at_mean: bool) -> Vec<Interval> {
    let cylinders = operating.swept.len();
    if at_mean {
        events::mean(cylinders)
    } else if operating.order.is_empty() {
        events::without_order(cylinders, operating.event)
    } else {
        events::from_firing_order(cylinders, &operating.order, operating.event)
    }
}

/// The cycle's networks and what they must agree on.
pub(super) struct Cycle<'m, 'a> {
    pub(super) model: &'m Model,
    pub(super) operating: &'a Operating,
    pub(super) intervals: &'a [Interval],
    pub(super) solver: Solver<'m>,
    pub(super) conditions: Conditions,
    pub(super) shared: Shared,
    /// Node each cylinder draws at.
    drawing: Vec<usize>,
    pub(super) states: Vec<Option<Flowing>>,
    /// By interval, see `System::lifts`; empty for the laws as published.
    pub(super) lifts: Vec<Vec<[f64; 2]>>,
    /// By interval, while all are stepped together.
    pub(super) lanes: Vec<Lane>,
    /// What all intervals share; first the mean flow of each cylinder [kg/s].
    pub(super) values: Vec<f64>,
    /// What the last look at states that agree has told, where it was wanted.
    pub(super) gathered: Option<(Swept, Gathered)>,
}

/// What the intervals' networks say at the present values, with derivatives by them.
pub(super) struct Swept {
    /// By reading.
    pub(super) readings: Vec<f64>,
    /// By reading, then by value.
    pub(super) by: Vec<Vec<f64>>,
}

/// What a cycle can hand on to another whose model has the same pattern.
pub(super) struct Tables {
    system: System,
    lanes: Vec<Lane>,
}

impl<'m, 'a> Cycle<'m, 'a> {
    pub(super) fn new(
        model: &'m Model,
        operating: &'a Operating,
        intervals: &'a [Interval],
    ) -> Self {
        Self::with(model, operating, intervals, None)
    }

    /// With the tables of a cycle before, if there was one.
    pub(super) fn with(
        model: &'m Model,
        operating: &'a Operating,
        intervals: &'a [Interval],
        tables: Option<Tables>,
    ) -> Self {
        let mut holds = vec![Hold::Draw(0.0); model.nodes.len()];
        let mut temperatures = vec![0.0; model.nodes.len()];
        for (node, source) in operating.sources.iter().enumerate() {
            if let Some(air) = source {
                holds[node] = Hold::Pressure(air.pressure);
                temperatures[node] = air.temperature;
            }
        }
        let first = temperatures[model.sources[0]];
        let mut sources = model.sources.iter();
        let thermal = model.warms() || sources.any(|source| temperatures[*source] != first);
        let mut shared = Shared::new(operating);
        let (solver, lanes) = match tables {
            Some(Tables { system, lanes }) => (Solver::again(model, system), lanes),
            None => (
                Solver::new(model, thermal),
                vec![Lane::default(); intervals.len()],
            ),
        };
        let mut cycle = Self {
            values: shared.first(operating),
            model,
            operating,
            intervals,
            solver,
            conditions: Conditions {
                holds,
                temperatures,
                given: if model.blowers.is_empty() {
                    Vec::new()
                } else {
                    vec![None; model.branches.len()]
                },
            },
            shared,
            drawing: (0..operating.swept.len())
                .map(|cylinder| {
                    let mut its = model.ports.iter().filter(|port| port.cylinder == cylinder);
                    its.next().map_or(0, |port| port.draws_at)
                })
                .collect(),
            states: vec![None; intervals.len()],
            lifts: Vec::new(),
            lanes,
            gathered: None,
        };
        cycle.set_shared();
        cycle
    }

    /// What the next cycle of such a model need not make anew.
    pub(super) fn into_tables(self) -> Tables {
        Tables {
            system: self.solver.system,
            lanes: self.lanes,
        }
    }

    pub(super) fn cylinders(&self) -> usize {
        self.operating.swept.len()
    }

    /// Mean flow of each cylinder [kg/s].
    pub(super) fn flows(&self) -> &[f64] {
        &self.values[..self.cylinders()]
    }

    /// The equation in which a cylinder's draw stands.
    pub(super) fn drawing_row(&self, cylinder: usize) -> usize {
        self.solver.system.pressure_unknown(self.drawing[cylinder])
    }

    /// Makes the conditions those of an interval at the present values.
    pub(super) fn set_draws(&mut self, interval: usize) {
        self.set_shared();
        if let Some(lifts) = self.lifts.get(interval) {
            self.solver.system.lifts.clone_from(lifts);
        }
        for cylinder in 0..self.cylinders() {
            let row = &self.intervals[interval].draws[cylinder];
            let draw: f64 = row
                .iter()
                .zip(&self.values)
                .map(|(part, flow)| part * flow)
                .sum();
            self.conditions.holds[self.drawing[cylinder]] = Hold::Draw(draw.max(0.0));
        }
    }

    fn set_shared(&mut self) {
        for (unknown, value) in self.shared.unknowns.iter().zip(&self.values) {
            match *unknown {
                Unknown::Air(_) | Unknown::BlowerSpeed(_) => {}
                Unknown::SourcePressure(boost) => {
                    for source in &self.operating.boosts[boost].sources {
                        self.conditions.holds[*source] = Hold::Pressure(*value);
                    }
                }
                Unknown::BlowerFlow(blower) => {
                    let branch = self.operating.blowers[blower].branch;
                    self.conditions.given[branch] = Some(*value);
                }
                Unknown::BlowerPressure(blower) => {
                    let outlet = self.operating.blowers[blower].outlet;
                    self.conditions.holds[outlet] = Hold::Pressure(*value);
                }
                Unknown::BlowerTemperature(blower) => {
                    let outlet = self.operating.blowers[blower].outlet;
                    self.conditions.temperatures[outlet] = *value;
                }
            }
        }
    }

    /// The equations of an interval's network in which a value stands, once each, beside the draws.
    pub(super) fn rows(&self, unknown: Unknown) -> Vec<usize> {
        let system = &self.solver.system;
        match unknown {
            Unknown::Air(_) | Unknown::BlowerSpeed(_) => Vec::new(),
            Unknown::SourcePressure(boost) => {
                let sources = self.operating.boosts[boost].sources.iter();
                sources
                    .map(|source| system.pressure_unknown(*source))
                    .collect()
            }
            Unknown::BlowerFlow(blower) => vec![self.operating.blowers[blower].branch],
            Unknown::BlowerPressure(blower) => {
                vec![system.pressure_unknown(self.operating.blowers[blower].outlet)]
            }
            Unknown::BlowerTemperature(blower) => system
                .temperature_unknown(self.operating.blowers[blower].outlet)
                .into_iter()
                .collect(),
        }
    }

    /// Adds what a change of the values puts on the right-hand side of an interval's equations.
    pub(super) fn push(&self, interval: usize, change: &[f64], right: &mut [f64]) {
        for (drawing, draws) in self.intervals[interval].draws.iter().enumerate() {
            let more: f64 = draws.iter().zip(change).map(|(part, by)| part * by).sum();
            right[self.drawing_row(drawing)] += more;
        }
        let extras = self.cylinders()..change.len();
        for (unknown, by) in self.shared.unknowns[extras.clone()]
            .iter()
            .zip(&change[extras])
        {
            for row in self.rows(*unknown) {
                right[row] += by;
            }
        }
    }

    pub(super) fn solve_interval(&mut self, interval: usize) -> Result<(), Failure> {
        self.set_draws(interval);
        // The interval before is the nearest start that there is the first time round.
        let nearest = interval
            .checked_sub(1)
            .and_then(|before| self.states[before].as_ref());
        let from = self.states[interval].as_ref().or(nearest);
        let state = self.solver.solve(&self.conditions, from)?;
        self.states[interval] = Some(state);
        Ok(())
    }

    /// Finds values and states that agree, and what every uncertain number does to the flows.
    fn solve(&mut self) -> Result<(Swept, Gathered), Failure> {
        self.agree(true)?;
        let (swept, mut gathered) = match self.gathered.take() {
            Some(told) => told,
            None => self.gather(),
        };
        let equations = self.equations(&swept);
        let matrix = self.shared.matrix(&equations, &swept.by);
        // What each reading's change by itself does to the values.
        let by_reading: Vec<Vec<f64>> = (0..self.shared.reads.len())
            .map(|reading| {
                let mut change = equations.pushed_by(reading);
                solve_dense(&mut matrix.clone(), &mut change);
                self.shared.unscale(&mut change);
                change
            })
            .collect();
        let values = self.values.len();
        gathered.gradients.transform(|by| {
            let pushed = by.to_vec();
            for (value, by) in by[..values].iter_mut().enumerate() {
                let parts = by_reading.iter().zip(&pushed);
                *by = parts.map(|(change, pushed)| change[value] * pushed).sum();
            }
        });
        Ok((swept, gathered))
    }

    /// Finds values and states that agree, and gathers, if wanted and on the way, what they tell.
    pub(super) fn agree(&mut self, gather: bool) -> Result<(), Failure> {
        let values = self.values.clone();
        if self.agree_together(gather)? {
            return Ok(());
        }
        // The steps may have ended anywhere.
        self.values = values;
        self.states.fill(None);
        self.agree_in_turn()
    }

    /// The same by Newton's method on the values alone, each interval's network being solved for them.
    pub(super) fn agree_in_turn(&mut self) -> Result<(), Failure> {
        for _ in 0..OUTER_STEPS {
            let swept = self.sweep()?;
            let change = self.next_change(&swept).1;
            let part = self.shared.allowed_part(&self.values, &change);
            let total: f64 = self.flows().iter().sum();
            let flows = change[..self.cylinders()].iter();
            let largest = flows.map(|change| change.abs()).fold(0.0, f64::max);
            if part == 1.0 && largest <= STEP * total {
                return Ok(());
            }
            self.change_values(part, &change);
        }
        Err(Failure {
            branch: self.solver.system.worst_branch(),
        })
    }

    /// By how much the shared equations are missed, and the change of the values that would meet them.
    pub(super) fn next_change(&self, swept: &Swept) -> (f64, Vec<f64>) {
        let equations = self.equations(swept);
        let mut change: Vec<f64> = equations.missed.iter().map(|missed| -missed).collect();
        solve_dense(&mut self.shared.matrix(&equations, &swept.by), &mut change);
        self.shared.unscale(&mut change);
        (equations.largest(), change)
    }

    pub(super) fn change_values(&mut self, part: f64, change: &[f64]) {
        for (value, by) in self.values.iter_mut().zip(change) {
            *value += part * by;
        }
    }

    pub(super) fn equations(&self, swept: &Swept) -> Equations {
        self.shared
            .equations(self.operating, &self.values, &swept.readings)
    }

    /// Solves the intervals' networks and reads their states with their derivatives.
    fn sweep(&mut self) -> Result<Swept, Failure> {
        let mut swept = self.nothing_swept();
        for interval in 0..self.intervals.len() {
            self.solve_interval(interval)?;
            if let Some(state) = self.states[interval].take() {
                let regular = self.solver.linearise(&self.conditions, &state);
                self.read_interval(interval, &state, regular, &mut swept);
                self.states[interval] = Some(state);
            }
        }
        Ok(swept)
    }

    /// Books what an interval's linearised network says; a network that is not regular has no derivatives.
    pub(super) fn read_interval(
        &mut self,
        interval: usize,
        state: &Flowing,
        regular: bool,
        swept: &mut Swept,
    ) -> Vec<Reading> {
        let mut readings = self.readings(interval, state);
        for reading in &mut readings {
            if regular {
                self.solver.adjoint(&mut reading.gradient);
            } else {
                reading.gradient.fill(0.0);
            }
            self.book(swept, interval, reading);
        }
        readings
    }

    pub(super) fn nothing_swept(&self) -> Swept {
        let reads = self.shared.reads.len();
        let mut swept = Swept {
            readings: vec![0.0; reads],
            by: vec![vec![0.0; self.values.len()]; reads],
        };
        // Where the reference density is known, no reading tells it.
        if let ReferenceDensity::Known(density) = self.operating.reference {
            swept.readings[self.cylinders()] = density;
        }
        swept
    }
}
