//! What the engine asks of the manifold, as the study says it.

use std::f64::consts::PI;

use crate::gas;
use crate::study::{NodeKind, Reference, Study};

/// Common practice [rad].
const DEFAULT_EVENT: f64 = 240.0 / 180.0 * PI;
/// A four-stroke cycle [rad].
const CYCLE: f64 = 4.0 * PI;
/// Common practice [-].
const DEFAULT_CHARGE_EXPONENT: f64 = 0.5;

/// What the engine asks of the manifold.
#[derive(Clone, Debug)]
pub struct Operating {
    /// By cylinder [m3].
    pub swept: Vec<f64>,
    /// Cycles a second [1/s].
    pub cycles: f64,
    /// Air over swept volume at the reference density [-].
    pub volumetric_efficiency: f64,
    /// Reference density, or where it is read [kg/m3].
    pub reference: ReferenceDensity,
    /// Part of the cycle over which a cylinder draws [-].
    pub event: f64,
    /// Cylinder indices in firing order; empty when not known.
    pub order: Vec<usize>,
    /// Charge temperature exponent [-].
    pub charge_exponent: f64,
    /// By node: stagnation pressure [Pa] and temperature [K] of each source.
    pub sources: Vec<Option<(f64, f64)>>,
}

/// Where the reference density is read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ReferenceDensity {
    /// Known [kg/m3].
    Known(f64),
    /// Time mean at a node.
    Node(usize),
    /// Mean over the events at the ports.
    Ports,
}

/// Something the running draw still needs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Need(pub String);

/// Reads the operating point from a study, or what it lacks.
pub fn operating(study: &Study) -> Result<Operating, Vec<Need>> {
    let engine = &study.engine;
    let mut needs = Vec::new();
    let mut need = |given: Option<f64>, what: &str| {
        if given.is_none() {
            needs.push(Need(what.to_owned()));
        }
        given.unwrap_or(0.0)
    };
    let speed = need(engine.speed, "engine speed");
    let volumetric_efficiency = need(engine.volumetric_efficiency, "volumetric efficiency");
    let swept = engine
        .cylinders
        .iter()
        .map(|cylinder| {
            need(
                cylinder.swept_volume,
                &format!("swept volume of cylinder {}", cylinder.id),
            )
        })
        .collect();
    let mut sources = vec![None; study.network.nodes.len()];
    for (position, node) in study.network.nodes.iter().enumerate() {
        if let NodeKind::Source {
            pressure,
            temperature,
        } = node.kind
        {
            let pressure = need(
                pressure,
                &format!("pressure of source {} while running", node.id),
            );
            let temperature = need(
                temperature,
                &format!("temperature of source {} while running", node.id),
            );
            sources[position] = Some((pressure, temperature));
        }
    }
    if !needs.is_empty() {
        return Err(needs);
    }
    let bench = &study.settings.bench;
    let place = |id: &String| {
        engine
            .cylinders
            .iter()
            .position(|cylinder| cylinder.id == *id)
    };
    Ok(Operating {
        swept,
        cycles: 0.5 * speed,
        volumetric_efficiency,
        reference: match &engine.reference {
            Reference::Ambient => ReferenceDensity::Known(gas::density(
                bench.ambient_pressure,
                bench.ambient_temperature,
            )),
            Reference::Node { node } => ReferenceDensity::Node(
                study
                    .network
                    .nodes
                    .iter()
                    .position(|other| other.id == *node)
                    .unwrap_or(0),
            ),
            Reference::Ports => ReferenceDensity::Ports,
        },
        event: engine.event_angle.unwrap_or(DEFAULT_EVENT) / CYCLE,
        order: engine.firing_order.iter().filter_map(place).collect(),
        charge_exponent: engine.charge_exponent.unwrap_or(DEFAULT_CHARGE_EXPONENT),
        sources,
    })
}
