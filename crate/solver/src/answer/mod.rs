//! What comes back from `solve`: plain data in SI units, every number with its unit in its doc.

/// Derives what every answer type needs; the TypeScript types only when generating.
macro_rules! answer {
    ($($item:item)*) => {$(
        #[derive(Clone, Debug, PartialEq, Serialize)]
        #[cfg_attr(feature = "generate", derive(ts_rs::TS))]
        #[serde(rename_all = "camelCase")]
        $item
    )*};
}

pub(crate) use answer;

mod budget;
mod build;
mod doubt;
mod engine;
mod engine_types;
mod entered;
mod figures;
mod gap;
mod hints;
mod mixture;
mod range;
mod readings;
mod rows;
mod types;
mod valves;
mod verdict;
mod whole;

pub use build::{solve, solve_part};
pub(crate) use doubt::{HALF_WIDTH, named};
pub use engine_types::*;
pub use figures::figures;
pub use range::{speed_range, speeds};
pub use types::*;
pub(crate) use whole::{deviations, deviations_by, range};
