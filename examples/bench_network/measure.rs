//! What is measured, for any clock: the browser's is coarse, so solutions are timed in batches.

use std::hint::black_box;

use evenport::{Draw, Loss, Prepared, PreparedCycle, Split, Study, Worlds};

use crate::batch::median;
use crate::networks;

/// Batches, of which the middle one counts.
const BATCHES: usize = 11;

/// Measures all networks whose names `wanted` lets through and tells each line to `say`; `clock` tells
/// seconds.
pub fn all(clock: impl Fn() -> f64, wanted: impl Fn(&str) -> bool, say: impl Fn(&str)) {
    let single = [
        ("ten ports, 60 branches", 0),
        ("lattice of 1,024 nodes", 32),
        ("lattice of 10,000 nodes", 100),
    ];
    for (name, side) in single.into_iter().filter(|(name, _)| wanted(name)) {
        let study = |scale| match side {
            0 => networks::ten_ports(scale),
            side => networks::lattice(side, scale),
        };
        say(&network(name, study, &clock));
    }
    let name = "ten ports while running";
    if wanted(name) {
        say(&cycle(name, &clock));
    }
    let name = "12 stations";
    if wanted(name) {
        say(&schedule(name, &clock));
    }
    let name = "60 speeds of the blown V8";
    if wanted(name) {
        say(&range(name, &clock));
    }
    for (name, draw, count) in [
        (
            "four versions of the V8 lid on the bench, 2,000 worlds",
            Draw::BenchOneAtATime,
            2000,
        ),
        (
            "four versions of the V8 lid running, 200 worlds",
            Draw::Running,
            200,
        ),
        (
            "four versions of the V8 lid running, 2,000 worlds",
            Draw::Running,
            2000,
        ),
    ] {
        let worlds = Worlds {
            draw,
            seed: 1,
            split: Split::AsStated,
            first: 0,
            count,
        };
        if wanted(name) {
            say(&paired(name, &worlds, &clock));
        }
    }
}

/// Four versions in the same possible truths.
fn paired(name: &str, worlds: &Worlds, clock: &impl Fn() -> f64) -> String {
    let text = include_str!("../v8_lid/network.json");
    let study = evenport::read(text).expect("the example is valid");
    let versions: Vec<Study> = [1.0, 0.97, 1.03, 1.06]
        .into_iter()
        .map(|factor| {
            let mut version = study.clone();
            let losses = version.network.branches.iter_mut();
            for loss in losses.flat_map(|branch| &mut branch.losses) {
                if let Loss::Opening { area, .. } = loss {
                    *area *= factor;
                }
            }
            version
        })
        .collect();
    let time = median(clock, 1, || {
        black_box(evenport::deviations(&versions, worlds)).expect("valid studies");
    });
    format!("{name}: {}", told(time))
}

/// The running draw over a speed range, with blower and core, through the gate as the page asks for it.
fn range(name: &str, clock: &impl Fn() -> f64) -> String {
    let text = include_str!("../blown_v8/network.json");
    let study = evenport::read(text).expect("the example is valid");
    let speeds = evenport::speeds(&study);
    let time = median(clock, BATCHES, || {
        black_box(evenport::speed_range(&study, &speeds)).expect("a valid study");
    });
    format!("{name}: {}", told(time))
}

/// What a section schedule costs each time its branch is evaluated, over one duct in its place.
fn schedule(name: &str, clock: &impl Fn() -> f64) -> String {
    const BRANCHES: usize = 60;
    let each = |loss| {
        let prepared = Prepared::new(&networks::fan(BRANCHES, &loss));
        let prepared = prepared.expect("the bench's networks are valid");
        let mut solver = prepared.solver();
        let state = solver.solve(None).expect("a state");
        let whole = median(clock, BATCHES, || {
            black_box(solver.closure(&state));
        });
        whole / BRANCHES as f64 * 1e6
    };
    let (duct, stations) = (each(networks::straight()), each(networks::tapered()));
    format!(
        "{name}: a branch evaluation {stations:.2} us, with one duct {duct:.2} us; the schedule costs {:.2} us",
        stations - duct
    )
}

/// Cold and warm times; warm is from the state of the same network with some areas 1 % smaller.
fn network(name: &str, study: impl Fn(f64) -> Study, clock: &impl Fn() -> f64) -> String {
    let prepare = |scale| Prepared::new(&study(scale)).expect("the bench's networks are valid");
    let (before, after) = (prepare(0.99), prepare(1.0));
    let started = clock();
    let mut solver = after.solver();
    let laid_out = clock() - started;
    let first = before.solver().solve(None);
    let first = first.expect("the bench's networks have a state");
    let mut line = format!("{name}: equations laid out in {:.2} ms", laid_out * 1e3);
    for (how, from) in [("cold", None), ("warm", Some(&first))] {
        let steps = solver.iterations();
        black_box(solver.solve(from)).expect("a state");
        let steps = solver.iterations() - steps;
        let time = median(clock, BATCHES, || {
            black_box(solver.solve(from));
        });
        line += &format!(", {how} {} in {steps} steps", told(time));
    }
    line
}

/// The same for a whole cycle, warm.
fn cycle(name: &str, clock: &impl Fn() -> f64) -> String {
    let prepare = |scale| {
        let prepared = PreparedCycle::new(&networks::ten_ports(scale));
        let prepared = prepared.expect("the bench's networks are valid");
        prepared.expect("their engine is complete")
    };
    let (before, after) = (prepare(0.99), prepare(1.0));
    let first = before.solver().solve(None).expect("a cycle");
    let mut solver = after.solver();
    let steps = solver.iterations();
    black_box(solver.solve(Some(&first))).expect("a cycle");
    let steps = solver.iterations() - steps;
    let time = median(clock, BATCHES, || {
        black_box(solver.solve(Some(&first)));
    });
    format!(
        "{name}: {} networks together, warm {} in {steps} steps",
        first.networks(),
        told(time)
    )
}

fn told(seconds: f64) -> String {
    if seconds < 1e-3 {
        format!("{:.0} us", seconds * 1e6)
    } else {
        format!("{:.2} ms", seconds * 1e3)
    }
}
