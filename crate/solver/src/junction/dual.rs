//! Numbers that carry their derivatives by the three leg flows of a tee.

use std::ops::{Add, Div, Mul, Neg, Sub};

/// A value and its derivatives by three flows.
#[derive(Clone, Copy, Debug)]
pub struct Dual {
    /// The value.
    pub value: f64,
    /// Its derivatives.
    pub by: [f64; 3],
}

impl Dual {
    /// A constant.
    pub fn constant(value: f64) -> Self {
        Self {
            value,
            by: [0.0; 3],
        }
    }

    /// The flow of one leg.
    pub fn flow(flows: &[f64], leg: usize) -> Self {
        let mut by = [0.0; 3];
        by[leg] = 1.0;
        Self {
            value: flows[leg],
            by,
        }
    }

    /// A function of this number, from its value and slope there.
    pub fn chain(self, value: f64, slope: f64) -> Self {
        Self {
            value,
            by: self.by.map(|derivative| derivative * slope),
        }
    }

    /// Magnitude.
    pub fn abs(self) -> Self {
        self.chain(self.value.abs(), self.value.signum())
    }
}

impl Add for Dual {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            value: self.value + other.value,
            by: std::array::from_fn(|i| self.by[i] + other.by[i]),
        }
    }
}

impl Sub for Dual {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Neg for Dual {
    type Output = Self;
    fn neg(self) -> Self {
        self.chain(-self.value, -1.0)
    }
}

impl Mul for Dual {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self {
            value: self.value * other.value,
            by: std::array::from_fn(|i| self.by[i] * other.value + self.value * other.by[i]),
        }
    }
}

impl Div for Dual {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        let value = self.value / other.value;
        Self {
            value,
            by: std::array::from_fn(|i| (self.by[i] - value * other.by[i]) / other.value),
        }
    }
}
