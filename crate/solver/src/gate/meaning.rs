//! What a study's values say together: ids, ends, legs, losses where they belong, air that can flow.

use std::collections::BTreeMap;

use super::names::{self, Ends};
use crate::error::{StudyError, StudyErrorKind as Kind};
use crate::graph;
use crate::law::cooler::two_point_fit;
use crate::study::{Branch, Leg, Loss, Node, NodeKind, Reference, Study};

/// Everything that the study's values contradict.
pub fn check(study: &Study) -> Vec<StudyError> {
    let mut errors = Errors(Vec::new());
    let nodes = study.network.positions();
    names(study, &mut errors);
    engine(study, &nodes, &mut errors);
    for branch in &study.network.branches {
        ends(branch, &nodes, study, &mut errors);
        losses(branch, &nodes, study, &mut errors);
    }
    let counts = count_legs(study, &nodes);
    for node in &study.network.nodes {
        legs(node, counts[nodes[node.id.as_str()]], &mut errors);
    }
    if errors.0.is_empty() {
        air(study, &nodes, &mut errors);
    }
    errors.0
}

struct Errors(Vec<StudyError>);

impl Errors {
    fn say(&mut self, kind: Kind, element: &str, field: &str, message: impl Into<String>) {
        self.0.push(StudyError {
            kind,
            element: element.to_owned(),
            field: field.to_owned(),
            message: message.into(),
        });
    }
}

fn names(study: &Study, errors: &mut Errors) {
    let nodes = study.network.nodes.iter().map(|node| node.id.as_str());
    let branches = study.network.branches.iter().map(|branch| Ends {
        id: &branch.id,
        from: Some(&branch.from),
        to: Some(&branch.to),
    });
    let found = names::check(&nodes.collect::<Vec<_>>(), &branches.collect::<Vec<_>>());
    errors.0.extend(found);
}

fn engine(study: &Study, nodes: &BTreeMap<&str, usize>, errors: &mut Errors) {
    let engine = &study.engine;
    let mut cylinders = BTreeMap::new();
    for (position, cylinder) in engine.cylinders.iter().enumerate() {
        if cylinders.insert(cylinder.id.as_str(), position).is_some() {
            let message = "two cylinders have this id";
            errors.say(Kind::DuplicateId, &cylinder.id, "id", message);
        }
    }
    let mut fired = vec![false; engine.cylinders.len()];
    for id in &engine.firing_order {
        match cylinders.get(id.as_str()) {
            None => {
                let message = format!("no cylinder is called {id}");
                errors.say(Kind::UnknownId, "engine", "firingOrder", message);
            }
            Some(cylinder) if fired[*cylinder] => {
                let message = format!("cylinder {id} stands in it twice");
                errors.say(Kind::Contradiction, "engine", "firingOrder", message);
            }
            Some(cylinder) => fired[*cylinder] = true,
        }
    }
    let left_out = cylinders.values().any(|cylinder| !fired[*cylinder]);
    if fired.contains(&true) && left_out {
        let message = "leaves out a cylinder; name all or none";
        errors.say(Kind::Contradiction, "engine", "firingOrder", message);
    }
    if let Reference::Node { node } = &engine.reference
        && !nodes.contains_key(node.as_str())
    {
        let message = format!("no node is called {node}");
        errors.say(Kind::UnknownId, "engine", "reference.node", message);
    }
    let mut fed = vec![false; engine.cylinders.len()];
    for node in &study.network.nodes {
        if let NodeKind::Port { cylinder, .. } = &node.kind {
            if let Some(cylinder) = cylinders.get(cylinder.as_str()) {
                fed[*cylinder] = true;
            } else {
                let message =
                    format!("no cylinder is called {cylinder}; add it to the engine's cylinders");
                errors.say(Kind::UnknownId, &node.id, "cylinder", message);
            }
        }
    }
    for cylinder in &engine.cylinders {
        if !fed[cylinders[cylinder.id.as_str()]] {
            let message = "no port feeds this cylinder; add one or remove the cylinder";
            errors.say(Kind::Unreachable, &cylinder.id, "", message);
        }
    }
}

fn kind_of<'s>(id: &str, nodes: &BTreeMap<&str, usize>, study: &'s Study) -> Option<&'s NodeKind> {
    nodes
        .get(id)
        .map(|position| &study.network.nodes[*position].kind)
}

fn has_legs(kind: &NodeKind) -> bool {
    matches!(
        kind,
        NodeKind::Header { .. } | NodeKind::Tee { .. } | NodeKind::Wye { .. }
    )
}

fn ends(branch: &Branch, nodes: &BTreeMap<&str, usize>, study: &Study, errors: &mut Errors) {
    for (id, leg_field, leg) in [
        (&branch.from, "fromLeg", branch.from_leg),
        (&branch.to, "toLeg", branch.to_leg),
    ] {
        let Some(kind) = kind_of(id, nodes, study) else {
            continue;
        };
        match (has_legs(kind), leg) {
            (true, None) => {
                errors.say(
                    Kind::Junction,
                    &branch.id,
                    leg_field,
                    format!("say whether this is a run or a side leg of {id}"),
                );
            }
            (false, Some(_)) => {
                errors.say(
                    Kind::Junction,
                    &branch.id,
                    leg_field,
                    format!("{id} has no run and side legs; leave this out"),
                );
            }
            _ => {}
        }
    }
    if branch.from == branch.to {
        errors.say(
            Kind::Misplaced,
            &branch.id,
            "to",
            "a branch needs two different ends",
        );
    }
    if branch.jet_fraction.is_some()
        && !matches!(
            kind_of(&branch.from, nodes, study),
            Some(NodeKind::Plenum {}) | None
        )
    {
        errors.say(
            Kind::Misplaced,
            &branch.id,
            "jetFraction",
            "only a branch that leaves a plenum can feel a jet in it",
        );
    }
}

fn is_entry(loss: &Loss) -> bool {
    matches!(
        loss,
        Loss::EntrySharp { .. }
            | Loss::EntryRounded { .. }
            | Loss::EntryFlared { .. }
            | Loss::EntryReentrant { .. }
    )
}

fn losses(branch: &Branch, nodes: &BTreeMap<&str, usize>, study: &Study, errors: &mut Errors) {
    if branch.losses.is_empty() {
        errors.say(
            Kind::Missing,
            &branch.id,
            "losses",
            "a branch needs at least one loss: it gives its section",
        );
    }
    for (position, loss) in branch.losses.iter().enumerate() {
        let field = format!("losses[{position}]");
        if is_entry(loss) {
            entry(branch, position, nodes, study, errors);
        }
        if let Loss::Core {
            flow_1,
            drop_1,
            flow_2,
            drop_2,
            ..
        } = *loss
            && let Err(reason) = two_point_fit::fit(flow_1, drop_1, flow_2, drop_2)
        {
            errors.say(Kind::Contradiction, &branch.id, &field, reason);
        }
        if let Loss::Throttle {
            angle,
            closed_angle,
            ..
        } = *loss
            && angle < closed_angle
        {
            let message =
                "the plate cannot stand nearer to the bore's plane than when it is closed";
            errors.say(
                Kind::Contradiction,
                &branch.id,
                &format!("{field}.angle"),
                message,
            );
        }
    }
}

/// An entry stands at the end of a branch that begins in a chamber, and nowhere else.
fn entry(
    branch: &Branch,
    position: usize,
    nodes: &BTreeMap<&str, usize>,
    study: &Study,
    errors: &mut Errors,
) {
    let field = format!("losses[{position}]");
    if position != 0 {
        errors.say(
            Kind::Misplaced,
            &branch.id,
            &field,
            "an entry loss belongs at the start of its branch",
        );
        return;
    }
    // A header counts the loss of the arriving head only; the edge of a side leg is a loss of its own.
    let counted = match kind_of(&branch.from, nodes, study) {
        Some(NodeKind::Tee { .. } | NodeKind::Wye { .. }) => true,
        Some(NodeKind::Header { .. }) => branch.from_leg == Some(Leg::Run),
        _ => false,
    };
    if counted {
        let message = format!(
            "the loss of leaving {} is already counted there; remove this entry loss",
            branch.from
        );
        errors.say(Kind::Misplaced, &branch.id, &field, message);
    }
}

/// How many run and side legs each node has.
fn count_legs(study: &Study, nodes: &BTreeMap<&str, usize>) -> Vec<(u32, u32)> {
    let mut counts = vec![(0, 0); study.network.nodes.len()];
    for branch in &study.network.branches {
        for (end, leg) in [(&branch.from, branch.from_leg), (&branch.to, branch.to_leg)] {
            let Some(node) = nodes.get(end.as_str()) else {
                continue;
            };
            match leg {
                Some(Leg::Run) => counts[*node].0 += 1,
                Some(Leg::Side) => counts[*node].1 += 1,
                None => {}
            }
        }
    }
    counts
}

fn legs(node: &Node, (runs, sides): (u32, u32), errors: &mut Errors) {
    let complaint = match node.kind {
        NodeKind::Header { .. } if !(1..=2).contains(&runs) => Some(format!(
            "a header has one or two run legs, this one has {runs}"
        )),
        NodeKind::Tee { .. } | NodeKind::Wye { .. } if runs != 2 || sides != 1 => Some(format!(
            "a tee or wye has two run legs and one side leg, this one has {runs} and {sides}"
        )),
        _ => None,
    };
    if let Some(message) = complaint {
        errors.say(Kind::Junction, &node.id, "", message);
    }
}

fn air(study: &Study, nodes: &BTreeMap<&str, usize>, errors: &mut Errors) {
    let has =
        |wanted: fn(&NodeKind) -> bool| study.network.nodes.iter().any(|node| wanted(&node.kind));
    if !has(|kind| matches!(kind, NodeKind::Source { .. })) {
        errors.say(
            Kind::Unreachable,
            "",
            "network.nodes",
            "no source: add a node where air enters",
        );
    }
    if !has(|kind| matches!(kind, NodeKind::Port { .. })) {
        errors.say(
            Kind::Unreachable,
            "",
            "network.nodes",
            "no port: add a node where air leaves the manifold",
        );
    }
    let edges: Vec<(usize, usize)> = study
        .network
        .branches
        .iter()
        .map(|branch| (nodes[branch.from.as_str()], nodes[branch.to.as_str()]))
        .collect();
    let shape = graph::shape(&study.network, &edges);
    for port in shape.unreached_ports {
        let id = &study.network.nodes[port].id;
        errors.say(
            Kind::Unreachable,
            id,
            "",
            "no air can reach this port; connect it to a source",
        );
    }
    for node in shape.islands {
        let id = &study.network.nodes[node].id;
        errors.say(
            Kind::Unreachable,
            id,
            "",
            "no source reaches this node; connect it or remove it",
        );
    }
}
