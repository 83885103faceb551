//! Efficiency table: between its points, past its borders, and what is wrong with one.

use evenport::law::Slope;
use evenport::law::blower::table::{GREATEST, Reading, Table};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{derivative, holds, no_jump};

const LAW: &str = "blower/table";

fn table(speeds: &[f64], ratios: &[f64], values: &[f64]) -> Table {
    Table {
        speeds: speeds.to_vec(),
        ratios: ratios.to_vec(),
        values: values.to_vec(),
    }
}

/// Speeds of 50, 100, 200 and ratios of 1.2, 2: an invented table.
fn six() -> Table {
    table(
        &[50.0, 100.0, 200.0],
        &[1.2, 2.0],
        &[0.60, 0.50, 0.66, 0.62, 0.58, 0.64],
    )
}

pub fn checks() -> Vec<Check> {
    let mut checks = Vec::new();
    for (speed, ratio, value) in [
        (50.0, 1.2, 0.60),
        (50.0, 2.0, 0.50),
        (100.0, 1.2, 0.66),
        (200.0, 1.2, 0.58),
        (200.0, 2.0, 0.64),
        // By hand: the mean of four corners, then a quarter and a half of the way.
        (75.0, 1.6, 0.25 * (0.60 + 0.50 + 0.66 + 0.62)),
        (125.0, 1.6, 0.75 * 0.64 + 0.25 * 0.61),
        (150.0, 1.2, 0.62),
    ] {
        checks.push(Check {
            id: format!("at {speed} turns a second and ratio {ratio}"),
            law: LAW,
            source: "weighted means by hand".to_owned(),
            kind: Kind::ClosedForm,
            value,
            ours: six().at(speed, ratio).value,
            allowed: 1e-14,
            allowed_because: "rounding",
        });
    }
    for (speed, ratio, value, words) in [
        (10.0, 1.6, 0.55, "below its table's least speed"),
        (900.0, 1.6, 0.61, "above its table's greatest speed"),
        (75.0, 1.0, 0.63, "below its table's least pressure ratio"),
        (75.0, 3.0, 0.56, "above its table's greatest pressure ratio"),
        (
            10.0,
            1.0,
            0.60,
            "below its table's least speed and pressure ratio",
        ),
        (
            900.0,
            3.0,
            0.64,
            "above its table's greatest speed and pressure ratio",
        ),
        (
            10.0,
            3.0,
            0.50,
            "below its table's least speed and above its greatest pressure ratio",
        ),
        (
            900.0,
            1.0,
            0.58,
            "above its table's greatest speed and below its least pressure ratio",
        ),
    ] {
        let reading = six().at(speed, ratio);
        let right = (reading.value - value).abs() < 1e-14 && reading.outside == Some(words);
        checks.push(holds(
            LAW,
            format!("{speed} turns a second, ratio {ratio}: the border's value, and {words}"),
            right,
        ));
    }
    let corner = six().at(10.0, 3.0);
    checks.push(holds(
        LAW,
        "beyond a corner nothing changes".to_owned(),
        corner.by_speed == 0.0 && corner.by_ratio == 0.0,
    ));
    let beside = six().at(10.0, 1.6);
    checks.push(holds(
        LAW,
        "beyond a border it changes along the border only".to_owned(),
        beside.by_speed == 0.0 && (beside.by_ratio + 0.1 / 0.8).abs() < 1e-14,
    ));
    checks.extend(slopes());
    checks.extend(single());
    checks.extend(faults());
    checks
}

fn slopes() -> Vec<Check> {
    let slope = |reading: Reading, derivative| Slope {
        value: reading.value,
        derivative,
    };
    let by_speed = |speed| {
        let reading = six().at(speed, 1.5);
        slope(reading, reading.by_speed)
    };
    let by_ratio = |ratio| {
        let reading = six().at(120.0, ratio);
        slope(reading, reading.by_ratio)
    };
    vec![
        derivative(LAW, "by slow speed", [51.0, 99.0], by_speed),
        derivative(LAW, "by fast speed", [101.0, 199.0], by_speed),
        derivative(LAW, "by pressure ratio", [1.21, 1.99], by_ratio),
        no_jump(
            LAW,
            "over speed, past both borders",
            [0.0, 300.0],
            |speed| six().at(speed, 1.5).value,
        ),
        no_jump(
            LAW,
            "over pressure ratio, past both borders",
            [0.8, 3.0],
            |ratio| six().at(120.0, ratio).value,
        ),
    ]
}

/// Tables that do not change along an axis.
fn single() -> Vec<Check> {
    let constant = Table::constant(0.7);
    let everywhere = [(0.0, 0.5), (100.0, 1.0), (1e6, 9.0)].map(|(speed, ratio)| {
        let reading = constant.at(speed, ratio);
        reading.value == 0.7
            && reading.by_speed == 0.0
            && reading.by_ratio == 0.0
            && reading.outside.is_none()
    });
    let row = table(&[100.0], &[1.2, 2.0], &[0.6, 0.5]).at(700.0, 1.6);
    let column = table(&[50.0, 100.0], &[1.0], &[0.6, 0.5]).at(75.0, 9.0);
    let row = (row.value - 0.55).abs() < 1e-14 && row.by_speed == 0.0 && row.outside.is_none();
    let column =
        (column.value - 0.55).abs() < 1e-14 && column.by_ratio == 0.0 && column.outside.is_none();
    vec![
        holds(
            LAW,
            "one value holds everywhere".to_owned(),
            everywhere == [true; 3],
        ),
        holds(LAW, "one speed holds for all speeds".to_owned(), row),
        holds(LAW, "one pressure ratio holds for all".to_owned(), column),
    ]
}

fn faults() -> Vec<Check> {
    let mut checks = vec![holds(
        LAW,
        "nothing is wrong with a table in order, nor with one value".to_owned(),
        six().fault(GREATEST).is_none() && Table::constant(1.2).fault(GREATEST).is_none(),
    )];
    for (name, table, word) in [
        ("no speeds", table(&[], &[1.0], &[]), "has no speeds"),
        (
            "no ratios",
            table(&[1.0], &[], &[]),
            "has no pressure ratios",
        ),
        (
            "speeds that fall",
            table(&[2.0, 1.0], &[1.0], &[0.5, 0.5]),
            "speeds do not rise",
        ),
        (
            "one ratio twice",
            table(&[1.0], &[2.0, 2.0], &[0.5, 0.5]),
            "ratios do not rise",
        ),
        (
            "a speed that is none",
            table(&[f64::NAN], &[2.0], &[0.5]),
            "speeds do not rise",
        ),
        (
            "a value too few",
            table(&[1.0, 2.0], &[2.0], &[0.5]),
            "has 1 values where",
        ),
        ("per cent", Table::constant(70.0), "at most 120 %"),
        ("nothing", Table::constant(0.0), "not above 0"),
        ("no number", Table::constant(f64::NAN), "not above 0"),
    ] {
        let fault = table.fault(GREATEST).unwrap_or_default();
        checks.push(holds(
            LAW,
            format!("{name}: said in words"),
            fault.contains(word),
        ));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
