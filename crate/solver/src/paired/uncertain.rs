//! Every uncertain number of a model, and what a world makes of it.

use super::authors::{self, by_author};
use super::world::{Names, World, name};
use crate::branch::{Chain, Element, Origin};
use crate::draw::Redrawn;
use crate::elements::pieces;
use crate::junction::Junction;
use crate::law::cooler::effectiveness;
use crate::law::junction;
use crate::law::junction::header_momentum::{SCATTER_COMBINING, SCATTER_DIVIDING};
use crate::law::junction::plenum_jet::PLENUM_JET_SCATTER;
use crate::model::Model;
use crate::solve::Cause;
use crate::study::{JunctionLaw, Study};

/// One uncertain number.
pub struct Number {
    /// Catalogue kind of its law.
    pub law: &'static str,
    /// Whose error it has.
    pub names: Names,
    /// Part of its variance that is the same everywhere [-].
    common: f64,
    acts: Acts,
}

/// Where a number acts.
enum Acts {
    /// On a loss in a branch.
    Loss {
        branch: usize,
        /// Which loss and which of its numbers, as its cause counts them.
        position: usize,
        /// In the chains from `from` and from `to`.
        places: [Vec<usize>; 2],
        /// One standard deviation over the loss either way, as the study has it [-].
        scatter: [f64; 2],
        /// By author, when there are several.
        authors: Vec<Author>,
    },
    /// On a header's regain factors.
    Regain { node: usize },
    /// On a tee's run or side coefficient.
    Tee { node: usize, leg: usize },
    /// On whose coefficients a tee has.
    TeeAuthor {
        node: usize,
        authors: Vec<JunctionLaw>,
    },
    /// On the part of the entering jet's head that a leg of a plenum feels.
    Jet { node: usize, leg: usize },
    /// On the conductance of a charge cooler's passage.
    Heat {
        passage: usize,
        branch: usize,
        position: usize,
    },
}

/// A loss, or a part of it, as an author of its law has it, either way; elements in the order of either chain.
struct Author {
    elements: [Vec<Element>; 2],
    scatter: [f64; 2],
}

/// All uncertain numbers of a study's model.
pub fn numbers(study: &Study, model: &Model) -> Vec<Number> {
    let mut numbers = Vec::new();
    for branch in 0..model.branches.len() {
        in_branch(study, model, branch, &mut numbers);
    }
    for node in 0..model.nodes.len() {
        at_node(model, node, &mut numbers);
    }
    for (passage, given) in model.passages.iter().enumerate() {
        let branch = &model.branches[given.branch];
        let before = nth(study, given.branch, given.loss);
        numbers.push(Number {
            law: "cooler",
            names: names("cooler heat", &[&branch.id, &before]),
            common: effectiveness::SCATTER.common,
            acts: Acts::Heat {
                passage,
                branch: given.branch,
                position: Cause::of_heat(given.loss),
            },
        });
    }
    numbers
}

/// Makes a draw what it would be in a world.
pub fn apply(numbers: &[Number], world: &World, redrawn: &mut Redrawn) {
    for number in numbers {
        number.apply(world, redrawn);
    }
}

impl Number {
    /// Its error in a world, in standard deviations.
    pub fn error(&self, world: &World) -> f64 {
        world.error(self.names, self.common)
    }

    /// Whether sensitivities to a cause are sensitivities to it.
    pub fn is(&self, cause: &Cause) -> bool {
        match self.acts {
            Acts::Loss {
                branch, position, ..
            }
            | Acts::Heat {
                branch, position, ..
            } => !cause.at_node && cause.element == branch && cause.position == position,
            Acts::Regain { node } => cause.at_node && cause.element == node,
            Acts::Tee { node, leg } | Acts::Jet { node, leg } => {
                cause.at_node && cause.element == node && cause.position == leg
            }
            Acts::TeeAuthor { .. } => false,
        }
    }

    fn apply(&self, world: &World, redrawn: &mut Redrawn) {
        let author = |authors: usize| (authors > 0).then(|| world.author(self.names, authors));
        self.put(self.error(world), author, redrawn);
    }

    /// Makes a draw what it is with this error in the number, and with one of its authors where there are several.
    fn put(&self, error: f64, author: impl Fn(usize) -> Option<usize>, redrawn: &mut Redrawn) {
        let Redrawn {
            published, model, ..
        } = redrawn;
        match &self.acts {
            Acts::Loss {
                branch,
                places,
                scatter,
                authors,
                ..
            } => {
                let author = author(authors.len()).map(|author| &authors[author]);
                let chains = &mut model.branches[*branch];
                let both = [&mut chains.forward, &mut chains.reversed];
                for (way, chain) in both.into_iter().enumerate() {
                    if let Some(author) = author {
                        put(chain, &places[way], &author.elements[way]);
                    }
                    let scatter = author.map_or(scatter, |author| &author.scatter)[way];
                    // A loss is never negative, and twice and half are equally far off.
                    let scale = (scatter * error).exp();
                    for place in &places[way] {
                        chain.elements[*place].scale = scale;
                    }
                }
            }
            Acts::Regain { node } => {
                let junctions = (
                    &published.nodes[*node].junction,
                    &mut model.nodes[*node].junction,
                );
                if let (Some(Junction::Header(as_published)), Some(Junction::Header(header))) =
                    junctions
                {
                    header.dividing = as_published.dividing + SCATTER_DIVIDING * error;
                    header.combining = as_published.combining + SCATTER_COMBINING * error;
                }
            }
            Acts::Tee { node, leg } => {
                if let Some(Junction::Tee(tee)) = &mut model.nodes[*node].junction {
                    tee.off[*leg] = error;
                }
            }
            Acts::TeeAuthor { node, authors } => {
                if let Some(Junction::Tee(tee)) = &mut model.nodes[*node].junction {
                    tee.law = author(authors.len()).map_or(tee.law, |author| authors[author]);
                }
            }
            Acts::Jet { node, leg } => {
                redrawn.felt[*node][*leg] = PLENUM_JET_SCATTER * error;
            }
            Acts::Heat { passage, .. } => {
                let scatter = effectiveness::SCATTER.relative;
                model.passages[*passage].scale = (scatter * error).exp();
            }
        }
    }
}

fn put(chain: &mut Chain, places: &[usize], elements: &[Element]) {
    for (place, element) in places.iter().zip(elements) {
        chain.elements[*place].element = element.clone();
    }
}

fn names(law: &str, place: &[&str]) -> Names {
    let words: Vec<&str> = [law].into_iter().chain(place.iter().copied()).collect();
    Names {
        law: name(&[law]),
        place: name(&words),
    }
}

/// Which of its kind a loss is in its branch: a place keeps its error where another loss comes before it.
fn nth(study: &Study, branch: usize, loss: usize) -> String {
    let before = study.network.branches.get(branch).map_or(0, |given| {
        let kind = given.losses.get(loss).map(crate::study::Loss::kind);
        let earlier = given.losses.iter().take(loss);
        earlier.filter(|other| Some(other.kind()) == kind).count()
    });
    before.to_string()
}

fn in_branch(study: &Study, model: &Model, branch: usize, numbers: &mut Vec<Number>) {
    let chains = &model.branches[branch];
    let both = [&chains.forward, &chains.reversed];
    let mut seen = Vec::new();
    for origin in &chains.forward.origins {
        if seen.contains(&(origin.loss, origin.part)) {
            continue;
        }
        seen.push((origin.loss, origin.part));
        let given = study.network.branches.get(branch);
        let loss = given.and_then(|given| given.losses.get(origin.loss as usize));
        let authors = loss.map(by_author).unwrap_or_default();
        let authors = authors.iter().map(|loss| {
            let mut pieces = pieces(loss);
            pieces.retain(|piece| piece.part == origin.part);
            let scatter = pieces[0].scatter.map(|scatter| scatter.relative);
            let back = pieces.iter().rev().map(|piece| piece.back.clone());
            let back = back.collect();
            let ahead = pieces.into_iter().map(|piece| piece.ahead).collect();
            Author {
                elements: [ahead, back],
                scatter,
            }
        });
        let before = nth(study, branch, origin.loss as usize);
        let same = |other: &Origin| (other.loss, other.part) == (origin.loss, origin.part);
        numbers.push(Number {
            law: origin.kind,
            names: names(
                origin.kind,
                &[&chains.id, &before, &origin.part.to_string()],
            ),
            common: origin.scatter.common,
            acts: Acts::Loss {
                branch,
                position: Cause::of_loss(origin),
                scatter: both.map(|chain| {
                    let same = chain.origins.iter().find(|other| same(other));
                    same.map_or(0.0, |same| same.scatter.relative)
                }),
                places: both.map(|chain| {
                    let places = 0..chain.origins.len();
                    places
                        .filter(|place| same(&chain.origins[*place]))
                        .collect()
                }),
                authors: authors.collect(),
            },
        });
    }
}

fn at_node(model: &Model, node: usize, numbers: &mut Vec<Number>) {
    let at = &model.nodes[node];
    let mut push = |law: &'static str, what: &str, acts: Acts| {
        numbers.push(Number {
            law,
            names: names(law, &[&at.id, what]),
            common: junction::COMMON,
            acts,
        });
    };
    match &at.junction {
        Some(Junction::Header(_)) => push("header", "regain", Acts::Regain { node }),
        Some(Junction::Tee(tee)) => {
            push("tee", "run", Acts::Tee { node, leg: 0 });
            push("tee", "side", Acts::Tee { node, leg: 1 });
            let geometry = junction::Geometry {
                area_ratio: tee.side_area / tee.area,
                angle: tee.angle,
            };
            let own = junction::outside(tee.law, &geometry).len();
            let authors = authors::JUNCTION.map(|author| {
                let outside = junction::outside(author, &geometry).len() > own;
                if outside { tee.law } else { author }
            });
            let authors = authors.to_vec();
            push("tee", "author", Acts::TeeAuthor { node, authors });
        }
        Some(Junction::Jets(_)) => {
            for (leg, end) in at.legs.iter().enumerate() {
                let branch = &model.branches[end.branch].id;
                push("plenum", branch, Acts::Jet { node, leg });
            }
        }
        None => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answer::Draw;
    use crate::draw::{self, Drawn};
    use crate::gate;
    use crate::model::Purpose;

    /// One standard deviation is taken so often, either way.
    const STEP: f64 = 1e-5;

    fn drawn<'m>(study: &Study, model: &'m Model, draw: Draw) -> Drawn<'m> {
        let operating = draw::operating(study).ok();
        let drawn = draw::drawn(study, model, operating.as_ref(), draw);
        drawn.expect("it is complete").expect("it has an answer")
    }

    /// The air of each cylinder with an error in one number.
    fn flows(study: &Study, draw: Draw, number: &Number, error: f64) -> Vec<f64> {
        let redrawn = Redrawn::new(study, draw).ok().flatten();
        let mut redrawn = redrawn.expect("it has an answer");
        number.put(error, |_| None, &mut redrawn);
        for (node, felt) in redrawn.model.nodes.iter_mut().zip(&redrawn.felt) {
            if let Some(Junction::Jets(jets)) = &mut node.junction {
                for (fraction, felt) in jets.fractions.iter_mut().zip(felt) {
                    *fraction += felt;
                }
            }
        }
        drawn(study, &redrawn.model, draw).cylinder_flow
    }

    /// Our own arithmetic, two ways: what a standard deviation of a number does to the cylinders' air, by the
    /// exact sensitivities and by two answers.
    #[test]
    fn sensitivities_are_differences_of_answers() {
        let examples = [
            include_str!("../../../../examples/v8_lid/network.json"),
            include_str!("../../../../examples/inline_log/network.json"),
            include_str!("../../../../examples/tapered_log/network.json"),
            include_str!("../../../../examples/leaky_lid/network.json"),
            include_str!("../../../../examples/twin_feed/network.json"),
            include_str!("../../../../examples/part_throttle/network.json"),
            include_str!("../../../../examples/blown_v8/network.json"),
        ];
        for text in examples {
            let study = gate::read(text).expect("the example is valid");
            for draw in [
                Draw::Running,
                Draw::CycleMean,
                Draw::BenchOneAtATime,
                Draw::BenchAllOpen,
            ] {
                let model = Model::new(&study, Purpose::of(draw));
                let here = drawn(&study, &model, draw);
                let total: f64 = here.cylinder_flow.iter().sum();
                let numbers = numbers(&study, &model);
                for gradient in &here.gradients.all {
                    let own = numbers.iter().filter(|number| number.is(&gradient.cause));
                    assert_eq!(own.count(), 1, "{} {:?}", study.name, gradient.cause);
                }
                for number in numbers {
                    let mut known = here.gradients.all.iter();
                    let gradient = known.find(|gradient| number.is(&gradient.cause));
                    let more = flows(&study, draw, &number, STEP);
                    let less = flows(&study, draw, &number, -STEP);
                    for (cylinder, (more, less)) in more.iter().zip(less).enumerate() {
                        let difference = (more - less) / (2.0 * STEP);
                        let ours = gradient.map_or(0.0, |gradient| gradient.by[cylinder]);
                        let off = (difference - ours).abs();
                        assert!(
                            off <= 1e-6 * ours.abs() + 1e-8 * total,
                            "{} {draw:?}, {}, cylinder {cylinder}: {difference:e} {ours:e} kg/s",
                            study.name,
                            number.law
                        );
                    }
                }
            }
        }
    }
}
