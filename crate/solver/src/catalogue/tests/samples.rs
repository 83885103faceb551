//! One sample of everything that a study can hold, with every field given.

use crate::study::{
    Ambient, Bench, BendLaw, Blower, Branch, Check, ConeLaw, Cooler, Cycle, Cylinder,
    EfficiencyTable, Engine, FORMAT, Fuel, FuelSetting, JunctionLaw, Leg, Loss, Mixing, Network,
    Node, NodeKind, Reading, ReentrantEntryLaw, Reference, RoundedEntryLaw, Running, ScreenLaw,
    Settings, SharpEntryLaw, Station, StationBend, StepLaw, Study, VERSION, Valve, Variant,
};

/// One sample of every loss, with every optional field given.
pub fn losses() -> Vec<Loss> {
    let area = 1e-3;
    let all = vec![
        Loss::EntrySharp {
            area,
            law: SharpEntryLaw::Rennels2012,
        },
        Loss::EntryRounded {
            area,
            radius: 1e-3,
            law: RoundedEntryLaw::Swamee2008,
        },
        Loss::EntryFlared { area, radius: 1e-3 },
        Loss::EntryReentrant {
            area,
            thickness: 1e-3,
            law: ReentrantEntryLaw::Idelchik,
        },
        Loss::Duct {
            area,
            perimeter: Some(0.1),
            length: 0.1,
            roughness: 1e-5,
        },
        Loss::Bend {
            area,
            perimeter: Some(0.1),
            angle: 1.0,
            radius: 0.05,
            roughness: 1e-5,
            law: BendLaw::CraneTp410,
        },
        Loss::BendPair {
            area,
            perimeter: Some(0.1),
            angle: 1.0,
            radius: 0.05,
            spacing: 0.1,
            twist: 0.5,
            roughness: 1e-5,
        },
        Loss::SuddenChange {
            area_from: area,
            area_to: area,
            law: StepLaw::Idelchik,
        },
        Loss::GradualChange {
            area_from: area,
            area_to: area,
            length: 0.1,
            law: ConeLaw::CraneTp410,
        },
        Loss::Opening {
            area,
            discharge_coefficient: 0.6,
            area_from: Some(area),
            area_to: Some(area),
            thickness: Some(0.002),
        },
        Loss::ScreenRound {
            area,
            open_part: 0.5,
            gap: 1e-3,
            law: ScreenLaw::Idelchik,
        },
        Loss::ScreenSquare {
            area,
            open_part: 0.5,
            law: ScreenLaw::Idelchik,
        },
        Loss::Hose {
            area,
            length: 0.1,
            pitch: 0.004,
        },
        Loss::Throttle {
            diameter: 0.05,
            angle: 1.0,
            closed_angle: 0.1,
            shaft_diameter: 0.005,
            discharge_coefficient: 0.8,
        },
        Loss::Core {
            area,
            fraction: 1.0,
            pressure: 2e5,
            temperature: 300.0,
            flow_1: 0.1,
            drop_1: 100.0,
            flow_2: 0.2,
            drop_2: 300.0,
            cooler: Some("core".to_owned()),
        },
        Loss::Schedule {
            roughness: 1e-5,
            stations: vec![
                Station {
                    at: 0.0,
                    area,
                    perimeter: Some(0.12),
                },
                Station {
                    at: 0.1,
                    area,
                    perimeter: None,
                },
            ],
            bends: vec![StationBend {
                at: 0.05,
                angle: 0.5,
                radius: 0.1,
            }],
            law: Default::default(),
        },
        Loss::TypedK {
            k: 1.0,
            k_reversed: Some(1.0),
            area,
            origin: "bench".to_owned(),
        },
    ];
    // A new kind does not compile here until it has a sample above.
    for loss in &all {
        match loss {
            Loss::EntrySharp { .. }
            | Loss::EntryRounded { .. }
            | Loss::EntryFlared { .. }
            | Loss::EntryReentrant { .. }
            | Loss::Duct { .. }
            | Loss::Bend { .. }
            | Loss::BendPair { .. }
            | Loss::SuddenChange { .. }
            | Loss::GradualChange { .. }
            | Loss::Opening { .. }
            | Loss::ScreenRound { .. }
            | Loss::ScreenSquare { .. }
            | Loss::Hose { .. }
            | Loss::Throttle { .. }
            | Loss::Core { .. }
            | Loss::Schedule { .. }
            | Loss::TypedK { .. } => {}
        }
    }
    all
}

pub fn valve() -> Valve {
    Valve {
        diameter: 0.03,
        lift: 0.008,
        discharge_coefficient: Some(0.6),
        discharge_table: vec![[0.1, 0.6]],
        throat_diameter: Some(0.03),
        stem_diameter: Some(0.007),
        count: 2.0,
    }
}

/// One sample of every node kind, with every optional field given.
pub fn nodes() -> Vec<NodeKind> {
    let law = JunctionLaw::default();
    let all = vec![
        NodeKind::Source {
            pressure: Some(2e5),
            temperature: Some(300.0),
            boost: Some(5e4),
            boost_node: Some("lid".to_owned()),
            ambient: true,
        },
        NodeKind::Plenum {
            volume: Some(2e-3),
            cad_volume: Some(2e-3),
        },
        NodeKind::Header {
            area: 1e-3,
            regain_dividing: Some(0.5),
            regain_combining: Some(1.0),
            volume: Some(1e-4),
            cad_volume: Some(1e-3),
        },
        NodeKind::Tee {
            area: 1e-3,
            side_area: 1e-3,
            law,
        },
        NodeKind::Wye {
            area: 1e-3,
            side_area: 1e-3,
            angle: 1.0,
            law,
        },
        NodeKind::Joint {},
        NodeKind::Port {
            cylinder: "1".to_owned(),
            valve: Some(valve()),
            cad_section: Some(1e-3),
        },
    ];
    for node in &all {
        match node {
            NodeKind::Source { .. }
            | NodeKind::Plenum { .. }
            | NodeKind::Header { .. }
            | NodeKind::Tee { .. }
            | NodeKind::Wye { .. }
            | NodeKind::Joint {}
            | NodeKind::Port { .. } => {}
        }
    }
    all
}

pub fn reading() -> Reading {
    Reading {
        depression: 2_500.0,
        flow: 0.05,
        pressure: Some(1e5),
        temperature: Some(290.0),
    }
}

pub fn check() -> Check {
    Check {
        total_volume: Some(5e-3),
        tolerance: Some(0.05),
    }
}

pub fn table() -> EfficiencyTable {
    EfficiencyTable {
        speeds: vec![50.0, 100.0],
        ratios: vec![1.2, 1.8],
        values: vec![0.8, 0.7, 0.85, 0.75],
    }
}

pub fn blower() -> Blower {
    Blower {
        displacement: 1e-3,
        drive_ratio: Some(2.0),
        crank_pulley: Some(0.2),
        blower_pulley: Some(0.1),
        boost: Some(5e4),
        boost_node: Some("lid".to_owned()),
        volumetric_efficiency: Some(0.9),
        volumetric_table: Some(table()),
        isentropic_efficiency: Some(0.6),
        isentropic_table: Some(table()),
        greatest_speed: Some(250.0),
        greatest_rim_speed: Some(60.0),
    }
}

pub fn cooler() -> Cooler {
    Cooler {
        id: "core".to_owned(),
        mixing: Mixing::AirMixed,
        coolant_temperature: 310.0,
        coolant_flow: Some(0.3),
        coolant_specific_heat: Some(3_600.0),
        effectiveness: 0.7,
        measured_flow: Some(0.2),
        measured_coolant_flow: Some(0.25),
        air_part: Some(0.6),
        air_exponent: Some(0.7),
        series: vec!["way".to_owned()],
    }
}

pub fn ambient() -> Ambient {
    Ambient {
        altitude: Some(500.0),
        pressure: Some(9e4),
        temperature: Some(300.0),
    }
}

pub fn fuel() -> Fuel {
    Fuel {
        setting: FuelSetting::ClosedLoopPerBank,
        lambda: Some(0.85),
        stoichiometric_ratio: Some(14.5),
    }
}

pub fn cylinder() -> Cylinder {
    Cylinder {
        id: "1".to_owned(),
        swept_volume: Some(5e-4),
        bank: Some("left".to_owned()),
    }
}

pub fn engine() -> Engine {
    Engine {
        cylinders: vec![cylinder()],
        speed: Some(100.0),
        volumetric_efficiency: Some(0.9),
        reference: Reference::Node {
            node: "lid".to_owned(),
        },
        volumetric_table: Some(table()),
        cycle: Cycle::TwoStroke,
        bore: Some(0.09),
        stroke: Some(0.08),
        speed_from: Some(20.0),
        speed_to: Some(110.0),
        fuel: fuel(),
        event_angle: Some(4.0),
        firing_order: vec!["1".to_owned()],
        charge_exponent: Some(0.7),
    }
}

pub fn branch() -> Branch {
    Branch {
        id: "way".to_owned(),
        from: "here".to_owned(),
        to: "there".to_owned(),
        from_leg: Some(Leg::Run),
        to_leg: Some(Leg::Side),
        jet_fraction: Some(0.1),
        jet_distance: Some(0.2),
        jet_offset: Some(0.05),
        jet_angle: Some(0.3),
        losses: losses(),
        blower: Some(blower()),
        bypass: true,
        temperature_rise: Some(3.0),
    }
}

/// A study with every field given, none as it is by default. It could not be solved.
pub fn full() -> Study {
    let text = str::to_owned;
    let laws = JUNCTION_LAWS.map(|law| NodeKind::Tee {
        area: 2e-3,
        side_area: 1e-3,
        law,
    });
    let node = |(place, kind)| Node {
        id: format!("node {place}"),
        kind,
    };
    let network = Network {
        nodes: nodes()
            .into_iter()
            .chain(laws)
            .enumerate()
            .map(node)
            .collect(),
        branches: vec![branch()],
    };
    Study {
        format: text(FORMAT),
        version: VERSION,
        name: text("full"),
        notes: text("of everything"),
        engine: engine(),
        settings: Settings {
            bench: Bench {
                ambient_pressure: 1e5,
                ambient_temperature: 290.0,
                depression: 5e3,
                blowing: true,
                limit: 0.02,
                readings: vec![reading()],
            },
            running: Running { limit: 0.005 },
            ambient: ambient(),
            check: check(),
            units: [(text("length"), text("mm"))].into(),
        },
        variants: vec![Variant {
            name: text("other"),
            notes: text("tried"),
            nodes: network.nodes.clone(),
            branches: network.branches.clone(),
            removed: vec![text("way")],
            order: vec![text("way")],
        }],
        network,
        coolers: vec![cooler()],
    }
}

pub const JUNCTION_LAWS: [JunctionLaw; 5] = [
    JunctionLaw::Bassett2001,
    JunctionLaw::Idelchik,
    JunctionLaw::Rennels2012,
    JunctionLaw::Gardel1957,
    JunctionLaw::CraneTp410,
];

pub const FUEL_SETTINGS: [FuelSetting; 3] = [
    FuelSetting::EqualPerPort,
    FuelSetting::ClosedLoopPerBank,
    FuelSetting::Upstream,
];
pub const MIXINGS: [Mixing; 3] = [Mixing::BothUnmixed, Mixing::CoolantMixed, Mixing::AirMixed];
pub const CYCLES: [Cycle; 2] = [Cycle::FourStroke, Cycle::TwoStroke];
