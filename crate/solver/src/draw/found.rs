//! What a running draw has found beside the cylinders' air.

use super::operating::{Boost, Drive, ReferenceDensity};
use super::running::{Cycle, Swept};
use super::{Found, Refused};
use crate::solve::{Flowing, Hold};

impl Cycle<'_, '_> {
    /// What has been found, from the states that agree and what was read from them.
    pub(super) fn found(&self, swept: &Swept) -> Found {
        let blowers = 0..self.operating.blowers.len();
        let (temperatures, pressure) = self.ports();
        Found {
            missed: self.equations(swept).largest(),
            ambient: self.operating.ambient.pressure,
            boost: self.boost(),
            loss: self.highest_pressure() - pressure,
            temperatures,
            sources: self.source_pressures(),
            blowers: blowers
                .map(|blower| {
                    self.shared
                        .blower(self.operating, blower, &self.values, &swept.readings)
                })
                .collect(),
        }
    }

    /// # Errors
    /// Which blower runs beyond its efficiencies.
    pub(super) fn inside_tables(&self, found: &Found) -> Result<(), Refused> {
        for (setting, state) in self.operating.blowers.iter().zip(&found.blowers) {
            if let Some((which, side)) = state.outside {
                return Err(Refused::PastTable {
                    branch: setting.branch,
                    which,
                    side,
                });
            }
        }
        Ok(())
    }

    fn intervals_with_states(&self) -> impl Iterator<Item = (usize, &Flowing)> {
        let states = self.states.iter().enumerate();
        states.filter_map(|(interval, state)| Some((interval, state.as_ref()?)))
    }

    /// By cylinder the mean temperature at its ports while it draws [K], and the mean pressure there over
    /// the cylinders by their air [Pa].
    fn ports(&self) -> (Vec<f64>, f64) {
        let mut temperatures = vec![0.0; self.cylinders()];
        let mut pressure = 0.0;
        let total: f64 = self.flows().iter().sum();
        for (interval, state) in self.intervals_with_states() {
            for (cylinder, temperature) in temperatures.iter_mut().enumerate() {
                let count = self.intervals[interval].counts[cylinder];
                for (node, part) in self.port_parts(cylinder) {
                    *temperature += count * part * state.temperature[node];
                    let share = self.flows()[cylinder] / total;
                    pressure += count * part * share * state.pressure(node);
                }
            }
        }
        (temperatures, pressure)
    }

    /// Where boost is read, and the mean static pressure there: at the node that a boost is asked at, else at
    /// the node that the volumetric efficiency refers to, else behind the blower.
    fn boost(&self) -> Option<(usize, f64)> {
        let operating = self.operating;
        let asked = operating.boosts.iter().map(|boost| boost.boost.node);
        let driven = operating
            .blowers
            .iter()
            .filter_map(|blower| match blower.drive {
                Drive::Boost(boost) => Some(boost.node),
                Drive::Speed(_) => None,
            });
        let referred = match operating.reference {
            ReferenceDensity::Node(node) => Some(node),
            _ => None,
        };
        let behind = operating.blowers.iter().map(|blower| blower.outlet);
        let node = asked.chain(driven).chain(referred).chain(behind).next()?;
        let boost = Boost {
            node,
            pressure: 0.0,
        };
        let parts = self.intervals_with_states().map(|(interval, state)| {
            let weight = self.intervals[interval].weight;
            self.static_pressure(0, boost, state, weight).value
        });
        Some((node, parts.sum()))
    }

    /// Of the sources and of what blowers blow into [Pa].
    fn highest_pressure(&self) -> f64 {
        let sources = self.model.sources.iter();
        let held = sources.map(|source| match self.conditions.holds[*source] {
            Hold::Pressure(pressure) => pressure,
            Hold::Draw(_) => 0.0,
        });
        held.fold(0.0, f64::max)
    }

    /// Pressure of each source by node [Pa].
    fn source_pressures(&self) -> Vec<Option<f64>> {
        let holds = self.operating.sources.iter().zip(&self.conditions.holds);
        holds
            .map(|(source, hold)| match hold {
                Hold::Pressure(pressure) if source.is_some() => Some(*pressure),
                _ => None,
            })
            .collect()
    }
}
