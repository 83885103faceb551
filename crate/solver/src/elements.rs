//! From a loss as the study gives it to what the solver marches through.

use std::f64::consts::PI;

use crate::branch::Element;
use crate::duct::Duct;
use crate::gas;
use crate::law::bend::RoundedBend;
use crate::law::bend::pair_miller_1990::{self, BendPair};
use crate::law::entry::flared_idelchik::FlaredEntry;
use crate::law::entry::{ReentrantEntry, RoundedEntry, SharpEntry};
use crate::law::friction::hose_hawthorne_1963;
use crate::law::friction::laminar_noncircular_shah_london_1978::laminar_constant;
use crate::law::opening::contracted_jet::ContractedJet;
use crate::law::opening::thick_edge_idelchik;
use crate::law::screen::{self, RoundScreen, SquareScreen};
use crate::law::throttle::plate_heywood_1988::ThrottlePlate;
use crate::law::{self, Scatter, TwoWay, area, cooler, entry};
use crate::schedule;
use crate::study::{Loss, ScreenLaw, Station};

/// A part of a loss as the solver marches through it.
pub struct Piece {
    /// Tells apart what is uncertain by itself within one loss.
    pub part: u32,
    /// Catalogue kind of its law.
    pub kind: &'static str,
    /// For flow from `from`.
    pub ahead: Element,
    /// For flow from `to`.
    pub back: Element,
    /// How far the law of either may lie from the truth, in that order.
    pub scatter: [Scatter; 2],
}

/// The pieces of a loss, in order from `from`.
pub fn pieces(loss: &Loss) -> Vec<Piece> {
    if let Loss::Schedule {
        roughness,
        stations,
        bends,
        law,
    } = loss
    {
        return schedule::pieces(stations, bends, *roughness, *law);
    }
    let (ahead, back) = elements(loss);
    vec![Piece {
        part: 0,
        kind: loss.kind(),
        ahead,
        back,
        scatter: scatter(loss),
    }]
}

/// Sections at the `from` and the `to` end of a loss [m2].
pub fn sections(loss: &Loss) -> (f64, f64) {
    match *loss {
        Loss::EntrySharp { area, .. }
        | Loss::EntryRounded { area, .. }
        | Loss::EntryFlared { area, .. }
        | Loss::EntryReentrant { area, .. }
        | Loss::Duct { area, .. }
        | Loss::Hose { area, .. }
        | Loss::Bend { area, .. }
        | Loss::BendPair { area, .. }
        | Loss::ScreenRound { area, .. }
        | Loss::ScreenSquare { area, .. }
        | Loss::Core { area, .. }
        | Loss::TypedK { area, .. } => (area, area),
        Loss::SuddenChange {
            area_from, area_to, ..
        }
        | Loss::GradualChange {
            area_from, area_to, ..
        } => (area_from, area_to),
        Loss::Opening {
            area,
            discharge_coefficient,
            area_from,
            area_to,
            thickness,
        } => {
            let jet = ContractedJet {
                area,
                discharge_coefficient,
                area_from,
                area_to,
                thickness: thickness.unwrap_or(0.0),
            }
            .jet_area();
            (area_from.unwrap_or(jet), area_to.unwrap_or(jet))
        }
        Loss::Throttle { diameter, .. } => {
            let bore = PI / 4.0 * diameter * diameter;
            (bore, bore)
        }
        Loss::Schedule { ref stations, .. } => {
            // The gate has refused a schedule without stations.
            let area = |station: Option<&Station>| station.map_or(1.0, |station| station.area);
            (area(stations.first()), area(stations.last()))
        }
    }
}

/// Field and message for each value of a loss outside its law's range.
pub fn outside(loss: &Loss) -> Vec<(String, String)> {
    if let Loss::Schedule {
        roughness,
        stations,
        bends,
        law,
    } = loss
    {
        return schedule::outside(stations, bends, *roughness, *law);
    }
    let found = law::outside::outside(loss).into_iter();
    found
        .map(|(field, message)| (field.to_owned(), message))
        .collect()
}

/// The elements of a loss of one piece for flow from `from` and for flow from `to`.
fn elements(loss: &Loss) -> (Element, Element) {
    match *loss {
        Loss::EntrySharp { area, law } => heads(SharpEntry { area, law }.coefficients()),
        Loss::EntryRounded { area, radius, law } => {
            heads(RoundedEntry { area, radius, law }.coefficients())
        }
        Loss::EntryFlared { area, radius } => heads(FlaredEntry { area, radius }.coefficients()),
        Loss::EntryReentrant {
            area,
            thickness,
            law,
        } => heads(
            ReentrantEntry {
                area,
                thickness,
                law,
            }
            .coefficients(),
        ),
        Loss::SuddenChange {
            area_from,
            area_to,
            law,
        } => heads(
            area::SuddenChange {
                area_from,
                area_to,
                law,
            }
            .coefficients(),
        ),
        Loss::GradualChange {
            area_from,
            area_to,
            length,
            law,
        } => heads(
            area::GradualChange {
                area_from,
                area_to,
                length,
                law,
            }
            .coefficients(),
        ),
        Loss::Opening {
            area,
            discharge_coefficient,
            area_from,
            area_to,
            thickness,
        } => {
            let jet = ContractedJet {
                area,
                discharge_coefficient,
                area_from,
                area_to,
                thickness: thickness.unwrap_or(0.0),
            };
            let heads = jet.coefficients();
            let element = |head: crate::law::Head, behind: Option<f64>| match behind {
                Some(_) => Element::Head {
                    k: head.k,
                    area: head.area,
                },
                None => Element::Jet { area: head.area },
            };
            (
                element(heads.forward, area_to),
                element(heads.reversed, area_from),
            )
        }
        Loss::Throttle {
            diameter,
            angle,
            closed_angle,
            shaft_diameter,
            discharge_coefficient,
        } => {
            let plate = ThrottlePlate {
                diameter,
                angle,
                closed_angle,
                shaft_diameter,
                discharge_coefficient,
            };
            heads(plate.coefficients())
        }
        // Several pieces, see `pieces`.
        Loss::Schedule { .. } => both(Element::Head { k: 0.0, area: 1.0 }),
        Loss::TypedK {
            k,
            k_reversed,
            area,
            ..
        } => (
            Element::Head { k, area },
            Element::Head {
                k: k_reversed.unwrap_or(k),
                area,
            },
        ),
        Loss::Duct {
            area,
            perimeter,
            length,
            roughness,
        } => {
            let diameter = hydraulic_diameter(area, perimeter);
            let laminar_factor =
                64.0 / laminar_constant(area, perimeter.unwrap_or_else(|| circle(area)));
            both(Element::Duct(Duct::new(
                area,
                diameter,
                length,
                roughness,
                laminar_factor,
            )))
        }
        Loss::Hose {
            area,
            length,
            pitch,
        } => {
            let diameter = hydraulic_diameter(area, None);
            let roughness = diameter * hose_hawthorne_1963::relative_roughness(pitch / diameter);
            both(Element::Duct(Duct::new(
                area, diameter, length, roughness, 1.0,
            )))
        }
        Loss::ScreenRound {
            area,
            open_part,
            gap,
            law,
        } => {
            let area = open_part * area;
            both(match law {
                ScreenLaw::Blevins1984 => Element::Screen {
                    factor: screen::round_blevins_1984::factor(open_part),
                    area,
                    gap,
                },
                ScreenLaw::Idelchik => Element::Head {
                    k: screen::round_idelchik::coefficient(open_part),
                    area,
                },
            })
        }
        Loss::ScreenSquare {
            area,
            open_part,
            law,
        } => both(Element::Head {
            k: SquareScreen { open_part, law }.coefficient(),
            area: open_part * area,
        }),
        Loss::Bend {
            area,
            perimeter,
            angle,
            radius,
            roughness,
            law,
        } => {
            let diameter = hydraulic_diameter(area, perimeter);
            let bend = RoundedBend {
                radius_ratio: radius / diameter,
                angle,
                diameter,
                law,
            };
            both(Element::Bend {
                terms: bend.terms(),
                area,
                diameter,
                relative_roughness: roughness / diameter,
            })
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
            let pair = BendPair {
                radius_ratio: radius / diameter,
                angle,
                spacing_ratio: spacing / diameter,
                twist,
            };
            both(Element::Bend {
                terms: pair.terms(),
                area,
                diameter,
                relative_roughness: roughness / diameter,
            })
        }
        Loss::Core {
            area,
            fraction,
            pressure,
            temperature,
            flow_1,
            drop_1,
            flow_2,
            drop_2,
            ..
        } => {
            // The gate has refused points that give no fit.
            let fit = cooler::two_point_fit::fit(flow_1, drop_1, flow_2, drop_2)
                .unwrap_or(cooler::two_point_fit::CoreFit { a: 0.0, b: 0.0 });
            let density = gas::density(pressure, temperature);
            let viscosity = gas::viscosity(temperature).value;
            both(Element::Core {
                area,
                linear: density * fit.a / (viscosity * fraction),
                square: density * fit.b / (fraction * fraction),
            })
        }
    }
}

fn heads(coefficients: TwoWay) -> (Element, Element) {
    let element = |head: crate::law::Head| Element::Head {
        k: head.k,
        area: head.area,
    };
    (
        element(coefficients.forward),
        element(coefficients.reversed),
    )
}

fn both(element: Element) -> (Element, Element) {
    (element.clone(), element)
}

/// Four areas over the wetted perimeter, a circle's diameter when no perimeter is given [m].
pub fn hydraulic_diameter(area: f64, perimeter: Option<f64>) -> f64 {
    4.0 * area / perimeter.unwrap_or_else(|| circle(area))
}

fn circle(area: f64) -> f64 {
    2.0 * (PI * area).sqrt()
}

/// How far the law of a loss may lie from the truth, for flow from `from` and from `to`.
fn scatter(loss: &Loss) -> [Scatter; 2] {
    let alike = match *loss {
        Loss::EntrySharp { law, .. } => law.scatter(),
        Loss::EntryRounded { law, .. } => law.scatter(),
        Loss::EntryFlared { .. } => entry::flared_idelchik::SCATTER,
        Loss::EntryReentrant { law, .. } => law.scatter(),
        Loss::Duct { .. } => crate::law::friction::churchill_1977::SCATTER,
        Loss::Bend { law, .. } => law.scatter(),
        Loss::BendPair { .. } => pair_miller_1990::SCATTER,
        Loss::SuddenChange {
            area_from,
            area_to,
            law,
        } => {
            let widens = area_from < area_to;
            return [law.scatter(widens), law.scatter(!widens)];
        }
        Loss::GradualChange {
            area_from,
            area_to,
            law,
            ..
        } => {
            let widens = area_from < area_to;
            return [law.scatter(widens), law.scatter(!widens)];
        }
        Loss::Hose { .. } => hose_hawthorne_1963::SCATTER,
        Loss::ScreenRound { open_part, law, .. } => RoundScreen { open_part, law }.scatter(),
        Loss::ScreenSquare { open_part, law, .. } => SquareScreen { open_part, law }.scatter(),
        Loss::Opening {
            thickness: Some(_), ..
        } => thick_edge_idelchik::SCATTER,
        Loss::Opening { .. } => crate::law::opening::contracted_jet::SCATTER,
        Loss::Throttle { .. } => crate::law::throttle::plate_heywood_1988::SCATTER,
        Loss::Core { .. } => cooler::two_point_fit::SCATTER,
        Loss::Schedule { .. } => crate::law::friction::churchill_1977::SCATTER,
        Loss::TypedK { .. } => TYPED_SCATTER,
    };
    [alike, alike]
}

/// A typed coefficient says nothing of its own scatter.
const TYPED_SCATTER: Scatter = Scatter {
    relative: 0.1,
    common: 0.5,
    origin: "assumed: a typed value comes without scatter",
};

#[cfg(test)]
mod sweeps;
