//! A smooth curve through the points of a printed table that never overshoots them: monotone cubics
//! (Fritsch and Carlson 1980). Beyond its ends it keeps the end's value.

use crate::law::Slope;

/// Points of a table, from left to right.
#[derive(Clone, Copy, Debug)]
pub struct Curve<'a> {
    /// Where the points stand, rising.
    pub xs: &'a [f64],
    /// What they say.
    pub ys: &'a [f64],
    /// Whether the curve leaves its first and meets its last point flat, so that its slope has no corner there.
    pub flat: [bool; 2],
}

impl Curve<'_> {
    /// The curve's value and slope.
    pub fn at(&self, x: f64) -> Slope {
        let last = self.xs.len() - 1;
        let still = |value| Slope {
            value,
            derivative: 0.0,
        };
        if x <= self.xs[0] {
            return still(self.ys[0]);
        }
        if x >= self.xs[last] {
            return still(self.ys[last]);
        }
        let interval = self.xs.iter().rposition(|left| *left <= x).unwrap_or(0);
        let width = self.xs[interval + 1] - self.xs[interval];
        let t = (x - self.xs[interval]) / width;
        let (left, right) = (
            self.slope(interval) * width,
            self.slope(interval + 1) * width,
        );
        let (from, to) = (self.ys[interval], self.ys[interval + 1]);
        let (square, cube) = (t * t, t * t * t);
        let value = from * (2.0 * cube - 3.0 * square + 1.0)
            + left * (cube - 2.0 * square + t)
            + to * (3.0 * square - 2.0 * cube)
            + right * (cube - square);
        let by_t = 6.0 * (from - to) * (square - t)
            + left * (3.0 * square - 4.0 * t + 1.0)
            + right * (3.0 * square - 2.0 * t);
        Slope {
            value,
            derivative: by_t / width,
        }
    }

    /// Slope at a point: the harmonic mean of its two chords keeps the curve monotone; 0 where it turns.
    fn slope(&self, point: usize) -> f64 {
        let chord =
            |left: usize| (self.ys[left + 1] - self.ys[left]) / (self.xs[left + 1] - self.xs[left]);
        let last = self.xs.len() - 1;
        let [starts_flat, ends_flat] = self.flat;
        if point == 0 {
            return if starts_flat { 0.0 } else { chord(0) };
        }
        if point == last {
            return if ends_flat { 0.0 } else { chord(last - 1) };
        }
        let (before, after) = (chord(point - 1), chord(point));
        if before * after > 0.0 {
            2.0 * before * after / (before + after)
        } else {
            0.0
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BENT: Curve = Curve {
        xs: &[0.0, 1.0, 1.5, 4.0],
        ys: &[2.0, 3.0, 3.0, -1.0],
        flat: [true, false],
    };

    #[test]
    fn it_meets_its_points_and_stays_between_them() {
        for (x, y) in BENT.xs.iter().zip(BENT.ys) {
            assert!((BENT.at(*x).value - y).abs() < 1e-15);
        }
        for step in 0..=500 {
            let x = -1.0 + 0.012 * f64::from(step);
            let value = BENT.at(x).value;
            assert!(
                (-1.0 - 1e-14..=3.0 + 1e-14).contains(&value),
                "{value} at {x}"
            );
        }
        assert_eq!(BENT.at(-9.0).value, 2.0);
        assert_eq!(BENT.at(9.0).value, -1.0);
    }

    #[test]
    fn its_slope_is_that_of_its_value() {
        for step in 1..400 {
            let x = 0.01 * f64::from(step) + 1e-4;
            let h = 1e-5;
            let ahead = |steps: f64| BENT.at(x + steps * h).value;
            // Exact for a cubic, up to rounding; no point of the table lies within the four steps.
            let slope =
                (8.0 * (ahead(1.0) - ahead(-1.0)) - (ahead(2.0) - ahead(-2.0))) / (12.0 * h);
            assert!((slope - BENT.at(x).derivative).abs() < 1e-9, "at {x}");
        }
    }
}
