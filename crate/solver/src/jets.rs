//! Which part of what enters a plenum each leg out of it feels: typed, or estimated from where its mouth lies.

use std::f64::consts::PI;

use crate::junction::Jets;
use crate::law::junction::impinging_jet_beltaos_1974::fraction;
use crate::model::{LegEnd, ModelBranch};
use crate::study::{Branch, Loss, Network};

/// The jets of a plenum with these legs.
pub fn jets(network: &Network, branches: &[ModelBranch], legs: &[LegEnd]) -> Jets {
    let area = |leg: &LegEnd| {
        let branch = &branches[leg.branch];
        if leg.at_to {
            branch.forward.end_area
        } else {
            branch.reversed.end_area
        }
    };
    let diameter = diameter(network, legs, area);
    let fractions = legs.iter().map(|leg| {
        let told = network.branches.get(leg.branch).filter(|_| !leg.at_to);
        told.map_or(0.0, |branch| felt(branch, diameter))
    });
    Jets {
        fractions: fractions.collect(),
        areas: legs.iter().map(area).collect(),
    }
}

/// Diameter of the jet that enters: of the widest leg that is not told to feel one; nothing where what
/// enters comes through a core, which leaves no jet [m].
fn diameter(network: &Network, legs: &[LegEnd], area: impl Fn(&LegEnd) -> f64) -> Option<f64> {
    let entering = legs.iter().filter(|leg| {
        let branch = network.branches.get(leg.branch);
        leg.at_to || branch.is_some_and(|branch| branch.jet_distance.is_none())
    });
    let widest = entering.max_by(|a, b| area(a).total_cmp(&area(b)))?;
    let branch = network.branches.get(widest.branch)?;
    let last = if widest.at_to {
        branch.losses.last()
    } else {
        branch.losses.first()
    };
    let jet = !matches!(last, Some(Loss::Core { .. }) | None);
    jet.then(|| (4.0 * area(widest) / PI).sqrt())
}

fn felt(branch: &Branch, diameter: Option<f64>) -> f64 {
    match (branch.jet_fraction, branch.jet_distance, diameter) {
        (Some(fraction), ..) => fraction,
        (None, Some(distance), Some(diameter)) => fraction(
            diameter,
            distance,
            branch.jet_offset.unwrap_or(0.0),
            branch.jet_angle.unwrap_or(0.0),
        ),
        _ => 0.0,
    }
}
