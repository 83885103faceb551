//! Networks of the sizes that the speed goals name; invented.

use evenport::{
    Branch, Cylinder, Engine, JunctionLaw, Leg, Loss, Network, Node, NodeKind, Station, Study,
};

/// A network in the making.
#[derive(Default)]
struct Builder {
    nodes: Vec<Node>,
    branches: Vec<Branch>,
    ports: usize,
}

impl Builder {
    fn node(&mut self, id: &str, kind: NodeKind) {
        self.nodes.push(Node {
            id: id.to_owned(),
            kind,
        });
    }

    fn port(&mut self, id: &str) {
        self.ports += 1;
        let cylinder = self.ports.to_string();
        self.node(
            id,
            NodeKind::Port {
                cylinder,
                valve: None,
                cad_section: None,
            },
        );
    }

    fn branch(
        &mut self,
        from: (&str, Option<Leg>),
        to: (&str, Option<Leg>),
        losses: impl Into<Vec<Loss>>,
    ) {
        let id = format!("branch {}", self.branches.len());
        self.branches.push(Branch {
            from_leg: from.1,
            to_leg: to.1,
            ..Branch::new(&id, from.0, to.0, losses.into())
        });
    }

    fn study(self, name: &str) -> Study {
        let cylinders = (1..=self.ports).map(|number| Cylinder {
            id: number.to_string(),
            swept_volume: Some(5e-4),
            bank: None,
        });
        let network = Network {
            nodes: self.nodes,
            branches: self.branches,
        };
        Study {
            notes: "Invented for measuring time.".to_owned(),
            engine: Engine {
                cylinders: cylinders.collect(),
                speed: Some(90.0),
                volumetric_efficiency: Some(1.4),
                ..Engine::default()
            },
            ..Study::new(name, network)
        }
    }
}

/// One of four areas mixed without order [m2].
fn area(number: usize) -> f64 {
    [3e-4, 6e-4, 1e-3, 2e-3][number.wrapping_mul(2_654_435_761) >> 7 & 3]
}

fn duct(area: f64) -> Loss {
    Loss::Duct {
        area,
        perimeter: None,
        length: 0.1,
        roughness: 1e-5,
    }
}

fn opening(area: f64) -> Loss {
    Loss::Opening {
        area,
        discharge_coefficient: 0.65,
        area_from: None,
        area_to: None,
        thickness: None,
    }
}

fn typed(k: f64, area: f64) -> Loss {
    Loss::TypedK {
        k,
        k_reversed: None,
        area,
        origin: String::new(),
    }
}

/// Ten ports and 60 branches with two losses each: a lid fed through a core, pockets joined by windows,
/// and a tee in each runner whose side leg leads to a balance chamber. `scale` multiplies the sections of the
/// first three runners and the pocket windows.
pub fn ten_ports(scale: f64) -> Study {
    let mut builder = Builder::default();
    builder.node("source", NodeKind::source(180_000.0, 330.0));
    for id in ["lid", "balance"] {
        builder.node(id, NodeKind::PLENUM);
    }
    for feed in 0..2 {
        let losses = [typed(0.3, 2e-3 + 1e-4 * feed as f64), duct(2e-3)];
        builder.branch(("source", None), ("lid", None), losses);
    }
    for port in 0..10 {
        let (pocket, tee, outlet) = (
            format!("pocket {port}"),
            format!("tee {port}"),
            format!("port {port}"),
        );
        builder.node(&pocket, NodeKind::PLENUM);
        builder.node(
            &tee,
            NodeKind::Tee {
                area: 1.2e-3,
                side_area: 4e-4,
                law: JunctionLaw::Bassett2001,
            },
        );
        builder.port(&outlet);
        let core = Loss::Core {
            area: 6e-3,
            fraction: 0.1,
            pressure: 180_000.0,
            temperature: 330.0,
            flow_1: 0.2,
            drop_1: 1_000.0,
            flow_2: 0.4,
            drop_2: 3_200.0,
            cooler: None,
        };
        let through = [core, typed(0.5, 6e-3)];
        builder.branch(("lid", None), (&pocket, None), through);
        let entry = Loss::EntryRounded {
            area: 1.2e-3,
            radius: 4e-3,
            law: Default::default(),
        };
        let mouth = [entry, duct(1.2e-3)];
        builder.branch((&pocket, None), (&tee, Some(Leg::Run)), mouth);
        let size = 1.2e-3 * if port < 3 { scale } else { 1.0 };
        let runner = [duct(size), typed(0.2 + 0.01 * port as f64, size)];
        builder.branch((&tee, Some(Leg::Run)), (&outlet, None), runner);
        let side = [duct(4e-4), typed(1.0, 4e-4)];
        builder.branch((&tee, Some(Leg::Side)), ("balance", None), side);
    }
    let mut window = |a: usize, b: usize, size: f64| {
        let losses = [opening(size * scale), typed(0.2, size * scale)];
        builder.branch(
            (&format!("pocket {a}"), None),
            (&format!("pocket {b}"), None),
            losses,
        );
    };
    for bank in [0, 5] {
        for place in bank..bank + 4 {
            window(place, place + 1, 8e-4);
        }
    }
    for across in 0..5 {
        window(across, across + 5, 1.2e-3);
        window(across, 9 - across, 5e-4 + 1e-5 * across as f64);
    }
    let mut study = builder.study("ten ports");
    let order = [1, 6, 5, 10, 2, 7, 3, 8, 4, 9].map(|cylinder| cylinder.to_string());
    study.engine.firing_order = order.into();
    study
}

/// Branches side by side, from a plenum to as many ports, with one loss each.
pub fn fan(branches: usize, loss: &Loss) -> Study {
    let mut builder = Builder::default();
    builder.node("source", NodeKind::source(180_000.0, 330.0));
    builder.node("lid", NodeKind::PLENUM);
    builder.branch(
        ("source", None),
        ("lid", None),
        [typed(0.5, 0.05), duct(0.05)],
    );
    for port in 0..branches {
        let outlet = format!("port {port}");
        builder.port(&outlet);
        builder.branch(("lid", None), (&outlet, None), [loss.clone()]);
    }
    builder.study("fan")
}

/// One duct of the length of `tapered`.
pub fn straight() -> Loss {
    duct(1.2e-3)
}

/// A runner as CAD gives it, in 12 stations: an oval that narrows, then widens, with its perimeters.
pub fn tapered() -> Loss {
    let station = |step: u32| {
        let at = f64::from(step) / 11.0;
        let area = 1.2e-3 * (1.0 + (at - 0.5).powi(2));
        Station {
            at: 0.1 * at,
            area,
            perimeter: Some(3.8 * area.sqrt()),
        }
    };
    Loss::Schedule {
        stations: (0..12).map(station).collect(),
        bends: Vec::new(),
        law: Default::default(),
        roughness: 1e-5,
    }
}

/// A square lattice of `side` by `side` nodes, one in fifty a tee, four areas mixed, ten ports.
pub fn lattice(side: usize, scale: f64) -> Study {
    let mut builder = Builder::default();
    let name = |row: usize, column: usize| format!("node {row} {column}");
    // A tee has no way down to the next row; none stands at an edge or beside another.
    let inside = |place: usize| place > 0 && place + 2 < side;
    let tee = |row: usize, column: usize| {
        inside(row) && inside(column) && (row * 7 + column * 3) % 50 == 11
    };
    builder.node("source", NodeKind::source(180_000.0, 330.0));
    for row in 0..side {
        for column in 0..side {
            let kind = if tee(row, column) {
                NodeKind::Tee {
                    area: 1e-3,
                    side_area: 6e-4,
                    law: JunctionLaw::Bassett2001,
                }
            } else {
                NodeKind::PLENUM
            };
            builder.node(&name(row, column), kind);
        }
    }
    let feed = |size: f64| [typed(0.5, size), duct(size)];
    builder.branch(("source", None), (&name(0, 0), None), feed(4e-3));
    let mut number = 0;
    for row in 0..side {
        for column in 0..side {
            let here = name(row, column);
            let leg = |row: usize, column: usize, leg: Leg| tee(row, column).then_some(leg);
            for (to_row, to_column, role) in
                [(row, column + 1, Leg::Run), (row + 1, column, Leg::Side)]
            {
                let down = to_row > row;
                if to_row == side || to_column == side || (down && tee(row, column)) {
                    continue;
                }
                number += 1;
                let size = area(number) * if number % 3 == 0 { scale } else { 1.0 };
                builder.branch(
                    (&here, leg(row, column, role)),
                    (&name(to_row, to_column), leg(to_row, to_column, role)),
                    [typed(1.0, size), duct(size)],
                );
            }
        }
    }
    for port in 0..10 {
        let outlet = format!("port {port}");
        builder.port(&outlet);
        let from = name(side - 1, port * (side - 1) / 9);
        builder.branch((&from, None), (&outlet, None), feed(1e-3));
    }
    builder.study("lattice")
}
