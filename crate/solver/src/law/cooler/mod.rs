//! Charge-cooler cores.

pub mod conductance;
pub mod effectiveness;
mod poisson;
pub mod two_point_fit;
