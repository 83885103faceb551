//! Every uncertain number of a model, and what a world makes of it.

use super::authors::{self, by_author};
use super::world::{Names, World, name};
use crate::branch::{Chain, Element};
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
        /// Positions in the chain from `from`.
        ahead: Vec<usize>,
        /// Positions in the chain from `to`.
        back: Vec<usize>,
        /// One standard deviation over the loss, as the study has it [-].
        scatter: f64,
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
    Heat { passage: usize, position: usize },
}

/// A loss, or a part of it, as an author of its law has it; elements in the order of either chain.
struct Author {
    ahead: Vec<Element>,
    back: Vec<Element>,
    scatter: f64,
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
            } => !cause.at_node && cause.element == branch && cause.position == position,
            Acts::Regain { node } => cause.at_node && cause.element == node,
            Acts::Tee { node, leg } | Acts::Jet { node, leg } => {
                cause.at_node && cause.element == node && cause.position == leg
            }
            Acts::Heat { position, .. } => !cause.at_node && cause.position == position,
            Acts::TeeAuthor { .. } => false,
        }
    }

    fn apply(&self, world: &World, redrawn: &mut Redrawn) {
        let Redrawn {
            published, model, ..
        } = redrawn;
        match &self.acts {
            Acts::Loss {
                branch,
                ahead,
                back,
                scatter,
                authors,
                ..
            } => {
                let chains = &mut model.branches[*branch];
                let mut scatter = *scatter;
                if !authors.is_empty() {
                    let author = &authors[world.author(self.names, authors.len())];
                    scatter = author.scatter;
                    put(&mut chains.forward, ahead, &author.ahead);
                    put(&mut chains.reversed, back, &author.back);
                }
                // A loss is never negative, and twice and half are equally far off.
                let scale = (scatter * self.error(world)).exp();
                let both = [(&mut chains.forward, ahead), (&mut chains.reversed, back)];
                for (chain, places) in both {
                    for place in places {
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
                    let error = self.error(world);
                    header.dividing = as_published.dividing + SCATTER_DIVIDING * error;
                    header.combining = as_published.combining + SCATTER_COMBINING * error;
                }
            }
            Acts::Tee { node, leg } => {
                if let Some(Junction::Tee(tee)) = &mut model.nodes[*node].junction {
                    tee.off[*leg] = self.error(world);
                }
            }
            Acts::TeeAuthor { node, authors } => {
                if let Some(Junction::Tee(tee)) = &mut model.nodes[*node].junction {
                    tee.law = authors[world.author(self.names, authors.len())];
                }
            }
            Acts::Jet { node, leg } => {
                redrawn.felt[*node][*leg] = PLENUM_JET_SCATTER * self.error(world);
            }
            Acts::Heat { passage, .. } => {
                let scatter = effectiveness::SCATTER.relative;
                model.passages[*passage].scale = (scatter * self.error(world)).exp();
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
    let places = |chain: &Chain, loss: u32, part: u32| -> Vec<usize> {
        let origins = chain.origins.iter().enumerate();
        origins
            .filter(|(_, origin)| origin.loss == loss && origin.part == part)
            .map(|(place, _)| place)
            .collect()
    };
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
            let back = pieces.iter().rev().map(|piece| piece.back.clone());
            Author {
                back: back.collect(),
                scatter: pieces[0].scatter.relative,
                ahead: pieces.into_iter().map(|piece| piece.ahead).collect(),
            }
        });
        let before = nth(study, branch, origin.loss as usize);
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
                ahead: places(&chains.forward, origin.loss, origin.part),
                back: places(&chains.reversed, origin.loss, origin.part),
                scatter: origin.scatter.relative,
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
