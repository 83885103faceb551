//! Which fields of a loss or a node lie outside their law's range of validity.

use super::area::{GradualChange, SuddenChange, sudden_contraction_idelchik};
use super::bend::RoundedBend;
use super::bend::pair_miller_1990::BendPair;
use super::entry::flared_idelchik::FlaredEntry;
use super::entry::{ReentrantEntry, RoundedEntry, SharpEntry};
use super::friction::{churchill_1977, hose_hawthorne_1963, laminar_noncircular_shah_london_1978};
use super::opening::contracted_jet::ContractedJet;
use super::opening::thick_edge_idelchik;
use super::screen::{RoundScreen, SquareScreen};
use super::throttle::plate_heywood_1988::ThrottlePlate;
use super::{bend, cooler, entry, junction};
use crate::digits::{plain, rounded};
use crate::elements::hydraulic_diameter;
use crate::study::{BendLaw, Loss, NodeKind, ScheduleLaw, StepLaw};

/// Field and message for each value of a loss outside its law's range.
pub fn outside(loss: &Loss) -> Vec<(&'static str, String)> {
    match *loss {
        Loss::EntrySharp { area, law } => SharpEntry { area, law }.outside(),
        Loss::EntryRounded { area, radius, law } => RoundedEntry { area, radius, law }.outside(),
        Loss::EntryFlared { area, radius } => FlaredEntry { area, radius }.outside(),
        Loss::EntryReentrant {
            area,
            thickness,
            law,
        } => ReentrantEntry {
            area,
            thickness,
            law,
        }
        .outside(),
        Loss::Duct {
            area,
            perimeter,
            roughness,
            ..
        } => {
            let mut found =
                churchill_1977::outside(roughness / hydraulic_diameter(area, perimeter));
            if let Some(perimeter) = perimeter {
                found.extend(laminar_noncircular_shah_london_1978::outside(
                    area, perimeter,
                ));
            }
            found
        }
        Loss::Bend {
            area,
            perimeter,
            radius,
            angle,
            roughness,
            law,
        } => {
            let diameter = hydraulic_diameter(area, perimeter);
            let mut found = RoundedBend {
                radius_ratio: radius / diameter,
                angle,
                diameter,
                law,
            }
            .outside();
            found.extend(churchill_1977::outside(roughness / diameter));
            found
        }
        Loss::BendPair {
            area,
            perimeter,
            angle,
            radius,
            spacing,
            twist,
            roughness,
        } => {
            let diameter = hydraulic_diameter(area, perimeter);
            let mut found = BendPair {
                radius_ratio: radius / diameter,
                angle,
                spacing_ratio: spacing / diameter,
                twist,
            }
            .outside();
            found.extend(churchill_1977::outside(roughness / diameter));
            found
        }
        Loss::SuddenChange {
            area_from,
            area_to,
            law,
        } => SuddenChange {
            area_from,
            area_to,
            law,
        }
        .outside(),
        Loss::GradualChange {
            area_from,
            area_to,
            length,
            law,
        } => GradualChange {
            area_from,
            area_to,
            length,
            law,
        }
        .outside(),
        Loss::Opening {
            area,
            discharge_coefficient,
            area_from,
            area_to,
            thickness,
        } => ContractedJet {
            area,
            discharge_coefficient,
            area_from,
            area_to,
            thickness: thickness.unwrap_or(0.0),
        }
        .outside(),
        Loss::Hose { area, pitch, .. } => {
            hose_hawthorne_1963::outside(pitch / hydraulic_diameter(area, None))
        }
        Loss::ScreenRound { open_part, law, .. } => RoundScreen { open_part, law }.outside(),
        Loss::ScreenSquare { open_part, law, .. } => SquareScreen { open_part, law }.outside(),
        Loss::Throttle {
            diameter,
            angle,
            closed_angle,
            shaft_diameter,
            discharge_coefficient,
        } => ThrottlePlate {
            diameter,
            angle,
            closed_angle,
            shaft_diameter,
            discharge_coefficient,
        }
        .outside(),
        Loss::Core { flow_1, flow_2, .. } => cooler::two_point_fit::outside(flow_1, flow_2),
        // A schedule's are named by station and bend, see `schedule`.
        Loss::Schedule { .. } | Loss::TypedK { .. } => Vec::new(),
    }
}

/// The least Reynolds number of a loss's law, with the area [m2] and hydraulic diameter [m] that it counts in;
/// nothing where the law holds for every one, or for one of wires that the study does not tell.
pub fn least_reynolds(loss: &Loss) -> Option<(f64, f64, f64)> {
    let round = |area: f64, least: f64| (area, hydraulic_diameter(area, None), least);
    Some(match *loss {
        Loss::EntrySharp { area, .. } => round(area, entry::SHARP_LEAST_REYNOLDS),
        Loss::SuddenChange {
            area_from,
            area_to,
            law: StepLaw::Idelchik,
        } => round(
            area_from.min(area_to),
            sudden_contraction_idelchik::LEAST_REYNOLDS,
        ),
        Loss::Bend {
            area,
            perimeter,
            law: BendLaw::Idelchik,
            ..
        } => {
            let diameter = hydraulic_diameter(area, perimeter);
            (area, diameter, bend::idelchik::LEAST_REYNOLDS)
        }
        Loss::Opening {
            area,
            thickness: Some(_),
            ..
        } => round(area, thick_edge_idelchik::LEAST_REYNOLDS),
        Loss::Schedule {
            ref stations,
            ref bends,
            law: ScheduleLaw::Idelchik,
            ..
        } if !bends.is_empty() => {
            // Where the way is narrowest the number is greatest.
            let narrowest = stations.iter().min_by(|a, b| a.area.total_cmp(&b.area))?;
            let diameter = hydraulic_diameter(narrowest.area, narrowest.perimeter);
            (narrowest.area, diameter, bend::idelchik::LEAST_REYNOLDS)
        }
        _ => return None,
    })
}

/// Field and message for each value of a node outside its law's range; a port's valve is part of the node.
pub fn outside_node(kind: &NodeKind) -> Vec<(&'static str, String)> {
    match kind {
        NodeKind::Tee {
            area,
            side_area,
            law,
        } => {
            let angle = std::f64::consts::FRAC_PI_2;
            junction::outside(
                *law,
                &junction::Geometry {
                    area_ratio: side_area / area,
                    angle,
                },
            )
        }
        NodeKind::Wye {
            area,
            side_area,
            angle,
            law,
        } => junction::outside(
            *law,
            &junction::Geometry {
                area_ratio: side_area / area,
                angle: *angle,
            },
        ),
        NodeKind::Header {
            regain_dividing,
            regain_combining,
            ..
        } => junction::header_momentum::outside(*regain_dividing, *regain_combining),
        NodeKind::Port {
            valve: Some(valve), ..
        } => valve.passage().outside(),
        _ => Vec::new(),
    }
}

/// The message for a value outside its range, or nothing inside it.
pub(super) fn outside_range(
    field: &'static str,
    what: &str,
    value: f64,
    range: [f64; 2],
) -> Option<(&'static str, String)> {
    let inside = range[0] <= value && value <= range[1];
    (!inside).then(|| {
        let [least, most] = range.map(plain);
        let value = rounded(value, 3);
        let message = if range[1].is_finite() {
            format!("{what} is {value}, outside the law's {least} to {most}")
        } else {
            format!("{what} is {value}, below the law's {least}")
        };
        (field, message)
    })
}
