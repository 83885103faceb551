//! Prints the answer of any study: `cargo run --release --example solve -- FILE [--json]`.
//!
//! CSV goes to standard output, one row a cylinder and draw, then the certificates. A study that is
//! wrong ends with exit status 2 and the list of what is wrong on standard error.

use std::process::ExitCode;

use evenport::{Answer, Outcome, StudyError, read, solve};

fn main() -> ExitCode {
    let mut json = false;
    let mut file = None;
    for argument in std::env::args().skip(1) {
        match argument.as_str() {
            "--json" => json = true,
            _ => file = Some(argument),
        }
    }
    let Some(file) = file else {
        eprintln!("usage: solve FILE [--json]");
        return ExitCode::from(2);
    };
    let answer = match std::fs::read_to_string(&file) {
        Ok(text) => read(&text).and_then(|study| solve(&study)),
        Err(error) => {
            eprintln!("{file}: {error}");
            return ExitCode::from(2);
        }
    };
    match answer {
        Ok(answer) if json => match serde_json::to_string_pretty(&answer) {
            Ok(text) => println!("{text}"),
            Err(error) => eprintln!("{error}"),
        },
        Ok(answer) => print_csv(&answer),
        Err(errors) => return complain(&errors),
    }
    ExitCode::SUCCESS
}

fn complain(errors: &[StudyError]) -> ExitCode {
    for error in errors {
        eprintln!("{error}");
    }
    ExitCode::from(2)
}

fn print_csv(answer: &Answer) {
    println!(
        "draw,cylinder,share [-],deviation [%],doubt [%],state,flow [kg/s],port pressure [Pa],port temperature [K]"
    );
    for draw in &answer.draws {
        match &draw.outcome {
            Outcome::Solved(solved) => {
                for c in &solved.cylinders {
                    let (deviation, doubt) = (100.0 * c.deviation, 100.0 * c.doubt);
                    println!(
                        "{:?},{},{:.6},{deviation:.3},{doubt:.3},{:?},{:.6},{:.1},{:.2}",
                        draw.draw, c.cylinder, c.share, c.state, c.flow, c.pressure, c.temperature
                    );
                }
            }
            Outcome::Refused(refusal) => println!("# {:?}: {}", draw.draw, refusal.sentence),
        }
    }
    for draw in &answer.draws {
        if let Outcome::Solved(solved) = &draw.outcome {
            let c = &solved.certificate;
            println!("# {:?}: {}", draw.draw, solved.sentence);
            println!(
                "# {:?}: imbalance {:.1e}, closure {:.1e}",
                draw.draw, c.imbalance, c.closure
            );
        }
    }
}
