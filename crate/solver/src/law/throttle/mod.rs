//! Throttles.

pub mod plate_heywood_1988;
