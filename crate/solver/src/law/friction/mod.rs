//! Wall friction of ducts.

pub mod churchill_1977;
pub mod hose_hawthorne_1963;
pub mod laminar_noncircular_shah_london_1978;
