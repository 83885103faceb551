//! Conductance of a passage: parts of the core add up, and the air side follows its power.

use evenport::law::cooler::conductance::{AIR_PART, Core, EXPONENT};
use evenport::law::cooler::effectiveness::{Mixing, effectiveness};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{derivative, holds, invariant, no_jump, range};

const LAW: &str = "cooler/conductance";
const CORE: Core = Core {
    conductance: 900.0,
    flow: 0.5,
    air_part: AIR_PART,
    exponent: EXPONENT,
};

pub fn checks() -> Vec<Check> {
    let mut checks = Vec::new();
    // Resistances in series, each worked out by itself: films of h A, the air's by its power.
    for (air_part, exponent) in [(0.7, 0.6), (0.5, 0.8), (1.0, 0.5), (0.0, 0.6), (0.9, 0.0)] {
        let core = Core {
            air_part,
            exponent,
            ..CORE
        };
        for (fraction, flow) in [(1.0, 0.5), (1.0, 0.25), (0.25, 0.2), (0.125, 0.03)] {
            let air_film = 900.0 * fraction * (flow / fraction / 0.5_f64).powf(exponent);
            let resistance = air_part / air_film + (1.0 - air_part) / (900.0 * fraction);
            checks.push(Check {
                id: format!("{flow} kg/s through {fraction} of the face, air part {air_part}, exponent {exponent}"),
                law: LAW,
                source: "resistances in series, Incropera and DeWitt, section 11.2".to_owned(),
                kind: Kind::ClosedForm,
                value: 1.0 / resistance,
                ours: core.passage(fraction, flow).value,
                allowed: 1e-12 / resistance,
                allowed_because: "rounding",
            });
        }
    }
    for number in [1_u32, 2, 8, 60] {
        let part = 1.0 / f64::from(number);
        for flow in [1e-6, 0.05, 0.5, 0.9] {
            let passage = CORE.passage(part, flow * part);
            checks.push(invariant(
                LAW,
                format!("{number} equal passages at {flow} kg/s over the core"),
                CORE.passage(1.0, flow).value,
                passage.value * f64::from(number),
                1e-10,
                "rounding",
            ));
            // Coolant in parallel: each passage has its part of both capacity flows.
            let (air, coolant) = (1005.0 * flow, 1500.0);
            let whole = effectiveness(
                Mixing::BothUnmixed,
                CORE.passage(1.0, flow).value / air,
                air / coolant,
            );
            let one = effectiveness(
                Mixing::BothUnmixed,
                passage.value / (air * part),
                air * part / (coolant * part),
            );
            checks.push(invariant(
                LAW,
                format!(
                    "effectiveness of {number} equal passages, coolant in parallel, at {flow} kg/s"
                ),
                whole.value,
                one.value,
                1e-13,
                "rounding",
            ));
        }
    }
    for (name, flows) in [
        ("flow", [0.01, 0.5]),
        ("flow through zero", [-1e-4, 1e-4]),
        ("reversed flow", [-0.5, -0.01]),
    ] {
        let name = format!("conductance by {name}");
        checks.push(derivative(LAW, &name, flows, |flow| {
            CORE.passage(0.25, flow)
        }));
        checks.push(no_jump(LAW, &name, flows, |flow| {
            CORE.passage(0.25, flow).value
        }));
    }
    let edge = 1e-3 * 0.25 * 0.5;
    let [below, above] = [1.0 - 1e-9, 1.0 + 1e-9].map(|by| CORE.passage(0.25, by * edge));
    checks.push(invariant(
        LAW,
        "derivative just below over just above the flow where the film levels out".to_owned(),
        1.0,
        below.derivative / above.derivative,
        1e-7,
        "what it changes over 2e-9 of the flow",
    ));
    let still = CORE.passage(0.25, 0.0);
    checks.push(holds(
        LAW,
        "conductance above 0 and level without flow".to_owned(),
        still.value > 0.0 && still.derivative == 0.0,
    ));
    checks.push(holds(
        LAW,
        "alike either way".to_owned(),
        CORE.passage(0.25, -0.1).value == CORE.passage(0.25, 0.1).value,
    ));
    for (name, flow, expected) in [
        ("least flow per face", 0.25 * 0.125 + 1e-9, None),
        ("greatest flow per face", 2.0 * 0.125 - 1e-9, None),
        ("too little", 0.25 * 0.125 - 1e-9, Some("flow")),
        ("too much", 2.0 * 0.125 + 1e-9, Some("flow")),
    ] {
        checks.push(range(LAW, name, &CORE.outside(0.25, flow), expected));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
