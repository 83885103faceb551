//! Writes the JavaScript module and the type declarations around the compiled solver.
//!
//! Arguments: the compiled solver, the folder to write into.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use walrus::{FunctionBuilder, FunctionId, FunctionKind, Module};
use wasm_bindgen_cli_support::Bindgen;

fn main() -> ExitCode {
    let mut arguments = std::env::args_os().skip(1).map(PathBuf::from);
    let (Some(input), Some(folder), None) = (arguments.next(), arguments.next(), arguments.next())
    else {
        eprintln!("usage: evenport-bundle <compiled solver> <folder>");
        return ExitCode::FAILURE;
    };
    match bundle(&input, &folder) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn bundle(input: &Path, folder: &Path) -> Result<(), String> {
    let mut bindgen = Bindgen::new();
    bindgen.input_path(input).typescript(true);
    // The worker passes the address itself; the default one makes Vite bundle the solver twice.
    let output = bindgen
        .web(true)
        .and_then(|bindgen| bindgen.omit_default_module_path(true).generate_output());
    let written = output.and_then(|mut output| {
        silence(output.wasm_mut());
        output.emit(folder)
    });
    written.map_err(|error| format!("{error:#}"))
}

/// Leaves out what a panic would say: no browser shows it. A panic stops the solver as before; the
/// optimiser then finds that the words, and what each place would say of itself, are needed nowhere.
fn silence(module: &mut Module) {
    let functions = module.funcs.iter_local();
    let talkers: Vec<FunctionId> = functions
        .map(|(id, _)| id)
        .filter(|id| {
            module
                .funcs
                .get(*id)
                .name
                .as_deref()
                .is_some_and(says_last_words)
        })
        .collect();
    for talker in talkers {
        let kind = module.types.get(module.funcs.get(talker).ty());
        let (parameters, results) = (kind.params().to_vec(), kind.results().to_vec());
        let mut stop = FunctionBuilder::new(&mut module.types, &parameters, &results);
        stop.func_body().unreachable();
        let parameters = parameters.iter().map(|kind| module.locals.add(*kind));
        let stop = stop.local_func(parameters.collect());
        module.funcs.get_mut(talker).kind = FunctionKind::Local(stop);
    }
}

/// Whether a function of the standard library is one of those that say why they stop and then stop.
fn says_last_words(name: &str) -> bool {
    const OTHERS: [&str; 9] = [
        "assert_failed_inner",
        "capacity_overflow",
        "expect_failed",
        "handle_alloc_error",
        "handle_error",
        "len_mismatch_fail",
        "slice_error_fail",
        "slice_index_fail",
        "unwrap_failed",
    ];
    let library = name.starts_with("core[") || name.starts_with("alloc[");
    let last = name.rsplit("::").next().unwrap_or(name);
    library && (last.starts_with("panic_") || last == "panic" || OTHERS.contains(&last))
}
