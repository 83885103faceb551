//! The linearised equations: matrix and right-hand side from the last evaluated state.

use super::system::System;
use super::{Conditions, Flowing, Hold};
use crate::model::{LegEnd, Model, ModelNode};

impl System {
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
                self.matrix.values[entry] = if held { 0.0 } else { leg.into_sign() };
                inflow += leg.flow_into(&state.flow);
            }
            self.right[row] = match conditions.holds[node] {
                Hold::Pressure(pressure) => pressure - state.datum - state.gauge[node],
                Hold::Draw(draw) => draw - inflow,
            };
        }
        if self.thermal {
            self.assemble_heat(model, conditions, state);
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
            if ends.passage.is_some() {
                self.matrix.values[entry] = -sign * own.by_leaving;
                entry += 1;
            }
        }
        for (node, position, by_leg) in [(ends.from, at_from, by_from), (ends.to, at_to, by_to)] {
            if !model.nodes[node].couples() {
                continue;
            }
            let legs = &model.nodes[node].legs;
            for (other, leg) in legs.iter().enumerate() {
                let slope = self.legs[node].by_flow[position * legs.len() + other];
                self.matrix.values[entry] = by_leg * slope * leg.into_sign();
                entry += 1;
            }
        }
        self.right[branch] = own.shift();
    }

    /// Air that a node takes up with its pressure [kg/(s Pa)].
    pub(super) fn stored(&self, node: &ModelNode) -> f64 {
        if self.storage == 0.0 {
            return 0.0;
        }
        let passes = |leg: &LegEnd| 1.0 / self.reference_slope[leg.branch];
        self.inertia * self.storage * node.legs.iter().map(passes).sum::<f64>()
    }
}
