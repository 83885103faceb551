//! Work on short lists: some dozens of entries, where simple beats clever in code and in time.

/// Sorts a list, equals staying in their order; `before` tells whether the first goes before the second.
///
/// By insertion. The standard library's sort is made for millions of entries; each kind of entry that it
/// is used on costs the page about five times as much as this costs in all.
pub fn sort<T>(list: &mut [T], before: impl Fn(&T, &T) -> bool) {
    for end in 1..list.len() {
        let mut place = end;
        while place > 0 && before(&list[place], &list[place - 1]) {
            list.swap(place, place - 1);
            place -= 1;
        }
    }
}
