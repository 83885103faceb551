//! A header: regain along the run, static pressure for the side legs.
//!
//! With q the velocity head in the run section and beta the regain factor in dp = -2 beta rho V dV,
//! p + 2 beta q is the same at both ends of the run whatever way the air goes. A side leg sees the
//! static pressure of the arriving run. Referred to the arriving stagnation pressure, a run leg loses
//! (1 - 2 beta)(q_arriving - q_leg) and a side leg q_arriving. When both run ends bring air,
//! q_arriving is their mean by flow; when none does it is zero.

use super::{Header, JunctionDoubt, LegLosses, NodeState, SectionHead, smooth_step};
use crate::law::junction::header_momentum::{SCATTER_COMBINING, SCATTER_DIVIDING};

/// Part of the total leg flow over which the regain factor goes from combining to dividing [-].
const BLEND: f64 = 1e-3;

/// Mean head of the arriving run legs, with its derivative by each leg's flow.
struct ArrivingHead {
    value: f64,
    by_flow: Vec<f64>,
}

/// Regain factor with its derivative by each leg's flow, and how far it is the dividing one.
struct Regain {
    value: f64,
    by_flow: Vec<f64>,
    dividing_part: f64,
}

impl Header {
    pub(super) fn losses(&self, state: NodeState, flows: &[f64], out: &mut LegLosses) {
        let legs = flows.len();
        let heads = self.heads(state, flows);
        let arriving = self.arriving(flows, &heads);
        let regain = self.regain(flows);
        for leg in 0..legs {
            let row = &mut out.by_flow[leg * legs..(leg + 1) * legs];
            if self.runs[leg] {
                let kept = 1.0 - 2.0 * regain.value;
                let difference = arriving.value - heads[leg].value;
                out.loss[leg] = kept * difference;
                for (other, slope) in row.iter_mut().enumerate() {
                    *slope =
                        kept * arriving.by_flow[other] - 2.0 * regain.by_flow[other] * difference;
                }
                row[leg] -= kept * heads[leg].by_flow * flows[leg].signum();
            } else {
                out.loss[leg] = arriving.value;
                row.copy_from_slice(&arriving.by_flow);
            }
        }
    }

    pub(super) fn doubts(&self, state: NodeState, flows: &[f64]) -> Vec<JunctionDoubt> {
        let heads = self.heads(state, flows);
        let arriving = self.arriving(flows, &heads);
        let regain = self.regain(flows);
        let by_number = (0..flows.len())
            .map(|leg| {
                if self.runs[leg] {
                    -2.0 * (arriving.value - heads[leg].value)
                } else {
                    0.0
                }
            })
            .collect();
        let scatter = regain.dividing_part * SCATTER_DIVIDING
            + (1.0 - regain.dividing_part) * SCATTER_COMBINING;
        vec![JunctionDoubt {
            law: "header",
            scatter,
            by_number,
        }]
    }

    fn heads(&self, state: NodeState, flows: &[f64]) -> Vec<SectionHead> {
        flows
            .iter()
            .zip(&self.runs)
            .map(|(flow, run)| {
                if *run {
                    state.head(*flow, self.area)
                } else {
                    SectionHead::default()
                }
            })
            .collect()
    }

    fn arriving(&self, flows: &[f64], heads: &[SectionHead]) -> ArrivingHead {
        let brings = |leg: usize| self.runs[leg] && flows[leg] > 0.0;
        let inflow: f64 = (0..flows.len())
            .filter(|leg| brings(*leg))
            .map(|leg| flows[leg])
            .sum();
        let mut by_flow = vec![0.0; flows.len()];
        if inflow == 0.0 {
            return ArrivingHead {
                value: 0.0,
                by_flow,
            };
        }
        let weighted: f64 = (0..flows.len())
            .filter(|leg| brings(*leg))
            .map(|leg| flows[leg] * heads[leg].value)
            .sum();
        let value = weighted / inflow;
        for leg in (0..flows.len()).filter(|leg| brings(*leg)) {
            by_flow[leg] = (heads[leg].value + flows[leg] * heads[leg].by_flow - value) / inflow;
        }
        ArrivingHead { value, by_flow }
    }

    /// The dividing factor when the side legs take air on balance, the combining one when they bring it.
    fn regain(&self, flows: &[f64]) -> Regain {
        let mut by_flow = vec![0.0; flows.len()];
        let total: f64 = flows.iter().map(|flow| flow.abs()).sum();
        if total == 0.0 {
            return Regain {
                value: self.dividing,
                by_flow,
                dividing_part: 1.0,
            };
        }
        let leaving: f64 = -flows
            .iter()
            .zip(&self.runs)
            .filter(|(_, run)| !**run)
            .map(|(flow, _)| flow)
            .sum::<f64>();
        let part = leaving / total;
        let (dividing_part, slope) = smooth_step(part / BLEND);
        let value = self.combining + (self.dividing - self.combining) * dividing_part;
        if slope != 0.0 {
            let by_part = (self.dividing - self.combining) * slope / BLEND;
            for (leg, flow) in flows.iter().enumerate() {
                let by_leaving = if self.runs[leg] { 0.0 } else { -1.0 };
                by_flow[leg] = by_part * (by_leaving - part * flow.signum()) / total;
            }
        }
        Regain {
            value,
            by_flow,
            dividing_part,
        }
    }
}
