//! Bench flow at one depression and another: printed isentropic flow, standards of metering, limits.

use evenport::gas::{CHOKED_FLOW_FUNCTION, GAMMA, GAS_CONSTANT};
use evenport::law::opening::depression::{Depression, sharp_edge};

use crate::evidence::{Check, assert_all};
use crate::support::{holds, invariant, no_jump, rows};

const LAW: &str = "opening/depression";
const ROOM: f64 = 101_325.0;
const WARMTH: f64 = 293.15;

fn air(ratio: f64) -> Depression {
    Depression {
        pressure: ROOM,
        temperature: WARMTH,
        depression: ROOM * (1.0 - ratio),
    }
}

pub fn checks() -> Vec<Check> {
    let most = air(0.2).flow();
    let mut checks: Vec<Check> = rows(include_str!("../data/depression.csv"))
        .iter()
        .map(|row| {
            let at = row.number("at");
            let id = format!(
                "{} at a pressure ratio of {}",
                row.text("quantity"),
                row.text("at")
            );
            match row.text("quantity") {
                "area ratio" => {
                    // The ratio itself is printed to so many digits.
                    let half = 0.5 * 10.0_f64.powi(2 - row.text("at").len() as i32);
                    let area = |ratio: f64| most / air(ratio).flow();
                    let allowed =
                        0.5 * (area(at + half) - area(at - half)).abs() + row.number("half");
                    let because = "half of the last digit of either printed value";
                    row.within(LAW, id, area(at), allowed, because)
                }
                "critical flow function" => row.printed(
                    LAW,
                    id,
                    air(at).flow() * (GAS_CONSTANT * WARMTH).sqrt() / ROOM,
                ),
                "nozzle" => row.printed(LAW, id, air(at).flow() / air(at).by_square_root()),
                "sharp edge" => row.printed(LAW, id, sharp_edge(at, row.number("second"))),
                other => panic!("unknown quantity {other}"),
            }
        })
        .collect();
    let little = air(1.0 - 1e-7);
    checks.push(invariant(
        LAW,
        "flow over the square root rule's at a vanishing depression".to_owned(),
        1.0,
        little.flow() / little.by_square_root(),
        1e-7,
        "3/(4 g) of the depression over the pressure",
    ));
    let throat = (GAS_CONSTANT * WARMTH / GAMMA).sqrt();
    checks.push(invariant(
        LAW,
        "choked flow over that of the network's sections".to_owned(),
        1.0,
        most * throat / (ROOM * CHOKED_FLOW_FUNCTION),
        1e-14,
        "one gas",
    ));
    let critical = 0.528_282;
    for (name, right) in [
        ("just short of choking", !air(critical + 1e-6).chokes()),
        ("just past choking", air(critical - 1e-6).chokes()),
        (
            "a sharp edge inside its range",
            air(0.750_001).past_sharp_edge().is_some(),
        ),
        (
            "a sharp edge outside its range",
            air(0.749_999).past_sharp_edge().is_none(),
        ),
    ] {
        checks.push(holds(LAW, name.to_owned(), right));
    }
    checks.push(no_jump(
        LAW,
        "flow over pressure ratio",
        [0.3, 0.999],
        |ratio| air(ratio).flow(),
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
