//! The cycle cut into intervals: who draws when.

use crate::short;

/// One interval of the cycle.
#[derive(Clone, Debug, PartialEq)]
pub struct Interval {
    /// Part of the cycle [-].
    pub weight: f64,
    /// Draw of each cylinder as a combination of the cylinders' mean flows, row by row [-].
    pub draws: Vec<Vec<f64>>,
    /// Part of each cylinder's drawing time that falls into this interval [-].
    pub counts: Vec<f64>,
}

/// Intervals from a firing order evenly spaced over the cycle; `event` is a part of the cycle.
pub fn from_firing_order(cylinders: usize, order: &[usize], event: f64) -> Vec<Interval> {
    let opens = |place: usize| place as f64 / cylinders as f64;
    let mut cuts: Vec<f64> = (0..cylinders)
        .flat_map(|place| [opens(place), (opens(place) + event).fract()])
        .collect();
    short::sort(&mut cuts, |a, b| a < b);
    cuts.dedup_by(|a, b| (*a - *b).abs() < 1e-12);
    let mut intervals = Vec::with_capacity(cuts.len());
    for (position, start) in cuts.iter().enumerate() {
        let end = cuts.get(position + 1).copied().unwrap_or(cuts[0] + 1.0);
        let weight = end - start;
        let middle = 0.5 * (start + end);
        let mut draws = vec![vec![0.0; cylinders]; cylinders];
        let mut counts = vec![0.0; cylinders];
        for (place, cylinder) in order.iter().enumerate() {
            let since = (middle - opens(place)).rem_euclid(1.0);
            if since < event {
                draws[*cylinder][*cylinder] = 1.0 / event;
                counts[*cylinder] = weight / event;
            }
        }
        intervals.push(Interval {
            weight,
            draws,
            counts,
        });
    }
    intervals
}

/// One interval a cylinder when the firing order is not known: while it draws, the others share the
/// rest of the total, if there is any. Where events do not fill the cycle, nobody draws in what is left.
pub fn without_order(cylinders: usize, event: f64) -> Vec<Interval> {
    let fills = cylinders as f64 * event;
    let weight = if fills > 1.0 {
        1.0 / cylinders as f64
    } else {
        event
    };
    let mut intervals: Vec<Interval> = (0..cylinders)
        .map(|drawing| {
            let mut draws = vec![vec![0.0; cylinders]; cylinders];
            draws[drawing][drawing] = 1.0 / event;
            // With more than one event's worth of total left over; equal cylinders decide it once for all.
            if cylinders > 1 && fills > 1.0 {
                let others = (cylinders - 1) as f64;
                let rows = draws.iter_mut().enumerate();
                for (_, row) in rows.filter(|(other, _)| *other != drawing) {
                    row.fill(1.0 / others);
                    row[drawing] = (1.0 - 1.0 / event) / others;
                }
            }
            let mut counts = vec![0.0; cylinders];
            counts[drawing] = 1.0;
            Interval {
                weight,
                draws,
                counts,
            }
        })
        .collect();
    if fills < 1.0 - 1e-12 {
        intervals.push(Interval {
            weight: 1.0 - fills,
            draws: vec![vec![0.0; cylinders]; cylinders],
            counts: vec![0.0; cylinders],
        });
    }
    intervals
}

/// The whole cycle at mean flow.
pub fn mean(cylinders: usize) -> Vec<Interval> {
    let draws = (0..cylinders)
        .map(|cylinder| {
            (0..cylinders)
                .map(|other| if other == cylinder { 1.0 } else { 0.0 })
                .collect()
        })
        .collect();
    vec![Interval {
        weight: 1.0,
        draws,
        counts: vec![1.0; cylinders],
    }]
}
