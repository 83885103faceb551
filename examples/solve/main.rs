//! Prints the answer of any study: `cargo run --release --example solve -- FILE [--json]
//! [--variant NAME]`.
//!
//! CSV goes to standard output, one row a cylinder and draw, then the certificates. A study that is
//! wrong ends with exit status 2 and the list of what is wrong on standard error.

use std::fmt::Write;
use std::io::Write as _;
use std::process::ExitCode;

use evenport::{Answer, Outcome, StudyError, read, solve};

fn main() -> ExitCode {
    let mut json = false;
    let mut file = None;
    let mut variant = None;
    let mut arguments = std::env::args().skip(1);
    while let Some(argument) = arguments.next() {
        match argument.as_str() {
            "--json" => json = true,
            "--variant" => variant = arguments.next(),
            _ => file = Some(argument),
        }
    }
    let Some(file) = file else {
        eprintln!("usage: solve FILE [--json] [--variant NAME]");
        return ExitCode::from(2);
    };
    let text = match std::fs::read_to_string(&file) {
        Ok(text) => text,
        Err(error) => {
            eprintln!("{file}: {error}");
            return ExitCode::from(2);
        }
    };
    let mut study = match read(&text) {
        Ok(study) => study,
        Err(errors) => return complain(&errors),
    };
    if let Some(name) = variant {
        let Some(place) = study.variants.iter().position(|each| each.name == name) else {
            eprintln!("{file}: no variant is called {name}");
            return ExitCode::from(2);
        };
        study = study.version(place);
    }
    let answer = solve(&study);
    let text = match answer {
        Ok(answer) if json => serde_json::to_string_pretty(&answer).map_err(|e| e.to_string()),
        Ok(answer) => csv(&answer).map_err(|e| e.to_string()),
        Err(errors) => return complain(&errors),
    };
    match text {
        // A reader that has seen enough and closes the pipe is no error.
        Ok(text) => drop(writeln!(std::io::stdout(), "{}", text.trim_end())),
        Err(error) => {
            eprintln!("{error}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

fn complain(errors: &[StudyError]) -> ExitCode {
    for error in errors {
        eprintln!("{error}");
    }
    ExitCode::from(2)
}

fn csv(answer: &Answer) -> Result<String, std::fmt::Error> {
    let mut out = String::new();
    writeln!(
        out,
        "draw,cylinder,share [-],deviation [%],doubt [%],state,flow [kg/s],port pressure [Pa],port temperature [K]"
    )?;
    for draw in &answer.draws {
        match &draw.outcome {
            Outcome::Solved(solved) => {
                for c in &solved.cylinders {
                    let (deviation, doubt) = (100.0 * c.deviation, 100.0 * c.doubt);
                    writeln!(
                        out,
                        "{:?},{},{:.6},{deviation:.3},{doubt:.3},{:?},{:.6},{:.1},{:.2}",
                        draw.draw, c.cylinder, c.share, c.state, c.flow, c.pressure, c.temperature
                    )?;
                }
            }
            Outcome::Refused(refusal) => {
                writeln!(out, "# {:?}: {}", draw.draw, refusal.sentence)?;
            }
        }
    }
    for draw in &answer.draws {
        if let Outcome::Solved(solved) = &draw.outcome {
            let c = &solved.certificate;
            writeln!(out, "# {:?}: {}", draw.draw, solved.sentence)?;
            writeln!(
                out,
                "# {:?}: imbalance {:.1e}, closure {:.1e}",
                draw.draw, c.imbalance, c.closure
            )?;
        }
    }
    Ok(out)
}
