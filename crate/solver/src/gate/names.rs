//! Ids that stand twice and ends that lead nowhere: told whatever else is wrong with the rows.

use std::collections::BTreeMap;

use serde_json::Value;

use super::{MOST_ERRORS, Object, value};
use crate::error::{StudyError, StudyErrorKind as Kind};

/// A branch's id and the ids of its ends, as far as they can be read.
pub struct Ends<'s> {
    /// Its own id, or what stands for it.
    pub id: &'s str,
    /// The node at its first end.
    pub from: Option<&'s str>,
    /// The node at its other end.
    pub to: Option<&'s str>,
}

/// Everything wrong with the names of a network: ids of nodes, and branches.
pub fn check(nodes: &[&str], branches: &[Ends]) -> Vec<StudyError> {
    let mut errors = Vec::new();
    let mut say = |kind: Kind, element: &str, field: &str, message: String| {
        if errors.len() >= MOST_ERRORS {
            return;
        }
        errors.push(StudyError {
            kind,
            element: element.to_owned(),
            field: field.to_owned(),
            message,
        });
    };
    let twice = || "two rows have this id; give one of them another".to_owned();
    let mut known = BTreeMap::new();
    for (position, id) in nodes.iter().enumerate() {
        if known.insert(*id, position).is_some() {
            say(Kind::DuplicateId, id, "id", twice());
        }
    }
    let mut seen = BTreeMap::new();
    for (position, branch) in branches.iter().enumerate() {
        if known.contains_key(branch.id) || seen.insert(branch.id, position).is_some() {
            say(Kind::DuplicateId, branch.id, "id", twice());
        }
        for (field, end) in [("from", branch.from), ("to", branch.to)] {
            if let Some(end) = end.filter(|end| !known.contains_key(end)) {
                let message = format!("no node is called {end}");
                say(Kind::UnknownId, branch.id, field, message);
            }
        }
    }
    errors
}

/// The same for a document whose rows may be wrong in other ways; what cannot be read is passed over.
pub fn check_document(study: &Object) -> Vec<StudyError> {
    fn text<'v>(row: &'v Value, field: &str) -> Option<&'v str> {
        value(row.as_object()?, field)?.as_str()
    }
    let rows = |field: &str| -> &[Value] {
        let network = value(study, "network").and_then(Value::as_object);
        let rows = network.and_then(|network| value(network, field));
        rows.and_then(Value::as_array).map_or(&[], Vec::as_slice)
    };
    let nodes = rows("nodes").iter().filter_map(|node| text(node, "id"));
    let branches = rows("branches").iter().filter_map(|branch| {
        Some(Ends {
            id: text(branch, "id")?,
            from: text(branch, "from"),
            to: text(branch, "to"),
        })
    });
    check(&nodes.collect::<Vec<_>>(), &branches.collect::<Vec<_>>())
}
