//! Plenum: the part of an entering jet's head that a leg out of it feels.
//!
//! # Equation
//! A leg's pressure is the plenum's plus phi times the velocity head that enters; phi is 0 unless typed.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | phi | `jet_fraction` | fraction of the entering head felt | - |
//!
//! # Source
//! Its scatter is judged from a three-dimensional reference of a box plenum fed through one end, whose shares
//! differ by several per cent from a plenum without a jet (tests/network/reference_splits.rs).
//!
//! # Range of validity
//! From -1 to 1.
//!
//! # Limits
//! It says nothing of which leg; the doubt of all legs in sight carries it.

/// Range of the fraction [-].
pub const RANGE: [f64; 2] = [-1.0, 1.0];

/// One standard deviation of the fraction [-].
pub const PLENUM_JET_SCATTER: f64 = 0.2;
