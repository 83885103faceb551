//! `cargo task fuzz`: whatever may come is given to the gate, the link decoder, pasted tables and readings.
//!
//! The Rust side runs under libFuzzer, which follows what the compiled code does; the page's side under
//! fast-check, which changes the corpus at random. Two surfaces run side by side.

use std::ffi::OsStr;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Mutex;
use std::thread;
use std::time::{SystemTime, UNIX_EPOCH};

use crate::command::{Also, Outcome, cargo, npm, output, root, run, target};
use crate::{build, setup};

/// What is fuzzed when no surface is named. The solver behind the gate is a fifth one, on request.
const SURFACES: [&str; 4] = ["gate", "link", "paste", "readings"];
const SOLVER: &str = "solver";
/// Surfaces that run at a time; continuous integration has two processors.
const LANES: usize = 2;
/// Longest input that libFuzzer makes: a study of a few branches [bytes].
const LONGEST: &str = "-max_len=8192";

/// What makes a stable compiler count what is run and what is compared, as libFuzzer wants it.
const COVERAGE: [&str; 7] = [
    "-Cpasses=sancov-module",
    "-Cllvm-args=-sanitizer-coverage-level=4",
    "-Cllvm-args=-sanitizer-coverage-inline-8bit-counters",
    "-Cllvm-args=-sanitizer-coverage-pc-table",
    "-Cllvm-args=-sanitizer-coverage-trace-compares",
    "-Cllvm-args=-simplifycfg-branch-fold-threshold=0",
    "-Cdebug-assertions",
];

/// How long, from which seed, and what.
struct Plan {
    /// Of all surfaces together [s]; as long as the inputs last when it is none.
    seconds: Option<u64>,
    /// Of each surface.
    inputs: Option<u64>,
    seed: u32,
    surfaces: Vec<String>,
}

/// Fuzzes as the options say.
pub fn page(options: &[&str]) -> Outcome {
    let plan = read(options)?;
    setup::for_fuzzing()?;
    if plan.surfaces.iter().any(|name| !is_rust(name)) {
        build::solver()?;
    }
    surfaces(&plan)
}

/// Whether a surface is one of the solver's, not of the page's.
fn is_rust(name: &str) -> bool {
    name == "gate" || name == SOLVER
}

/// Fuzzes for so many seconds in all, everything else being built. From one seed: what has passed passes again, and
/// other inputs are looked for by the command of its own.
pub fn shortly(seconds: u64) -> Outcome {
    let seconds = seconds.to_string();
    surfaces(&read(&["--seconds", &seconds, "--seed", "1"])?)
}

fn read(options: &[&str]) -> Result<Plan, String> {
    let since = SystemTime::now().duration_since(UNIX_EPOCH);
    let mut plan = Plan {
        seconds: None,
        inputs: None,
        seed: since.map_or(1, |time| time.subsec_nanos()),
        surfaces: SURFACES.map(str::to_owned).to_vec(),
    };
    for pair in options.chunks(2) {
        let &[name, value] = pair else {
            return Err(format!("{} wants a value behind it", pair[0]));
        };
        let number = || {
            let number = value.parse::<u64>().ok().filter(|number| *number > 0);
            number.ok_or(format!("{name} wants a whole number, not {value}"))
        };
        match name {
            "--seconds" => plan.seconds = Some(number()?),
            "--inputs" => plan.inputs = Some(number()?),
            "--seed" => plan.seed = u32::try_from(number()?).map_err(|error| error.to_string())?,
            "--surface" if SURFACES.contains(&value) || value == SOLVER => {
                plan.surfaces = vec![value.to_owned()];
            }
            "--surface" => {
                return Err(format!(
                    "a surface is one of {}, {SOLVER}",
                    SURFACES.join(", ")
                ));
            }
            _ => return Err(format!("{name} is no option of this command")),
        }
    }
    if plan.inputs.is_none() {
        plan.seconds = plan.seconds.or(Some(60));
    }
    Ok(plan)
}

/// Runs all surfaces of a plan, some side by side, to their ends.
fn surfaces(plan: &Plan) -> Outcome {
    if plan.surfaces.iter().any(|name| is_rust(name)) {
        run(fuzzer()?)?;
    }
    let left = Mutex::new(plan.surfaces.iter().rev().collect::<Vec<_>>());
    let faults = Mutex::new(Vec::new());
    thread::scope(|lanes| {
        for _ in 0..LANES {
            lanes.spawn(|| {
                loop {
                    let Some(name) = left.lock().ok().and_then(|mut left| left.pop()) else {
                        return;
                    };
                    let done = if is_rust(name) {
                        under_libfuzzer(plan, name)
                    } else {
                        on_the_page(plan, name)
                    };
                    if let (Err(fault), Ok(mut faults)) = (done, faults.lock()) {
                        faults.push(fault);
                    }
                }
            });
        }
    });
    let faults = faults.into_inner().unwrap_or_default();
    if faults.is_empty() {
        Ok(())
    } else {
        Err(faults.join("\n"))
    }
}

/// A surface's part of the seconds.
fn seconds(plan: &Plan) -> Option<u64> {
    let parts = plan.surfaces.len() as u64;
    plan.seconds.map(|seconds| (seconds / parts).max(1))
}

/// The Cargo command that builds the fuzzer: for a named target, so that only what is fuzzed is counted, and
/// in a folder of its own, so that nothing else is built anew.
fn fuzzer() -> Result<Command, String> {
    let build = [
        "build",
        "--quiet",
        "--profile",
        "tool",
        "--package",
        "evenport-fuzz",
    ];
    let optimised = ["--config", "profile.tool.opt-level=3"];
    let place = ["--target", &host()?, "--target-dir"]
        .map(OsStr::new)
        .map(OsStr::to_owned);
    Ok(cargo(build)
        .also(optimised)
        .also(["--features", "libfuzzer"])
        .also(place)
        .also([folder()?])
        .with("RUSTFLAGS", COVERAGE.join(" ")))
}

/// The target that the compiler builds for when it is not told.
fn host() -> Result<String, String> {
    let version = output(Command::new("rustc").also(["-vV"]));
    let host = version
        .as_deref()
        .and_then(|text| text.lines().find_map(|line| line.strip_prefix("host: ")));
    host.map(str::to_owned)
        .ok_or_else(|| "rustc does not tell its target".to_owned())
}

fn folder() -> Result<PathBuf, String> {
    Ok(target()?.join("fuzz"))
}

/// Where inputs that break a promise are written.
fn failed() -> Result<PathBuf, String> {
    Ok(folder()?.join("failed"))
}

/// What libFuzzer says goes into a file; of it, the figures are printed, or the end when a promise is broken.
fn under_libfuzzer(plan: &Plan, surface: &str) -> Outcome {
    let program = folder()?.join(host()?).join("tool/evenport-fuzz");
    let (found, failed) = (folder()?.join("corpus").join(surface), failed()?);
    let log = folder()?.join(format!("{surface}.log"));
    // What an earlier run has found would make another run of this seed.
    let _ = fs::remove_dir_all(&found);
    for folder in [&found, &failed] {
        fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    }
    let file = File::create(&log).map_err(|error| format!("{}: {error}", log.display()))?;
    let corpus = root().join("tests/fuzz");
    let mut command = Command::new(program)
        .also([&found, &corpus.join("gate"), &corpus.join("solver")])
        .also([
            LONGEST,
            "-rss_limit_mb=512",
            "-timeout=120",
            "-print_final_stats=1",
        ])
        .also([format!("-seed={}", plan.seed)])
        .also([format!("-seed_inputs={}", examples()?)])
        .also([format!("-artifact_prefix={}/{surface}-", failed.display())])
        .with("EVENPORT_SURFACE", surface);
    if let Some(seconds) = seconds(plan) {
        command = command.also([format!("-max_total_time={seconds}")]);
    }
    if let Some(inputs) = plan.inputs {
        command = command.also([format!("-runs={inputs}")]);
    }
    let status = command.current_dir(root()).stderr(file).status();
    let told = fs::read_to_string(&log).unwrap_or_default();
    if status.is_ok_and(|status| status.success()) {
        println!("{}", figures(surface, &told, plan.seed));
        return Ok(());
    }
    let lines: Vec<&str> = told.lines().collect();
    let end = lines[lines.len().saturating_sub(40)..].join("\n");
    Err(format!(
        "{end}\nthe input that broke a promise belongs, mended, to tests/fuzz/{surface}"
    ))
}

/// What a run came to, from libFuzzer's own figures.
fn figures(surface: &str, told: &str, seed: u32) -> String {
    let figure = |name: &str| {
        let mut lines = told.lines();
        let line = lines.find_map(|line| line.strip_prefix("stat::")?.strip_prefix(name));
        line.map_or("?", |value| value.trim_start_matches(':').trim())
    };
    format!(
        "{surface}: {} inputs, {} a second, {} MiB at most, seed {seed}",
        figure("number_of_executed_units"),
        figure("average_exec_per_sec"),
        figure("peak_rss_mb")
    )
}

/// The examples, which need not lie in the corpus too.
fn examples() -> Result<String, String> {
    let folder = root().join("examples");
    let entries =
        fs::read_dir(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let files = entries
        .flatten()
        .map(|entry| entry.path().join("network.json"));
    let mut names: Vec<String> = files
        .filter(|file| file.is_file())
        .map(|file| text(&file))
        .collect();
    names.sort();
    Ok(names.join(","))
}

fn on_the_page(plan: &Plan, surface: &str) -> Outcome {
    let number = |number: Option<u64>| number.map_or_else(String::new, |number| number.to_string());
    run(npm(["run", "--silent", "fuzz"])
        .with("EVENPORT_SURFACE", surface)
        .with("EVENPORT_SECONDS", number(seconds(plan)))
        .with("EVENPORT_INPUTS", number(plan.inputs))
        .with("EVENPORT_SEED", plan.seed.to_string())
        .with("EVENPORT_FAILED", text(&failed()?)))
}

fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn options_are_read_and_wrong_ones_are_told() {
        let plan = read(&["--inputs", "10", "--surface", "link", "--seed", "7"]).ok();
        let plan = plan.map(|plan| (plan.seconds, plan.inputs, plan.seed, plan.surfaces));
        assert_eq!(plan, Some((None, Some(10), 7, vec!["link".to_owned()])));
        let usual = read(&[])
            .ok()
            .map(|plan| (plan.seconds, plan.surfaces.len()));
        assert_eq!(usual, Some((Some(60), 4)));
        for wrong in [
            &["--seconds"][..],
            &["--seconds", "long"],
            &["--surface", "x"],
            &["--x", "1"],
        ] {
            assert!(read(wrong).is_err(), "{wrong:?}");
        }
    }

    #[test]
    fn figures_are_those_that_libfuzzer_tells() {
        let told =
            "Done\nstat::number_of_executed_units: 89065\nstat::average_exec_per_sec:     2172\n";
        assert_eq!(
            figures("gate", told, 3),
            "gate: 89065 inputs, 2172 a second, ? MiB at most, seed 3"
        );
    }
}
