//! Why a running draw has no answer.

use super::Refused;
use super::running::Cycle;
use super::shared::Unknown;
use crate::solve::Failure;

impl Cycle<'_, '_> {
    /// Why there is no answer: looks for the greatest part of the flow that the manifold passes.
    pub(super) fn explain(&mut self, failure: Failure) -> Refused {
        let asked = self.values.clone();
        let (mut low, mut high) = (0.0, 1.0);
        let mut tightest = None;
        for _ in 0..40 {
            let part = 0.5 * (low + high);
            let unknowns = self.shared.unknowns.iter().zip(&asked);
            self.values = unknowns
                .map(|(unknown, asked)| match unknown {
                    Unknown::Air(_) | Unknown::BlowerFlow(_) => part * asked,
                    _ => *asked,
                })
                .collect();
            self.states.iter_mut().for_each(|state| *state = None);
            let passes = (0..self.intervals.len()).all(|interval| {
                let solved = self.solve_interval(interval).is_ok();
                if solved {
                    let found = self.tightest(interval);
                    tightest = tightest.max_by_part(found);
                }
                solved
            });
            if passes {
                low = part;
            } else {
                high = part;
            }
            if high - low < 1e-4 {
                break;
            }
        }
        match tightest {
            Some(Tight { part, branch, node }) if part > 0.95 && low > 0.0 => Refused::Section {
                branch,
                node,
                part: low,
            },
            _ => Refused::Failed(failure),
        }
    }

    /// The section nearest to choking in an interval's state.
    fn tightest(&self, interval: usize) -> Option<Tight> {
        let state = self.states[interval].as_ref()?;
        let mut tight = None;
        for (branch, own) in self.solver.system.branches.iter().enumerate() {
            let found = Some(Tight {
                part: own.fall.mach_square.sqrt(),
                branch: Some(branch),
                node: None,
            });
            tight = tight.max_by_part(found);
        }
        for (node, at) in self.model.nodes.iter().enumerate() {
            if let Some(junction) = &at.junction {
                let flows: Vec<f64> = at
                    .legs
                    .iter()
                    .map(|leg| leg.flow_into(&state.flow))
                    .collect();
                let part =
                    junction.choking_part(state.pressure(node), state.temperature[node], &flows);
                tight = tight.max_by_part(Some(Tight {
                    part,
                    branch: None,
                    node: Some(node),
                }));
            }
        }
        tight
    }
}

/// How near a section is to choking: its Mach number, or its part of the choking flow.
#[derive(Clone, Copy)]
struct Tight {
    part: f64,
    branch: Option<usize>,
    node: Option<usize>,
}

trait MaxByPart {
    fn max_by_part(self, other: Self) -> Self;
}

impl MaxByPart for Option<Tight> {
    fn max_by_part(self, other: Self) -> Self {
        match (self, other) {
            (Some(a), Some(b)) => Some(if b.part > a.part { b } else { a }),
            (a, b) => a.or(b),
        }
    }
}
