//! Poppet valves.

pub mod curtain_area;
