//! Losses of so many velocity heads, where the number follows the Reynolds number.

use super::{Arriving, Fall, head};
use crate::law::Slope;
use crate::law::bend::BendTerms;
use crate::law::friction::churchill_1977;
use crate::law::screen::round_blevins_1984;

/// Bend coefficients hold for turbulent flow; below this Reynolds number their friction factor stays put [-].
const TURBULENT_REYNOLDS: f64 = 4_000.0;

/// A bend whose coefficient follows the friction factor of its wall.
pub fn bend(
    air: Arriving,
    terms: &BendTerms,
    area: f64,
    diameter: f64,
    relative_roughness: f64,
) -> Option<Fall> {
    heads(air, area, diameter, |reynolds| {
        let held = reynolds.hypot(TURBULENT_REYNOLDS);
        let group = churchill_1977::friction_group(held, relative_roughness);
        let factor = group.value / held;
        let factor_by_held = (group.derivative - factor) / held;
        let coefficient = terms.coefficient(factor);
        // d(held)/d(Re) = Re / held
        Slope {
            value: coefficient.value,
            derivative: coefficient.derivative * factor_by_held * reynolds / held,
        }
    })
}

/// A screen of round wires.
pub fn screen(air: Arriving, factor: f64, area: f64, gap: f64) -> Option<Fall> {
    heads(air, area, gap, |reynolds| {
        let beta = round_blevins_1984::by_reynolds(reynolds);
        Slope {
            value: factor * beta.value,
            derivative: factor * beta.derivative,
        }
    })
}

/// A coefficient by the Reynolds number of a length [m], in velocity heads of a section.
#[inline(always)]
fn heads(
    air: Arriving,
    area: f64,
    length: f64,
    coefficient: impl Fn(f64) -> Slope,
) -> Option<Fall> {
    let per_flow = length / area * air.warmth.inverse_viscosity;
    let reynolds = air.flow * per_flow;
    let k = coefficient(reynolds);
    let by_flow = k.derivative * per_flow;
    let by_temperature = -k.derivative * reynolds * air.warmth.log_viscosity;
    let head = head(air, area)?;
    let mut fall = head.times(k.value);
    fall.by_flow += by_flow * head.fall;
    fall.by_temperature += by_temperature * head.fall;
    Some(fall)
}

#[cfg(test)]
mod tests {
    use super::super::{Element, Placed};
    use super::*;

    /// Central difference of the eighth order, over a part of `x`.
    fn difference(x: f64, f: impl Fn(f64) -> f64) -> f64 {
        let h = 2e-3 * x;
        let pair = |steps: f64| f(x + steps * h) - f(x - steps * h);
        (672.0 * pair(1.0) - 168.0 * pair(2.0) + 32.0 * pair(3.0) - 3.0 * pair(4.0)) / (840.0 * h)
    }

    #[test]
    fn derivatives_are_those_of_the_fall() {
        let bend = |fixed, by_friction| Element::Bend {
            terms: BendTerms { fixed, by_friction },
            area: 1e-3,
            diameter: 0.035,
            relative_roughness: 1e-3,
        };
        let screen = Element::Screen {
            factor: 0.75,
            area: 5e-4,
            gap: 1e-4,
        };
        // Reynolds numbers of the gap from 20 to 400, none near a point of the table.
        let flows = [0.0022, 0.0032, 0.0045, 0.0067, 0.014, 0.027];
        for element in [bend(0.1, 3.0), bend(0.2, 2.0), screen] {
            for flow in flows {
                let placed = Placed::published(element.clone());
                let at = |pressure, temperature, flow| {
                    let air = Arriving::new(pressure, temperature, flow);
                    placed.fall(air).expect("far from choking")
                };
                let here = at(1.2e5, 310.0, flow);
                let checks = [
                    (
                        "flow",
                        here.by_flow,
                        difference(flow, |x| at(1.2e5, 310.0, x).fall),
                    ),
                    (
                        "pressure",
                        here.by_pressure,
                        difference(1.2e5, |x| at(x, 310.0, flow).fall),
                    ),
                    (
                        "temperature",
                        here.by_temperature,
                        difference(310.0, |x| at(1.2e5, x, flow).fall),
                    ),
                ];
                for (what, ours, numeric) in checks {
                    let off = (ours / numeric - 1.0).abs();
                    assert!(
                        off < 1e-10,
                        "by {what} at {flow} kg/s: {off:e} of {element:?}"
                    );
                }
            }
        }
    }
}
