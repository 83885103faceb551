//! A valve behind a port: what the answer says of it is what the bench's flow goes by.

use std::f64::consts::PI;

use evenport::{Draw, NodeKind, Study, Valve};

use crate::support::{Builder, answer, solved, typed};

/// Low enough that the air is incompressible to a part in a million [Pa].
const DEPRESSION: f64 = 0.1;

fn study(valve: Valve) -> Study {
    let mut builder = Builder::default();
    builder
        .source("room")
        .port("port")
        .branch("branch", "room", "port", vec![typed(0.0, 1.0)]);
    let mut study = builder.study(DEPRESSION);
    let NodeKind::Port { valve: place, .. } = &mut study.network.nodes[1].kind else {
        panic!("the second node is the port");
    };
    *place = Some(valve);
    study
}

/// Two valves at a lift between two points of a table: the coefficient of the straight line between them.
#[test]
fn areas_and_coefficient_are_those_of_the_table() {
    let valve = Valve {
        diameter: 0.03,
        lift: 0.0045,
        discharge_coefficient: None,
        discharge_table: vec![[0.1, 0.6], [0.2, 0.5]],
        throat_diameter: Some(0.026),
        stem_diameter: Some(0.006),
        count: 2.0,
    };
    let answer = answer(&study(valve));
    let [found] = answer.valves.as_slice() else {
        panic!("one port has valves");
    };
    let near = |ours: f64, wanted: f64| assert!((ours / wanted - 1.0).abs() < 1e-9, "{ours}");
    assert_eq!(found.port, "port");
    near(found.lift_ratio, 0.15);
    near(found.discharge_coefficient, 0.55);
    near(found.curtain_area, 2.0 * PI * 0.03 * 0.0045);
    let throat = found.throat_area.expect("a throat was typed");
    near(
        throat,
        2.0 * 0.25 * PI * (0.026_f64.powi(2) - 0.006_f64.powi(2)),
    );
    assert!(found.effective_area < 0.55 * found.curtain_area);
    let density = evenport::gas::density(101_325.0, 293.15);
    let wanted = found.effective_area * (2.0 * density * DEPRESSION).sqrt();
    let flow = solved(&answer, Draw::BenchAllOpen).total;
    assert!((flow / wanted - 1.0).abs() < 1e-5, "{flow} {wanted}");
}

#[test]
fn a_port_without_a_valve_has_no_row() {
    let mut study = study(Valve {
        diameter: 0.03,
        lift: 0.0045,
        discharge_coefficient: Some(0.6),
        discharge_table: Vec::new(),
        throat_diameter: None,
        stem_diameter: None,
        count: 1.0,
    });
    assert_eq!(answer(&study).valves[0].discharge_coefficient, 0.6);
    assert_eq!(answer(&study).valves[0].throat_area, None);
    let NodeKind::Port { valve, .. } = &mut study.network.nodes[1].kind else {
        panic!("the second node is the port");
    };
    *valve = None;
    assert!(answer(&study).valves.is_empty());
}
