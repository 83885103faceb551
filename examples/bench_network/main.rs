//! How long the network itself takes, natively: prepared once, then solved cold and warm.
//! Words after `--` choose the networks whose names hold one of them.

mod batch;
mod measure;
mod networks;

use std::time::Instant;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let wanted = |name: &str| words.is_empty() || words.iter().any(|word| name.contains(word));
    println!("The network alone, native");
    let started = Instant::now();
    measure::all(
        || started.elapsed().as_secs_f64(),
        wanted,
        |line| println!("  {line}"),
    );
}
