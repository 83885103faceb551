//! A charge cooler's passages as the solver sees them: how warm the air leaves, and what the coolant takes.

use std::collections::BTreeMap;

use crate::defaults::COOLANT_SPECIFIC_HEAT;
use crate::gas::SPECIFIC_HEAT;
use crate::law::cooler::conductance::{AIR_PART, Core, EXPONENT};
use crate::law::cooler::effectiveness::{self, effectiveness};
use crate::study::{Cooler, Loss, Mixing, Network};

/// One passage of a core.
#[derive(Clone, Debug, PartialEq)]
pub struct Passage {
    /// Branch that it stands in.
    pub branch: usize,
    /// Position of its core among the branch's losses.
    pub loss: usize,
    /// Which charge cooler it is part of.
    pub cooler: usize,
    /// Where its coolant comes from.
    pub coolant: Coolant,
    /// Mass flow times specific heat of its coolant; infinite when the coolant keeps its temperature [W/K].
    pub capacity: f64,
    /// What the conductance is multiplied with, 1 as measured [-].
    pub scale: f64,
    heat: Heat,
}

/// Where a passage's coolant comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Coolant {
    /// It enters the core here at this temperature [K].
    Enters(f64),
    /// It has passed another passage.
    After(usize),
}

#[derive(Clone, Debug, PartialEq)]
enum Heat {
    /// The effectiveness that was typed, at every flow.
    Kept(f64),
    /// By the conductance of the whole core.
    Core {
        core: Core,
        mixing: effectiveness::Mixing,
        fraction: f64,
    },
}

/// Part of the difference between entering air and entering coolant that a passage's air loses.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Exchange {
    /// The part [-].
    pub part: f64,
    /// Its derivative with the air flow [s/kg].
    pub by_flow: f64,
    /// Its derivative with the logarithm of the conductance [-].
    pub by_conductance: f64,
}

impl Passage {
    /// What it does to a flow, not negative [kg/s].
    pub fn exchange(&self, flow: f64) -> Exchange {
        match &self.heat {
            Heat::Kept(part) => Exchange {
                part: *part,
                ..Exchange::default()
            },
            Heat::Core {
                core,
                mixing,
                fraction,
            } => {
                // At rest the air takes the coolant's temperature; a little flow keeps the units finite.
                let flow = flow.max(1e-9);
                let air = flow * SPECIFIC_HEAT;
                let conductance = core.passage(*fraction, flow);
                let units = self.scale * conductance.value / air;
                let by_flow = self.scale * conductance.derivative / SPECIFIC_HEAT;
                let units_by_flow = (by_flow - units) / flow;
                let found = effectiveness(*mixing, units, air / self.capacity);
                Exchange {
                    part: found.value,
                    by_flow: found.by_units * units_by_flow
                        + found.by_ratio * SPECIFIC_HEAT / self.capacity,
                    by_conductance: found.by_units * units,
                }
            }
        }
    }
}

/// The core as a whole from its measured point; nothing when its effectiveness holds at every flow.
///
/// # Errors
/// Why no core measures that.
pub fn whole_core(cooler: &Cooler) -> Result<Option<Core>, String> {
    let Some(flow) = cooler.measured_flow else {
        return Ok(None);
    };
    let air = flow * SPECIFIC_HEAT;
    let coolant = cooler.measured_coolant_flow.or(cooler.coolant_flow);
    let ratio = air / capacity(cooler, coolant);
    let units = effectiveness::units(mixing(cooler.mixing), cooler.effectiveness, ratio)?;
    Ok(Some(Core {
        conductance: units * air,
        flow,
        air_part: cooler.air_part.unwrap_or(AIR_PART),
        exponent: cooler.air_exponent.unwrap_or(EXPONENT),
    }))
}

/// Mass flow times specific heat of a cooler's coolant, infinite when no flow is given [W/K].
pub fn coolant_capacity(cooler: &Cooler) -> f64 {
    capacity(cooler, cooler.coolant_flow)
}

/// Mass flow times specific heat of a coolant flow, infinite when none is given [W/K].
fn capacity(cooler: &Cooler, flow: Option<f64>) -> f64 {
    let specific_heat = cooler
        .coolant_specific_heat
        .unwrap_or(COOLANT_SPECIFIC_HEAT);
    flow.map_or(f64::INFINITY, |flow| flow * specific_heat)
}

fn mixing(mixing: Mixing) -> effectiveness::Mixing {
    match mixing {
        Mixing::BothUnmixed => effectiveness::Mixing::BothUnmixed,
        Mixing::CoolantMixed => effectiveness::Mixing::CoolantMixed,
        Mixing::AirMixed => effectiveness::Mixing::AirMixed,
    }
}

/// All passages of a checked network's charge coolers, in the order of their branches.
pub fn passages(network: &Network, coolers: &[Cooler]) -> Vec<Passage> {
    let mut passages = Vec::new();
    let mut by_branch = BTreeMap::new();
    for (branch, given) in network.branches.iter().enumerate() {
        for (loss, core) in given.losses.iter().enumerate() {
            let Loss::Core {
                fraction,
                cooler: Some(id),
                ..
            } = core
            else {
                continue;
            };
            let Some(cooler) = coolers.iter().position(|cooler| cooler.id == *id) else {
                continue;
            };
            by_branch.insert(given.id.as_str(), passages.len());
            passages.push(passage(branch, loss, *fraction, cooler, &coolers[cooler]));
        }
    }
    for cooler in coolers {
        for (before, after) in cooler.series.iter().zip(cooler.series.iter().skip(1)) {
            let place = |id: &String| by_branch.get(id.as_str()).copied();
            if let (Some(before), Some(after)) = (place(before), place(after)) {
                passages[after].coolant = Coolant::After(before);
            }
        }
    }
    passages
}

fn passage(branch: usize, loss: usize, fraction: f64, cooler: usize, given: &Cooler) -> Passage {
    let whole = coolant_capacity(given);
    // The gate has refused a measurement that no core gives.
    let core = whole_core(given).ok().flatten();
    Passage {
        branch,
        loss,
        cooler,
        coolant: Coolant::Enters(given.coolant_temperature),
        capacity: if given.series.is_empty() {
            fraction * whole
        } else {
            whole
        },
        scale: 1.0,
        heat: core.map_or(Heat::Kept(given.effectiveness), |core| Heat::Core {
            core,
            mixing: mixing(given.mixing),
            fraction,
        }),
    }
}
