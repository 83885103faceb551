//! The same loss as each author of its law has it.

use crate::elements::outside;
use crate::study::{
    BendLaw, ConeLaw, JunctionLaw, Loss, ReentrantEntryLaw, RoundedEntryLaw, ScheduleLaw,
    ScreenLaw, SharpEntryLaw, StepLaw,
};

/// Tees' and wyes' authors.
pub const JUNCTION: [JunctionLaw; 5] = [
    JunctionLaw::Bassett2001,
    JunctionLaw::Idelchik,
    JunctionLaw::Rennels2012,
    JunctionLaw::Gardel1957,
    JunctionLaw::CraneTp410,
];

/// The loss by every author, one of whom is its own; a place outside an author's range stays with its own.
/// Empty when there is one author alone.
pub fn by_author(loss: &Loss) -> Vec<Loss> {
    let mut all = every(loss);
    for other in &mut all {
        if outside(other).len() > outside(loss).len() {
            other.clone_from(loss);
        }
    }
    all
}

fn every(loss: &Loss) -> Vec<Loss> {
    let with = |change: &dyn Fn(&mut Loss)| {
        let mut other = loss.clone();
        change(&mut other);
        other
    };
    macro_rules! by {
        ($kind:ident, $($author:expr),+) => {
            vec![$(with(&|loss| if let Loss::$kind { law, .. } = loss { *law = $author; })),+]
        };
    }
    match loss {
        Loss::EntrySharp { .. } => by!(
            EntrySharp,
            SharpEntryLaw::Idelchik,
            SharpEntryLaw::Rennels2012
        ),
        Loss::EntryRounded { .. } => by!(
            EntryRounded,
            RoundedEntryLaw::Rennels2012,
            RoundedEntryLaw::Idelchik,
            RoundedEntryLaw::Swamee2008
        ),
        Loss::EntryReentrant { .. } => by!(
            EntryReentrant,
            ReentrantEntryLaw::Rennels2012,
            ReentrantEntryLaw::Idelchik
        ),
        Loss::Bend { .. } => by!(
            Bend,
            BendLaw::Rennels2012,
            BendLaw::Idelchik,
            BendLaw::CraneTp410
        ),
        Loss::SuddenChange { .. } => by!(SuddenChange, StepLaw::Rennels2012, StepLaw::Idelchik),
        Loss::GradualChange { .. } => by!(GradualChange, ConeLaw::Rennels2012, ConeLaw::CraneTp410),
        Loss::ScreenRound { .. } => by!(ScreenRound, ScreenLaw::Blevins1984, ScreenLaw::Idelchik),
        Loss::ScreenSquare { .. } => by!(ScreenSquare, ScreenLaw::Blevins1984, ScreenLaw::Idelchik),
        Loss::Schedule { .. } => by!(
            Schedule,
            ScheduleLaw::Rennels2012,
            ScheduleLaw::Idelchik,
            ScheduleLaw::CraneTp410
        ),
        Loss::EntryFlared { .. }
        | Loss::Duct { .. }
        | Loss::Hose { .. }
        | Loss::BendPair { .. }
        | Loss::Opening { .. }
        | Loss::Throttle { .. }
        | Loss::Core { .. }
        | Loss::TypedK { .. } => Vec::new(),
    }
}
