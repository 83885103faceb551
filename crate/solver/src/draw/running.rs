//! The running engine: each cylinder draws over its own event, all cylinders' air is solved together.
//!
//! With M the cylinders' mean flows, each interval's network gives the ports' states, and
//! M_i = total * w_i / sum w, w_i = swept volume * mean over the event of p T^-e. The derivatives of
//! the ports' states by the draws come from the same adjoints that give the sensitivities.

use super::dense::{identity, self_consistent, solve_dense};
use super::events::{self, Interval};
use super::joint::Lane;
use super::operating::{Operating, ReferenceDensity};
use super::spectrum::Gradients;
use super::{Drawn, Refused, Snapshot};
use crate::gas;
use crate::model::Model;
use crate::solve::{Conditions, Failure, Flowing, Hold, Solver};

/// Change of a cylinder's flow that ends the outer iteration, over the total [-].
const STEP: f64 = 1e-12;
const OUTER_STEPS: u32 = 30;

/// Solves the draw; `at_mean` takes every cylinder at its mean flow over the cycle instead of its event.
pub fn running<'m>(
    model: &'m Model,
    operating: &Operating,
    at_mean: bool,
) -> Result<Drawn<'m>, Refused> {
    let cylinders = operating.swept.len();
    let intervals = if at_mean {
        events::mean(cylinders)
    } else {
        intervals(operating)
    };
    // An engine that asks for more than a section passes is common, and plain steps tell; only what
    // they cannot explain is worth looking for a state by every means.
    let mut cycle = Cycle::new(model, operating, &intervals);
    cycle.solver.patient = false;
    let Err(failure) = cycle.solve() else {
        return Ok(cycle.drawn());
    };
    if let section @ Refused::Section { .. } = cycle.explain(failure) {
        return Err(section);
    }
    let mut cycle = Cycle::new(model, operating, &intervals);
    cycle.solve().map_err(Refused::Failed)?;
    Ok(cycle.drawn())
}

/// The intervals of a cycle, by firing order if it is known.
pub(super) fn intervals(operating: &Operating) -> Vec<Interval> {
    let cylinders = operating.swept.len();
    if operating.order.is_empty() {
        events::without_order(cylinders, operating.event)
    } else {
        events::from_firing_order(cylinders, &operating.order, operating.event)
    }
}

/// The cycle's networks and the flows that they must agree on.
pub(super) struct Cycle<'m, 'a> {
    pub(super) model: &'m Model,
    pub(super) operating: &'a Operating,
    pub(super) intervals: &'a [Interval],
    pub(super) solver: Solver<'m>,
    pub(super) conditions: Conditions,
    /// Node each cylinder draws at.
    drawing: Vec<usize>,
    pub(super) states: Vec<Option<Flowing>>,
    /// By interval, while all are stepped together.
    pub(super) lanes: Vec<Lane>,
    /// Mean flow of each cylinder [kg/s].
    pub(super) flows: Vec<f64>,
    pub(super) gradients: Gradients,
}

/// What a pass over the intervals does beside reading their states.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sweep {
    /// Solves them first.
    Solving,
    /// Gathers what every uncertain number does.
    Gathering,
}

/// What the intervals' networks say at the present flows, with derivatives by the flows.
pub(super) struct Swept {
    /// By cylinder: mean of p T^-e over its event, and its derivatives by each cylinder's flow.
    fill: Vec<f64>,
    fill_by: Vec<Vec<f64>>,
    /// Reference density and its derivatives.
    density: f64,
    density_by: Vec<f64>,
}

impl Swept {
    pub(super) fn new(cylinders: usize) -> Self {
        Self {
            fill: vec![0.0; cylinders],
            fill_by: vec![vec![0.0; cylinders]; cylinders],
            density: 0.0,
            density_by: vec![0.0; cylinders],
        }
    }
}

impl<'m, 'a> Cycle<'m, 'a> {
    pub(super) fn new(
        model: &'m Model,
        operating: &'a Operating,
        intervals: &'a [Interval],
    ) -> Self {
        let mut holds = vec![Hold::Draw(0.0); model.nodes.len()];
        let mut temperatures = vec![0.0; model.nodes.len()];
        for (node, source) in operating.sources.iter().enumerate() {
            if let Some((pressure, temperature)) = source {
                holds[node] = Hold::Pressure(*pressure);
                temperatures[node] = *temperature;
            }
        }
        let first = temperatures[model.sources[0]];
        let thermal = model
            .sources
            .iter()
            .any(|source| temperatures[*source] != first);
        let total_swept: f64 = operating.swept.iter().sum();
        let densest = model.sources.iter().map(|source| match holds[*source] {
            Hold::Pressure(pressure) => gas::density(pressure, temperatures[*source]),
            Hold::Draw(_) => 0.0,
        });
        let density = match operating.reference {
            ReferenceDensity::Known(density) => density,
            _ => densest.fold(0.0, f64::max),
        };
        let total = operating.volumetric_efficiency * operating.cycles * total_swept * density;
        Self {
            model,
            operating,
            intervals,
            solver: Solver::new(model, thermal),
            conditions: Conditions {
                holds,
                temperatures,
            },
            drawing: (0..operating.swept.len())
                .map(|cylinder| {
                    let mut its = model.ports.iter().filter(|port| port.cylinder == cylinder);
                    its.next().map_or(0, |port| port.draws_at)
                })
                .collect(),
            states: vec![None; intervals.len()],
            lanes: vec![Lane::default(); intervals.len()],
            flows: operating
                .swept
                .iter()
                .map(|swept| total * swept / total_swept)
                .collect(),
            gradients: Gradients::new(0),
        }
    }

    /// The equation in which a cylinder's draw stands.
    pub(super) fn drawing_row(&self, cylinder: usize) -> usize {
        self.solver.system.pressure_unknown(self.drawing[cylinder])
    }

    pub(super) fn set_draws(&mut self, interval: usize) {
        for cylinder in 0..self.flows.len() {
            let row = &self.intervals[interval].draws[cylinder];
            let draw: f64 = row
                .iter()
                .zip(&self.flows)
                .map(|(part, flow)| part * flow)
                .sum();
            self.conditions.holds[self.drawing[cylinder]] = Hold::Draw(draw.max(0.0));
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

    /// Finds flows and states that agree, and what every uncertain number does to the flows.
    fn solve(&mut self) -> Result<(), Failure> {
        self.agree()?;
        // The states belong to these flows; only now are the sensitivities worth their price.
        let swept = self.sweep(Sweep::Gathering)?;
        let (_, jacobian) = self.balance(&swept);
        let mut inverse_rows = identity(self.flows.len());
        for row in &mut inverse_rows {
            solve_dense(&mut jacobian.clone(), row);
        }
        self.gradients
            .transform(|by| self_consistent(by, &inverse_rows));
        Ok(())
    }

    /// Finds flows and states that agree.
    pub(super) fn agree(&mut self) -> Result<(), Failure> {
        let flows = self.flows.clone();
        if self.agree_together()? {
            return Ok(());
        }
        // The steps may have ended anywhere.
        self.flows = flows;
        self.states.fill(None);
        self.agree_in_turn()
    }

    /// The same by Newton's method on the flows alone, each interval's network being solved for them.
    pub(super) fn agree_in_turn(&mut self) -> Result<(), Failure> {
        for _ in 0..OUTER_STEPS {
            let swept = self.sweep(Sweep::Solving)?;
            let (residual, mut jacobian) = self.balance(&swept);
            let mut step: Vec<f64> = residual.iter().map(|value| -value).collect();
            solve_dense(&mut jacobian, &mut step);
            let total: f64 = self.flows.iter().sum();
            let largest = step.iter().map(|change| change.abs()).fold(0.0, f64::max);
            if largest <= STEP * total {
                return Ok(());
            }
            for (flow, change) in self.flows.iter_mut().zip(&step) {
                *flow += change;
            }
        }
        Err(Failure {
            branch: self.solver.system.worst_branch(),
        })
    }

    /// Reads the intervals' states and their derivatives. The gradients that are gathered on the way, if
    /// wanted, are those of the residual's negative: what a number adds to `total * w_i / sum w`.
    fn sweep(&mut self, sweep: Sweep) -> Result<Swept, Failure> {
        let gather = sweep == Sweep::Gathering;
        let cylinders = self.flows.len();
        let mut swept = Swept::new(cylinders);
        // One result more than cylinders: the reference density.
        let mut raw = Gradients::new(cylinders + 1);
        for interval in 0..self.intervals.len() {
            if sweep == Sweep::Solving {
                self.solve_interval(interval)?;
            } else {
                self.set_draws(interval);
            }
            let Some(mut state) = self.states[interval].clone() else {
                continue;
            };
            let regular = match sweep {
                Sweep::Solving => self.solver.linearise_solved(&self.conditions, &state),
                Sweep::Gathering => self.solver.linearise(&self.conditions, &mut state),
            };
            let forcings = if gather {
                self.solver.forcings(&state)
            } else {
                Vec::new()
            };
            for mut reading in self.readings(interval, &state) {
                if regular {
                    self.solver.adjoint(&mut reading.gradient);
                } else {
                    reading.gradient.fill(0.0);
                }
                if gather {
                    raw.add(reading.result, &forcings, &reading.gradient, 1.0);
                }
                self.book(&mut swept, interval, &reading);
            }
        }
        self.know_density(&mut swept);
        if gather {
            self.gradients = raw;
            self.gradients_to_flows(&swept);
        }
        Ok(swept)
    }

    /// What an interval's state adds to each cylinder's fill and to the reference density.
    pub(super) fn readings(&self, interval: usize, state: &Flowing) -> Vec<Reading> {
        let cylinders = self.flows.len();
        let total_swept: f64 = self.operating.swept.iter().sum();
        let interval = &self.intervals[interval];
        let mut readings = Vec::new();
        for cylinder in (0..cylinders).filter(|cylinder| interval.counts[*cylinder] != 0.0) {
            let count = interval.counts[cylinder];
            let exponent = self.operating.charge_exponent;
            let ports = self.port_parts(cylinder);
            readings.push(self.reading(cylinder, &ports, state, exponent, count));
            if self.operating.reference == ReferenceDensity::Ports {
                let weight =
                    count * self.operating.swept[cylinder] / total_swept / gas::GAS_CONSTANT;
                readings.push(self.reading(cylinders, &ports, state, 1.0, weight));
            }
        }
        if let ReferenceDensity::Node(node) = self.operating.reference {
            let weight = interval.weight / gas::GAS_CONSTANT;
            readings.push(self.reading(cylinders, &[(node, 1.0)], state, 1.0, weight));
        }
        readings
    }

    /// Adds a reading whose gradient is by the right-hand side of the equations.
    pub(super) fn book(&self, swept: &mut Swept, interval: usize, reading: &Reading) {
        let cylinders = self.flows.len();
        let (sum, sum_by) = if reading.result < cylinders {
            let result = reading.result;
            (&mut swept.fill[result], &mut swept.fill_by[result])
        } else {
            (&mut swept.density, &mut swept.density_by)
        };
        *sum += reading.value;
        for (drawing, draws) in self.intervals[interval].draws.iter().enumerate() {
            let change = reading.gradient[self.drawing_row(drawing)];
            for (by, part) in sum_by.iter_mut().zip(draws) {
                *by += change * part;
            }
        }
    }

    /// Where the reference density is known, no reading has told it.
    pub(super) fn know_density(&self, swept: &mut Swept) {
        if let ReferenceDensity::Known(density) = self.operating.reference {
            swept.density = density;
        }
    }

    /// Turns gradients of fill and density into gradients of `total * w_i / sum w`.
    fn gradients_to_flows(&mut self, swept: &Swept) {
        let cylinders = self.flows.len();
        let weights: Vec<f64> = self
            .operating
            .swept
            .iter()
            .zip(&swept.fill)
            .map(|(volume, fill)| volume * fill)
            .collect();
        let sum: f64 = weights.iter().sum();
        let per_density = self.per_density();
        let volumes = self.operating.swept.clone();
        self.gradients.transform(|by| {
            let sum_by: f64 = (0..cylinders).map(|i| volumes[i] * by[i]).sum();
            let density_by = by[cylinders];
            for i in 0..cylinders {
                let share = weights[i] / sum;
                let share_by = (volumes[i] * by[i] - share * sum_by) / sum;
                by[i] = per_density * (swept.density * share_by + density_by * share);
            }
        });
    }

    /// Total flow over reference density [m3/s].
    fn per_density(&self) -> f64 {
        self.operating.volumetric_efficiency
            * self.operating.cycles
            * self.operating.swept.iter().sum::<f64>()
    }

    /// M_i - total w_i / sum w and its derivatives by M.
    pub(super) fn balance(&self, swept: &Swept) -> (Vec<f64>, Vec<Vec<f64>>) {
        let cylinders = self.flows.len();
        let volumes = &self.operating.swept;
        let weights: Vec<f64> = volumes
            .iter()
            .zip(&swept.fill)
            .map(|(volume, fill)| volume * fill)
            .collect();
        let sum: f64 = weights.iter().sum();
        let per_density = self.per_density();
        let mut residual = Vec::with_capacity(cylinders);
        let mut jacobian = identity(cylinders);
        for i in 0..cylinders {
            let share = weights[i] / sum;
            residual.push(self.flows[i] - per_density * swept.density * share);
            for j in 0..cylinders {
                let sum_by: f64 = (0..cylinders)
                    .map(|k| volumes[k] * swept.fill_by[k][j])
                    .sum();
                let share_by = (volumes[i] * swept.fill_by[i][j] - share * sum_by) / sum;
                jacobian[i][j] -=
                    per_density * (swept.density * share_by + swept.density_by[j] * share);
            }
        }
        (residual, jacobian)
    }

    /// A cylinder's ports, of which each has an equal part.
    fn port_parts(&self, cylinder: usize) -> Vec<(usize, f64)> {
        let ports = self.model.ports.iter();
        let its = ports.filter(|port| port.cylinder == cylinder);
        let part = 1.0 / its.clone().count() as f64;
        its.map(|port| (port.node, part)).collect()
    }

    /// `weight` times the mean of p T^-exponent over nodes.
    fn reading(
        &self,
        result: usize,
        parts: &[(usize, f64)],
        state: &Flowing,
        exponent: f64,
        weight: f64,
    ) -> Reading {
        let mut reading = Reading {
            result,
            value: 0.0,
            gradient: vec![0.0; self.solver.system.right.len()],
        };
        for (node, part) in parts {
            let temperature = state.temperature[*node];
            let factor = weight * part * temperature.powf(-exponent);
            let value = factor * state.pressure(*node);
            reading.value += value;
            reading.gradient[self.solver.system.pressure_unknown(*node)] += factor;
            if let Some(unknown) = self.solver.system.temperature_unknown(*node) {
                reading.gradient[unknown] -= exponent * value / temperature;
            }
        }
        reading
    }

    fn drawn(mut self) -> Drawn<'m> {
        let mut drawn = Drawn {
            model: self.model,
            snapshots: Vec::with_capacity(self.intervals.len()),
            cylinder_flow: self.flows.clone(),
            port_flow: vec![0.0; self.model.ports.len()],
            port_snapshots: vec![Vec::new(); self.model.ports.len()],
            gradients: self.gradients.clone(),
            iterations: self.solver.iterations,
            second: None,
        };
        for (position, interval) in self.intervals.iter().enumerate() {
            self.set_draws(position);
            let Some(mut state) = self.states[position].take() else {
                continue;
            };
            let residuals =
                self.solver
                    .system
                    .evaluate_exactly(self.model, &self.conditions, &mut state);
            for (place, port) in self.model.ports.iter().enumerate() {
                let legs = self.model.nodes[port.node].legs.iter();
                let arriving = legs.filter(|leg| {
                    self.model.branches[leg.branch].to != port.draws_at
                        || port.draws_at == port.node
                });
                let flow: f64 = arriving.map(|leg| leg.flow_into(&state.flow)).sum();
                drawn.port_flow[place] += interval.weight * flow;
                if interval.counts[port.cylinder] > 0.0 {
                    drawn.port_snapshots[place].push((position, interval.counts[port.cylinder]));
                }
            }
            drawn.snapshots.push(Snapshot::take(
                &mut self.solver,
                state,
                interval.weight,
                residuals,
            ));
        }
        drawn
    }
}

/// What one interval's state adds to one result.
pub(super) struct Reading {
    /// The cylinder whose fill it is, or their number for the reference density.
    pub(super) result: usize,
    pub(super) value: f64,
    /// By the network's unknowns; after the adjoint, by the right-hand side of its equations.
    pub(super) gradient: Vec<f64>,
}
