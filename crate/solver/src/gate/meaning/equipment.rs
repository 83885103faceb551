//! What sources, blower, charge coolers and the engine's own numbers say together.

use std::collections::BTreeSet;

use super::Gate;
use crate::error::StudyErrorKind as Kind;
use crate::exchange::whole_core;
use crate::graph;
use crate::law::blower::table::{GREATEST, Table};
use crate::study::{Blower, Branch, EfficiencyTable, Loss, NodeKind, Reference};

/// What the face fractions of a core's passages may add up to beyond one [-].
const ROUNDED: f64 = 1e-3;

/// Greatest volumetric efficiency of an engine, referred to ambient air under boost [-].
const MOST_BREATHING: f64 = 5.0;

impl Gate<'_> {
    /// Numbers of the engine that exclude each other.
    pub(super) fn operating(&mut self) {
        let engine = &self.study.engine;
        if let Some(table) = &engine.volumetric_table {
            let field = "volumetricTable";
            if engine.volumetric_efficiency.is_some() {
                let message = "give the volumetric efficiency as a number or as a table, not both";
                self.say(Kind::Contradiction, "engine", field, message);
            }
            if !table.ratios.is_empty() {
                let message = "the engine's table goes over speed alone; leave its ratios out";
                self.say(Kind::Contradiction, "engine", field, message);
            }
            self.table("engine", field, table, MOST_BREATHING);
        }
        if engine.bore.is_some() != engine.stroke.is_some() {
            let field = if engine.bore.is_none() {
                "bore"
            } else {
                "stroke"
            };
            let message = "bore and stroke give the swept volume together; give both or none";
            self.say(Kind::Missing, "engine", field, message);
        }
        if let (Some(from), Some(to)) = (engine.speed_from, engine.speed_to)
            && from >= to
        {
            let message = "the speed range ends below where it begins";
            self.say(Kind::Contradiction, "engine", "speedTo", message);
        }
    }

    fn table(&mut self, element: &str, field: &str, table: &EfficiencyTable, greatest: f64) {
        if let Some(fault) = Table::from(table).fault(greatest) {
            self.say(Kind::Contradiction, element, field, &fault);
        }
    }

    /// A source's pressure is given in one way.
    pub(super) fn sources(&mut self) {
        let nodes = &self.study.network.nodes;
        for node in nodes {
            let NodeKind::Source {
                pressure,
                boost,
                boost_node,
                ambient,
                ..
            } = &node.kind
            else {
                continue;
            };
            let ways = [pressure.is_some(), boost.is_some(), *ambient];
            if ways.iter().filter(|way| **way).count() > 1 {
                let message =
                    "its pressure is given twice; keep one of pressure, boost and ambient air";
                self.say(Kind::Contradiction, &node.id, "pressure", message);
            }
            self.boost(&node.id, "", *boost, boost_node.as_deref());
            let rival = nodes.iter().find(|other| match &other.kind {
                NodeKind::Source {
                    boost: other_boost,
                    boost_node: other_node,
                    ..
                } => other_node == boost_node && other_boost != boost,
                _ => false,
            });
            if let (Some(_), Some(_), Some(rival)) = (boost, boost_node, rival) {
                let message = format!(
                    "shares its boost node with {}, whose boost is another; give both the same",
                    rival.id
                );
                self.say(Kind::Contradiction, &node.id, "boost", &message);
            }
        }
    }

    /// A boost is read at a node that has a static pressure to read.
    fn boost(&mut self, element: &str, inside: &str, boost: Option<f64>, node: Option<&str>) {
        let field = format!("{inside}boostNode");
        let Some(id) = node else {
            if boost.is_some() {
                let message = "name the node where the boost is read, such as the plenum";
                self.say(Kind::Missing, element, &field, message);
            }
            return;
        };
        match self.kind_of(id) {
            None => {
                let message = format!("no node is called {id}");
                self.say(Kind::UnknownId, element, &field, &message);
            }
            Some(
                NodeKind::Plenum { .. }
                | NodeKind::Header { .. }
                | NodeKind::Tee { .. }
                | NodeKind::Wye { .. },
            ) => {}
            Some(_) => {
                let message = "a boost is read in a plenum, or in the run of a header, tee or wye";
                self.say(Kind::Misplaced, element, &field, message);
            }
        }
    }

    pub(super) fn blower(&mut self, branch: &Branch, blower: &Blower) {
        if !branch.losses.is_empty() {
            let message =
                "a blower's branch has no losses; put them in a branch before or behind it";
            self.say(Kind::Misplaced, &branch.id, "losses", message);
        }
        for (field, id) in [("from", &branch.from), ("to", &branch.to)] {
            let chamber = match self.kind_of(id) {
                Some(NodeKind::Source { .. }) => field == "from",
                Some(kind) => matches!(kind, NodeKind::Plenum { .. } | NodeKind::Joint {}),
                None => continue,
            };
            if !chamber {
                let message = "a blower stands between plenums or joints; it may begin at a source";
                self.say(Kind::Misplaced, &branch.id, field, message);
            }
        }
        let others = self.study.network.branches.iter();
        if others
            .filter(|other| other.blower.is_some() && other.to == branch.to)
            .count()
            > 1
        {
            let message =
                "two blowers end in one node; give each a plenum of its own and join them behind";
            self.say(Kind::Misplaced, &branch.id, "to", message);
        }
        let pulleys = (
            blower.crank_pulley.is_some(),
            blower.blower_pulley.is_some(),
        );
        if pulleys.0 != pulleys.1 {
            let message = "the two pulleys give the drive ratio together; give both or none";
            self.say(Kind::Missing, &branch.id, "blower.crankPulley", message);
        }
        let driven = [
            blower.drive_ratio.is_some(),
            pulleys.0 && pulleys.1,
            blower.boost.is_some(),
        ];
        if driven.iter().filter(|way| **way).count() > 1 {
            let message = "its drive is given twice; keep one of drive ratio, pulleys and boost";
            self.say(
                Kind::Contradiction,
                &branch.id,
                "blower.driveRatio",
                message,
            );
        }
        self.boost(
            &branch.id,
            "blower.",
            blower.boost,
            blower.boost_node.as_deref(),
        );
        for (number, table, field, greatest) in [
            (
                blower.volumetric_efficiency,
                &blower.volumetric_table,
                "blower.volumetricTable",
                GREATEST,
            ),
            (
                blower.isentropic_efficiency,
                &blower.isentropic_table,
                "blower.isentropicTable",
                1.0,
            ),
        ] {
            let Some(table) = table else { continue };
            if number.is_some() {
                let message = "give the efficiency as a number or as a table, not both";
                self.say(Kind::Contradiction, &branch.id, field, message);
            }
            self.table(&branch.id, field, table, greatest);
        }
    }

    /// Each charge cooler has passages that are parts of one core, and a measurement that a core can give.
    pub(super) fn coolers(&mut self) {
        let study = self.study;
        for (position, cooler) in study.coolers.iter().enumerate() {
            let earlier = &study.coolers[..position];
            if earlier.iter().any(|other| other.id == cooler.id) {
                let message = "two charge coolers have this id";
                self.say(Kind::DuplicateId, &cooler.id, "id", message);
            }
            if let Err(reason) = whole_core(cooler) {
                self.say(Kind::Contradiction, &cooler.id, "effectiveness", &reason);
            }
            let mut face = 0.0;
            let mut passages = Vec::new();
            for branch in &study.network.branches {
                for loss in &branch.losses {
                    if let Loss::Core {
                        cooler: Some(id),
                        fraction,
                        ..
                    } = loss
                        && *id == cooler.id
                    {
                        face += fraction;
                        passages.push(branch.id.as_str());
                    }
                }
            }
            if face > 1.0 + ROUNDED {
                let message = "the face fractions of its passages add up to more than one";
                self.say(Kind::Contradiction, &cooler.id, "", message);
            }
            if !cooler.series.is_empty() {
                let named: BTreeSet<&str> = cooler.series.iter().map(String::as_str).collect();
                let once = named.len() == cooler.series.len();
                let all = passages.iter().all(|id| named.contains(id));
                if !once || !all || cooler.series.len() != passages.len() {
                    let message = "name every branch that holds a passage of this core once, in the order the coolant passes them";
                    self.say(Kind::Contradiction, &cooler.id, "series", message);
                }
            }
        }
    }

    /// A core's passage belongs to a charge cooler that exists, and is the only one in its branch.
    pub(super) fn passage(&mut self, branch: &Branch, position: usize, cooler: &str) {
        let field = format!("losses[{position}].cooler");
        let known = self.study.coolers.iter().any(|other| other.id == cooler);
        if !known {
            let message = format!("no charge cooler is called {cooler}");
            self.say(Kind::UnknownId, &branch.id, &field, &message);
        }
        let cooled = |loss: &Loss| {
            matches!(
                loss,
                Loss::Core {
                    cooler: Some(_),
                    ..
                }
            )
        };
        if branch.losses[..position].iter().any(cooled) {
            let message = "a branch holds one passage that exchanges heat; put the second in a branch of its own";
            self.say(Kind::Misplaced, &branch.id, &field, message);
        }
    }

    /// Blowers part the network in two, and what refers to a side stands on the right one.
    pub(super) fn sides(&mut self) {
        let network = &self.study.network;
        let blowers = || {
            let branches = network.branches.iter();
            branches.filter_map(|branch| Some((branch, branch.blower.as_ref()?)))
        };
        if blowers().next().is_none() {
            let bypasses = network.branches.iter().filter(|branch| branch.bypass);
            for branch in bypasses {
                let message = "leads round a blower, but there is none";
                self.say(Kind::Misplaced, &branch.id, "bypass", message);
            }
            return;
        }
        let sides = graph::sides(network);
        let before = graph::before_blowers(network);
        for (branch, blower) in blowers() {
            let (Some(from), Some(to)) = (self.position(&branch.from), self.position(&branch.to))
            else {
                continue;
            };
            if sides[from] == sides[to] {
                let message =
                    "air can go round this blower; mark that way as its bypass, or remove it";
                self.say(Kind::Contradiction, &branch.id, "blower", message);
            }
            let rival = blower.boost_node.as_ref().is_some_and(|id| {
                let asked = |other: &Option<String>| other.as_ref() == Some(id);
                let sources = network.nodes.iter().filter(|node| match &node.kind {
                    NodeKind::Source { boost_node, .. } => asked(boost_node),
                    _ => false,
                });
                let others = blowers().filter(|(_, other)| asked(&other.boost_node));
                sources.count() + others.count() > 1
            });
            if rival {
                let message = "the boost at this node is asked of another source or blower too; give one of them a pressure or a drive ratio";
                self.say(Kind::Contradiction, &branch.id, "blower.boostNode", message);
            }
            if let Some(node) = blower
                .boost_node
                .as_deref()
                .and_then(|id| self.position(id))
                && before[node]
            {
                let message = "the boost is read behind the blower";
                self.say(Kind::Contradiction, &branch.id, "blower.boostNode", message);
            }
        }
        for bypass in network.branches.iter().filter(|branch| branch.bypass) {
            let ends = (self.position(&bypass.from), self.position(&bypass.to));
            if let (Some(from), Some(to)) = ends
                && sides[from] == sides[to]
            {
                let message = "does not lead round a blower; unmark it";
                self.say(Kind::Misplaced, &bypass.id, "bypass", message);
            }
        }
        let fed_by_blower = match &self.study.engine.reference {
            Reference::Ambient => false,
            Reference::Ports => true,
            Reference::Node { node } => self.position(node).is_some_and(|node| !before[node]),
        };
        if !fed_by_blower {
            let message = "with a blower the engine's volumetric efficiency refers to a node behind it or to the ports; before it, the flow would be given twice";
            self.say(Kind::Contradiction, "engine", "reference", message);
        }
    }
}
