//! What every author's junction law goes through: its rows, another author's, derivatives, sweeps, range.

use std::f64::consts::FRAC_PI_2;

use evenport::JunctionLaw;
use evenport::law::Slope;
use evenport::law::junction::{Geometry, combining, dividing, outside, scatter, scatter_combining};

use crate::evidence::Check;
use crate::support::{Row, derivative, invariant, no_jump, range, rows};

/// One author.
pub struct Author {
    /// The choice in the document.
    pub law: JunctionLaw,
    /// Path of the law's file.
    pub path: &'static str,
    /// Name in the data file.
    pub name: &'static str,
    /// Ratios of side to run area, its switches among them.
    pub area_ratios: &'static [f64],
    /// Angles [degree].
    pub angles: &'static [f64],
    /// Geometries as area ratio and angle in degrees, just inside and just outside, with the field named.
    pub limits: &'static [(f64, f64, Option<&'static str>)],
}

/// A leg's coefficient.
fn leg(author: &Author, flow: &str, leg: &str, geometry: &Geometry, q: f64) -> Slope {
    let both = match flow {
        "dividing" => dividing(author.law, geometry, q),
        _ => combining(author.law, geometry, q),
    };
    if leg == "run" { both.run } else { both.side }
}

fn geometry(area_ratio: f64, degrees: f64) -> Geometry {
    Geometry {
        area_ratio,
        angle: degrees.to_radians(),
    }
}

const PATTERNS: [(&str, &str); 4] = [
    ("dividing", "run"),
    ("dividing", "side"),
    ("combining", "run"),
    ("combining", "side"),
];

/// All checks of an author; `special` may set another tolerance for a row, with its reason.
pub fn checks(
    author: &Author,
    special: impl Fn(&Row) -> Option<(f64, &'static str)>,
) -> Vec<Check> {
    let mut checks = data(author, special);
    for area_ratio in author.area_ratios {
        for degrees in author.angles {
            let at = geometry(*area_ratio, *degrees);
            for (flow, which) in PATTERNS {
                let name = format!("{which} {flow}, area ratio {area_ratio}, {degrees} degrees");
                let k = |q: f64| leg(author, flow, which, &at, q);
                checks.push(derivative(
                    author.path,
                    &format!("{name}: K by q"),
                    [0.0, 1.0],
                    k,
                ));
                checks.push(no_jump(
                    author.path,
                    &format!("{name}: K over q"),
                    [-0.1, 1.1],
                    |q| k(q).value,
                ));
                checks.push(no_jump(
                    author.path,
                    &format!("{name}: slope over q"),
                    [-0.1, 1.1],
                    |q| k(q).derivative,
                ));
            }
        }
    }
    for (flow, which) in PATTERNS {
        for q in [0.1, 0.45, 0.8] {
            let name = format!("{which} {flow}, q {q}");
            let over_area =
                |area_ratio| leg(author, flow, which, &geometry(area_ratio, 60.0), q).value;
            checks.push(no_jump(
                author.path,
                &format!("{name}: K over area ratio"),
                [0.1, 2.0],
                over_area,
            ));
            let over_angle = |degrees| leg(author, flow, which, &geometry(0.6, degrees), q).value;
            checks.push(no_jump(
                author.path,
                &format!("{name}: K over angle"),
                [1.0, 179.0],
                over_angle,
            ));
        }
    }
    for (area_ratio, degrees, expected) in author.limits {
        let name = format!("area ratio {area_ratio}, {degrees} degrees");
        checks.push(range(
            author.path,
            &name,
            &outside(author.law, &geometry(*area_ratio, *degrees)),
            *expected,
        ));
    }
    if author.angles.len() > 1 {
        for (flow, which) in [
            ("dividing", "side"),
            ("combining", "side"),
            ("combining", "run"),
        ] {
            let k = |degrees| leg(author, flow, which, &geometry(0.7, degrees), 0.5).value;
            let falls = f64::from(u8::from(k(45.0) < k(60.0) && k(60.0) < k(90.0)));
            let id = format!("{which} {flow}: K falls as the side leg leans into the flow");
            checks.push(invariant(author.path, id, 1.0, falls, 0.0, "yes or no"));
        }
    }
    let inflow_alone = combining(
        author.law,
        &Geometry {
            area_ratio: 0.5,
            angle: FRAC_PI_2,
        },
        0.0,
    )
    .side
    .value;
    let sucks = f64::from(u8::from(inflow_alone < 0.0));
    let id = "a side leg at rest is sucked by what passes it".to_owned();
    checks.push(invariant(author.path, id, 1.0, sucks, 0.0, "yes or no"));
    checks
}

fn data(author: &Author, special: impl Fn(&Row) -> Option<(f64, &'static str)>) -> Vec<Check> {
    rows(include_str!("../data/junction.csv"))
        .iter()
        .filter(|row| {
            // Crane's wyes test another author's slanted side leg; at right angles that author has rows of his own.
            let slanted = row.text("law") == "crane"
                && row.number("angle") < 89.0
                && row.text("leg") == "side";
            let other =
                row.text("law") == "brandt" || author.law == JunctionLaw::Idelchik && slanted;
            row.text("law") == author.name || other
        })
        .map(|row| {
            let (flow, which) = (row.text("flow"), row.text("leg"));
            let at = geometry(row.number("area_ratio"), row.number("angle"));
            let ours = leg(author, flow, which, &at, row.number("q")).value;
            let id = format!(
                "{which} {flow}, area ratio {}, {} degrees, q {:.3}",
                row.text("area_ratio"),
                row.text("angle"),
                row.number("q")
            );
            if row.text("law") != author.name {
                let deviation = if flow == "dividing" {
                    scatter(author.law)
                } else {
                    scatter_combining(author.law)
                };
                return row.scattered(author.path, id, ours, deviation);
            }
            match special(row) {
                Some((allowed, because)) => row.within(author.path, id, ours, allowed, because),
                None => row.printed(author.path, id, ours),
            }
        })
        .collect()
}
