//! A boosted plenum that leaks to the outside; invented data.

use evenport::{Outcome, read, solve};

fn main() -> Result<(), String> {
    let study = read(include_str!("network.json")).map_err(|errors| format!("{errors:?}"))?;
    let answer = solve(&study).map_err(|errors| format!("{errors:?}"))?;
    let Some(Outcome::Solved(running)) = answer.draws.first().map(|draw| &draw.outcome) else {
        return Err("no running draw".to_owned());
    };
    println!("{}", running.sentence);
    let operating = running.operating.as_ref().ok_or("no operating point")?;
    for source in &operating.sources {
        println!(
            "  {}: {:.2} kPa absolute, {:.4} kg/s",
            source.node,
            source.pressure / 1e3,
            source.flow
        );
    }
    Ok(())
}
