//! Crossflow effectiveness: the textbooks' forms turned to the air side in both roles, the series with its partials,
//! the way back, and passages that add up to the core.

use evenport::law::Slope;
use evenport::law::cooler::effectiveness::{
    Effectiveness, Mixing, RANGE, effectiveness, greatest, outside, units,
};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Row, derivative, holds, invariant, no_jump, range, rows};

const LAW: &str = "cooler/effectiveness";
const ALL: [Mixing; 3] = [Mixing::BothUnmixed, Mixing::CoolantMixed, Mixing::AirMixed];
const FIT: &str = "2.5 %: how far the textbooks' fit for both unmixed lies from the exact series";
const ROUNDED: &str = "1e-12 of it: rounding; 1e-14 where nothing is left";

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/cooler.csv"))
        .iter()
        .flat_map(both_roles)
        .collect();
    for row in rows(include_str!("../data/cooler_series.csv")) {
        checks.extend(series(&row));
    }
    checks.extend(printed_examples());
    checks.extend(back());
    checks.extend(passages());
    checks.extend(shape());
    checks
}

/// A textbook's row has the smaller capacity flow on either side; the air can be that side or the other.
fn both_roles(row: &Row) -> [Check; 2] {
    let (less, ratio) = (row.number("units"), row.number("capacity_ratio"));
    let subtype = row.text("subtype");
    let (air_smaller, air_greater) = match subtype {
        "crossflow" | "crossflow approximate" => (Mixing::BothUnmixed, Mixing::BothUnmixed),
        "crossflow, mixed Cmin" => (Mixing::AirMixed, Mixing::CoolantMixed),
        "crossflow, mixed Cmax" => (Mixing::CoolantMixed, Mixing::AirMixed),
        other => panic!("unknown arrangement {other}"),
    };
    let smaller = effectiveness(air_smaller, less, ratio).value;
    let greater = effectiveness(air_greater, less * ratio, 1.0 / ratio).value / ratio;
    [("smaller", smaller), ("greater", greater)].map(|(role, ours)| {
        let id = format!("{subtype}, {less} units, ratio {ratio}, air the {role} capacity flow");
        if row.kind() == Kind::AnotherAuthor {
            row.within(LAW, id, ours, 0.025 * ours, FIT)
        } else {
            row.printed(LAW, id, ours)
        }
    })
}

fn series(row: &Row) -> [Check; 3] {
    let mixing = match row.text("mixing") {
        "both unmixed" => Mixing::BothUnmixed,
        "coolant mixed" => Mixing::CoolantMixed,
        "air mixed" => Mixing::AirMixed,
        other => panic!("unknown mixing {other}"),
    };
    let ours = effectiveness(mixing, row.number("units"), row.number("ratio"));
    [
        ("value", ours.value),
        ("by_units", ours.by_units),
        ("by_ratio", ours.by_ratio),
    ]
    .map(|(quantity, ours)| {
        let id = format!(
            "{quantity} with {}, {} units, ratio {}",
            row.text("mixing"),
            row.text("units"),
            row.text("ratio")
        );
        let value = row.number(quantity);
        Check {
            id,
            law: LAW,
            source: row.text("source").to_owned(),
            kind: row.kind(),
            value,
            ours,
            allowed: 1e-12 * value.abs() + 1e-14,
            allowed_because: ROUNDED,
        }
    })
}

/// Examples as printed; their effectiveness was read from a chart or taken from a fit.
fn printed_examples() -> Vec<Check> {
    const INCROPERA: &str =
        "Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, 6th edition, example 11.4";
    const NELLIS: &str = "Nellis and Klein's relation, a printed example of it";
    const CHART: &str = "3 %: its effectiveness is read from a chart, 2 % below the exact series";
    const FITTED: &str =
        "1 % of the effectiveness, 3 % of the units: its fit against the exact series";
    // Hot gas of 1.5 kg/s and 1000 J/(kg K) from 250 C stands for the air; water of 1 kg/s and 4197 J/(kg K) from 35 C.
    let (gas, water) = (1_500.0, 4_197.0);
    let found = effectiveness(Mixing::BothUnmixed, 100.0 * 40.0 / gas, gas / water).value;
    let heat = found * gas * (250.0 - 35.0);
    let fitted = effectiveness(Mixing::BothUnmixed, 75.0 / 30.0, 30.0 / 50.0).value;
    let back = units(Mixing::BothUnmixed, 0.61, 30.0 / 50.0).unwrap_or(f64::NAN);
    [
        (
            "effectiveness of 2.67 units, ratio 0.357",
            0.82,
            found,
            0.03 * 0.82,
            CHART,
            INCROPERA,
        ),
        ("heat [W]", 2.64e5, heat, 0.03 * 2.64e5, CHART, INCROPERA),
        (
            "gas leaves [C]",
            73.7,
            250.0 - heat / gas,
            0.03 * 2.64e5 / gas,
            CHART,
            INCROPERA,
        ),
        (
            "water leaves [C]",
            98.0,
            35.0 + heat / water,
            0.03 * 2.64e5 / water,
            CHART,
            INCROPERA,
        ),
        (
            "effectiveness of 2.5 units, ratio 0.6",
            0.7632,
            fitted,
            0.01 * 0.7632,
            FITTED,
            NELLIS,
        ),
        (
            "units for 0.61, ratio 0.6",
            1.341,
            back,
            0.03 * 1.341,
            FITTED,
            NELLIS,
        ),
    ]
    .map(
        |(id, value, ours, allowed, allowed_because, source)| Check {
            id: id.to_owned(),
            law: LAW,
            source: source.to_owned(),
            kind: Kind::PrintedExample,
            value,
            ours,
            allowed,
            allowed_because,
        },
    )
    .into()
}

/// The units that gave an effectiveness, and those that nothing gives.
fn back() -> Vec<Check> {
    let mut checks = Vec::new();
    for mixing in ALL {
        for ratio in [0.0, 1e-9, 0.1, 0.7, 1.0, 1.4, 6.0] {
            for given in [0.0, 1e-6, 0.3, 2.0, 6.0] {
                let there = effectiveness(mixing, given, ratio);
                // Where the curve is flat its rounding is all that the way back has.
                let rounding = 1e-15 * there.value / there.by_units;
                checks.push(invariant(
                    LAW,
                    format!("{mixing:?}, ratio {ratio}: {given} units and back"),
                    given,
                    units(mixing, there.value, ratio).unwrap_or(f64::NAN),
                    1e-12 * given + 4.0 * rounding,
                    "rounding",
                ));
            }
            let most = greatest(mixing, ratio);
            let endless = effectiveness(mixing, f64::INFINITY, ratio).value;
            checks.push(invariant(
                LAW,
                format!("{mixing:?}, ratio {ratio}: greatest effectiveness, without air flow"),
                most,
                endless,
                2e-8,
                "at ratio 1 it is neared like the root of the units only",
            ));
            let refused = [most, 1.01 * most, 2.0].map(|wanted| {
                let reason = units(mixing, wanted, ratio).err().unwrap_or_default();
                reason.contains("every core stays below")
            });
            checks.push(holds(
                LAW,
                format!(
                    "{mixing:?}, ratio {ratio}: the greatest and more is refused with its reason"
                ),
                refused == [true; 3],
            ));
        }
        for (wanted, word) in [(-0.1, "moves away"), (f64::NAN, "one temperature")] {
            let reason = units(mixing, wanted, 0.5).err().unwrap_or_default();
            checks.push(holds(
                LAW,
                format!("{mixing:?}: an effectiveness of {wanted} is refused with its reason"),
                reason.contains(word),
            ));
        }
    }
    checks
}

/// Effectiveness of a core of equal passages, coolant through one after the other.
fn in_turn(mixing: Mixing, passages: u32, units: f64, ratio: f64) -> f64 {
    let part = 1.0 / f64::from(passages);
    let (mut coolant, mut cooling) = (0.0, 0.0);
    for _ in 0..passages {
        let fall = effectiveness(mixing, units, ratio * part).value * (1.0 - coolant);
        coolant += ratio * part * fall;
        cooling += part * fall;
    }
    cooling
}

/// Passages that the coolant takes one after the other mix it between them.
fn passages() -> Vec<Check> {
    let mut checks = Vec::new();
    for (units, ratio) in [(0.7, 0.4), (2.0, 0.15), (2.5, 1.3), (5.0, 0.8)] {
        let mixed = effectiveness(Mixing::CoolantMixed, units, ratio).value;
        for number in [1, 2, 7, 40] {
            checks.push(invariant(
                LAW,
                format!(
                    "{number} passages with the coolant mixed in turn, {units} units, ratio {ratio}"
                ),
                mixed,
                in_turn(Mixing::CoolantMixed, number, units, ratio),
                1e-14,
                "rounding: each passage adds its exponent",
            ));
        }
        let off = |number| in_turn(Mixing::BothUnmixed, number, units, ratio) - mixed;
        checks.push(invariant(
            LAW,
            format!("400 passages with both unmixed in turn, {units} units, ratio {ratio}"),
            mixed,
            mixed + off(400),
            off(1).abs() / 250.0,
            "what one passage lies off, over 250",
        ));
        checks.push(invariant(
            LAW,
            format!(
                "half of what 100 passages lie off the mixed coolant, {units} units, ratio {ratio}"
            ),
            0.5,
            off(200) / off(100),
            0.01,
            "it falls like one over the number of passages",
        ));
    }
    checks
}

fn shape() -> Vec<Check> {
    let mut checks = Vec::new();
    let slope = |value, derivative| Slope { value, derivative };
    for mixing in ALL {
        for fixed in [0.05, 0.9, 2.5] {
            let over_units = |units| effectiveness(mixing, units, fixed);
            let over_ratio = |ratio| effectiveness(mixing, fixed, ratio);
            let by_units = |at: Effectiveness| slope(at.value, at.by_units);
            let by_ratio = |at: Effectiveness| slope(at.value, at.by_ratio);
            let name = format!("{mixing:?} by units at ratio {fixed}");
            checks.push(derivative(LAW, &name, [0.1, 8.0], |x| {
                by_units(over_units(x))
            }));
            checks.push(no_jump(LAW, &name, [0.0, 8.0], |x| over_units(x).value));
            let name = format!("{mixing:?} by ratio at {fixed} units");
            checks.push(derivative(LAW, &name, [0.1, 4.0], |x| {
                by_ratio(over_ratio(x))
            }));
            checks.push(no_jump(LAW, &name, [0.0, 4.0], |x| over_ratio(x).value));
        }
        let good = grid().filter(|&(units, ratio)| {
            let at = effectiveness(mixing, units, ratio);
            let inside = at.value >= 0.0 && at.value <= greatest(mixing, ratio) * (1.0 + 1e-13);
            inside && at.by_units >= 0.0 && at.by_ratio <= 0.0 && at.by_ratio.is_finite()
        });
        checks.push(invariant(
            LAW,
            format!("{mixing:?}: points of a grid over all powers of ten that rise with units and fall with ratio"),
            grid().count() as f64,
            good.count() as f64,
            0.0,
            "none may be outside 0 and the greatest, or no number",
        ));
    }
    // Where the integral takes over from the sum.
    for ratio in [1.0_f64, 1.2, 0.8] {
        let edge = 30.0 / ratio.min(1.0);
        let [below, above] = [edge - 1e-9, edge + 1e-9]
            .map(|units| effectiveness(Mixing::BothUnmixed, units, ratio));
        for (name, one, other) in [
            ("value", below.value, above.value),
            ("derivative by units", below.by_units, above.by_units),
            ("derivative by ratio", below.by_ratio, above.by_ratio),
        ] {
            checks.push(invariant(
                LAW,
                format!("{name} either side of {edge} units, ratio {ratio}"),
                one,
                other,
                1e-11,
                "what it changes over 2e-9 units",
            ));
        }
    }
    for (name, units, expected) in [
        ("no units", 0.0, None),
        ("most units", RANGE[1] - 1e-6, None),
        ("too many units", RANGE[1] + 1e-6, Some("conductance")),
    ] {
        checks.push(range(LAW, name, &outside(units), expected));
    }
    checks
}

/// Units and ratios from 1e-8 to 1e8.
fn grid() -> impl Iterator<Item = (f64, f64)> {
    let powers = |n: i32| 10.0_f64.powf(0.4 * f64::from(n));
    (-20..=20).flat_map(move |units| (-20..=20).map(move |ratio| (powers(units), powers(ratio))))
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
