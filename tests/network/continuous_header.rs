//! A header with many equal runners, which tends to the continuous header of the header equation:
//! dp/dx = -2 beta rho V dV/dx - f rho V^2/(2 D).
//!
//! Each runner stands in the middle of its pitch and feels the pressure just before its take-off, so what
//! a finite number of runners leaves out falls as one over their number (Euler's rule). Three numbers of
//! runners, each twice the last, show it halve and give the limit by extrapolation.

use evenport::{Draw, Leg, NodeKind};

use crate::evidence::{Check, Kind};
use crate::support::{Builder, answer, solved, typed};

/// Low enough that the air is incompressible to a part in 100,000 [Pa].
const DEPRESSION: f64 = 1.0;
const AREA: f64 = 1e-3;
const DISCHARGE: f64 = 0.6;
/// Whole strips of 4, 6 and 8 in each.
const RUNNERS: [usize; 3] = [24, 48, 96];
const LIMIT: &str =
    "limit of 24, 48 and 96 runners; 1 Pa makes the air compressible by 1e-5, flows by half of it";
const LIMIT_OF_PRESSURES: &str =
    "limit of 24, 48 and 96 runners; twice the 1e-5 of it by which 1 Pa makes the air compressible";
const HALVES: &str = "second-order part of the difference at 48 runners, 1/48";

/// A header with equal runners; dividing from the source, or combining towards a port at its end.
#[derive(Clone, Copy)]
pub struct Header {
    /// C n a / A [-].
    pub m: f64,
    /// Regain factor [-].
    pub beta: f64,
    /// f L / D [-].
    pub friction: f64,
    pub combining: bool,
}

/// What flows in it.
pub struct Flow {
    /// Part of the total by each of equal strips, from x = 0.
    pub strips: Vec<f64>,
    /// Static pressure difference across the runners at x = 0 and x = L, over the largest velocity head [-].
    pub ends: [f64; 2],
}

/// Values from outside for one header.
pub struct Case<'a> {
    pub name: &'a str,
    pub header: Header,
    pub source: &'a str,
    pub kind: Kind,
    pub strips: &'a [f64],
    pub ends: Option<[f64; 2]>,
}

impl Case<'_> {
    pub fn checks(&self) -> Vec<Check> {
        let flows = RUNNERS.map(|runners| self.header.flow(runners, self.strips.len()));
        let check = |id: String, value: f64, ours: f64, allowed: f64, because| Check {
            id: format!("{} {id}", self.name),
            law: "header",
            source: self.source.to_owned(),
            kind: self.kind,
            value,
            ours,
            allowed,
            allowed_because: because,
        };
        let mut checks = Vec::new();
        for (strip, value) in self.strips.iter().enumerate() {
            let ours = limit(flows.each_ref().map(|flow| flow.strips[strip]));
            let id = format!("strip {}", strip + 1);
            checks.push(check(id, *value, ours, 5e-6, LIMIT));
        }
        for (end, values) in self.ends.iter().flatten().enumerate() {
            let ours = limit(flows.each_ref().map(|flow| flow.ends[end]));
            let id = format!("pressure difference at {}", ["x = 0", "x = L"][end]);
            checks.push(check(id, *values, ours, 2e-5 * values, LIMIT_OF_PRESSURES));
        }
        let error = |flow: &Flow| {
            let pairs = flow.strips.iter().zip(self.strips);
            pairs.fold(0.0_f64, |most, (ours, value)| {
                most.max((ours - value).abs())
            })
        };
        let ratio = error(&flows[2]) / error(&flows[1]);
        let id = "largest difference with 96 runners over that with 48".to_owned();
        let halves = check(id, 0.5, ratio, 0.02, HALVES);
        checks.push(Check {
            source: "Euler's rule: what is left out falls as one over the number".to_owned(),
            kind: Kind::Invariant,
            ..halves
        });
        checks
    }
}

/// What three values, each of twice as many runners, tend to when their error is a power series.
pub fn limit(values: [f64; 3]) -> f64 {
    let [coarse, middle, fine] = values;
    (coarse - 6.0 * middle + 8.0 * fine) / 3.0
}

impl Header {
    /// Pressure differences at both ends in the limit of many runners.
    pub fn ends(&self) -> [f64; 2] {
        let flows = RUNNERS.map(|runners| self.flow(runners, 1));
        [0, 1].map(|end| limit(flows.each_ref().map(|flow| flow.ends[end])))
    }

    /// Solves it with a number of runners.
    fn flow(&self, runners: usize, strips: usize) -> Flow {
        let answer = answer(&self.network(runners).study(DEPRESSION));
        let solved = solved(&answer, Draw::BenchAllOpen);
        let branches = solved.branches.iter();
        let flows: Vec<f64> = branches
            .filter(|branch| branch.branch.starts_with("runner"))
            .map(|branch| branch.flow)
            .collect();
        let total: f64 = flows.iter().sum();
        let pressure = |id: &str| {
            let found = solved.nodes.iter().find(|node| node.node == id);
            found.expect("the node").pressure
        };
        let (room, dead_end) = (pressure("room"), pressure("dead end"));
        let density = evenport::gas::density(room, 293.15);
        let head = total * total / (2.0 * density * AREA * AREA);
        let ends = if self.combining {
            [room - dead_end, DEPRESSION]
        } else {
            [DEPRESSION - head, dead_end - room + DEPRESSION]
        };
        let strip = |flows: &[f64]| flows.iter().sum::<f64>() / total;
        Flow {
            strips: flows.chunks(runners / strips).map(strip).collect(),
            ends: ends.map(|difference| difference / head),
        }
    }

    fn network(&self, runners: usize) -> Builder {
        let run = |pitches: f64| vec![typed(pitches * self.friction / runners as f64, AREA)];
        // 1/C^2 velocity heads in all, of which the end takes one.
        let area = self.m * AREA / (DISCHARGE * runners as f64);
        let runner = || vec![typed(1.0 / (DISCHARGE * DISCHARGE) - 1.0, area)];
        let name = |place: usize| format!("header {place}");
        let (first, last) = (name(0), name(runners - 1));
        let mut builder = Builder::default();
        builder.source("room").node("dead end", NodeKind::PLENUM);
        for place in 0..runners {
            let kind = NodeKind::Header {
                area: AREA,
                regain_dividing: Some(self.beta),
                regain_combining: Some(self.beta),
                volume: None,
                cad_volume: None,
            };
            let (here, id, port) = (
                name(place),
                format!("runner {place}"),
                format!("port {place}"),
            );
            builder.node(&here, kind);
            if self.combining {
                builder.legs(&id, ("room", None), (&here, Some(Leg::Side)), runner());
            } else {
                builder.port(&port);
                builder.legs(&id, (&here, Some(Leg::Side)), (&port, None), runner());
            }
        }
        for place in 1..runners {
            let (before, here) = (name(place - 1), name(place));
            let (from, to) = (
                (before.as_str(), Some(Leg::Run)),
                (here.as_str(), Some(Leg::Run)),
            );
            builder.legs(&format!("run {place}"), from, to, run(1.0));
        }
        // The stub behind the dead end carries nothing and shows the static pressure there.
        let (dead, open) = if self.combining {
            (first, last)
        } else {
            (last, first)
        };
        builder.legs(
            "stub",
            (&dead, Some(Leg::Run)),
            ("dead end", None),
            run(0.5),
        );
        if self.combining {
            builder.port("outlet");
            builder.legs(
                "outlet run",
                (&open, Some(Leg::Run)),
                ("outlet", None),
                run(0.5),
            );
        } else {
            builder.legs(
                "inlet run",
                ("room", None),
                (&open, Some(Leg::Run)),
                run(0.5),
            );
        }
        builder
    }
}
