//! Numbers in sentences.
//!
//! The standard library's writer of `f64` is exact for every digit of every number and weighs as much as
//! the gate; a sentence needs a few digits.

/// Significant digits of a number written in full: more than anybody types, fewer than shifting the
/// decimal point step by step spoils.
const SIGNIFICANT: i32 = 12;

/// A number to so many decimals.
pub fn rounded(value: f64, decimals: u32) -> String {
    let units = (value.abs() * 10_u64.pow(decimals) as f64).round();
    if units.is_nan() || units > 1e18 {
        return plain(value);
    }
    let digits = (units as u64).to_string();
    let last = -(decimals as i32);
    let first = last + digits.len() as i32 - 1;
    written(value < 0.0 && units > 0.0, &digits, first, last)
}

/// A number in full, without zeros at its end; very small and very large ones with a power of ten.
pub fn plain(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    if !value.is_finite() {
        return "no finite number".to_owned();
    }
    let (digits, power) = decimal(value.abs());
    let others = digits.len() as i32 - 1;
    if (-5..SIGNIFICANT).contains(&power) {
        written(value < 0.0, &digits, power, power - others)
    } else {
        let factor = written(value < 0.0, &digits, 0, -others);
        format!("{factor}e{power}")
    }
}

/// Digits with a point where it belongs, from the power of ten that the first one counts down to `last`.
fn written(negative: bool, digits: &str, first: i32, last: i32) -> String {
    let mut text = String::new();
    if negative {
        // The sign that the page's own figures have.
        text.push('−');
    }
    for power in (last.min(0)..=first.max(0)).rev() {
        // Where there is no digit, before the first or behind the last, a zero keeps the place.
        let digit = digits.as_bytes().get((first - power) as usize);
        text.push(digit.map_or('0', |digit| char::from(*digit)));
        if power == 0 && last < 0 {
            text.push('.');
        }
    }
    text
}

/// Significant digits without zeros at their end, and the power of ten that the first one counts.
fn decimal(value: f64) -> (String, i32) {
    let mut scaled = value;
    let mut power = SIGNIFICANT - 1;
    while scaled < 1e11 {
        scaled *= 10.0;
        power -= 1;
    }
    while scaled >= 1e12 {
        scaled /= 10.0;
        power += 1;
    }
    let mut digits = scaled.round() as u64;
    while digits.is_multiple_of(10) {
        digits /= 10;
    }
    // Rounding up to the next power of ten has left a one, and that power is the one it counts.
    if digits == 1 && scaled > 5e11 {
        power += 1;
    }
    (digits.to_string(), power)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn sentences_read_as_people_write() {
        for (value, text) in [
            (0.0, "0"),
            (10.0, "10"),
            (-1.0, "−1"),
            (0.3, "0.3"),
            (0.1 + 0.2, "0.3"),
            (1.2566e-3, "0.0012566"),
            (1e-9, "1e-9"),
            (1.5e-7, "1.5e-7"),
            (101_325.0, "101325"),
            (1e11, "100000000000"),
            (1e14, "1e14"),
            (-2.5e20, "−2.5e20"),
            (0.999_999_999_999_9, "1"),
            (1e-310, "1e-310"),
            (f64::MAX, "1.79769313486e308"),
            (f64::NAN, "no finite number"),
        ] {
            assert_eq!(plain(value), text);
        }
        for (value, decimals, text) in [
            (1.234, 2, "1.23"),
            (-0.0561, 1, "−0.1"),
            (-0.001, 2, "0.00"),
            (0.999, 2, "1.00"),
            (2.004, 3, "2.004"),
            (6_999.6, 0, "7000"),
            (1e30, 3, "1e30"),
            (f64::NAN, 2, "no finite number"),
        ] {
            assert_eq!(rounded(value, decimals), text);
        }
    }

    proptest! {
        #[test]
        fn twelve_digits_come_back(digits in 1_u64..1_000_000_000_000, power in -30..15) {
            let value: f64 = format!("{digits}e{power}").parse().expect("a number");
            prop_assert_eq!(plain(value).parse(), Ok(value));
            prop_assert_eq!(plain(-value), format!("−{}", plain(value)));
        }

        /// The standard library rounds the exact value; the two differ where that is a tie, nearly.
        #[test]
        fn rounding_is_the_standard_librarys(value in -1e5_f64..1e5, decimals in 0_u32..5) {
            let width = decimals as usize;
            let unit = 10_f64.powi(decimals as i32);
            prop_assume!(((value * unit).fract().abs() - 0.5).abs() > 1e-6);
            prop_assume!((value * unit).abs() > 0.5);
            let text = format!("{value:.width$}").replace('-', "−");
            prop_assert_eq!(rounded(value, decimals), text);
        }
    }
}
