//! Warnings: an answer exists, but something deserves a look.

use std::f64::consts::PI;

use super::{BranchAnswer, Draw, Warning, WarningKind};
use crate::digits::rounded;
use crate::draw::Drawn;
use crate::elements::sections;
use crate::graph;
use crate::law::outside;
use crate::model::Model;
use crate::study::{Loss, NodeKind, Study};

/// Sections that differ by more than this are not the same section [-].
const SAME_SECTION: f64 = 1e-3;
/// Handbook values assume this many diameters between losses, and this length of a settled duct [-].
const BETWEEN_LOSSES: f64 = 4.0;
const SETTLED_DUCT: f64 = 10.0;
/// Loss coefficients are low-speed values; above this Mach number their error grows [-].
const HIGH_MACH: f64 = 0.3;

/// Warnings on the network itself, whatever draws.
pub fn of_study(study: &Study, model: &Model) -> Vec<Warning> {
    let mut warnings = Vec::new();
    for node in &study.network.nodes {
        for (field, message) in outside::outside_node(&node.kind) {
            warnings.push(warning(WarningKind::OutsideRange, &node.id, field, message));
        }
    }
    for branch in &study.network.branches {
        for pair in branch.losses.windows(2).enumerate() {
            let (position, [before, after]) = (pair.0, pair.1) else {
                continue;
            };
            let (_, leaving) = sections(before);
            let (arriving, _) = sections(after);
            if (leaving / arriving - 1.0).abs() > SAME_SECTION {
                warnings.push(warning(
                    WarningKind::SectionJump,
                    &branch.id,
                    &format!("losses[{}]", position + 1),
                    "its section differs from the one before; put a change of section between them"
                        .to_owned(),
                ));
            }
        }
        for (position, loss) in branch.losses.iter().enumerate() {
            for (field, message) in outside::outside(loss) {
                let field = format!("losses[{position}].{field}");
                warnings.push(warning(
                    WarningKind::OutsideRange,
                    &branch.id,
                    &field,
                    message,
                ));
            }
        }
        if let Some(warning) = perfect_entry(study, branch) {
            warnings.push(warning);
        }
        if let Some(warning) = close_losses(branch) {
            warnings.push(warning);
        }
    }
    let edges: Vec<(usize, usize)> = model.branches[..model.study_branches]
        .iter()
        .map(|branch| (branch.from, branch.to))
        .collect();
    for node in graph::shape(&study.network, &edges).dead_ends {
        let message = "a dead end: no air goes through it, it changes no share".to_owned();
        warnings.push(warning(
            WarningKind::DeadEnd,
            &study.network.nodes[node].id,
            "",
            message,
        ));
    }
    warnings
}

/// A branch that leaves a chamber through nothing that costs anything.
fn perfect_entry(study: &Study, branch: &crate::study::Branch) -> Option<Warning> {
    let chamber = study.network.nodes.iter().any(|node| {
        node.id == branch.from
            && matches!(node.kind, NodeKind::Plenum { .. } | NodeKind::Source { .. })
    });
    let counted = branch.losses.iter().any(|loss| {
        matches!(
            loss,
            Loss::EntrySharp { .. }
                | Loss::EntryRounded { .. }
                | Loss::EntryFlared { .. }
                | Loss::EntryReentrant { .. }
                | Loss::Opening { .. }
                | Loss::TypedK { .. }
                | Loss::Core { .. }
        )
    });
    (chamber && !counted).then(|| {
        let message = format!(
            "leaves {} without an entry loss, as if the entry were perfect; add one",
            branch.from
        );
        warning(WarningKind::PerfectEntry, &branch.id, "losses", message)
    })
}

/// One note a branch: handbook values assume settled flow between losses.
fn close_losses(branch: &crate::study::Branch) -> Option<Warning> {
    let mut since = f64::INFINITY;
    let mut close = false;
    let mut short = false;
    for loss in &branch.losses {
        let diameter = (4.0 * sections(loss).0 / PI).sqrt();
        match loss {
            Loss::Duct { length, .. } => {
                since = if since.is_finite() {
                    since + length / diameter
                } else {
                    since
                };
                short |= *length < SETTLED_DUCT * diameter;
            }
            _ => {
                close |= since < BETWEEN_LOSSES;
                since = 0.0;
            }
        }
    }
    let message = match (close, short) {
        (true, _) => {
            "has losses closer than 4 diameters to each other; handbook values assume settled flow between them"
        }
        (false, true) => {
            "has a duct shorter than 10 diameters; its friction is that of settled flow"
        }
        (false, false) => return None,
    };
    Some(warning(
        WarningKind::CloseLosses,
        &branch.id,
        "losses",
        message.to_owned(),
    ))
}

/// Warnings on one solved draw.
pub fn of_draw(
    study: &Study,
    draw: Draw,
    drawn: &Drawn<'_>,
    branches: &[BranchAnswer],
    second: bool,
) -> Vec<Warning> {
    let mut warnings: Vec<Warning> = branches
        .iter()
        .filter(|branch| branch.mach > HIGH_MACH)
        .map(|branch| {
            let message = if branch.choked {
                "is choked: what the port asks for makes no difference to it".to_owned()
            } else {
                format!(
                    "reaches Mach {}; loss coefficients are values for low speed",
                    rounded(branch.mach, 2)
                )
            };
            warning(WarningKind::HighMach, &branch.branch, "", message)
        })
        .collect();
    for (node, at) in drawn
        .model
        .nodes
        .iter()
        .enumerate()
        .filter(|(_, at)| at.jets_unknown)
    {
        let entered = drawn.snapshots.iter().any(|snapshot| {
            at.legs
                .iter()
                .any(|leg| leg.flow_into(&snapshot.state.flow) > 0.0)
        });
        let untold = study
            .network
            .branches
            .iter()
            .filter(|branch| branch.from == at.id && branch.jet_fraction.is_none());
        if entered && node < drawn.model.study_nodes && untold.clone().count() > 1 {
            let legs: Vec<&str> = untold.map(|branch| branch.id.as_str()).collect();
            let message = format!(
                "the jet that enters may favour some of {}; their doubt allows for it, a typed fraction would say which",
                legs.join(", ")
            );
            warnings.push(warning(WarningKind::JetInSight, &at.id, "", message));
        }
    }
    if second {
        let message = "other starts of the solver end in another split: the network allows two; see the second solution";
        warnings.push(warning(
            WarningKind::SecondSolution,
            "",
            "",
            message.to_owned(),
        ));
    }
    for message in assumptions(study, draw) {
        warnings.push(warning(WarningKind::Assumption, "", "", message));
    }
    warnings
}

fn assumptions(study: &Study, draw: Draw) -> Vec<String> {
    let mut notes = Vec::new();
    match draw {
        Draw::BenchOneAtATime => notes.push(
            "One port at a time, as benches read them: this hides what the air for the other ports does in a shared run.".to_owned(),
        ),
        Draw::BenchAllOpen => notes.push(
            "All ports open at once: this overstates what a shared run does, since no engine draws on all of them together.".to_owned(),
        ),
        Draw::CycleMean => notes.push(
            "Every cylinder at its mean flow over the cycle, for comparison; it bounds nothing.".to_owned(),
        ),
        Draw::Running => {
            if study.engine.firing_order.is_empty() {
                notes.push("No firing order given: while one cylinder draws, the others share the rest evenly.".to_owned());
            }
            if study.engine.event_angle.is_none() {
                notes.push("Intake event taken as 240 degrees (common practice).".to_owned());
            }
        }
    }
    let has_valve =
        |node: &crate::study::Node| matches!(&node.kind, NodeKind::Port { valve: Some(_), .. });
    if matches!(draw, Draw::Running | Draw::CycleMean) && study.network.nodes.iter().any(has_valve)
    {
        notes.push("Valves are left out of this draw; they are used on the bench.".to_owned());
    }
    notes
}

fn warning(kind: WarningKind, element: &str, field: &str, message: String) -> Warning {
    Warning {
        kind,
        element: element.to_owned(),
        field: field.to_owned(),
        message,
    }
}
