//! Published tee coefficients, found again from the flows of a network with one tee.
//!
//! Typed losses behind (or before) the tee are chosen so that its legs carry the parts of a published row;
//! total flow and split then give both coefficients back. Every author, dividing and combining, and the
//! patterns in which the side leg carries all.

use std::collections::BTreeMap;

use evenport::{Draw, JunctionLaw, Leg, NodeKind};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, solved, typed};

/// Low enough that the air is incompressible to a part in a million [Pa].
const DEPRESSION: f64 = 0.1;
const RUN: f64 = 2e-3;
const PRINTED: &str =
    "half of the last printed digit, and 3e-6 of all that falls: compressibility at 0.1 Pa";

const AUTHORS: [(&str, JunctionLaw); 5] = [
    ("bassett", JunctionLaw::Bassett2001),
    ("idelchik", JunctionLaw::Idelchik),
    ("rennels", JunctionLaw::Rennels2012),
    ("gardel", JunctionLaw::Gardel1957),
    ("crane", JunctionLaw::CraneTp410),
];

/// Where a leg leads.
#[derive(Clone, Copy, PartialEq)]
enum End {
    Room,
    Port,
    Nowhere,
}

/// A leg of the network: where it stands and leads, its typed loss on its own head.
#[derive(Clone, Copy)]
struct LegEnd {
    side: bool,
    end: End,
    k: f64,
}

/// What flows, seen from the leg that carries all.
struct Flows {
    /// Flow of each leg over the flow of the leg that carries all.
    parts: [f64; 3],
    /// Depression over the velocity head of the leg that carries all [-].
    fall: f64,
}

fn flows(law: JunctionLaw, area_ratio: f64, angle: f64, legs: [LegEnd; 3], whole: usize) -> Flows {
    let area = |leg: &LegEnd| if leg.side { RUN * area_ratio } else { RUN };
    let mut builder = Builder::default();
    let kind = NodeKind::Wye {
        area: RUN,
        side_area: RUN * area_ratio,
        angle,
        law,
    };
    builder.source("room").node("tee", kind);
    for (place, leg) in legs.iter().enumerate() {
        let (id, port) = (format!("leg {place}"), format!("port {place}"));
        let which = if leg.side { Leg::Side } else { Leg::Run };
        let at = ("tee", Some(which));
        let loss = vec![typed(leg.k, area(leg))];
        match leg.end {
            End::Room => builder.legs(&id, ("room", None), at, loss),
            End::Port => builder.port(&port).legs(&id, at, (&port, None), loss),
            End::Nowhere => {
                builder
                    .node("stub", NodeKind::PLENUM)
                    .legs(&id, at, ("stub", None), loss)
            }
        };
    }
    let study = builder.study(DEPRESSION);
    let answer = answer(&study);
    let branches = &solved(&answer, Draw::BenchAllOpen).branches;
    let flow = |leg: usize| branches[leg].flow;
    let bench = &study.settings.bench;
    let density = evenport::gas::density(bench.ambient_pressure, bench.ambient_temperature);
    let head = (flow(whole) / area(&legs[whole])).powi(2) / (2.0 * density);
    Flows {
        parts: [0, 1, 2].map(|leg| flow(leg) / flow(whole)),
        fall: DEPRESSION / head,
    }
}

/// A published pair at one split: value, half of its last digit and source of each leg.
#[derive(Default)]
struct Pair {
    run: Option<(f64, f64)>,
    side: Option<(f64, f64)>,
    source: String,
    kind: String,
}

/// Pairs by author, flow, area ratio, angle in degrees and q, as printed.
fn pairs() -> BTreeMap<[String; 5], Pair> {
    let text = include_str!("../published/data/junction.csv");
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let mut pairs: BTreeMap<[String; 5], Pair> = BTreeMap::new();
    for row in reader.deserialize() {
        let row: BTreeMap<String, String> = row.expect("a line of the data file");
        let key = ["law", "flow", "area_ratio", "angle", "q"].map(|name| row[name].clone());
        let number = |name: &str| row[name].parse::<f64>().ok();
        let (Some(value), Some(half)) = (number("value"), number("half")) else {
            continue;
        };
        // The printed example's flows are rounded; tests/published/junction allows for that.
        if row["kind"] == "printed example" {
            continue;
        }
        let pair = pairs.entry(key).or_default();
        match row["leg"].as_str() {
            "run" => pair.run = Some((value, half)),
            "side" => pair.side = Some((value, half)),
            _ => {}
        }
        pair.source.clone_from(&row["source"]);
        pair.kind.clone_from(&row["kind"]);
    }
    pairs
}

/// Both coefficients of one pair, found again.
fn pair_checks(
    key: &[String; 5],
    pair: &Pair,
    law: JunctionLaw,
    turned: bool,
) -> Option<[Check; 2]> {
    let [author, flow, area_ratio, angle, q] = key;
    let number = |text: &String| text.parse::<f64>().expect("a number");
    let (ratio, degrees, q) = (number(area_ratio), number(angle), number(q));
    let (run, side) = (pair.run?, pair.side?);
    // Heads of the run and the side leg over that of the leg that carries all.
    let heads = [(1.0 - q).powi(2), (q / ratio).powi(2)];
    if heads.iter().any(|head| *head < 1e-3) {
        return None;
    }
    // At q 0.5 two rows of a table meet and the corner is rounded (tests/published/junction).
    if q == 0.5 && flow == "dividing" && matches!(author.as_str(), "idelchik" | "crane") {
        return None;
    }
    let dividing = flow == "dividing";
    // Air that leaves loses its own head at the port as well.
    let own = if dividing { 1.0 } else { 0.0 };
    let least = |k: f64, head: f64| k + own * head;
    let fall = least(run.0, heads[0]).max(least(side.0, heads[1])) + 0.3;
    let typed = [(run.0, heads[0]), (side.0, heads[1])].map(|(k, head)| (fall - k) / head - own);
    let (inlet, outlet) = (End::Room, End::Port);
    let (first, rest) = if dividing {
        (inlet, outlet)
    } else {
        (outlet, inlet)
    };
    let leg = |side, end, k| LegEnd { side, end, k };
    let whole = leg(false, first, 0.0);
    let other = leg(false, rest, typed[0]);
    let branch = leg(true, rest, typed[1]);
    let (legs, places) = if turned {
        ([other, whole, branch], [1, 0, 2])
    } else {
        ([whole, other, branch], [0, 1, 2])
    };
    let found = flows(law, ratio, degrees.to_radians(), legs, places[0]);
    // What the leg that carries all loses at the port.
    let end = if dividing { 0.0 } else { 1.0 };
    let back = |leg: usize, k: f64, over: f64| {
        let head = (found.parts[places[leg]] / over).powi(2);
        found.fall - end - (k + own) * head
    };
    let check = |leg: &str, (value, half): (f64, f64), ours: f64| Check {
        id: format!("{author} {leg} {flow}, area ratio {area_ratio}, {angle} degrees, q {q:.3}"),
        law: "tee",
        source: pair.source.clone(),
        kind: match pair.kind.as_str() {
            "memory" => Kind::Memory,
            "reference library" => Kind::ReferenceLibrary,
            _ => Kind::ClosedForm,
        },
        value,
        ours,
        allowed: half * (1.0 + 1e-9) + 3e-6 * (fall + end),
        allowed_because: PRINTED,
    };
    Some([
        check("run", run, back(1, typed[0], 1.0)),
        check("side", side, back(2, typed[1], ratio)),
    ])
}

/// Patterns that no pair covers, at a right angle and equal areas: the side leg carries all in equal parts, or one
/// run leg is closed and the authors' formulas are at their ends, q 1.
fn end_checks() -> Vec<Check> {
    let leg = |side, end| LegEnd { side, end, k: 0.0 };
    let at = |law, run: [End; 2], side, whole| {
        let legs = [leg(false, run[0]), leg(false, run[1]), leg(true, side)];
        flows(law, 1.0, std::f64::consts::FRAC_PI_2, legs, whole).fall
    };
    let check = |id: String, source: &str, kind, value: f64, ours| Check {
        id: format!("{id}, equal areas, right angle"),
        law: "tee",
        source: source.to_owned(),
        kind,
        value,
        ours,
        allowed: 5e-6 + 3e-6 * value,
        allowed_because: PRINTED,
    };
    let bassett = JunctionLaw::Bassett2001;
    let into = at(bassett, [End::Room; 2], End::Port, 2) - 1.0;
    let out = at(bassett, [End::Port; 2], End::Room, 2) - 0.25;
    let mut checks = vec![
        check(
            "both run legs into the side leg, equal parts".to_owned(),
            "Idelchik, diagram 7-29, and the momentum balance along the stem",
            Kind::ClosedForm,
            1.25,
            into,
        ),
        check(
            "the side leg into both run legs, equal parts".to_owned(),
            "Bassett, Winterbone and Pearson 2001, eq 27, each run leg as a branch of the stem",
            Kind::ClosedForm,
            0.867317,
            out,
        ),
    ];
    // Run into side and side into run.
    let ends = [
        [1.23463, 2.0],
        [1.2, 1.1],
        [1.29, 1.12],
        [1.3, 1.2],
        [1.69, 1.1],
    ];
    for ((author, law), [dividing, combining]) in AUTHORS.iter().zip(ends) {
        let kind = match *law {
            JunctionLaw::Gardel1957 => Kind::Memory,
            _ => Kind::ClosedForm,
        };
        let source = "the author's formula for the side leg at q 1";
        // Each way the port takes one head of what arrives.
        let dividing_ours = at(*law, [End::Nowhere, End::Room], End::Port, 1) - 1.0;
        let combining_ours = at(*law, [End::Port, End::Nowhere], End::Room, 0) - 1.0;
        checks.push(check(
            format!("{author}, run into side, other run closed"),
            source,
            kind,
            dividing,
            dividing_ours,
        ));
        checks.push(check(
            format!("{author}, side into run, other run closed"),
            source,
            kind,
            combining,
            combining_ours,
        ));
    }
    checks
}

pub fn checks() -> Vec<Check> {
    let mut checks = Vec::new();
    for (count, (key, pair)) in pairs().iter().enumerate() {
        let author = AUTHORS.iter().find(|(name, _)| *name == key[0]);
        if let Some((_, law)) = author {
            checks.extend(
                pair_checks(key, pair, *law, count % 2 == 1)
                    .into_iter()
                    .flatten(),
            );
        }
    }
    checks.extend(end_checks());
    checks
}

#[test]
fn tees_give_their_published_coefficients_back() {
    assert_all(&checks());
}
