//! Every law against values from outside: one file per law, at the same sub-path as the law.

mod air;
mod area {
    pub mod contraction_conical_crane_tp410;
    pub mod contraction_conical_rennels_2012;
    pub mod diffuser_crane_tp410;
    pub mod diffuser_rennels_2012;
    pub mod sudden_contraction_idelchik;
    pub mod sudden_contraction_rennels_2012;
    pub mod sudden_expansion_borda_carnot;
}
mod bend {
    pub mod crane_tp410;
    pub mod idelchik;
    pub mod pair_miller_1990;
    pub mod rennels_2012;
}
mod blower {
    pub mod positive_displacement;
    pub mod table;
}
mod cooler {
    pub mod conductance;
    pub mod effectiveness;
    pub mod two_point_fit;
}
mod entry {
    pub mod flared_idelchik;
    pub mod reentrant_idelchik;
    pub mod reentrant_rennels_2012;
    mod rounded;
    pub mod rounded_idelchik;
    pub mod rounded_rennels_2012;
    pub mod rounded_swamee_2008;
    mod sharp;
    pub mod sharp_idelchik;
    pub mod sharp_rennels_2012;
}
mod evidence;
mod friction {
    pub mod churchill_1977;
    pub mod hose_hawthorne_1963;
    pub mod laminar_noncircular_shah_london_1978;
}
mod gas;
mod junction {
    mod author;
    pub mod bassett_2001;
    pub mod crane_tp410;
    pub mod gardel_1957;
    pub mod header_momentum;
    pub mod idelchik;
    pub mod impinging_jet_beltaos_1974;
    pub mod rennels_2012;
    pub mod symmetric_bassett_2001;
}
mod mixture;
mod opening {
    pub mod contracted_jet;
    pub mod depression;
    pub mod thick_edge_idelchik;
}
mod screen {
    pub mod round_blevins_1984;
    pub mod round_idelchik;
    pub mod square_blevins_1984;
    pub mod square_idelchik;
}
mod support;
mod throttle {
    pub mod plate_heywood_1988;
}
mod unused;
mod valve {
    pub mod curtain_area;
    pub mod mach_index_taylor;
}

use std::collections::BTreeSet;

/// Every check of every file.
fn all() -> Vec<evidence::Check> {
    let files = [
        air::checks(),
        air::standard_atmosphere_iso_2533::checks(),
        gas::checks(),
        entry::sharp_idelchik::checks(),
        entry::sharp_rennels_2012::checks(),
        entry::rounded_rennels_2012::checks(),
        entry::rounded_idelchik::checks(),
        entry::rounded_swamee_2008::checks(),
        entry::flared_idelchik::checks(),
        entry::reentrant_rennels_2012::checks(),
        entry::reentrant_idelchik::checks(),
        friction::churchill_1977::checks(),
        friction::laminar_noncircular_shah_london_1978::checks(),
        bend::rennels_2012::checks(),
        bend::idelchik::checks(),
        bend::crane_tp410::checks(),
        bend::pair_miller_1990::checks(),
        area::sudden_expansion_borda_carnot::checks(),
        area::sudden_contraction_rennels_2012::checks(),
        area::sudden_contraction_idelchik::checks(),
        area::diffuser_rennels_2012::checks(),
        area::diffuser_crane_tp410::checks(),
        area::contraction_conical_crane_tp410::checks(),
        area::contraction_conical_rennels_2012::checks(),
        opening::contracted_jet::checks(),
        opening::depression::checks(),
        opening::thick_edge_idelchik::checks(),
        screen::round_blevins_1984::checks(),
        screen::round_idelchik::checks(),
        screen::square_blevins_1984::checks(),
        screen::square_idelchik::checks(),
        friction::hose_hawthorne_1963::checks(),
        throttle::plate_heywood_1988::checks(),
        cooler::conductance::checks(),
        cooler::effectiveness::checks(),
        cooler::two_point_fit::checks(),
        blower::positive_displacement::checks(),
        blower::table::checks(),
        mixture::checks(),
        valve::curtain_area::checks(),
        valve::mach_index_taylor::checks(),
        junction::bassett_2001::checks(),
        junction::idelchik::checks(),
        junction::rennels_2012::checks(),
        junction::gardel_1957::checks(),
        junction::crane_tp410::checks(),
        junction::symmetric_bassett_2001::checks(),
        junction::header_momentum::checks(),
        junction::impinging_jet_beltaos_1974::checks(),
    ];
    files.into_iter().flatten().collect()
}

/// The table of all checks, and what the table may not lack.
#[test]
fn evidence_table() {
    let all = all();
    evidence::print(&all);
    unused::print();
    let mut seen = BTreeSet::new();
    for check in &all {
        assert!(
            !check.source.is_empty() && !check.allowed_because.is_empty(),
            "{} says no source",
            check.id
        );
        assert!(
            check.allowed.is_finite() && check.value.is_finite(),
            "{} allows anything",
            check.id
        );
        let key = (check.law, check.id.clone(), check.source.clone());
        assert!(
            seen.insert(key),
            "{} of {} stands twice",
            check.id,
            check.law
        );
    }
}
