//! Openings in walls.

pub mod contracted_jet;
pub mod depression;
pub mod thick_edge_idelchik;
