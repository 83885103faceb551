//! What the ports' valves offer the air, at the lift that they are held at on the bench.

use super::ValveAnswer;
use crate::study::{NodeKind, Study};

/// Every port's valves, in the order of the nodes.
pub fn valves(study: &Study) -> Vec<ValveAnswer> {
    let mut valves = Vec::new();
    for node in &study.network.nodes {
        if let NodeKind::Port {
            valve: Some(valve), ..
        } = &node.kind
        {
            let passage = valve.passage();
            valves.push(ValveAnswer {
                port: node.id.clone(),
                lift_ratio: valve.lift / valve.diameter,
                discharge_coefficient: valve.coefficient(),
                curtain_area: valve.count * passage.curtain(),
                throat_area: passage.throat.map(|throat| valve.count * throat),
                effective_area: valve.effective_area(),
            });
        }
    }
    valves
}
