//! The simple network that `peers.py` gives to general-purpose solvers too: this program solves it, times
//! that, and prints equations, solution and times as JSON.

#[path = "../bench_network/batch.rs"]
mod batch;

use std::hint::black_box;
use std::time::Instant;

use evenport::{
    Answer, Branch, Cylinder, Draw, Engine, Loss, Network, Node, NodeKind, Outcome, Prepared,
    Settings, Solved, Study, gas,
};
use serde_json::json;

/// So small that density varies by less than 1e-5: the others know only incompressible flow [Pa].
const DEPRESSION: f64 = 1.0;
/// Windows of the network that the warm start comes from, over those of the network itself [-].
const BEFORE: f64 = 0.99;
/// Batches, of which the middle one counts.
const BATCHES: usize = 31;

/// One branch with `k` velocity heads in `area`.
struct Resistance {
    from: String,
    to: String,
    k: f64,
    area: f64,
}

/// Ten ports and 60 branches, shaped as `bench_network`'s but with chambers in the tees' places and
/// typed losses only. `scale` multiplies the windows between the pockets.
fn resistances(scale: f64) -> Vec<Resistance> {
    let mut branches = Vec::with_capacity(60);
    let mut branch = |from: &str, to: &str, k: f64, area: f64| {
        branches.push(Resistance {
            from: from.to_owned(),
            to: to.to_owned(),
            k,
            area,
        });
    };
    for feed in 0..2 {
        branch("source", "lid", 0.3, 2e-3 + 1e-4 * f64::from(feed));
    }
    for port in 0..10 {
        let (pocket, neck) = (format!("pocket {port}"), format!("neck {port}"));
        // Without order, so that the windows have something to carry.
        let through = 2.0 + 0.3 * f64::from(port * 7 % 10);
        branch("lid", &pocket, through, 2e-3);
        branch(&pocket, &neck, 0.2, 1.2e-3);
        let runner = 0.4 + 0.05 * f64::from(port * 3 % 10);
        branch(&neck, &format!("port {port}"), runner, 1.2e-3);
        branch(&neck, "balance", 1.5, 4e-4);
    }
    let mut window = |a: i32, b: i32, area: f64| {
        branch(
            &format!("pocket {a}"),
            &format!("pocket {b}"),
            1.2,
            area * scale,
        );
    };
    for bank in [0, 5] {
        for place in bank..bank + 4 {
            window(place, place + 1, 8e-4);
        }
    }
    for across in 0..5 {
        window(across, across + 5, 1.2e-3);
        window(across, 9 - across, 5e-4 + 1e-5 * f64::from(across));
    }
    branches
}

/// Every node once, in the order the branches name them.
fn nodes(branches: &[Resistance]) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    for name in branches
        .iter()
        .flat_map(|branch| [&branch.from, &branch.to])
    {
        if !found.contains(name) {
            found.push(name.clone());
        }
    }
    found
}

/// A port's number, for nodes that are ports.
fn port(name: &str) -> Option<&str> {
    name.strip_prefix("port ")
}

fn study(branches: &[Resistance]) -> Study {
    let node = |id: String| {
        let kind = match port(&id) {
            Some(number) => NodeKind::Port {
                cylinder: number.to_owned(),
                valve: None,
                cad_section: None,
            },
            None if id == "source" => NodeKind::source(180_000.0, 330.0),
            None => NodeKind::PLENUM,
        };
        Node { id, kind }
    };
    let nodes = nodes(branches);
    let cylinders = nodes.iter().filter_map(|name| port(name));
    let cylinders = cylinders.map(|number| Cylinder {
        id: number.to_owned(),
        swept_volume: None,
        bank: None,
    });
    let engine = Engine {
        cylinders: cylinders.collect(),
        ..Engine::default()
    };
    let mut settings = Settings::default();
    settings.bench.depression = DEPRESSION;
    let branches = branches.iter().enumerate().map(|(number, given)| {
        let loss = Loss::TypedK {
            k: given.k,
            k_reversed: None,
            area: given.area,
            origin: String::new(),
        };
        let id = format!("branch {number}");
        Branch::new(&id, &given.from, &given.to, vec![loss])
    });
    let network = Network {
        branches: branches.collect(),
        nodes: nodes.into_iter().map(node).collect(),
    };
    Study {
        notes: "Invented for comparing solvers.".to_owned(),
        engine,
        settings,
        ..Study::new("ten ports, simple", network)
    }
}

fn all_open(answer: &Answer) -> &Solved {
    let draw = answer.draws.iter().find(|of| of.draw == Draw::BenchAllOpen);
    match draw.map(|found| &found.outcome) {
        Some(Outcome::Solved(solved)) => solved,
        _ => panic!("the network has a state with all ports open"),
    }
}

fn main() {
    let (given, given_before) = (resistances(1.0), resistances(BEFORE));
    let (now, before) = (study(&given), study(&given_before));
    let answer = evenport::solve(&now).expect("the network is valid");
    let solved = all_open(&answer);
    let bench = &now.settings.bench;
    let density = gas::density(bench.ambient_pressure, bench.ambient_temperature);
    // Every branch ends in a chamber, whichever way the air goes: one velocity head is lost there.
    let resistance =
        |given: &Resistance| (given.k + 1.0) / (2.0 * density * given.area * given.area);

    let prepare = |study| Prepared::new(study).expect("the network is valid");
    let (now, before) = (prepare(&now), prepare(&before));
    let start = before.solver().solve(None).expect("a state");
    let mut solver = now.solver();
    let mut steps = |from| {
        let taken = solver.iterations();
        let state = solver.solve(from).expect("a state");
        (solver.iterations() - taken, now.port_flows(&state))
    };
    let (cold_steps, port_flows) = steps(None);
    let (warm_steps, _) = steps(Some(&start));
    let started = Instant::now();
    let clock = || started.elapsed().as_secs_f64();
    let cold = batch::median(&clock, BATCHES, || {
        black_box(solver.solve(None));
    });
    let warm = batch::median(&clock, BATCHES, || {
        black_box(solver.solve(Some(&start)));
    });
    let with_layout = batch::median(&clock, BATCHES, || {
        black_box(now.solver().solve(None));
    });

    let branches =
        given
            .iter()
            .zip(&given_before)
            .zip(&solved.branches)
            .map(|((given, before), found)| {
                json!({
                    "from": given.from, "to": given.to, "area": given.area,
                    "r": resistance(given), "r_before": resistance(before), "flow": found.flow,
                })
            });
    let certificate = &solved.certificate;
    let told = json!({
        "drop": DEPRESSION,
        "nodes": nodes(&given),
        "branches": branches.collect::<Vec<_>>(),
        "port_flows": port_flows,
        "imbalance": certificate.imbalance,
        "closure": certificate.closure,
        "cold": { "time": cold, "steps": cold_steps },
        "warm": { "time": warm, "steps": warm_steps },
        "with_layout": { "time": with_layout, "steps": cold_steps },
    });
    println!("{told}");
}
