//! Evenport: a steady network estimate of how evenly an intake manifold feeds its cylinders.
//!
//! `read` turns a study's JSON into a [`Study`] or the list of what is wrong with it; [`solve`] turns
//! the study into an [`Answer`]. SI units throughout: pressures are absolute [Pa], temperatures [K].
//! The library does no I/O and knows no display unit.

mod answer;
mod branch;
mod catalogue;
mod curve;
mod defaults;
mod digits;
mod draw;
mod duct;
mod elements;
mod error;
mod exchange;
pub mod gas;
mod gate;
mod graph;
mod jets;
mod junction;
pub mod law;
mod march;
mod model;
mod paired;
mod schedule;
mod short;
mod solve;
mod study;

pub use answer::*;
pub use catalogue::{
    Catalogue, ChoiceInfo, CurveInfo, FOLLOWS, FieldInfo, Follows, KindInfo, Quantity, catalogue,
};
pub use draw::{CycleState, Prepared, PreparedCycle, Repeated, RepeatedCycle, SteadyState};
pub use error::{StudyError, StudyErrorKind};
pub use gate::{Refused, read, read_draws, read_part, read_unfinished, read_value, read_worlds};
pub use paired::{
    Band, PairCauses, PairTold, PairVerdict, Split, Told, VersionTold, Worlds, deviations,
    pair_causes, tell,
};
pub use study::*;

/// The program's version.
pub const VERSION_TEXT: &str = env!("CARGO_PKG_VERSION");
