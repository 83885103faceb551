//! Every partial derivative of every junction is that of its losses: against differences, in all flow patterns.

use std::f64::consts::FRAC_PI_2;

use super::{Header, Jets, Junction, LegLosses, Tee};
use crate::gas::Warmth;
use crate::study::JunctionLaw;

/// A node's pressure [Pa], temperature [K] and the flows of its legs [kg/s].
type State = (f64, f64, Vec<f64>);

fn losses(junction: &Junction, (pressure, temperature, flows): &State) -> LegLosses {
    let mut out = LegLosses::default();
    junction.losses(*pressure, Warmth::at(*temperature), flows, &mut out);
    out
}

/// Central difference of the eighth order of each leg's loss, with a step in one number of the state.
fn difference(junction: &Junction, state: &State, step: f64, number: Number) -> Vec<f64> {
    let at = |steps: f64| {
        let mut moved = state.clone();
        match number {
            Number::Pressure => moved.0 += steps * step,
            Number::Temperature => moved.1 += steps * step,
            Number::Flow(leg) => moved.2[leg] += steps * step,
        }
        losses(junction, &moved).loss
    };
    let mut sum = vec![0.0; state.2.len()];
    for (steps, weight) in [(1.0, 672.0), (2.0, -168.0), (3.0, 32.0), (4.0, -3.0)] {
        let (ahead, behind) = (at(steps), at(-steps));
        for (leg, sum) in sum.iter_mut().enumerate() {
            *sum += weight * (ahead[leg] - behind[leg]) / (840.0 * step);
        }
    }
    sum
}

#[derive(Clone, Copy, Debug)]
enum Number {
    Pressure,
    Temperature,
    Flow(usize),
}

/// The largest error over the derivatives of a state, each over the largest of its row or the loss it would make.
fn worst(junction: &Junction, state: &State) -> f64 {
    let here = losses(junction, state);
    let legs = state.2.len();
    let total: f64 = state.2.iter().map(|flow| flow.abs()).sum();
    let largest = here
        .loss
        .iter()
        .fold(0.0_f64, |most, loss| most.max(loss.abs()));
    let mut worst = 0.0_f64;
    let mut numbers = vec![(Number::Pressure, state.0), (Number::Temperature, state.1)];
    numbers.extend((0..legs).map(|leg| (Number::Flow(leg), total)));
    for (number, size) in numbers {
        let steps = [1e-3, 1e-4, 3e-5].map(|part| difference(junction, state, part * size, number));
        for leg in 0..legs {
            let ours = match number {
                Number::Pressure => here.by_pressure[leg],
                Number::Temperature => here.by_temperature[leg],
                Number::Flow(other) => here.by_flow[leg * legs + other],
            };
            let scale = ours.abs().max(largest / size).max(f64::MIN_POSITIVE);
            // A wide step bears rounding, a narrow one does not reach over a corner of a law.
            let off = steps.iter().map(|step| (step[leg] - ours).abs() / scale);
            worst = worst.max(off.fold(f64::INFINITY, f64::min));
        }
    }
    worst
}

fn assert_exact(junction: &Junction, flows: &[f64]) {
    let state = (1.4e5, 320.0, flows.to_vec());
    let off = worst(junction, &state);
    assert!(off < 1e-10, "{off:.1e} of {junction:?} at {flows:?}");
}

#[test]
fn of_tees_and_wyes_by_every_author_in_all_patterns() {
    use JunctionLaw::{Bassett2001, CraneTp410, Gardel1957, Idelchik, Rennels2012};
    for law in [Bassett2001, Idelchik, Rennels2012, Gardel1957, CraneTp410] {
        for (ratio, angle) in [(0.33, FRAC_PI_2), (0.7, 0.9), (1.0, FRAC_PI_2)] {
            let junction = Junction::Tee(Tee {
                area: 1.2e-3,
                side_area: 1.2e-3 * ratio,
                angle,
                law,
                off: [0.4, -0.3],
            });
            // Every leg brings or takes all, in even and uneven parts, and with one leg all but at rest.
            for whole in 0..3 {
                for part in [0.003, 0.171, 0.487, 0.823, 0.9963] {
                    for flow in [0.05, -0.05] {
                        let mut flows = [0.0; 3];
                        flows[whole] = flow;
                        flows[(whole + 1) % 3] = -flow * part;
                        flows[(whole + 2) % 3] = -flow * (1.0 - part);
                        assert_exact(&junction, &flows);
                    }
                }
            }
        }
    }
}

#[test]
fn of_headers_and_of_plenums_with_jets() {
    let header = Junction::Header(Header {
        area: 2e-3,
        dividing: 0.56,
        combining: 1.1,
        runs: vec![true, true, false, false],
    });
    let jets = Junction::Jets(Jets {
        fractions: vec![0.0, 0.3, -0.2, 0.1],
        areas: vec![2e-3, 1e-3, 1e-3, 8e-4],
    });
    for flows in [
        [0.09, -0.04, -0.03, -0.02],
        [-0.09, 0.04, 0.03, 0.02],
        [0.05, 0.05, -0.06, -0.04],
        [-0.05, -0.05, 0.06, 0.04],
        [0.06, -0.07, 0.03, -0.02],
        // Legs all but at rest, where one pattern goes over into the next.
        [0.1, -0.0993, -0.0004, -0.0003],
        [0.1, -0.05, -0.0497, -0.0003],
    ] {
        assert_exact(&header, &flows);
        assert_exact(&jets, &flows);
    }
}
