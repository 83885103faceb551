//! The equations: residuals, their derivatives, and where each stands in the matrix.
//!
//! A branch's row is written as a change of flow, dm = c (dP_up (1 - F_p) - dP_down - F_T dT + r) with the
//! conductance c = 1/F_m, so that its pivot is 1 and a choked branch (c = 0) is as regular as any.
//! How a branch answers to its ends is in `response.rs`.

use super::response::{Around, BranchState, Form, respond};
use super::sparse::{BadPivot, Sparse};
use super::{Conditions, Flowing, Hold};
use crate::branch::Chain;
use crate::junction::LegLosses;
use crate::model::{LegEnd, Model, ModelNode};

/// Smallest slope of a branch's fall over its reference slope: keeps a branch at zero flow in the matrix.
const SLOPE_FLOOR: f64 = 1e-7;
/// Part of the total flow with which a node that no air reaches keeps a temperature.
const ANCHOR: f64 = 1e-13;

/// How far the equations are from being met.
#[derive(Clone, Copy, Debug, Default)]
pub struct Residuals {
    /// Largest |leg pressure difference - fall| [Pa].
    pub closure: f64,
    /// Largest mass imbalance of a node [kg/s].
    pub imbalance: f64,
    /// Largest energy imbalance of a node over the specific heat [kg K/s].
    pub energy: f64,
    /// Air that passes the network [kg/s].
    pub total: f64,
}

/// The equations of one model.
#[derive(Clone, Debug)]
pub struct System {
    /// The linearised equations.
    pub matrix: Sparse,
    /// Right-hand side, then the step [kg/s, Pa, K].
    pub right: Vec<f64>,
    /// By branch.
    pub branches: Vec<BranchState>,
    /// By node; empty lists where legs do not differ.
    pub legs: Vec<LegLosses>,
    /// Flows into each node by leg, where legs differ [kg/s].
    leg_flows: Vec<Vec<f64>>,
    /// Position of each branch end among its node's legs: (from, to).
    leg_positions: Vec<(usize, usize)>,
    /// Typical slope of each branch's fall with flow [Pa s/kg].
    pub reference_slope: Vec<f64>,
    /// Typical fall of each branch over the square of its flow [Pa s2/kg2].
    pub reference_curvature: Vec<f64>,
    /// A linear loss added to every branch, over its reference slope [-].
    pub added_slope: f64,
    /// Part of the junctions' leg losses that acts, 1 for the laws as published [-].
    pub leg_part: f64,
    /// How hard each flow is to change in one step, over the branch's reference slope: moves the way
    /// to the answer, not the answer [-].
    pub inertia: f64,
    /// Air that a node takes up as its pressure rises in one step, over what its branches pass and over
    /// `inertia` [-].
    pub storage: f64,
    thermal: bool,
    first_coupling: Vec<u32>,
    mass_entries: Vec<u32>,
    energy_entries: Vec<u32>,
}

impl System {
    /// Lays out the equations; `thermal` makes temperatures unknowns.
    pub fn new(model: &Model, thermal: bool) -> Self {
        let branches = model.branches.len();
        let nodes = model.nodes.len();
        let size = branches + nodes * if thermal { 2 } else { 1 };
        let pressure = |node: usize| (branches + node) as u32;
        let temperature = |node: usize| (branches + nodes + node) as u32;
        let mut entries: Vec<(u32, u32)> = Vec::new();
        let mut first_coupling = Vec::with_capacity(branches + 1);
        for (row, branch) in model.branches.iter().enumerate() {
            first_coupling.push(entries.len() as u32);
            let row = row as u32;
            entries.extend([
                (row, row),
                (row, pressure(branch.from)),
                (row, pressure(branch.to)),
            ]);
            if thermal {
                entries.extend([
                    (row, temperature(branch.from)),
                    (row, temperature(branch.to)),
                ]);
            }
            for node in [branch.from, branch.to] {
                if model.nodes[node].couples() {
                    entries.extend(
                        model.nodes[node]
                            .legs
                            .iter()
                            .map(|leg| (row, leg.branch as u32)),
                    );
                }
            }
        }
        let mut mass_entries = Vec::with_capacity(nodes + 1);
        for (node, at) in model.nodes.iter().enumerate() {
            mass_entries.push(entries.len() as u32);
            entries.push((pressure(node), pressure(node)));
            entries.extend(
                at.legs
                    .iter()
                    .map(|leg| (pressure(node), leg.branch as u32)),
            );
        }
        let mut energy_entries = Vec::with_capacity(nodes + 1);
        if thermal {
            for (node, at) in model.nodes.iter().enumerate() {
                energy_entries.push(entries.len() as u32);
                entries.push((temperature(node), temperature(node)));
                for leg in &at.legs {
                    entries.push((temperature(node), leg.branch as u32));
                    entries.push((temperature(node), temperature(other_end(model, *leg))));
                }
            }
        }
        let weak = |unknown: usize| unknown >= branches && unknown < branches + nodes;
        let leg_position = |node: usize, branch: usize, at_to: bool| {
            model.nodes[node]
                .legs
                .iter()
                .position(|leg| *leg == LegEnd { branch, at_to })
                .unwrap_or(0)
        };
        Self {
            matrix: Sparse::new(size, &entries, weak),
            right: vec![0.0; size],
            branches: vec![BranchState::default(); branches],
            legs: vec![LegLosses::default(); nodes],
            leg_flows: model
                .nodes
                .iter()
                .map(|node| vec![0.0; node.legs.len()])
                .collect(),
            leg_positions: (0..branches)
                .map(|branch| {
                    let ends = &model.branches[branch];
                    (
                        leg_position(ends.from, branch, false),
                        leg_position(ends.to, branch, true),
                    )
                })
                .collect(),
            reference_slope: vec![0.0; branches],
            reference_curvature: vec![0.0; branches],
            added_slope: 0.0,
            leg_part: 1.0,
            inertia: 0.0,
            storage: 0.0,
            thermal,
            first_coupling,
            mass_entries,
            energy_entries,
        }
    }

    /// Row and column of a node's pressure.
    pub fn pressure_unknown(&self, node: usize) -> usize {
        self.branches.len() + node
    }

    /// Row and column of a node's temperature, if it is an unknown.
    pub fn temperature_unknown(&self, node: usize) -> Option<usize> {
        self.thermal
            .then(|| self.branches.len() + self.legs.len() + node)
    }

    /// Evaluates every law at `state`.
    pub fn evaluate(
        &mut self,
        model: &Model,
        conditions: &Conditions,
        state: &Flowing,
    ) -> Residuals {
        self.evaluate_laws(model, state);
        self.residuals(model, conditions, state)
    }

    /// As `evaluate`, and gives each branch near choking the very flow that its ends drive.
    pub fn evaluate_exactly(
        &mut self,
        model: &Model,
        conditions: &Conditions,
        state: &mut Flowing,
    ) -> Residuals {
        self.evaluate_laws(model, state);
        self.settle_choked(state);
        self.residuals(model, conditions, state)
    }

    /// Gives each branch near choking the very flow that its ends drive, as last evaluated.
    pub fn settle_choked(&mut self, state: &mut Flowing) {
        for (own, flow) in self.branches.iter_mut().zip(&mut state.flow) {
            if own.form != Form::ByFlow {
                *flow += own.missing;
                own.missing = 0.0;
            }
        }
    }

    fn evaluate_laws(&mut self, model: &Model, state: &Flowing) {
        for (node, at) in model.nodes.iter().enumerate() {
            if at.couples()
                && let Some(junction) = &at.junction
            {
                leg_flows_into(at, state, &mut self.leg_flows[node]);
                let pressure = state.pressure(node);
                junction.losses(
                    pressure,
                    state.temperature[node],
                    &self.leg_flows[node],
                    &mut self.legs[node],
                );
                if self.leg_part != 1.0 {
                    self.legs[node].scale(self.leg_part);
                }
            }
        }
        for branch in 0..model.branches.len() {
            self.branches[branch] = respond(model, branch, &self.around(model, branch, state));
        }
    }

    fn residuals(&self, model: &Model, conditions: &Conditions, state: &Flowing) -> Residuals {
        let mut residuals = Residuals {
            closure: self
                .branches
                .iter()
                .map(|branch| branch.residual.abs())
                .fold(0.0, f64::max),
            ..Residuals::default()
        };
        for (node, at) in model.nodes.iter().enumerate() {
            let inflow: f64 = at.legs.iter().map(|leg| flow_into(*leg, state)).sum();
            match conditions.holds[node] {
                Hold::Pressure(_) => residuals.total += 0.5 * inflow.abs(),
                Hold::Draw(draw) => {
                    residuals.imbalance = residuals.imbalance.max((inflow - draw).abs());
                    residuals.total += 0.5 * draw.abs();
                }
            }
        }
        residuals.energy = self.energy_residual(model, conditions, state);
        residuals
    }

    fn energy_residual(&self, model: &Model, conditions: &Conditions, state: &Flowing) -> f64 {
        if !self.thermal {
            return 0.0;
        }
        let balance = |node: usize| -> f64 {
            model.nodes[node]
                .legs
                .iter()
                .map(|leg| {
                    flow_into(*leg, state).max(0.0)
                        * (state.temperature[other_end(model, *leg)] - state.temperature[node])
                })
                .sum()
        };
        (0..model.nodes.len())
            .filter(|node| !is_source(model, *node) && conditions.holds.len() > *node)
            .map(|node| balance(node).abs())
            .fold(0.0, f64::max)
    }

    /// Pressure of a branch's leg at one of its ends, above the datum [Pa].
    pub fn leg_gauge(&self, model: &Model, state: &Flowing, branch: usize, at_to: bool) -> f64 {
        let ends = &model.branches[branch];
        let (node, position) = if at_to {
            (ends.to, self.leg_positions[branch].1)
        } else {
            (ends.from, self.leg_positions[branch].0)
        };
        state.gauge[node] - self.legs[node].loss.get(position).copied().unwrap_or(0.0)
    }

    fn around(&self, model: &Model, branch: usize, state: &Flowing) -> Around {
        let ends = &model.branches[branch];
        let reference = self.reference_slope[branch];
        Around {
            from: self.leg_gauge(model, state, branch, false),
            to: self.leg_gauge(model, state, branch, true),
            datum: state.datum,
            temperatures: (state.temperature[ends.from], state.temperature[ends.to]),
            flow: state.flow[branch],
            reference,
            added: self.added_slope * reference,
            floor: SLOPE_FLOOR * reference,
            inertia: self.inertia * reference,
        }
    }

    /// Fills matrix and right-hand side for Newton's step from the last evaluated state.
    pub fn assemble(&mut self, model: &Model, conditions: &Conditions, state: &Flowing) {
        let branches = model.branches.len();
        for branch in 0..branches {
            self.assemble_branch(model, branch);
        }
        for (node, at) in model.nodes.iter().enumerate() {
            let row = branches + node;
            let mut entry = self.mass_entries[node] as usize;
            let held = matches!(conditions.holds[node], Hold::Pressure(_));
            self.matrix.values[entry] = if held { 1.0 } else { -self.stored(at) };
            let mut inflow = 0.0;
            for leg in &at.legs {
                entry += 1;
                self.matrix.values[entry] = if held { 0.0 } else { into_sign(*leg) };
                inflow += flow_into(*leg, state);
            }
            self.right[row] = match conditions.holds[node] {
                Hold::Pressure(pressure) => pressure - state.datum - state.gauge[node],
                Hold::Draw(draw) => draw - inflow,
            };
        }
        if self.thermal {
            self.assemble_energy(model, conditions, state);
        }
    }

    fn assemble_branch(&mut self, model: &Model, branch: usize) {
        let ends = &model.branches[branch];
        let own = self.branches[branch];
        let mut entry = self.first_coupling[branch] as usize;
        let sign = if own.forward { 1.0 } else { -1.0 };
        // What a rise of the leg pressure at `from` and at `to` does to the signed flow.
        let (by_from, by_to) = if own.forward {
            (own.by_upstream, -own.by_downstream)
        } else {
            (own.by_downstream, -own.by_upstream)
        };
        let by_node =
            |slopes: &[f64], position: usize| slopes.get(position).copied().unwrap_or(0.0);
        let (at_from, at_to) = self.leg_positions[branch];
        let from_legs = &self.legs[ends.from];
        let to_legs = &self.legs[ends.to];
        self.matrix.values[entry] = 1.0;
        self.matrix.values[entry + 1] = -by_from * (1.0 - by_node(&from_legs.by_pressure, at_from));
        self.matrix.values[entry + 2] = -by_to * (1.0 - by_node(&to_legs.by_pressure, at_to));
        entry += 3;
        if self.thermal {
            let from_temperature = by_from * by_node(&from_legs.by_temperature, at_from);
            let to_temperature = by_to * by_node(&to_legs.by_temperature, at_to);
            let carried = -sign * own.by_temperature;
            self.matrix.values[entry] = from_temperature + if own.forward { carried } else { 0.0 };
            self.matrix.values[entry + 1] =
                to_temperature + if own.forward { 0.0 } else { carried };
            entry += 2;
        }
        for (node, position, by_leg) in [(ends.from, at_from, by_from), (ends.to, at_to, by_to)] {
            if !model.nodes[node].couples() {
                continue;
            }
            let legs = &model.nodes[node].legs;
            for (other, leg) in legs.iter().enumerate() {
                let slope = self.legs[node].by_flow[position * legs.len() + other];
                self.matrix.values[entry] = by_leg * slope * into_sign(*leg);
                entry += 1;
            }
        }
        self.right[branch] = own.shift();
    }

    fn assemble_energy(&mut self, model: &Model, conditions: &Conditions, state: &Flowing) {
        let first = model.branches.len() + model.nodes.len();
        let anchor_temperature = conditions.temperatures[model.sources[0]];
        let anchor = ANCHOR
            * state
                .flow
                .iter()
                .map(|flow| flow.abs())
                .fold(1e-9, f64::max);
        for (node, at) in model.nodes.iter().enumerate() {
            let mut entry = self.energy_entries[node] as usize;
            let diagonal = entry;
            if is_source(model, node) {
                self.matrix.values[diagonal..diagonal + 1 + 2 * at.legs.len()].fill(0.0);
                self.matrix.values[diagonal] = 1.0;
                self.right[first + node] = conditions.temperatures[node] - state.temperature[node];
                continue;
            }
            let mut balance = anchor * (anchor_temperature - state.temperature[node]);
            let mut inflow = anchor;
            for leg in &at.legs {
                let flow = flow_into(*leg, state).max(0.0);
                let difference =
                    state.temperature[other_end(model, *leg)] - state.temperature[node];
                balance += flow * difference;
                inflow += flow;
                self.matrix.values[entry + 1] = if flow > 0.0 {
                    difference * into_sign(*leg)
                } else {
                    0.0
                };
                self.matrix.values[entry + 2] = flow;
                entry += 2;
            }
            self.matrix.values[diagonal] = -inflow;
            self.right[first + node] = -balance;
        }
    }

    /// How far a step that changed the unknowns by `change` missed a node's balance with its storage in
    /// it, at most [kg/s].
    pub fn storage_error(
        &self,
        model: &Model,
        conditions: &Conditions,
        state: &Flowing,
        change: &[f64],
    ) -> f64 {
        let missed = |(node, at): (usize, &ModelNode)| match conditions.holds[node] {
            Hold::Pressure(_) => 0.0,
            Hold::Draw(draw) => {
                let inflow: f64 = at.legs.iter().map(|leg| flow_into(*leg, state)).sum();
                let stored = self.stored(at) * change[self.pressure_unknown(node)];
                (inflow - draw - stored).abs()
            }
        };
        model
            .nodes
            .iter()
            .enumerate()
            .map(missed)
            .fold(0.0, f64::max)
    }

    /// Air that a node takes up with its pressure [kg/(s Pa)].
    fn stored(&self, node: &ModelNode) -> f64 {
        if self.storage == 0.0 {
            return 0.0;
        }
        let passes = |leg: &LegEnd| 1.0 / self.reference_slope[leg.branch];
        self.inertia * self.storage * node.legs.iter().map(passes).sum::<f64>()
    }

    /// Adds `factor` times the last step to `state`.
    pub fn apply(&self, state: &mut Flowing, factor: f64) {
        let (branches, nodes) = (state.flow.len(), state.gauge.len());
        let add = |values: &mut [f64], step: &[f64]| {
            for (value, change) in values.iter_mut().zip(step) {
                *value += factor * change;
            }
        };
        add(&mut state.flow, &self.right[..branches]);
        add(&mut state.gauge, &self.right[branches..branches + nodes]);
        if self.thermal {
            add(&mut state.temperature, &self.right[branches + nodes..]);
        }
    }

    /// Largest change of a flow in the last step [kg/s].
    pub fn largest_flow_step(&self) -> f64 {
        self.right[..self.branches.len()]
            .iter()
            .map(|change| change.abs())
            .fold(0.0, f64::max)
    }

    /// The branch whose equation is met worst.
    pub fn worst_branch(&self) -> usize {
        (0..self.branches.len())
            .max_by(|a, b| {
                self.branches[*a]
                    .residual
                    .abs()
                    .total_cmp(&self.branches[*b].residual.abs())
            })
            .unwrap_or(0)
    }

    /// Makes every leg feel its node's own pressure until the next evaluation.
    pub fn forget_legs(&mut self, model: &Model) {
        for (node, at) in model
            .nodes
            .iter()
            .enumerate()
            .filter(|(_, at)| at.couples())
        {
            let legs = at.legs.len();
            self.legs[node] = LegLosses {
                loss: vec![0.0; legs],
                by_flow: vec![0.0; legs * legs],
                by_pressure: vec![0.0; legs],
                by_temperature: vec![0.0; legs],
            };
        }
    }

    /// Factorises and turns the right-hand side into the step.
    pub fn step(&mut self) -> Result<(), BadPivot> {
        self.matrix.factorise()?;
        self.matrix.solve(&mut self.right);
        if self.right.iter().all(|change| change.is_finite()) {
            Ok(())
        } else {
            Err(BadPivot)
        }
    }
}

/// The chain that air meets, whether it ends in a chamber, and the node it comes from.
pub fn direction(model: &Model, branch: usize, forward: bool) -> (&Chain, bool, usize) {
    let ends = &model.branches[branch];
    if forward {
        (&ends.forward, ends.chamber_at_to, ends.from)
    } else {
        (&ends.reversed, ends.chamber_at_from, ends.to)
    }
}

fn leg_flows_into(node: &ModelNode, state: &Flowing, flows: &mut [f64]) {
    for (flow, leg) in flows.iter_mut().zip(&node.legs) {
        *flow = flow_into(*leg, state);
    }
}

/// Mass flow into the node by one of its legs [kg/s].
pub fn flow_into(leg: LegEnd, state: &Flowing) -> f64 {
    into_sign(leg) * state.flow[leg.branch]
}

fn into_sign(leg: LegEnd) -> f64 {
    if leg.at_to { 1.0 } else { -1.0 }
}

/// The node at the other end of a leg's branch.
pub fn other_end(model: &Model, leg: LegEnd) -> usize {
    let branch = &model.branches[leg.branch];
    if leg.at_to { branch.from } else { branch.to }
}

fn is_source(model: &Model, node: usize) -> bool {
    model.sources.contains(&node)
}
