//! Isentropic flow at ratio of specific heats 1.4.

use evenport::gas::{
    CHOKED_FLOW_FUNCTION, GAMMA, flow_function, head_fraction, mach, needed_flow_function,
    pressure_ratio,
};

use crate::evidence::{Check, assert_all};
use crate::support::{circle, invariant, rows};

const LAW: &str = "gas";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("data/gas.csv"))
        .iter()
        .map(|row| {
            let at = row.number("at");
            let quantity = row.text("quantity");
            let id = format!("{quantity} at {at}");
            match quantity {
                "pressure ratio" => row.printed(LAW, id, pressure_ratio(at)),
                "area ratio" => row.printed(LAW, id, CHOKED_FLOW_FUNCTION / flow_function(at)),
                // C* = m sqrt(R T) / (A p), the flow function times the root of gamma.
                "critical flow function" => {
                    row.printed(LAW, id, CHOKED_FLOW_FUNCTION * GAMMA.sqrt())
                }
                "critical pressure" => row.printed(LAW, id, at * pressure_ratio(1.0)),
                "chokes" => row.printed(
                    LAW,
                    id,
                    f64::from(u8::from(at < 200_000.0 * pressure_ratio(1.0))),
                ),
                other => panic!("unknown quantity {other}"),
            }
        })
        .collect();
    for number in [0.0, 1e-9, 1e-3, 0.1, 0.3, 0.7, 0.95, 0.999, 0.999_999, 1.0] {
        let back = mach(flow_function(number)).unwrap_or(f64::NAN);
        // Near Mach 1 the flow function is flat: half of the digits are all there is.
        let allowed = if number > 0.99 { 1e-7 } else { 1e-12 };
        checks.push(invariant(
            LAW,
            format!("Mach number {number} and back"),
            number,
            back,
            allowed,
            "rounding",
        ));
        let fraction = head_fraction(number);
        checks.push(invariant(
            LAW,
            format!("head fraction at Mach {number}"),
            1.0 - pressure_ratio(number),
            fraction,
            1e-15,
            "rounding of the difference",
        ));
    }
    let beyond = mach(CHOKED_FLOW_FUNCTION * (1.0 + 1e-9)).is_none() && mach(f64::NAN).is_none();
    checks.push(invariant(
        LAW,
        "no Mach number past choking".to_owned(),
        1.0,
        f64::from(u8::from(beyond)),
        0.0,
        "yes or no",
    ));
    // m = C_d A C* p0 / sqrt(R T0) chokes its section: rows of the sonic nozzles.
    let jets = rows(include_str!("data/jet.csv"));
    for row in jets.iter().filter(|row| row.text("case") == "sonic") {
        let (flow, half) = (row.number("value"), row.number("half"));
        let area = row.number("discharge_coefficient") * circle(row.number("diameter"));
        let (pressure, temperature) = (row.number("pressure"), row.number("temperature"));
        let needed = needed_flow_function(flow, pressure, temperature, area);
        checks.push(Check {
            value: 1.0,
            ours: needed / CHOKED_FLOW_FUNCTION,
            allowed: half / flow * (1.0 + 1e-9),
            ..row.printed(
                LAW,
                format!("part of its choking flow that a sonic nozzle at {pressure} Pa carries"),
                1.0,
            )
        });
    }
    let needed = needed_flow_function(0.1, 2e5, 300.0, 1e-3);
    let double = needed_flow_function(0.2, 2e5, 300.0, 2e-3);
    checks.push(invariant(
        LAW,
        "twice the flow through twice the area".to_owned(),
        needed,
        double,
        1e-16,
        "rounding",
    ));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
