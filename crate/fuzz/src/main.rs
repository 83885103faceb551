//! libFuzzer over the gate, or over the solver behind it when `EVENPORT_SURFACE` says so.
#![no_main]

use std::sync::LazyLock;

use evenport_fuzz::mutate::{Random, crossed, mutated};
use libfuzzer_sys::{fuzz_crossover, fuzz_mutator, fuzz_target, fuzzer_mutate};

static SOLVES: LazyLock<bool> =
    LazyLock::new(|| std::env::var("EVENPORT_SURFACE").is_ok_and(|name| name == "solver"));

fuzz_target!(|data: &[u8]| {
    // The page gives the gate texts only.
    let Ok(text) = std::str::from_utf8(data) else {
        return;
    };
    if *SOLVES {
        evenport_fuzz::solver(text);
    } else {
        evenport_fuzz::gate(text);
    }
});

// One in eight is changed byte by byte, as JSON that is none; so is whatever is no JSON already.
fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    let mut random = Random::new(seed);
    let bytewise = random.below(8) == 0;
    let made = std::str::from_utf8(&data[..size])
        .ok()
        .filter(|_| !bytewise)
        .and_then(|text| mutated(text, &mut random))
        .filter(|text| text.len() <= max_size);
    match made {
        Some(text) => {
            data[..text.len()].copy_from_slice(text.as_bytes());
            text.len()
        }
        None => fuzzer_mutate(data, size, max_size),
    }
});

fuzz_crossover!(|data1: &[u8], data2: &[u8], out: &mut [u8], seed: u32| {
    let mut random = Random::new(seed);
    let made = std::str::from_utf8(data1)
        .ok()
        .zip(std::str::from_utf8(data2).ok())
        .and_then(|(text, other)| crossed(text, other, &mut random))
        .filter(|text| text.len() <= out.len());
    let text = made.as_deref().map_or(data1, str::as_bytes);
    let length = text.len().min(out.len());
    out[..length].copy_from_slice(&text[..length]);
    length
});
