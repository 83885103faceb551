//! Poppet valves.

pub mod curtain_area;
pub mod mach_index_taylor;
