//! The laws: one file per law, each with its equation, source, range and limits.
//!
//! A law knows geometry and the flow at its own ends, never the network. Value and derivative come
//! from one call, so they cannot drift apart. How a law is marched compressibly stands in `branch`.

pub mod air;
pub mod area;
pub mod bend;
pub mod blower;
pub mod cooler;
pub mod entry;
pub mod friction;
pub mod junction;
pub mod mixture;
pub mod opening;
pub mod outside;
pub mod screen;
pub mod throttle;
pub mod valve;

/// How far a law's source lets the truth lie from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// One standard deviation of the loss over the loss [-].
    pub relative: f64,
    /// Part of the variance that is the same everywhere and in all variants [-]; the rest belongs to the place.
    pub common: f64,
    /// Where the figure comes from.
    pub origin: &'static str,
}

/// A loss of `k` times the velocity head in `area`, of the air that arrives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Head {
    /// Loss coefficient [-].
    pub k: f64,
    /// Reference section [m2].
    pub area: f64,
}

/// A loss with coefficients that depend on geometry alone, for either direction of flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoWay {
    /// Flow from the branch's `from` end.
    pub forward: Head,
    /// Flow from the branch's `to` end.
    pub reversed: Head,
}

/// A quantity and its derivative.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// The quantity.
    pub value: f64,
    /// Its derivative with respect to what the function's doc names.
    pub derivative: f64,
}
