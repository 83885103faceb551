//! What a study takes for numbers that it does not give, with where each comes from.

/// ISO 2533 sea level (from memory, agrees with the reference library in tests/published/air.rs) [Pa].
pub const fn standard_pressure() -> f64 {
    101_325.0
}

/// A workshop at 20 degrees C [K].
pub const fn standard_temperature() -> f64 {
    293.15
}

/// 28 inches of water at 60 F, common bench practice [Pa].
pub const fn standard_depression() -> f64 {
    6_967.5
}

/// Common practice: 1 to 2 % is good, 3 to 5 % common [-].
pub const fn bench_limit() -> f64 {
    0.03
}

/// About what 3 % on the bench becomes while running; proposed, no source [-].
pub const fn running_limit() -> f64 {
    0.004
}

/// Common practice: sections and ducts of a network follow CAD no closer [-].
pub const fn cad_tolerance() -> f64 {
    0.02
}

/// One of a thing [-].
pub const fn one() -> f64 {
    1.0
}

/// Water with antifreeze, common practice [J/(kg K)].
pub const COOLANT_SPECIFIC_HEAT: f64 = 3_500.0;

/// Common practice for petrol [-].
pub const STOICHIOMETRIC_RATIO: f64 = 14.7;
