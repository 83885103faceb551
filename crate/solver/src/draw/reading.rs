//! What is read from one interval's state, with its derivatives.

use super::operating::{Boost, ReferenceDensity};
use super::running::{Cycle, Swept};
use super::shared::{Reads, tapped_area};
use crate::branch::{Arriving, exit};
use crate::gas;
use crate::model::LegEnd;
use crate::solve::Flowing;

/// What one interval's state adds to one reading.
pub(super) struct Reading {
    /// Position of the reading.
    pub(super) result: usize,
    pub(super) value: f64,
    /// By the network's unknowns; after the adjoint, by the right-hand side of its equations.
    pub(super) gradient: Vec<f64>,
}

impl Cycle<'_, '_> {
    /// What an interval's state adds to each reading.
    pub(super) fn readings(&self, interval: usize, state: &Flowing) -> Vec<Reading> {
        let total_swept: f64 = self.operating.swept.iter().sum();
        let interval = &self.intervals[interval];
        let mut readings = Vec::new();
        for (place, reads) in self.shared.reads.iter().enumerate() {
            let weight = interval.weight;
            match *reads {
                Reads::Fill(cylinder) => {
                    let count = interval.counts[cylinder];
                    if count == 0.0 {
                        continue;
                    }
                    let ports = self.port_parts(cylinder);
                    let exponent = self.operating.charge_exponent;
                    readings.push(self.reading(place, &ports, state, exponent, count));
                    if self.operating.reference == ReferenceDensity::Ports {
                        let part = count * self.operating.swept[cylinder] / total_swept;
                        let per_density = part / gas::GAS_CONSTANT;
                        let place = self.cylinders();
                        readings.push(self.reading(place, &ports, state, 1.0, per_density));
                    }
                }
                Reads::Density => {
                    if let ReferenceDensity::Node(node) = self.operating.reference {
                        let per_density = weight / gas::GAS_CONSTANT;
                        let node = [(node, 1.0)];
                        readings.push(self.reading(place, &node, state, 1.0, per_density));
                    }
                }
                Reads::Static(boost) => {
                    readings.push(self.static_pressure(place, boost, state, weight));
                }
                Reads::InletPressure(blower) => {
                    let node = [(self.operating.blowers[blower].inlet, 1.0)];
                    readings.push(self.reading(place, &node, state, 0.0, weight));
                }
                Reads::InletTemperature(blower) => {
                    readings.push(self.inlet_temperature(place, blower, state, weight));
                }
                Reads::InletDensity(blower) => {
                    let per_density = weight / gas::GAS_CONSTANT;
                    let node = [(self.operating.blowers[blower].inlet, 1.0)];
                    readings.push(self.reading(place, &node, state, 1.0, per_density));
                }
                Reads::OutletInflow(blower) => {
                    readings.push(self.outlet_inflow(place, blower, state, weight));
                }
            }
        }
        readings
    }

    fn blank_reading(&self, result: usize) -> Reading {
        Reading {
            result,
            value: 0.0,
            gradient: vec![0.0; self.solver.system.right.len()],
        }
    }

    pub(super) fn static_pressure(
        &self,
        result: usize,
        boost: Boost,
        state: &Flowing,
        weight: f64,
    ) -> Reading {
        let mut reading = self.blank_reading(result);
        let node = boost.node;
        let system = &self.solver.system;
        reading.value = weight * state.pressure(node);
        reading.gradient[system.pressure_unknown(node)] = weight;
        let Some(area) = tapped_area(self.model, node) else {
            return reading;
        };
        let arriving = |leg: &&LegEnd| leg.flow_into(&state.flow) > 0.0;
        let legs = self.model.nodes[node].legs.iter();
        let through: f64 = legs
            .clone()
            .filter(arriving)
            .map(|leg| leg.flow_into(&state.flow))
            .sum();
        let air = Arriving::new(state.pressure(node), state.temperature[node], through);
        // A section that cannot carry the flow is on its way to a state in which it can.
        if let Some(head) = exit(air, area) {
            reading.value -= weight * head.fall;
            reading.gradient[system.pressure_unknown(node)] -= weight * head.by_pressure;
            for leg in legs.filter(arriving) {
                reading.gradient[leg.branch] -= weight * head.by_flow * leg.into_sign();
            }
            if let Some(unknown) = system.temperature_unknown(node) {
                reading.gradient[unknown] -= weight * head.by_temperature;
            }
        }
        reading
    }

    fn inlet_temperature(
        &self,
        result: usize,
        blower: usize,
        state: &Flowing,
        weight: f64,
    ) -> Reading {
        let mut reading = self.blank_reading(result);
        let inlet = self.operating.blowers[blower].inlet;
        reading.value = weight * state.temperature[inlet];
        if let Some(unknown) = self.solver.system.temperature_unknown(inlet) {
            reading.gradient[unknown] = weight;
        }
        reading
    }

    fn outlet_inflow(&self, result: usize, blower: usize, state: &Flowing, weight: f64) -> Reading {
        let mut reading = self.blank_reading(result);
        for leg in &self.model.nodes[self.operating.blowers[blower].outlet].legs {
            reading.value += weight * leg.flow_into(&state.flow);
            reading.gradient[leg.branch] += weight * leg.into_sign();
        }
        reading
    }

    /// Adds a reading whose gradient is by the right-hand side of the equations.
    pub(super) fn book(&self, swept: &mut Swept, interval: usize, reading: &Reading) {
        swept.readings[reading.result] += reading.value;
        let by = &mut swept.by[reading.result];
        for (drawing, draws) in self.intervals[interval].draws.iter().enumerate() {
            let change = reading.gradient[self.drawing_row(drawing)];
            for (by, part) in by.iter_mut().zip(draws) {
                *by += change * part;
            }
        }
        for (place, unknown) in self
            .shared
            .unknowns
            .iter()
            .enumerate()
            .skip(self.cylinders())
        {
            for row in self.rows(*unknown) {
                by[place] += reading.gradient[row];
            }
        }
    }

    /// A cylinder's ports, of which each has an equal part.
    pub(super) fn port_parts(&self, cylinder: usize) -> Vec<(usize, f64)> {
        let ports = self.model.ports.iter();
        let its = ports.filter(|port| port.cylinder == cylinder);
        let part = 1.0 / its.clone().count() as f64;
        its.map(|port| (port.node, part)).collect()
    }

    /// `weight` times the mean of p T^-exponent over nodes.
    fn reading(
        &self,
        result: usize,
        parts: &[(usize, f64)],
        state: &Flowing,
        exponent: f64,
        weight: f64,
    ) -> Reading {
        let mut reading = self.blank_reading(result);
        for (node, part) in parts {
            let temperature = state.temperature[*node];
            let factor = weight * part * temperature.powf(-exponent);
            let value = factor * state.pressure(*node);
            reading.value += value;
            reading.gradient[self.solver.system.pressure_unknown(*node)] += factor;
            if let Some(unknown) = self.solver.system.temperature_unknown(*node) {
                reading.gradient[unknown] -= exponent * value / temperature;
            }
        }
        reading
    }
}
