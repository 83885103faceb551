//! A branch as the solver sees it: a chain of elements for each direction, marched from the end the
//! air comes from. Stagnation pressure falls element by element; every fall comes with its partial
//! derivatives.
//!
//! A loss coefficient acts on the velocity head that the arriving stagnation pressure gives in its
//! reference section; a section chokes when what is left behind the loss cannot carry the flow.

mod by_reynolds;

use crate::duct::Duct;
use crate::gas::{CHOKED_FLOW_FUNCTION, GAMMA, GAS_CONSTANT, Section, Warmth, viscosity};
use crate::law::Scatter;
use crate::law::bend::BendTerms;
use crate::march::March;

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
    /// The flow times `warmth.root`: the flow function times area and pressure [N].
    drive: f64,
    /// One over the flow, for what vanishes with its square; 0 at no flow [s/kg].
    pub per_flow: f64,
    /// Stagnation temperature behind the chain's passage of a charge cooler, if it has one [K].
    pub leaving: f64,
}

impl Arriving {
    /// Air at a stagnation pressure [Pa] and temperature [K] with a mass flow [kg/s].
    pub fn new(pressure: f64, temperature: f64, flow: f64) -> Self {
        Self::warm(pressure, Warmth::at(temperature), flow)
    }

    /// The same with its warmth known.
    pub fn warm(pressure: f64, warmth: Warmth, flow: f64) -> Self {
        Self {
            pressure,
            flow,
            warmth,
            drive: flow * warmth.root,
            per_flow: if flow > 0.0 { 1.0 / flow } else { 0.0 },
            leaving: f64::NAN,
        }
    }

    /// The same air with another flow.
    pub fn with_flow(self, flow: f64) -> Self {
        Self::warm(self.pressure, self.warmth, flow).leaving_at(self.leaving)
    }

    /// The same air on its way through a charge cooler that it leaves at a temperature [K].
    pub fn leaving_at(self, leaving: f64) -> Self {
        Self { leaving, ..self }
    }

    /// The same air with `factor` times the pressure.
    pub fn pressed(self, factor: f64) -> Self {
        Self::warm(factor * self.pressure, self.warmth, self.flow).leaving_at(self.leaving)
    }

    /// The same air with `factor` times the temperature.
    pub fn warmed(self, factor: f64) -> Self {
        let temperature = factor * self.warmth.temperature;
        Self::new(self.pressure, temperature, self.flow).leaving_at(self.leaving)
    }

    /// The same air with `factor` times the temperature behind the charge cooler.
    pub fn left_warmer(self, factor: f64) -> Self {
        self.leaving_at(factor * self.leaving)
    }

    /// The same air behind the charge cooler.
    pub fn cooled(self) -> Self {
        Self::new(self.pressure, self.leaving, self.flow)
    }

    /// The flow function that the flow needs in a section [-].
    pub fn needs(&self, area: f64) -> f64 {
        self.drive / (area * self.pressure)
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
    /// Derivative with the arriving stagnation temperature [Pa/K].
    pub by_temperature: f64,
    /// Derivative with the temperature behind a charge cooler's passage [Pa/K].
    pub by_leaving: f64,
    /// Square of the largest Mach number met [-].
    pub mach_square: f64,
    /// Whether a section carries nearly its choking flow, behind its loss; see `NEAR_CHOKING`.
    pub near_choking: bool,
}

/// Stands for the position of a loss where an element belongs to the end of its branch.
pub const AT_END: u32 = u32::MAX;

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
        terms: BendTerms,
        area: f64,
        diameter: f64,
        relative_roughness: f64,
    },
    /// A screen of round wires: `factor` times a number that follows the Reynolds number, heads in the open `area`.
    Screen {
        factor: f64,
        area: f64,
        /// Width of a gap [m].
        gap: f64,
    },
    /// A passage of a core: density times drop is flow times (`linear` times viscosity plus `square` times flow).
    Core { area: f64, linear: f64, square: f64 },
}

/// An element as it is marched through.
#[derive(Clone, Debug)]
pub struct Placed {
    /// What it does.
    pub element: Element,
    /// What the law's answer is multiplied with, 1 for the law as published [-].
    pub scale: f64,
}

/// Where an element comes from.
#[derive(Clone, Copy, Debug)]
pub struct Origin {
    /// Position in the branch's list of losses, or `AT_END`.
    pub loss: u32,
    /// Which of that loss's uncertain numbers scales it.
    pub part: u32,
    /// Catalogue kind of its law.
    pub kind: &'static str,
    /// How far the law's source lets the truth lie from it.
    pub scatter: Scatter,
}

/// The elements of one direction of flow, in the order the air meets them.
#[derive(Clone, Debug, Default)]
pub struct Chain {
    /// What costs pressure; nothing else, for large networks are marched at the pace of the memory.
    pub elements: Vec<Placed>,
    /// By element.
    pub origins: Vec<Origin>,
    /// The section the air leaves through [m2].
    pub end_area: f64,
    /// Position of the element that is a passage of a charge cooler, if there is one.
    pub passage: Option<usize>,
}

impl Element {
    /// The section whose Mach number the element reports [m2].
    pub fn area(&self) -> f64 {
        match *self {
            Self::Head { area, .. }
            | Self::Jet { area }
            | Self::Duct(Duct { area, .. })
            | Self::Bend { area, .. }
            | Self::Screen { area, .. }
            | Self::Core { area, .. } => area,
        }
    }

    #[inline(always)]
    fn law(&self, air: Arriving) -> Option<Fall> {
        Some(match *self {
            Self::Head { k, area } => head(air, area)?.times(k),
            Self::Jet { area } => exit(air, area)?,
            Self::Duct(ref duct) => duct.fall(air)?,
            Self::Bend {
                terms,
                area,
                diameter,
                relative_roughness,
            } => by_reynolds::bend(air, &terms, area, diameter, relative_roughness)?,
            Self::Screen { factor, area, gap } => by_reynolds::screen(air, factor, area, gap)?,
            Self::Core {
                area,
                linear,
                square,
            } => core(air, area, linear, square)?,
        })
    }
}

impl Placed {
    /// An element with its law as published.
    pub fn published(element: Element) -> Self {
        Self {
            element,
            scale: 1.0,
        }
    }

    /// What this element takes from arriving air, or nothing when it chokes.
    #[inline(always)]
    pub fn fall(&self, air: Arriving) -> Option<Fall> {
        self.scaled(air, self.element.law(air)?)
    }

    /// As `fall`, for the passage of a charge cooler.
    pub fn cooled_fall(&self, air: Arriving) -> Option<Fall> {
        let law = match self.element {
            Element::Core {
                area,
                linear,
                square,
            } => cooled_core(air, area, linear, square),
            _ => self.element.law(air),
        };
        self.scaled(air, law?)
    }

    #[inline(always)]
    fn scaled(&self, air: Arriving, law: Fall) -> Option<Fall> {
        let mut fall = law;
        if self.scale != 1.0 {
            fall = fall.times(self.scale);
        }
        let left = air.pressure - fall.fall;
        if left <= 0.0 {
            return None;
        }
        if matches!(self.element, Element::Jet { .. }) {
            // The jet has its largest flow before it is lost.
            return Some(fall);
        }
        let carried = self.element.area() * left;
        if air.drive > NEAR_CHOKING * CHOKED_FLOW_FUNCTION * carried {
            let section = Section::new(air.drive / carried)?;
            fall.mach_square = fall.mach_square.max(section.mach_square);
            fall.near_choking = true;
        }
        Some(fall)
    }
}

impl Chain {
    /// Puts an element where the air comes last.
    pub fn append(&mut self, element: Element, origin: Origin) {
        self.elements.push(Placed::published(element));
        self.origins.push(origin);
    }

    /// Position of the first element of a loss, by the loss's position in its branch.
    pub fn position(&self, loss: usize) -> Option<usize> {
        let mut origins = self.origins.iter();
        origins.position(|origin| origin.loss as usize == loss)
    }

    /// Makes the air meet the elements in the other order.
    pub fn turn_round(&mut self) {
        self.elements.reverse();
        self.origins.reverse();
        let last = self.elements.len().saturating_sub(1);
        self.passage = self.passage.map(|passage| last - passage);
    }

    /// What the chain takes, with the velocity head of its end section when the air ends in a chamber;
    /// nothing when a section cannot carry the flow.
    pub fn fall(&self, air: Arriving, ends_in_chamber: bool) -> Option<Fall> {
        self.visit(air, ends_in_chamber, |_, _| {})
    }

    /// As `fall`, and tells each element's own part as it goes; position `elements.len()` is the end.
    pub fn visit(
        &self,
        air: Arriving,
        ends_in_chamber: bool,
        mut each: impl FnMut(usize, &Fall),
    ) -> Option<Fall> {
        let mut march = March::new(self, air, ends_in_chamber);
        for position in 0..=self.elements.len() {
            match march.pass(position) {
                Some(part) => each(position, &part),
                None => break,
            }
        }
        march.fall()
    }

    /// The largest flow of such air that the chain carries [kg/s].
    pub fn greatest_flow(&self, air: Arriving, ends_in_chamber: bool) -> f64 {
        let carries = |flow| self.fall(air.with_flow(flow), ends_in_chamber).is_some();
        let smallest = self.smallest_area();
        // Air that leaves a charge cooler colder needs less of a section.
        let root = match self.passage {
            Some(_) => air.warmth.root.min(air.cooled().warmth.root),
            None => air.warmth.root,
        };
        let mut high = CHOKED_FLOW_FUNCTION * smallest * air.pressure / root;
        // A lone section chokes at this very flow, give or take the rounding of its last bits.
        for rounded in [high, high * (1.0 - 4.0 * f64::EPSILON)] {
            if carries(rounded) {
                return rounded;
            }
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
    pub fn add(&mut self, next: &Fall) {
        self.by_flow += next.by_flow - next.by_pressure * self.by_flow;
        self.by_temperature += next.by_temperature - next.by_pressure * self.by_temperature;
        self.by_leaving += next.by_leaving - next.by_pressure * self.by_leaving;
        self.by_pressure += next.by_pressure * (1.0 - self.by_pressure);
        self.fall += next.fall;
        self.mach_square = self.mach_square.max(next.mach_square);
        self.near_choking |= next.near_choking;
    }

    /// A velocity head as a loss of `k` heads.
    fn times(self, k: f64) -> Fall {
        Fall {
            fall: k * self.fall,
            by_pressure: k * self.by_pressure,
            by_flow: k * self.by_flow,
            by_temperature: k * self.by_temperature,
            by_leaving: k * self.by_leaving,
            ..self
        }
    }
}

/// One velocity head, rho V^2/2 = gamma/2 p M^2, in `area`.
#[inline(always)]
fn head(air: Arriving, area: f64) -> Option<Fall> {
    let section = Section::new(air.needs(area))?;
    let square = section.mach_square;
    let part = 0.5 * GAMMA * square * (1.0 - section.head);
    // Elasticity of the head with the flow function, from M / (1 + M^2/5)^3.
    let elasticity = (2.0 - square) / (1.0 - square);
    let by_log_flow = air.pressure * part * elasticity;
    Some(Fall {
        fall: air.pressure * part,
        by_pressure: part * (1.0 - elasticity),
        by_flow: by_log_flow * air.per_flow,
        by_temperature: 0.5 * by_log_flow * air.warmth.inverse,
        mach_square: square,
        ..Fall::default()
    })
}

/// Stagnation minus static pressure in the end section: what a chamber does not give back.
#[inline(always)]
pub fn exit(air: Arriving, area: f64) -> Option<Fall> {
    let needed = air.needs(area);
    let section = Section::new(needed)?;
    let square = section.mach_square;
    // The pressure ratio is what the head leaves.
    let double_part = GAMMA * square * (1.0 - section.head) / (1.0 - square);
    let double_head = air.pressure * double_part;
    Some(Fall {
        fall: air.pressure * section.head,
        by_pressure: section.head - double_part,
        by_flow: double_head * air.per_flow,
        by_temperature: 0.5 * double_head * air.warmth.inverse,
        by_leaving: 0.0,
        mach_square: square,
        near_choking: needed > NEAR_CHOKING * CHOKED_FLOW_FUNCTION,
    })
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
        mach_square: Section::new(air.needs(area))?.mach_square,
        ..Fall::default()
    })
}

/// The same of a passage that air leaves at another temperature: viscosity at the mean of both.
fn cooled_core(air: Arriving, area: f64, linear: f64, square: f64) -> Option<Fall> {
    let (before, behind) = (air.warmth.temperature, air.leaving);
    let viscosity = viscosity(0.5 * (before + behind));
    let density_drop = air.flow * (linear * viscosity.value + square * air.flow);
    // fall^2 - sum fall + product = 0, from the mean of the densities before and behind.
    let ratio = behind / before;
    let sum = air.pressure * (1.0 + ratio);
    let product = 2.0 * GAS_CONSTANT * behind * density_drop;
    let root = (sum * sum - 4.0 * product).sqrt();
    if root.is_nan() || root <= 0.0 {
        return None;
    }
    let fall = 2.0 * product / (sum + root);
    let product_by_either = GAS_CONSTANT * behind * air.flow * linear * viscosity.derivative;
    Some(Fall {
        fall,
        by_pressure: -fall * (1.0 + ratio) / root,
        by_flow: 2.0 * GAS_CONSTANT * behind * (linear * viscosity.value + 2.0 * square * air.flow)
            / root,
        by_temperature: (product_by_either + fall * air.pressure * ratio / before) / root,
        by_leaving: (product / behind + product_by_either - fall * air.pressure / before) / root,
        mach_square: Section::new(air.needs(area))?.mach_square,
        near_choking: false,
    })
}
