//! Plenum: the part of an entering jet's head that a leg in its way feels, Beltaos and Rajaratnam 1974.
//!
//! # Equation
//! phi = c exp(-r^2/s^2) cos^2(alpha) for alpha below 90 degrees, else 0, with
//! c = (1 + (x^2/(50 d^2))^4)^(-1/4) and s^2 = ((x^2/114)^4 + (0.36 d^2)^4)^(1/4).
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | d | `diameter` | of a circle of the section that the jet leaves | m |
//! | x | `distance` | from there to the leg's mouth, along the jet's axis | m |
//! | r | `offset` | of the leg's mouth from that axis | m |
//! | alpha | `angle` | between the jet's axis and the leg's, 0 where the mouth faces the jet | rad |
//! | phi | result | fraction of the entering velocity head felt | - |
//!
//! # Source
//! S. Beltaos, N. Rajaratnam, Impinging circular turbulent jets, J. Hydraulics Div. ASCE 100 (1974): far from the
//! nozzle the pressure on a wall across the jet is 50 (d/x)^2 exp(-114 (r/x)^2) of the jet's head (from memory).
//! Near the nozzle the jet keeps its head over its own section: c goes to 1, and s to the width at which the
//! head has halved at the nozzle's rim. Between the two the forms are joined.
//!
//! # Range of validity
//! A round jet into still air, x up to 40 d; sections nearly as wide as long count by their area.
//!
//! # Limits
//! One jet, no walls beside it: a box not much wider than the jet sends air back along the walls, which no
//! formula of a free jet knows. A mouth in a wall along the jet feels nothing of it here. What leaves a core or a
//! screen is no jet.

/// Range of the distance over the diameter [-].
pub const RANGE: [f64; 2] = [0.0, 40.0];

/// Head on the axis far from the nozzle, times the square of distance over diameter [-].
const AXIS: f64 = 50.0;
/// Exponent of the pressure's fall away from the axis, times the square of offset over distance [-].
const ACROSS: f64 = 114.0;
/// Square of the width at the nozzle over its diameter's: half of the head at the rim, 1/(4 ln 2) [-].
const AT_NOZZLE: f64 = 0.360_673_760_222_241;

/// Fraction of the entering velocity head that a leg feels [-].
pub fn fraction(diameter: f64, distance: f64, offset: f64, angle: f64) -> f64 {
    if angle.abs() >= std::f64::consts::FRAC_PI_2 {
        return 0.0;
    }
    let square = distance * distance / (diameter * diameter);
    let on_axis = (1.0 + (square / AXIS).powi(4)).powf(-0.25);
    let width = ((square / ACROSS).powi(4) + AT_NOZZLE.powi(4)).powf(0.25);
    let across = (-offset * offset / (diameter * diameter * width)).exp();
    let facing = angle.cos();
    on_axis * across * facing * facing
}

/// The field `jetDistance` when it is outside the range.
pub fn outside(diameter: f64, distance: f64) -> Vec<(&'static str, String)> {
    let ratio = distance / diameter;
    super::outside_range(
        "jetDistance",
        "distance over the jet's diameter",
        ratio,
        RANGE,
    )
    .into_iter()
    .collect()
}
