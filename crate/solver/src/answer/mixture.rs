//! What the shares do to the mixture: lean and rich cylinders, the trim that evens them out, who is at risk.

use std::collections::BTreeMap;

use super::verdict::{TIE, listed};
use super::{CylinderAnswer, CylinderMixture, MixtureAnswer};
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
    let (sentence, at_risk) = risk(&mixtures, target, limit, fuel);
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

/// The cylinders most at risk, and why.
fn risk(
    mixtures: &[CylinderMixture],
    target: f64,
    limit: f64,
    fuel: Fuel,
) -> (String, Vec<String>) {
    let hottest = farthest(mixtures, |one| one.warmer).filter(|hottest| hottest.value > HOT);
    let heat = hottest.as_ref().map(|hottest| {
        format!(
            "{} the hottest charge, {} K above the mean",
            named(&hottest.names, "cylinder", "has", "have"),
            rounded(hottest.value, 1)
        )
    });
    let hot = hottest.map(|hottest| hottest.names).unwrap_or_default();
    let with_heat = |sentence: String, at_risk: Vec<String>| {
        let at_risk = if at_risk.is_empty() {
            hot.clone()
        } else {
            at_risk
        };
        match &heat {
            Some(heat) => (format!("{sentence}; {heat}."), at_risk),
            None => (format!("{sentence}."), at_risk),
        }
    };
    if fuel == Fuel::Upstream {
        let sentence = "Fuel that enters before the manifold goes with the air: this estimate does not say how evenly it is mixed in, and no trim by cylinder follows from it".to_owned();
        return with_heat(sentence, Vec::new());
    }
    let Some(leanest) = farthest(mixtures, |one| one.lambda / target - 1.0) else {
        return (String::new(), Vec::new());
    };
    let held = match fuel {
        Fuel::ClosedLoopPerBank => "the bank's mean",
        _ => "the engine's mean",
    };
    let lean = percent(leanest.value);
    if leanest.value <= 0.5 * limit {
        let sentence = format!("No cylinder runs leaner than {held} by more than half the limit");
        return with_heat(sentence, Vec::new());
    }
    if leanest.value <= leanest.doubt {
        let sentence = format!(
            "{} out leanest, {lean} leaner than {held}, but that is within the doubt of {}",
            named(&leanest.names, "Cylinder", "comes", "come"),
            percent(leanest.doubt)
        );
        return with_heat(sentence, Vec::new());
    }
    let sentence = format!(
        "{} most at risk: more air than {held} and the same fuel is a mixture {lean} leaner (give or take {}), lambda {}",
        named(&leanest.names, "Cylinder", "is", "are"),
        percent(leanest.doubt),
        rounded(target * (1.0 + leanest.value), 3)
    );
    with_heat(sentence, leanest.names)
}

/// The cylinders that lie farthest up, all that tie.
struct Farthest {
    names: Vec<String>,
    value: f64,
    /// The smallest doubt of theirs [-].
    doubt: f64,
}

fn farthest(
    mixtures: &[CylinderMixture],
    value: impl Fn(&CylinderMixture) -> f64,
) -> Option<Farthest> {
    let most = mixtures.iter().map(&value).reduce(f64::max)?;
    let mut found = Farthest {
        names: Vec::new(),
        value: most,
        doubt: f64::INFINITY,
    };
    for mixture in mixtures {
        if most - value(mixture) <= TIE * most.abs().max(1.0) {
            found.names.push(mixture.cylinder.clone());
            found.doubt = found.doubt.min(mixture.doubt);
        }
    }
    Some(found)
}

/// "Cylinder 1 is", "Cylinders 1 and 2 are".
fn named(names: &[String], noun: &str, one: &str, more: &str) -> String {
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    match names.as_slice() {
        [only] => format!("{noun} {only} {one}"),
        several => format!("{noun}s {} {more}", listed(several)),
    }
}

fn percent(part: f64) -> String {
    format!("{} %", rounded(100.0 * part, 2))
}
