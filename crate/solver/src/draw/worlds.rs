//! A draw solved again and again with other errors in its laws, in numbers only.

use super::Refused;
use super::bench;
use super::events::Interval;
use super::operating::{Operating, operating};
use super::range::anew;
use super::running::{Cycle, Tables, intervals};
use crate::answer::Draw;
use crate::junction::Junction;
use crate::model::{Model, Purpose};
use crate::solve::{Conditions, Flowing, Solver, System};
use crate::study::Study;

/// A draw of one study, ready for changes of its model.
pub struct Redrawn {
    /// The model with every law as published.
    pub published: Model,
    /// Air of each cylinder with every law as published [kg/s].
    pub as_published: Vec<f64>,
    /// The model that is solved; its pattern must stay.
    pub model: Model,
    /// By node and leg, the part of the entering head that a plenum's leg feels beyond what the model says [-].
    pub felt: Vec<Vec<f64>>,
    kind: Kind,
}

enum Kind {
    Bench {
        networks: Vec<Network>,
        /// There but while it is in use.
        system: Option<Box<System>>,
    },
    Running {
        operating: Box<Operating>,
        intervals: Vec<Interval>,
        states: Vec<Option<Flowing>>,
        /// By interval.
        heads: Vec<Vec<EnteringHead>>,
        values: Vec<f64>,
        /// There but while they are in use.
        tables: Option<Box<Tables>>,
    },
}

/// One steady network of the bench.
struct Network {
    conditions: Conditions,
    /// Ports that are open in it.
    ports: Vec<usize>,
    /// Its state with every law as published.
    state: Flowing,
    heads: Vec<EnteringHead>,
}

/// What a leg out of a plenum would gain if it felt all of the head that enters.
///
/// Taken from the state with every law as published: as an unknown of each world's own equations it led
/// Newton's method astray in one world in twenty, wherever a window's flow turns.
struct EnteringHead {
    node: usize,
    leg: usize,
    /// [Pa].
    head: f64,
}

impl Redrawn {
    /// Solves a checked study's draw with every law as published; nothing when the study lacks what it needs.
    ///
    /// # Errors
    /// Why the draw has no answer.
    pub fn new(study: &Study, draw: Draw) -> Result<Option<Self>, Refused> {
        let model = Model::new(study, Purpose::of(draw));
        let (as_published, kind) = match draw {
            Draw::BenchOneAtATime | Draw::BenchAllOpen => {
                let all = draw == Draw::BenchAllOpen;
                bench_kind(study, &model, all)?
            }
            Draw::Running | Draw::CycleMean => {
                let Ok(operating) = operating(study) else {
                    return Ok(None);
                };
                running_kind(operating, &model, draw == Draw::CycleMean)?
            }
        };
        let nodes = model.nodes.iter();
        Ok(Some(Self {
            as_published,
            felt: nodes.map(|node| vec![0.0; node.legs.len()]).collect(),
            published: model.clone(),
            model,
            kind,
        }))
    }

    /// Air of each cylinder with the model as it is now [kg/s]; nothing when it has no state.
    pub fn flows(&mut self) -> Option<Vec<f64>> {
        match &mut self.kind {
            Kind::Bench { networks, system } => {
                let system_of = system.take()?;
                let mut solver = Solver::again(&self.model, *system_of);
                let mut flows = vec![0.0; self.as_published.len()];
                let mut solved = true;
                for network in networks {
                    solver.system.lifts = lifts(&self.model, &network.heads, &self.felt);
                    let state = solver.solve(&network.conditions, Some(&network.state));
                    let Ok(state) = state else {
                        solved = false;
                        break;
                    };
                    add_flows(&mut flows, &self.model, &network.ports, &state);
                }
                *system = Some(Box::new(solver.system));
                solved.then_some(flows)
            }
            Kind::Running {
                operating,
                intervals,
                states,
                heads,
                values,
                tables,
            } => {
                let mut cycle = Cycle::with(
                    &self.model,
                    operating,
                    intervals,
                    tables.take().map(|tables| *tables),
                );
                cycle.states.clone_from(states);
                cycle.values.clone_from(values);
                let heads = heads.iter();
                cycle.lifts = heads
                    .map(|heads| lifts(&self.model, heads, &self.felt))
                    .collect();
                let flows = cycle.agree(false).ok().map(|()| cycle.flows().to_vec());
                *tables = Some(Box::new(cycle.into_tables()));
                flows
            }
        }
    }
}

fn add_flows(flows: &mut [f64], model: &Model, ports: &[usize], state: &Flowing) {
    for port in ports {
        let port = &model.ports[*port];
        flows[port.cylinder] += model.inflow(port.node, &state.flow);
    }
}

fn bench_kind(study: &Study, model: &Model, all: bool) -> Result<(Vec<f64>, Kind), Refused> {
    let mut flows = vec![0.0; study.engine.cylinders.len()];
    let mut solver = Solver::new(model, false);
    let mut networks = Vec::new();
    for ports in bench::open_ports(model, all) {
        let (conditions, state) = bench::solve(&mut solver, &study.settings.bench, &ports)?;
        add_flows(&mut flows, model, &ports, &state);
        networks.push(Network {
            heads: entering_heads(model, &state),
            conditions,
            ports,
            state,
        });
    }
    let system = Some(Box::new(solver.system));
    Ok((flows, Kind::Bench { networks, system }))
}

fn running_kind(
    operating: Operating,
    model: &Model,
    at_mean: bool,
) -> Result<(Vec<f64>, Kind), Refused> {
    let intervals = intervals(&operating, at_mean);
    let (cycle, numbers) = anew(model, &operating, &intervals)?;
    let (states, values) = (cycle.states.clone(), cycle.values.clone());
    let found = states.iter();
    let heads = found.map(|state| {
        let state = state.as_ref();
        state.map_or(Vec::new(), |state| entering_heads(model, state))
    });
    let heads = heads.collect();
    let tables = Some(Box::new(cycle.into_tables()));
    let kind = Kind::Running {
        operating: Box::new(operating),
        intervals,
        states,
        heads,
        values,
        tables,
    };
    Ok((numbers.flows, kind))
}

fn entering_heads(model: &Model, state: &Flowing) -> Vec<EnteringHead> {
    let mut heads = Vec::new();
    for (node, at) in model.nodes.iter().enumerate() {
        let Some(junction @ Junction::Jets(_)) = &at.junction else {
            continue;
        };
        let legs = at.legs.iter();
        let flows: Vec<f64> = legs.map(|leg| leg.flow_into(&state.flow)).collect();
        let doubts = junction.doubts(state.pressure(node), state.temperature[node], &flows);
        for (leg, doubt) in doubts.iter().enumerate() {
            let head = -doubt.by_number[leg];
            if head != 0.0 {
                heads.push(EnteringHead { node, leg, head });
            }
        }
    }
    heads
}

/// What a network's legs gain, see `System::lifts`.
fn lifts(model: &Model, heads: &[EnteringHead], felt: &[Vec<f64>]) -> Vec<[f64; 2]> {
    let mut lifts = vec![[0.0; 2]; model.branches.len()];
    for EnteringHead { node, leg, head } in heads {
        let end = model.nodes[*node].legs[*leg];
        lifts[end.branch][usize::from(end.at_to)] = felt[*node][*leg] * head;
    }
    lifts
}
