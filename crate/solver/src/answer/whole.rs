//! Figures of the whole engine from those of its cylinders.

/// Greatest less least of the cylinders' flows, over their mean [-].
pub fn spread(flows: &[f64]) -> f64 {
    let greatest = flows.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let least = flows.iter().copied().fold(f64::INFINITY, f64::min);
    let mean = flows.iter().sum::<f64>() / flows.len() as f64;
    (greatest - least) / mean
}

/// Mean temperature of the air that enters the cylinders, by flow [K].
pub fn charge_temperature(flows: &[f64], temperatures: impl Iterator<Item = f64>) -> f64 {
    let carried = flows
        .iter()
        .zip(temperatures)
        .map(|(flow, warm)| flow * warm);
    carried.sum::<f64>() / flows.iter().sum::<f64>()
}
