//! What was entered, measured as CAD measures it, against what CAD gives: volumes and smallest sections.
//!
//! Geometry alone, and no draw reads it. Chambers enclose what is typed for them; ducts, bends and
//! gradual changes enclose their own length; entries, openings, throttles, cores and typed coefficients
//! have no length and enclose nothing.

use std::f64::consts::FRAC_PI_2;

use super::{CadVerdict, Compared, Entered};
use crate::defaults::cad_tolerance;
use crate::elements::sections;
use crate::law::throttle::plate_heywood_1988::ThrottlePlate;
use crate::study::{Branch, Leg, Loss, Node, NodeKind, Study};

/// Sums up a study that the gate has let through.
pub fn entered(study: &Study) -> Entered {
    let nodes = &study.network.nodes;
    let check = &study.settings.check;
    let positions = study.network.positions();
    let mut ways = Vec::with_capacity(study.network.branches.len());
    for branch in &study.network.branches {
        let ends = [&branch.from, &branch.to].map(|end| positions[end.as_str()]);
        ways.push(Way { branch, ends });
    }
    let tolerance = check.tolerance.unwrap_or_else(cad_tolerance);
    let mut chambers = chambers(nodes, &ways);
    let mut total = Compared::of(Vec::new(), check.total_volume);
    for volume in nodes.iter().map(own_volume) {
        add(&mut total.entered, volume);
    }
    for way in &ways {
        add(&mut total.entered, way.enclosed());
    }
    let mut ports = ports(nodes, &ways);
    for compared in chambers.iter_mut().chain(&mut ports) {
        compared.judge(tolerance);
    }
    total.judge(tolerance);
    if total.difference.is_some() && chambers.iter().any(|chamber| chamber.entered.is_none()) {
        total.difference = None;
        total.verdict = CadVerdict::Incomplete;
    }
    Entered {
        tolerance,
        chambers,
        total,
        ports,
    }
}

impl Compared {
    /// What CAD gives of these nodes; what is entered is still to be found.
    fn of(nodes: Vec<String>, cad: Option<f64>) -> Self {
        Self {
            nodes,
            entered: None,
            cad,
            difference: None,
            verdict: CadVerdict::NoCad,
            element: String::new(),
            loss: None,
        }
    }

    fn judge(&mut self, tolerance: f64) {
        let Some(cad) = self.cad else {
            return;
        };
        self.difference = self.entered.map(|entered| (entered - cad) / cad);
        self.verdict = match self.difference {
            None => CadVerdict::NothingEntered,
            Some(difference) if difference.abs() > tolerance => CadVerdict::Differs,
            Some(_) => CadVerdict::Agrees,
        };
    }
}

/// A branch and the positions of its ends.
struct Way<'s> {
    branch: &'s Branch,
    ends: [usize; 2],
}

/// Every plenum by itself, and headers that lie in one run together with the ducts between them.
fn chambers(nodes: &[Node], ways: &[Way]) -> Vec<Compared> {
    // The position of the first of the headers in a run stands for all of them.
    let mut stands: Vec<usize> = (0..nodes.len()).collect();
    let between = |way: &&Way| way.is_run_between_headers(nodes);
    for way in ways.iter().filter(between) {
        let [one, other] = way.ends.map(|end| stands[end]);
        for each in &mut stands {
            if *each == one.max(other) {
                *each = one.min(other);
            }
        }
    }
    let mut chambers = Vec::new();
    let mut places = vec![0; nodes.len()];
    for (position, node) in nodes.iter().enumerate() {
        let (NodeKind::Plenum { cad_volume, .. } | NodeKind::Header { cad_volume, .. }) = node.kind
        else {
            continue;
        };
        if stands[position] == position {
            places[position] = chambers.len();
            chambers.push(Compared::of(Vec::new(), None));
        }
        let chamber = &mut chambers[places[stands[position]]];
        chamber.nodes.push(node.id.clone());
        add(&mut chamber.entered, own_volume(node));
        add(&mut chamber.cad, cad_volume);
    }
    for way in ways.iter().filter(between) {
        let chamber = &mut chambers[places[stands[way.ends[0]]]];
        add(&mut chamber.entered, way.enclosed());
    }
    chambers
}

fn own_volume(node: &Node) -> Option<f64> {
    match node.kind {
        NodeKind::Plenum { volume, .. } | NodeKind::Header { volume, .. } => volume,
        _ => None,
    }
}

fn add(sum: &mut Option<f64>, part: Option<f64>) {
    if let Some(part) = part {
        *sum = Some(sum.unwrap_or(0.0) + part);
    }
}

impl Way<'_> {
    fn is_run_between_headers(&self, nodes: &[Node]) -> bool {
        let is_header = |end: usize| matches!(nodes[end].kind, NodeKind::Header { .. });
        let legs = [self.branch.from_leg, self.branch.to_leg];
        legs == [Some(Leg::Run); 2] && self.ends.into_iter().all(is_header)
    }

    /// What its losses enclose [m3]; nothing when none of them has a length.
    fn enclosed(&self) -> Option<f64> {
        let sum: f64 = self.branch.losses.iter().map(volume).sum();
        (sum > 0.0).then_some(sum)
    }
}

fn frustum(from: f64, to: f64, length: f64) -> f64 {
    length / 3.0 * (from + to + (from * to).sqrt())
}

fn volume(loss: &Loss) -> f64 {
    match *loss {
        Loss::Duct { area, length, .. } | Loss::Hose { area, length, .. } => area * length,
        // By Pappus and Guldin: the section times the way of its middle.
        Loss::Bend {
            area,
            angle,
            radius,
            ..
        } => area * radius * angle,
        Loss::BendPair {
            area,
            angle,
            radius,
            spacing,
            ..
        } => area * (2.0 * radius * angle + spacing),
        Loss::GradualChange {
            area_from,
            area_to,
            length,
            ..
        } => frustum(area_from, area_to, length),
        Loss::Schedule { ref stations, .. } => {
            let steps = stations.windows(2);
            let volumes = steps.map(|step| {
                let length = step[1].at - step[0].at;
                frustum(step[0].area, step[1].area, length)
            });
            volumes.sum()
        }
        _ => 0.0,
    }
}

/// A section, and where it stands.
#[derive(Clone, Copy)]
struct Section<'s> {
    area: f64,
    /// Id of the branch or node.
    element: &'s str,
    /// Position in the branch's list of losses.
    loss: Option<u32>,
}

/// The smallest section on the widest way from any source to each port.
///
/// Every node learns from its neighbours by which of them air has the wider way to it, until none learns
/// any more; a source is as wide as one likes.
fn ports(nodes: &[Node], ways: &[Way]) -> Vec<Compared> {
    let mut widest = Vec::with_capacity(nodes.len());
    for node in nodes {
        let is_source = matches!(node.kind, NodeKind::Source { .. });
        widest.push(Section {
            area: if is_source { f64::INFINITY } else { 0.0 },
            element: "",
            loss: None,
        });
    }
    let sections: Vec<Section> = ways.iter().map(|way| way.smallest(nodes)).collect();
    let mut learns = true;
    while learns {
        learns = false;
        for (way, own) in ways.iter().zip(&sections) {
            for [from, to] in [way.ends, [way.ends[1], way.ends[0]]] {
                let before = widest[from];
                let through = if own.area < before.area { *own } else { before };
                if through.area > widest[to].area {
                    widest[to] = through;
                    learns = true;
                }
            }
        }
    }
    let mut ports = Vec::new();
    for (node, section) in nodes.iter().zip(widest) {
        if let NodeKind::Port { cad_section, .. } = node.kind {
            ports.push(Compared {
                entered: Some(section.area),
                element: section.element.to_owned(),
                loss: section.loss,
                ..Compared::of(vec![node.id.clone()], cad_section)
            });
        }
    }
    ports
}

impl<'s> Way<'s> {
    /// The smallest section: the first of the losses that has it, else the junction's at an end.
    fn smallest(&self, nodes: &'s [Node]) -> Section<'s> {
        let branch = self.branch;
        let mut smallest = Section {
            area: f64::INFINITY,
            element: &branch.id,
            loss: None,
        };
        for (position, loss) in branch.losses.iter().enumerate() {
            let area = loss_section(loss);
            if area < smallest.area {
                smallest.area = area;
                smallest.loss = Some(position as u32);
            }
        }
        for (end, leg) in self.ends.into_iter().zip([branch.from_leg, branch.to_leg]) {
            let area = leg_section(&nodes[end].kind, leg);
            if area < smallest.area {
                smallest = Section {
                    area,
                    element: &nodes[end].id,
                    loss: None,
                };
            }
        }
        smallest
    }
}

/// The smallest section that a loss gives air to pass, as it is drawn: an opening's hole and not its jet,
/// a throttle wide open and not as it happens to stand.
fn loss_section(loss: &Loss) -> f64 {
    match *loss {
        Loss::Schedule { ref stations, .. } => {
            let areas = stations.iter().map(|station| station.area);
            areas.fold(f64::INFINITY, f64::min)
        }
        Loss::Opening {
            area,
            area_from,
            area_to,
            ..
        } => [area_from, area_to]
            .into_iter()
            .flatten()
            .fold(area, f64::min),
        Loss::Throttle {
            diameter,
            closed_angle,
            shaft_diameter,
            discharge_coefficient,
            ..
        } => ThrottlePlate {
            diameter,
            angle: FRAC_PI_2,
            closed_angle,
            shaft_diameter,
            discharge_coefficient,
        }
        .open_area(),
        Loss::ScreenRound {
            area, open_part, ..
        }
        | Loss::ScreenSquare {
            area, open_part, ..
        } => area * open_part,
        _ => {
            let (from, to) = sections(loss);
            from.min(to)
        }
    }
}

/// The section of a junction's own that a leg passes [m2]; a header's side legs have none but theirs.
fn leg_section(kind: &NodeKind, leg: Option<Leg>) -> f64 {
    match (kind, leg) {
        (
            NodeKind::Header { area, .. } | NodeKind::Tee { area, .. } | NodeKind::Wye { area, .. },
            Some(Leg::Run),
        ) => *area,
        (NodeKind::Tee { side_area, .. } | NodeKind::Wye { side_area, .. }, Some(Leg::Side)) => {
            *side_area
        }
        _ => f64::INFINITY,
    }
}
