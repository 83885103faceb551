//! How long the network itself takes, natively: prepared once, then solved cold and warm.
//! Words after `--` choose the networks whose names hold one of them.

mod networks;

use std::hint::black_box;
use std::time::Instant;

use evenport::{Prepared, PreparedCycle, Study};

fn main() {
    println!("network, this machine, native; median of repeated runs");
    report("ten ports, 60 branches", networks::ten_ports, 2_000);
    report(
        "lattice of 1,024 nodes",
        |scale| networks::lattice(32, scale),
        50,
    );
    report(
        "lattice of 10,000 nodes",
        |scale| networks::lattice(100, scale),
        5,
    );
    report_cycle("ten ports while running", 200);
}

/// The same for a whole cycle.
fn report_cycle(name: &str, rounds: usize) {
    if !wanted(name) {
        return;
    }
    let prepare = |scale| {
        let prepared = PreparedCycle::new(&networks::ten_ports(scale));
        prepared
            .expect("the bench's networks are valid")
            .expect("their engine is complete")
    };
    let (before, after) = (prepare(0.99), prepare(1.0));
    let first = before.solver().solve(None).expect("a cycle");
    let mut solver = after.solver();
    let before_steps = solver.iterations();
    let mut times: Vec<f64> = (0..rounds)
        .map(|_| {
            let started = Instant::now();
            black_box(solver.solve(Some(&first))).expect("a cycle");
            started.elapsed().as_secs_f64()
        })
        .collect();
    times.sort_by(f64::total_cmp);
    println!(
        "{name}: {} networks, warm {:.0} us in {} steps",
        first.networks(),
        times[rounds / 2] * 1e6,
        (solver.iterations() - before_steps) as usize / rounds
    );
}

fn wanted(name: &str) -> bool {
    let mut words = std::env::args().skip(1).peekable();
    words.peek().is_none() || words.any(|word| name.contains(&word))
}

/// Prints cold and warm times; warm is from the state of the same network with some areas 1 % smaller.
fn report(name: &str, network: impl Fn(f64) -> Study, rounds: usize) {
    if !wanted(name) {
        return;
    }
    let prepare = |scale| Prepared::new(&network(scale)).expect("the bench's networks are valid");
    let (before, after) = (prepare(0.99), prepare(1.0));
    let started = Instant::now();
    let mut solver = after.solver();
    let laid_out = started.elapsed().as_secs_f64();
    let first = before
        .solver()
        .solve(None)
        .expect("the bench's networks have a state");
    let mut time = |warm: bool| {
        let before_steps = solver.iterations();
        let mut times: Vec<f64> = (0..rounds)
            .map(|_| {
                let started = Instant::now();
                black_box(solver.solve(warm.then_some(&first))).expect("a state");
                started.elapsed().as_secs_f64()
            })
            .collect();
        times.sort_by(f64::total_cmp);
        let steps = (solver.iterations() - before_steps) as f64 / rounds as f64;
        (times[rounds / 2] * 1e6, steps)
    };
    let (cold, cold_steps) = time(false);
    let (warm, warm_steps) = time(true);
    println!(
        "{name}: laid out {:.0} us, cold {cold:.1} us in {cold_steps} steps, warm {warm:.1} us in {warm_steps} steps",
        laid_out * 1e6
    );
}
