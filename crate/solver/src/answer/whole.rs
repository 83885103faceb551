//! Figures of the whole engine from those of its cylinders.

/// Each cylinder's deviation from the mean of the flows [-].
pub fn deviations(flows: &[f64]) -> Vec<f64> {
    let mean = mean(flows);
    flows.iter().map(|flow| flow / mean - 1.0).collect()
}

/// Change of each deviation with the flows' changes, of which there may be more than flows.
pub fn deviations_by(flows: &[f64], by: &[f64]) -> impl Iterator<Item = f64> {
    let (mean_flow, mean_by) = (mean(flows), mean(&by[..flows.len()]));
    let both = flows.iter().zip(by);
    both.map(move |(flow, by)| (by - flow / mean_flow * mean_by) / mean_flow)
}

/// Greatest less least of the cylinders' flows, over their mean [-].
pub fn spread(flows: &[f64]) -> f64 {
    range(flows) / mean(flows)
}

/// Greatest less least.
pub fn range(figures: &[f64]) -> f64 {
    let greatest = figures.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let least = figures.iter().copied().fold(f64::INFINITY, f64::min);
    greatest - least
}

fn mean(figures: &[f64]) -> f64 {
    figures.iter().sum::<f64>() / figures.len() as f64
}

/// Mean temperature of the air that enters the cylinders, by flow [K].
pub fn charge_temperature(flows: &[f64], temperatures: impl Iterator<Item = f64>) -> f64 {
    let carried = flows
        .iter()
        .zip(temperatures)
        .map(|(flow, warm)| flow * warm);
    carried.sum::<f64>() / flows.iter().sum::<f64>()
}
