//! Opening in a thick wall.

use evenport::law::opening::contracted_jet::ContractedJet;
use evenport::law::opening::thick_edge_idelchik::{SCATTER, filled};

use crate::evidence::{Check, assert_all};
use crate::support::{circle, invariant, no_jump, range, rows};

const LAW: &str = "opening/thick_edge_idelchik";

/// The thin opening that loses, out of a chamber into a chamber, what the source says of no thickness.
const SHARP: f64 = 0.592;

fn opening(discharge_coefficient: f64, ratio: f64, part: f64) -> ContractedJet {
    let behind = (part > 0.0).then(|| circle(1.0) / part);
    ContractedJet {
        area: circle(1.0),
        discharge_coefficient,
        area_from: behind,
        area_to: behind,
        thickness: ratio,
    }
}

/// The loss in heads of the opening; into a chamber the jet's whole head.
fn heads(jet: &ContractedJet) -> f64 {
    let head = jet.coefficients().forward;
    let k = if jet.area_to.is_some() { head.k } else { 1.0 };
    k * (jet.area / head.area).powi(2)
}

pub fn checks() -> Vec<Check> {
    let mut checks: Vec<Check> = rows(include_str!("../data/thick_opening.csv"))
        .iter()
        .map(|row| {
            let ratio = row.number("ratio");
            if row.text("quantity") == "tau" {
                let ours = 2.4 * 10.0_f64.powf(-0.25) * (1.0 - filled(ratio));
                let because = "the source's formula leaves its table by up to 0.1, halfway";
                return row.within(LAW, format!("tau at l/d {ratio}"), ours, 0.1, because);
            }
            let part = row.number("part");
            let ours = heads(&opening(SHARP, ratio, part));
            let id = format!("loss at l/d {ratio}, opening {part} of the sections beside it");
            row.scattered(LAW, id, ours, SCATTER.relative * ours)
        })
        .collect();
    for coefficient in [0.5, 0.61, 0.8, 1.0] {
        for part in [0.0, 0.3, 0.9, 1.0] {
            let at = |ratio| heads(&opening(coefficient, ratio, part));
            let place = format!("C_d {coefficient}, part {part}");
            let id = format!("hardly thick is thin, {place}");
            checks.push(invariant(
                LAW,
                id,
                at(0.0),
                at(1e-9),
                1e-8,
                "1e-9 of a diameter",
            ));
            let full = (1.0 / coefficient - 1.0_f64).powi(2) + (1.0 - part).powi(2) + 0.02 * 2.4;
            let id = format!("filled again: narrowed jet, then widened, {place}");
            checks.push(invariant(LAW, id, full, at(2.4), 1e-12, "rounding"));
            let name = format!("loss over l/d, {place}");
            checks.push(no_jump(LAW, &name, [0.0, 4.0], at));
            let name = format!("jet's section over l/d, {place}");
            checks.push(no_jump(LAW, &name, [0.0, 4.0], |ratio| {
                opening(coefficient, ratio, part).jet_area()
            }));
        }
    }
    let at = |ratio| opening(0.6, ratio, 0.0).outside();
    checks.push(range(LAW, "thin", &at(0.0), None));
    checks.push(range(LAW, "just not too thick", &at(3.0 - 1e-6), None));
    let thick = at(3.0 + 1e-6);
    checks.push(range(LAW, "just too thick", &thick, Some("thickness")));
    checks
}

#[test]
fn published_values_hold() {
    assert_all(&checks());
}
