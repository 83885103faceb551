//! Wall friction along a duct of constant section: Fanno flow with the friction factor of the arriving
//! Reynolds number.
//!
//! With y = 1/M^2 the Fanno relation reads y/gamma - 6/7 ln(y + 1/5), falling by f L/D along the duct.

use crate::branch::{Arriving, Fall};
use crate::gas::{self, GAMMA, Section};
use crate::law::Slope;
use crate::law::friction::churchill_1977;

/// Below this square of the Mach number, of which the difference is, a duct is marched as incompressible.
const INCOMPRESSIBLE_MACH_SQUARE: f64 = 1e-8;
/// 6/7, the weight of the logarithm in the Fanno relation.
const LOG_WEIGHT: f64 = 6.0 / 7.0;

/// A duct of constant section.
#[derive(Clone, Copy, Debug)]
pub struct Duct {
    /// Section [m2].
    pub area: f64,
    /// Reynolds number, corrected for the section's shape, times viscosity over mass flow [1/m].
    reynolds: f64,
    /// Length over hydraulic diameter [-].
    slenderness: f64,
    /// Roughness over hydraulic diameter [-].
    relative_roughness: f64,
}

/// What friction does to the air along a duct.
#[derive(Clone, Copy, Debug)]
struct Fanno {
    /// The part by which 1/M^2 falls [-].
    shorter: f64,
    /// The part of the stagnation pressure that is lost [-].
    lost: f64,
}

impl Duct {
    /// A duct by section [m2], hydraulic diameter [m], length [m] and roughness [m]; `laminar_factor` is 64
    /// over the section's f Re in laminar flow [-].
    pub fn new(area: f64, diameter: f64, length: f64, roughness: f64, laminar_factor: f64) -> Self {
        Self {
            area,
            reynolds: diameter / area * laminar_factor,
            slenderness: length / diameter,
            relative_roughness: roughness / diameter,
        }
    }

    /// What friction takes, or nothing when the duct chokes.
    pub fn fall(&self, air: Arriving) -> Option<Fall> {
        let warmth = &air.warmth;
        let reynolds = air.flow * self.reynolds * warmth.inverse_viscosity;
        let group = churchill_1977::friction_group(reynolds, self.relative_roughness);
        let square = Section::new(air.needs(self.area))?.mach_square;
        if square < INCOMPRESSIBLE_MACH_SQUARE {
            return Some(self.slow(air, group, square));
        }
        let factor = group.value / reynolds;
        let friction = factor * self.slenderness;
        // d(f L/D)/d(ln Re)
        let friction_slope = (group.derivative - factor) * self.slenderness;
        let Fanno { shorter, lost } = Fanno::along(square, friction)?;
        let longer = 1.0 / (1.0 - shorter);
        let square_out = square * longer;
        // d(ln p_out) = d(ln p) - (longer - 1) d(ln x) - gamma/2 M_out^2 d(f L/D), x being the flow function.
        let by_log_x = shorter * longer;
        let by_log_reynolds = 0.5 * GAMMA * square_out * friction_slope;
        let left = air.pressure * (1.0 - lost);
        Some(Fall {
            fall: air.pressure * lost,
            by_pressure: 1.0 - (1.0 - lost) * longer,
            by_flow: left * (by_log_x + by_log_reynolds) * air.per_flow,
            by_temperature: left
                * (0.5 * by_log_x * warmth.inverse - by_log_reynolds * warmth.log_viscosity),
            mach_square: square_out,
            ..Fall::default()
        })
    }

    /// The limit at vanishing Mach number, where the fall may be linear in the flow.
    fn slow(&self, air: Arriving, group: Slope, mach_square: f64) -> Fall {
        // f L/D rho V^2/2 = (f Re) (L/D) (m / Re) (m / (2 rho A^2)), and m / Re does not depend on the flow.
        let warmth = &air.warmth;
        let density = gas::density(air.pressure, warmth.temperature);
        let per_flow = self.reynolds * warmth.inverse_viscosity;
        let factor = self.slenderness / (per_flow * 2.0 * density * self.area * self.area);
        let fall = factor * group.value * air.flow;
        let by_reynolds = factor * group.derivative * per_flow * air.flow;
        Fall {
            fall,
            by_pressure: -fall / air.pressure,
            by_flow: factor * group.value + by_reynolds,
            by_temperature: fall * (warmth.log_viscosity + warmth.inverse)
                - by_reynolds * warmth.log_viscosity * air.flow,
            mach_square,
            ..Fall::default()
        }
    }
}

impl Fanno {
    /// From a squared Mach number along f L/D; nothing when Mach 1 comes first.
    fn along(mach_square: f64, friction: f64) -> Option<Self> {
        // With u, the part by which y + 1/5 falls, the relation is u + w (u + ln(1 - u)) = l.
        let from_mach_1 = 1.0 - mach_square;
        let shifted = 1.0 + 0.2 * mach_square;
        let per_friction = GAMMA * mach_square / from_mach_1;
        let weight = LOG_WEIGHT * per_friction;
        let linear = per_friction * friction;
        let excess = |u: f64| u + weight * log_beyond_first(u) - linear;
        // The slope falls ever faster from 1 to nothing at Mach 1, so half the way there uses up at least
        // 3/8 of what the slope at the start would on the whole of it.
        let far = linear * shifted < 0.375 * from_mach_1;
        let to_mach_1 = if far { 1.0 } else { from_mach_1 / shifted };
        // At Mach 1 itself there is no number to compare, and nothing left for friction.
        let reached = far || excess(to_mach_1) >= 0.0;
        if !reached {
            return None;
        }
        // The relation bends down: from the left of the root a step falls short or lands beyond it, and
        // from beyond it each step comes back short of it no more. The start is the series' first terms.
        let half = 0.5 * weight;
        let third = 2.0 * half * half + weight / 3.0;
        let fourth = half * (5.0 * half * half + 5.0 / 3.0 * weight + 0.5);
        let series = 1.0 + linear * (half + linear * (third + linear * fourth));
        let mut u = (linear * series).min(to_mach_1);
        let (mut low, mut high) = (0.0, to_mach_1);
        for _ in 0..60 {
            let value = excess(u);
            if value > 0.0 {
                high = u;
            } else {
                low = u;
            }
            let next = u - value * (1.0 - u) / (1.0 - u - weight * u);
            let inside = next >= low && next <= high;
            let next = if inside { next } else { 0.5 * (low + high) };
            // The error after a step is of the order of its square.
            let done = (next - u).abs() <= 1e-9 * u && inside || high - low <= f64::EPSILON * high;
            u = next;
            if done || value == 0.0 {
                break;
            }
        }
        let shorter = u * shifted;
        Some(Self {
            shorter,
            lost: lost_part(shorter, u),
        })
    }
}

/// u + ln(1 - u), without cancellation where u is small.
fn log_beyond_first(u: f64) -> f64 {
    if u < 0.02 {
        // -u^2/2 - u^3/3 - ..., the next term being below rounding.
        let tail = 1.0 / 7.0 + u * (1.0 / 8.0 + u * (1.0 / 9.0));
        let tail = 1.0 / 4.0 + u * (1.0 / 5.0 + u * (1.0 / 6.0 + u * tail));
        -u * u * (0.5 + u * (1.0 / 3.0 + u * tail))
    } else {
        u + (-u).ln_1p()
    }
}

/// 1 - (1 - b)^3 / (1 - a)^(5/2): the stagnation pressure lost where y falls by its part `a` and y + 1/5
/// by its part `b`; without powers and without cancellation.
fn lost_part(a: f64, b: f64) -> f64 {
    let root = (1.0 - a).sqrt();
    let power = (1.0 - a) * (1.0 - a) * root;
    if a > 0.5 {
        let left = 1.0 - b;
        return 1.0 - left * left * left / power;
    }
    let c = a / (1.0 + root);
    let from_y = c * (5.0 - c * (10.0 - c * (10.0 - c * (5.0 - c))));
    let from_shifted = b * (3.0 - b * (3.0 - b));
    (from_shifted - from_y) / power
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Our own arithmetic, two ways: the powers and logarithms as they stand in the derivation.
    #[test]
    fn the_relation_is_met_and_the_loss_is_that_of_its_powers() {
        for mach in [1e-3, 0.05, 0.3, 0.7, 0.95] {
            let y: f64 = 1.0 / (mach * mach);
            let to_choking = (y - 1.0) / GAMMA + LOG_WEIGHT * (1.2 / (y + 0.2)).ln();
            for part in [1e-6, 1e-3, 0.1, 0.9, 0.999_999] {
                let friction = part * to_choking;
                let found = Fanno::along(mach * mach, friction).expect("short of choking");
                let drop = found.shorter * y;
                let met = drop / GAMMA + LOG_WEIGHT * (-drop / (y + 0.2)).ln_1p();
                assert!((met - friction).abs() <= 1e-12 * friction, "{mach} {part}");
                let exponent = -2.5 * (-drop / y).ln_1p() + 3.0 * (-drop / (y + 0.2)).ln_1p();
                let powers = -exponent.exp_m1();
                assert!(
                    (found.lost - powers).abs() <= 1e-12 * powers,
                    "{mach} {part}"
                );
            }
            assert!(Fanno::along(mach * mach, 1.000_001 * to_choking).is_none());
        }
    }
}
