//! A bench reading at one depression carried over to another.
//!
//! # Equation
//! m = A_eff p (R T)^(-1/2) psi(r), psi(r)^2 = 2 g/(g - 1) r^(2/g) (1 - r^((g-1)/g)), r not below (2/(g+1))^(g/(g-1)).
//! The trade's rule instead: m = A_eff (2 rho dp)^(1/2). A sharp edge: that rule times
//! epsilon = 1 - (0.351 + 0.256 b^4 + 0.93 b^8) (1 - r^(1/g)).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | p, T | `pressure`, `temperature` | of the still air before | Pa, K |
//! | dp | `depression` | from there to the jet | Pa |
//! | r | result | 1 - dp/p | - |
//! | A_eff | | section to which the air accelerates without loss, kept from one depression to the other | m2 |
//! | rho | | p/(R T) | kg/m3 |
//! | b | `diameter_ratio` | of a sharp edge to the pipe before it, 0 where air is still | - |
//! | m | result | mass flow for 1 m2 | kg/s |
//!
//! # Source
//! St Venant and Wantzel 1839 as in J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, appendix C. The
//! square root rule: common practice. The sharp edge: ISO 5167-2:2003, 5.3.2, as coded in fluids 1.3.1.
//!
//! # Range of validity
//! Any depression below the pressure before; a sharp edge's from r = 0.75 on.
//!
//! # Limits
//! The effective area is kept: neither Reynolds number nor Mach number changes its coefficient. A jet from a sharp
//! edge contracts less the lower r is, so ports with a sharp narrowest edge lie between the two laws.

use crate::gas::{GAMMA, GAS_CONSTANT};

/// Pressure ratios at which the sharp edge's law holds [-].
pub const SHARP_RANGE: [f64; 2] = [0.75, 1.0];

/// Air between the room and what follows the port.
#[derive(Clone, Copy, Debug)]
pub struct Depression {
    /// Absolute pressure before the port, where the air is still [Pa].
    pub pressure: f64,
    /// Temperature there [K].
    pub temperature: f64,
    /// How much less the pressure behind is [Pa].
    pub depression: f64,
}

impl Depression {
    /// Flow through an effective area of 1 m2 [kg/s].
    pub fn flow(&self) -> f64 {
        let most = self.pressure * (1.0 - critical_ratio());
        // The logarithm of the ratio keeps its digits at small depressions.
        let log_ratio = (-self.depression.min(most) / self.pressure).ln_1p();
        let part = -(log_ratio * (GAMMA - 1.0) / GAMMA).exp_m1();
        let psi = (2.0 * GAMMA / (GAMMA - 1.0) * part).sqrt() * (log_ratio / GAMMA).exp();
        psi * self.pressure / (GAS_CONSTANT * self.temperature).sqrt()
    }

    /// The same by the square root rule [kg/s].
    pub fn by_square_root(&self) -> f64 {
        (2.0 * self.pressure / (GAS_CONSTANT * self.temperature) * self.depression).sqrt()
    }

    /// The same where the narrowest section is a sharp edge; nothing outside that law's range [kg/s].
    pub fn past_sharp_edge(&self) -> Option<f64> {
        let ratio = 1.0 - self.depression / self.pressure;
        (ratio >= SHARP_RANGE[0]).then(|| sharp_edge(ratio, 0.0) * self.by_square_root())
    }

    /// Whether the jet is at Mach 1.
    pub fn chokes(&self) -> bool {
        self.depression >= self.pressure * (1.0 - critical_ratio())
    }
}

/// Flow of a sharp-edged orifice over that of an incompressible fluid [-].
pub fn sharp_edge(ratio: f64, diameter_ratio: f64) -> f64 {
    let fourth = diameter_ratio.powi(4);
    let slope = 0.351 + 0.256 * fourth + 0.93 * fourth * fourth;
    1.0 - slope * (1.0 - ratio.powf(1.0 / GAMMA))
}

/// p/p0 at Mach 1 [-].
fn critical_ratio() -> f64 {
    (2.0 / (GAMMA + 1.0)).powf(GAMMA / (GAMMA - 1.0))
}
