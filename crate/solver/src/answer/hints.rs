//! Warnings: an answer exists, but something deserves a look.

use std::f64::consts::PI;

use super::{BlowerAnswer, BranchAnswer, Draw, OperatingAnswer, Warning, WarningKind};
use crate::digits::rounded;
use crate::draw::{Drawn, Operating};
use crate::elements::{self, sections};
use crate::exchange::whole_core;
use crate::graph;
use crate::law::blower::positive_displacement;
use crate::law::outside;
use crate::law::valve::mach_index_taylor;
use crate::model::Model;
use crate::study::{Blower, Cycle, Loss, NodeKind, Study};

/// Sections that differ by more than this are not the same section [-].
const SAME_SECTION: f64 = 1e-3;
/// Handbook values assume this many diameters between losses, and this length of a settled duct [-].
const BETWEEN_LOSSES: f64 = 4.0;
const SETTLED_DUCT: f64 = 10.0;
/// Loss coefficients are low-speed values; above this Mach number their error grows [-].
const HIGH_MACH: f64 = 0.3;
/// Part of the draw's air below which a branch carries next to nothing [-].
const LITTLE: f64 = 0.02;

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
            for (field, message) in elements::outside(loss) {
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
        let other = matches!(
            loss,
            Loss::Opening { .. } | Loss::TypedK { .. } | Loss::Core { .. }
        );
        other || loss.is_entry()
    });
    (chamber && !counted && branch.blower.is_none()).then(|| {
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
            Loss::Schedule { .. } => since = f64::INFINITY,
            Loss::Duct { length, .. } | Loss::Hose { length, .. } => {
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
    warnings.extend(slow_losses(study, drawn, branches));
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
        let untold = study.network.branches.iter().filter(|branch| {
            branch.from == at.id && branch.jet_fraction.is_none() && branch.jet_distance.is_none()
        });
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

/// Losses that even the draw's greatest flow leaves below their law's least Reynolds number. What carries
/// next to nothing is passed over: its losses move no share.
fn slow_losses(study: &Study, drawn: &Drawn<'_>, branches: &[BranchAnswer]) -> Vec<Warning> {
    let total: f64 = drawn.cylinder_flow.iter().sum();
    let mut warnings = Vec::new();
    for (position, (given, branch)) in study.network.branches.iter().zip(branches).enumerate() {
        if branch.peak_flow < LITTLE * total {
            continue;
        }
        let smallest = drawn.model.branches[position].forward.smallest_area();
        // The branch's number is that of a circle of its smallest section.
        let own = (4.0 / (PI * smallest)).sqrt();
        for (place, loss) in given.losses.iter().enumerate() {
            let Some((area, diameter, least)) = outside::least_reynolds(loss) else {
                continue;
            };
            let reynolds = branch.reynolds * diameter / area / own;
            if reynolds < least {
                let message = format!(
                    "Reynolds number is {} at most, below the law's {}",
                    rounded((reynolds / 100.0).round() * 100.0, 0),
                    rounded(least, 0)
                );
                let field = format!("losses[{place}]");
                let kind = WarningKind::OutsideRange;
                warnings.push(warning(kind, &given.id, &field, message));
            }
        }
    }
    warnings
}

/// Warnings on what a running draw has found for the engine: limits passed, efficiencies and cores beyond
/// what is known of them.
pub fn of_engine(study: &Study, point: &Operating, found: &OperatingAnswer) -> Vec<Warning> {
    let mut warnings = Vec::new();
    if let Some(side) = point.past_efficiency_table {
        let message = format!("the engine runs {side}; the value at its border is taken");
        let kind = WarningKind::OutsideRange;
        warnings.push(warning(kind, "engine", "volumetricTable", message));
    }
    if let Some(index) = found.inlet_mach_index
        && index > mach_index_taylor::RANGE[1]
    {
        let message = format!(
            "the inlet Mach index is {}: above 0.5 to 0.6 the valves, not the manifold, limit the breathing (from memory)",
            rounded(index, 2)
        );
        warnings.push(warning(WarningKind::OutsideRange, "engine", "", message));
    }
    for blower in &found.blowers {
        let mut branches = study.network.branches.iter();
        let given = branches.find(|branch| branch.id == blower.branch);
        if let Some(given) = given.and_then(|branch| branch.blower.as_ref()) {
            past_limits(blower, given, &mut warnings);
        }
        for (_, message) in positive_displacement::outside(blower.pressure_ratio) {
            let kind = WarningKind::OutsideRange;
            warnings.push(warning(kind, &blower.branch, "blower", message));
        }
    }
    for (cooler, given) in found.coolers.iter().zip(&study.coolers) {
        let Ok(Some(core)) = whole_core(given) else {
            continue;
        };
        // Any passage stands for its face: the law is by flow over face.
        for (_, message) in core.outside(1.0, cooler.flow) {
            let kind = WarningKind::OutsideRange;
            warnings.push(warning(kind, &given.id, "measuredFlow", message));
        }
    }
    warnings
}

/// Limits that were typed: passing one can burst a rotor or throw a belt.
fn past_limits(blower: &BlowerAnswer, given: &Blower, warnings: &mut Vec<Warning>) {
    let mut past = |field: &str, message: String| {
        let field = format!("blower.{field}");
        warnings.push(warning(
            WarningKind::PastLimit,
            &blower.branch,
            &field,
            message,
        ));
    };
    if let Some(limit) = given.greatest_speed
        && blower.speed > limit
    {
        past(
            "greatestSpeed",
            format!(
                "turns at {} rpm, above its limit of {} rpm: do not run it so",
                rounded(60.0 * blower.speed, 0),
                rounded(60.0 * limit, 0)
            ),
        );
    }
    if let (Some(limit), Some(speed)) = (given.greatest_rim_speed, blower.rim_speed)
        && speed > limit
    {
        past(
            "greatestRimSpeed",
            format!(
                "its pulley's rim runs at {} m/s, above its limit of {} m/s: do not run it so",
                rounded(speed, 1),
                rounded(limit, 1)
            ),
        );
    }
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
                let angle = match study.engine.cycle {
                    Cycle::FourStroke => 240,
                    Cycle::TwoStroke => 120,
                };
                notes.push(format!("Intake event taken as {angle} degrees (common practice)."));
            }
            if study.network.branches.iter().all(|branch| branch.temperature_rise.is_none()) {
                notes.push("Walls are taken to heat no air; where they are known to, type a wall heating.".to_owned());
            }
            if study.network.branches.iter().any(|branch| branch.blower.is_some()) {
                notes.push("What a blower blows into is taken to keep its pressure and temperature over the cycle.".to_owned());
            }
        }
    }
    let has_valve =
        |node: &crate::study::Node| matches!(&node.kind, NodeKind::Port { valve: Some(_), .. });
    let blows = |branch: &crate::study::Branch| branch.blower.is_some();
    if draw.is_bench() && study.network.branches.iter().any(blows) {
        notes.push("The bench begins behind the blower: what lies before it, its bypass and the heat of a charge cooler are left out.".to_owned());
    }
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
