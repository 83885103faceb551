//! What the engine asks of the manifold, as the study says it.

use std::f64::consts::PI;

use crate::gas;
use crate::law::air::standard_atmosphere_iso_2533 as atmosphere;
use crate::law::blower::table::Table;
use crate::study::{Blower, Cycle, Engine, NodeKind, Reference, Study};

/// Common practice [rad].
const DEFAULT_EVENT: f64 = 240.0 / 180.0 * PI;
/// Common practice, from port to port of a two-stroke engine [rad].
const DEFAULT_TWO_STROKE_EVENT: f64 = 120.0 / 180.0 * PI;
/// Common practice [-].
const DEFAULT_CHARGE_EXPONENT: f64 = 0.5;

/// What the engine asks of the manifold.
#[derive(Clone, Debug)]
pub struct Operating {
    /// By cylinder [m3].
    pub swept: Vec<f64>,
    /// Turns of the crankshaft a second [rev/s].
    pub speed: f64,
    /// Cycles a second [1/s].
    pub cycles: f64,
    /// Air over swept volume at the reference density [-].
    pub volumetric_efficiency: f64,
    /// Which side of its table the speed lies past, if it does.
    pub past_efficiency_table: Option<&'static str>,
    /// Reference density, or where it is read [kg/m3].
    pub reference: ReferenceDensity,
    /// Part of the cycle over which a cylinder draws [-].
    pub event: f64,
    /// Cylinder indices in firing order; empty when not known.
    pub order: Vec<usize>,
    /// Charge temperature exponent [-].
    pub charge_exponent: f64,
    /// The air around the engine.
    pub ambient: Air,
    /// By node: the state of each source; where a boost asks for its pressure, a first guess.
    pub sources: Vec<Option<Air>>,
    /// Boosts that sources' pressures are found for.
    pub boosts: Vec<SourceBoost>,
    /// Blowers, in the order of their branches.
    pub blowers: Vec<BlowerSetting>,
}

/// Air at rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// [Pa].
    pub pressure: f64,
    /// [K].
    pub temperature: f64,
}

/// A static pressure to be met at a node, mean over the cycle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Boost {
    /// Where it is read.
    pub node: usize,
    /// Absolute [Pa].
    pub pressure: f64,
}

/// Sources that share one pressure, found for a boost.
#[derive(Clone, Debug, PartialEq)]
pub struct SourceBoost {
    /// What is to be met.
    pub boost: Boost,
    /// Nodes of the sources.
    pub sources: Vec<usize>,
}

/// A blower with its drive.
#[derive(Clone, Debug, PartialEq)]
pub struct BlowerSetting {
    /// Branch that it stands in.
    pub branch: usize,
    /// Node that it draws from.
    pub inlet: usize,
    /// Node that it blows into.
    pub outlet: usize,
    /// Air of one turn without leaking [m3].
    pub displacement: f64,
    /// What drives it.
    pub drive: Drive,
    /// Volumetric efficiency.
    pub volumetric: Table,
    /// Isentropic efficiency.
    pub isentropic: Table,
}

/// What decides a blower's speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Drive {
    /// Its speed follows from the crankshaft's [rev/s].
    Speed(f64),
    /// Its speed is found for a boost.
    Boost(Boost),
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
///
/// # Errors
/// Everything that the running draw still needs.
pub fn operating(study: &Study) -> Result<Operating, Vec<Need>> {
    operating_at(study, study.engine.speed)
}

/// The same at another crankshaft speed [rev/s].
///
/// # Errors
/// As `operating`.
pub fn operating_at(study: &Study, speed: Option<f64>) -> Result<Operating, Vec<Need>> {
    let engine = &study.engine;
    let mut needs = Needs(Vec::new());
    let speed = needs.number(speed, || "engine speed".to_owned());
    let (volumetric_efficiency, past) = breathing(engine, speed, &mut needs);
    let swept = swept_volumes(engine, &mut needs);
    let ambient = ambient(study);
    let (sources, boosts) = sources(study, ambient, &mut needs);
    let blowers = blowers(study, ambient, speed, &mut needs);
    if !needs.0.is_empty() {
        return Err(needs.0);
    }
    let (turns, event) = match engine.cycle {
        Cycle::FourStroke => (2.0, DEFAULT_EVENT),
        Cycle::TwoStroke => (1.0, DEFAULT_TWO_STROKE_EVENT),
    };
    Ok(Operating {
        swept,
        speed,
        cycles: speed / turns,
        volumetric_efficiency,
        past_efficiency_table: past,
        reference: match &engine.reference {
            Reference::Ambient => {
                ReferenceDensity::Known(gas::density(ambient.pressure, ambient.temperature))
            }
            Reference::Node { node } => ReferenceDensity::Node(position(study, node)),
            Reference::Ports => ReferenceDensity::Ports,
        },
        event: engine.event_angle.unwrap_or(event) / (2.0 * PI * turns),
        order: {
            let order = engine.firing_order.iter();
            order.filter_map(|id| engine.position(id)).collect()
        },
        charge_exponent: engine.charge_exponent.unwrap_or(DEFAULT_CHARGE_EXPONENT),
        ambient,
        sources,
        boosts,
        blowers,
    })
}

/// The air around the running engine: typed, of the standard atmosphere, or the bench's room.
pub fn ambient(study: &Study) -> Air {
    let given = &study.settings.ambient;
    let bench = &study.settings.bench;
    let (pressure, temperature) = match given.altitude.map(atmosphere::at) {
        Some(air) => (air.pressure, air.temperature),
        None => (bench.ambient_pressure, bench.ambient_temperature),
    };
    Air {
        pressure: given.pressure.unwrap_or(pressure),
        temperature: given.temperature.unwrap_or(temperature),
    }
}

struct Needs(Vec<Need>);

impl Needs {
    fn number(&mut self, given: Option<f64>, what: impl FnOnce() -> String) -> f64 {
        if given.is_none() {
            self.0.push(Need(what()));
        }
        given.unwrap_or(0.0)
    }
}

/// Volumetric efficiency at a speed, and which side of its table that lies past.
fn breathing(engine: &Engine, speed: f64, needs: &mut Needs) -> (f64, Option<&'static str>) {
    match &engine.volumetric_table {
        Some(table) => {
            let reading = Table::from(table).at(speed, 1.0);
            (reading.value, reading.outside)
        }
        None => {
            let what = || "volumetric efficiency".to_owned();
            (needs.number(engine.volumetric_efficiency, what), None)
        }
    }
}

fn swept_volumes(engine: &Engine, needs: &mut Needs) -> Vec<f64> {
    let common = match (engine.bore, engine.stroke) {
        (Some(bore), Some(stroke)) => Some(0.25 * PI * bore * bore * stroke),
        _ => None,
    };
    let mut swept = Vec::with_capacity(engine.cylinders.len());
    for cylinder in &engine.cylinders {
        let what = || format!("swept volume of cylinder {}", cylinder.id);
        swept.push(needs.number(cylinder.swept_volume.or(common), what));
    }
    swept
}

fn sources(study: &Study, ambient: Air, needs: &mut Needs) -> (Vec<Option<Air>>, Vec<SourceBoost>) {
    let mut states = vec![None; study.network.nodes.len()];
    let mut boosts: Vec<SourceBoost> = Vec::new();
    for (place, node) in study.network.nodes.iter().enumerate() {
        let NodeKind::Source {
            pressure,
            temperature,
            boost,
            boost_node,
            ambient: is_ambient,
        } = &node.kind
        else {
            continue;
        };
        if *is_ambient {
            states[place] = Some(Air {
                temperature: temperature.unwrap_or(ambient.temperature),
                ..ambient
            });
            continue;
        }
        let what = || format!("temperature of source {} while running", node.id);
        let temperature = needs.number(*temperature, what);
        let target = boost.map(|boost| ambient.pressure + boost);
        let what = || format!("pressure of source {} while running, or a boost", node.id);
        let pressure = needs.number(pressure.or(target), what);
        states[place] = Some(Air {
            pressure,
            temperature,
        });
        if let (Some(target), Some(at)) = (target, boost_node) {
            let boost = Boost {
                node: position(study, at),
                pressure: target,
            };
            match boosts.iter_mut().find(|other| other.boost == boost) {
                Some(other) => other.sources.push(place),
                None => boosts.push(SourceBoost {
                    boost,
                    sources: vec![place],
                }),
            }
        }
    }
    (states, boosts)
}

fn blowers(study: &Study, ambient: Air, speed: f64, needs: &mut Needs) -> Vec<BlowerSetting> {
    let mut settings = Vec::new();
    for (branch, given) in study.network.branches.iter().enumerate() {
        let Some(blower) = &given.blower else {
            continue;
        };
        let ratio = drive_ratio(blower);
        let drive = match (blower.boost, &blower.boost_node) {
            (Some(boost), Some(node)) => Drive::Boost(Boost {
                node: position(study, node),
                pressure: ambient.pressure + boost,
            }),
            _ => {
                let what = || format!("drive ratio or boost of blower {}", given.id);
                Drive::Speed(speed * needs.number(ratio, what))
            }
        };
        let mut efficiency = |number: Option<f64>, table: Option<Table>, which: &str| {
            table.unwrap_or_else(|| {
                let what = || format!("{which} efficiency of blower {}", given.id);
                Table::constant(needs.number(number, what))
            })
        };
        let table = |table: &Option<_>| table.as_ref().map(Table::from);
        settings.push(BlowerSetting {
            branch,
            inlet: position(study, &given.from),
            outlet: position(study, &given.to),
            displacement: blower.displacement,
            drive,
            volumetric: efficiency(
                blower.volumetric_efficiency,
                table(&blower.volumetric_table),
                "volumetric",
            ),
            isentropic: efficiency(
                blower.isentropic_efficiency,
                table(&blower.isentropic_table),
                "isentropic",
            ),
        });
    }
    settings
}

/// Turns of a blower a turn of the crankshaft, as typed or by its pulleys.
pub fn drive_ratio(blower: &Blower) -> Option<f64> {
    let pulleys = || Some(blower.crank_pulley? / blower.blower_pulley?);
    blower.drive_ratio.or_else(pulleys)
}

fn position(study: &Study, id: &str) -> usize {
    let mut nodes = study.network.nodes.iter();
    nodes.position(|node| node.id == *id).unwrap_or(0)
}
