//! Throttle plate: its shadow by another route, and its ends.

use std::f64::consts::PI;

use evenport::law::throttle::plate_heywood_1988::{SCATTER, ThrottlePlate};

use crate::evidence::{Check, assert_all};
use crate::support::{circle, invariant, no_jump, range, rows};

const LAW: &str = "throttle/plate_heywood_1988";
const CLOSED: f64 = 0.12;

fn plate(angle: f64, shaft_diameter: f64) -> ThrottlePlate {
    ThrottlePlate {
        diameter: 1.0,
        angle,
        closed_angle: CLOSED,
        shaft_diameter,
        discharge_coefficient: 0.8,
    }
}

/// What an ellipse and a bar leave open of a circle of diameter 1, by strips along the bar's normal.
fn open_by_strips(angle: f64, shaft: f64) -> f64 {
    const STRIPS: u32 = 200_000;
    let narrowness = angle.cos() / CLOSED.cos();
    let width = 1.0 / f64::from(STRIPS);
    (0..STRIPS)
        .map(|strip| (f64::from(strip) + 0.5) * width - 0.5)
        .filter(|x| x.abs() > 0.5 * shaft)
        .map(|x| {
            let bore = 2.0 * (0.25 - x * x).max(0.0).sqrt();
            let plate = 2.0 * (0.25 - (x / narrowness).powi(2)).max(0.0).sqrt();
            (bore - plate) * width
        })
        .sum()
}

/// Weisbach's disc against the plate without a shaft, with the one discharge coefficient that suits his table.
fn measured_disc() -> Vec<Check> {
    const SUITS: f64 = 0.65;
    rows(include_str!("../data/throttle.csv"))
        .iter()
        .filter(|row| row.number("from_open") > 5.0)
        .map(|row| {
            let from_open = row.number("from_open");
            let disc = ThrottlePlate {
                diameter: 1.0,
                angle: (90.0 - from_open).to_radians(),
                closed_angle: 0.0,
                shaft_diameter: 0.0,
                discharge_coefficient: SUITS,
            };
            let head = disc.coefficients().forward;
            let ours = head.k * (circle(1.0) / head.area).powi(2);
            let id =
                format!("K on the bore's head, {from_open} degrees from wide open, C_d {SUITS}");
            row.scattered(LAW, id, ours, SCATTER.relative * ours)
        })
        .collect()
}

pub fn checks() -> Vec<Check> {
    let mut checks = measured_disc();
    for degrees in [15.0_f64, 30.0, 60.0, 80.0, 86.0, 90.0] {
        for shaft in [0.0, 0.1, 0.3] {
            let id = format!("open area at {degrees} degrees, shaft {shaft} of the bore");
            let strips = open_by_strips(degrees.to_radians(), shaft);
            let ours = plate(degrees.to_radians(), shaft).open_area();
            checks.push(invariant(
                LAW,
                id,
                strips,
                ours,
                1e-5,
                "200,000 strips; a strip's width at the bar's edges",
            ));
        }
    }
    let shut = plate(CLOSED, 0.1).open_area() / circle(1.0);
    checks.push(invariant(
        LAW,
        "closed, of the bore".to_owned(),
        1e-4,
        shut,
        1e-12,
        "the stated leak",
    ));
    let open = plate(PI / 2.0, 0.0).open_area() / circle(1.0);
    checks.push(invariant(
        LAW,
        "wide open without shaft, of the bore".to_owned(),
        1.0,
        open,
        1e-12,
        "rounding",
    ));
    let effective = plate(1.0, 0.1).effective_area() / plate(1.0, 0.1).open_area();
    checks.push(invariant(
        LAW,
        "effective over open area".to_owned(),
        0.8,
        effective,
        1e-12,
        "rounding",
    ));
    let both = plate(1.0, 0.1).coefficients();
    let same = f64::from(u8::from(both.forward == both.reversed));
    checks.push(invariant(
        LAW,
        "alike either way".to_owned(),
        1.0,
        same,
        0.0,
        "yes or no",
    ));
    for shaft in [0.0, 0.1, 0.3] {
        let name = format!("open area over angle, shaft {shaft} of the bore");
        checks.push(no_jump(LAW, &name, [0.0, PI / 2.0], |angle| {
            plate(angle, shaft).open_area()
        }));
        let falls = (1..2_000).filter(|step| {
            let angle = f64::from(*step) * PI / 4_000.0;
            plate(angle, shaft).open_area() < plate(angle - PI / 4_000.0, shaft).open_area() - 1e-15
        });
        let id = format!("steps over which the open area falls, shaft {shaft} of the bore");
        checks.push(invariant(
            LAW,
            id,
            0.0,
            falls.count() as f64,
            0.0,
            "it grows with the angle",
        ));
    }
    checks.push(no_jump(LAW, "open area over shaft", [0.0, 1.2], |shaft| {
        plate(1.0, shaft).open_area()
    }));
    for (name, angle, shaft, coefficient, expected) in [
        ("inside", CLOSED + 1e-6, 0.5 - 1e-6, 0.5 + 1e-6, None),
        ("wide open", PI / 2.0, 0.1, 0.8, None),
        (
            "further shut than closed",
            CLOSED - 1e-6,
            0.1,
            0.8,
            Some("angle"),
        ),
        ("past wide open", PI / 2.0 + 2e-3, 0.1, 0.8, Some("angle")),
        (
            "shaft too thick",
            1.0,
            0.5 + 1e-6,
            0.8,
            Some("shaftDiameter"),
        ),
        (
            "coefficient too small",
            1.0,
            0.1,
            0.5 - 1e-6,
            Some("dischargeCoefficient"),
        ),
        (
            "coefficient too large",
            1.0,
            0.1,
            1.0 + 1e-6,
            Some("dischargeCoefficient"),
        ),
    ] {
        let at = ThrottlePlate {
            discharge_coefficient: coefficient,
            ..plate(angle, shaft)
        };
        checks.push(range(LAW, name, &at.outside(), expected));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
