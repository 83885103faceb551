//! Writes the JavaScript module and the type declarations around the compiled solver.
//!
//! Arguments: the compiled solver, the folder to write into.

use std::path::PathBuf;
use std::process::ExitCode;

use wasm_bindgen_cli_support::Bindgen;

fn main() -> ExitCode {
    let mut arguments = std::env::args_os().skip(1).map(PathBuf::from);
    let (Some(input), Some(folder), None) = (arguments.next(), arguments.next(), arguments.next())
    else {
        eprintln!("usage: evenport-bundle <compiled solver> <folder>");
        return ExitCode::FAILURE;
    };
    let mut bindgen = Bindgen::new();
    bindgen.input_path(input).typescript(true);
    let written = bindgen.web(true).and_then(|bindgen| {
        // The worker passes the address itself; the default one makes Vite bundle the solver twice.
        bindgen.omit_default_module_path(true).generate(folder)
    });
    match written {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error:#}");
            ExitCode::FAILURE
        }
    }
}
