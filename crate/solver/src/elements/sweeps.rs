//! No loss jumps: every number of every loss is swept across its whole range, by every author, and the
//! flow from nothing to choking. A jump is a step of a fine sweep that no finer sweep takes apart.

use serde_json::{Map, Value};

use super::elements;
use crate::branch::{Arriving, Element, Fall, Placed};
use crate::catalogue::{FieldInfo, KindInfo, catalogue};
use crate::gate::decode;
use crate::study::Loss;

const STEPS: u32 = 2_000;
/// Below this a step is rounding, or a duct's that is marched as incompressible below Mach 1e-4 [-].
const ROUNDING: f64 = 1e-7;

/// Loss by its fields, with the author of a place in the catalogue's list.
type Fields = Map<String, Value>;

fn loss(fields: &Fields) -> Loss {
    decode::loss_alone(fields).expect("fields of a loss")
}

/// Every loss by every author, as a new row begins, and with every section and length a little larger
/// or smaller than the others.
fn rows() -> Vec<(&'static KindInfo, Fields)> {
    let mut rows = Vec::new();
    for kind in catalogue().losses {
        let mut laws: Vec<Option<&str>> = kind.laws.iter().map(|law| Some(law.name)).collect();
        if laws.is_empty() {
            laws.push(None);
        }
        for law in laws {
            for factor in [1.0, 0.6, 1.7] {
                let mut fields = Fields::new();
                fields.insert("kind".to_owned(), kind.kind.into());
                if let Some(law) = law {
                    fields.insert("law".to_owned(), law.into());
                }
                let mut turned = factor;
                for info in kind.fields {
                    if let Some(default) = info.default {
                        // Contradictions that the gate refuses are not swept.
                        let fixed = matches!(kind.kind, "core" | "throttle");
                        let scale = if fixed { 1.0 } else { turned };
                        let value = (default * scale).clamp(info.minimum, info.maximum);
                        fields.insert(info.name.to_owned(), value.into());
                        turned = 1.0 / turned;
                    }
                }
                rows.push((kind, fields));
            }
        }
    }
    rows
}

/// What an element takes from air at 1 bar and 300 K, over itself plus 10 Pa: from 0 to 1; nothing where it chokes.
fn taken(element: Element, flow: f64) -> Option<f64> {
    let fall = fall(element, flow)?.fall;
    Some(fall / (fall.abs() + 10.0))
}

fn fall(element: Element, flow: f64) -> Option<Fall> {
    Placed::published(element).fall(Arriving::new(1e5, 300.0, flow))
}

/// The largest jump of a function over a range, in steps that grow with `x` where `by_ratio`.
fn jump(range: [f64; 2], by_ratio: bool, f: impl Fn(f64) -> Option<f64>) -> Option<(f64, f64)> {
    let at = |part: f64| {
        if by_ratio {
            range[0] * (range[1] / range[0]).powf(part)
        } else {
            range[0] + (range[1] - range[0]) * part
        }
    };
    let step_of = |from: f64, to: f64| Some((f(at(to))? - f(at(from))?).abs());
    let part = |step: u32| f64::from(step) / f64::from(STEPS);
    let steps: Vec<f64> = (0..STEPS)
        .map(|step| step_of(part(step), part(step + 1)).unwrap_or(0.0))
        .collect();
    let mut worst: Option<(f64, f64)> = None;
    for (step, size) in steps.iter().enumerate() {
        let beside = steps[step.saturating_sub(2)..step]
            .iter()
            .chain(&steps[step + 1..(step + 3).min(steps.len())])
            .fold(0.0_f64, |most, beside| most.max(*beside));
        if *size < 2.0 * beside || *size < ROUNDING {
            continue;
        }
        // Halve towards the greater half; a jump stays whole, a slope or a square root shrinks.
        let (mut from, mut to) = (part(step as u32), part(step as u32 + 1));
        for _ in 0..12 {
            let middle = 0.5 * (from + to);
            let (left, right) = (step_of(from, middle), step_of(middle, to));
            if left.unwrap_or(0.0) > right.unwrap_or(0.0) {
                to = middle;
            } else {
                from = middle;
            }
        }
        let left = step_of(from, to).unwrap_or(0.0);
        if left > 0.3 * size && worst.is_none_or(|(_, most)| left > most) {
            worst = Some((at(from), left));
        }
    }
    worst
}

/// Ranges in which a field is swept: the whole of it by ratios, and near its default in equal steps.
fn ranges(info: &FieldInfo) -> [([f64; 2], bool); 2] {
    let usual = info.default.filter(|default| *default > 0.0);
    let usual = usual.map_or(0.01, |default| 5.0 * default);
    let least = info.minimum.max(1e-6 * info.maximum);
    [
        ([least, info.maximum], true),
        ([info.minimum, usual.min(info.maximum)], false),
    ]
}

/// The points and pressures of a core may contradict each other, which the gate refuses.
fn swept(kind: &KindInfo, info: &FieldInfo) -> bool {
    kind.kind != "core" || matches!(info.name, "area" | "fraction" | "pressure" | "temperature")
}

#[test]
fn a_jump_is_found_and_a_steep_slope_is_none() {
    let step = |x: f64| Some(x + if x > 0.3 { 0.001 } else { 0.0 });
    let (place, size) = jump([0.0, 1.0], false, step).expect("a jump");
    assert!((place - 0.3).abs() < 1e-5 && (size - 0.001).abs() < 1e-5);
    assert_eq!(jump([0.0, 1.0], false, |x| Some(x.sqrt())), None);
    assert_eq!(
        jump([0.0, 1.0], false, |x| Some((x - 0.4).max(0.0).sqrt())),
        None
    );
    assert_eq!(jump([0.0, 1.0], false, |x| (x < 0.7).then_some(x)), None);
}

#[test]
fn no_dimension_jumps() {
    for (kind, fields) in rows() {
        for info in kind.fields.iter().filter(|info| swept(kind, info)) {
            for (range, by_ratio) in ranges(info) {
                for backwards in [false, true] {
                    let at = |value: f64| {
                        let mut fields = fields.clone();
                        fields.insert(info.name.to_owned(), value.into());
                        let (forward, reversed) = elements(&loss(&fields));
                        let element = if backwards { reversed } else { forward };
                        taken(element, 0.02)
                    };
                    let found = jump(range, by_ratio, at);
                    assert_eq!(found, None, "{} of {fields:?}, {backwards}", info.name);
                }
            }
        }
    }
}

#[test]
fn neither_the_fall_nor_its_slope_jumps_with_the_flow() {
    for (_, fields) in rows() {
        let (forward, reversed) = elements(&loss(&fields));
        for element in [&forward, &reversed] {
            let slope = |flow: f64| {
                let by_flow = fall(element.clone(), flow)?.by_flow;
                Some(by_flow / (by_flow.abs() + 1e3))
            };
            for (range, by_ratio) in [([1e-9, 1.0], true), ([1e-9, 0.3], false)] {
                let found = jump(range, by_ratio, |flow| taken(element.clone(), flow));
                assert_eq!(found, None, "fall of {fields:?}");
                assert_eq!(jump(range, by_ratio, slope), None, "slope of {fields:?}");
            }
        }
        // Through no flow the fall changes sign: its slope from either side is the same.
        let still = |element: Element| fall(element, 1e-12).expect("hardly any flow").by_flow;
        let (one, other) = (still(forward), still(reversed));
        assert!((one - other).abs() < 1e-6 * (1.0 + one.abs()), "{fields:?}");
    }
}

/// Central difference of the eighth order, over a thousandth of `x`; nothing where the function stops on the way.
fn difference(x: f64, f: impl Fn(f64) -> Option<f64>) -> Option<f64> {
    let h = 1e-3 * x;
    let pair = |steps: f64| Some(f(x + steps * h)? - f(x - steps * h)?);
    let sum = 672.0 * pair(1.0)? - 168.0 * pair(2.0)? + 32.0 * pair(3.0)? - 3.0 * pair(4.0)?;
    Some(sum / (840.0 * h))
}

#[test]
fn every_partial_derivative_is_that_of_the_fall() {
    let mut compared = 0;
    for (_, fields) in rows() {
        let (forward, reversed) = elements(&loss(&fields));
        for placed in [forward, reversed].map(Placed::published) {
            let at = |pressure, temperature, flow| {
                placed.fall(Arriving::new(pressure, temperature, flow))
            };
            for flow in [2.7e-3, 0.011, 0.031, 0.07] {
                // Below a pascal the rounding of the fall itself is more than a difference can bear.
                let Some(here) = at(1.3e5, 310.0, flow).filter(|here| here.fall > 1.0) else {
                    continue;
                };
                let fall =
                    |pressure, temperature, flow| Some(at(pressure, temperature, flow)?.fall);
                let by_pressure = difference(1.3e5, |x| fall(x, 310.0, flow));
                let by_temperature = difference(310.0, |x| fall(1.3e5, x, flow));
                let by_flow = difference(flow, |x| fall(1.3e5, 310.0, x));
                for (what, x, ours, numeric) in [
                    ("pressure", 1.3e5, here.by_pressure, by_pressure),
                    ("temperature", 310.0, here.by_temperature, by_temperature),
                    ("flow", flow, here.by_flow, by_flow),
                ] {
                    let Some(numeric) = numeric else { continue };
                    let off = (ours - numeric).abs() / ours.abs().max(here.fall / x);
                    assert!(
                        off < 1e-10,
                        "by {what} at {flow} kg/s: {off:.1e} of {fields:?}"
                    );
                    compared += 1;
                }
            }
        }
    }
    assert!(compared > 1_000, "{compared}");
}
