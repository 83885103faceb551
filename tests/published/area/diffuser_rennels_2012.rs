//! Conical diffuser.

use evenport::ConeLaw;
use evenport::law::area::diffuser_rennels_2012::{SCATTER, coefficient};
use evenport::law::area::{CONE_FRICTION, GradualChange, sudden_expansion_borda_carnot};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{PRINTED, circle, invariant, no_jump, range, rows};

const LAW: &str = "area/diffuser_rennels_2012";

/// The coefficient of a cone to diameter 1 of a full angle [degree].
fn by_angle(area_ratio: f64, angle: f64, friction_factor: f64) -> f64 {
    let length = (1.0 - area_ratio.sqrt()) / (2.0 * (0.5 * angle.to_radians()).tan());
    coefficient(
        area_ratio * circle(1.0),
        circle(1.0),
        length,
        friction_factor,
    )
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/area.csv"))
        .iter()
        .filter(|row| row.text("law") == "cone widening")
        .map(|row| {
            let (ratio, angle) = (row.number("area_ratio"), row.number("angle"));
            let ours = by_angle(ratio, angle, row.number("friction_factor"));
            let id = format!("K at area ratio {ratio:.3}, {angle} degrees");
            match row.kind() {
                Kind::AnotherAuthor => row.scattered(LAW, id, ours, SCATTER.relative * ours),
                Kind::PrintedTable => row.within(
                    LAW,
                    id,
                    ours,
                    0.01,
                    "the table's values go by 0.05 from ratio to ratio",
                ),
                _ if angle == 20.0 => {
                    let because =
                        "the printed c jumps here by 0.0010; ours is halfway up, times (1 - b^2)^2";
                    row.within(LAW, id, ours, 5.1e-4 * (1.0 - ratio).powi(2), because)
                }
                _ => row.within(LAW, id, ours, row.number("half"), PRINTED),
            }
        })
        .collect();
    for ratio in [0.04, 0.2, 0.3, 0.7, 0.95] {
        let name = format!("K over angle, area ratio {ratio}");
        checks.push(no_jump(LAW, &name, [1.0, 179.9], |angle| {
            by_angle(ratio, angle, 0.02)
        }));
        // The printed steps are small: only a narrow sweep sees them.
        for seam in [20.0, 60.0, 160.0] {
            let name = format!("K over angle near {seam} degrees, area ratio {ratio}");
            let near = [seam - 0.3, seam + 0.3];
            checks.push(no_jump(LAW, &name, near, |angle| {
                by_angle(ratio, angle, 0.02)
            }));
        }
        let name = format!("K over length from 0, area ratio {ratio}");
        checks.push(no_jump(LAW, &name, [0.0, 3.0], |length| {
            coefficient(ratio * circle(1.0), circle(1.0), length, 0.02)
        }));
        let short = coefficient(ratio * circle(1.0), circle(1.0), 0.0, 0.02);
        let sudden = sudden_expansion_borda_carnot::coefficient(ratio, 1.0);
        let id = format!("length 0 is the sudden expansion, area ratio {ratio}");
        checks.push(invariant(LAW, id, sudden, short, 1e-12, "rounding"));
    }
    let cone = |area_to: f64| GradualChange {
        area_from: circle(0.04),
        area_to,
        length: 0.08,
        law: ConeLaw::Rennels2012,
    };
    checks.push(no_jump(
        LAW,
        "K over the section behind, from narrowing to widening",
        [2e-4, 8e-3],
        |area| cone(area).coefficients().forward.k,
    ));
    let straight = cone(circle(0.04)).coefficients().forward.k;
    let because = "rounding: equal areas leave a straight duct, f L/d";
    checks.push(invariant(
        LAW,
        "K of equal areas".to_owned(),
        CONE_FRICTION * 2.0,
        straight,
        1e-12,
        because,
    ));
    checks.push(range(LAW, "any cone", &cone(8e-3).outside(), None));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
