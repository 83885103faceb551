//! Where Newton's method starts: the flow through square resistances of about the right size, found
//! from that through linear ones. Neither evaluates a law after the first.

use super::response::BranchState;
use super::system::System;
use super::{Conditions, Flowing, Hold};
use crate::branch::Arriving;
use crate::gas::{self, CHOKED_FLOW_FUNCTION, GAMMA, GAS_CONSTANT};
use crate::model::Model;

/// Smallest mass flux a starting resistance is taken at [kg/(s m2)].
const LEAST_FLUX: f64 = 0.2;
/// Largest part of a section's choking flow a starting resistance is taken at [-].
const LARGEST_PART: f64 = 0.5;
/// A starting resistance is at least this many velocity heads of the smallest section [-].
const LEAST_HEADS: f64 = 1e-3;

/// The state of rest that everything starts from.
fn rest(model: &Model, conditions: &Conditions) -> Flowing {
    let datum = model
        .sources
        .iter()
        .map(|source| match conditions.holds[*source] {
            Hold::Pressure(pressure) => pressure,
            Hold::Draw(_) => 0.0,
        })
        .fold(0.0, f64::max);
    let temperature = model
        .sources
        .iter()
        .map(|source| conditions.temperatures[*source])
        .sum::<f64>()
        / model.sources.len().max(1) as f64;
    Flowing {
        flow: vec![0.0; model.branches.len()],
        gauge: vec![0.0; model.nodes.len()],
        temperature: vec![temperature; model.nodes.len()],
        datum,
        exit: vec![temperature; model.passages.len()],
        coolant: vec![temperature; model.passages.len()],
    }
}

/// Mass flux that the conditions suggest [kg/(s m2)].
fn typical_flux(model: &Model, conditions: &Conditions, rest: &Flowing) -> f64 {
    let mut lowest = rest.datum;
    let mut drawn = 0.0;
    let mut drawn_area = 0.0;
    for (node, hold) in conditions.holds.iter().enumerate() {
        match hold {
            Hold::Pressure(pressure) => lowest = lowest.min(*pressure),
            Hold::Draw(draw) if *draw != 0.0 => {
                drawn += draw.abs();
                let ends = model.nodes[node].legs.iter();
                drawn_area += ends
                    .map(|leg| model.branches[leg.branch].forward.smallest_area())
                    .sum::<f64>();
            }
            Hold::Draw(_) => {}
        }
    }
    let temperature = rest.temperature.first().copied().unwrap_or(300.0);
    let by_pressure =
        (2.0 * gas::density(rest.datum, temperature) * (rest.datum - lowest) / 3.0).sqrt();
    let by_draw = if drawn_area > 0.0 {
        drawn / drawn_area
    } else {
        0.0
    };
    by_pressure.max(by_draw).max(LEAST_FLUX)
}

/// Largest number of steps with square resistances.
const SQUARE_STEPS: u32 = 8;
/// Change of a flow over the largest flow at which they end [-].
const SQUARE_CHANGE: f64 = 0.02;
/// Slope of a square resistance over its reference slope, at least [-].
const SQUARE_FLOOR: f64 = 0.02;

/// Sets every branch's reference slope and returns the solution with square resistances, or what comes
/// before the step that failed.
pub fn simple(model: &Model, conditions: &Conditions, system: &mut System) -> Flowing {
    let mut state = linear(model, conditions, system);
    for _ in 0..SQUARE_STEPS {
        for branch in 0..model.branches.len() {
            system.branches[branch] = match conditions.given(branch) {
                Some(given) => BranchState::given(given, state.flow[branch]),
                None => square(model, branch, system, &state),
            };
        }
        system.assemble(model, conditions, &state);
        let kept = state.clone();
        if system.step().is_err() {
            break;
        }
        system.apply(&mut state, 1.0);
        if (0..state.gauge.len()).any(|node| state.pressure(node) <= 0.0) {
            return kept;
        }
        let largest = state.flow.iter().map(|flow| flow.abs()).fold(0.0, f64::max);
        if system.largest_flow_step() <= SQUARE_CHANGE * largest {
            break;
        }
    }
    state
}

/// A branch whose fall is the square of its flow times its reference curvature.
fn square(model: &Model, branch: usize, system: &System, state: &Flowing) -> BranchState {
    let ends = &model.branches[branch];
    let flow = state.flow[branch];
    let curvature = system.reference_curvature[branch];
    let slope = (2.0 * curvature * flow.abs()).max(SQUARE_FLOOR * system.reference_slope[branch]);
    let excess = state.gauge[ends.from] - state.gauge[ends.to] - curvature * flow * flow.abs();
    BranchState {
        forward: true,
        missing: excess / slope,
        by_upstream: 1.0 / slope,
        by_downstream: 1.0 / slope,
        ..BranchState::default()
    }
}

/// Sets every branch's reference slope and returns the linear solution, or the state of rest.
fn linear(model: &Model, conditions: &Conditions, system: &mut System) -> Flowing {
    let mut state = rest(model, conditions);
    let flux = typical_flux(model, conditions, &state);
    for (branch, ends) in model.branches.iter().enumerate() {
        let temperature = state.temperature[ends.from];
        let area = ends.forward.smallest_area();
        let choking =
            CHOKED_FLOW_FUNCTION * area * state.datum / (temperature * GAS_CONSTANT / GAMMA).sqrt();
        let mut flow = (flux * area).min(LARGEST_PART * choking);
        let mut found = None;
        for _ in 0..60 {
            let air = Arriving::new(state.datum, temperature, flow).leaving_at(temperature);
            found = ends.forward.fall(air, ends.chamber_at_to);
            if found.is_some() {
                break;
            }
            flow *= 0.5;
        }
        let head_slope = flow / (gas::density(state.datum, temperature) * area * area);
        let slope = found
            .map_or(head_slope, |fall| fall.by_flow)
            .max(LEAST_HEADS * head_slope);
        system.reference_slope[branch] = slope;
        system.reference_curvature[branch] = 0.5 * slope / flow;
        // A square law's chord is half its tangent.
        let conductance = 2.0 / slope;
        system.branches[branch] = match conditions.given(branch) {
            Some(given) => BranchState::given(given, 0.0),
            None => BranchState {
                forward: true,
                by_upstream: conductance,
                by_downstream: conductance,
                ..BranchState::default()
            },
        };
    }
    system.forget_legs(model);
    system.assemble(model, conditions, &state);
    if system.step().is_ok() {
        system.apply(&mut state, 1.0);
    }
    state
}
