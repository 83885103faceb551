//! A plenum whose outgoing legs feel a typed fraction of the velocity head that enters.
//!
//! The entering head is the mean over the legs that bring air, by flow, taken at the plenum's pressure.

use super::{Jets, JunctionDoubt, LegLosses, NodeState, smooth_step};
use crate::law::junction::plenum_jet::PLENUM_JET_SCATTER;

/// Part of the total leg flow over which a leg goes from feeling no jet to feeling it [-].
const BLEND: f64 = 1e-2;

/// Head that enters, with its derivative by each leg's flow.
struct Entering {
    value: f64,
    by_flow: Vec<f64>,
}

/// How much of the jet a leg feels that takes this part of all leg flows, and its derivative by the part.
fn felt(part: f64) -> (f64, f64) {
    let (feels, slope) = smooth_step(part / BLEND * 2.0 - 1.0);
    (feels, slope * 2.0 / BLEND)
}

impl Jets {
    pub(super) fn losses(&self, state: NodeState, flows: &[f64], out: &mut LegLosses) {
        let legs = flows.len();
        let entering = self.entering(state, flows);
        let total: f64 = flows.iter().map(|flow| flow.abs()).sum();
        if total == 0.0 {
            return;
        }
        for leg in (0..legs).filter(|leg| self.fractions[*leg] != 0.0) {
            let part = -flows[leg] / total;
            let (feels, slope) = felt(part);
            out.loss[leg] = -self.fractions[leg] * entering.value * feels;
            for other in 0..legs {
                let by_other = if other == leg { -1.0 } else { 0.0 };
                let part_by_flow = (by_other - part * flows[other].signum()) / total;
                out.by_flow[leg * legs + other] = -self.fractions[leg]
                    * (entering.by_flow[other] * feels + entering.value * slope * part_by_flow);
            }
        }
    }

    /// One uncertain fraction for every leg, in their order; those that bring air feel none.
    pub(super) fn doubts(&self, state: NodeState, flows: &[f64]) -> Vec<JunctionDoubt> {
        let entering = self.entering(state, flows).value;
        let total: f64 = flows.iter().map(|flow| flow.abs()).sum();
        (0..flows.len())
            .map(|leg| {
                let mut by_number = vec![0.0; flows.len()];
                if flows[leg] < 0.0 {
                    by_number[leg] = -entering * felt(-flows[leg] / total).0;
                }
                JunctionDoubt {
                    law: "plenum",
                    scatter: PLENUM_JET_SCATTER,
                    by_number,
                }
            })
            .collect()
    }

    fn entering(&self, state: NodeState, flows: &[f64]) -> Entering {
        let mut by_flow = vec![0.0; flows.len()];
        let inflow: f64 = flows.iter().filter(|flow| **flow > 0.0).sum();
        if inflow == 0.0 {
            return Entering {
                value: 0.0,
                by_flow,
            };
        }
        let heads: Vec<_> = flows
            .iter()
            .zip(&self.areas)
            .map(|(flow, area)| state.head(*flow, *area))
            .collect();
        let incoming = || (0..flows.len()).filter(|leg| flows[*leg] > 0.0);
        let value = incoming()
            .map(|leg| flows[leg] * heads[leg].value)
            .sum::<f64>()
            / inflow;
        for leg in incoming() {
            by_flow[leg] = (heads[leg].value + flows[leg] * heads[leg].by_flow - value) / inflow;
        }
        Entering { value, by_flow }
    }
}
