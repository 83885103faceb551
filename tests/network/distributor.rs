//! The handbook rule for perforated-pipe distributors against a header that solves for its outflows.
//!
//! The rule takes equal outflows: from inlet to dead end the pressure falls by (4 f L/(3 D) - 2 K) E_k, with
//! f the Fanning factor and E_k the inlet's velocity head, and the outflows at the two ends differ by
//! 1 - sqrt(1 - |dp|/dp_o), with dp_o the larger pressure drop across a hole.

use crate::continuous_header::Header;
use crate::evidence::{Check, Kind, assert_all};

const SOURCE: &str = "Perry's Chemical Engineers' Handbook, 7th ed., section 6, eqs 6-147 to 6-149, perforated-pipe \
    distributors (formula from memory)";
const EQUAL_OUTFLOW: &str = "outflows within d of equal, the rule's own maldistribution, move its friction part by \
    at most 3/4 d of itself; and half of the last printed digit";
const OUTFLOW: &str =
    "half of the pressure's allowance over the hole's drop; and half of the last printed digit";

/// A printed case.
struct Case {
    name: &'static str,
    fanning: f64,
    length_over_diameter: f64,
    regain: f64,
    /// Inlet velocity head [Pa].
    head: f64,
    /// Largest hole drop [Pa].
    hole: f64,
    /// Printed fall [Pa] and the last digit's half.
    fall: [f64; 2],
    /// Printed maldistribution [%].
    maldistribution: f64,
}

impl Case {
    /// Pressure differences across the first and the last hole, in velocity heads.
    fn ends(&self) -> [f64; 2] {
        let at = |m: f64| {
            let header = Header {
                m,
                beta: self.regain,
                friction: 4.0 * self.fanning * self.length_over_diameter,
                combining: false,
            };
            header.ends()
        };
        // The holes' size that gives the largest drop: drop goes about as 1/m^2.
        let wanted = self.hole / self.head;
        let mut m = 1.0 / wanted.sqrt();
        for _ in 0..5 {
            let [first, last] = at(m);
            m *= (first.max(last) / wanted).sqrt();
        }
        at(m)
    }

    fn checks(&self) -> [Check; 2] {
        let [first, last] = self.ends();
        let (least, most) = (first.min(last), first.max(last));
        let friction = 4.0 * self.fanning * self.length_over_diameter / 3.0 * self.head;
        let moved = 0.75 * 0.01 * self.maldistribution * friction;
        let check = |quantity: &str, value, ours, allowed, because| Check {
            id: format!("{} {quantity}", self.name),
            law: "header",
            source: SOURCE.to_owned(),
            kind: Kind::Memory,
            value,
            ours,
            allowed,
            allowed_because: because,
        };
        [
            check(
                "fall from inlet to dead end [Pa]",
                self.fall[0],
                (first - last) * self.head,
                moved + self.fall[1],
                EQUAL_OUTFLOW,
            ),
            check(
                "maldistribution between the ends [%]",
                self.maldistribution,
                100.0 * (1.0 - (least / most).sqrt()),
                50.0 * moved / self.hole / (least / most).sqrt() + 5e-4,
                OUTFLOW,
            ),
        ]
    }
}

pub fn checks() -> Vec<Check> {
    let case = |name, length_over_diameter, regain, hole, fall, maldistribution| Case {
        name,
        fanning: 0.005,
        length_over_diameter,
        regain,
        head: 100.0,
        hole,
        fall,
        maldistribution,
    };
    let cases = [
        case("PERRY-1", 20.0, 0.5, 1_000.0, [-86.667, 5e-4], 4.4315),
        case("PERRY-2", 100.0, 0.5, 1_000.0, [-33.333, 5e-4], 1.6808),
        case("PERRY-3", 300.0, 0.5, 1_000.0, [100.0, 5e-4], 5.1317),
        case("PERRY-5", 5.0, 0.7, 400.0, [-136.67, 5e-3], 18.862),
    ];
    cases.iter().flat_map(Case::checks).collect()
}

#[test]
fn distributors_follow_the_handbook_rule() {
    assert_all(&checks());
}
