//! The equations: residuals, their derivatives, and where each stands in the matrix.
//!
//! A branch's row is written as a change of flow, dm = c (dP_up (1 - F_p) - dP_down - F_T dT + r) with the
//! conductance c = 1/F_m, so that its pivot is 1 and a choked branch (c = 0) is as regular as any.
//! How a branch answers to its ends is in `response.rs`.

use super::heat::{self, HeatEntries};
use super::response::{Around, BranchState, Form, respond, set_out};
use super::sparse::{BadPivot, Sparse};
use super::{Conditions, Flowing, Hold};
use crate::branch::Chain;
use crate::gas::Warmth;
use crate::junction::LegLosses;
use crate::march::March;
use crate::model::{LegEnd, Model, ModelNode};

/// Smallest slope of a branch's fall over its reference slope: keeps a branch at zero flow in the matrix.
const SLOPE_FLOOR: f64 = 1e-7;
/// Branches that are marched side by side: what is at hand for them stays in the nearest memory.
const SIDE_BY_SIDE: usize = 16;

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
    /// By node; made anew only where the temperature has changed.
    warmth: Vec<Warmth>,
    /// Flows into each node by leg, where legs differ [kg/s].
    leg_flows: Vec<Vec<f64>>,
    /// Position of each branch end among its node's legs: (from, to).
    pub(super) leg_positions: Vec<(usize, usize)>,
    /// Typical slope of each branch's fall with flow [Pa s/kg].
    pub reference_slope: Vec<f64>,
    /// Typical fall of each branch over the square of its flow [Pa s2/kg2].
    pub reference_curvature: Vec<f64>,
    /// A linear loss added to every branch, over its reference slope [-].
    pub added_slope: f64,
    /// Part of the junctions' leg losses that acts, 1 for the laws as published [-].
    pub leg_part: f64,
    /// By branch, how far the pressures of its legs, at `from` and at `to`, stand above what the laws say;
    /// empty for the laws as published [Pa].
    pub lifts: Vec<[f64; 2]>,
    /// How hard each flow is to change in one step, over the branch's reference slope: moves the way
    /// to the answer, not the answer [-].
    pub inertia: f64,
    /// Air that a node takes up as its pressure rises in one step, over what its branches pass and over
    /// `inertia` [-].
    pub storage: f64,
    pub(super) thermal: bool,
    pub(super) first_coupling: Vec<u32>,
    pub(super) mass_entries: Vec<u32>,
    pub(super) heat: HeatEntries,
}

impl System {
    /// Lays out the equations; `thermal` makes temperatures unknowns.
    pub fn new(model: &Model, thermal: bool) -> Self {
        let branches = model.branches.len();
        let nodes = model.nodes.len();
        let size = branches
            + if thermal {
                2 * (nodes + model.passages.len())
            } else {
                nodes
            };
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
                if let Some(passage) = branch.passage {
                    entries.push((row, heat::exit_unknown(model, passage) as u32));
                }
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
        let heat = if thermal {
            heat::lay_out(model, &mut entries)
        } else {
            HeatEntries::default()
        };
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
            warmth: vec![Warmth::at(f64::NAN); nodes],
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
            lifts: Vec::new(),
            inertia: 0.0,
            storage: 0.0,
            thermal,
            first_coupling,
            mass_entries,
            heat,
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
        self.evaluate_laws(model, conditions, state);
        self.residuals(model, conditions, state)
    }

    /// As `evaluate`, and gives each branch near choking the very flow that its ends drive.
    pub fn evaluate_exactly(
        &mut self,
        model: &Model,
        conditions: &Conditions,
        state: &mut Flowing,
    ) -> Residuals {
        self.evaluate_laws(model, conditions, state);
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

    fn evaluate_laws(&mut self, model: &Model, conditions: &Conditions, state: &Flowing) {
        for (warmth, temperature) in self.warmth.iter_mut().zip(&state.temperature) {
            if warmth.temperature != *temperature {
                *warmth = Warmth::at(*temperature);
            }
        }
        for (node, at) in model.nodes.iter().enumerate() {
            if at.couples()
                && let Some(junction) = &at.junction
            {
                leg_flows_into(at, state, &mut self.leg_flows[node]);
                let pressure = state.pressure(node);
                junction.losses(
                    pressure,
                    self.warmth[node],
                    &self.leg_flows[node],
                    &mut self.legs[node],
                );
                if self.leg_part != 1.0 {
                    self.legs[node].scale(self.leg_part);
                }
            }
        }
        let count = model.branches.len();
        let mut around = Vec::with_capacity(SIDE_BY_SIDE.min(count));
        let mut marches = Vec::with_capacity(SIDE_BY_SIDE.min(count));
        let mut branches = std::mem::take(&mut self.branches);
        for first in (0..count).step_by(SIDE_BY_SIDE) {
            let some = first..count.min(first + SIDE_BY_SIDE);
            around.clear();
            marches.clear();
            for branch in some.clone() {
                let its = self.around(model, branch, state);
                marches.push(set_out(model, branch, &its));
                around.push(its);
            }
            March::together(&mut marches);
            for (branch, (around, march)) in some.zip(around.iter().zip(&marches)) {
                branches[branch] = match conditions.given(branch) {
                    Some(given) => BranchState::given(given, state.flow[branch]),
                    None => respond(model, branch, around, march),
                };
            }
        }
        self.branches = branches;
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
            let inflow: f64 = at.legs.iter().map(|leg| leg.flow_into(&state.flow)).sum();
            match conditions.holds[node] {
                Hold::Pressure(_) => residuals.total += 0.5 * inflow.abs(),
                Hold::Draw(draw) => {
                    residuals.imbalance = residuals.imbalance.max((inflow - draw).abs());
                    residuals.total += 0.5 * draw.abs();
                }
            }
        }
        for branch in 0..conditions.given.len() {
            if let Some(given) = conditions.given(branch) {
                let missing = given - state.flow[branch];
                residuals.imbalance = residuals.imbalance.max(missing.abs());
            }
        }
        residuals.energy = self.energy_residual(model, state);
        residuals
    }

    /// Pressure of a branch's leg at one of its ends, above the datum [Pa].
    pub fn leg_gauge(&self, model: &Model, state: &Flowing, branch: usize, at_to: bool) -> f64 {
        let ends = &model.branches[branch];
        let (node, position) = if at_to {
            (ends.to, self.leg_positions[branch].1)
        } else {
            (ends.from, self.leg_positions[branch].0)
        };
        let lift = self
            .lifts
            .get(branch)
            .map_or(0.0, |ends| ends[usize::from(at_to)]);
        let loss = self.legs[node].loss.get(position).copied().unwrap_or(0.0);
        state.gauge[node] - loss + lift
    }

    fn around(&self, model: &Model, branch: usize, state: &Flowing) -> Around<'_> {
        let ends = &model.branches[branch];
        let reference = self.reference_slope[branch];
        Around {
            from: self.leg_gauge(model, state, branch, false),
            to: self.leg_gauge(model, state, branch, true),
            datum: state.datum,
            warmth: (&self.warmth[ends.from], &self.warmth[ends.to]),
            flow: state.flow[branch],
            leaving: self.leaving(model, state, branch),
            reference,
            added: self.added_slope * reference,
            floor: SLOPE_FLOOR * reference,
            inertia: self.inertia * reference,
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
                let inflow: f64 = at.legs.iter().map(|leg| leg.flow_into(&state.flow)).sum();
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

    /// Adds `factor` times the last step to `state`.
    pub fn apply(&self, state: &mut Flowing, factor: f64) {
        self.apply_step(state, factor, &self.right);
    }

    /// Adds `factor` times `step` to `state`.
    pub fn apply_step(&self, state: &mut Flowing, factor: f64, step: &[f64]) {
        let (branches, nodes) = (state.flow.len(), state.gauge.len());
        let add = |values: &mut [f64], step: &[f64]| {
            for (value, change) in values.iter_mut().zip(step) {
                *value += factor * change;
            }
        };
        add(&mut state.flow, &step[..branches]);
        add(&mut state.gauge, &step[branches..branches + nodes]);
        if self.thermal {
            let passages = branches + 2 * nodes;
            add(&mut state.temperature, &step[branches + nodes..passages]);
            for (passage, change) in step[passages..].chunks_exact(2).enumerate() {
                state.exit[passage] += factor * change[0];
                state.coolant[passage] += factor * change[1];
            }
        }
    }

    /// Largest change of a flow in the last step [kg/s].
    pub fn largest_flow_step(&self) -> f64 {
        self.largest_flow(&self.right)
    }

    /// Largest change of a flow in `step` [kg/s].
    pub fn largest_flow(&self, step: &[f64]) -> f64 {
        step[..self.branches.len()]
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
        *flow = leg.flow_into(&state.flow);
    }
}
