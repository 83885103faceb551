//! Wall friction along a duct of constant section: Fanno flow with the friction factor of the arriving
//! Reynolds number.
//!
//! With y = 1/M^2 the Fanno relation reads y/gamma - 6/7 ln(y + 1/5), falling by f L/D along the duct.

use crate::branch::{Arriving, Fall};
use crate::gas::{self, GAMMA};
use crate::law::Slope;
use crate::law::friction::churchill_1977;

/// Below this Mach number a duct is marched as incompressible: the difference is of the order of its square.
const INCOMPRESSIBLE_MACH: f64 = 1e-4;
/// 6/7, the weight of the logarithm in the Fanno relation.
const LOG_WEIGHT: f64 = 6.0 / 7.0;

/// A duct of constant section.
#[derive(Clone, Copy, Debug)]
pub struct Duct {
    /// Section [m2].
    pub area: f64,
    /// Hydraulic diameter [m].
    pub diameter: f64,
    /// Length [m].
    pub length: f64,
    /// Roughness over hydraulic diameter [-].
    pub relative_roughness: f64,
    /// 64 over the section's f Re in laminar flow [-].
    pub laminar_factor: f64,
}

impl Duct {
    /// What friction takes, or nothing when the duct chokes.
    pub fn fall(&self, air: Arriving) -> Option<Fall> {
        let viscosity = air.warmth.viscosity;
        let reynolds =
            air.flow * self.diameter / (self.area * viscosity.value) * self.laminar_factor;
        let group = churchill_1977::friction_group(reynolds, self.relative_roughness);
        let x = air.needs(self.area);
        let mach = gas::mach(x)?;
        if mach < INCOMPRESSIBLE_MACH {
            return Some(self.slow(air, group, viscosity, mach));
        }
        let slenderness = self.length / self.diameter;
        let friction = group.value / reynolds * slenderness;
        // d(f L/D)/d(ln Re)
        let friction_slope = (group.derivative - group.value / reynolds) * slenderness;
        let y = 1.0 / (mach * mach);
        let drop = fanno_drop(y, friction)?;
        let y_out = y - drop;
        let fall = air.pressure * lost_part(drop / y, drop / (y + 0.2));
        let left = air.pressure - fall;
        let slope_out = (1.0 - 1.2 / (y_out + 0.2)) / GAMMA;
        let log_out = -0.5 * (y_out - 1.0) / (y_out * (y_out + 0.2));
        // d(ln p_out) = d(ln p) + d(ln x) - log_out dy_out, with dy_out from the Fanno relation.
        let by_log_x = 1.0 + log_out * (2.0 * y / GAMMA) / slope_out;
        let by_friction = log_out / slope_out;
        let log_viscosity = viscosity.derivative / viscosity.value;
        Some(Fall {
            fall,
            by_pressure: 1.0 - left * (1.0 - by_log_x) / air.pressure,
            by_flow: -left * (by_log_x + by_friction * friction_slope) / air.flow,
            by_temperature: -left
                * (0.5 * by_log_x / air.warmth.temperature
                    - by_friction * friction_slope * log_viscosity),
            mach: 1.0 / y_out.sqrt(),
            choking: 0.0,
        })
    }

    /// The limit at vanishing Mach number, where the fall may be linear in the flow.
    fn slow(&self, air: Arriving, group: Slope, viscosity: Slope, mach: f64) -> Fall {
        // f L/D rho V^2/2 = (f Re) (L/D) (m / Re) (m / (2 rho A^2)), and m / Re does not depend on the flow.
        let density = gas::density(air.pressure, air.warmth.temperature);
        let flow_over_reynolds =
            self.area * viscosity.value / (self.diameter * self.laminar_factor);
        let factor = self.length / self.diameter * flow_over_reynolds
            / (2.0 * density * self.area * self.area);
        let fall = factor * group.value * air.flow;
        let reynolds = air.flow / flow_over_reynolds;
        let log_viscosity = viscosity.derivative / viscosity.value;
        Fall {
            fall,
            by_pressure: -fall / air.pressure,
            by_flow: factor * (group.value + group.derivative * reynolds),
            by_temperature: fall * (log_viscosity + 1.0 / air.warmth.temperature)
                - factor * group.derivative * reynolds * log_viscosity * air.flow,
            mach,
            choking: 0.0,
        }
    }
}

/// The fall of y along `friction`; nothing when Mach 1 comes first.
fn fanno_drop(y: f64, friction: f64) -> Option<f64> {
    // With u = drop/(y + 1/5) the relation is (s/gamma - 6/7) u + 6/7 (u + ln(1 - u)) = friction, s = y + 1/5.
    let scale = y + 0.2;
    let first = scale / GAMMA - LOG_WEIGHT;
    let to_mach_1 = (y - 1.0) / scale;
    let excess = |u: f64| first * u + LOG_WEIGHT * log_beyond_first(u) - friction;
    if excess(to_mach_1) < 0.0 {
        return None;
    }
    // The relation bends down: from the left of the root a step falls short or lands beyond it, and from
    // beyond it each step comes back short of it no more. The start is the expansion about no friction.
    let linear = friction / first;
    let second = 0.5 * LOG_WEIGHT / first;
    let third = 2.0 * second * second + LOG_WEIGHT / (3.0 * first);
    let mut u = (linear * (1.0 + linear * (second + linear * third))).min(to_mach_1);
    let (mut low, mut high) = (0.0, to_mach_1);
    for _ in 0..60 {
        let value = excess(u);
        if value > 0.0 {
            high = u;
        } else {
            low = u;
        }
        let slope = first - LOG_WEIGHT * u / (1.0 - u);
        let step = value / slope;
        let next = u - step;
        let inside = next >= low && next <= high;
        let next = if inside { next } else { 0.5 * (low + high) };
        // The error after a step is of the order of its square.
        let done = (next - u).abs() <= 1e-9 * u && inside || high - low <= f64::EPSILON * high;
        u = next;
        if done || value == 0.0 {
            break;
        }
    }
    Some(u * scale)
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
                let drop = fanno_drop(y, friction).expect("short of choking");
                let met = drop / GAMMA + LOG_WEIGHT * (-drop / (y + 0.2)).ln_1p();
                assert!((met - friction).abs() <= 1e-12 * friction, "{mach} {part}");
                let exponent = -2.5 * (-drop / y).ln_1p() + 3.0 * (-drop / (y + 0.2)).ln_1p();
                let lost = lost_part(drop / y, drop / (y + 0.2));
                let powers = -exponent.exp_m1();
                assert!((lost - powers).abs() <= 1e-12 * powers, "{mach} {part}");
            }
            assert!(fanno_drop(y, 1.000_001 * to_choking).is_none());
        }
    }
}
