//! Opening: the jet, its choking and its loss.

use evenport::gas::{GAMMA, GAS_CONSTANT, density, flow_function, pressure_ratio};
use evenport::law::opening::contracted_jet::ContractedJet;

use crate::evidence::{Check, assert_all};
use crate::support::{PRINTED, circle, invariant, no_jump, range, rows};

const LAW: &str = "opening/contracted_jet";

/// Mass flow through a jet into a chamber, with the library's own flow function [kg/s].
pub fn mass_flow(jet: f64, pressure: f64, temperature: f64, behind: f64) -> f64 {
    let mach = if behind <= pressure_ratio(1.0) {
        1.0
    } else {
        mach_of_ratio(behind)
    };
    flow_function(mach) * jet * pressure / (GAS_CONSTANT * temperature / GAMMA).sqrt()
}

/// Mach number of an isentropic pressure ratio, by halving.
fn mach_of_ratio(ratio: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if pressure_ratio(middle) > ratio {
            low = middle
        } else {
            high = middle
        }
    }
    0.5 * (low + high)
}

fn jets() -> Vec<Check> {
    rows(include_str!("../data/jet.csv"))
        .iter()
        .map(|row| {
            let opening = ContractedJet {
                area: circle(row.number("diameter")),
                discharge_coefficient: row.number("discharge_coefficient"),
                area_from: None,
                area_to: None,
                thickness: 0.0,
            };
            let (pressure, temperature) = (row.number("pressure"), row.number("temperature"));
            let ours = mass_flow(
                opening.jet_area(),
                pressure,
                temperature,
                row.number("pressure_ratio"),
            );
            let id = format!(
                "mass flow from {pressure} Pa to {} of it, {} mm",
                row.text("pressure_ratio"),
                1e3 * row.number("diameter")
            );
            row.printed(LAW, id, ours)
        })
        .collect()
}

fn orifices() -> Vec<Check> {
    rows(include_str!("../data/opening.csv"))
        .iter()
        .map(|row| {
            let (pipe, bore) = (row.number("first"), row.number("second"));
            let square = (bore / pipe).powi(4);
            match row.text("quantity") {
                "discharge" => {
                    let default = evenport::catalogue()
                        .losses
                        .iter()
                        .find(|kind| kind.kind == "opening")
                        .and_then(|kind| kind.fields.iter().find(|field| field.name == "dischargeCoefficient")?.default)
                        .unwrap_or(f64::NAN);
                    let because = "the default of a new row; the standard's goes from 0.604 to 0.611 with diameter ratio";
                    row.within(LAW, format!("discharge coefficient, diameter ratio {:.1}", bore / pipe), default, 0.01, because)
                }
                "loss" => {
                    // The meter's coefficient C refers to the pipe's static pressure; the jet's section is
                    // found from C A/sqrt(1 - b^4) = A_j/sqrt(1 - (A_j/A_pipe)^2).
                    let meter = row.number("third");
                    let discharge_coefficient = (meter * meter / (1.0 - square + meter * meter * square)).sqrt();
                    let area = Some(circle(pipe));
                    let jet = ContractedJet { area: circle(bore), discharge_coefficient, area_from: area, area_to: area, thickness: 0.0 };
                    let head = jet.coefficients().forward;
                    let on_pipe_head = head.k * (circle(pipe) / head.area).powi(2);
                    row.printed(LAW, format!("K on the pipe's head, diameter ratio {:.1}", bore / pipe), on_pipe_head)
                }
                "expansibility" => {
                    let (before, throat) = (row.number("third"), row.number("fourth"));
                    row.printed(LAW, "expansibility of a nozzle, by the flow function".to_owned(), expansibility(pipe, bore, before, throat))
                }
                other => panic!("unknown quantity {other}"),
            }
        })
        .collect()
}

/// Flow of a nozzle between two static pressures over that of an incompressible fluid [-].
fn expansibility(pipe: f64, bore: f64, before: f64, throat: f64) -> f64 {
    let temperature = 300.0;
    // The stagnation pressure at which both sections carry the same flow.
    let (mut low, mut high) = (before * (1.0 + 1e-9), before * 1.5);
    let flow = |stagnation: f64, diameter: f64, pressure: f64| {
        mass_flow(
            circle(diameter),
            stagnation,
            temperature,
            pressure / stagnation,
        )
    };
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        if flow(middle, pipe, before) < flow(middle, bore, throat) {
            low = middle
        } else {
            high = middle
        }
    }
    let approach = pressure_ratio(mach_of_ratio(before / low));
    let static_temperature = temperature * approach.powf(1.0 - 1.0 / GAMMA);
    let ideal = circle(bore)
        * (2.0 * density(before, static_temperature) * (before - throat)
            / (1.0 - (bore / pipe).powi(4)))
        .sqrt();
    flow(low, bore, throat) / ideal
}

pub fn checks() -> Vec<Check> {
    let mut checks = jets();
    checks.extend(orifices());
    let opening = |area, area_to| ContractedJet {
        area,
        discharge_coefficient: 0.6,
        area_from: Some(2e-3),
        area_to,
        thickness: 0.0,
    };
    checks.push(no_jump(
        LAW,
        "K over opening, past the section behind",
        [1e-5, 5e-3],
        |area| opening(area, Some(1e-3)).coefficients().forward.k,
    ));
    let filled = opening(2e-3, Some(1e-3)).coefficients().forward.k;
    checks.push(invariant(
        LAW,
        "K of a jet wider than what follows".to_owned(),
        0.0,
        filled,
        0.0,
        "it fills what follows",
    ));
    let into_chamber = opening(1e-3, None).coefficients();
    checks.push(invariant(
        LAW,
        "K into a chamber".to_owned(),
        0.0,
        into_chamber.forward.k,
        0.0,
        "the chamber takes the head",
    ));
    let back = (1.0_f64 - 0.3).powi(2);
    checks.push(invariant(
        LAW,
        "K back into a section".to_owned(),
        back,
        into_chamber.reversed.k,
        1e-15,
        PRINTED,
    ));
    for (name, coefficient, area, expected) in [
        ("inside", 0.5 + 1e-6, 0.999e-3, None),
        (
            "just under its least",
            0.5 - 1e-6,
            0.5e-3,
            Some("dischargeCoefficient"),
        ),
        (
            "just over its most",
            1.0 + 1e-6,
            0.5e-3,
            Some("dischargeCoefficient"),
        ),
        ("wider than what follows", 0.6, 1.001e-3, Some("areaTo")),
    ] {
        let jet = ContractedJet {
            discharge_coefficient: coefficient,
            ..opening(area, Some(1e-3))
        };
        checks.push(range(LAW, name, &jet.outside(), expected));
    }
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
