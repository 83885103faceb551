//! Rows of the data files, and the three checks that every law goes through: derivative, no jump, range.

use std::collections::BTreeMap;

use evenport::law::Slope;

use crate::evidence::{Check, Kind};

/// The value's own digits.
pub const PRINTED: &str = "half of the last printed digit";
/// Three standard deviations of the law's scatter.
pub const THREE_DEVIATIONS: &str =
    "three standard deviations of the law's scatter: another author's value";

/// One line of a data file.
pub struct Row(BTreeMap<String, String>);

/// All lines of a data file.
pub fn rows(text: &str) -> Vec<Row> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<Row> = reader
        .deserialize()
        .map(|row| Row(row.expect("a line of the data file")))
        .collect();
    assert!(!rows.is_empty(), "an empty data file");
    rows
}

impl Row {
    /// A field as text.
    pub fn text(&self, name: &str) -> &str {
        self.0
            .get(name)
            .unwrap_or_else(|| panic!("no column {name}"))
    }

    /// A field as a number.
    pub fn number(&self, name: &str) -> f64 {
        let text = self.text(name);
        text.parse()
            .unwrap_or_else(|_| panic!("{name} is {text}, not a number"))
    }

    /// What stands behind the value.
    pub fn kind(&self) -> Kind {
        match self.text("kind") {
            "printed example" => Kind::PrintedExample,
            "printed table" => Kind::PrintedTable,
            "closed form" => Kind::ClosedForm,
            "reference library" => Kind::ReferenceLibrary,
            "another author" => Kind::AnotherAuthor,
            "memory" => Kind::Memory,
            other => panic!("unknown kind {other}"),
        }
    }

    /// A check to half of the last printed digit.
    pub fn printed(&self, law: &'static str, id: String, ours: f64) -> Check {
        self.within(law, id, ours, self.number("half"), PRINTED)
    }

    /// A check to a stated difference.
    pub fn within(
        &self,
        law: &'static str,
        id: String,
        ours: f64,
        allowed: f64,
        because: &'static str,
    ) -> Check {
        Check {
            id,
            law,
            source: self.text("source").to_owned(),
            kind: self.kind(),
            value: self.number("value"),
            ours,
            // Decimal and binary rounding of a value that falls on the half itself.
            allowed: allowed * (1.0 + 1e-9),
            allowed_because: because,
        }
    }

    /// A check against another author's value, to three standard deviations.
    pub fn scattered(&self, law: &'static str, id: String, ours: f64, deviation: f64) -> Check {
        let check = self.within(law, id, ours, 3.0 * deviation, THREE_DEVIATIONS);
        Check {
            kind: Kind::AnotherAuthor,
            ..check
        }
    }
}

/// A property of our own: no source outside, and it says so.
pub fn invariant(
    law: &'static str,
    id: String,
    value: f64,
    ours: f64,
    allowed: f64,
    because: &'static str,
) -> Check {
    Check {
        id,
        law,
        source: "a property the law must have".to_owned(),
        kind: Kind::Invariant,
        value,
        ours,
        allowed,
        allowed_because: because,
    }
}

/// A property that either holds or does not.
pub fn holds(law: &'static str, id: String, right: bool) -> Check {
    let right = f64::from(u8::from(right));
    invariant(law, id, 1.0, right, 0.0, "yes or no")
}

/// The largest error of a derivative against differences over points of a range. Several are tried: a wide step bears
/// rounding, a narrow one or one to a side does not reach over the next point of a table or the end of a rounded corner.
pub fn derivative(
    law: &'static str,
    name: &str,
    range: [f64; 2],
    f: impl Fn(f64) -> Slope,
) -> Check {
    const POINTS: u32 = 211;
    let width = range[1] - range[0];
    let points = || {
        (0..POINTS).map(|point| range[0] + width * (f64::from(point) + 0.37) / f64::from(POINTS))
    };
    // Where value and slope both vanish, a thousandth of the largest value over the range counts as slope.
    let largest = points().fold(0.0_f64, |most, x| most.max(f(x).value.abs()));
    let mut worst: f64 = 0.0;
    for x in points() {
        let Slope { value, derivative } = f(x);
        let scale = derivative
            .abs()
            .max(value.abs() / width)
            .max(1e-3 * largest / width);
        let steps = [1e-2, 3e-3, 1e-3, 3e-4, 1e-4, 3e-5].map(|part| part * width);
        let off = steps.into_iter().flat_map(|step| {
            let value = |x| f(x).value;
            let beside = [step, -step].map(|step| one_sided(x, step, value));
            let both = eighth_order(x, step, value);
            [both, beside[0], beside[1]].map(|numeric| (numeric - derivative).abs() / scale)
        });
        worst = worst.max(off.fold(f64::INFINITY, f64::min));
    }
    let id = format!("{name}: derivative against differences, largest relative error");
    invariant(law, id, 0.0, worst, 1e-10, "rounding of the difference")
}

/// Central difference of the eighth order.
fn eighth_order(x: f64, step: f64, f: impl Fn(f64) -> f64) -> f64 {
    let pair = |steps: f64| f(x + steps * step) - f(x - steps * step);
    (672.0 * pair(1.0) - 168.0 * pair(2.0) + 32.0 * pair(3.0) - 3.0 * pair(4.0)) / (840.0 * step)
}

/// Difference of the sixth order with points ahead alone, or behind with a negative step.
fn one_sided(x: f64, step: f64, f: impl Fn(f64) -> f64) -> f64 {
    const WEIGHTS: [f64; 7] = [-147.0, 360.0, -450.0, 400.0, -225.0, 72.0, -10.0];
    let terms = WEIGHTS.iter().enumerate();
    let sum: f64 = terms
        .map(|(place, weight)| weight * f(x + place as f64 * step))
        .sum();
    sum / (60.0 * step)
}

/// How the largest step shrinks when a sweep is refined sixteenfold: 1/16 for a smooth function, 1/4 for one
/// that starts as a square root, 1 for one that jumps.
pub fn no_jump(law: &'static str, name: &str, range: [f64; 2], f: impl Fn(f64) -> f64) -> Check {
    let largest = |steps: u32| {
        let at =
            |step: u32| f(range[0] + (range[1] - range[0]) * f64::from(step) / f64::from(steps));
        (0..steps)
            .map(|step| (at(step + 1) - at(step)).abs())
            .fold(0.0_f64, |worst, step| {
                assert!(step.is_finite(), "{name} is not finite");
                worst.max(step)
            })
    };
    let coarse = largest(500);
    // A sweep that does not change at all has no jump.
    let ratio = if coarse > 1e-12 {
        largest(8_000) / coarse
    } else {
        0.0
    };
    let id = format!("{name}: largest step of a fine sweep over that of a coarse one");
    invariant(
        law,
        id,
        0.0,
        ratio,
        0.5,
        "1/16 when smooth, 1/4 for a square root, 1 for a jump",
    )
}

/// Whether `outside` names exactly the expected field, or nothing.
pub fn range(
    law: &'static str,
    name: &str,
    found: &[(&'static str, String)],
    expected: Option<&str>,
) -> Check {
    let names: Vec<&str> = found.iter().map(|(field, _)| *field).collect();
    let right = expected.map_or(names.is_empty(), |field| names == [field]);
    let says_more = found.iter().all(|(_, message)| message.len() > 20);
    let id = match expected {
        Some(field) => format!("{name}: {field} is named"),
        None => format!("{name}: nothing is named"),
    };
    holds(law, id, right && says_more)
}

/// Area of a circle [m2].
pub fn circle(diameter: f64) -> f64 {
    0.25 * std::f64::consts::PI * diameter * diameter
}
