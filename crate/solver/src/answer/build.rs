//! From a study to its answer: every draw solved, measured against its limit and put into words.

use super::budget::{self, Budget, Labels, Place};
use super::doubt::{self, Doubt};
use super::gap::{self, Side};
use super::rows;
use super::verdict::{self, Facts};
use super::whole::{charge_temperature, deviations, spread};
use super::{
    Answer, Certificate, CylinderAnswer, Draw, DrawAnswer, Gap, GapQuantity, Outcome, Part, Path,
    PortAnswer, Refusal, RefusalKind, Solved, State, engine, entered, hints, mixture, readings,
    valves,
};
use crate::catalogue::catalogue;
use crate::draw::{self, Drawn, Operating, Refused};
use crate::error::StudyError;
use crate::model::{Model, Purpose};
use crate::study::{NodeKind, Study};
use crate::{gate, graph};

/// Solves a study in every draw it is complete for.
///
/// # Errors
/// Everything that is wrong with the study, as `read` would tell it.
pub fn solve(study: &Study) -> Result<Answer, Vec<StudyError>> {
    solve_part(study, Part::Whole)
}

/// Solves a study in some of its draws, so that the one looked at need not wait for the others.
///
/// # Errors
/// Everything that is wrong with the study, as `read` would tell it.
pub fn solve_part(study: &Study, part: Part) -> Result<Answer, Vec<StudyError>> {
    let errors = gate::check(study);
    if !errors.is_empty() {
        return Err(errors);
    }
    let bench_model = Model::new(study, Purpose::Bench);
    let running_model = Model::new(study, Purpose::Running);
    let operating = draw::operating(study);
    let headline = if operating.is_ok() {
        Draw::Running
    } else {
        Draw::BenchOneAtATime
    };
    let first = match part {
        Part::First(draw) | Part::Rest(draw) if draw.is_bench() || operating.is_ok() => draw,
        _ => headline,
    };
    let wanted = |draw: Draw| match part {
        Part::Whole => true,
        Part::Headline | Part::First(_) => draw == first,
        Part::Rest(_) => draw != first,
    };
    let all = [
        Draw::Running,
        Draw::CycleMean,
        Draw::BenchOneAtATime,
        Draw::BenchAllOpen,
    ];
    let mut draws = Vec::new();
    for draw in all.into_iter().filter(|draw| wanted(*draw)) {
        let settings = &study.settings;
        let (model, limit) = if draw.is_bench() {
            (&bench_model, settings.bench.limit)
        } else {
            (&running_model, settings.running.limit)
        };
        let operating = operating.as_ref().ok();
        let Some(drawn) = draw::drawn(study, model, operating, draw) else {
            continue;
        };
        let outcome = match drawn {
            Ok(drawn) => Telling {
                study,
                draw,
                limit,
                drawn: &drawn,
                operating,
            }
            .outcome(),
            Err(refused) => {
                let speed = study.engine.speed.unwrap_or(0.0);
                Outcome::Refused(refusal(draw, model, &refused, speed))
            }
        };
        draws.push(DrawAnswer {
            draw,
            limit,
            outcome,
        });
    }
    let needs = operating.err().unwrap_or_default().into_iter();
    Ok(Answer {
        headline,
        draws,
        running_needs: needs.map(|need| need.0).collect(),
        warnings: hints::of_study(study, &bench_model),
        valves: valves::valves(study),
        readings: readings::readings(study),
        // Nobody waits for it: it comes with the draws that are out of sight.
        entered: matches!(part, Part::Whole | Part::Rest(_)).then(|| entered::entered(study)),
    })
}

/// Why a draw has no answer, at a crankshaft speed [rev/s].
pub fn refusal(draw: Draw, model: &Model, refused: &Refused, speed: f64) -> Refusal {
    match *refused {
        Refused::Section { branch, node, part } => {
            let element = branch
                .map(|branch| model.branches[branch].id.as_str())
                .or_else(|| node.map(|node| model.nodes[node].id.as_str()))
                .unwrap_or("the manifold");
            let speed = Some(speed * part);
            verdict::refusal(RefusalKind::SectionTooSmall, draw, element, speed)
        }
        Refused::PastTable {
            branch,
            which,
            side,
        } => verdict::past_table(&model.branches[branch].id, which, side),
        Refused::HotBypass { branch } => verdict::hot_bypass(draw, &model.branches[branch].id),
        Refused::Failed(failure) => {
            let element = model
                .branches
                .get(failure.branch)
                .map_or("the manifold", |branch| branch.id.as_str());
            verdict::refusal(RefusalKind::NotConverged, draw, element, None)
        }
    }
}

struct Telling<'a> {
    study: &'a Study,
    draw: Draw,
    limit: f64,
    drawn: &'a Drawn<'a>,
    /// Where the engine runs, if it does.
    operating: Option<&'a Operating>,
}

impl Telling<'_> {
    fn outcome(&self) -> Outcome {
        let drawn = self.drawn;
        let model = drawn.model;
        let labels = labels(self.study, model);
        let budgets: Vec<Budget> = (0..model.ports.len())
            .map(|port| budget::budget(drawn, port))
            .collect();
        let certificate = self.certificate(&budgets);
        // No answer without a certificate: a state that the check does not confirm is a refusal.
        if !(certificate.imbalance <= 1e-10
            && certificate.closure <= 1e-9
            && certificate.energy <= 1e-9)
        {
            let worst = self.worst_branch();
            return Outcome::Refused(verdict::refusal(
                RefusalKind::NotConverged,
                self.draw,
                &worst,
                None,
            ));
        }
        let flows = &drawn.cylinder_flow;
        let total: f64 = flows.iter().sum();
        let deviations = deviations(flows);
        let cylinders = self.cylinders(&deviations, total);
        let spread = spread(flows);
        let squares = deviations.iter().map(|deviation| deviation.powi(2));
        let variance = squares.sum::<f64>() / flows.len() as f64;
        let gap = self.gap(&cylinders, &budgets, &labels);
        let choked = self.choked_on_the_way(&cylinders, &budgets);
        let (verdict, sentence) = verdict::verdict(&Facts {
            draw: self.draw,
            limit: self.limit,
            spread,
            cylinders: &cylinders,
            gap: gap.as_ref(),
            choked: choked.as_deref(),
        });
        let second = drawn.second.as_ref().map(|flows| {
            let total: f64 = flows.iter().sum();
            flows.iter().map(|flow| flow / total).collect::<Vec<f64>>()
        });
        let branches = rows::branches(drawn, &labels);
        let charge = charge_temperature(flows, cylinders.iter().map(|one| one.temperature));
        let operating = self.operating.zip(drawn.found.as_ref());
        let operating = operating.map(|(operating, found)| {
            engine::operating(self.study, operating, drawn, found, charge)
        });
        let mut warnings =
            hints::of_draw(self.study, self.draw, drawn, &branches, second.is_some());
        if let (Some(found), Some(point)) = (&operating, self.operating) {
            warnings.extend(hints::of_engine(self.study, point, found));
        }
        let limit = self.limit;
        let mixture = drawn
            .found
            .is_some()
            .then(|| mixture::mixture(&self.study.engine, &cylinders, limit, charge));
        Outcome::Solved(Box::new(Solved {
            sentence,
            verdict,
            total,
            resistance: self.loss(&budgets) / (total * total),
            spread,
            coefficient_of_variation: variance.sqrt(),
            gap,
            paths: self.paths(&budgets, &labels),
            branches,
            nodes: rows::nodes(drawn),
            certificate,
            second_solution: second,
            warnings,
            operating,
            mixture,
            cylinders,
        }))
    }

    /// Stagnation pressure lost on the way to the ports, mean by their air [Pa].
    fn loss(&self, budgets: &[Budget]) -> f64 {
        let drawn = self.drawn;
        if let Some(found) = &drawn.found {
            return found.loss;
        }
        let total: f64 = drawn.port_flow.iter().sum();
        let ports = budgets.iter().zip(&drawn.port_flow);
        ports.map(|(budget, flow)| budget.fall * flow).sum::<f64>() / total
    }

    fn certificate(&self, budgets: &[Budget]) -> Certificate {
        let drawn = self.drawn;
        let model = drawn.model;
        let mut certificate = Certificate {
            imbalance: 0.0,
            closure: 0.0,
            energy: 0.0,
            iterations: drawn.iterations,
            networks: drawn.snapshots.len() as u32,
        };
        let gauge = |snapshot: &draw::Snapshot, node: usize| snapshot.state.gauge[node];
        // The largest fall from a source to a port that draws, over the draw's networks.
        let mut fall: f64 = 1.0;
        for (port, snapshots) in model.ports.iter().zip(&drawn.port_snapshots) {
            for (position, _) in snapshots {
                let snapshot = &drawn.snapshots[*position];
                for source in &model.sources {
                    fall = fall.max(gauge(snapshot, *source) - gauge(snapshot, port.node));
                }
            }
        }
        for snapshot in &drawn.snapshots {
            let total = snapshot.residuals.total.max(1e-9);
            certificate.imbalance = certificate
                .imbalance
                .max(snapshot.residuals.imbalance / total);
            certificate.closure = certificate.closure.max(snapshot.residuals.closure / fall);
            let temperature = snapshot
                .state
                .temperature
                .iter()
                .copied()
                .fold(0.0, f64::max);
            certificate.energy = certificate
                .energy
                .max(snapshot.residuals.energy / (total * temperature));
        }
        if let Some(found) = &drawn.found {
            certificate.imbalance = certificate.imbalance.max(found.missed);
        }
        for budget in budgets {
            certificate.closure = certificate.closure.max(budget.closure / fall);
        }
        certificate
    }

    fn worst_branch(&self) -> String {
        let worst = self
            .drawn
            .snapshots
            .iter()
            .flat_map(|snapshot| snapshot.branches.iter().enumerate());
        worst
            .max_by(|a, b| a.1.residual.abs().total_cmp(&b.1.residual.abs()))
            .map_or_else(
                || "the manifold".to_owned(),
                |(branch, _)| self.drawn.model.branches[branch].id.clone(),
            )
    }

    fn cylinders(&self, deviations: &[f64], total: f64) -> Vec<CylinderAnswer> {
        let drawn = self.drawn;
        let doubts = doubt::doubts(&drawn.gradients, &drawn.cylinder_flow);
        let engine = &self.study.engine.cylinders;
        engine
            .iter()
            .zip(doubts)
            .enumerate()
            .map(|(cylinder, (given, doubt))| {
                let flow = drawn.cylinder_flow[cylinder];
                let deviation = deviations[cylinder];
                let ports: Vec<usize> = self.ports(cylinder).collect();
                let (pressure, temperature) = self.port_state(&ports);
                let Doubt { half_width, causes } = doubt;
                CylinderAnswer {
                    cylinder: given.id.clone(),
                    share: flow / total,
                    deviation,
                    doubt: half_width,
                    state: state(deviation, half_width, self.limit),
                    flow,
                    pressure,
                    temperature,
                    ports: ports
                        .iter()
                        .map(|port| PortAnswer {
                            port: drawn.model.nodes[drawn.model.ports[*port].node].id.clone(),
                            share: drawn.port_flow[*port] / total,
                            flow: drawn.port_flow[*port],
                        })
                        .collect(),
                    doubt_causes: causes,
                }
            })
            .collect()
    }

    /// The ports of a cylinder.
    fn ports(&self, cylinder: usize) -> impl Iterator<Item = usize> {
        let ports = self.drawn.model.ports.iter().enumerate();
        let own = ports.filter(move |(_, port)| port.cylinder == cylinder);
        own.map(|(position, _)| position)
    }

    /// Mean stagnation pressure and temperature at some ports while they draw.
    fn port_state(&self, ports: &[usize]) -> (f64, f64) {
        let mut sums = (0.0, 0.0, 0.0);
        for port in ports {
            let node = self.drawn.model.ports[*port].node;
            for (position, weight) in &self.drawn.port_snapshots[*port] {
                let state = &self.drawn.snapshots[*position].state;
                sums = (
                    sums.0 + weight * state.pressure(node),
                    sums.1 + weight * state.temperature[node],
                    sums.2 + weight,
                );
            }
        }
        (sums.0 / sums.2, sums.1 / sums.2)
    }

    fn gap(
        &self,
        cylinders: &[CylinderAnswer],
        budgets: &[Budget],
        labels: &Labels<'_>,
    ) -> Option<Gap> {
        let worst = worst(cylinders)?;
        let sign = if cylinders[worst].deviation > 0.0 {
            -1.0
        } else {
            1.0
        };
        let best = (0..cylinders.len())
            .filter(|other| *other != worst)
            .max_by(|a, b| {
                (sign * cylinders[*a].deviation).total_cmp(&(sign * cylinders[*b].deviation))
            })?;
        // A cylinder with several ports is explained by the port that brings most of its air.
        let main_port = |cylinder: usize| {
            self.ports(cylinder).max_by(|a, b| {
                self.drawn.port_flow[*a]
                    .total_cmp(&self.drawn.port_flow[*b])
                    .then(b.cmp(a))
            })
        };
        let side = |cylinder: usize| -> Option<Side<'_>> {
            let port = main_port(cylinder)?;
            Some(Side {
                budget: &budgets[port],
                flow: self.drawn.port_flow[port],
                share: cylinders[cylinder].share,
            })
        };
        let (worst_side, best_side) = (side(worst)?, side(best)?);
        let explained = match self.draw {
            Draw::Running | Draw::CycleMean => gap::in_pressure(&worst_side, &best_side, labels),
            Draw::BenchAllOpen | Draw::BenchOneAtATime => {
                gap::in_share(&worst_side, &best_side, labels)
            }
        };
        debug_assert!(explained.quantity == GapQuantity::Share || explained.total.is_finite());
        Some(Gap {
            worst: cylinders[worst].cylinder.clone(),
            best: cylinders[best].cylinder.clone(),
            quantity: explained.quantity,
            total: explained.total,
            parts: explained.parts,
        })
    }

    fn choked_on_the_way(
        &self,
        cylinders: &[CylinderAnswer],
        budgets: &[Budget],
    ) -> Option<String> {
        let worst = worst(cylinders)?;
        self.ports(worst)
            .flat_map(|port| &budgets[port].items)
            .find_map(|(place, _)| match place {
                Place::Shock(branch) => Some(self.drawn.model.branches[*branch].id.clone()),
                _ => None,
            })
    }

    fn paths(&self, budgets: &[Budget], labels: &Labels<'_>) -> Vec<Path> {
        let model = self.drawn.model;
        let bridges = graph::bridges(
            model.nodes.len(),
            model.branches.iter().map(|branch| (branch.from, branch.to)),
        );
        budgets
            .iter()
            .enumerate()
            .map(|(port, budget)| {
                let cylinder = &self.study.engine.cylinders[model.ports[port].cylinder].id;
                labels.path(budget, port, cylinder, &bridges)
            })
            .collect()
    }
}

/// The cylinder that is explained: the first of the worst.
fn worst(cylinders: &[CylinderAnswer]) -> Option<usize> {
    let worst = *verdict::worst(cylinders).first()?;
    let mut cylinders = cylinders.iter();
    cylinders.position(|cylinder| cylinder.cylinder == worst.cylinder)
}

/// A deviation against half the limit, and against its own doubt.
fn state(deviation: f64, doubt: f64, limit: f64) -> State {
    if deviation.abs() <= 0.5 * limit {
        State::Even
    } else if deviation.abs() <= doubt {
        State::TooCloseToTell
    } else if deviation < 0.0 {
        State::Starved
    } else {
        State::Overfed
    }
}

fn labels<'s>(study: &'s Study, model: &'s Model) -> Labels<'s> {
    let catalogue = catalogue();
    let loss_label = |kind: &str| {
        catalogue
            .losses
            .iter()
            .find(|info| info.kind == kind)
            .map_or("loss", |info| info.label)
    };
    let node_label = |kind: &NodeKind| match kind {
        NodeKind::Source { .. } => "source",
        NodeKind::Plenum { .. } => "jet in plenum",
        NodeKind::Header { .. } => "header",
        NodeKind::Tee { .. } => "tee",
        NodeKind::Wye { .. } => "wye",
        NodeKind::Joint {} => "joint",
        NodeKind::Port { .. } => "port",
    };
    let branches = study.network.branches.iter();
    Labels {
        losses: branches
            .map(|branch| {
                branch
                    .losses
                    .iter()
                    .map(|loss| loss_label(loss.kind()))
                    .collect()
            })
            .collect(),
        nodes: study
            .network
            .nodes
            .iter()
            .map(|node| node_label(&node.kind))
            .collect(),
        model,
    }
}
