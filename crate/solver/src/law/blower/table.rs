//! An efficiency over speed and pressure ratio, read between the points of a table.
//!
//! # Equation
//! Bilinear between the four points around.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | n | `speeds` | turns of the blower, rising | 1/s |
//! | r | `ratios` | pressure ratios, rising | - |
//! | eta | `values` | by speed, then by pressure ratio | - |
//!
//! # Source
//! The table is the user's, from the blower's maker; straight lines between its points are common practice.
//!
//! # Range of validity
//! From the least to the greatest speed and pressure ratio of the table; an axis of one point holds everywhere.
//!
//! # Limits
//! Beyond a border the value at the border stands, and the reading says which border. The value is continuous, its
//! derivatives step at the table's lines.

use crate::digits::plain;

/// An efficiency by speed and pressure ratio.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// Turns of the blower [1/s], rising.
    pub speeds: Vec<f64>,
    /// Pressure ratios [-], rising.
    pub ratios: Vec<f64>,
    /// Efficiencies [-]: all pressure ratios of the first speed, then of the next.
    pub values: Vec<f64>,
}

/// An efficiency read from a table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The efficiency [-].
    pub value: f64,
    /// Derivative with the speed [s].
    pub by_speed: f64,
    /// Derivative with the pressure ratio [-].
    pub by_ratio: f64,
    /// Where the point lies when it is not in the table, to follow "the blower runs".
    pub outside: Option<&'static str>,
}

/// Greatest efficiency of a blower that is believed [-]: a volumetric one may pass 1 by ram.
pub const GREATEST: f64 = 1.2;

impl Table {
    /// One value everywhere.
    pub fn constant(value: f64) -> Self {
        Self {
            speeds: vec![0.0],
            ratios: vec![1.0],
            values: vec![value],
        }
    }

    /// The efficiency at a speed [1/s] and a pressure ratio [-], from a table without fault.
    pub fn at(&self, speed: f64, ratio: f64) -> Reading {
        let along = place(&self.speeds, speed);
        let across = place(&self.ratios, ratio);
        let row = |index: usize| {
            let values = &self.values[index * self.ratios.len()..];
            let (low, high) = (values[across.low], values[across.high]);
            (low + across.part * (high - low), high - low)
        };
        let (slow, slow_step) = row(along.low);
        let (fast, fast_step) = row(along.high);
        Reading {
            value: slow + along.part * (fast - slow),
            by_speed: along.slope * (fast - slow),
            by_ratio: across.slope * (slow_step + along.part * (fast_step - slow_step)),
            outside: words(along.side, across.side),
        }
    }

    /// What is wrong with the table, in words; `greatest` is the largest efficiency that is believed [-].
    pub fn fault(&self, greatest: f64) -> Option<String> {
        for (name, axis) in [("speeds", &self.speeds), ("pressure ratios", &self.ratios)] {
            if axis.is_empty() {
                return Some(format!("the table has no {name}; give one at least"));
            }
            let finite = axis.iter().all(|value| value.is_finite());
            if !finite || axis.windows(2).any(|pair| pair[0] >= pair[1]) {
                return Some(format!(
                    "the table's {name} do not rise from each to the next; put them in order, each once"
                ));
            }
        }
        let needed = self.speeds.len() * self.ratios.len();
        if self.values.len() != needed {
            return Some(format!(
                "the table has {} values where its speeds and pressure ratios need {needed}",
                self.values.len()
            ));
        }
        let believed = |value: &f64| *value > 0.0 && *value <= greatest;
        (!self.values.iter().all(believed)).then(|| {
            format!(
                "an efficiency of the table is not above 0 % and at most {} %",
                plain(100.0 * greatest)
            )
        })
    }
}

/// Which side of an axis a point lies past.
#[derive(Clone, Copy, PartialEq)]
enum Side {
    Below,
    Within,
    Above,
}

/// Where a point lies on an axis.
struct Place {
    low: usize,
    high: usize,
    /// Way from low to high [-].
    part: f64,
    /// Derivative of `part` with the point.
    slope: f64,
    side: Side,
}

fn place(axis: &[f64], point: f64) -> Place {
    let last = axis.len() - 1;
    let at = |index: usize, side| Place {
        low: index,
        high: index,
        part: 0.0,
        slope: 0.0,
        side,
    };
    if last == 0 {
        return at(0, Side::Within);
    }
    if point < axis[0] {
        return at(0, Side::Below);
    }
    if point > axis[last] {
        return at(last, Side::Above);
    }
    let high = axis.partition_point(|line| *line <= point).clamp(1, last);
    let slope = 1.0 / (axis[high] - axis[high - 1]);
    Place {
        low: high - 1,
        high,
        part: (point - axis[high - 1]) * slope,
        slope,
        side: Side::Within,
    }
}

fn words(speed: Side, ratio: Side) -> Option<&'static str> {
    Some(match (speed, ratio) {
        (Side::Within, Side::Within) => return None,
        (Side::Below, Side::Within) => "below its table's least speed",
        (Side::Above, Side::Within) => "above its table's greatest speed",
        (Side::Within, Side::Below) => "below its table's least pressure ratio",
        (Side::Within, Side::Above) => "above its table's greatest pressure ratio",
        (Side::Below, Side::Below) => "below its table's least speed and pressure ratio",
        (Side::Above, Side::Above) => "above its table's greatest speed and pressure ratio",
        (Side::Below, Side::Above) => {
            "below its table's least speed and above its greatest pressure ratio"
        }
        (Side::Above, Side::Below) => {
            "above its table's greatest speed and below its least pressure ratio"
        }
    })
}
