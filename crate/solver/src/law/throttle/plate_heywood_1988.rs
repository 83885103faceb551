//! Throttle plate in a round bore, Heywood 1988.
//!
//! # Equation
//! The open area is the bore less the shadow of plate and shaft along its axis. With c = cos(angle)/cos(closed
//! angle) and a the shaft's diameter over the bore's, for c above a:
//! A/A_bore = 1 - c + (2/pi) [a sqrt(1 - (a/c)^2) + c asin(a/c) - a sqrt(1 - a^2) - asin(a)];
//! for c below a, the plate hides behind its shaft: 1 - (2/pi) [a sqrt(1 - a^2) + asin(a)].
//! Behind, the jet C_d A spreads to the bore with (1 - C_d A/A_bore)^2 of its velocity head.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | A_bore | from `diameter` | bore | m2 |
//! | - | `angle`, `closed_angle` | plate from the plane across the bore | rad |
//! | a | from `shaft_diameter` | shaft over bore | - |
//! | C_d | `discharge_coefficient` | effective over open area | - |
//! | A | `open_area` | open area | m2 |
//!
//! # Source
//! J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, section 7.6.2, eq. 7.18, from memory. With the
//! signs of the two arcsines as remembered the area of the wide-open plate is not bore less shaft, so they
//! stand here as the shadow's geometry gives them; the tests integrate that shadow.
//!
//! # Range of validity
//! Angle from closed to 90 degrees, shaft up to half the bore, C_d from 0.5 to 1.
//!
//! # Limits
//! A thin plate. A closed plate keeps a leak of 1e-4 of the bore, so that the branch stays in the network. C_d
//! is taken as constant with angle and pressure ratio. Weisbach's measured table for a disc in a pipe (0.52, 1.54,
//! 10.8 and 118 at 10, 20, 40 and 60 degrees from wide open) asks for C_d 0.65; 0.9 gives half its loss or less.

use std::f64::consts::{FRAC_2_PI, PI};

use super::super::opening::contracted_jet::ContractedJet;
use super::super::outside::outside_range;
use super::super::{Scatter, TwoWay};

/// Range of the discharge coefficient [-].
pub const RANGE: [f64; 2] = [0.5, 1.0];
/// Range of shaft over bore [-].
pub const RANGE_SHAFT: [f64; 2] = [0.0, 0.5];

/// Leak of a closed plate over the bore's area [-].
const LEAK: f64 = 1e-4;

/// Scatter of the loss.
pub const SCATTER: Scatter = Scatter {
    relative: 0.2,
    common: 0.5,
    origin: "10 % of the discharge coefficient, 20 % of the loss; common practice",
};

/// A throttle plate.
#[derive(Clone, Copy, Debug)]
pub struct ThrottlePlate {
    /// Diameter of the bore [m].
    pub diameter: f64,
    /// Angle of the plate from the plane across the bore [rad].
    pub angle: f64,
    /// That angle when closed [rad].
    pub closed_angle: f64,
    /// Diameter of the shaft [m].
    pub shaft_diameter: f64,
    /// Effective over open area [-].
    pub discharge_coefficient: f64,
}

impl ThrottlePlate {
    /// What the plate leaves open, seen along the bore [m2].
    pub fn open_area(&self) -> f64 {
        let plate = (self.angle.min(0.5 * PI).cos() / self.closed_angle.cos()).clamp(0.0, 1.0);
        let shaft = (self.shaft_diameter / self.diameter).clamp(0.0, 1.0);
        let beside_shaft = 1.0 - FRAC_2_PI * (shaft * (1.0 - shaft * shaft).sqrt() + shaft.asin());
        self.bore_area() * (beside_shaft - plate_beside_shaft(plate, shaft)).max(LEAK)
    }

    /// Section of the jet at its narrowest [m2].
    pub fn effective_area(&self) -> f64 {
        self.discharge_coefficient * self.open_area()
    }

    /// Loss coefficients for either direction on the head of the contracted jet.
    pub fn coefficients(&self) -> TwoWay {
        let bore = Some(self.bore_area());
        ContractedJet {
            area: self.open_area(),
            discharge_coefficient: self.discharge_coefficient,
            area_from: bore,
            area_to: bore,
            thickness: 0.0,
        }
        .coefficients()
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        let shaft = self.shaft_diameter / self.diameter;
        outside_range(
            "angle",
            "plate angle in radians",
            self.angle,
            [self.closed_angle, 0.5 * PI + 1e-3],
        )
        .into_iter()
        .chain(outside_range(
            "shaftDiameter",
            "shaft over bore",
            shaft,
            RANGE_SHAFT,
        ))
        .chain(outside_range(
            "dischargeCoefficient",
            "discharge coefficient",
            self.discharge_coefficient,
            RANGE,
        ))
        .collect()
    }

    fn bore_area(&self) -> f64 {
        0.25 * PI * self.diameter * self.diameter
    }
}

/// The part of the plate's elliptic shadow that the shaft does not cover already, over the bore's area [-].
fn plate_beside_shaft(plate: f64, shaft: f64) -> f64 {
    if plate <= shaft {
        return 0.0;
    }
    let cut = shaft / plate;
    plate - FRAC_2_PI * (shaft * (1.0 - cut * cut).sqrt() + plate * cut.asin())
}
