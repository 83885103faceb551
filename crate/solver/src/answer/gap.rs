//! Why the worst cylinder differs from the best one, in parts that add up to the whole.
//!
//! While running, port pressures differ by exactly the difference of the two budgets. On the bench all
//! paths fall alike and flows differ instead. Referred to the port's own flow m, a path's items are
//! resistances r with fall = m^2 sum r. Along the straight line from the best path's resistances to the
//! worst's, the flow's exact sensitivity to every r is the same number at each point, so its integral
//! gives each item the part (r_worst - r_best) / sum (r_worst - r_best) of the difference in flow.

use super::budget::{Budget, Labels, Place};
use super::{GapPart, GapQuantity};
use crate::short;

/// The parts of a gap and their sum.
pub struct Explained {
    /// Worst minus best.
    pub total: f64,
    /// What it is measured in.
    pub quantity: GapQuantity,
    /// Parts, largest first.
    pub parts: Vec<GapPart>,
}

/// One cylinder's budget over its ports, with the air it gets.
pub struct Side<'b> {
    /// Its port's budget.
    pub budget: &'b Budget,
    /// Air of that port while it draws [kg/s].
    pub flow: f64,
    /// The cylinder's share [-].
    pub share: f64,
}

/// Parts of the difference in port pressure: items of the best path minus items of the worst.
pub fn in_pressure(worst: &Side<'_>, best: &Side<'_>, labels: &Labels<'_>) -> Explained {
    let parts = difference(&best.budget.items, &worst.budget.items);
    let total = best.budget.fall - worst.budget.fall;
    Explained {
        total,
        quantity: GapQuantity::PortPressure,
        parts: worded(parts, labels),
    }
}

/// Parts of the difference in share.
pub fn in_share(worst: &Side<'_>, best: &Side<'_>, labels: &Labels<'_>) -> Explained {
    let resistance = |side: &Side<'_>| -> Vec<(Place, f64)> {
        let square = side.flow * side.flow;
        side.budget
            .items
            .iter()
            .map(|(place, fall)| (*place, fall / square))
            .collect()
    };
    let total = worst.share - best.share;
    let mut parts = difference(&resistance(worst), &resistance(best));
    let sum: f64 = parts.iter().map(|(_, amount)| amount).sum();
    for (_, amount) in &mut parts {
        *amount *= if sum == 0.0 { 0.0 } else { total / sum };
    }
    Explained {
        total,
        quantity: GapQuantity::Share,
        parts: worded(parts, labels),
    }
}

/// Items of `first` minus items of `second`, by place.
fn difference(first: &[(Place, f64)], second: &[(Place, f64)]) -> Vec<(Place, f64)> {
    let mut parts: Vec<(Place, f64)> = first.to_vec();
    for (place, amount) in second {
        match parts.iter_mut().find(|(other, _)| other == place) {
            Some((_, sum)) => *sum -= amount,
            None => parts.push((*place, -amount)),
        }
    }
    parts
}

fn worded(mut parts: Vec<(Place, f64)>, labels: &Labels<'_>) -> Vec<GapPart> {
    short::sort(&mut parts, |a, b| a.1.abs() > b.1.abs());
    parts
        .into_iter()
        .map(|(place, amount)| {
            let (element, loss, label) = labels.item(place);
            GapPart {
                element,
                loss,
                label,
                amount,
            }
        })
        .collect()
}
