//! What pulls: the flow bench, the running engine, and the cycle mean beside it.

mod bench;
mod dense;
mod events;
mod found;
mod gathered;
mod guess;
mod joint;
mod operating;
mod prepared;
mod range;
mod reading;
mod refusal;
mod running;
mod shared;
mod spectrum;
mod worlds;

pub use operating::{Operating, operating, operating_at};
pub use prepared::{CycleState, Prepared, PreparedCycle, Repeated, RepeatedCycle, SteadyState};
pub use range::{Numbers, over_speeds};
pub use shared::BlowerState;
pub use spectrum::Gradients;
pub use worlds::Redrawn;

use crate::answer::Draw;
use crate::model::Model;
use crate::solve::{BranchState, Failure, Flowing, Residuals};
use crate::study::Study;

/// One steady network of a draw.
#[derive(Clone, Debug)]
pub struct Snapshot {
    /// Part of the draw's time that it stands for [-].
    pub weight: f64,
    /// The state.
    pub state: Flowing,
    /// Every branch at that state.
    pub branches: Vec<BranchState>,
    /// Leg losses by node, empty where legs do not differ [Pa].
    pub leg_losses: Vec<Vec<f64>>,
    /// How well the equations are met.
    pub residuals: Residuals,
}

/// A solved draw, before it is put into words.
#[derive(Clone, Debug)]
pub struct Drawn<'m> {
    /// The network.
    pub model: &'m Model,
    /// Its steady states.
    pub snapshots: Vec<Snapshot>,
    /// Air of each cylinder, mean over the cycle [kg/s].
    pub cylinder_flow: Vec<f64>,
    /// Air of each port, mean over the cycle [kg/s].
    pub port_flow: Vec<f64>,
    /// Snapshots in which each port draws, with their part of its drawing time.
    pub port_snapshots: Vec<Vec<(usize, f64)>>,
    /// Change of each cylinder's air with every uncertain number [kg/s].
    pub gradients: Gradients,
    /// Newton steps taken.
    pub iterations: u32,
    /// Port flows of a second solution, if another start found one [kg/s].
    pub second: Option<Vec<f64>>,
    /// What has been found beside the cylinders' air, while running.
    pub found: Option<Found>,
}

/// What the intervals of a running draw share beside the cylinders' air.
#[derive(Clone, Debug)]
pub struct Found {
    /// Largest part by which a shared equation is missed [-].
    pub missed: f64,
    /// Pressure of the air around the engine [Pa].
    pub ambient: f64,
    /// Node where boost is read, and its static pressure [Pa].
    pub boost: Option<(usize, f64)>,
    /// Highest pressure of a source or behind a blower less the mean at the ports [Pa].
    pub loss: f64,
    /// By cylinder: mean temperature at its ports while it draws [K].
    pub temperatures: Vec<f64>,
    /// By node: pressure of each source [Pa].
    pub sources: Vec<Option<f64>>,
    /// In the order of the branches.
    pub blowers: Vec<BlowerState>,
}

/// Why a draw has no answer.
#[derive(Clone, Debug)]
pub enum Refused {
    /// A section cannot pass what the engine asks for.
    Section {
        /// Branch whose section is choked, or nothing when it is a node's.
        branch: Option<usize>,
        /// Node whose run section is choked.
        node: Option<usize>,
        /// Part of the asked total that it passes [-].
        part: f64,
    },
    /// A blower would run beyond an efficiency table.
    PastTable {
        /// Its branch.
        branch: usize,
        /// Which efficiency.
        which: &'static str,
        /// On which side, to follow "the blower runs".
        side: &'static str,
    },
    /// What a bypass returns leaves no steady state.
    HotBypass {
        /// The bypass.
        branch: usize,
    },
    /// No state was found.
    Failed(Failure),
}

/// Solves a draw; nothing when it is one of the running engine and that does not run.
pub fn drawn<'m>(
    study: &Study,
    model: &'m Model,
    operating: Option<&Operating>,
    draw: Draw,
) -> Option<Result<Drawn<'m>, Refused>> {
    let cylinders = study.engine.cylinders.len();
    let bench = |all| bench::draw(model, cylinders, &study.settings.bench, all);
    Some(match draw {
        Draw::BenchOneAtATime => bench(false),
        Draw::BenchAllOpen => bench(true),
        Draw::Running => running::running(model, operating?, false),
        Draw::CycleMean => running::running(model, operating?, true),
    })
}

impl Snapshot {
    fn take(
        solver: &mut crate::solve::Solver<'_>,
        state: Flowing,
        weight: f64,
        residuals: Residuals,
    ) -> Self {
        Self {
            weight,
            branches: solver.system.branches.clone(),
            leg_losses: solver
                .system
                .legs
                .iter()
                .map(|legs| legs.loss.clone())
                .collect(),
            state,
            residuals,
        }
    }
}
