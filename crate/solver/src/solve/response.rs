//! How a branch's flow answers to what its ends do.
//!
//! Far from choking the fall follows from the flow. Near choking it is the other way round: flow against
//! pressure is smooth there, pressure against flow is not.

use super::system::direction;
use crate::branch::{Arriving, Chain, Fall};
use crate::gas::Warmth;
use crate::march::March;
use crate::model::Model;

/// Near choking the fall is so steep that the flow's last bits are worth more than a closure allows; what
/// so many of them are worth is no miss [-].
const RESOLUTION: f64 = 16.0;

/// Which way a branch's equation is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Form {
    /// The fall from the flow.
    #[default]
    ByFlow,
    /// The flow from the leg pressures, in the same direction and not choked.
    ByPressures,
    /// The flow from the leg pressures, choked or about to turn round.
    Elsewhere,
}

/// One branch at the present state.
#[derive(Clone, Copy, Debug, Default)]
pub struct BranchState {
    /// Whether air goes from `from` to `to`.
    pub forward: bool,
    /// Leg pressure difference in the direction of flow that the fall does not account for [Pa].
    pub residual: f64,
    /// What the flow is short of with the leg pressures as they are, from `from` to `to` [kg/s].
    pub missing: f64,
    /// How much slower than at once the flow is to follow, see `System::inertia` [-].
    pub lag: f64,
    /// Pressure difference that stands for what the flow is short of, per flow [Pa s/kg].
    pub stiffness: f64,
    /// Leg pressure difference that no loss accounts for: the shock behind a choked section, or what the
    /// flow's last bits leave near choking [Pa].
    pub shock: f64,
    /// Whether a section is choked.
    pub choked: bool,
    /// Which way the equation is written.
    pub form: Form,
    /// The chain's fall.
    pub fall: Fall,
    /// Change of flow with the pressure of the leg the air comes from [kg/(s Pa)].
    pub by_upstream: f64,
    /// Change of flow with the pressure of the leg it goes to, sign reversed [kg/(s Pa)].
    pub by_downstream: f64,
    /// Change of flow with the temperature it comes with [kg/(s K)].
    pub by_temperature: f64,
    /// Change of flow with the temperature behind its charge cooler's passage [kg/(s K)].
    pub by_leaving: f64,
}

/// What stands around a branch.
#[derive(Clone, Copy, Debug)]
pub struct Around<'s> {
    /// Leg pressure at `from` above the datum [Pa].
    pub from: f64,
    /// Leg pressure at `to` above the datum [Pa].
    pub to: f64,
    /// Pressure at gauge zero [Pa].
    pub datum: f64,
    /// What the temperatures of the nodes at `from` and `to` decide.
    pub warmth: (&'s Warmth, &'s Warmth),
    /// Mass flow from `from` to `to` [kg/s].
    pub flow: f64,
    /// Temperature behind the branch's passage of a charge cooler, if it has one [K].
    pub leaving: f64,
    /// Typical slope of the branch's fall with flow [Pa s/kg].
    pub reference: f64,
    /// Added linear resistance [Pa s/kg].
    pub added: f64,
    /// Smallest slope [Pa s/kg].
    pub floor: f64,
    /// Resistance against a change of the flow within this step [Pa s/kg].
    pub inertia: f64,
}

impl BranchState {
    /// The state with its flow following later.
    fn slowed(self, lag: f64) -> Self {
        let part = 1.0 / (1.0 + lag);
        Self {
            lag,
            by_upstream: part * self.by_upstream,
            by_downstream: part * self.by_downstream,
            by_temperature: part * self.by_temperature,
            by_leaving: part * self.by_leaving,
            ..self
        }
    }

    /// A branch that follows no law, with the flow it is given and the flow it has, `from` to `to` [kg/s].
    pub fn given(given: f64, flow: f64) -> Self {
        Self {
            forward: flow >= 0.0,
            missing: given - flow,
            ..Self::default()
        }
    }

    /// What the flow is to change by with the leg pressures as they are, from `from` to `to` [kg/s].
    pub fn shift(&self) -> f64 {
        self.missing / (1.0 + self.lag)
    }

    /// How far a step that changed the flow by `change` missed the equation with the lag in it [Pa].
    pub fn step_error(&self, change: f64) -> f64 {
        self.stiffness * (self.missing - self.lag * change).abs()
    }
}

impl Around<'_> {
    /// Which way the air goes; what is at rest is about to go where the leg pressures drive it.
    fn forward(&self) -> bool {
        self.flow > 0.0 || (self.flow == 0.0 && self.from >= self.to)
    }

    fn air(&self, forward: bool, flow: f64) -> Arriving {
        let (gauge, warmth) = if forward {
            (self.from, self.warmth.0)
        } else {
            (self.to, self.warmth.1)
        };
        Arriving::warm(self.datum + gauge, *warmth, flow).leaving_at(self.leaving)
    }
}

/// A branch's air as its flow and its ends have it, before its first element.
pub fn set_out<'m>(model: &'m Model, branch: usize, around: &Around) -> March<'m> {
    let (chain, chamber, _) = direction(model, branch, around.forward());
    let air = around.air(around.forward(), around.flow.abs());
    March::new(chain, air, chamber)
}

/// The response of one branch, whose air has come to its end.
pub fn respond(model: &Model, branch: usize, around: &Around, march: &March) -> BranchState {
    let fall = march.fall().filter(|fall| !fall.near_choking);
    let by_flow = |fall| by_flow(around, fall);
    fall.map_or_else(|| by_pressures(model, branch, around), by_flow)
}

fn by_flow(around: &Around, fall: Fall) -> BranchState {
    let forward = around.forward();
    let sign = if forward { 1.0 } else { -1.0 };
    let flow = around.flow.abs();
    let residual = sign * (around.from - around.to) - fall.fall - around.added * flow;
    let slope = (fall.by_flow + around.added).max(around.floor);
    let found = BranchState {
        forward,
        residual,
        missing: sign * residual / slope,
        stiffness: slope,
        fall,
        by_upstream: (1.0 - fall.by_pressure) / slope,
        by_downstream: 1.0 / slope,
        by_temperature: -fall.by_temperature / slope,
        by_leaving: -fall.by_leaving / slope,
        ..BranchState::default()
    };
    found.slowed(around.inertia / slope)
}

fn by_pressures(model: &Model, branch: usize, around: &Around) -> BranchState {
    let forward = around.from >= around.to;
    let (chain, chamber, _) = direction(model, branch, forward);
    let drop = (around.from - around.to).abs();
    let (flow, mut found) = driven(chain, chamber, around.air(forward, 0.0), drop, around);
    let sign = if forward { 1.0 } else { -1.0 };
    let turning = (around.flow > 0.0) != forward;
    found.forward = forward;
    found.missing = sign * flow - around.flow;
    if turning {
        // The flow may come to rest anywhere on its way to the other side.
        let secant = (drop / found.missing.abs()).max(around.floor);
        found.by_upstream = 1.0 / secant;
        found.by_downstream = 1.0 / secant;
        found.by_temperature = 0.0;
        found.by_leaving = 0.0;
    }
    let free = !turning && !found.choked;
    found.form = if free {
        Form::ByPressures
    } else {
        Form::Elsewhere
    };
    found.stiffness = if found.choked {
        drop / flow.max(around.flow.abs())
    } else {
        1.0 / found.by_downstream
    };
    found.residual += found.stiffness * found.missing.abs();
    let against = if free {
        found.stiffness
    } else {
        around.reference
    };
    found.slowed(around.inertia / against)
}

/// The flow that a leg pressure difference drives through a chain, and the state in which it does.
fn driven(
    chain: &Chain,
    chamber: bool,
    air: Arriving,
    drop: f64,
    around: &Around,
) -> (f64, BranchState) {
    let greatest = chain.greatest_flow(air, chamber);
    let at = |flow: f64| chain.fall(air.with_flow(flow), chamber);
    let mut state = BranchState::default();
    if let Some(fall) = at(greatest)
        && fall.fall + around.added * greatest <= drop
    {
        // Choked: only what arrives matters. The derivative is a difference, since Re plays a small part.
        let step = 1e-5;
        let by = |change: fn(Arriving, f64) -> Arriving, value: f64| {
            let at = |factor: f64| chain.greatest_flow(change(air, factor), chamber);
            (at(1.0 + step) - at(1.0 - step)) / (2.0 * step * value)
        };
        state.fall = fall;
        state.choked = true;
        state.shock = drop - fall.fall - around.added * greatest;
        state.by_upstream = by(Arriving::pressed, air.pressure);
        state.by_temperature = by(Arriving::warmed, air.warmth.temperature);
        if chain.passage.is_some() {
            state.by_leaving = by(Arriving::left_warmer, air.leaving);
        }
        return (greatest, state);
    }
    let (mut low, mut high) = (0.0, greatest);
    let mut flow = 0.5 * greatest;
    let mut last = Fall::default();
    for _ in 0..200 {
        match at(flow) {
            Some(fall) => {
                let excess = fall.fall + around.added * flow - drop;
                last = fall;
                if excess > 0.0 {
                    high = flow;
                } else {
                    low = flow;
                }
                let next = flow - excess / (fall.by_flow + around.added).max(around.floor);
                let next = if next > low && next < high {
                    next
                } else {
                    0.5 * (low + high)
                };
                let done =
                    (next - flow).abs() <= 2.0 * f64::EPSILON * flow || next <= low || next >= high;
                if done {
                    break;
                }
                flow = next;
            }
            None => {
                high = flow;
                flow = 0.5 * (low + high);
            }
        }
    }
    let slope = (last.by_flow + around.added).max(around.floor);
    state.fall = last;
    let left = drop - last.fall - around.added * flow;
    if left.abs() <= RESOLUTION * f64::EPSILON * flow * slope {
        state.shock = left;
    } else {
        state.residual = left;
    }
    state.by_upstream = (1.0 - last.by_pressure) / slope;
    state.by_downstream = 1.0 / slope;
    state.by_temperature = -last.by_temperature / slope;
    state.by_leaving = -last.by_leaving / slope;
    (flow, state)
}
