//! Why a running draw has no answer.

use super::Refused;
use super::running::Cycle;
use super::shared::Unknown;
use crate::solve::Failure;

/// A section this near to choking limits the flow, if it is not so at a lesser flow too [-].
const CHOKES: f64 = 0.95;
/// That lesser flow over the limit [-]. A leak or a shut bypass is choked there as well, and limits nothing.
const LESSER: f64 = 0.7;

impl Cycle<'_, '_> {
    /// Why there is no answer: looks for the greatest part of the flow that the manifold passes.
    pub(super) fn explain(&mut self, failure: Failure) -> Refused {
        let asked = self.values.clone();
        let (mut low, mut high) = (0.0, 1.0);
        let mut near = Vec::new();
        while high - low >= 1e-4 {
            let part = 0.5 * (low + high);
            match self.sections(&asked, part) {
                Some(sections) => (low, near) = (part, sections),
                None => high = part,
            }
        }
        let before = self.sections(&asked, LESSER * low).unwrap_or_default();
        let mut limiting: Option<Tight> = None;
        for (tight, before) in near.iter().zip(&before) {
            let nearer = limiting.is_none_or(|other| tight.part > other.part);
            if tight.part > CHOKES && before.part < CHOKES && nearer {
                limiting = Some(*tight);
            }
        }
        match limiting {
            Some(Tight { branch, node, .. }) => Refused::Section {
                branch,
                node,
                part: low,
            },
            None => Refused::Failed(failure),
        }
    }

    /// How near each section comes to choking in any interval at a part of the flow that is asked for;
    /// nothing when an interval has no state.
    fn sections(&mut self, asked: &[f64], part: f64) -> Option<Vec<Tight>> {
        let unknowns = self.shared.unknowns.iter().zip(asked);
        self.values = unknowns
            .map(|(unknown, asked)| match unknown {
                Unknown::Air(_) | Unknown::BlowerFlow(_) => part * asked,
                _ => *asked,
            })
            .collect();
        let mut nearest: Vec<Tight> = Vec::new();
        for interval in 0..self.intervals.len() {
            self.solve_interval(interval).ok()?;
            let found = self.sections_of(interval)?;
            if nearest.is_empty() {
                nearest = found;
            } else {
                for (nearest, found) in nearest.iter_mut().zip(found) {
                    nearest.part = nearest.part.max(found.part);
                }
            }
        }
        Some(nearest)
    }

    /// How near each section comes to choking in an interval's state: branches, then nodes.
    fn sections_of(&self, interval: usize) -> Option<Vec<Tight>> {
        let state = self.states[interval].as_ref()?;
        let branches = self.solver.system.branches.iter().enumerate();
        let mut sections: Vec<Tight> = branches
            .map(|(branch, own)| Tight {
                part: own.fall.mach_square.sqrt(),
                branch: Some(branch),
                node: None,
            })
            .collect();
        for (node, at) in self.model.nodes.iter().enumerate() {
            if let Some(junction) = &at.junction {
                let legs = at.legs.iter();
                let flows: Vec<f64> = legs.map(|leg| leg.flow_into(&state.flow)).collect();
                let (pressure, temperature) = (state.pressure(node), state.temperature[node]);
                sections.push(Tight {
                    part: junction.choking_part(pressure, temperature, &flows),
                    branch: None,
                    node: Some(node),
                });
            }
        }
        Some(sections)
    }
}

/// How near a section is to choking: its Mach number, or its part of the choking flow.
#[derive(Clone, Copy)]
struct Tight {
    part: f64,
    branch: Option<usize>,
    node: Option<usize>,
}
