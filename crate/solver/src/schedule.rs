//! A section schedule: areas along a way, as CAD gives them, turned into friction, changes of section and bends.
//!
//! Where the section widens or narrows without turning back is one stretch. Its coefficient is that of the
//! conical law for the stretch's whole area ratio, at each step's own angle, averaged by what the step does
//! to the velocity: any number of stations along a cone gives the cone's coefficient, a step without length
//! the sudden change's. Friction goes by each step's own section and length, with the friction factor of the
//! flow, where the conical laws assume one of 0.02. A bend's own wall is in its coefficient, so that much
//! of the way has no friction beside it.

use std::f64::consts::PI;

use crate::branch::Element;
use crate::duct::Duct;
use crate::elements::{Piece, hydraulic_diameter};
use crate::law::Scatter;
use crate::law::area::diameter;
use crate::law::bend::RoundedBend;
use crate::law::friction::laminar_noncircular_shah_london_1978::laminar_constant;
use crate::law::friction::{churchill_1977, laminar_noncircular_shah_london_1978};
use crate::study::{BendLaw, ConeLaw, ScheduleLaw, Station, StationBend};

/// Neighbouring areas that differ by less are the same section [-].
const SAME: f64 = 1e-9;

/// What the laws of a schedule are told apart by: each is one uncertain number of its branch.
#[derive(Clone, Copy)]
enum Part {
    Friction,
    Widening,
    Narrowing,
    Bend,
}

/// Everything that costs pressure along a schedule, in the order of its stations.
pub fn pieces(
    stations: &[Station],
    bends: &[StationBend],
    roughness: f64,
    law: ScheduleLaw,
) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut first = 0;
    for (place, step) in stations.windows(2).enumerate() {
        pieces.extend(friction(&step[0], &step[1], bends, roughness));
        for bend in bends_within(&step[0], &step[1], bends, place + 2 == stations.len()) {
            pieces.push(turn(&step[0], &step[1], bend, roughness, law.bend()));
        }
        let way = sense(step[0].area, step[1].area);
        let next = stations.get(place + 2);
        let goes_on = next.is_some_and(|next| sense(step[1].area, next.area) == way);
        if !goes_on {
            pieces.extend(stretch(&stations[first..=place + 1], way, law.cone()));
            first = place + 1;
        }
    }
    pieces
}

/// Field and message for each value of a schedule outside its law's range.
pub fn outside(
    stations: &[Station],
    bends: &[StationBend],
    roughness: f64,
    law: ScheduleLaw,
) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let narrow = stations
        .iter()
        .map(|station| hydraulic_diameter(station.area, station.perimeter))
        .fold(f64::INFINITY, f64::min);
    let rough = churchill_1977::outside(roughness / narrow);
    found.extend(
        rough
            .into_iter()
            .map(|(field, message)| (field.to_owned(), message)),
    );
    for (place, station) in stations.iter().enumerate() {
        let shape = station.perimeter.map(|perimeter| {
            laminar_noncircular_shah_london_1978::outside(station.area, perimeter)
        });
        let named = |(field, message)| (format!("stations[{place}].{field}"), message);
        found.extend(shape.into_iter().flatten().map(named));
    }
    for (place, bend) in bends.iter().enumerate() {
        let step = stations
            .windows(2)
            .find(|step| step[0].at <= bend.at && bend.at <= step[1].at && step[0].at < step[1].at);
        // The gate has refused a bend beside the schedule.
        let Some([before, behind]) = step else {
            continue;
        };
        let bent = rounded(&section_at(before, behind, bend), bend, law.bend());
        let named = |(field, message)| (format!("bends[{place}].{field}"), message);
        found.extend(bent.outside().into_iter().map(named));
    }
    found
}

/// 1 where the section widens, -1 where it narrows, 0 where it stays.
fn sense(before: f64, behind: f64) -> i8 {
    if (behind / before - 1.0).abs() <= SAME {
        0
    } else if behind > before {
        1
    } else {
        -1
    }
}

fn friction(
    before: &Station,
    behind: &Station,
    bends: &[StationBend],
    roughness: f64,
) -> Option<Piece> {
    let whole = behind.at - before.at;
    let length = whole - turned(before, behind, bends);
    if length <= 0.0 {
        return None;
    }
    // Simpson's rule for the integral of 1/(A^2 D), which friction goes with.
    let middle = between(before, behind, 0.5);
    let resistance = |station: &Station| {
        let diameter = hydraulic_diameter(station.area, station.perimeter);
        1.0 / (station.area * station.area * diameter)
    };
    let mean = (resistance(before) + 4.0 * resistance(&middle) + resistance(behind)) / 6.0;
    let equal = length * mean / resistance(&middle);
    let perimeter = middle.perimeter.unwrap_or_else(|| circle(middle.area));
    let duct = Element::Duct(Duct::new(
        middle.area,
        hydraulic_diameter(middle.area, middle.perimeter),
        equal,
        roughness,
        64.0 / laminar_constant(middle.area, perimeter),
    ));
    let (part, kind, scatter) = (Part::Friction, "duct", churchill_1977::SCATTER);
    Some(piece(part, kind, [scatter; 2], duct.clone(), duct))
}

/// Length of the way between two stations that bends take up [m].
fn turned(before: &Station, behind: &Station, bends: &[StationBend]) -> f64 {
    let parts = bends.iter().map(|bend| {
        let half = 0.5 * bend.radius * bend.angle;
        let from = (bend.at - half).max(before.at);
        let to = (bend.at + half).min(behind.at);
        (to - from).max(0.0)
    });
    parts.sum()
}

/// Bends whose middle lies between two stations; the last step has its end too.
fn bends_within<'b>(
    before: &Station,
    behind: &Station,
    bends: &'b [StationBend],
    last: bool,
) -> impl Iterator<Item = &'b StationBend> {
    let (from, to) = (before.at, behind.at);
    bends
        .iter()
        .filter(move |bend| from <= bend.at && (bend.at < to || (last && bend.at == to)))
}

fn turn(
    before: &Station,
    behind: &Station,
    bend: &StationBend,
    roughness: f64,
    law: BendLaw,
) -> Piece {
    let section = section_at(before, behind, bend);
    let rounded = rounded(&section, bend, law);
    let element = Element::Bend {
        terms: rounded.terms(),
        area: section.area,
        diameter: rounded.diameter,
        relative_roughness: roughness / rounded.diameter,
    };
    let scatter = [law.scatter(); 2];
    piece(Part::Bend, "bend", scatter, element.clone(), element)
}

/// A bend in the section that it stands in, as its author sees it.
fn rounded(section: &Station, bend: &StationBend, law: BendLaw) -> RoundedBend {
    let diameter = hydraulic_diameter(section.area, section.perimeter);
    RoundedBend {
        radius_ratio: bend.radius / diameter,
        angle: bend.angle,
        diameter,
        law,
    }
}

/// The section in which a bend has its middle.
fn section_at(before: &Station, behind: &Station, bend: &StationBend) -> Station {
    between(
        before,
        behind,
        (bend.at - before.at) / (behind.at - before.at),
    )
}

/// The section between two stations: diameter and perimeter linear, as along a cone.
fn between(before: &Station, behind: &Station, part: f64) -> Station {
    let linear = |before: f64, behind: f64| before + part * (behind - before);
    let root = linear(before.area.sqrt(), behind.area.sqrt());
    let perimeter = match (before.perimeter, behind.perimeter) {
        (None, None) => None,
        (one, other) => Some(linear(
            one.unwrap_or_else(|| circle(before.area)),
            other.unwrap_or_else(|| circle(behind.area)),
        )),
    };
    Station {
        at: linear(before.at, behind.at),
        area: root * root,
        perimeter,
    }
}

/// A stretch along which the section goes one way.
fn stretch(stations: &[Station], way: i8, law: ConeLaw) -> Option<Piece> {
    let (first, last) = (stations.first()?, stations.last()?);
    if way == 0 || sense(first.area, last.area) == 0 {
        return None;
    }
    let small = first.area.min(last.area);
    let large = first.area.max(last.area);
    let head = |k: f64| Element::Head { k, area: small };
    // The friction along the way is that of its steps.
    let widening = head(mean(stations, |length| {
        law.widening(small, large, length, 0.0)
    }));
    let narrowing = head(mean(stations, |length| {
        law.narrowing(large, small, length, 0.0)
    }));
    let kind = "gradualChange";
    let scatter = [law.scatter(way > 0), law.scatter(way <= 0)];
    Some(if way > 0 {
        piece(Part::Widening, kind, scatter, widening, narrowing)
    } else {
        piece(Part::Narrowing, kind, scatter, narrowing, widening)
    })
}

/// Mean of a coefficient of the whole area ratio over the steps of a stretch, each at its own angle and by
/// its change of velocity; `coefficient` takes the length of a cone of the whole ratio at that angle.
fn mean(stations: &[Station], coefficient: impl Fn(f64) -> f64) -> f64 {
    let (first, last) = (&stations[0], &stations[stations.len() - 1]);
    let whole = (diameter(last.area) - diameter(first.area)).abs();
    let all = (1.0 / last.area - 1.0 / first.area).abs();
    let parts = stations.windows(2).map(|step| {
        let change = (diameter(step[1].area) - diameter(step[0].area)).abs();
        let part = (1.0 / step[1].area - 1.0 / step[0].area).abs() / all;
        if change == 0.0 {
            return 0.0;
        }
        part * coefficient((step[1].at - step[0].at) * whole / change)
    });
    parts.sum()
}

fn piece(
    part: Part,
    kind: &'static str,
    scatter: [Scatter; 2],
    ahead: Element,
    back: Element,
) -> Piece {
    Piece {
        part: part as u32,
        kind,
        ahead,
        back,
        scatter,
    }
}

fn circle(area: f64) -> f64 {
    2.0 * (PI * area).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::law::Head;
    use crate::law::area::{SuddenChange, cone_friction};
    use crate::study::StepLaw;

    const LAW: ScheduleLaw = ScheduleLaw::Rennels2012;

    /// The coefficient of a whole schedule's changes of section, for comparison with the laws' own.
    fn heads(pieces: &[Piece]) -> Vec<Head> {
        let heads = pieces.iter().filter_map(|piece| match piece.ahead {
            Element::Head { k, area } => Some(Head { k, area }),
            _ => None,
        });
        heads.collect()
    }

    fn cone(from: f64, to: f64, length: f64, steps: usize) -> Vec<Station> {
        let part = |step: usize| step as f64 / steps as f64;
        (0..=steps)
            .map(|step| {
                let root = from.sqrt() + part(step) * (to.sqrt() - from.sqrt());
                Station {
                    at: part(step) * length,
                    area: root * root,
                    perimeter: None,
                }
            })
            .collect()
    }

    /// However many stations, a cone's coefficient is the law's less its assumed wall friction, whosever it is.
    #[test]
    fn a_cone_is_the_law_of_cones() {
        for law in [LAW, ScheduleLaw::CraneTp410] {
            for (from, to) in [(1e-3, 2e-3), (2e-3, 1e-3), (1e-3, 1.2e-3)] {
                for length in [0.02, 0.1, 0.5] {
                    let (small, large) = (f64::min(from, to), f64::max(from, to));
                    let wanted = if from < to {
                        law.cone().widening(small, large, length, 0.0)
                    } else {
                        law.cone().narrowing(large, small, length, 0.0)
                    };
                    for steps in [1, 2, 11, 60] {
                        let heads = heads(&pieces(&cone(from, to, length, steps), &[], 1e-5, law));
                        assert_eq!(heads.len(), 1);
                        assert!((heads[0].k - wanted).abs() <= 1e-9 * wanted, "{steps}");
                        assert!((heads[0].area - small).abs() <= 1e-9 * small);
                    }
                }
            }
        }
    }

    /// Each author's bend is that of a bend by itself in the same section.
    #[test]
    fn bends_follow_their_author() {
        let station = |at: f64, area: f64| Station {
            at,
            area,
            perimeter: None,
        };
        let stations = [station(0.0, 1e-3), station(0.2, 1e-3)];
        let bend = StationBend {
            at: 0.1,
            angle: 1.6,
            radius: 0.06,
        };
        let mut seen = Vec::new();
        for law in [LAW, ScheduleLaw::Idelchik, ScheduleLaw::CraneTp410] {
            let diameter = diameter(1e-3);
            let wanted = RoundedBend {
                radius_ratio: 0.06 / diameter,
                angle: 1.6,
                diameter,
                law: law.bend(),
            };
            let found = pieces(&stations, std::slice::from_ref(&bend), 1e-5, law);
            let Element::Bend { terms, .. } = &found[1].ahead else {
                panic!("the bend stands behind its friction");
            };
            let at = |terms: &crate::law::bend::BendTerms| terms.coefficient(0.02).value;
            assert!((at(terms) / at(&wanted.terms()) - 1.0).abs() < 1e-9);
            assert_eq!(found[1].scatter, [law.bend().scatter(); 2]);
            seen.push(at(terms));
        }
        assert!(seen[0] != seen[1] && seen[1] != seen[2] && seen[0] != seen[2]);
        let tight = StationBend {
            radius: 0.02,
            ..bend
        };
        for (law, warnings) in [(LAW, 0), (ScheduleLaw::CraneTp410, 1)] {
            let found = outside(&stations, &[bend.clone(), tight.clone()], 1e-5, law);
            assert_eq!(found.len(), warnings, "{found:?}");
            assert!(found.iter().all(|(field, _)| field == "bends[1].radius"));
        }
    }

    /// Friction of the steps adds up to the cone's own wall friction at the factor that its law assumes.
    #[test]
    fn friction_along_a_cone_is_its_walls() {
        let (from, to, length) = (1e-3_f64, 2e-3, 0.4);
        let heads = |steps: usize| -> f64 {
            let stations = cone(from, to, length, steps);
            let each = stations.windows(2).map(|step| {
                let middle = between(&step[0], &step[1], 0.5);
                let resistance =
                    |station: &Station| 1.0 / (station.area.powi(2) * diameter(station.area));
                let mean =
                    (resistance(&step[0]) + 4.0 * resistance(&middle) + resistance(&step[1])) / 6.0;
                0.02 * (step[1].at - step[0].at) * mean * from * from
            });
            each.sum()
        };
        let wanted = cone_friction(from, to, length, 0.02);
        // The law measures along the slant, the schedule along the axis: here by 1 in 1 600.
        assert!(
            (heads(8) / wanted - 1.0).abs() < 1e-3,
            "{} {wanted}",
            heads(8)
        );
        assert!((heads(64) - heads(8)).abs() < 1e-4 * wanted);
    }

    #[test]
    fn a_step_without_length_is_a_sudden_change() {
        let station = |at: f64, area: f64| Station {
            at,
            area,
            perimeter: None,
        };
        let stations = [
            station(0.0, 1e-3),
            station(0.1, 1e-3),
            station(0.1, 3e-3),
            station(0.2, 3e-3),
        ];
        let found = heads(&pieces(&stations, &[], 0.0, LAW));
        let wanted = SuddenChange {
            area_from: 1e-3,
            area_to: 3e-3,
            law: StepLaw::default(),
        };
        let wanted = wanted.coefficients().forward.k;
        assert!(
            (found[0].k / wanted - 1.0).abs() < 0.01,
            "{} {wanted}",
            found[0].k
        );
    }

    /// A waist and a belly: one stretch each way, each in its own direction.
    #[test]
    fn stretches_begin_where_the_section_turns() {
        let areas = [2e-3, 1.5e-3, 1e-3, 1e-3, 1.4e-3, 2e-3, 1.8e-3];
        let stations: Vec<Station> = areas
            .iter()
            .enumerate()
            .map(|(place, area)| Station {
                at: 0.05 * place as f64,
                area: *area,
                perimeter: None,
            })
            .collect();
        let found = heads(&pieces(&stations, &[], 1e-5, LAW));
        let sections: Vec<f64> = found.iter().map(|head| head.area).collect();
        assert_eq!(sections, [1e-3, 1e-3, 1.8e-3]);
    }

    #[test]
    fn a_bend_stands_in_its_step_and_takes_its_length() {
        let station = |at: f64| Station {
            at,
            area: 1e-3,
            perimeter: None,
        };
        let bend = StationBend {
            at: 0.2,
            angle: 1.0,
            radius: 0.08,
        };
        let stations = [station(0.0), station(0.1), station(0.3)];
        let kinds: Vec<&str> = pieces(&stations, std::slice::from_ref(&bend), 1e-5, LAW)
            .iter()
            .map(|piece| piece.kind)
            .collect();
        assert_eq!(kinds, ["duct", "duct", "bend"]);
        assert!(
            (turned(&stations[1], &stations[2], std::slice::from_ref(&bend)) - 0.08).abs() < 1e-12
        );
        let at_the_end = StationBend { at: 0.3, ..bend };
        assert_eq!(pieces(&stations, &[at_the_end], 1e-5, LAW).len(), 3);
    }
}
