//! Bends.

pub mod rennels_2012;
