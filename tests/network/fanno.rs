//! Whole branches of one duct against Fanno flow: choked at the end, with a given flow, with given ends.

use evenport::gas::{GAMMA, GAS_CONSTANT, density, flow_function, mach, pressure_ratio, viscosity};
use evenport::law::friction::churchill_1977::darcy;
use evenport::{BranchAnswer, Draw, Loss, NodeKind, Study};

use crate::evidence::{Check, Kind, assert_all};
use crate::support::{Builder, answer, draw, solved};

const RELATIONS: &str = "Fanno relations, gamma 1.4 (Shapiro 1953), Darcy factor; closed form";
const EXAMPLE: &str = "Cengel and Cimbala, example 12-17; read in FOSSEE/Scilab-TBC-Uploads 3720";
const PRINTED: &str = "half of the last printed digit";
const FLAT: &str = "half of the last printed digit, and 5e-7 of it: at Mach 1 the length hardly changes with the Mach \
    number, which rounding leaves that much room";

/// A duct and the stagnation state before it.
#[derive(Clone, Copy)]
struct Duct {
    /// [m]
    diameter: f64,
    /// [m]
    length: f64,
    /// Darcy friction factor [-].
    friction: f64,
    /// [Pa]
    pressure: f64,
    /// [K]
    temperature: f64,
    /// Whether the branch is drawn against the flow.
    turned: bool,
}

impl Duct {
    fn area(&self) -> f64 {
        0.25 * std::f64::consts::PI * self.diameter * self.diameter
    }

    /// f L/D [-].
    fn group(&self) -> f64 {
        self.friction * self.length / self.diameter
    }

    /// Mass flow of an inlet Mach number [kg/s].
    fn flow(&self, inlet: f64) -> f64 {
        let sound = (GAMMA * GAS_CONSTANT * self.temperature).sqrt();
        GAMMA * self.pressure / sound * self.area() * flow_function(inlet)
    }

    /// Inlet Mach number of a mass flow.
    fn inlet(&self, flow: f64) -> f64 {
        mach(flow / self.flow(1.0) * flow_function(1.0)).expect("below choking")
    }

    /// The wall roughness that has the friction factor at a flow [m].
    fn roughness(&self, flow: f64) -> f64 {
        let reynolds = flow * self.diameter / (self.area() * viscosity(self.temperature).value);
        let relative = root([0.0, 0.05], |e| darcy(reynolds, e).value - self.friction);
        relative * self.diameter
    }

    fn branch(&self, roughness: f64) -> Builder {
        let mut builder = Builder::default();
        let state = NodeKind::source(self.pressure, self.temperature);
        let loss = Loss::Duct {
            area: self.area(),
            perimeter: None,
            length: self.length,
            roughness,
        };
        let ends = ("before", "behind");
        builder.node(ends.0, state).port(ends.1);
        let (from, to) = if self.turned { (ends.1, ends.0) } else { ends };
        builder.branch("duct", from, to, vec![loss]);
        builder
    }

    /// The branch with a chamber of given static pressure behind it.
    fn discharging(&self, behind: f64, roughness: f64) -> BranchAnswer {
        let mut study = self.branch(roughness).study(self.pressure - behind);
        study.settings.bench.ambient_pressure = self.pressure;
        study.settings.bench.ambient_temperature = self.temperature;
        branch(&study, Draw::BenchAllOpen)
    }

    /// The branch with a given flow.
    fn drawn(&self, flow: f64) -> BranchAnswer {
        let mut study = self.branch(self.roughness(flow)).study(1.0);
        draw(&mut study, flow);
        branch(&study, Draw::CycleMean)
    }
}

fn branch(study: &Study, draw: Draw) -> BranchAnswer {
    let branch = solved(&answer(study), draw).branches[0].clone();
    BranchAnswer {
        flow: branch.flow.abs(),
        ..branch
    }
}

/// A root of a rising function by halving.
fn root(range: [f64; 2], f: impl Fn(f64) -> f64) -> f64 {
    let [mut low, mut high] = range;
    for _ in 0..45 {
        let middle = 0.5 * (low + high);
        if f(middle) < 0.0 {
            low = middle
        } else {
            high = middle
        }
    }
    0.5 * (low + high)
}

/// The duct whose end chokes at an inlet Mach number, and its branch.
fn choked(duct: Duct, inlet: f64, longest: f64) -> (Duct, BranchAnswer) {
    let flow = duct.flow(inlet);
    let roughness = duct.roughness(flow);
    let behind = 1e-3 * duct.pressure;
    let of = |length: f64| Duct { length, ..duct };
    let too_long = |length: f64| flow - of(length).discharging(behind, roughness).flow;
    let longest = longest * duct.diameter / duct.friction;
    let found = of(root([0.0, longest], too_long));
    let branch = found.discharging(behind, roughness);
    assert!(branch.choked);
    (found, branch)
}

fn check(id: String, source: &str, kind: Kind, value: f64, ours: f64, half: f64) -> Check {
    Check {
        id,
        law: "duct",
        source: source.to_owned(),
        kind,
        value,
        ours,
        // Decimal and binary rounding of a value that falls on the half itself.
        allowed: half * (1.0 + 1e-9),
        allowed_because: PRINTED,
    }
}

/// Inlet Mach number, f L*/D, p/p*, p0/p0*.
const TABLE: [[f64; 4]; 9] = [
    [0.05, 280.0203, 21.90343, 11.59144],
    [0.1, 66.9216, 10.94351, 5.82183],
    [0.2, 14.5333, 5.45545, 2.96352],
    [0.25, 8.4834, 4.35465, 2.40271],
    [0.3, 5.2993, 3.61906, 2.03507],
    [0.4, 2.3085, 2.69582, 1.59014],
    [0.5, 1.0691, 2.13809, 1.33984],
    [0.6, 0.4908, 1.76336, 1.18820],
    [0.8, 0.0723, 1.28928, 1.03823],
];

fn choked_ducts() -> Vec<Check> {
    let duct = Duct {
        diameter: 0.04,
        length: 0.0,
        friction: 0.02,
        pressure: 180_000.0,
        temperature: 330.0,
        turned: false,
    };
    let rows = TABLE
        .iter()
        .flat_map(|[inlet, length, pressure, stagnation]| {
            let (found, branch) = choked(duct, *inlet, 2.0 * length);
            let fall = |label: &str| -> f64 {
                let of = branch
                    .losses
                    .iter()
                    .filter(|loss| loss.label.contains(label));
                of.map(|loss| loss.fall).sum()
            };
            let all: f64 = branch.losses.iter().map(|loss| loss.fall).sum();
            let behind_duct = duct.pressure - fall("duct");
            // What is left when the shock is not counted is the static pressure of the choked end.
            let choked_static = duct.pressure - all + fall("shock");
            let row = |quantity: &str, value: f64, ours: f64, half: f64| {
                let id = format!("{quantity}, inlet Mach number {inlet}");
                check(id, RELATIONS, Kind::ClosedForm, value, ours, half)
            };
            let before = duct.pressure * pressure_ratio(*inlet);
            [
                row("f L*/D", *length, found.group(), 5e-5),
                Check {
                    allowed: 5e-6 + 5e-7 * pressure,
                    allowed_because: FLAT,
                    ..row("p/p*", *pressure, before / choked_static, 5e-6)
                },
                row("p0/p0*", *stagnation, duct.pressure / behind_duct, 5e-6),
            ]
        });
    rows.collect()
}

fn example() -> Vec<Check> {
    let (velocity, pressure) = (85.0, 220_000.0);
    // The book's gas constant is 287.0 J/(kg K): its product with the temperature is kept.
    let temperature = 450.0 * 287.0 / GAS_CONSTANT;
    let of = |inlet: f64| Duct {
        diameter: 0.05,
        length: 27.0,
        friction: 0.023,
        pressure: pressure / pressure_ratio(inlet),
        temperature: temperature * (1.0 + 0.2 * inlet * inlet),
        turned: false,
    };
    let inlet = velocity / (GAMMA * GAS_CONSTANT * temperature).sqrt();
    let duct = of(inlet);
    let flow = density(pressure, temperature) * velocity * duct.area();
    let drawn = duct.drawn(flow);
    // As the book finds the exit: what 27 m leave of f L*/D, between the rows of a table in steps of 0.1.
    let to_choking = |inlet: f64| choked(of(inlet), inlet, 30.0).0.group();
    let [row_2, row_4, row_5] = [0.2, 0.4, 0.5].map(to_choking);
    let left = row_2 - duct.group();
    let exit_by_table = 0.4 + 0.1 * (row_4 - left) / (row_4 - row_5);
    let row = |id: &str, value, ours, half| {
        let id = format!("example 12-17, {id}");
        check(id, EXAMPLE, Kind::PrintedExample, value, ours, half)
    };
    vec![
        row("f L*/D", 14.5333, row_2, 5e-5),
        row("exit Mach number by table", 0.42, exit_by_table, 5e-3),
        Check {
            kind: Kind::ClosedForm,
            ..row("exit Mach number, unrounded", 0.4102, drawn.mach, 5e-5)
        },
        Check {
            kind: Kind::ClosedForm,
            ..row(
                "inlet Mach number, unrounded",
                0.1999,
                duct.inlet(flow),
                5e-5,
            )
        },
        Check {
            kind: Kind::ClosedForm,
            ..row("mass flow, unrounded [kg/s]", 0.2843, drawn.flow, 5e-5)
        },
    ]
}

/// f L/D between two Mach numbers, and stagnation pressure behind over before.
fn between(inlet: f64, exit: f64) -> (f64, f64) {
    let to_choking = |m: f64| {
        let square = m * m;
        (1.0 - square) / (GAMMA * square) + 6.0 / 7.0 * (1.2 * square / (1.0 + 0.2 * square)).ln()
    };
    let stagnation = |m: f64| (5.0 / 6.0 * (1.0 + 0.2 * m * m)).powi(3) / m;
    (
        to_choking(inlet) - to_choking(exit),
        stagnation(exit) / stagnation(inlet),
    )
}

/// Ducts so short that the Mach number hardly changes: what falls keeps its digits.
fn short_ducts() -> Vec<Check> {
    let cases = [
        (0.05, 0.0501),
        (0.3, 0.302),
        (0.6, 0.605),
        (0.6, 0.8),
        (0.9, 0.95),
    ];
    cases
        .iter()
        .map(|(inlet, exit)| {
            let (group, ratio) = between(*inlet, *exit);
            let duct = Duct {
                diameter: 0.04,
                length: group * 0.04 / 0.02,
                friction: 0.02,
                pressure: 180_000.0,
                temperature: 330.0,
                turned: false,
            };
            let value = duct.pressure * (1.0 - ratio);
            let id = format!("fall from Mach {inlet} to {exit} [Pa]");
            Check {
                allowed: 1e-9 * value + 1e-7,
                allowed_because: "rounding of the pressures, 1e-12 of 180 kPa, and of f L/D",
                ..check(
                    id,
                    RELATIONS,
                    Kind::ClosedForm,
                    value,
                    duct.drawn(duct.flow(*inlet)).losses[0].fall,
                    0.0,
                )
            }
        })
        .collect()
}

/// A duct between two static pressures: the stagnation state before it is found with its flow.
fn given_ends(before: [f64; 2], behind: f64, duct: Duct, values: [f64; 3]) -> [Check; 3] {
    let [pressure, temperature] = before;
    let mut inlet = 0.3;
    let mut found = duct;
    let mut branch = None;
    for _ in 0..40 {
        found.pressure = pressure / pressure_ratio(inlet);
        found.temperature = temperature * (1.0 + 0.2 * inlet * inlet);
        let roughness = found.roughness(found.flow(inlet));
        let solved = found.discharging(behind, roughness);
        inlet = found.inlet(solved.flow);
        branch = Some(solved);
    }
    let branch = branch.expect("a solved branch");
    let source = "Fanno relations between two static pressures, solved by scipy brentq";
    let row = |quantity: &str, value, ours| {
        let id = format!("{quantity}, {pressure} Pa to {behind} Pa");
        check(id, source, Kind::ReferenceLibrary, value, ours, 5e-7)
    };
    [
        row("inlet Mach number", values[0], inlet),
        row("exit Mach number", values[1], branch.mach),
        row("mass flow [kg/s]", values[2], branch.flow),
    ]
}

pub fn checks() -> Vec<Check> {
    let mut checks = choked_ducts();
    checks.extend(example());
    checks.extend(short_ducts());
    let duct = |length, diameter, friction, turned| Duct {
        diameter,
        length,
        friction,
        pressure: 0.0,
        temperature: 0.0,
        turned,
    };
    checks.extend(given_ends(
        [200_000.0, 320.0],
        190_000.0,
        duct(0.5, 0.04, 0.02, false),
        [0.450031, 0.472765, 0.441563],
    ));
    checks.extend(given_ends(
        [250_000.0, 330.0],
        200_000.0,
        duct(1.0, 0.03, 0.025, true),
        [0.457942, 0.566418, 0.311108],
    ));
    checks
}

#[test]
fn ducts_follow_fanno_flow() {
    assert_all(&checks());
}
