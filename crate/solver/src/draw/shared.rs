//! What all intervals of a cycle share, and the equations that decide it: the cylinders' air, the
//! pressures of sources found for a boost, and the states of the blowers.
//!
//! What a blower blows into is taken to keep its pressure and temperature over the cycle, and the blower
//! to move the mean of what leaves it: its chamber, which a steady network does not have, evens it out.

use super::guess::{Guess, guess};
use super::operating::{Boost, Drive, Operating};
use crate::law::blower::positive_displacement::outlet_temperature;
use crate::model::Model;

/// One number that all intervals share.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Unknown {
    /// Air of a cylinder, mean over the cycle [kg/s].
    Air(usize),
    /// Pressure of the sources that a boost is found for [Pa].
    SourcePressure(usize),
    /// Air that a blower moves [kg/s].
    BlowerFlow(usize),
    /// Pressure that it blows into [Pa].
    BlowerPressure(usize),
    /// Temperature of what leaves it [K].
    BlowerTemperature(usize),
    /// Its speed, found for a boost [rev/s].
    BlowerSpeed(usize),
}

/// What is read from the intervals' networks, each a sum over them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Reads {
    /// Mean over a cylinder's event of p T^-e at its ports.
    Fill(usize),
    /// The reference density [kg/m3]; nothing is read when it is known.
    Density,
    /// Static pressure where a boost is to be met [Pa].
    Static(Boost),
    /// Pressure before a blower [Pa].
    InletPressure(usize),
    /// Temperature before it [K].
    InletTemperature(usize),
    /// Density before it [kg/m3].
    InletDensity(usize),
    /// Air that comes to the node it blows into, less what leaves it [kg/s].
    OutletInflow(usize),
}

/// The unknowns, the readings, and where each stands.
#[derive(Clone, Debug)]
pub(super) struct Shared {
    pub(super) unknowns: Vec<Unknown>,
    pub(super) reads: Vec<Reads>,
    /// Typical size of each unknown.
    typical: Vec<f64>,
}

/// Equations at the present values and readings.
pub(super) struct Equations {
    /// By equation, in the order of the unknowns; over a typical size [-].
    pub(super) missed: Vec<f64>,
    /// By equation: derivatives by each unknown at fixed readings.
    by_value: Vec<Vec<f64>>,
    /// By equation: derivatives by each reading.
    by_reading: Vec<Vec<f64>>,
}

/// A blower at the present values and readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BlowerState {
    /// Air that it moves [kg/s].
    pub flow: f64,
    /// [rev/s].
    pub speed: f64,
    /// Pressure before it, mean over the cycle [Pa].
    pub inlet_pressure: f64,
    /// Temperature before it, mean over the cycle [K].
    pub inlet_temperature: f64,
    /// Pressure behind it [Pa].
    pub outlet_pressure: f64,
    /// Temperature behind it [K].
    pub outlet_temperature: f64,
    /// [-].
    pub volumetric_efficiency: f64,
    /// [-].
    pub isentropic_efficiency: f64,
    /// Where it runs beyond one of its tables.
    pub outside: Option<(&'static str, &'static str)>,
}

impl Shared {
    /// What a draw shares.
    pub(super) fn new(operating: &Operating) -> Self {
        let cylinders = operating.swept.len();
        let mut unknowns: Vec<Unknown> = (0..cylinders).map(Unknown::Air).collect();
        let mut reads: Vec<Reads> = (0..cylinders).map(Reads::Fill).collect();
        reads.push(Reads::Density);
        for (place, boost) in operating.boosts.iter().enumerate() {
            unknowns.push(Unknown::SourcePressure(place));
            reads.push(Reads::Static(boost.boost));
        }
        for (place, blower) in operating.blowers.iter().enumerate() {
            unknowns.extend([
                Unknown::BlowerFlow(place),
                Unknown::BlowerPressure(place),
                Unknown::BlowerTemperature(place),
            ]);
            reads.extend([
                Reads::InletPressure(place),
                Reads::InletTemperature(place),
                Reads::InletDensity(place),
                Reads::OutletInflow(place),
            ]);
            if let Drive::Boost(boost) = blower.drive {
                unknowns.push(Unknown::BlowerSpeed(place));
                reads.push(Reads::Static(boost));
            }
        }
        Self {
            typical: vec![1.0; unknowns.len()],
            unknowns,
            reads,
        }
    }

    /// Values to begin with: the engine's air at the boost, or at what the blowers bring.
    pub(super) fn first(&mut self, operating: &Operating) -> Vec<f64> {
        let Guess {
            total,
            pressure,
            temperature,
            speeds,
        } = guess(operating);
        let swept: f64 = operating.swept.iter().sum();
        let part = 1.0 / operating.blowers.len().max(1) as f64;
        let mut values = Vec::with_capacity(self.unknowns.len());
        for (unknown, typical) in self.unknowns.iter().zip(&mut self.typical) {
            let (value, size) = match *unknown {
                Unknown::Air(cylinder) => (total * operating.swept[cylinder] / swept, total),
                Unknown::SourcePressure(boost) => {
                    let pressure = operating.boosts[boost].boost.pressure;
                    (pressure, pressure)
                }
                Unknown::BlowerFlow(_) => (part * total, total),
                Unknown::BlowerPressure(_) => (pressure, pressure),
                Unknown::BlowerTemperature(_) => (temperature, temperature),
                Unknown::BlowerSpeed(blower) => (speeds[blower], speeds[blower]),
            };
            *typical = size;
            values.push(value);
        }
        values
    }

    /// How much of a change leaves every pressure, temperature and speed positive [-].
    pub(super) fn allowed_part(&self, values: &[f64], change: &[f64]) -> f64 {
        let mut part: f64 = 1.0;
        for ((unknown, value), change) in self.unknowns.iter().zip(values).zip(change) {
            if !matches!(unknown, Unknown::Air(_)) {
                let most = if *change < 0.0 { 0.4 } else { 1.0 };
                part = part.min(most * value.abs() / change.abs().max(f64::MIN_POSITIVE));
            }
        }
        part
    }

    /// A blower at some values and readings.
    pub(super) fn blower(
        &self,
        operating: &Operating,
        blower: usize,
        values: &[f64],
        readings: &[f64],
    ) -> BlowerState {
        let value = |unknown: Unknown| self.value(unknown, values);
        let read = |reads: Reads| readings[self.place(reads)];
        let setting = &operating.blowers[blower];
        let speed = match setting.drive {
            Drive::Speed(speed) => speed,
            Drive::Boost(_) => value(Unknown::BlowerSpeed(blower)),
        };
        let inlet_pressure = read(Reads::InletPressure(blower));
        let outlet_pressure = value(Unknown::BlowerPressure(blower));
        let ratio = outlet_pressure / inlet_pressure;
        let volumetric = setting.volumetric.at(speed, ratio);
        let isentropic = setting.isentropic.at(speed, ratio);
        let past = |which: &'static str, outside: Option<&'static str>| Some((which, outside?));
        BlowerState {
            flow: value(Unknown::BlowerFlow(blower)),
            speed,
            inlet_pressure,
            inlet_temperature: read(Reads::InletTemperature(blower)),
            outlet_pressure,
            outlet_temperature: value(Unknown::BlowerTemperature(blower)),
            volumetric_efficiency: volumetric.value,
            isentropic_efficiency: isentropic.value,
            outside: past("volumetric", volumetric.outside)
                .or_else(|| past("isentropic", isentropic.outside)),
        }
    }

    fn value(&self, unknown: Unknown, values: &[f64]) -> f64 {
        values[self.index(unknown)]
    }

    fn index(&self, unknown: Unknown) -> usize {
        let mut unknowns = self.unknowns.iter();
        unknowns.position(|other| *other == unknown).unwrap_or(0)
    }

    pub(super) fn place(&self, reads: Reads) -> usize {
        let mut all = self.reads.iter();
        all.position(|other| *other == reads).unwrap_or(0)
    }

    /// The equations: one for each unknown.
    pub(super) fn equations(
        &self,
        operating: &Operating,
        values: &[f64],
        readings: &[f64],
    ) -> Equations {
        let mut equations = Equations {
            missed: vec![0.0; self.unknowns.len()],
            by_value: vec![vec![0.0; self.unknowns.len()]; self.unknowns.len()],
            by_reading: vec![vec![0.0; self.reads.len()]; self.unknowns.len()],
        };
        self.fill_cylinders(operating, values, readings, &mut equations);
        for (row, unknown) in self.unknowns.iter().enumerate() {
            match *unknown {
                Unknown::SourcePressure(boost) => {
                    self.meet(row, operating.boosts[boost].boost, readings, &mut equations);
                }
                Unknown::BlowerFlow(blower) => {
                    self.drive(row, operating, blower, values, readings, &mut equations);
                }
                Unknown::BlowerSpeed(blower) => {
                    if let Drive::Boost(boost) = operating.blowers[blower].drive {
                        self.meet(row, boost, readings, &mut equations);
                    }
                }
                _ => {}
            }
        }
        self.scale(&mut equations);
        equations
    }

    /// A cylinder draws its part of the total that the reference density gives.
    fn fill_cylinders(
        &self,
        operating: &Operating,
        values: &[f64],
        readings: &[f64],
        equations: &mut Equations,
    ) {
        let volumes = &operating.swept;
        let cylinders = volumes.len();
        let weights: Vec<f64> = volumes
            .iter()
            .zip(readings)
            .map(|(v, fill)| v * fill)
            .collect();
        let sum: f64 = weights.iter().sum();
        let density = readings[cylinders];
        let per_density =
            operating.volumetric_efficiency * operating.cycles * volumes.iter().sum::<f64>();
        for row in 0..cylinders {
            let share = weights[row] / sum;
            equations.missed[row] = values[row] - per_density * density * share;
            equations.by_value[row][row] = 1.0;
            for (column, volume) in volumes.iter().enumerate() {
                let own = if column == row { 1.0 } else { 0.0 };
                let share_by = volume * (own - share) / sum;
                equations.by_reading[row][column] = -per_density * density * share_by;
            }
            equations.by_reading[row][cylinders] = -per_density * share;
        }
    }

    /// A static pressure is met.
    fn meet(&self, row: usize, boost: Boost, readings: &[f64], equations: &mut Equations) {
        let place = self.place(Reads::Static(boost));
        equations.missed[row] = readings[place] - boost.pressure;
        equations.by_reading[row][place] = 1.0;
    }

    /// A blower moves what its turns take in; that leaves the node behind it, at its temperature.
    fn drive(
        &self,
        row: usize,
        operating: &Operating,
        blower: usize,
        values: &[f64],
        readings: &[f64],
        equations: &mut Equations,
    ) {
        let setting = &operating.blowers[blower];
        let state = self.blower(operating, blower, values, readings);
        let ratio = state.outlet_pressure / state.inlet_pressure;
        let volumetric = setting.volumetric.at(state.speed, ratio);
        let isentropic = setting.isentropic.at(state.speed, ratio);
        let inlet_pressure = self.place(Reads::InletPressure(blower));
        let inlet_temperature = self.place(Reads::InletTemperature(blower));
        let inlet_density = self.place(Reads::InletDensity(blower));
        let outlet_pressure = self.index(Unknown::BlowerPressure(blower));
        let density = readings[inlet_density];
        // What a change of the pressure ratio and of the speed does reaches the equations by these.
        let ratio_by_outlet = 1.0 / state.inlet_pressure;
        let ratio_by_inlet = -ratio / state.inlet_pressure;
        let turned = setting.displacement * state.speed * density;

        equations.missed[row] = state.flow - turned * volumetric.value;
        equations.by_value[row][row] = 1.0;
        let by_ratio = -turned * volumetric.by_ratio;
        equations.by_value[row][outlet_pressure] = by_ratio * ratio_by_outlet;
        equations.by_reading[row][inlet_pressure] = by_ratio * ratio_by_inlet;
        equations.by_reading[row][inlet_density] =
            -setting.displacement * state.speed * volumetric.value;

        let leaves = outlet_pressure;
        let outlet_inflow = self.place(Reads::OutletInflow(blower));
        equations.missed[leaves] = readings[outlet_inflow];
        equations.by_reading[leaves][outlet_inflow] = 1.0;

        let warms = self.index(Unknown::BlowerTemperature(blower));
        let heated = outlet_temperature(state.inlet_temperature, ratio, isentropic.value);
        equations.missed[warms] = state.outlet_temperature - heated.value;
        equations.by_value[warms][warms] = 1.0;
        let by_ratio = -(heated.by_ratio + heated.by_efficiency * isentropic.by_ratio);
        equations.by_value[warms][outlet_pressure] = by_ratio * ratio_by_outlet;
        equations.by_reading[warms][inlet_pressure] = by_ratio * ratio_by_inlet;
        equations.by_reading[warms][inlet_temperature] = -heated.by_inlet;

        if matches!(setting.drive, Drive::Boost(_)) {
            let speed = self.index(Unknown::BlowerSpeed(blower));
            let by_speed = volumetric.value + state.speed * volumetric.by_speed;
            equations.by_value[row][speed] = -setting.displacement * density * by_speed;
            equations.by_value[warms][speed] = -heated.by_efficiency * isentropic.by_speed;
        }
    }

    /// Writes every equation over its typical size; the unknowns stay as they are.
    fn scale(&self, equations: &mut Equations) {
        for (row, unknown) in self.unknowns.iter().enumerate() {
            // The equation that stands in a pressure's or a speed's row may be of another kind.
            let size = match *unknown {
                Unknown::BlowerPressure(_) => self.typical[0],
                Unknown::BlowerSpeed(blower) => {
                    self.typical[self.index(Unknown::BlowerPressure(blower))]
                }
                _ => self.typical[row],
            };
            let factor = 1.0 / size;
            equations.missed[row] *= factor;
            for by in equations.by_value[row].iter_mut() {
                *by *= factor;
            }
            for by in equations.by_reading[row].iter_mut() {
                *by *= factor;
            }
        }
    }

    /// The matrix of the equations by the unknowns over their typical sizes, readings following them.
    pub(super) fn matrix(&self, equations: &Equations, swept_by: &[Vec<f64>]) -> Vec<Vec<f64>> {
        let mut matrix = equations.by_value.clone();
        for (row, by_reading) in matrix.iter_mut().zip(&equations.by_reading) {
            for (by_reading, by) in by_reading.iter().zip(swept_by) {
                if *by_reading != 0.0 {
                    for (value, by) in row.iter_mut().zip(by) {
                        *value += by_reading * by;
                    }
                }
            }
            for (value, typical) in row.iter_mut().zip(&self.typical) {
                *value *= typical;
            }
        }
        matrix
    }

    /// Makes a solution of the matrix a change of the unknowns.
    pub(super) fn unscale(&self, change: &mut [f64]) {
        for (change, typical) in change.iter_mut().zip(&self.typical) {
            *change *= typical;
        }
    }
}

impl Equations {
    /// What a change of one reading does to every equation, sign reversed.
    pub(super) fn pushed_by(&self, reading: usize) -> Vec<f64> {
        let rows = self.by_reading.iter();
        rows.map(|row| -row[reading]).collect()
    }

    /// The largest part by which an equation is missed [-].
    pub(super) fn largest(&self) -> f64 {
        let missed = self.missed.iter();
        missed.map(|missed| missed.abs()).fold(0.0, f64::max)
    }
}

/// The area in which a node has a static pressure of its own [m2]; none in a chamber.
pub(super) fn tapped_area(model: &Model, node: usize) -> Option<f64> {
    use crate::junction::Junction;
    match &model.nodes[node].junction {
        Some(Junction::Header(header)) => Some(header.area),
        Some(Junction::Tee(tee)) => Some(tee.area),
        _ => None,
    }
}
