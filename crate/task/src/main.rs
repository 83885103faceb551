//! The repository's commands: `cargo task <verb>`, one file per verb.

mod bench;
mod build;
mod command;
mod evidence;
mod fuzz;
mod generate;
mod laws;
mod serve;
mod setup;
mod test;
mod tidy;

use std::env;
use std::process::ExitCode;

const USAGE: &str = "cargo task <verb>

  setup      install what is missing: the wasm target, the page's packages, a browser and its driver
  build      write the page into www/dist, a folder that any static host can serve
  serve      build, then serve the page on this machine only; --port N, --as-built to skip the build
  test       run every check there is; continuous integration runs this and nothing else
  fuzz       give the gate, links, pasted tables and readings whatever may come, 60 s in all; --seconds N,
             --inputs N of each, --seed N, --surface gate, link, paste, readings, or solver
  bench      measure how long the solver and the page take
  evidence   print what the published and the whole-network checks compare, and how close they come
  generate   write www/src/solver/types.ts and the study's JSON Schema; --check only compares";

fn main() -> ExitCode {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let outcome = match arguments.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        ["setup"] => setup::everything(),
        ["build"] => build::page(),
        ["serve", ref options @ ..] => serve::page(options),
        ["test"] => test::everything(),
        ["fuzz", ref options @ ..] => fuzz::page(options),
        ["bench"] => bench::everything(),
        ["evidence"] => evidence::tables(),
        ["generate"] => generate::write(),
        ["generate", "--check"] => generate::check(),
        _ => Err(USAGE.to_owned()),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(line) => {
            eprintln!("{line}");
            ExitCode::FAILURE
        }
    }
}
