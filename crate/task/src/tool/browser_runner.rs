//! Runs a test program that was compiled for the browser in one; Cargo starts it as the target's runner.

use std::process::ExitCode;

use wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args;

fn main() -> ExitCode {
    match run_cli_with_args(std::env::args_os()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error:#}");
            ExitCode::FAILURE
        }
    }
}
