//! A branch as the solver sees it: a chain of elements for each direction, marched from the end the
//! air comes from. Stagnation pressure falls element by element; every fall comes with its partial
//! derivatives.
//!
//! A loss coefficient acts on the velocity head that the arriving stagnation pressure gives in its
//! reference section; a section chokes when what is left behind the loss cannot carry the flow.

use crate::duct::Duct;
use crate::gas::{self, CHOKED_FLOW_FUNCTION, GAMMA, GAS_CONSTANT, Warmth};
use crate::law::Scatter;
use crate::law::bend::rennels_2012::RoundedBend;
use crate::law::friction::churchill_1977;

/// Bend coefficients hold for turbulent flow; below this Reynolds number their friction factor stays put [-].
const TURBULENT_REYNOLDS: f64 = 4_000.0;
/// From this part of its choking flow on a section's Mach number is taken behind its loss [-].
pub const NEAR_CHOKING: f64 = 0.95;

/// Stagnation state and mass flow of the air that arrives at an element.
#[derive(Clone, Copy, Debug)]
pub struct Arriving {
    /// Stagnation pressure [Pa].
    pub pressure: f64,
    /// Mass flow, not negative [kg/s].
    pub flow: f64,
    /// What depends on the stagnation temperature.
    pub warmth: Warmth,
}

impl Arriving {
    /// Air at a stagnation pressure [Pa] and temperature [K] with a mass flow [kg/s].
    pub fn new(pressure: f64, temperature: f64, flow: f64) -> Self {
        Self {
            pressure,
            flow,
            warmth: Warmth::at(temperature),
        }
    }

    /// The flow function that the flow needs in a section [m2].
    pub fn needs(&self, area: f64) -> f64 {
        self.flow * self.warmth.root / (area * self.pressure)
    }
}

/// What a chain, or one element of it, takes from the stagnation pressure.
#[derive(Clone, Copy, Debug, Default)]
pub struct Fall {
    /// Stagnation pressure lost [Pa].
    pub fall: f64,
    /// Derivative with the arriving pressure [-].
    pub by_pressure: f64,
    /// Derivative with the mass flow [Pa s/kg].
    pub by_flow: f64,
    /// Derivative with the stagnation temperature [Pa/K].
    pub by_temperature: f64,
    /// Largest Mach number met [-].
    pub mach: f64,
    /// Largest part of its choking flow that a section carries, behind its loss [-].
    pub choking: f64,
}

/// Stands for the position of a loss where an element belongs to the end of its branch.
pub const AT_END: u32 = u32::MAX;

/// The section that cannot carry the flow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choke {
    /// Position in the chain; the chain's length for its end section.
    pub position: usize,
}

/// One thing that costs stagnation pressure.
#[derive(Clone, Debug)]
pub enum Element {
    /// `k` velocity heads in `area`.
    Head { k: f64, area: f64 },
    /// All that a jet of this section carries beyond its static pressure: it ends in a chamber.
    Jet { area: f64 },
    /// Wall friction along a duct of constant section.
    Duct(Duct),
    /// A bend whose coefficient follows the friction factor.
    Bend {
        bend: RoundedBend,
        area: f64,
        diameter: f64,
        relative_roughness: f64,
    },
    /// A passage of a core: density times drop is flow times (`linear` times viscosity plus `square` times flow).
    Core { area: f64, linear: f64, square: f64 },
}

/// An element and the loss of the study it comes from.
#[derive(Clone, Debug)]
pub struct Placed {
    /// What it does.
    pub element: Element,
    /// Position in the branch's list of losses, or `AT_END`.
    pub loss: u32,
    /// Catalogue kind of that loss.
    pub kind: &'static str,
    /// How far the law's source lets the truth lie from it.
    pub scatter: Scatter,
    /// What the law's answer is multiplied with, 1 for the law as published [-].
    pub scale: f64,
}

/// The elements of one direction of flow, in the order the air meets them.
#[derive(Clone, Debug, Default)]
pub struct Chain {
    /// What costs pressure.
    pub elements: Vec<Placed>,
    /// The section the air leaves through [m2].
    pub end_area: f64,
}

impl Element {
    /// The section whose Mach number the element reports [m2].
    pub fn area(&self) -> f64 {
        match *self {
            Self::Head { area, .. }
            | Self::Jet { area }
            | Self::Duct(Duct { area, .. })
            | Self::Bend { area, .. }
            | Self::Core { area, .. } => area,
        }
    }

    fn law(&self, air: Arriving) -> Option<Fall> {
        Some(match *self {
            Self::Head { k, area } => head(air, area)?.times(k, 0.0, 0.0),
            Self::Jet { area } => exit(air, area)?,
            Self::Duct(ref duct) => duct.fall(air)?,
            Self::Bend {
                bend,
                area,
                diameter,
                relative_roughness,
            } => bend_fall(air, &bend, area, diameter, relative_roughness)?,
            Self::Core {
                area,
                linear,
                square,
            } => core(air, area, linear, square)?,
        })
    }
}

impl Placed {
    /// What this element takes from arriving air, or nothing when it chokes.
    pub fn fall(&self, air: Arriving) -> Option<Fall> {
        let mut fall = self.element.law(air)?.times(self.scale, 0.0, 0.0);
        let left = air.pressure - fall.fall;
        if left <= 0.0 {
            return None;
        }
        if matches!(self.element, Element::Jet { .. }) {
            // The jet has its largest flow before it is lost.
            return Some(fall);
        }
        let needed = air.flow * air.warmth.root / (self.element.area() * left);
        fall.choking = fall.choking.max(needed / CHOKED_FLOW_FUNCTION);
        if fall.choking > NEAR_CHOKING {
            fall.mach = fall.mach.max(gas::mach(needed)?);
        }
        Some(fall)
    }
}

impl Chain {
    /// What the chain takes, with the velocity head of its end section when the air ends in a chamber.
    pub fn fall(&self, air: Arriving, ends_in_chamber: bool) -> Result<Fall, Choke> {
        self.visit(air, ends_in_chamber, |_, _| {})
    }

    /// As `fall`, and tells each element's own part as it goes; position `elements.len()` is the end.
    pub fn visit(
        &self,
        air: Arriving,
        ends_in_chamber: bool,
        mut each: impl FnMut(usize, &Fall),
    ) -> Result<Fall, Choke> {
        let mut total = Fall::default();
        let mut here = air;
        for (position, placed) in self.elements.iter().enumerate() {
            let part = placed.fall(here).ok_or(Choke { position })?;
            each(position, &part);
            total.add(&part);
            here.pressure = air.pressure - total.fall;
        }
        let position = self.elements.len();
        if ends_in_chamber {
            let part = exit(here, self.end_area).ok_or(Choke { position })?;
            each(position, &part);
            total.add(&part);
        }
        Ok(total)
    }

    /// The largest flow the chain carries from a pressure and temperature [kg/s].
    pub fn greatest_flow(&self, pressure: f64, temperature: f64, ends_in_chamber: bool) -> f64 {
        let still = Arriving::new(pressure, temperature, 0.0);
        let carries = |flow| {
            self.fall(Arriving { flow, ..still }, ends_in_chamber)
                .is_ok()
        };
        let smallest = self.smallest_area();
        let mut high = CHOKED_FLOW_FUNCTION * smallest * pressure / still.warmth.root;
        if carries(high) {
            return high;
        }
        let mut low = 0.0;
        // Halving to the last bit of the flow.
        for _ in 0..64 {
            let middle = 0.5 * (low + high);
            if middle <= low || middle >= high {
                break;
            }
            if carries(middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        low
    }

    /// Whether the last element loses all of the velocity head.
    pub fn ends_in_jet(&self) -> bool {
        let last = self.elements.last();
        last.is_some_and(|placed| matches!(placed.element, Element::Jet { .. }))
    }

    /// The smallest section of the chain [m2].
    pub fn smallest_area(&self) -> f64 {
        self.elements
            .iter()
            .map(|placed| placed.element.area())
            .fold(self.end_area, f64::min)
    }
}

impl Fall {
    /// Appends what comes behind: a later fall sees the pressure that the earlier ones left.
    fn add(&mut self, next: &Fall) {
        self.by_flow += next.by_flow - next.by_pressure * self.by_flow;
        self.by_temperature += next.by_temperature - next.by_pressure * self.by_temperature;
        self.by_pressure += next.by_pressure * (1.0 - self.by_pressure);
        self.fall += next.fall;
        self.mach = self.mach.max(next.mach);
        self.choking = self.choking.max(next.choking);
    }

    /// A velocity head as a loss of `k` heads, where `k` may vary with flow and temperature.
    fn times(self, k: f64, k_by_flow: f64, k_by_temperature: f64) -> Fall {
        Fall {
            fall: k * self.fall,
            by_pressure: k * self.by_pressure,
            by_flow: k * self.by_flow + k_by_flow * self.fall,
            by_temperature: k * self.by_temperature + k_by_temperature * self.fall,
            mach: self.mach,
            choking: self.choking,
        }
    }
}

/// One velocity head, rho V^2/2 = gamma/2 p M^2, in `area`.
fn head(air: Arriving, area: f64) -> Option<Fall> {
    let mach = gas::mach(air.needs(area))?;
    let square = mach * mach;
    let part = 0.5 * GAMMA * square * gas::pressure_ratio(mach);
    let head = air.pressure * part;
    // Elasticity of the head with the flow function, from M / (1 + M^2/5)^3.
    let elasticity = (2.0 - square) / (1.0 - square);
    let by_log_flow = head * elasticity;
    Some(Fall {
        fall: head,
        by_pressure: part * (1.0 - elasticity),
        by_flow: per_flow(by_log_flow, air.flow),
        by_temperature: 0.5 * by_log_flow * air.warmth.inverse,
        mach,
        choking: 0.0,
    })
}

/// Stagnation minus static pressure in the end section: what a chamber does not give back.
pub fn exit(air: Arriving, area: f64) -> Option<Fall> {
    let needed = air.needs(area);
    let mach = gas::mach(needed)?;
    let square = mach * mach;
    let fraction = gas::head_fraction(mach);
    // The pressure ratio is what the head leaves.
    let double_part = GAMMA * square * (1.0 - fraction) / (1.0 - square);
    let double_head = air.pressure * double_part;
    Some(Fall {
        fall: air.pressure * fraction,
        by_pressure: fraction - double_part,
        by_flow: per_flow(double_head, air.flow),
        by_temperature: 0.5 * double_head * air.warmth.inverse,
        mach,
        choking: needed * (1.0 / CHOKED_FLOW_FUNCTION),
    })
}

/// A quantity over the flow, for quantities that vanish with the flow's square.
fn per_flow(quantity: f64, flow: f64) -> f64 {
    if flow > 0.0 { quantity / flow } else { 0.0 }
}

fn bend_fall(
    air: Arriving,
    bend: &RoundedBend,
    area: f64,
    diameter: f64,
    relative_roughness: f64,
) -> Option<Fall> {
    let viscosity = air.warmth.viscosity;
    let reynolds = air.flow * diameter / (area * viscosity.value);
    let held = reynolds.hypot(TURBULENT_REYNOLDS);
    let group = churchill_1977::friction_group(held, relative_roughness);
    let factor = group.value / held;
    let factor_by_held = (group.derivative - factor) / held;
    let coefficient = bend.coefficient(factor);
    // d(held)/d(Re) = Re / held
    let by_reynolds = coefficient.derivative * factor_by_held * reynolds / held;
    let by_flow = by_reynolds * diameter / (area * viscosity.value);
    let by_temperature = -by_reynolds * reynolds * viscosity.derivative / viscosity.value;
    Some(head(air, area)?.times(coefficient.value, by_flow, by_temperature))
}

/// A core's drop with the mean of the densities before and behind: a difference of squared pressures.
fn core(air: Arriving, area: f64, linear: f64, square: f64) -> Option<Fall> {
    let viscosity = air.warmth.viscosity;
    let double_gas = 2.0 * GAS_CONSTANT * air.warmth.temperature;
    let density_drop = air.flow * (linear * viscosity.value + square * air.flow);
    let squares = double_gas * density_drop;
    let left = (air.pressure * air.pressure - squares).sqrt();
    if left.is_nan() || left <= 0.0 {
        return None;
    }
    let by_squares = 0.5 / left;
    Some(Fall {
        fall: squares / (air.pressure + left),
        by_pressure: 1.0 - air.pressure / left,
        by_flow: by_squares * double_gas * (linear * viscosity.value + 2.0 * square * air.flow),
        by_temperature: by_squares
            * (squares / air.warmth.temperature
                + double_gas * air.flow * linear * viscosity.derivative),
        mach: gas::mach(air.needs(area))?,
        choking: 0.0,
    })
}
