//! The answer's types.

use serde::Serialize;

use super::{MixtureAnswer, OperatingAnswer};
use crate::error::StudyError;

answer! {
/// Everything the program says of one study.
pub struct Answer {
    /// The draw the headline speaks of: `running` when the engine is complete, else `benchOneAtATime`.
    pub headline: Draw,
    /// One answer per draw that was asked for, headline first.
    pub draws: Vec<DrawAnswer>,
    /// What is missing before the `running` draw can be solved; empty when it stands in `draws`.
    pub running_needs: Vec<String>,
    /// Hints on the network that hold for every draw: section jumps, short ducts, missing entry losses.
    pub warnings: Vec<Warning>,
    /// What the ports' valves offer the air on the bench.
    pub valves: Vec<ValveAnswer>,
    /// The bench readings at the conditions of the study's own bench.
    pub readings: Vec<ConvertedReading>,
    /// What was entered against CAD; absent where only the draw looked at first was asked for.
    pub entered: Option<Entered>,
}

/// What a port's valves offer the air at their lift, all of them together.
pub struct ValveAnswer {
    /// Node id of the port.
    pub port: String,
    /// Lift over seat diameter [-].
    pub lift_ratio: f64,
    /// Discharge coefficient on the curtain area at that lift [-].
    pub discharge_coefficient: f64,
    /// Between seats and valves [m2].
    pub curtain_area: f64,
    /// Smallest bores before the seats less their stems; absent without a throat diameter [m2].
    pub throat_area: Option<f64>,
    /// Section to which the air accelerates without loss [m2].
    pub effective_area: f64,
}

/// A bench reading carried over to the room and the depression of the study's own bench.
pub struct ConvertedReading {
    /// Flow through the same effective area, compressibly [kg/s].
    pub flow: f64,
    /// Flow by the rule of the square root of the depression [kg/s].
    pub by_square_root: f64,
    /// Flow if the narrowest section is a sharp edge, whose jet contracts less at larger depressions; absent beyond a pressure ratio of 0.75 [kg/s].
    pub sharp_edged: Option<f64>,
    /// The effective area that was read [m2].
    pub effective_area: f64,
    /// Whether the jet was at Mach 1 when it was read.
    pub read_choked: bool,
    /// Whether the jet is at Mach 1 on the study's own bench.
    pub choked: bool,
}

/// What was entered, measured as CAD measures it, against what CAD gives.
pub struct Entered {
    /// Largest acceptable difference [-].
    pub tolerance: f64,
    /// Volumes [m3] of the chambers: plenums, and headers in one run with the ducts between them.
    pub chambers: Vec<Compared>,
    /// Volume of all chambers and branches [m3].
    pub total: Compared,
    /// The smallest section [m2] on the widest way to each port.
    pub ports: Vec<Compared>,
}

/// A volume [m3] or section [m2] as entered and as CAD gives it.
pub struct Compared {
    /// Ids of the chamber's nodes, or of the port; none for the total.
    pub nodes: Vec<String>,
    /// As entered; absent when nothing is entered that gives it.
    pub entered: Option<f64>,
    /// As CAD gives it.
    pub cad: Option<f64>,
    /// (entered - CAD) / CAD, where the two can be compared [-].
    pub difference: Option<f64>,
    /// What comes of it.
    pub verdict: CadVerdict,
    /// Id of the branch or node that a section stands in; empty for a volume.
    pub element: String,
    /// Position in the branch's list of losses, from 0; absent for a node's section and a volume.
    pub loss: Option<u32>,
}

/// What comes of comparing a value with CAD.
#[derive(Copy, Eq)]
pub enum CadVerdict {
    /// They differ by no more than the tolerance.
    Agrees,
    /// They differ by more.
    Differs,
    /// No value from CAD is given.
    NoCad,
    /// Nothing is entered that would give the value.
    NothingEntered,
    /// Not everything is entered that CAD counts.
    Incomplete,
}

/// What pulls.
#[derive(Copy, Eq)]
pub enum Draw {
    /// Flow bench, every port by itself with the others shut.
    BenchOneAtATime,
    /// Flow bench, all ports open at once.
    BenchAllOpen,
    /// Each cylinder over its own intake event.
    Running,
    /// Every port at its mean flow over the cycle, for comparison with `Running`.
    CycleMean,
}

/// The answer of one draw.
pub struct DrawAnswer {
    /// Which draw.
    pub draw: Draw,
    /// Largest acceptable spread in this draw [-].
    pub limit: f64,
    /// Solved, or refused with a reason.
    pub outcome: Outcome,
}

/// How a solved or refused cylinder compares with the mean.
#[derive(Copy, Eq)]
pub enum State {
    /// Below the mean by more than half the limit, and by more than its doubt.
    Starved,
    /// Above the mean by more than half the limit, and by more than its doubt.
    Overfed,
    /// Within half the limit of the mean.
    Even,
    /// Outside half the limit but within its own doubt.
    TooCloseToTell,
}

/// One cylinder's part of the air.
pub struct CylinderAnswer {
    /// Cylinder id.
    pub cylinder: String,
    /// Its part of the total [-].
    pub share: f64,
    /// Share over the mean share, minus one [-].
    pub deviation: f64,
    /// Half-width of the band in which `deviation` is expected 19 times in 20, from the laws' scatter [-].
    pub doubt: f64,
    /// The verdict on it.
    pub state: State,
    /// Air drawn by this cylinder, mean over the cycle [kg/s].
    pub flow: f64,
    /// Mean stagnation pressure at its ports while it draws [Pa].
    pub pressure: f64,
    /// Mean stagnation temperature at its ports while it draws [K].
    pub temperature: f64,
    /// Its ports.
    pub ports: Vec<PortAnswer>,
    /// The laws that contribute most to `doubt`, largest first.
    pub doubt_causes: Vec<DoubtCause>,
}

/// One port's part of its cylinder's air.
pub struct PortAnswer {
    /// Node id of the port.
    pub port: String,
    /// Its part of the total over all cylinders [-].
    pub share: f64,
    /// Air through it, mean over the cycle [kg/s].
    pub flow: f64,
}

/// One cause of doubt.
pub struct DoubtCause {
    /// Catalogue kind of the law.
    pub law: String,
    /// Half-width that this law alone would cause [-].
    pub amount: f64,
}

/// One thing that costs pressure on a path.
pub struct BudgetItem {
    /// Id of the branch or node.
    pub element: String,
    /// Position in the branch's list of losses, from 0; absent for what the ends of the branch cost.
    pub loss: Option<u32>,
    /// What it is, in words.
    pub label: String,
    /// Stagnation pressure lost, negative when regained [Pa].
    pub fall: f64,
}

/// The way from the source to one port, by the leg that brings most air at each node.
pub struct Path {
    /// Node id of the port.
    pub port: String,
    /// Cylinder id.
    pub cylinder: String,
    /// Losses in order from source to port; they add up to `fall`.
    pub items: Vec<BudgetItem>,
    /// Source stagnation pressure minus the pressure at the path's end [Pa].
    pub fall: f64,
    /// Whether other ways lead to the port too.
    pub other_ways: bool,
}

/// Why the worst cylinder differs from the best one.
pub struct Gap {
    /// Cylinder farthest from the mean.
    pub worst: String,
    /// Cylinder that gets most, or least when the worst is overfed.
    pub best: String,
    /// What the parts are parts of.
    pub quantity: GapQuantity,
    /// Worst minus best: share [-] on the bench, port pressure [Pa] while running.
    pub total: f64,
    /// Parts, largest first; they add up to `total`.
    pub parts: Vec<GapPart>,
}

/// What a gap is measured in.
#[derive(Copy, Eq)]
pub enum GapQuantity {
    /// Share of the total [-].
    Share,
    /// Stagnation pressure at the port [Pa].
    PortPressure,
}

/// One loss's part of a gap.
pub struct GapPart {
    /// Id of the branch or node.
    pub element: String,
    /// Position in the branch's list of losses, from 0; absent for what the ends of the branch cost.
    pub loss: Option<u32>,
    /// What it is, in words.
    pub label: String,
    /// Its part, in the gap's unit.
    pub amount: f64,
}

/// One loss in a branch as solved.
pub struct LossAnswer {
    /// What it is, in words.
    pub label: String,
    /// Stagnation pressure lost in the direction of flow, mean over the draw's networks [Pa].
    pub fall: f64,
    /// Largest Mach number where the loss is taken [-].
    pub mach: f64,
}

/// One branch as solved.
pub struct BranchAnswer {
    /// Branch id.
    pub branch: String,
    /// Mass flow from `from` to `to`, mean over the draw's networks [kg/s].
    pub flow: f64,
    /// Largest magnitude of the mass flow over the draw's networks [kg/s].
    pub peak_flow: f64,
    /// Largest velocity in the branch, at the place of its largest Mach number [m/s].
    pub velocity: f64,
    /// Largest Mach number in the branch [-].
    pub mach: f64,
    /// Largest Reynolds number in its smallest section [-].
    pub reynolds: f64,
    /// Whether a section reaches Mach 1.
    pub choked: bool,
    /// Losses in the branch's own order, then what its ends cost.
    pub losses: Vec<LossAnswer>,
}

/// One node as solved.
pub struct NodeAnswer {
    /// Node id.
    pub node: String,
    /// Stagnation pressure, mean over the draw's networks [Pa].
    pub pressure: f64,
    /// Stagnation temperature of the air that passes, mean over the draw's networks by its flow [K].
    pub temperature: f64,
}

/// How well the equations are met, with the laws as published.
#[derive(Copy)]
pub struct Certificate {
    /// Largest mass imbalance of a node over the total flow [-].
    pub imbalance: f64,
    /// Largest |fall - sum of losses| over branches and budget paths, over the largest source-to-port fall [-].
    pub closure: f64,
    /// Largest energy imbalance of a node over the total flow of enthalpy [-].
    pub energy: f64,
    /// Newton steps over all networks of the draw.
    pub iterations: u32,
    /// Networks solved for the draw.
    pub networks: u32,
}

/// A solved draw.
pub struct Solved {
    /// The verdict sentence of this draw.
    pub sentence: String,
    /// Which kind of verdict the sentence gives.
    pub verdict: VerdictKind,
    /// Total air [kg/s].
    pub total: f64,
    /// Loss from the sources, or what blows, to the ports over the square of the total air: times the square
    /// of another total it is, nearly, the loss at that one [Pa s2/kg2].
    pub resistance: f64,
    /// (largest - smallest) / mean of the cylinders' air [-].
    pub spread: f64,
    /// Standard deviation over mean of the cylinders' air [-].
    pub coefficient_of_variation: f64,
    /// Cylinders in the engine's order.
    pub cylinders: Vec<CylinderAnswer>,
    /// Why the worst differs from the best; absent with one cylinder.
    pub gap: Option<Gap>,
    /// Pressure budget of every port.
    pub paths: Vec<Path>,
    /// Branches in the study's order.
    pub branches: Vec<BranchAnswer>,
    /// Nodes in the study's order.
    pub nodes: Vec<NodeAnswer>,
    /// How well the equations are met.
    pub certificate: Certificate,
    /// Shares of a second solution, when other starts found one.
    pub second_solution: Option<Vec<f64>>,
    /// Laws used outside their range, high Mach numbers, assumptions of this draw.
    pub warnings: Vec<Warning>,
    /// Where the engine runs and what has been found for it; absent on the bench.
    pub operating: Option<OperatingAnswer>,
    /// What the shares do to the mixture; absent on the bench.
    pub mixture: Option<MixtureAnswer>,
}

/// Which kind of verdict a sentence gives.
#[derive(Copy, Eq)]
pub enum VerdictKind {
    /// The spread is inside the limit.
    Even,
    /// One cylinder is farthest from the mean.
    Uneven,
    /// Several cylinders share the farthest place.
    Tied,
    /// The spread is outside the limit, but no deviation is more than its doubt.
    WithinDoubt,
    /// A branch on the worst cylinder's path is choked.
    Choked,
    /// No answer.
    Refused,
}

/// A draw that cannot be solved.
pub struct Refusal {
    /// Which reason.
    pub reason: RefusalKind,
    /// The verdict sentence: what, where, and what to do.
    pub sentence: String,
    /// Ids of the nodes and branches to look at.
    pub elements: Vec<String>,
    /// Greatest crankshaft speed that the choked section feeds [rev/s].
    pub greatest_speed: Option<f64>,
}

/// Why a draw cannot be solved.
#[derive(Copy, Eq)]
pub enum RefusalKind {
    /// A choked section cannot pass the engine's total.
    SectionTooSmall,
    /// The solver found no state that meets the certificate.
    NotConverged,
    /// A blower would run beyond its efficiency table.
    PastTable,
    /// What a bypass returns to the blower's inlet is too much and too hot for a steady state.
    HotBypass,
}

/// An answer exists, but something deserves a look.
pub struct Warning {
    /// Which kind.
    pub kind: WarningKind,
    /// Id of the node or branch; empty when it concerns the whole study.
    pub element: String,
    /// Field or loss position, `losses[2].length`; empty when it concerns the element.
    pub field: String,
    /// What and what to do.
    pub message: String,
}

/// Kinds of warning.
#[derive(Copy, Eq)]
pub enum WarningKind {
    /// A law used outside the range its source states.
    OutsideRange,
    /// Neighbouring sections differ without a loss between them.
    SectionJump,
    /// A branch leaves a chamber without an entry loss.
    PerfectEntry,
    /// Losses closer together than handbook values assume.
    CloseLosses,
    /// A Mach number high enough that handbook values at low speed no longer hold.
    HighMach,
    /// A leg in sight of a jet that the plenum model does not see.
    JetInSight,
    /// Part of the network that no air can reach or leave.
    DeadEnd,
    /// A second solution exists.
    SecondSolution,
    /// A limit that was typed is passed.
    PastLimit,
    /// An assumption of the draw.
    Assumption,
}
}

answer! {
/// A draw in a few numbers.
pub struct Figures {
    /// Total air [kg/s].
    pub total: f64,
    /// (largest - smallest) / mean of the cylinders' air [-].
    pub spread: f64,
    /// Each cylinder's part of the total, in the engine's order [-].
    pub shares: Vec<f64>,
}

/// What comes of asking for a draw's figures.
#[serde(tag = "kind")]
pub enum FiguresOutcome {
    /// The figures.
    Solved(Figures),
    /// The draw has no answer.
    Refused {
        /// What, where, and what to do.
        sentence: String,
    },
    /// The study lacks what the draw needs.
    Incomplete,
    /// The study is wrong.
    Wrong {
        /// All that is wrong with it.
        errors: Vec<StudyError>,
    },
}
}

answer! {
/// Solved, or refused with a reason.
#[serde(tag = "kind")]
#[allow(clippy::large_enum_variant, reason = "a handful of values, never in arrays that matter")]
pub enum Outcome {
    /// Every figure of the draw.
    Solved(Box<Solved>),
    /// Why there is none.
    Refused(Refusal),
}
}

/// Which of a study's draws are wanted. One that the study is not complete for stands for the headline's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "generate", derive(ts_rs::TS))]
#[cfg_attr(feature = "generate", ts(rename_all = "camelCase"))]
pub enum Part {
    /// All of them.
    Whole,
    /// The headline's.
    Headline,
    /// This one alone.
    First(Draw),
    /// All but this one.
    Rest(Draw),
}

impl Draw {
    /// Whether the flow bench draws.
    pub fn is_bench(self) -> bool {
        matches!(self, Self::BenchOneAtATime | Self::BenchAllOpen)
    }
}
