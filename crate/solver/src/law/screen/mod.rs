//! Screens across a section. Coefficients stand on the head in the open part of the section, where a screen chokes;
//! that of the approach, which the sources use, is the coefficient over the square of the open part.

pub mod round_blevins_1984;
pub mod round_idelchik;
pub mod square_blevins_1984;
pub mod square_idelchik;

use super::Scatter;
use super::outside::outside_range;
use crate::study::ScreenLaw;

/// A screen of round wires.
#[derive(Clone, Copy, Debug)]
pub struct RoundScreen {
    /// Open part of the section [-].
    pub open_part: f64,
    /// Whose coefficient is used.
    pub law: ScreenLaw,
}

/// A screen of square bars, or a perforated plate.
#[derive(Clone, Copy, Debug)]
pub struct SquareScreen {
    /// Open part of the section [-].
    pub open_part: f64,
    /// Whose coefficient is used.
    pub law: ScreenLaw,
}

impl RoundScreen {
    /// How far the author's coefficient may lie from the truth.
    pub fn scatter(&self) -> Scatter {
        match self.law {
            ScreenLaw::Blevins1984 => round_blevins_1984::SCATTER,
            ScreenLaw::Idelchik => round_idelchik::SCATTER,
        }
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        outside(
            self.open_part,
            match self.law {
                ScreenLaw::Blevins1984 => round_blevins_1984::RANGE,
                ScreenLaw::Idelchik => round_idelchik::RANGE,
            },
        )
    }
}

impl SquareScreen {
    /// The coefficient on the head in the open part.
    pub fn coefficient(&self) -> f64 {
        match self.law {
            ScreenLaw::Blevins1984 => square_blevins_1984::coefficient(self.open_part),
            ScreenLaw::Idelchik => square_idelchik::coefficient(self.open_part),
        }
    }

    /// How far the author's coefficient may lie from the truth.
    pub fn scatter(&self) -> Scatter {
        match self.law {
            ScreenLaw::Blevins1984 => square_blevins_1984::SCATTER,
            ScreenLaw::Idelchik => square_idelchik::SCATTER,
        }
    }

    /// Fields outside the range.
    pub fn outside(&self) -> Vec<(&'static str, String)> {
        outside(
            self.open_part,
            match self.law {
                ScreenLaw::Blevins1984 => square_blevins_1984::RANGE,
                ScreenLaw::Idelchik => square_idelchik::RANGE,
            },
        )
    }
}

fn outside(open_part: f64, range: [f64; 2]) -> Vec<(&'static str, String)> {
    outside_range("openPart", "open part of the section", open_part, range)
        .into_iter()
        .collect()
}
