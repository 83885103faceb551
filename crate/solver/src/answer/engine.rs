//! Where the engine runs, put together from a solved running draw.

use std::f64::consts::PI;

use super::{
    BlowerAnswer, BoostAnswer, CoolerAnswer, OperatingAnswer, PassageAnswer, SourceAnswer,
};
use crate::draw::{Drawn, Found, Operating};
use crate::gas::{GAMMA, GAS_CONSTANT, SPECIFIC_HEAT};
use crate::law::blower::positive_displacement::power;
use crate::law::valve::mach_index_taylor;
use crate::model::Model;
use crate::study::{Blower, NodeKind, Study};

/// What has been found for the engine; `charge` is the mean temperature at the ports [K].
pub fn operating(
    study: &Study,
    operating: &Operating,
    drawn: &Drawn<'_>,
    found: &Found,
    charge: f64,
) -> OperatingAnswer {
    OperatingAnswer {
        speed: operating.speed,
        volumetric_efficiency: operating.volumetric_efficiency,
        ambient_pressure: operating.ambient.pressure,
        ambient_temperature: operating.ambient.temperature,
        charge_temperature: charge,
        loss: found.loss,
        inlet_mach_index: inlet_mach_index(study, operating.speed, charge),
        boost: found.boost.map(|(node, pressure)| BoostAnswer {
            node: drawn.model.nodes[node].id.clone(),
            pressure: pressure - operating.ambient.pressure,
        }),
        sources: sources(operating, drawn, found),
        blowers: blowers(study, operating, drawn.model, found),
        coolers: coolers(study, drawn),
    }
}

/// The largest of the cylinders' inlet Mach indices at a crankshaft speed [rev/s] and charge temperature [K].
fn inlet_mach_index(study: &Study, speed: f64, charge: f64) -> Option<f64> {
    let engine = &study.engine;
    let (bore, stroke) = (engine.bore?, engine.stroke?);
    let circle = |diameter: f64| 0.25 * PI * diameter * diameter;
    let sound = (GAMMA * GAS_CONSTANT * charge).sqrt();
    let mut largest: Option<f64> = None;
    for cylinder in &engine.cylinders {
        let mut valves = 0.0;
        for node in &study.network.nodes {
            if let NodeKind::Port {
                cylinder: fed,
                valve: Some(valve),
                ..
            } = &node.kind
                && *fed == cylinder.id
            {
                valves += valve.count * circle(valve.diameter);
            }
        }
        if valves > 0.0 {
            let found = mach_index_taylor::index(circle(bore), valves, 2.0 * stroke * speed, sound);
            largest = Some(largest.map_or(found, |other| other.max(found)));
        }
    }
    largest
}

fn sources(operating: &Operating, drawn: &Drawn<'_>, found: &Found) -> Vec<SourceAnswer> {
    let model = drawn.model;
    let mut sources = Vec::new();
    for (node, source) in operating.sources.iter().enumerate() {
        if let (Some(air), Some(pressure)) = (source, found.sources[node]) {
            let entering = drawn
                .snapshots
                .iter()
                .map(|snapshot| -snapshot.weight * model.inflow(node, &snapshot.state.flow));
            sources.push(SourceAnswer {
                node: model.nodes[node].id.clone(),
                pressure,
                temperature: air.temperature,
                flow: entering.sum(),
            });
        }
    }
    sources
}

fn blowers(
    study: &Study,
    operating: &Operating,
    model: &Model,
    found: &Found,
) -> Vec<BlowerAnswer> {
    let mut blowers = Vec::new();
    for (setting, state) in operating.blowers.iter().zip(&found.blowers) {
        let given = study.network.branches[setting.branch].blower.as_ref();
        blowers.push(BlowerAnswer {
            branch: model.branches[setting.branch].id.clone(),
            speed: state.speed,
            drive_ratio: state.speed / operating.speed,
            rim_speed: given.and_then(|given| rim_speed(given, state.speed)),
            flow: state.flow,
            pressure_ratio: state.outlet_pressure / state.inlet_pressure,
            inlet_pressure: state.inlet_pressure,
            inlet_temperature: state.inlet_temperature,
            outlet_pressure: state.outlet_pressure,
            outlet_temperature: state.outlet_temperature,
            volumetric_efficiency: state.volumetric_efficiency,
            isentropic_efficiency: state.isentropic_efficiency,
            power: power(
                state.flow,
                state.inlet_temperature,
                state.outlet_temperature,
            ),
        });
    }
    blowers
}

/// Rim speed of a blower's pulley at a speed of the blower [m/s].
pub fn rim_speed(blower: &Blower, speed: f64) -> Option<f64> {
    Some(PI * blower.blower_pulley? * speed)
}

fn coolers(study: &Study, drawn: &Drawn<'_>) -> Vec<CoolerAnswer> {
    let mut coolers = Vec::new();
    for (place, given) in study.coolers.iter().enumerate() {
        let passages: Vec<PassageAnswer> = (0..drawn.model.passages.len())
            .filter(|passage| drawn.model.passages[*passage].cooler == place)
            .map(|passage| self::passage(drawn, passage))
            .collect();
        let sum = |read: fn(&PassageAnswer) -> f64| passages.iter().map(read).sum::<f64>();
        let flow = sum(|passage| passage.flow);
        let entering = sum(|passage| passage.flow * passage.inlet_temperature) / flow;
        let leaving = sum(|passage| passage.flow * passage.outlet_temperature) / flow;
        let heat = sum(|passage| passage.heat);
        let capacity = crate::exchange::coolant_capacity(given);
        coolers.push(CoolerAnswer {
            cooler: given.id.clone(),
            heat,
            flow,
            inlet_temperature: entering,
            outlet_temperature: leaving,
            coolant_temperature: given.coolant_temperature + heat / capacity,
            effectiveness: (entering - leaving) / (entering - given.coolant_temperature),
            passages,
        });
    }
    coolers
}

fn passage(drawn: &Drawn<'_>, passage: usize) -> PassageAnswer {
    let model = drawn.model;
    let branch = model.passages[passage].branch;
    let ends = &model.branches[branch];
    let (mut flow, mut entering, mut leaving) = (0.0, 0.0, 0.0);
    for snapshot in &drawn.snapshots {
        let through = snapshot.state.flow[branch];
        let up = if through >= 0.0 { ends.from } else { ends.to };
        let through = snapshot.weight * through.abs();
        flow += through;
        entering += through * snapshot.state.temperature[up];
        leaving += through * snapshot.state.exit[passage];
    }
    PassageAnswer {
        branch: ends.id.clone(),
        flow,
        inlet_temperature: entering / flow,
        outlet_temperature: leaving / flow,
        heat: SPECIFIC_HEAT * (entering - leaving),
    }
}
