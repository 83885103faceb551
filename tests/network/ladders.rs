//! Ladders of linear resistances against closed forms and direct solutions.

use evenport::{Draw, Loss, NodeKind, Study};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, shares, solved};

/// A pipe so thin and long that its flow is laminar and its velocity head nothing beside its friction.
const PIPE: f64 = 3e-6;
const BRANCH_LENGTH: f64 = 10.0;
const DEPRESSION: f64 = 1.0;

fn pipe(length: f64) -> Vec<Loss> {
    vec![Loss::Duct {
        area: PIPE,
        perimeter: None,
        length,
        roughness: 0.0,
    }]
}

/// Dead-end ladder: a header of segments r between the taps of branches R.
fn dead_end(count: usize, ratio: f64) -> Vec<f64> {
    let mut builder = Builder::default();
    builder.source("tap 0");
    for tap in 1..count {
        builder.node(&format!("tap {tap}"), NodeKind::Joint {});
    }
    for tap in 0..count {
        let here = format!("tap {tap}");
        let port = format!("port {tap}");
        if tap > 0 {
            builder.branch(
                &format!("run {tap}"),
                &format!("tap {}", tap - 1),
                &here,
                pipe(ratio * BRANCH_LENGTH),
            );
        }
        builder
            .port(&port)
            .branch(&format!("rung {tap}"), &here, &port, pipe(BRANCH_LENGTH));
    }
    shares(&builder.study(DEPRESSION))
}

/// Two headers with rungs between them; the outlet stands at the far end (Z) or at the inlet's end (U).
/// `segment` gives the losses of a piece of header by how many rungs feed it when all carry the same.
pub fn two_headers(
    count: usize,
    far: bool,
    segment: impl Fn(usize) -> Vec<Loss>,
    rung: &[Loss],
) -> Builder {
    let mut builder = Builder::default();
    let outlet = if far { count - 1 } else { 0 };
    builder.source("in 0").port("out");
    for tap in 0..count {
        if tap > 0 {
            builder.node(&format!("in {tap}"), NodeKind::Joint {});
        }
        builder.node(&format!("back {tap}"), NodeKind::Joint {});
    }
    for tap in 0..count {
        let here = (format!("in {tap}"), format!("back {tap}"));
        if tap > 0 {
            let before = (format!("in {}", tap - 1), format!("back {}", tap - 1));
            let (run, back) = (format!("run {tap}"), format!("return {tap}"));
            let returning = if far { tap } else { count - tap };
            builder.branch(&run, &before.0, &here.0, segment(count - tap));
            builder.branch(&back, &before.1, &here.1, segment(returning));
        }
        builder.branch(&format!("rung {tap}"), &here.0, &here.1, rung.to_vec());
    }
    builder.branch("outlet", &format!("back {outlet}"), "out", segment(count));
    builder
}

/// Each rung's part of the total in a draw.
pub fn rung_parts(study: &Study, draw: Draw) -> Vec<f64> {
    let answer = answer(study);
    let flows: Vec<f64> = solved(&answer, draw)
        .branches
        .iter()
        .filter(|branch| branch.branch.starts_with("rung"))
        .map(|branch| branch.flow)
        .collect();
    let total: f64 = flows.iter().sum();
    flows.iter().map(|flow| flow / total).collect()
}

pub fn checks() -> Vec<Check> {
    let mut checks = Vec::new();
    let mut push = |id: String,
                    source: &str,
                    kind: Kind,
                    value: f64,
                    ours: f64,
                    allowed: f64,
                    because: &'static str| {
        checks.push(Check {
            id,
            law: "network",
            source: source.to_owned(),
            kind,
            value,
            ours,
            allowed,
            allowed_because: because,
        });
    };
    let identity = "ladder identity: rung k carries cosh((N - k + 1/2) t), 2 sinh(t/2) = sqrt(r/R)";
    let laminar = "velocity heads and compressibility leave the laminar ladder linear to 1e-5";
    for (count, ratio) in [(4, 0.10), (4, 0.02), (8, 0.20)] {
        let t: f64 = 2.0 * (f64::sqrt(ratio) / 2.0).asinh();
        let parts: Vec<f64> = (1..=count)
            .map(|k| ((count as f64 - k as f64 + 0.5) * t).cosh())
            .collect();
        let sum: f64 = parts.iter().sum();
        for (rung, (part, ours)) in parts.iter().zip(dead_end(count, ratio)).enumerate() {
            let id = format!("LAD-N{count}-r{ratio} rung {}", rung + 1);
            push(
                id,
                identity,
                Kind::ClosedForm,
                part / sum,
                ours,
                2e-5,
                laminar,
            );
        }
    }
    let kirchhoff = "Kirchhoff network solved directly (numpy linalg.solve)";
    let z = [0.192082, 0.16129, 0.146628, 0.146628, 0.16129, 0.192082];
    let u = [0.285125, 0.213638, 0.163514, 0.129741, 0.108943, 0.0990392];
    for (name, far, values) in [("Z-N6-r0.05", true, z), ("U-N6-r0.05", false, u)] {
        let segment = |_| pipe(0.05 * BRANCH_LENGTH);
        let ladder = two_headers(6, far, segment, &pipe(BRANCH_LENGTH));
        let ours = rung_parts(&ladder.study(DEPRESSION), Draw::BenchAllOpen);
        for (rung, (value, ours)) in values.iter().zip(ours).enumerate() {
            let id = format!("{name} rung {}", rung + 1);
            push(
                id,
                kirchhoff,
                Kind::ReferenceLibrary,
                *value,
                ours,
                2e-5,
                laminar,
            );
        }
    }
    checks
}

#[test]
fn ladders_follow_their_direct_solutions() {
    assert_all(&checks());
}
