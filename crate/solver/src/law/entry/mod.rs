//! Entries from a chamber into a section.

pub mod flared_idelchik;
pub mod reentrant_rennels_2012;
pub mod rounded_rennels_2012;
pub mod sharp_idelchik;
