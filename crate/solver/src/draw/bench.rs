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

/// Solves the bench with all ports open at once, or with every port by itself, as benches read them.
pub(super) fn draw<'m>(
    model: &'m Model,
    cylinders: usize,
    bench: &Bench,
    all: bool,
) -> Result<Drawn<'m>, Refused> {
    let mut solver = Solver::new(model, false);
    let networks = open_ports(model, all);
    let mut drawn = blank(model, cylinders, networks.len());
    for (network, ports) in networks.iter().enumerate() {
        let (conditions, state) = solve(&mut solver, bench, ports)?;
        record(&mut drawn, &mut solver, &conditions, state, ports);
        for port in ports {
            drawn.port_snapshots[*port].push((network, 1.0));
        }
        if all {
            drawn.second = second_solution(&mut solver, &conditions, &drawn);
        }
    }
    drawn.iterations = solver.iterations;
    Ok(drawn)
}

/// The ports that are open in each network of the bench.
pub(super) fn open_ports(model: &Model, all: bool) -> Vec<Vec<usize>> {
    let ports = 0..model.ports.len();
    if all {
        vec![ports.collect()]
    } else {
        ports.map(|port| vec![port]).collect()
    }
}

/// What holds with some ports open, and the state; where a port alone has none by itself, the others are
/// shut by degrees.
pub(super) fn solve(
    solver: &mut Solver<'_>,
    bench: &Bench,
    ports: &[usize],
) -> Result<(Conditions, Flowing), Refused> {
    let conditions = conditions(solver.model, bench, ports);
    let state = solver.solve(&conditions, None).or_else(|failure| {
        let state = match *ports {
            [port] => shut_others(solver, bench, conditions.clone(), port),
            _ => None,
        };
        state.ok_or(Refused::Failed(failure))
    })?;
    Ok((conditions, state))
}

/// The state with one port open, by way of the state with all of them.
fn shut_others(
    solver: &mut Solver<'_>,
    bench: &Bench,
    mut alone: Conditions,
    port: usize,
) -> Option<Flowing> {
    let model = solver.model;
    let all = conditions(model, bench, &open_ports(model, true)[0]);
    let mut state = solver.solve(&all, None).ok()?;
    let ports = model.ports.iter();
    let drawn: Vec<f64> = ports
        .map(|port| model.inflow(port.node, &state.flow))
        .collect();
    let (mut open, mut step) = (1.0, FIRST_SHUT);
    while open > 0.0 {
        let next = f64::max(open - step, 0.0);
        for (other, flow) in drawn.iter().enumerate().filter(|(other, _)| *other != port) {
            alone.holds[model.ports[other].node] = Hold::Draw(next * flow);
        }
        match solver.solve_from(&alone, &state) {
            Ok(found) => (state, open, step) = (found, next, 1.5 * step),
            Err(_) if step > LEAST_SHUT => step *= 0.5,
            Err(_) => return None,
        }
    }
    Some(state)
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
pub(super) fn conditions(model: &Model, bench: &Bench, open: &[usize]) -> Conditions {
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
    for port in open {
        holds[model.ports[*port].node] = Hold::Pressure(at_port);
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
) {
    let residuals = solver
        .system
        .evaluate_exactly(solver.model, conditions, &mut state);
    let model = solver.model;
    let regular = solver.linearise(conditions, &state);
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
