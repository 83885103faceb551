//! A study compiled for the solver: indices instead of ids, chains of elements instead of losses.

use std::collections::BTreeMap;
use std::f64::consts::PI;

use crate::answer::Draw;
use crate::branch::{AT_END, Chain, Element, Origin};
use crate::elements::{pieces, sections};
use crate::exchange::Passage;
use crate::jets;
use crate::junction::{Header, Junction, Tee};
use crate::law::junction::header_momentum::{DEFAULT_REGAIN_COMBINING, DEFAULT_REGAIN_DIVIDING};
use crate::law::valve;
use crate::study::{Branch, Leg, Network, Node, NodeKind, Study};
use crate::{exchange, graph, short};

/// A network ready to be solved.
#[derive(Clone, Debug, Default)]
pub struct Model {
    /// Nodes in the study's order, then one for each cylinder with several ports.
    pub nodes: Vec<ModelNode>,
    /// Branches in the study's order, then one link from each port of such a cylinder.
    pub branches: Vec<ModelBranch>,
    /// Node indices of the sources, then of the nodes that blowers blow into.
    pub sources: Vec<usize>,
    /// Branches of the blowers that work; none on the bench.
    pub blowers: Vec<usize>,
    /// Branches that lead round them; none on the bench.
    pub bypasses: Vec<usize>,
    /// Passages of charge coolers that exchange heat; none on the bench.
    pub passages: Vec<Passage>,
    /// By node: whether it lies before the blowers, which the bench leaves out.
    pub left_out: Vec<bool>,
    /// Ports in the study's order.
    pub ports: Vec<ModelPort>,
    /// How many branches are the study's own.
    pub study_branches: usize,
    /// How many nodes are the study's own.
    pub study_nodes: usize,
}

/// A node of the model.
#[derive(Clone, Debug)]
pub struct ModelNode {
    /// Id in the study.
    pub id: String,
    /// How its legs differ, if they do.
    pub junction: Option<Junction>,
    /// Branch ends at this node; a tee's in the order run, run, side.
    pub legs: Vec<LegEnd>,
    /// Whether a jet that enters may reach some legs more than others.
    pub jets_unknown: bool,
}

/// One end of a branch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LegEnd {
    /// Branch index.
    pub branch: usize,
    /// Whether it is the branch's `to` end.
    pub at_to: bool,
}

impl LegEnd {
    /// 1 where the branch's own direction leads into the node, -1 where it leads out of it.
    pub fn into_sign(self) -> f64 {
        if self.at_to { 1.0 } else { -1.0 }
    }

    /// Mass flow into the node by this leg, of the branches' flows [kg/s].
    pub fn flow_into(self, flows: &[f64]) -> f64 {
        self.into_sign() * flows[self.branch]
    }
}

/// A branch of the model.
#[derive(Clone, Debug)]
pub struct ModelBranch {
    /// Id in the study.
    pub id: String,
    /// Node index of its first end.
    pub from: usize,
    /// Node index of its other end.
    pub to: usize,
    /// Elements met from `from` to `to`.
    pub forward: Chain,
    /// Elements met from `to` to `from`.
    pub reversed: Chain,
    /// Whether what leaves at `from` loses its velocity head.
    pub chamber_at_from: bool,
    /// Whether what leaves at `to` loses its velocity head.
    pub chamber_at_to: bool,
    /// The passage of a charge cooler in it, if it exchanges heat.
    pub passage: Option<usize>,
    /// How much warmer the walls make the air that passes [K].
    pub temperature_rise: f64,
    /// Whether no air passes it in this purpose: a blower, its bypass, or what lies before.
    pub left_out: bool,
}

/// What a model is compiled for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Ports discharge into a settling chamber, through their valves when they have any.
    Bench,
    /// Cylinders draw at their ports; valves are left out.
    Running,
}

impl Purpose {
    /// What a draw needs.
    pub fn of(draw: Draw) -> Self {
        if draw.is_bench() {
            Self::Bench
        } else {
            Self::Running
        }
    }
}

/// A port of the model.
#[derive(Clone, Debug)]
pub struct ModelPort {
    /// Node index.
    pub node: usize,
    /// Cylinder index in the engine's order.
    pub cylinder: usize,
    /// Node that the cylinder draws at while running: the port, or the cylinder's own node.
    pub draws_at: usize,
}

impl Model {
    /// Compiles a checked study's network.
    pub fn new(study: &Study, purpose: Purpose) -> Self {
        let network = &study.network;
        let index = network.positions();
        let mut model = Self {
            nodes: network.nodes.iter().map(model_node).collect(),
            branches: network
                .branches
                .iter()
                .map(|branch| model_branch(branch, &index, &network.nodes, purpose))
                .collect(),
            study_branches: network.branches.len(),
            study_nodes: network.nodes.len(),
            ..Self::default()
        };
        for (position, node) in network.nodes.iter().enumerate() {
            match &node.kind {
                NodeKind::Source { .. } => model.sources.push(position),
                NodeKind::Port { cylinder, .. } => model.ports.push(ModelPort {
                    node: position,
                    cylinder: study.engine.position(cylinder).unwrap_or(0),
                    draws_at: position,
                }),
                _ => {}
            }
        }
        match purpose {
            Purpose::Bench => {
                model.leave_out(network);
                model.place_valves(network);
            }
            Purpose::Running => {
                model.place_coolers(study);
                model.blow(network);
                model.link_shared_cylinders();
            }
        }
        model.place_legs(network);
        model
    }

    /// Every node that a blower blows into is held at a pressure, as a source is.
    fn blow(&mut self, network: &Network) {
        self.left_out = vec![false; self.nodes.len()];
        for (branch, given) in network.branches.iter().enumerate() {
            if given.blower.is_some() {
                self.blowers.push(branch);
                self.sources.push(self.branches[branch].to);
            }
            if given.bypass {
                self.bypasses.push(branch);
            }
        }
    }

    /// The bench begins behind the blowers: their outlets are its sources.
    fn leave_out(&mut self, network: &Network) {
        self.left_out = vec![false; self.nodes.len()];
        if network
            .branches
            .iter()
            .all(|branch| branch.blower.is_none())
        {
            return;
        }
        self.left_out = graph::before_blowers(network);
        let left_out = &self.left_out;
        self.sources.retain(|source| !left_out[*source]);
        for (branch, given) in self.branches.iter_mut().zip(&network.branches) {
            let blower = given.blower.is_some();
            branch.left_out =
                blower || given.bypass || left_out[branch.from] || left_out[branch.to];
            if blower && !left_out[branch.to] {
                self.sources.push(branch.to);
            }
        }
    }

    fn place_coolers(&mut self, study: &Study) {
        self.passages = exchange::passages(&study.network, &study.coolers);
        for (position, passage) in self.passages.iter().enumerate() {
            let branch = &mut self.branches[passage.branch];
            branch.passage = Some(position);
            branch.forward.passage = branch.forward.position(passage.loss);
            branch.reversed.passage = branch.reversed.position(passage.loss);
        }
        for (branch, given) in self.branches.iter_mut().zip(&study.network.branches) {
            branch.temperature_rise = given.temperature_rise.unwrap_or(0.0);
        }
    }

    /// Whether temperatures differ anywhere but between sources.
    pub fn warms(&self) -> bool {
        let rises = |branch: &ModelBranch| branch.temperature_rise != 0.0;
        !self.passages.is_empty() || !self.blowers.is_empty() || self.branches.iter().any(rises)
    }

    /// A cylinder with several ports draws at a node of its own, where their velocity heads are lost.
    fn link_shared_cylinders(&mut self) {
        let cylinders = self
            .ports
            .iter()
            .map(|port| port.cylinder + 1)
            .max()
            .unwrap_or(0);
        for cylinder in 0..cylinders {
            let shared: Vec<usize> = (0..self.ports.len())
                .filter(|port| self.ports[*port].cylinder == cylinder)
                .collect();
            if shared.len() < 2 {
                continue;
            }
            let node = self.nodes.len();
            self.nodes.push(ModelNode {
                id: format!("cylinder {cylinder}"),
                junction: None,
                legs: Vec::new(),
                jets_unknown: false,
            });
            for port in shared {
                let from = self.ports[port].node;
                let area = self.end_area(from);
                let chain = Chain {
                    end_area: area,
                    ..Chain::default()
                };
                self.ports[port].draws_at = node;
                self.branches.push(ModelBranch {
                    id: format!("{} to its cylinder", self.nodes[from].id),
                    from,
                    to: node,
                    forward: chain.clone(),
                    reversed: chain,
                    chamber_at_from: false,
                    chamber_at_to: true,
                    passage: None,
                    temperature_rise: 0.0,
                    left_out: false,
                });
            }
        }
    }

    /// Mass flow into a node by all its branches [kg/s].
    pub fn inflow(&self, node: usize, flows: &[f64]) -> f64 {
        let legs = self.nodes[node].legs.iter();
        legs.map(|leg| leg.flow_into(flows)).sum()
    }

    /// The section that air leaves through towards a node [m2].
    fn end_area(&self, node: usize) -> f64 {
        self.branches
            .iter()
            .filter_map(|branch| {
                if branch.to == node {
                    Some(branch.forward.end_area)
                } else if branch.from == node {
                    Some(branch.reversed.end_area)
                } else {
                    None
                }
            })
            .sum()
    }

    fn place_legs(&mut self, network: &Network) {
        for (branch, ends) in self.branches.iter().enumerate() {
            self.nodes[ends.from].legs.push(LegEnd {
                branch,
                at_to: false,
            });
            self.nodes[ends.to].legs.push(LegEnd {
                branch,
                at_to: true,
            });
        }
        for (position, node) in network.nodes.iter().enumerate() {
            let leg_of = |leg: &LegEnd| {
                let branch = &network.branches[leg.branch];
                if leg.at_to {
                    branch.to_leg
                } else {
                    branch.from_leg
                }
            };
            let legs = &mut self.nodes[position].legs;
            let runs = |legs: &[LegEnd]| {
                legs.iter()
                    .map(|leg| leg_of(leg) == Some(Leg::Run))
                    .collect::<Vec<_>>()
            };
            let junction = match node.kind {
                NodeKind::Header {
                    area,
                    regain_dividing,
                    regain_combining,
                    ..
                } => Some(Junction::Header(Header {
                    area,
                    dividing: regain_dividing.unwrap_or(DEFAULT_REGAIN_DIVIDING),
                    combining: regain_combining.unwrap_or(DEFAULT_REGAIN_COMBINING),
                    runs: runs(legs),
                })),
                NodeKind::Tee {
                    area,
                    side_area,
                    law,
                } => Some(Junction::Tee(Tee {
                    area,
                    side_area,
                    angle: PI / 2.0,
                    law,
                    off: [0.0; 2],
                })),
                NodeKind::Wye {
                    area,
                    side_area,
                    angle,
                    law,
                } => Some(Junction::Tee(Tee {
                    area,
                    side_area,
                    angle,
                    law,
                    off: [0.0; 2],
                })),
                NodeKind::Plenum { .. } => {
                    let jets = jets::jets(network, &self.branches, legs);
                    Some(Junction::Jets(jets))
                }
                _ => None,
            };
            if let Some(Junction::Tee(_)) = junction {
                let side = |leg: &LegEnd| leg_of(leg) == Some(Leg::Side);
                short::sort(legs, |a, b| !side(a) && side(b));
            }
            let node = &mut self.nodes[position];
            node.jets_unknown = matches!(junction, Some(Junction::Jets(_)));
            node.junction = junction;
        }
    }

    /// A port's valve narrows the end of its branch on the bench.
    fn place_valves(&mut self, network: &Network) {
        for node in &network.nodes {
            let NodeKind::Port {
                valve: Some(given), ..
            } = &node.kind
            else {
                continue;
            };
            let area = given.effective_area();
            for branch in &mut self.branches {
                if self.nodes[branch.to].id == node.id {
                    let origin = Origin {
                        loss: AT_END,
                        part: 0,
                        kind: "valve",
                        scatter: valve::curtain_area::SCATTER,
                    };
                    branch.forward.append(Element::Jet { area }, origin);
                    branch.forward.end_area = area;
                    branch.chamber_at_to = false;
                }
            }
        }
    }
}

impl ModelNode {
    /// Whether the leg losses couple the flows: a plenum without typed jets is a plain chamber.
    pub fn couples(&self) -> bool {
        match &self.junction {
            None => false,
            Some(Junction::Jets(jets)) => jets.fractions.iter().any(|fraction| *fraction != 0.0),
            Some(_) => true,
        }
    }
}

fn model_node(node: &Node) -> ModelNode {
    ModelNode {
        id: node.id.clone(),
        junction: None,
        legs: Vec::new(),
        jets_unknown: false,
    }
}

fn model_branch(
    branch: &Branch,
    index: &BTreeMap<&str, usize>,
    nodes: &[Node],
    purpose: Purpose,
) -> ModelBranch {
    let from = index[branch.from.as_str()];
    let to = index[branch.to.as_str()];
    let mut forward = Chain::default();
    let mut reversed = Chain::default();
    for (position, loss) in branch.losses.iter().enumerate() {
        for piece in pieces(loss) {
            let [ahead, back] = piece.scatter.map(|scatter| Origin {
                loss: position as u32,
                part: piece.part,
                kind: piece.kind,
                scatter,
            });
            forward.append(piece.ahead, ahead);
            reversed.append(piece.back, back);
        }
    }
    reversed.turn_round();
    forward.end_area = branch.losses.last().map_or(1.0, |loss| sections(loss).1);
    reversed.end_area = branch.losses.first().map_or(1.0, |loss| sections(loss).0);
    // A side leg that joins a header brings no run momentum: its velocity head is lost.
    let chamber = |node: usize, leg: Option<Leg>| match nodes[node].kind {
        NodeKind::Plenum { .. } | NodeKind::Source { .. } => true,
        NodeKind::Header { .. } => leg == Some(Leg::Side),
        NodeKind::Port { .. } => purpose == Purpose::Bench,
        _ => false,
    };
    // A jet that ends the branch has lost its velocity head already.
    let (jet_at_from, jet_at_to) = (reversed.ends_in_jet(), forward.ends_in_jet());
    ModelBranch {
        id: branch.id.clone(),
        from,
        to,
        forward,
        reversed,
        chamber_at_from: chamber(from, branch.from_leg) && !jet_at_from,
        chamber_at_to: chamber(to, branch.to_leg) && !jet_at_to,
        passage: None,
        temperature_rise: 0.0,
        left_out: false,
    }
}
