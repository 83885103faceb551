//! A V8 with a blower, a charge core of two passages and a lid in two halves; invented data.

use evenport::{Outcome, read, solve};

fn main() -> Result<(), String> {
    let study = read(include_str!("network.json")).map_err(|errors| format!("{errors:?}"))?;
    let answer = solve(&study).map_err(|errors| format!("{errors:?}"))?;
    let Some(Outcome::Solved(running)) = answer.draws.first().map(|draw| &draw.outcome) else {
        return Err("no running draw".to_owned());
    };
    println!("{}", running.sentence);
    let operating = running.operating.as_ref().ok_or("no operating point")?;
    for blower in &operating.blowers {
        println!(
            "  {}: pressure ratio {:.3}, {:.1} kW to the air",
            blower.branch,
            blower.pressure_ratio,
            blower.power / 1e3
        );
    }
    for cooler in &operating.coolers {
        println!(
            "  {}: {:.1} kW, air from {:.1} to {:.1} K",
            cooler.cooler,
            cooler.heat / 1e3,
            cooler.inlet_temperature,
            cooler.outlet_temperature
        );
    }
    if let Some(mixture) = &running.mixture {
        println!("  {}", mixture.sentence);
    }
    Ok(())
}
