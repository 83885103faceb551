//! Charge-cooler cores.

pub mod two_point_fit;
