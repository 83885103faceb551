//! Pressure budgets: what a path loses, item by item, from its source to its port.

use super::{BudgetItem, Path};
use crate::branch::{AT_END, Arriving, Fall};
use crate::draw::{Drawn, Snapshot};
use crate::model::{LegEnd, Model};

/// An item's place: branch or node, and position among its losses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// A loss of a branch, by position in the study.
    Loss(usize, u32),
    /// The velocity head lost where a branch ends.
    Exit(usize),
    /// The shock behind a choked section of a branch.
    Shock(usize),
    /// What a blower adds.
    Blower(usize),
    /// What a node's legs cost on the way through it.
    Node(usize),
}

/// One branch's losses in one snapshot, in the direction of flow.
pub fn branch_items(model: &Model, snapshot: &Snapshot, branch: usize) -> Vec<(Place, Fall)> {
    let own = &snapshot.branches[branch];
    let ends = &model.branches[branch];
    let (chain, chamber, up) = if own.forward {
        (&ends.forward, ends.chamber_at_to, ends.from)
    } else {
        (&ends.reversed, ends.chamber_at_from, ends.to)
    };
    let state = &snapshot.state;
    let leg = LegEnd {
        branch,
        at_to: !own.forward,
    };
    if model.blowers.contains(&branch) {
        let other = LegEnd {
            at_to: own.forward,
            ..leg
        };
        let fall = Fall {
            fall: leg_gauge(model, snapshot, leg) - leg_gauge(model, snapshot, other),
            ..Fall::default()
        };
        return vec![(Place::Blower(branch), fall)];
    }
    let leaving = ends.passage.map_or(f64::NAN, |passage| state.exit[passage]);
    let air = Arriving::new(
        state.datum + leg_gauge(model, snapshot, leg),
        state.temperature[up],
        state.flow[branch].abs(),
    )
    .leaving_at(leaving);
    let mut items = Vec::with_capacity(chain.elements.len() + 2);
    // The state has been solved, so the chain carries its flow.
    let _ = chain.visit(air, chamber, |position, part| {
        let place = chain
            .origins
            .get(position)
            .filter(|origin| origin.loss != AT_END)
            .map_or(Place::Exit(branch), |origin| {
                Place::Loss(branch, origin.loss)
            });
        items.push((place, *part));
    });
    if !own.choked
        && let Some((_, last)) = items.last_mut()
    {
        last.fall += own.shock;
    }
    if own.choked {
        items.push((
            Place::Shock(branch),
            Fall {
                fall: own.shock,
                mach_square: 1.0,
                ..Fall::default()
            },
        ));
    }
    items
}

/// Pressure of a branch's leg at one end, above the datum [Pa].
pub fn leg_gauge(model: &Model, snapshot: &Snapshot, leg: LegEnd) -> f64 {
    let ends = &model.branches[leg.branch];
    let node = if leg.at_to { ends.to } else { ends.from };
    snapshot.state.gauge[node] - leg_loss(model, snapshot, node, leg)
}

fn leg_loss(model: &Model, snapshot: &Snapshot, node: usize, leg: LegEnd) -> f64 {
    let position = model.nodes[node]
        .legs
        .iter()
        .position(|other| *other == leg);
    position
        .and_then(|position| snapshot.leg_losses[node].get(position))
        .copied()
        .unwrap_or(0.0)
}

/// The way upstream from a port by the leg that brings most air, ties by id; from source to port.
pub fn upstream_path(model: &Model, snapshot: &Snapshot, port: usize) -> Vec<LegEnd> {
    let mut path = Vec::new();
    let mut node = port;
    let mut seen = vec![false; model.nodes.len()];
    while !seen[node] {
        seen[node] = true;
        let flow_in = |leg: &LegEnd| leg.flow_into(&snapshot.state.flow);
        let arriving = model.nodes[node]
            .legs
            .iter()
            .filter(|leg| flow_in(leg) > 0.0);
        let Some(leg) = arriving.max_by(|a, b| {
            let by_flow = flow_in(a).total_cmp(&flow_in(b));
            by_flow.then_with(|| {
                model.branches[b.branch]
                    .id
                    .cmp(&model.branches[a.branch].id)
            })
        }) else {
            break;
        };
        path.push(*leg);
        let ends = &model.branches[leg.branch];
        node = if leg.at_to { ends.from } else { ends.to };
    }
    path.reverse();
    path
}

/// Items along a path in one snapshot; `leg.at_to` tells the end the air leaves by.
pub fn path_items(model: &Model, snapshot: &Snapshot, path: &[LegEnd]) -> Vec<(Place, f64)> {
    let mut items = Vec::new();
    for leg in path {
        let ends = &model.branches[leg.branch];
        let (up, down) = if leg.at_to {
            (ends.from, ends.to)
        } else {
            (ends.to, ends.from)
        };
        let upstream = LegEnd {
            branch: leg.branch,
            at_to: !leg.at_to,
        };
        if !snapshot.leg_losses[up].is_empty() {
            items.push((Place::Node(up), leg_loss(model, snapshot, up, upstream)));
        }
        items.extend(
            branch_items(model, snapshot, leg.branch)
                .into_iter()
                .map(|(place, part)| (place, part.fall)),
        );
        if !snapshot.leg_losses[down].is_empty() {
            items.push((Place::Node(down), -leg_loss(model, snapshot, down, *leg)));
        }
    }
    items
}

/// A port's budget, mean over the snapshots in which it draws, in order of the first path met.
pub struct Budget {
    /// Items in order.
    pub items: Vec<(Place, f64)>,
    /// Source minus port [Pa], mean as well.
    pub fall: f64,
    /// Largest |sum of items - fall| of a snapshot [Pa].
    pub closure: f64,
    /// Branches on the way.
    pub branches: Vec<usize>,
}

/// Gathers a port's budget.
pub fn budget(drawn: &Drawn<'_>, port: usize) -> Budget {
    let model = drawn.model;
    let node = model.ports[port].node;
    let mut budget = Budget {
        items: Vec::new(),
        fall: 0.0,
        closure: 0.0,
        branches: Vec::new(),
    };
    for (position, weight) in &drawn.port_snapshots[port] {
        let snapshot = &drawn.snapshots[*position];
        let path = upstream_path(model, snapshot, node);
        let items = path_items(model, snapshot, &path);
        let top = path.first().map_or(node, |leg| {
            let ends = &model.branches[leg.branch];
            if leg.at_to { ends.from } else { ends.to }
        });
        let fall = snapshot.state.gauge[top] - snapshot.state.gauge[node];
        let sum: f64 = items.iter().map(|(_, lost)| lost).sum();
        budget.closure = budget.closure.max((fall - sum).abs());
        budget.fall += weight * fall;
        for (place, lost) in items {
            match budget.items.iter_mut().find(|(other, _)| *other == place) {
                Some((_, sum)) => *sum += weight * lost,
                None => budget.items.push((place, weight * lost)),
            }
        }
        for leg in path {
            if !budget.branches.contains(&leg.branch) {
                budget.branches.push(leg.branch);
            }
        }
    }
    budget
}

/// Words for a place.
pub struct Labels<'s> {
    /// Loss labels by branch and position.
    pub losses: Vec<Vec<&'static str>>,
    /// Node labels.
    pub nodes: Vec<&'s str>,
    /// The model that the places refer to.
    pub model: &'s Model,
}

impl Labels<'_> {
    /// Element id, loss position and words of a place.
    pub fn item(&self, place: Place) -> (String, Option<u32>, String) {
        let branch_id = |branch: usize| self.model.branches[branch].id.clone();
        match place {
            Place::Loss(branch, loss) => {
                let label = self
                    .losses
                    .get(branch)
                    .and_then(|labels| labels.get(loss as usize))
                    .copied()
                    .unwrap_or("loss");
                (branch_id(branch), Some(loss), label.to_owned())
            }
            Place::Exit(branch) => (
                branch_id(branch),
                None,
                "velocity head lost at the end".to_owned(),
            ),
            Place::Blower(branch) => (branch_id(branch), None, "blower".to_owned()),
            Place::Shock(branch) => (
                branch_id(branch),
                None,
                "shock behind the choked section".to_owned(),
            ),
            Place::Node(node) => {
                let id = &self.model.nodes[node].id;
                (
                    id.clone(),
                    None,
                    format!(
                        "{} {id}",
                        self.nodes.get(node).copied().unwrap_or("junction")
                    ),
                )
            }
        }
    }

    /// A port's path in words.
    pub fn path(&self, budget: &Budget, port: usize, cylinder: &str, bridges: &[usize]) -> Path {
        let items = budget
            .items
            .iter()
            .map(|(place, fall)| {
                let (element, loss, label) = self.item(*place);
                BudgetItem {
                    element,
                    loss,
                    label,
                    fall: *fall,
                }
            })
            .collect();
        Path {
            port: self.model.nodes[self.model.ports[port].node].id.clone(),
            cylinder: cylinder.to_owned(),
            items,
            fall: budget.fall,
            other_ways: budget
                .branches
                .iter()
                .any(|branch| !bridges.contains(branch)),
        }
    }
}
