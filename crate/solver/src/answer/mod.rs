//! What comes back from `solve`: plain data in SI units, every number with its unit in its doc.

mod budget;
mod build;
mod doubt;
mod entered;
mod gap;
mod hints;
mod rows;
mod types;
mod verdict;

pub use build::{solve, solve_part};
pub use types::*;
