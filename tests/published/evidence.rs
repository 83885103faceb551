//! What a published check is: data first, asserted by one test a file and printed as a table.

use std::fmt;

/// What stands behind a check's value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(dead_code, reason = "each test binary uses its own kinds of evidence")]
pub enum Kind {
    Measurement,
    PrintedExample,
    PrintedTable,
    ClosedForm,
    ThreeDimensionalReference,
    ReferenceLibrary,
    /// Another author's formula for the same thing: it tests the scatter, not the arithmetic.
    AnotherAuthor,
    Invariant,
    Memory,
}

/// One value from outside the project against ours.
#[derive(Clone, Debug)]
pub struct Check {
    /// Case and quantity.
    pub id: String,
    /// Law or network checked.
    pub law: &'static str,
    /// Where the value comes from.
    pub source: String,
    /// What stands behind it.
    pub kind: Kind,
    /// The value from outside.
    pub value: f64,
    /// What the program says.
    pub ours: f64,
    /// Largest difference allowed.
    pub allowed: f64,
    /// Why that much.
    pub allowed_because: &'static str,
}

impl Check {
    /// Whether the difference is allowed.
    pub fn holds(&self) -> bool {
        (self.ours - self.value).abs() <= self.allowed
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::Measurement => "measurement",
            Self::PrintedExample => "printed example",
            Self::PrintedTable => "printed table",
            Self::ClosedForm => "closed form",
            Self::ThreeDimensionalReference => "three-dimensional reference",
            Self::ReferenceLibrary => "reference library",
            Self::AnotherAuthor => "another author",
            Self::Invariant => "invariant",
            Self::Memory => "memory",
        })
    }
}

/// Fails with every check that does not hold, and with an empty list.
pub fn assert_all(checks: &[Check]) {
    assert!(!checks.is_empty(), "no checks");
    let broken: Vec<String> = checks
        .iter()
        .filter(|check| !check.holds())
        .map(row)
        .collect();
    assert!(
        broken.is_empty(),
        "{} of {} checks broken:\n{}",
        broken.len(),
        checks.len(),
        broken.join("\n")
    );
}

/// Prints the checks when asked to by the environment.
pub fn print(checks: &[Check]) {
    if std::env::var_os("EVENPORT_EVIDENCE").is_none() {
        return;
    }
    println!("law | check | kind | source | value | ours | difference | allowed, because");
    for check in checks {
        println!("{}", row(check));
    }
}

fn row(check: &Check) -> String {
    format!(
        "{} | {} | {} | {} | {} | {} | {:+.1e} | {:.1e}, {}",
        check.law,
        check.id,
        check.kind,
        check.source,
        digits(check.value),
        digits(check.ours),
        check.ours - check.value,
        check.allowed,
        check.allowed_because,
    )
}

/// A number to seven digits, fewer where they would be zeros far behind the point.
fn digits(number: f64) -> String {
    let before = if number == 0.0 {
        0.0
    } else {
        number.abs().log10().floor()
    };
    format!("{:.*}", (6.0 - before).clamp(0.0, 9.0) as usize, number)
}
