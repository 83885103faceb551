//! What the shares do to the mixture: lean and rich cylinders, the trim that evens them out, who is at risk.

use std::collections::BTreeMap;

use super::{CylinderAnswer, CylinderMixture, MixtureAnswer, State};
use crate::defaults::STOICHIOMETRIC_RATIO;
use crate::digits::rounded;
use crate::law::mixture::{Fuel, lambdas, trims};
use crate::study::{Engine, FuelSetting};

/// Charge this much hotter than the mean is worth a word [K].
const HOT: f64 = 1.0;

/// The mixture of a running draw's cylinders; `charge` is the mean temperature at the ports [K].
pub fn mixture(
    engine: &Engine,
    cylinders: &[CylinderAnswer],
    limit: f64,
    charge: f64,
) -> MixtureAnswer {
    let air: Vec<f64> = cylinders.iter().map(|cylinder| cylinder.flow).collect();
    let banks = banks(engine);
    let fuel = match engine.fuel.setting {
        FuelSetting::EqualPerPort => Fuel::EqualPerPort,
        FuelSetting::ClosedLoopPerBank => Fuel::ClosedLoopPerBank,
        FuelSetting::Upstream => Fuel::Upstream,
    };
    let target = engine.fuel.lambda.unwrap_or(1.0);
    let stoichiometric = engine
        .fuel
        .stoichiometric_ratio
        .unwrap_or(STOICHIOMETRIC_RATIO);
    let lambdas = lambdas(&air, &banks, fuel, target);
    let trims = trims(&air, &banks, fuel);
    let mixtures: Vec<CylinderMixture> = cylinders
        .iter()
        .zip(&lambdas)
        .enumerate()
        .map(|(place, (cylinder, lambda))| CylinderMixture {
            cylinder: cylinder.cylinder.clone(),
            lambda: *lambda,
            air_fuel_ratio: lambda * stoichiometric,
            doubt: if trims.is_some() { cylinder.doubt } else { 0.0 },
            trim: trims.as_ref().map(|trims| trims[place]),
            temperature: cylinder.temperature,
            warmer: cylinder.temperature - charge,
        })
        .collect();
    let (sentence, at_risk) = risk(&mixtures, cylinders, target, limit, fuel);
    MixtureAnswer {
        setting: engine.fuel.setting,
        lambda: target,
        stoichiometric_ratio: stoichiometric,
        cylinders: mixtures,
        sentence,
        at_risk,
    }
}

/// A number for each cylinder's bank; cylinders that name none stand in one together.
fn banks(engine: &Engine) -> Vec<usize> {
    let mut numbers = BTreeMap::new();
    let cylinders = engine.cylinders.iter();
    cylinders
        .map(|cylinder| {
            let next = numbers.len();
            *numbers.entry(cylinder.bank.as_deref()).or_insert(next)
        })
        .collect()
}

/// The cylinder most at risk, and why.
fn risk(
    mixtures: &[CylinderMixture],
    cylinders: &[CylinderAnswer],
    target: f64,
    limit: f64,
    fuel: Fuel,
) -> (String, Option<String>) {
    let hottest = mixtures
        .iter()
        .max_by(|a, b| a.warmer.total_cmp(&b.warmer))
        .filter(|hottest| hottest.warmer > HOT);
    let heat = hottest.map(|hottest| {
        format!(
            "cylinder {} has the hottest charge, {} K above the mean",
            hottest.cylinder,
            rounded(hottest.warmer, 1)
        )
    });
    if fuel == Fuel::Upstream {
        let sentence = "Fuel that enters before the manifold goes with the air: this estimate does not say how evenly it is mixed in, and no trim by cylinder follows from it".to_owned();
        return with_heat(sentence, None, heat, hottest);
    }
    let leanest = mixtures.iter().max_by(|a, b| a.lambda.total_cmp(&b.lambda));
    let Some(leanest) = leanest else {
        return (String::new(), None);
    };
    let lean = leanest.lambda / target - 1.0;
    let held = match fuel {
        Fuel::ClosedLoopPerBank => "its bank's mean",
        _ => "the engine's mean",
    };
    if lean <= 0.5 * limit {
        let sentence = format!("No cylinder runs leaner than {held} by more than half the limit");
        return with_heat(sentence, None, heat, hottest);
    }
    if lean <= leanest.doubt {
        let sentence = format!(
            "Cylinder {} comes out leanest, {} % leaner than {held}, but that is within its doubt of {} %",
            leanest.cylinder,
            rounded(100.0 * lean, 2),
            rounded(100.0 * leanest.doubt, 2)
        );
        return with_heat(sentence, None, heat, hottest);
    }
    debug_assert!(fuel != Fuel::EqualPerPort || cylinders.iter().any(overfed));
    let sentence = format!(
        "Cylinder {} is most at risk: with more air than {held} and the same fuel it runs {} % lean (give or take {} %), lambda {}",
        leanest.cylinder,
        rounded(100.0 * lean, 2),
        rounded(100.0 * leanest.doubt, 2),
        rounded(leanest.lambda, 3)
    );
    with_heat(sentence, Some(leanest.cylinder.clone()), heat, hottest)
}

fn overfed(cylinder: &CylinderAnswer) -> bool {
    cylinder.state == State::Overfed
}

/// The hottest charge is a risk of its own.
fn with_heat(
    sentence: String,
    at_risk: Option<String>,
    heat: Option<String>,
    hottest: Option<&CylinderMixture>,
) -> (String, Option<String>) {
    match heat {
        Some(heat) => {
            let at_risk = at_risk.or_else(|| hottest.map(|hottest| hottest.cylinder.clone()));
            (format!("{sentence}; {heat}."), at_risk)
        }
        None => (format!("{sentence}."), at_risk),
    }
}
