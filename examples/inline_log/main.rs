//! An end-fed log of constant section feeds its ports unevenly: static pressure rises along it.

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
