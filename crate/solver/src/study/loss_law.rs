//! Whose formula a loss follows, where there is more than one.

use serde::Serialize;

document! {
/// Whose coefficient a sharp-edged entry follows.
#[derive(Copy, Eq, Default)]
pub enum SharpEntryLaw {
    /// Idelchik, Handbook of Hydraulic Resistance.
    #[default]
    Idelchik,
    /// Rennels and Hudson 2012.
    Rennels2012,
}

/// Whose coefficient a rounded entry follows.
#[derive(Copy, Eq, Default)]
pub enum RoundedEntryLaw {
    /// Rennels and Hudson 2012.
    #[default]
    Rennels2012,
    /// Idelchik, Handbook of Hydraulic Resistance.
    Idelchik,
    /// Swamee and Sharma 2008.
    Swamee2008,
}

/// Whose coefficient a re-entrant entry follows.
#[derive(Copy, Eq, Default)]
pub enum ReentrantEntryLaw {
    /// Rennels and Hudson 2012.
    #[default]
    Rennels2012,
    /// Idelchik, Handbook of Hydraulic Resistance.
    Idelchik,
}

/// Whose coefficient a bend follows.
#[derive(Copy, Eq, Default)]
pub enum BendLaw {
    /// Rennels and Hudson 2012.
    #[default]
    Rennels2012,
    /// Idelchik, Handbook of Hydraulic Resistance.
    Idelchik,
    /// Crane TP-410 (2009 on).
    CraneTp410,
}

/// Whose coefficient a sudden change of section follows.
#[derive(Copy, Eq, Default)]
pub enum StepLaw {
    /// Rennels and Hudson 2012.
    #[default]
    Rennels2012,
    /// Idelchik, Handbook of Hydraulic Resistance.
    Idelchik,
}

/// Whose coefficients a conical change of section follows.
#[derive(Copy, Eq, Default)]
pub enum ConeLaw {
    /// Rennels and Hudson 2012.
    #[default]
    Rennels2012,
    /// Crane TP-410 (2009 on).
    CraneTp410,
}

/// Whose coefficients the changes of section and the bends of a schedule follow.
#[derive(Copy, Eq, Default)]
pub enum ScheduleLaw {
    /// Rennels and Hudson 2012.
    #[default]
    Rennels2012,
    /// Idelchik's bends; changes of section by Rennels and Hudson 2012.
    Idelchik,
    /// Crane TP-410 (2009 on).
    CraneTp410,
}

/// Whose coefficient a screen follows.
#[derive(Copy, Eq, Default)]
pub enum ScreenLaw {
    /// Blevins 1984.
    #[default]
    Blevins1984,
    /// Idelchik, Handbook of Hydraulic Resistance.
    Idelchik,
}
}

impl ScheduleLaw {
    /// Whose cones it takes.
    pub fn cone(self) -> ConeLaw {
        match self {
            Self::Rennels2012 | Self::Idelchik => ConeLaw::Rennels2012,
            Self::CraneTp410 => ConeLaw::CraneTp410,
        }
    }

    /// Whose bends it takes.
    pub fn bend(self) -> BendLaw {
        match self {
            Self::Rennels2012 => BendLaw::Rennels2012,
            Self::Idelchik => BendLaw::Idelchik,
            Self::CraneTp410 => BendLaw::CraneTp410,
        }
    }
}
