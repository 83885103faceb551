//! The air around the engine.

pub mod standard_atmosphere_iso_2533;
