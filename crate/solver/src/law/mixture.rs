//! Mixture by cylinder from the air each draws and how its fuel is set.
//!
//! # Equation
//! Equal fuel per port: lambda_i = lambda m_i/mean(m). Closed loop per bank: the same with the mean of its bank. Fuel
//! upstream of the manifold goes with the air: lambda_i = lambda. Trim of the fuel: lambda_i/lambda - 1.
//!
//! # Symbols
//! | symbol | field | meaning | unit |
//! | --- | --- | --- | --- |
//! | m_i | `air` | air of each cylinder over a cycle | kg/s, any one unit |
//! | - | `banks` | number of each cylinder's bank | - |
//! | lambda | `target` | air over stoichiometric air of the mixed exhaust | - |
//! | lambda_i | result | of each cylinder | - |
//!
//! # Source
//! Mass balance.
//!
//! # Range of validity
//! Any air above 0.
//!
//! # Limits
//! Every injector gives the same fuel at the same signal. Fuel upstream is taken as evenly mixed and dry; wall films
//! and droplets that miss a turn are left out. Air that passes through while both valves are open counts as trapped.
//! The overfed cylinder is the lean one, and its trim adds fuel.

/// How fuel is given to the cylinders.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fuel {
    /// The same to each port; the mixed exhaust of all meets the target.
    EqualPerPort,
    /// The same to each port of a bank; each bank's exhaust meets the target.
    ClosedLoopPerBank,
    /// Into the air before the manifold.
    Upstream,
}

/// Lambda of each cylinder [-].
pub fn lambdas(air: &[f64], banks: &[usize], fuel: Fuel, target: f64) -> Vec<f64> {
    relative_air(air, banks, fuel)
        .into_iter()
        .map(|part| target * part)
        .collect()
}

/// Relative change of each cylinder's fuel that brings it to the target [-], or nothing where no injector of its
/// own could make it.
pub fn trims(air: &[f64], banks: &[usize], fuel: Fuel) -> Option<Vec<f64>> {
    (fuel != Fuel::Upstream).then(|| {
        relative_air(air, banks, fuel)
            .into_iter()
            .map(|part| part - 1.0)
            .collect()
    })
}

/// Air of each cylinder over the mean of those that share its fuel signal; 1 while none of them draws.
fn relative_air(air: &[f64], banks: &[usize], fuel: Fuel) -> Vec<f64> {
    let shares_signal = |one: usize, other: usize| match fuel {
        Fuel::EqualPerPort => true,
        Fuel::ClosedLoopPerBank => banks[one] == banks[other],
        Fuel::Upstream => one == other,
    };
    (0..air.len())
        .map(|one| {
            let sharing = || (0..air.len()).filter(|&other| shares_signal(one, other));
            let all: f64 = sharing().map(|other| air[other]).sum();
            if all > 0.0 {
                air[one] * sharing().count() as f64 / all
            } else {
                1.0
            }
        })
        .collect()
}
