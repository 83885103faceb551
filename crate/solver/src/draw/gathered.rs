//! What is told of a running draw's states once they agree: sensitivities, and the networks as they stand.

use super::reading::Reading;
use super::running::{Cycle, Swept};
use super::spectrum::Gradients;
use super::{Drawn, Refused, Snapshot};
use crate::solve::Residuals;

/// What is told of states that agree, and of no others, beside what the networks say.
pub(super) struct Gathered {
    /// What every uncertain number does to the readings.
    pub(super) gradients: Gradients,
    /// By interval.
    snapshots: Vec<Snapshot>,
}

impl<'m> Cycle<'m, '_> {
    /// Reads states that agree, and all that is told of them.
    pub(super) fn gather(&mut self) -> (Swept, Gathered) {
        let (mut swept, mut gathered) = (self.nothing_swept(), self.nothing_gathered());
        for interval in 0..self.intervals.len() {
            self.set_draws(interval);
            if let Some(mut state) = self.states[interval].take() {
                let system = &mut self.solver.system;
                let residuals = system.evaluate_exactly(self.model, &self.conditions, &mut state);
                let regular = self.solver.linearise(&self.conditions, &state);
                let readings = self.read_interval(interval, &state, regular, &mut swept);
                self.states[interval] = Some(state);
                self.gather_interval(interval, residuals, &readings, &mut gathered);
            }
        }
        (swept, gathered)
    }

    /// Gathers what is told of an interval's network as it has just been evaluated and read.
    pub(super) fn gather_interval(
        &mut self,
        interval: usize,
        residuals: Residuals,
        readings: &[Reading],
        gathered: &mut Gathered,
    ) {
        let Some(state) = self.states[interval].clone() else {
            return;
        };
        let forcings = self.solver.forcings(&state);
        for reading in readings {
            let (result, gradient) = (reading.result, &reading.gradient);
            gathered.gradients.add(result, &forcings, gradient, 1.0);
        }
        let weight = self.intervals[interval].weight;
        let snapshot = Snapshot::take(&mut self.solver, state, weight, residuals);
        gathered.snapshots.push(snapshot);
    }

    pub(super) fn nothing_gathered(&self) -> Gathered {
        Gathered {
            gradients: Gradients::new(self.shared.reads.len()),
            snapshots: Vec::with_capacity(self.intervals.len()),
        }
    }

    pub(super) fn drawn(self, (swept, gathered): (Swept, Gathered)) -> Result<Drawn<'m>, Refused> {
        let found = self.found(&swept);
        self.inside_tables(&found)?;
        let mut drawn = Drawn {
            model: self.model,
            snapshots: gathered.snapshots,
            cylinder_flow: self.flows().to_vec(),
            port_flow: vec![0.0; self.model.ports.len()],
            port_snapshots: vec![Vec::new(); self.model.ports.len()],
            gradients: gathered.gradients,
            iterations: self.solver.iterations,
            second: None,
            found: Some(found),
        };
        let intervals = self.intervals.iter().zip(&drawn.snapshots);
        for (position, (interval, snapshot)) in intervals.enumerate() {
            for (place, port) in self.model.ports.iter().enumerate() {
                let legs = self.model.nodes[port.node].legs.iter();
                let arriving = legs.filter(|leg| {
                    self.model.branches[leg.branch].to != port.draws_at
                        || port.draws_at == port.node
                });
                let flow = &snapshot.state.flow;
                let flow: f64 = arriving.map(|leg| leg.flow_into(flow)).sum();
                drawn.port_flow[place] += interval.weight * flow;
                if interval.counts[port.cylinder] > 0.0 {
                    drawn.port_snapshots[place].push((position, interval.counts[port.cylinder]));
                }
            }
        }
        Ok(drawn)
    }
}
