//! Writes the page of all laws: every law's own file, put in order by the kinds of the catalogue.
//!
//! Arguments: the repository's folder, the page to write. The checks against others' numbers come on standard input, as
//! `cargo task evidence` prints them.

mod constants;
mod evidence;
mod law;
mod page;
mod values;
mod write;

use std::path::Path;
use std::process::ExitCode;
use std::{env, fs, io};

fn main() -> ExitCode {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let [root, page] = arguments.as_slice() else {
        eprintln!("usage: evenport-laws <repository> <page> < evidence");
        return ExitCode::FAILURE;
    };
    let written = io::read_to_string(io::stdin())
        .map_err(|error| error.to_string())
        .and_then(|evidence| {
            let laws = law::all(&Path::new(root).join("crate/solver/src/law"))?;
            let text = page::page(&laws, &evidence::checks(&evidence)?)?;
            fs::write(page, text).map_err(|error| format!("{page}: {error}"))
        });
    match written {
        Ok(()) => ExitCode::SUCCESS,
        Err(line) => {
            eprintln!("{line}");
            ExitCode::FAILURE
        }
    }
}
