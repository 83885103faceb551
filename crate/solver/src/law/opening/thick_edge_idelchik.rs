//! Opening in a thick wall: how far the jet fills it again, Idelchik.
//!
//! # Equation
//! What a wall of thickness l saves is 2 (1/C - 1)(1 - A/A_2) w heads in the opening, w = 1 - tau/tau(0),
//! tau = (2.4 - l/d) 10^-phi, phi = 0.25 + 0.535 (l/d)^8 / (0.05 + (l/d)^8), 0 from l/d 2.4 on; its wall's
//! friction costs 0.02 l/d.
//! With w = 1 the loss is that of a jet that fills the opening, (1/C - 1)^2, and then widens, (1 - A/A_2)^2.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | l/d | `thickness_ratio` | thickness of the wall over diameter of a circle of the opening's area | - |
//! | C | - | discharge coefficient of the thin opening | - |
//! | A/A_2 | - | opening over the section behind, 0 for a chamber | - |
//! | w | result | part of the way from the thin opening to the one filled again | - |
//!
//! # Source
//! I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-12 (tau) and 4-15, read through
//! FluidDissipation (dp_thickEdgedOverall), which names them. Borda and Carnot for what w leads to, where the
//! source has 0.5 and tau(0) 1.35 for a sharp edge, so that any discharge coefficient tends to its own thin opening.
//!
//! # Range of validity
//! l/d from 0 to 3; Reynolds number from 1e3.
//!
//! # Limits
//! Sharp edge before and behind, a round opening or one about as wide as high. Near choking a thick opening lets
//! more through than this says, since the jet is taken as narrow as at low speed.

use super::super::Scatter;

/// Range of l/d; a longer one is a duct [-].
pub const RANGE: [f64; 2] = [0.0, 3.0];

/// The source begins here [-].
pub const LEAST_REYNOLDS: f64 = 1e3;

/// Scatter of the loss.
pub const SCATTER: Scatter = Scatter {
    relative: 0.15,
    common: 0.5,
    origin: "the source says the same to 1 % out of a chamber, 8 % less where the opening is 0.2 of the sections beside it, 21 % less at 0.4",
};

/// Darcy friction factor of the opening's wall [-].
const FRICTION: f64 = 0.02;

/// Part of the way from the thin opening to the one that the jet fills again.
pub fn filled(thickness_ratio: f64) -> f64 {
    1.0 - tau(thickness_ratio) / tau(0.0)
}

/// What the opening's own wall costs, in heads in the opening.
pub fn wall_friction(thickness_ratio: f64) -> f64 {
    FRICTION * thickness_ratio
}

fn tau(thickness_ratio: f64) -> f64 {
    let held = thickness_ratio.min(2.4);
    let eighth = held.powi(8);
    let phi = 0.25 + 0.535 * eighth / (0.05 + eighth);
    (2.4 - held) * 10.0_f64.powf(-phi)
}
