//! What a study's values say together: ids, ends, legs, losses where they belong, air that can flow.

mod equipment;

use std::collections::BTreeMap;

use super::MOST_ERRORS;
use super::names::{self, Ends};
use crate::catalogue::{FieldInfo, catalogue};
use crate::error::{StudyError, StudyErrorKind as Kind};
use crate::graph;
use crate::law::cooler::two_point_fit;
use crate::study::{
    Branch, Leg, Loss, Node, NodeKind, Reference, Station, StationBend, Study, Valve,
};

/// Everything that the study's values contradict.
pub fn check(study: &Study) -> Vec<StudyError> {
    let mut gate = Gate {
        study,
        positions: study.network.positions(),
        errors: Vec::new(),
    };
    gate.names();
    gate.engine();
    gate.sources();
    gate.coolers();
    gate.readings();
    for branch in &study.network.branches {
        gate.ends(branch);
        match &branch.blower {
            Some(blower) => gate.blower(branch, blower),
            None => gate.losses(branch),
        }
    }
    gate.legs();
    if gate.errors.is_empty() {
        gate.air();
        gate.sides();
    }
    gate.errors
}

struct Gate<'s> {
    study: &'s Study,
    /// Position of every node by its id.
    positions: BTreeMap<&'s str, usize>,
    errors: Vec<StudyError>,
}

impl<'s> Gate<'s> {
    fn say(&mut self, kind: Kind, element: &str, field: &str, message: &str) {
        if self.errors.len() >= MOST_ERRORS {
            return;
        }
        self.errors.push(StudyError {
            kind,
            element: element.to_owned(),
            field: field.to_owned(),
            message: message.to_owned(),
        });
    }

    // Not inlined: each caller would bring its own search.
    #[inline(never)]
    fn position(&self, id: &str) -> Option<usize> {
        self.positions.get(id).copied()
    }

    fn kind_of(&self, id: &str) -> Option<&'s NodeKind> {
        let position = self.position(id)?;
        Some(&self.study.network.nodes[position].kind)
    }

    /// A bench that sucks leaves some pressure behind the port.
    fn readings(&mut self) {
        let bench = &self.study.settings.bench;
        for (place, reading) in bench.readings.iter().enumerate() {
            let room = reading.pressure.unwrap_or(bench.ambient_pressure);
            if !bench.blowing && reading.depression >= room {
                let field = format!("bench.readings[{place}].depression");
                let message = "is not below the pressure of the room";
                self.say(Kind::Contradiction, "settings", &field, message);
            }
        }
    }

    fn names(&mut self) {
        let network = &self.study.network;
        let nodes = network.nodes.iter().map(|node| node.id.as_str());
        let branches = network.branches.iter().map(|branch| Ends {
            id: &branch.id,
            from: Some(&branch.from),
            to: Some(&branch.to),
        });
        let (nodes, branches): (Vec<_>, Vec<_>) = (nodes.collect(), branches.collect());
        self.errors.extend(names::check(&nodes, &branches));
    }

    fn engine(&mut self) {
        let engine = &self.study.engine;
        let mut cylinders = BTreeMap::new();
        for (position, cylinder) in engine.cylinders.iter().enumerate() {
            if cylinders.insert(cylinder.id.as_str(), position).is_some() {
                let message = "two cylinders have this id";
                self.say(Kind::DuplicateId, &cylinder.id, "id", message);
            }
        }
        self.firing_order(&cylinders);
        self.operating();
        if let Reference::Node { node } = &engine.reference
            && self.position(node).is_none()
        {
            let message = format!("no node is called {node}");
            self.say(Kind::UnknownId, "engine", "reference.node", &message);
        }
        self.ports(&cylinders);
    }

    /// Every cylinder stands in it once, or none at all; `cylinders` are their positions by id.
    fn firing_order(&mut self, cylinders: &BTreeMap<&str, usize>) {
        let engine = &self.study.engine;
        let mut fired = vec![false; engine.cylinders.len()];
        let mut say = |kind: Kind, message: &str| self.say(kind, "engine", "firingOrder", message);
        for id in &engine.firing_order {
            match cylinders.get(id.as_str()) {
                None => say(Kind::UnknownId, &format!("no cylinder is called {id}")),
                Some(cylinder) if fired[*cylinder] => {
                    let message = format!("cylinder {id} stands in it twice");
                    say(Kind::Contradiction, &message);
                }
                Some(cylinder) => fired[*cylinder] = true,
            }
        }
        if fired.contains(&true) && cylinders.values().any(|cylinder| !fired[*cylinder]) {
            let message = "leaves out a cylinder; name all or none";
            say(Kind::Contradiction, message);
        }
    }

    /// Every port feeds a cylinder and every cylinder has a port; `cylinders` as above.
    fn ports(&mut self, cylinders: &BTreeMap<&str, usize>) {
        let engine = &self.study.engine;
        let mut fed = vec![false; engine.cylinders.len()];
        for node in &self.study.network.nodes {
            let NodeKind::Port {
                cylinder, valve, ..
            } = &node.kind
            else {
                continue;
            };
            if let Some(valve) = valve {
                self.valve(&node.id, valve);
            }
            if let Some(position) = cylinders.get(cylinder.as_str()) {
                fed[*position] = true;
            } else {
                let message =
                    format!("no cylinder is called {cylinder}; add it to the engine's cylinders");
                self.say(Kind::UnknownId, &node.id, "cylinder", &message);
            }
        }
        for cylinder in &engine.cylinders {
            if !fed[cylinders[cylinder.id.as_str()]] {
                let message = "no port feeds this cylinder; add one or remove the cylinder";
                self.say(Kind::Unreachable, &cylinder.id, "", message);
            }
        }
    }

    /// A valve's coefficient is given once, its table rises, its stem leaves some throat.
    fn valve(&mut self, port: &str, valve: &Valve) {
        let table = &valve.discharge_table;
        if valve.discharge_coefficient.is_some() && !table.is_empty() {
            let message = "give the discharge coefficient as a number or as a table, not both";
            self.say(Kind::Contradiction, port, "valve.dischargeTable", message);
        }
        let rises = table.windows(2).all(|pair| pair[0][0] < pair[1][0]);
        let fields = catalogue().valve_curve.fields;
        let believed =
            |(number, info): (&f64, &FieldInfo)| (info.minimum..=info.maximum).contains(number);
        if !rises
            || !table
                .iter()
                .flat_map(|pair| pair.iter().zip(fields))
                .all(believed)
        {
            let message = "pairs of lift over diameter, rising, and a coefficient from 0.01 to 1";
            self.say(Kind::Contradiction, port, "valve.dischargeTable", message);
        }
        let stem = valve.stem_diameter.unwrap_or(0.0);
        if valve.throat_diameter.is_some_and(|throat| throat <= stem) {
            let message = "the stem leaves no throat";
            self.say(Kind::Contradiction, port, "valve.stemDiameter", message);
        }
    }

    fn ends(&mut self, branch: &Branch) {
        for (id, leg_field, leg) in [
            (&branch.from, "fromLeg", branch.from_leg),
            (&branch.to, "toLeg", branch.to_leg),
        ] {
            let Some(kind) = self.kind_of(id) else {
                continue;
            };
            let message = match (has_legs(kind), leg) {
                (true, None) => format!("say whether this is a run or a side leg of {id}"),
                (false, Some(_)) => format!("{id} has no run and side legs; leave this out"),
                _ => continue,
            };
            self.say(Kind::Junction, &branch.id, leg_field, &message);
        }
        if branch.from == branch.to {
            let message = "a branch needs two different ends";
            self.say(Kind::Misplaced, &branch.id, "to", message);
        }
        self.jet(branch);
    }

    /// A jet is felt by a branch that leaves a plenum, and told in one way.
    fn jet(&mut self, branch: &Branch) {
        let given = [
            ("jetFraction", branch.jet_fraction),
            ("jetDistance", branch.jet_distance),
            ("jetOffset", branch.jet_offset),
            ("jetAngle", branch.jet_angle),
        ];
        let mut given = given.into_iter().filter(|(_, number)| number.is_some());
        let Some((field, _)) = given.next() else {
            return;
        };
        let beside_plenum = |kind: &NodeKind| !matches!(kind, NodeKind::Plenum { .. });
        if self.kind_of(&branch.from).is_some_and(beside_plenum) {
            let message = "only a branch that leaves a plenum can feel a jet in it";
            self.say(Kind::Misplaced, &branch.id, field, message);
        }
        if branch.jet_fraction.is_some() && branch.jet_distance.is_some() {
            let message = "the jet is told twice; keep its fraction or where the mouth lies";
            self.say(Kind::Contradiction, &branch.id, "jetDistance", message);
        }
        let placed = branch.jet_offset.is_some() || branch.jet_angle.is_some();
        if placed && branch.jet_distance.is_none() {
            let message = "tell how far the mouth is from the jet, too";
            self.say(Kind::Missing, &branch.id, "jetDistance", message);
        }
    }

    fn losses(&mut self, branch: &Branch) {
        if branch.losses.is_empty() {
            let message = "a branch needs at least one loss: it gives its section";
            self.say(Kind::Missing, &branch.id, "losses", message);
        }
        for (position, loss) in branch.losses.iter().enumerate() {
            let field = || format!("losses[{position}]");
            if loss.is_entry() {
                self.entry(branch, position);
            }
            if let Loss::Schedule {
                stations, bends, ..
            } = loss
            {
                self.schedule(branch, position, stations, bends);
            }
            if let Loss::Core {
                cooler: Some(cooler),
                ..
            } = loss
            {
                self.passage(branch, position, cooler);
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
                self.say(Kind::Contradiction, &branch.id, &field(), &reason);
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
                let field = format!("{}.angle", field());
                self.say(Kind::Contradiction, &branch.id, &field, message);
            }
        }
    }

    /// A schedule has two stations at least, in order along the way, and its bends between them.
    fn schedule(
        &mut self,
        branch: &Branch,
        position: usize,
        stations: &[Station],
        bends: &[StationBend],
    ) {
        let (Some(first), Some(last)) = (stations.first(), stations.last()) else {
            let field = format!("losses[{position}].stations");
            let message = "a schedule needs two stations at least";
            return self.say(Kind::Missing, &branch.id, &field, message);
        };
        if stations.len() < 2 || last.at <= first.at {
            let field = format!("losses[{position}].stations");
            let message = "a schedule needs two stations at least, with some length between them";
            self.say(Kind::Missing, &branch.id, &field, message);
        }
        for (place, pair) in stations.windows(2).enumerate() {
            if pair[1].at < pair[0].at {
                let field = format!("losses[{position}].stations[{}].at", place + 1);
                let message = "lies before the station above it; put the stations in order";
                self.say(Kind::Contradiction, &branch.id, &field, message);
            }
        }
        for (place, bend) in bends.iter().enumerate() {
            if bend.at < first.at || bend.at > last.at {
                let field = format!("losses[{position}].bends[{place}].at");
                let message = "lies beyond the stations";
                self.say(Kind::Contradiction, &branch.id, &field, message);
            }
        }
    }

    /// An entry stands at the end of a branch that begins in a chamber, and nowhere else.
    fn entry(&mut self, branch: &Branch, position: usize) {
        let field = format!("losses[{position}]");
        if position != 0 {
            let message = "an entry loss belongs at the start of its branch";
            return self.say(Kind::Misplaced, &branch.id, &field, message);
        }
        // A header counts the loss of the arriving head only; the edge of a side leg is a loss of its own.
        let counted = match self.kind_of(&branch.from) {
            Some(NodeKind::Tee { .. } | NodeKind::Wye { .. }) => true,
            Some(NodeKind::Header { .. }) => branch.from_leg == Some(Leg::Run),
            _ => false,
        };
        if counted {
            let message = format!(
                "the loss of leaving {} is already counted there; remove this entry loss",
                branch.from
            );
            self.say(Kind::Misplaced, &branch.id, &field, &message);
        }
    }

    /// Headers, tees and wyes have the legs that they need.
    fn legs(&mut self) {
        let counts = self.count_legs();
        for node in &self.study.network.nodes {
            let count = self.position(&node.id).map(|position| counts[position]);
            if let Some(message) = leg_fault(node, count.unwrap_or_default()) {
                self.say(Kind::Junction, &node.id, "", &message);
            }
        }
    }

    /// How many run and side legs each node has.
    fn count_legs(&self) -> Vec<(u32, u32)> {
        let mut counts = vec![(0, 0); self.study.network.nodes.len()];
        for branch in &self.study.network.branches {
            for (end, leg) in [(&branch.from, branch.from_leg), (&branch.to, branch.to_leg)] {
                let Some(node) = self.position(end) else {
                    continue;
                };
                match leg {
                    Some(Leg::Run) => counts[node].0 += 1,
                    Some(Leg::Side) => counts[node].1 += 1,
                    None => {}
                }
            }
        }
        counts
    }

    /// Air comes in, goes out, and reaches every node. Asked only when all ends are known.
    fn air(&mut self) {
        let network = &self.study.network;
        let has =
            |wanted: fn(&NodeKind) -> bool| network.nodes.iter().any(|node| wanted(&node.kind));
        if !has(|kind| matches!(kind, NodeKind::Source { .. })) {
            let message = "no source: add a node where air enters";
            self.say(Kind::Unreachable, "", "network.nodes", message);
        }
        if !has(|kind| matches!(kind, NodeKind::Port { .. })) {
            let message = "no port: add a node where air leaves the manifold";
            self.say(Kind::Unreachable, "", "network.nodes", message);
        }
        let ends =
            |branch: &Branch| Some((self.position(&branch.from)?, self.position(&branch.to)?));
        let edges: Vec<(usize, usize)> = network.branches.iter().filter_map(ends).collect();
        let shape = graph::shape(network, &edges);
        for port in shape.unreached_ports {
            let message = "no air can reach this port; connect it to a source";
            self.say(Kind::Unreachable, &network.nodes[port].id, "", message);
        }
        for node in shape.islands {
            let message = "no source reaches this node; connect it or remove it";
            self.say(Kind::Unreachable, &network.nodes[node].id, "", message);
        }
    }
}

fn has_legs(kind: &NodeKind) -> bool {
    matches!(
        kind,
        NodeKind::Header { .. } | NodeKind::Tee { .. } | NodeKind::Wye { .. }
    )
}

fn leg_fault(node: &Node, (runs, sides): (u32, u32)) -> Option<String> {
    match node.kind {
        NodeKind::Header { .. } if !(1..=2).contains(&runs) => Some(format!(
            "a header has one or two run legs, this one has {runs}"
        )),
        NodeKind::Tee { .. } | NodeKind::Wye { .. } if runs != 2 || sides != 1 => Some(format!(
            "a tee or wye has two run legs and one side leg, this one has {runs} and {sides}"
        )),
        _ => None,
    }
}
