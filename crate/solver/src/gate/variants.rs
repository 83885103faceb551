//! Variants: each has a name of its own, its differences fit the base, and what comes of them is a network
//! like any other.

use std::collections::BTreeSet;

use super::{LONGEST_NAME, MOST_ERRORS, meaning};
use crate::error::{StudyError, StudyErrorKind as Kind};
use crate::study::{Branch, Network, Node, Study, Variant};

/// More versions than anybody compares; every one of them is checked like a study.
const MOST: usize = 64;
/// Rows and losses of all variants together: each is checked in every variant, and a base of 2,000 rows is
/// not compared in so many.
const MOST_ROWS: usize = 40_000;

/// Everything wrong with the variants; `base` is what is wrong with the study without them, which is not
/// told again for each.
pub fn check(study: &Study, base: &[StudyError]) -> Vec<StudyError> {
    let count = study.variants.len();
    if count > MOST {
        let message = format!("has {count} variants, at most {MOST} are taken");
        return vec![error(Kind::TooMany, "", "variants", message)];
    }
    let own = (study.variants.iter()).map(|own| size(&own.nodes, &own.branches));
    let rows = count * size(&study.network.nodes, &study.network.branches) + own.sum::<usize>();
    if rows > MOST_ROWS {
        let message = format!(
            "have {rows} rows and losses together, at most {MOST_ROWS} are taken; leave out variants or rows"
        );
        return vec![error(Kind::TooMany, "", "variants", message)];
    }
    let mut errors = Vec::new();
    let mut names = BTreeSet::new();
    let known = ids(&study.network);
    for (place, variant) in study.variants.iter().enumerate() {
        if base.len() + errors.len() >= MOST_ERRORS {
            break;
        }
        let name = variant.name.trim();
        let mut own = Vec::new();
        let element = format!("variant {}", place + 1);
        if name.is_empty() {
            own.push(error(
                Kind::Missing,
                &element,
                "name",
                "is empty".to_owned(),
            ));
        } else if !names.insert(name) {
            let message = "two variants have this name; give one of them another".to_owned();
            own.push(error(Kind::DuplicateId, &element, "name", message));
        }
        let version = study.version(place);
        differences(&element, variant, &known, &version.network, &mut own);
        let told = meaning::check(&version).into_iter();
        own.extend(told.filter(|error| !base.contains(error)));
        for error in &mut own {
            name_variant(error, variant.name.as_str(), &element);
        }
        errors.extend(own);
    }
    errors
}

/// How many rows and losses there are to check.
fn size(nodes: &[Node], branches: &[Branch]) -> usize {
    let losses = branches.iter().map(|branch| branch.losses.len());
    nodes.len() + branches.len() + losses.sum::<usize>()
}

/// Says in an error which variant it is of.
pub fn name_variant(error: &mut StudyError, name: &str, element: &str) {
    let name = if name.trim().is_empty() || name.len() > LONGEST_NAME {
        element
    } else {
        name
    };
    error.message.insert_str(0, &format!("in variant {name}: "));
}

/// What a variant leaves out is among the ids of the base, is left out once and not given too; its order names its rows.
fn differences(
    element: &str,
    variant: &Variant,
    base: &BTreeSet<&str>,
    version: &Network,
    errors: &mut Vec<StudyError>,
) {
    let own: BTreeSet<&str> = {
        let nodes = variant.nodes.iter().map(|node| node.id.as_str());
        let branches = variant.branches.iter().map(|branch| branch.id.as_str());
        nodes.chain(branches).collect()
    };
    let mut say = |kind: Kind, list: &str, place: usize, message: String| {
        errors.push(error(kind, element, &format!("{list}[{place}]"), message));
    };
    let mut seen = BTreeSet::new();
    for (place, id) in variant.removed.iter().enumerate() {
        if !seen.insert(id.as_str()) {
            let message = format!("{id} is left out twice; name it once");
            say(Kind::DuplicateId, "removed", place, message);
        } else if !base.contains(id.as_str()) {
            let message = format!("the base has no row called {id}, so it cannot be left out");
            say(Kind::UnknownId, "removed", place, message);
        } else if own.contains(id.as_str()) {
            let message = format!("{id} is left out and has a row here too; keep one of the two");
            say(Kind::Contradiction, "removed", place, message);
        }
    }
    if variant.order.is_empty() {
        return;
    }
    let known = ids(version);
    let mut seen = BTreeSet::new();
    for (place, id) in variant.order.iter().enumerate() {
        if !seen.insert(id.as_str()) {
            let message = format!("{id} stands in the order twice; name it once");
            say(Kind::DuplicateId, "order", place, message);
        } else if !known.contains(id.as_str()) {
            let message = format!("this variant has no row called {id}");
            say(Kind::UnknownId, "order", place, message);
        }
    }
}

fn ids(network: &Network) -> BTreeSet<&str> {
    let nodes = network.nodes.iter().map(|node| node.id.as_str());
    let branches = network.branches.iter().map(|branch| branch.id.as_str());
    nodes.chain(branches).collect()
}

fn error(kind: Kind, element: &str, field: &str, message: String) -> StudyError {
    StudyError {
        kind,
        element: element.to_owned(),
        field: field.to_owned(),
        message,
    }
}
