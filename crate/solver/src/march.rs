//! Air on its way through a chain of elements, one element at a time, so that several branches can be
//! marched side by side.

use crate::branch::{Arriving, Chain, Fall, exit};

/// Air on its way through a chain.
#[derive(Clone, Copy, Debug)]
pub struct March<'c> {
    chain: &'c Chain,
    ends_in_chamber: bool,
    arrived: Arriving,
    /// What is left of it so far.
    here: Arriving,
    total: Fall,
    choked: bool,
}

impl<'c> March<'c> {
    /// Air before the first element.
    pub fn new(chain: &'c Chain, arrived: Arriving, ends_in_chamber: bool) -> Self {
        Self {
            chain,
            ends_in_chamber,
            arrived,
            here: arrived,
            total: Fall::default(),
            choked: false,
        }
    }

    /// What the elements so far take; nothing when one of them cannot carry the flow.
    pub fn fall(&self) -> Option<Fall> {
        (!self.choked).then_some(self.total)
    }

    /// Passes the element at `position`, the end section being the last one; beyond it nothing is left.
    #[inline(always)]
    pub fn pass(&mut self, position: usize) -> Option<Fall> {
        if self.chain.passage.is_some() {
            return self.pass_cooled(position);
        }
        let part = match self.chain.elements.get(position) {
            Some(placed) => placed.fall(self.here),
            None if self.ends_in_chamber && position == self.chain.elements.len() => {
                exit(self.here, self.chain.end_area)
            }
            None => return None,
        };
        let Some(part) = part else {
            self.choked = true;
            return None;
        };
        self.total.add(&part);
        self.here.pressure = self.arrived.pressure - self.total.fall;
        Some(part)
    }

    /// As `pass`, in a chain with a passage of a charge cooler: what lies behind it sees other air.
    #[inline(never)]
    fn pass_cooled(&mut self, position: usize) -> Option<Fall> {
        let passage = self.chain.passage.unwrap_or(usize::MAX);
        let part = match self.chain.elements.get(position) {
            Some(placed) if position == passage => placed.cooled_fall(self.here),
            Some(placed) => placed.fall(self.here),
            None if self.ends_in_chamber && position == self.chain.elements.len() => {
                exit(self.here, self.chain.end_area)
            }
            None => return None,
        };
        let Some(mut part) = part else {
            self.choked = true;
            return None;
        };
        if position > passage {
            part.by_leaving = std::mem::take(&mut part.by_temperature);
        }
        self.total.add(&part);
        self.here.pressure = self.arrived.pressure - self.total.fall;
        if position == passage {
            self.here = self.here.cooled();
        }
        Some(part)
    }

    /// Takes all to their ends. Element by element rather than branch by branch: what a branch does next
    /// waits for what it did last, what other branches do meanwhile does not.
    pub fn together(marches: &mut [Self]) {
        let longest = marches.iter().map(|march| march.chain.elements.len()).max();
        for position in 0..=longest.unwrap_or(0) {
            for march in &mut *marches {
                if !march.choked {
                    march.pass(position);
                }
            }
        }
    }
}
