//! The energy equations: what mixes at each node, and what a charge cooler's passages take out.

use super::system::{System, direction};
use super::{Conditions, Flowing};
use crate::exchange::Coolant;
use crate::gas::SPECIFIC_HEAT;
use crate::model::{LegEnd, Model};

/// Part of the total flow with which a node that no air reaches keeps a temperature.
const ANCHOR: f64 = 1e-13;

/// Where the equations' entries begin in the matrix.
#[derive(Clone, Debug, Default)]
pub(super) struct HeatEntries {
    /// By node: itself, then for each leg its flow and what arrives by it.
    nodes: Vec<u32>,
    /// By passage: the equation of the air that leaves, then that of the coolant.
    passages: Vec<u32>,
}

/// Row and column of the temperature of the air that leaves a passage; its coolant's follows it.
pub(super) fn exit_unknown(model: &Model, passage: usize) -> usize {
    model.branches.len() + 2 * (model.nodes.len() + passage)
}

fn temperature_unknown(model: &Model, node: usize) -> usize {
    model.branches.len() + model.nodes.len() + node
}

/// The unknown temperature of the air that arrives by a leg.
fn arriving_unknown(model: &Model, leg: LegEnd) -> usize {
    match model.branches[leg.branch].passage {
        Some(passage) => exit_unknown(model, passage),
        None => temperature_unknown(model, other_end(model, leg)),
    }
}

/// The node at the other end of a leg's branch.
fn other_end(model: &Model, leg: LegEnd) -> usize {
    let branch = &model.branches[leg.branch];
    if leg.at_to { branch.from } else { branch.to }
}

fn is_source(model: &Model, node: usize) -> bool {
    model.sources.contains(&node)
}

/// The temperature of the air that arrives by a leg [K].
fn arriving(model: &Model, state: &Flowing, leg: LegEnd) -> f64 {
    let branch = &model.branches[leg.branch];
    let left = match branch.passage {
        Some(passage) => state.exit[passage],
        None => state.temperature[other_end(model, leg)],
    };
    left + branch.temperature_rise
}

/// Lays out the equations of all nodes and passages.
pub(super) fn lay_out(model: &Model, entries: &mut Vec<(u32, u32)>) -> HeatEntries {
    let mut heat = HeatEntries::default();
    for (node, at) in model.nodes.iter().enumerate() {
        heat.nodes.push(entries.len() as u32);
        let row = temperature_unknown(model, node) as u32;
        entries.push((row, row));
        for leg in &at.legs {
            entries.push((row, leg.branch as u32));
            entries.push((row, arriving_unknown(model, *leg) as u32));
        }
    }
    for (passage, given) in model.passages.iter().enumerate() {
        heat.passages.push(entries.len() as u32);
        let branch = &model.branches[given.branch];
        let air = exit_unknown(model, passage) as u32;
        let from = temperature_unknown(model, branch.from) as u32;
        let to = temperature_unknown(model, branch.to) as u32;
        // A coolant that enters here is no unknown: its place is taken by the passage's own.
        let before = match given.coolant {
            Coolant::Enters(_) => air + 1,
            Coolant::After(other) => exit_unknown(model, other) as u32 + 1,
        };
        for row in [air, air + 1] {
            let columns = [row, given.branch as u32, from, to, before];
            entries.extend(columns.map(|column| (row, column)));
        }
        entries.push((air + 1, air));
    }
    heat
}

impl System {
    /// Row and column of the temperature of the air that leaves a passage.
    pub fn exit_unknown(&self, passage: usize) -> usize {
        self.branches.len() + 2 * (self.legs.len() + passage)
    }

    /// Temperature behind a branch's passage of a charge cooler; none without one [K].
    pub fn leaving(&self, model: &Model, state: &Flowing, branch: usize) -> f64 {
        let passage = model.branches[branch].passage;
        passage.map_or(f64::NAN, |passage| state.exit[passage])
    }

    /// Temperature of the coolant that enters a passage [K].
    pub fn entering(&self, model: &Model, state: &Flowing, passage: usize) -> f64 {
        match model.passages[passage].coolant {
            Coolant::Enters(temperature) => temperature,
            Coolant::After(other) => state.coolant[other],
        }
    }

    /// Largest energy imbalance of a node or passage over the specific heat [kg K/s].
    pub(super) fn energy_residual(&self, model: &Model, state: &Flowing) -> f64 {
        if !self.thermal {
            return 0.0;
        }
        let balance = |node: usize| -> f64 {
            let legs = model.nodes[node].legs.iter();
            legs.map(|leg| {
                let warmer = arriving(model, state, *leg) - state.temperature[node];
                leg.flow_into(&state.flow).max(0.0) * warmer
            })
            .sum()
        };
        let nodes = (0..model.nodes.len())
            .filter(|node| !is_source(model, *node))
            .map(|node| balance(node).abs());
        let passages = (0..model.passages.len()).flat_map(|passage| {
            let missed = self.passage_missed(model, state, passage);
            let flow = state.flow[model.passages[passage].branch].abs();
            let coolant = (model.passages[passage].capacity / SPECIFIC_HEAT).min(flow);
            [flow * missed.0.abs(), coolant * missed.1.abs()]
        });
        nodes.chain(passages).fold(0.0, f64::max)
    }

    /// By how much a passage's air and its coolant leave too cold [K].
    fn passage_missed(&self, model: &Model, state: &Flowing, passage: usize) -> (f64, f64) {
        let given = &model.passages[passage];
        let flow = state.flow[given.branch];
        let (_, _, up) = direction(model, given.branch, flow >= 0.0);
        let warm = state.temperature[up];
        let cold = self.entering(model, state, passage);
        let part = given.exchange(flow.abs()).part;
        let taken = flow.abs() * SPECIFIC_HEAT / given.capacity * (warm - state.exit[passage]);
        (
            warm + part * (cold - warm) - state.exit[passage],
            cold + taken - state.coolant[passage],
        )
    }

    /// Fills the energy equations from the last evaluated state.
    pub(super) fn assemble_heat(
        &mut self,
        model: &Model,
        conditions: &Conditions,
        state: &Flowing,
    ) {
        let anchor_temperature = conditions.temperatures[model.sources[0]];
        let largest = state
            .flow
            .iter()
            .map(|flow| flow.abs())
            .fold(1e-9, f64::max);
        let anchor = ANCHOR * largest;
        for (node, at) in model.nodes.iter().enumerate() {
            let row = temperature_unknown(model, node);
            let mut entry = self.heat.nodes[node] as usize;
            let diagonal = entry;
            if is_source(model, node) {
                self.matrix.values[diagonal..diagonal + 1 + 2 * at.legs.len()].fill(0.0);
                self.matrix.values[diagonal] = 1.0;
                self.right[row] = conditions.temperatures[node] - state.temperature[node];
                continue;
            }
            let mut balance = anchor * (anchor_temperature - state.temperature[node]);
            let mut inflow = anchor;
            for leg in &at.legs {
                let flow = leg.flow_into(&state.flow).max(0.0);
                let difference = arriving(model, state, *leg) - state.temperature[node];
                balance += flow * difference;
                inflow += flow;
                self.matrix.values[entry + 1] = if flow > 0.0 {
                    difference * leg.into_sign()
                } else {
                    0.0
                };
                self.matrix.values[entry + 2] = flow;
                entry += 2;
            }
            self.matrix.values[diagonal] = -inflow;
            self.right[row] = -balance;
        }
        for passage in 0..model.passages.len() {
            self.assemble_passage(model, state, passage);
        }
    }

    fn assemble_passage(&mut self, model: &Model, state: &Flowing, passage: usize) {
        let given = &model.passages[passage];
        let flow = state.flow[given.branch];
        let forward = flow >= 0.0;
        let sign = if forward { 1.0 } else { -1.0 };
        let (_, _, up) = direction(model, given.branch, forward);
        let warm = state.temperature[up];
        let cold = self.entering(model, state, passage);
        let exchange = given.exchange(flow.abs());
        let per_coolant = SPECIFIC_HEAT / given.capacity;
        let taken = flow.abs() * per_coolant;
        let chained = f64::from(u8::from(matches!(given.coolant, Coolant::After(_))));
        let missed = self.passage_missed(model, state, passage);
        // By the unknown itself, the flow, the temperatures at `from` and `to`, the coolant before.
        let (mut by_from, mut by_to) = (-(1.0 - exchange.part), 0.0);
        let (mut coolant_by_from, mut coolant_by_to) = (-taken, 0.0);
        if !forward {
            std::mem::swap(&mut by_from, &mut by_to);
            std::mem::swap(&mut coolant_by_from, &mut coolant_by_to);
        }
        let rows = [
            1.0,
            -sign * exchange.by_flow * (cold - warm),
            by_from,
            by_to,
            -chained * exchange.part,
            1.0,
            -sign * per_coolant * (warm - state.exit[passage]),
            coolant_by_from,
            coolant_by_to,
            -chained,
            taken,
        ];
        let first = self.heat.passages[passage] as usize;
        self.matrix.values[first..first + rows.len()].copy_from_slice(&rows);
        let row = self.exit_unknown(passage);
        self.right[row] = missed.0;
        self.right[row + 1] = missed.1;
    }
}
