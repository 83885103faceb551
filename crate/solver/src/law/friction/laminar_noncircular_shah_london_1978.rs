//! Laminar friction of sections that are not round, Shah and London 1978.
//!
//! # Equation
//! f Re = 96 (1 - 1.3553 a + 1.9467 a^2 - 1.7012 a^3 + 0.9564 a^4 - 0.2537 a^5) for a rectangle of aspect
//! ratio a, found from perimeter^2 / area = 4 (1 + a)^2 / a. Between a circle (4 pi, 64) and a square
//! (16, 56.9) linear in perimeter^2 / area. In all regimes friction then goes by Re 64 / (f Re)
//! (Jones 1976).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | - | `area`, `perimeter` | section and its wetted perimeter | m2, m |
//! | f Re | result | Darcy friction factor times Reynolds number in laminar flow | - |
//!
//! # Source
//! R. K. Shah, A. L. London, Laminar Flow Forced Convection in Ducts, 1978, eq. 341; O. C. Jones,
//! J. Fluids Eng. 98 (1976) 173-181; both from memory. f Re of a square, 56.9, stands in many textbooks.
//!
//! # Range of validity
//! Convex sections, perimeter^2 / area from 4 pi.
//!
//! # Limits
//! Every section is taken as the rectangle with the same perimeter^2 / area; less than a circle's counts as a circle.

use std::f64::consts::PI;

use super::super::Scatter;
use super::super::outside::outside_range;

/// Range of perimeter^2 / area, from a circle's on [-].
pub const RANGE: [f64; 2] = [4.0 * PI, f64::INFINITY];

/// Scatter of f Re.
pub const SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.5,
    origin: "triangles, 48 to 53, against the rectangle of the same perimeter^2 / area, 57 to 60 (Shah and London, from memory)",
};

/// f Re of a circle and of a square [-].
const CIRCLE: f64 = 64.0;
const SQUARE_SHAPE: f64 = 16.0;

/// Laminar f Re of a section.
pub fn laminar_constant(area: f64, perimeter: f64) -> f64 {
    let shape = perimeter * perimeter / area;
    if shape <= 4.0 * PI {
        CIRCLE
    } else if shape < SQUARE_SHAPE {
        let part = (shape - 4.0 * PI) / (SQUARE_SHAPE - 4.0 * PI);
        CIRCLE + (rectangle(1.0) - CIRCLE) * part
    } else {
        // a + 1/a = shape / 4 - 2
        let half = shape / 8.0 - 1.0;
        rectangle(1.0 / (half + (half * half - 1.0).max(0.0).sqrt()))
    }
}

fn rectangle(a: f64) -> f64 {
    96.0 * (1.0 + a * (-1.3553 + a * (1.9467 + a * (-1.7012 + a * (0.9564 - 0.2537 * a)))))
}

/// The field `perimeter` when it is shorter than that of a circle of the area, which no section's is.
pub fn outside(area: f64, perimeter: f64) -> Vec<(&'static str, String)> {
    // A circle typed with rounded digits is a circle.
    let shape = perimeter * perimeter / area * (1.0 + 1e-3);
    outside_range("perimeter", "perimeter squared over area", shape, RANGE)
        .into_iter()
        .collect()
}
