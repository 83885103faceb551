//! A variant applied to its base: the study of that version alone.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::{Branch, Network, Node, Study, Variant};

/// A row of the network, known by its id.
trait Row: Clone {
    fn id(&self) -> &str;
}

impl Row for Node {
    fn id(&self) -> &str {
        &self.id
    }
}

impl Row for Branch {
    fn id(&self) -> &str {
        &self.id
    }
}

impl Study {
    /// The study of one version by itself, without variants: the variant in this place, or the base where
    /// there is none.
    #[must_use]
    pub fn version(&self, variant: usize) -> Self {
        let network = match self.variants.get(variant) {
            Some(variant) => applied(&self.network, variant),
            None => self.network.clone(),
        };
        Self {
            network,
            variants: Vec::new(),
            format: self.format.clone(),
            version: self.version,
            name: self.name.clone(),
            notes: self.notes.clone(),
            engine: self.engine.clone(),
            settings: self.settings.clone(),
            coolers: self.coolers.clone(),
        }
    }
}

fn applied(base: &Network, variant: &Variant) -> Network {
    let removed: BTreeSet<&str> = variant.removed.iter().map(String::as_str).collect();
    let mut places: BTreeMap<&str, VecDeque<usize>> = BTreeMap::new();
    for (place, id) in variant.order.iter().enumerate() {
        places.entry(id).or_default().push_back(place);
    }
    Network {
        nodes: rows(&base.nodes, &variant.nodes, &removed, &mut places),
        branches: rows(&base.branches, &variant.branches, &removed, &mut places),
    }
}

/// The base's rows in their order, each in the variant's form where it has one, then the rows that join;
/// all of them in the variant's order where it tells one. Of rows that wrongly share an id the first takes
/// the place of the first.
fn rows<'v, T: Row>(
    base: &[T],
    own: &'v [T],
    removed: &BTreeSet<&str>,
    places: &mut BTreeMap<&'v str, VecDeque<usize>>,
) -> Vec<T> {
    let mut forms: BTreeMap<&str, VecDeque<usize>> = BTreeMap::new();
    for (place, row) in own.iter().enumerate() {
        forms.entry(row.id()).or_default().push_back(place);
    }
    let mut rows = Vec::with_capacity(base.len() + own.len());
    for row in base.iter().filter(|row| !removed.contains(row.id())) {
        let form = forms.get_mut(row.id()).and_then(VecDeque::pop_front);
        rows.push(form.map_or(row, |place| &own[place]));
    }
    let joined: BTreeSet<usize> = forms.into_values().flatten().collect();
    rows.extend(joined.into_iter().map(|place| &own[place]));
    let (mut placed, mut unplaced) = (BTreeMap::new(), Vec::new());
    for row in rows {
        match places.get_mut(row.id()).and_then(VecDeque::pop_front) {
            Some(place) => drop(placed.insert(place, row)),
            None => unplaced.push(row),
        }
    }
    placed.into_values().chain(unplaced).cloned().collect()
}
