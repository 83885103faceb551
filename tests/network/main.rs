//! Whole networks against closed forms, textbook networks and reference splits, and against themselves.

#[path = "../published/evidence.rs"]
mod evidence;
mod examples;
mod gate;
mod headers;
mod invariants;
mod ladders;
mod random;
mod reference_splits;
mod support;
mod tee_headers;

#[test]
fn evidence_table() {
    let mut all = headers::checks();
    all.extend(ladders::checks());
    all.extend(tee_headers::checks());
    all.extend(reference_splits::checks());
    evidence::print(&all);
    assert!(all.iter().all(evidence::Check::holds));
}
