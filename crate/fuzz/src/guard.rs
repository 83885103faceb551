//! Time and memory that an input may take.

use std::hint::black_box;
use std::time::Instant;

use peak_alloc::PeakAlloc;

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

/// The machine may have been busy with something else: only what is slow this often is slow.
const TRIES: u32 = 3;

/// What `act` returns, if it takes at most so many seconds and bytes.
///
/// # Panics
/// When it takes more.
pub fn within<T>(seconds: f64, bytes: usize, act: impl Fn() -> T) -> T {
    let before = MEMORY.current_usage();
    MEMORY.reset_peak_usage();
    let started = Instant::now();
    let result = act();
    let mut least = started.elapsed().as_secs_f64();
    let taken = MEMORY.peak_usage().saturating_sub(before);
    assert!(
        taken <= bytes,
        "took {taken} bytes of memory, more than {bytes}"
    );
    for _ in 1..TRIES {
        if least <= seconds {
            break;
        }
        let started = Instant::now();
        drop(black_box(act()));
        least = least.min(started.elapsed().as_secs_f64());
    }
    assert!(
        least <= seconds,
        "took {least:.3} s, more than {seconds} s, {TRIES} times"
    );
    result
}
