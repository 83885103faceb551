//! Blowers.

pub mod positive_displacement;
pub mod table;
