//! Nodes whose legs do not all feel the same pressure: headers, tees, wyes, plenums with jets.
//!
//! Such a node has one unknown, the mean stagnation pressure of what arrives. Each leg's end differs
//! from it by a loss that depends on all the leg flows. The sign of a leg's flow is positive into the
//! node, and a loss is node pressure minus leg pressure.
//!
//! Every loss is p times a function of the legs' flow functions and flow ratios, so its derivatives
//! with pressure and temperature follow from those with flow; `finish` says how.

mod dual;
mod header;
mod jets;
#[cfg(test)]
mod partials;
mod tee;

use crate::branch;
use crate::gas::{CHOKED_FLOW_FUNCTION, Warmth};
use crate::study::JunctionLaw;

/// Part of the flow functions up to which a junction's sections follow the gas law.
const GAS_LAW_TO: f64 = 0.995;
/// Beyond it the head goes on as a logarithm, so that Newton's steps across the choking point stay
/// finite and no head grows far past the pressure it is taken from; the excess of flow, over the flow
/// at that limit, at which its slope has halved [-].
const HALVED_AT: f64 = 0.05;

/// What stands at a node, as far as its legs differ.
#[derive(Clone, Debug)]
pub enum Junction {
    /// Run legs keep part of the velocity head, side legs see the static pressure before their take-off.
    Header(Header),
    /// Three legs with published coefficients.
    Tee(Tee),
    /// A chamber whose outgoing legs feel a fraction of the head that enters.
    Jets(Jets),
}

/// A flowing chamber.
#[derive(Clone, Debug)]
pub struct Header {
    /// Area of the run [m2].
    pub area: f64,
    /// Static-pressure regain factor where side legs leave [-].
    pub dividing: f64,
    /// Static-pressure regain factor where side legs join [-].
    pub combining: f64,
    /// Whether each leg is an end of the run.
    pub runs: Vec<bool>,
}

/// A tee or wye. Legs are ordered run, run, side.
#[derive(Clone, Debug)]
pub struct Tee {
    /// Area of the run [m2].
    pub area: f64,
    /// Area of the side leg [m2].
    pub side_area: f64,
    /// Angle between side leg and run [rad].
    pub angle: f64,
    /// Whose coefficients.
    pub law: JunctionLaw,
    /// How far the run's and the side leg's coefficients are off, in the author's own scatter; 0 as
    /// published [-].
    pub off: [f64; 2],
}

/// A plenum with typed jet fractions.
#[derive(Clone, Debug)]
pub struct Jets {
    /// Fraction of the entering head that each leg feels when air leaves by it [-].
    pub fractions: Vec<f64>,
    /// End section of each leg [m2].
    pub areas: Vec<f64>,
}

/// The losses of a node's legs with their derivatives.
#[derive(Clone, Debug, Default)]
pub struct LegLosses {
    /// Node pressure minus leg pressure [Pa].
    pub loss: Vec<f64>,
    /// Derivative of each loss with each leg's flow, row by row [Pa s/kg].
    pub by_flow: Vec<f64>,
    /// Derivative of each loss with the node's pressure [-].
    pub by_pressure: Vec<f64>,
    /// Derivative of each loss with the node's temperature [Pa/K].
    pub by_temperature: Vec<f64>,
}

/// An uncertain number inside a junction: its law and the derivative of each leg's loss with it.
#[derive(Clone, Debug)]
pub struct JunctionDoubt {
    /// Catalogue kind of the law.
    pub law: &'static str,
    /// One standard deviation of the number, in the unit that it is counted in.
    pub scatter: f64,
    /// Derivative of each leg's loss with the number [Pa].
    pub by_number: Vec<f64>,
}

impl Junction {
    /// Leg losses at a node pressure [Pa], its warmth and leg flows into the node [kg/s].
    pub fn losses(&self, pressure: f64, warmth: Warmth, flows: &[f64], out: &mut LegLosses) {
        let legs = flows.len();
        out.loss.clear();
        out.loss.resize(legs, 0.0);
        out.by_flow.clear();
        out.by_flow.resize(legs * legs, 0.0);
        let state = NodeState { pressure, warmth };
        match self {
            Self::Header(header) => header.losses(state, flows, out),
            Self::Tee(tee) => tee.losses(state, flows, out),
            Self::Jets(jets) => jets.losses(state, flows, out),
        }
        out.finish(state, flows);
    }

    /// What is uncertain about the leg losses at a solved state.
    pub fn doubts(&self, pressure: f64, temperature: f64, flows: &[f64]) -> Vec<JunctionDoubt> {
        let state = NodeState::new(pressure, temperature);
        match self {
            Self::Header(header) => header.doubts(state, flows),
            Self::Tee(tee) => tee.doubts(state, flows),
            Self::Jets(jets) => jets.doubts(state, flows),
        }
    }

    /// Largest part of its choking flow that a section of the junction carries [-].
    pub fn choking_part(&self, pressure: f64, temperature: f64, flows: &[f64]) -> f64 {
        let state = NodeState::new(pressure, temperature);
        let part =
            |flow: f64, area: f64| state.flow_function(flow, area).abs() / CHOKED_FLOW_FUNCTION;
        match self {
            Self::Header(header) => flows
                .iter()
                .zip(&header.runs)
                .filter(|(_, run)| **run)
                .map(|(flow, _)| part(*flow, header.area))
                .fold(0.0, f64::max),
            Self::Tee(tee) => part(flows[0], tee.area)
                .max(part(flows[1], tee.area))
                .max(part(flows[2], tee.side_area)),
            Self::Jets(_) => 0.0,
        }
    }
}

/// Stagnation state of a node.
#[derive(Clone, Copy, Debug)]
pub(crate) struct NodeState {
    pressure: f64,
    warmth: Warmth,
}

/// Stagnation minus static pressure in a section, with its derivative with the flow's magnitude.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct SectionHead {
    value: f64,
    by_flow: f64,
}

impl NodeState {
    fn new(pressure: f64, temperature: f64) -> Self {
        Self {
            pressure,
            warmth: Warmth::at(temperature),
        }
    }

    fn flow_function(self, flow: f64, area: f64) -> f64 {
        flow * self.warmth.root / (area * self.pressure)
    }

    /// Velocity head of a flow in a section at the node's stagnation state.
    fn head(self, flow: f64, area: f64) -> SectionHead {
        let flow = flow.abs();
        let limit = GAS_LAW_TO * CHOKED_FLOW_FUNCTION;
        let needed = self.flow_function(flow, area);
        let inside = if needed > limit {
            flow * limit / needed
        } else {
            flow
        };
        let air = branch::Arriving::warm(self.pressure, self.warmth, inside);
        let head = branch::exit(air, area).unwrap_or_default();
        if flow <= inside {
            return SectionHead {
                value: head.fall,
                by_flow: head.by_flow,
            };
        }
        let scale = HALVED_AT * inside;
        let excess = (flow - inside) / scale;
        SectionHead {
            value: head.fall + head.by_flow * scale * excess.ln_1p(),
            by_flow: head.by_flow / (1.0 + excess),
        }
    }
}

impl LegLosses {
    /// Multiplies every loss and derivative.
    pub fn scale(&mut self, part: f64) {
        let lists = [
            &mut self.loss,
            &mut self.by_flow,
            &mut self.by_pressure,
            &mut self.by_temperature,
        ];
        for value in lists.into_iter().flatten() {
            *value *= part;
        }
    }

    /// Derivatives with pressure and temperature: a loss is p times a function of flow sqrt(T) / p,
    /// so p dL/dp = L - sum of flow dL/dflow, and 2 T dL/dT is that same sum.
    fn finish(&mut self, state: NodeState, flows: &[f64]) {
        let legs = flows.len();
        self.by_pressure.clear();
        self.by_temperature.clear();
        for leg in 0..legs {
            let row = &self.by_flow[leg * legs..(leg + 1) * legs];
            let sum: f64 = row
                .iter()
                .zip(flows)
                .map(|(slope, flow)| slope * flow)
                .sum();
            self.by_pressure
                .push((self.loss[leg] - sum) / state.pressure);
            self.by_temperature
                .push(0.5 * sum / state.warmth.temperature);
        }
    }
}

/// 0 below -1, 1 above 1, with continuous second derivative between; value and derivative.
pub(crate) fn smooth_step(x: f64) -> (f64, f64) {
    if x <= -1.0 {
        (0.0, 0.0)
    } else if x >= 1.0 {
        (1.0, 0.0)
    } else {
        let t = 0.5 * (x + 1.0);
        (
            t * t * t * (10.0 + t * (6.0 * t - 15.0)),
            15.0 * t * t * (1.0 - t) * (1.0 - t),
        )
    }
}
