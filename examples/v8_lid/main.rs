//! A V8 lid fed from above through a core, with two pocket rows and cross windows; invented data.

use evenport::{Outcome, read, solve};

fn main() -> Result<(), String> {
    let study = read(include_str!("network.json")).map_err(|errors| format!("{errors:?}"))?;
    let answer = solve(&study).map_err(|errors| format!("{errors:?}"))?;
    for draw in &answer.draws {
        if let Outcome::Solved(solved) = &draw.outcome {
            println!("{}", solved.sentence);
            for cylinder in &solved.cylinders {
                println!(
                    "  cylinder {}: {:+.2} % of the mean",
                    cylinder.cylinder,
                    100.0 * cylinder.deviation
                );
            }
        }
    }
    Ok(())
}
