//! Which fields of a loss or a node lie outside their law's range of validity.

use super::area::{GradualChange, SuddenChange};
use super::bend::RoundedBend;
use super::bend::pair::BendPair;
use super::entry::flared_idelchik::FlaredEntry;
use super::entry::{ReentrantEntry, RoundedEntry, SharpEntry};
use super::friction::{churchill_1977, hose_hawthorne_1963, laminar_noncircular_shah_london_1978};
use super::opening::contracted_jet::ContractedJet;
use super::screen::{RoundScreen, SquareScreen};
use super::throttle::plate_heywood_1988::ThrottlePlate;
use super::{cooler, junction};
use crate::digits::{plain, rounded};
use crate::elements::hydraulic_diameter;
use crate::schedule;
use crate::study::{Loss, NodeKind};

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
        Loss::Schedule {
            ref stations,
            ref bends,
            law,
            ..
        } => schedule::outside(stations, bends, law),
        Loss::TypedK { .. } => Vec::new(),
    }
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
