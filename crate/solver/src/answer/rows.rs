//! What stands beside each branch and node of the table: means and peaks over a draw's networks.

use std::f64::consts::PI;

use super::budget::{Labels, Place, branch_items};
use super::{BranchAnswer, LossAnswer, NodeAnswer};
use crate::draw::{Drawn, Snapshot};
use crate::gas;
use crate::model::ModelBranch;
use crate::short;
use crate::solve::BranchState;

/// One answer for each branch of the study.
pub fn branches(drawn: &Drawn<'_>, labels: &Labels<'_>) -> Vec<BranchAnswer> {
    let weights = weights(drawn);
    (0..drawn.model.study_branches)
        .map(|branch| {
            let mut answer = BranchAnswer {
                branch: drawn.model.branches[branch].id.clone(),
                flow: 0.0,
                peak_flow: 0.0,
                velocity: 0.0,
                mach: 0.0,
                reynolds: 0.0,
                choked: false,
                losses: losses(drawn, branch, weights, labels),
            };
            for snapshot in &drawn.snapshots {
                let flow = snapshot.state.flow[branch];
                answer.flow += snapshot.weight / weights * flow;
                answer.peak_flow = answer.peak_flow.max(flow.abs());
                let own = &snapshot.branches[branch];
                answer.mach = answer.mach.max(own.fall.mach_square.sqrt());
                answer.choked |= own.choked;
                let ends = &drawn.model.branches[branch];
                let up = if own.forward { ends.from } else { ends.to };
                let temperature = snapshot.state.temperature[up];
                if drawn.model.blowers.contains(&branch) {
                    continue;
                }
                let (velocity, reynolds) = fastest(ends, own, flow.abs(), temperature);
                answer.velocity = answer.velocity.max(velocity);
                answer.reynolds = answer.reynolds.max(reynolds);
            }
            answer
        })
        .collect()
}

/// Velocity at the largest Mach number met [m/s] and Reynolds number in the smallest section.
fn fastest(ends: &ModelBranch, own: &BranchState, flow: f64, temperature: f64) -> (f64, f64) {
    let mach = own.fall.mach_square.sqrt();
    let static_temperature = temperature / (1.0 + 0.2 * mach * mach);
    let sound = (gas::GAMMA * gas::GAS_CONSTANT * static_temperature).sqrt();
    let smallest = ends.forward.smallest_area();
    let diameter = (4.0 * smallest / PI).sqrt();
    let reynolds = flow * diameter / (smallest * gas::viscosity(temperature).value);
    (mach * sound, reynolds)
}

/// What each loss of a branch costs, in the order of the study.
fn losses(drawn: &Drawn<'_>, branch: usize, weights: f64, labels: &Labels<'_>) -> Vec<LossAnswer> {
    let mut losses: Vec<(Place, LossAnswer)> = Vec::new();
    for snapshot in &drawn.snapshots {
        let weight = snapshot.weight / weights;
        for (place, part) in branch_items(drawn.model, snapshot, branch) {
            if let Some((_, loss)) = losses.iter_mut().find(|(other, _)| *other == place) {
                loss.fall += weight * part.fall;
                loss.mach = loss.mach.max(part.mach_square.sqrt());
            } else {
                let (_, _, label) = labels.item(place);
                let loss = LossAnswer {
                    label,
                    fall: weight * part.fall,
                    mach: part.mach_square.sqrt(),
                };
                losses.push((place, loss));
            }
        }
    }
    let position = |(place, _): &(Place, LossAnswer)| match place {
        Place::Loss(_, position) => *position,
        _ => u32::MAX,
    };
    short::sort(&mut losses, |a, b| position(a) < position(b));
    losses.into_iter().map(|(_, loss)| loss).collect()
}

/// One answer for each node of the study.
pub fn nodes(drawn: &Drawn<'_>) -> Vec<NodeAnswer> {
    let weights = weights(drawn);
    let mean = |read: &dyn Fn(&Snapshot) -> f64| {
        let parts = drawn.snapshots.iter();
        let sum: f64 = parts.map(|snapshot| snapshot.weight * read(snapshot)).sum();
        sum / weights
    };
    (0..drawn.model.study_nodes)
        .map(|node| NodeAnswer {
            node: drawn.model.nodes[node].id.clone(),
            pressure: mean(&|snapshot| snapshot.state.pressure(node)),
            temperature: passing(drawn, node)
                .unwrap_or_else(|| mean(&|snapshot| snapshot.state.temperature[node])),
        })
        .collect()
}

/// Temperature of the air that passes a node, by its flow [K]; nothing where none does. Where a port is
/// shut the air before it rests at no temperature in particular.
fn passing(drawn: &Drawn<'_>, node: usize) -> Option<f64> {
    let (mut carried, mut passed) = (0.0, 0.0);
    for snapshot in &drawn.snapshots {
        let legs = drawn.model.nodes[node].legs.iter();
        let flows = legs.map(|leg| leg.flow_into(&snapshot.state.flow));
        let (mut into, mut out_of) = (0.0, 0.0);
        for flow in flows {
            into += f64::max(flow, 0.0);
            out_of += f64::max(-flow, 0.0);
        }
        let through = snapshot.weight * f64::max(into, out_of);
        passed += through;
        carried += through * snapshot.state.temperature[node];
    }
    (passed > 0.0).then(|| carried / passed)
}

fn weights(drawn: &Drawn<'_>) -> f64 {
    drawn.snapshots.iter().map(|snapshot| snapshot.weight).sum()
}
