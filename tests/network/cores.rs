//! A core between two chambers against its own law, dp = [a m/f mu/mu0 + b (m/f)^2] rho0/rho.

use evenport::{Draw, Loss};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, solved};

const SOURCE: &str = "dp = [a (m/f) mu/mu0 + b (m/f)^2] rho0/rho, rho the mean of in and out, viscosity by Sutherland's \
    formula; solved for m (common practice)";
const VELOCITY: &str = "1e-7 of it: the velocity head in 10 m2 of open area";
/// Measured flows [kg/s] and drops [Pa], at a pressure [Pa] and temperature [K].
const POINTS: [[f64; 2]; 2] = [[0.04, 900.0], [0.1, 3_600.0]];
const MEASURED: [f64; 2] = [101_325.0, 293.15];

fn core(fraction: f64) -> Loss {
    Loss::Core {
        area: 10.0,
        fraction,
        pressure: MEASURED[0],
        temperature: MEASURED[1],
        flow_1: POINTS[0][0],
        drop_1: POINTS[0][1],
        flow_2: POINTS[1][0],
        drop_2: POINTS[1][1],
        cooler: None,
    }
}

/// Flow through passages side by side [kg/s].
fn flow(fractions: &[f64], before: [f64; 2], drop: f64) -> f64 {
    let mut builder = Builder::default();
    builder.source("room");
    for (place, fraction) in fractions.iter().enumerate() {
        let port = format!("port {place}");
        let id = format!("passage {place}");
        builder
            .port(&port)
            .branch(&id, "room", &port, vec![core(*fraction)]);
    }
    let mut study = builder.study(drop);
    study.settings.bench.ambient_pressure = before[0];
    study.settings.bench.ambient_temperature = before[1];
    solved(&answer(&study), Draw::BenchAllOpen).total
}

/// The law solved for the flow of the whole core [kg/s].
fn by_law(before: [f64; 2], drop: f64) -> f64 {
    let [[low, low_drop], [high, high_drop]] = POINTS;
    // drop / m = a + b m through both points.
    let b = (high_drop / high - low_drop / low) / (high - low);
    let a = low_drop / low - b * low;
    let viscosity = |temperature: f64| temperature.powf(1.5) / (temperature + 110.4);
    let linear = a * viscosity(before[1]) / viscosity(MEASURED[1]);
    let density = (before[0] - 0.5 * drop) / before[1] * MEASURED[1] / MEASURED[0];
    ((linear * linear + 4.0 * b * drop * density).sqrt() - linear) / (2.0 * b)
}

pub fn checks() -> Vec<Check> {
    let cases: [(&str, &[f64], [f64; 2], f64); 5] = [
        ("as measured, 900 Pa", &[1.0], MEASURED, 900.0),
        ("as measured, 3.6 kPa", &[1.0], MEASURED, 3_600.0),
        (
            "180 kPa and 360 K, 200 Pa",
            &[1.0],
            [180_000.0, 360.0],
            200.0,
        ),
        (
            "180 kPa and 360 K, 20 kPa",
            &[1.0],
            [180_000.0, 360.0],
            20_000.0,
        ),
        ("three passages, 900 Pa", &[0.5, 0.3, 0.2], MEASURED, 900.0),
    ];
    cases
        .iter()
        .map(|(name, fractions, before, drop)| {
            let value = by_law(*before, *drop);
            Check {
                id: format!("flow through a core, {name} [kg/s]"),
                law: "cooler/two_point_fit",
                source: SOURCE.to_owned(),
                kind: Kind::ClosedForm,
                value,
                ours: flow(fractions, *before, *drop),
                allowed: 1e-7 * value,
                allowed_because: VELOCITY,
            }
        })
        .collect()
}

#[test]
fn cores_follow_their_law() {
    assert_all(&checks());
}
