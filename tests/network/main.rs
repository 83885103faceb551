//! Whole networks against closed forms, textbook networks and reference splits, and against themselves.

mod continuous_header;
mod cores;
mod distributor;
mod engine;
mod entered;
#[path = "../published/evidence.rs"]
mod evidence;
mod examples;
mod fanno;
mod friction_headers;
mod gate;
mod headers;
mod hot_and_cold_doubts;
mod invariants;
mod jets;
mod junction_doubts;
mod ladders;
mod openings;
mod paired;
mod parallel_pipes;
mod pressure_ratio_rule;
mod random;
mod ranges;
mod readings;
mod reference_splits;
mod schedules;
mod slow_ducts;
mod support;
mod tee_doubts;
mod tee_headers;
mod tee_patterns;
mod three_reservoirs;
mod valves;
mod variants;

#[test]
fn evidence_table() {
    let mut all = headers::checks();
    all.extend(friction_headers::checks());
    all.extend(distributor::checks());
    all.extend(fanno::checks());
    all.extend(ladders::checks());
    all.extend(pressure_ratio_rule::checks());
    all.extend(tee_headers::checks());
    all.extend(tee_patterns::checks());
    all.extend(cores::checks());
    all.extend(slow_ducts::checks());
    all.extend(openings::checks());
    all.extend(tee_doubts::checks());
    all.extend(parallel_pipes::checks());
    all.extend(three_reservoirs::checks());
    all.extend(reference_splits::checks());
    all.extend(junction_doubts::checks());
    all.extend(hot_and_cold_doubts::checks());
    all.extend(paired::checks());
    evidence::print(&all);
    assert!(all.iter().all(evidence::Check::holds));
}
