//! Openings in walls.

pub mod contracted_jet;
