//! How long one piece of work takes, for any clock: a coarse one needs many at a time.

/// Shortest batch [s].
const BATCH: f64 = 0.02;

/// Time of one `work`, from the middle one of `batches` [s]; `clock` tells seconds.
pub fn median(clock: &impl Fn() -> f64, batches: usize, mut work: impl FnMut()) -> f64 {
    let mut batch = |count: usize| {
        let started = clock();
        (0..count).for_each(|_| work());
        clock() - started
    };
    let mut count = 1;
    while batch(count) < BATCH {
        count *= 2;
    }
    let mut times: Vec<f64> = (0..batches).map(|_| batch(count) / count as f64).collect();
    times.sort_by(f64::total_cmp);
    times[batches / 2]
}
