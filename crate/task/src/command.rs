//! Starting other programs, and the places where they work.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::SystemTime;
use std::{env, fs};

/// What a verb ends with: nothing, or one line for the person who typed it.
pub type Outcome = Result<(), String>;

/// The repository's folder, as the Cargo that runs this program names it: two clones that share a target
/// folder share this program too.
pub fn root() -> PathBuf {
    let here =
        env::var_os("CARGO_MANIFEST_DIR").unwrap_or_else(|| env!("CARGO_MANIFEST_DIR").into());
    let here = PathBuf::from(here);
    here.ancestors().nth(2).unwrap_or(&here).to_path_buf()
}

/// The page's folder.
pub fn www() -> PathBuf {
    root().join("www")
}

/// Cargo's folder for what it builds, wherever it was told to put that: this program lies in it.
pub fn target() -> Result<PathBuf, String> {
    let program =
        env::current_exe().map_err(|error| format!("this program cannot find itself: {error}"))?;
    let folder = program
        .ancestors()
        .nth(2)
        .ok_or("this program lies outside Cargo's target folder")?;
    Ok(folder.to_path_buf())
}

/// The Cargo that runs this program, at the repository's root.
pub fn cargo<S: AsRef<OsStr>>(arguments: impl IntoIterator<Item = S>) -> Command {
    let mut command = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.args(arguments).current_dir(root());
    command
}

/// One of this package's other programs, built with the feature of the same name.
pub fn tool(name: &str) -> Command {
    let program = format!("evenport-{name}");
    cargo([
        "run",
        "--quiet",
        "--profile",
        "tool",
        "--package",
        "evenport-task",
        "--features",
        name,
    ])
    .also(["--bin", &program, "--"])
}

/// Npm in the page's folder.
pub fn npm<S: AsRef<OsStr>>(arguments: impl IntoIterator<Item = S>) -> Command {
    let mut command = Command::new(if cfg!(windows) { "npm.cmd" } else { "npm" });
    command.args(arguments).current_dir(www());
    command
}

/// Prints the command, runs it to its end and turns failure into one line.
pub fn run(mut command: Command) -> Outcome {
    let line = describe(&command);
    println!("> {line}");
    match command.status() {
        Ok(status) if status.success() => Ok(()),
        Ok(status) => Err(format!("failed with {status}: {line}")),
        Err(error) => Err(format!("could not start: {line}: {error}")),
    }
}

/// What a command prints, when it succeeds.
pub fn output(mut command: Command) -> Option<String> {
    let output = command
        .output()
        .ok()
        .filter(|output| output.status.success())?;
    String::from_utf8(output.stdout)
        .ok()
        .map(|text| text.trim().to_owned())
}

/// The first of these programs that lies on the search path.
pub fn find(names: &[&str]) -> Option<PathBuf> {
    let folders: Vec<PathBuf> = env::split_paths(&env::var_os("PATH")?).collect();
    names.iter().find_map(|name| {
        let name = format!("{name}{}", env::consts::EXE_SUFFIX);
        folders
            .iter()
            .map(|folder| folder.join(&name))
            .find(|path| path.is_file())
    })
}

/// Whether `result` exists and is at least as new as each of its sources.
pub fn up_to_date(result: &Path, sources: &[&Path]) -> bool {
    changed(result)
        .is_some_and(|result| sources.iter().all(|source| changed(source) <= Some(result)))
}

fn changed(path: &Path) -> Option<SystemTime> {
    fs::metadata(path).and_then(|data| data.modified()).ok()
}

fn describe(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    let program = |(place, word): (usize, &OsStr)| match place {
        0 => Path::new(word)
            .file_name()
            .unwrap_or(word)
            .to_string_lossy()
            .into_owned(),
        _ => word.to_string_lossy().into_owned(),
    };
    words.enumerate().map(program).collect::<Vec<_>>().join(" ")
}

/// More arguments and variables on a command, in one expression.
pub trait Also {
    /// Adds arguments.
    fn also<S: AsRef<OsStr>>(self, arguments: impl IntoIterator<Item = S>) -> Self;
    /// Sets an environment variable.
    fn with(self, name: &str, value: impl AsRef<OsStr>) -> Self;
}

impl Also for Command {
    fn also<S: AsRef<OsStr>>(mut self, arguments: impl IntoIterator<Item = S>) -> Self {
        self.args(arguments);
        self
    }

    fn with(mut self, name: &str, value: impl AsRef<OsStr>) -> Self {
        self.env(name, value);
        self
    }
}
