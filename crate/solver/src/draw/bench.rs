//! The flow bench: still room air on one side, a settling chamber on the other.

use super::spectrum::Gradients;
use super::{Drawn, Refused, Snapshot};
use crate::model::Model;
use crate::solve::{Conditions, Flowing, Hold, Solver};
use crate::study::Bench;

/// Shares of two solutions that differ by less are the same solution [-].
const SAME: f64 = 1e-6;
/// Part of the other ports' air by which they are shut at first, and at least [-].
const FIRST_SHUT: f64 = 0.25;
const LEAST_SHUT: f64 = 1e-3;
/// How far the starts of the several-start check lie from the first solution [-].
const DISTURBANCE: [f64; 3] = [-0.5, 0.4, 2.0];

/// Every port by itself, the others shut, as benches read them.
pub fn one_at_a_time<'m>(
    model: &'m Model,
    cylinders: usize,
    bench: &Bench,
) -> Result<Drawn<'m>, Refused> {
    let mut solver = Solver::new(model, false);
    let mut drawn = blank(model, cylinders, model.ports.len());
    for port in 0..model.ports.len() {
        let conditions = conditions(model, bench, |other| other == port);
        let state = match solver.solve(&conditions, None) {
            Ok(state) => state,
            Err(failure) => {
                shut_others(&mut solver, bench, port).ok_or(Refused::Failed(failure))?
            }
        };
        record(&mut drawn, &mut solver, &conditions, state, &[port])?;
        drawn.port_snapshots[port].push((port, 1.0));
    }
    drawn.iterations = solver.iterations;
    Ok(drawn)
}

/// The state with one port open, by way of the state with all of them: the others are shut by degrees.
pub(super) fn shut_others(solver: &mut Solver<'_>, bench: &Bench, port: usize) -> Option<Flowing> {
    let model = solver.model;
    let mut state = solver
        .solve(&conditions(model, bench, |_| true), None)
        .ok()?;
    let ports = model.ports.iter();
    let drawn: Vec<f64> = ports
        .map(|port| model.inflow(port.node, &state.flow))
        .collect();
    let mut conditions = conditions(model, bench, |other| other == port);
    let (mut open, mut step) = (1.0, FIRST_SHUT);
    while open > 0.0 {
        let next = f64::max(open - step, 0.0);
        for (other, flow) in drawn.iter().enumerate().filter(|(other, _)| *other != port) {
            conditions.holds[model.ports[other].node] = Hold::Draw(next * flow);
        }
        match solver.solve_from(&conditions, &state) {
            Ok(found) => (state, open, step) = (found, next, 1.5 * step),
            Err(_) if step > LEAST_SHUT => step *= 0.5,
            Err(_) => return None,
        }
    }
    Some(state)
}

/// All ports open at once.
pub fn all_open<'m>(
    model: &'m Model,
    cylinders: usize,
    bench: &Bench,
) -> Result<Drawn<'m>, Refused> {
    let mut solver = Solver::new(model, false);
    let mut drawn = blank(model, cylinders, 1);
    let conditions = conditions(model, bench, |_| true);
    let state = solver.solve(&conditions, None).map_err(Refused::Failed)?;
    let ports: Vec<usize> = (0..model.ports.len()).collect();
    record(&mut drawn, &mut solver, &conditions, state, &ports)?;
    for port in ports {
        drawn.port_snapshots[port].push((0, 1.0));
    }
    drawn.second = second_solution(&mut solver, &conditions, &drawn);
    drawn.iterations = solver.iterations;
    Ok(drawn)
}

fn blank(model: &Model, cylinders: usize, networks: usize) -> Drawn<'_> {
    Drawn {
        model,
        snapshots: Vec::with_capacity(networks),
        cylinder_flow: vec![0.0; cylinders],
        port_flow: vec![0.0; model.ports.len()],
        port_snapshots: vec![Vec::new(); model.ports.len()],
        gradients: Gradients::new(cylinders),
        iterations: 0,
        second: None,
        found: None,
    }
}

/// Room pressure at the sources, the chamber's behind open ports; blowing raises the sources instead.
pub(super) fn conditions(model: &Model, bench: &Bench, open: impl Fn(usize) -> bool) -> Conditions {
    let (at_source, at_port) = if bench.blowing {
        (
            bench.ambient_pressure + bench.depression,
            bench.ambient_pressure,
        )
    } else {
        (
            bench.ambient_pressure,
            bench.ambient_pressure - bench.depression,
        )
    };
    let mut holds = vec![Hold::Draw(0.0); model.nodes.len()];
    for (hold, left_out) in holds.iter_mut().zip(&model.left_out) {
        if *left_out {
            *hold = Hold::Pressure(bench.ambient_pressure);
        }
    }
    for source in &model.sources {
        holds[*source] = Hold::Pressure(at_source);
    }
    for (position, port) in model.ports.iter().enumerate() {
        if open(position) {
            holds[port.node] = Hold::Pressure(at_port);
        }
    }
    Conditions {
        holds,
        temperatures: vec![bench.ambient_temperature; model.nodes.len()],
        given: if model.branches.iter().any(|branch| branch.left_out) {
            let branches = model.branches.iter();
            branches
                .map(|branch| branch.left_out.then_some(0.0))
                .collect()
        } else {
            Vec::new()
        },
    }
}

/// Keeps a solved state and the gradients of the ports that draw in it.
fn record(
    drawn: &mut Drawn<'_>,
    solver: &mut Solver<'_>,
    conditions: &Conditions,
    mut state: Flowing,
    ports: &[usize],
) -> Result<(), Refused> {
    let residuals = solver
        .system
        .evaluate_exactly(solver.model, conditions, &mut state);
    let model = solver.model;
    let regular = solver.linearise_solved(conditions, &state);
    let forcings = solver.forcings(&state);
    for port in ports {
        let port_node = &model.ports[*port];
        let mut gradient = vec![0.0; solver.system.right.len()];
        for leg in &model.nodes[port_node.node].legs {
            gradient[leg.branch] += leg.into_sign();
            drawn.port_flow[*port] += leg.flow_into(&state.flow);
        }
        if regular {
            solver.adjoint(&mut gradient);
            drawn
                .gradients
                .add(port_node.cylinder, &forcings, &gradient, 1.0);
        }
        drawn.cylinder_flow[port_node.cylinder] += drawn.port_flow[*port];
    }
    let weight = ports.len() as f64 / model.ports.len() as f64;
    drawn
        .snapshots
        .push(Snapshot::take(solver, state, weight, residuals));
    Ok(())
}

/// Coefficients that depend on the split can allow two solutions: starts far from the first look for one.
fn second_solution(
    solver: &mut Solver<'_>,
    conditions: &Conditions,
    drawn: &Drawn<'_>,
) -> Option<Vec<f64>> {
    let model = solver.model;
    if !model.nodes.iter().any(crate::model::ModelNode::couples) {
        return None;
    }
    let first = &drawn.snapshots[0].state;
    let total: f64 = drawn.port_flow.iter().sum();
    for (round, factor) in DISTURBANCE.iter().enumerate() {
        let mut start = first.clone();
        for (branch, flow) in start.flow.iter_mut().enumerate() {
            // Every other branch, so that the split changes and not only the total.
            if (branch + round) % 2 == 0 {
                *flow *= factor;
            }
        }
        let Ok(other) = solver.solve_from(conditions, &start) else {
            continue;
        };
        let flows: Vec<f64> = model
            .ports
            .iter()
            .map(|port| model.inflow(port.node, &other.flow))
            .collect();
        let differs = flows
            .iter()
            .zip(&drawn.port_flow)
            .any(|(a, b)| (a - b).abs() > SAME * total.abs());
        if differs {
            return Some(flows);
        }
    }
    None
}
