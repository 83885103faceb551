//! Sources whose pressure is found for a boost, and examples of what engines have around them.

use evenport::Leg::{Run, Side};
use evenport::{Draw, NodeKind, Outcome, Study, gas, read, solve};

use super::{blown_v8, close, operating, running};
use crate::support::{Builder, typed};

fn example(text: &str) -> Study {
    read(text).unwrap_or_else(|errors| panic!("{errors:#?}"))
}

/// The pressure found for a boost is the one that, typed, gives that boost.
#[test]
fn a_pressure_found_for_a_boost_gives_it_when_typed() {
    let study = example(include_str!("../../../examples/twin_feed/network.json"));
    let boosted = running(&study);
    let boost = operating(&boosted).boost.clone().expect("a boost");
    close(boost.pressure, 80_000.0, 1e-9);
    let pressures: Vec<f64> = operating(&boosted)
        .sources
        .iter()
        .map(|source| source.pressure)
        .collect();
    assert_eq!(pressures[0], pressures[1], "both share one pressure");
    let mut typed = study;
    for node in &mut typed.network.nodes {
        if let NodeKind::Source {
            pressure,
            boost,
            boost_node,
            ..
        } = &mut node.kind
        {
            (*pressure, *boost, *boost_node) = (Some(pressures[0]), None, None);
        }
    }
    for (one, other) in boosted.cylinders.iter().zip(&running(&typed).cylinders) {
        close(one.flow, other.flow, 1e-9);
    }
}

/// In a header's run the static pressure is the stagnation pressure less the velocity head: closed form
/// for a run that ends in one port, nothing lost before it.
#[test]
fn a_boost_in_a_run_is_the_static_pressure_there() {
    let area = 8e-4;
    let mut builder = Builder::default();
    let header = NodeKind::Header {
        area,
        regain_dividing: None,
        regain_combining: None,
        volume: None,
        cad_volume: None,
    };
    let source = NodeKind::Source {
        pressure: None,
        temperature: Some(320.0),
        boost: Some(60_000.0),
        boost_node: Some("run".to_owned()),
        ambient: false,
    };
    builder
        .node("source", source)
        .node("run", header)
        .port("port")
        .legs(
            "feed",
            ("source", None),
            ("run", Some(Run)),
            vec![typed(0.0, area)],
        )
        .legs(
            "runner",
            ("run", Some(Side)),
            ("port", None),
            vec![typed(0.0, area)],
        );
    let mut study = builder.study(1.0);
    crate::support::draw(&mut study, 0.08);
    // At the mean flow the header sees one steady flow.
    let answer = solve(&study).unwrap_or_else(|errors| panic!("{errors:#?}"));
    let solved = crate::support::solved(&answer, Draw::CycleMean);
    let stagnation = operating(solved).sources[0].pressure;
    let mach = gas::mach(gas::needed_flow_function(
        solved.total,
        stagnation,
        320.0,
        area,
    ))
    .expect("not choked");
    let wanted = stagnation * gas::pressure_ratio(mach) - 101_325.0;
    close(wanted, 60_000.0, 1e-9);
    close(
        operating(solved)
            .boost
            .as_ref()
            .expect("asked for")
            .pressure,
        60_000.0,
        1e-9,
    );
}

#[test]
fn a_balance_tube_a_part_throttle_and_a_leak_are_solved() {
    for text in [
        include_str!("../../../examples/twin_feed/network.json"),
        include_str!("../../../examples/part_throttle/network.json"),
        include_str!("../../../examples/leaky_lid/network.json"),
    ] {
        let answer = solve(&example(text)).unwrap_or_else(|errors| panic!("{errors:#?}"));
        for draw in &answer.draws {
            assert!(
                matches!(draw.outcome, Outcome::Solved(_)),
                "{:?}",
                draw.outcome
            );
        }
    }
    // Air goes from the side that loses less to the other, and out through the leak.
    let twin = running(&example(include_str!(
        "../../../examples/twin_feed/network.json"
    )));
    let tube = twin
        .branches
        .iter()
        .find(|branch| branch.branch == "balance tube");
    assert!(tube.expect("in the example").flow > 0.0);
    let leaky = running(&example(include_str!(
        "../../../examples/leaky_lid/network.json"
    )));
    let outside = &operating(&leaky).sources[1];
    assert!(outside.flow < 0.0);
    // A thin-edged opening below its critical pressure ratio: the choked flow of its contracted jet.
    let inside = operating(&leaky)
        .boost
        .as_ref()
        .expect("asked for")
        .pressure
        + 101_325.0;
    let choked = gas::CHOKED_FLOW_FUNCTION * 0.62 * 3e-5 * inside
        / (335.0 * gas::GAS_CONSTANT / gas::GAMMA).sqrt();
    close(-outside.flow, choked, 2e-2);
}

/// Ambient by altitude reaches sources, boost and reference density alike.
#[test]
fn thin_air_needs_more_speed_for_the_same_boost() {
    let mut study = blown_v8();
    let mut blowers = study.network.branches.iter_mut();
    let blower = blowers
        .find_map(|branch| branch.blower.as_mut())
        .expect("a blower");
    blower.drive_ratio = None;
    (blower.boost, blower.boost_node) = (Some(50_000.0), Some("lid front".to_owned()));
    let low = running(&study);
    study.settings.ambient.altitude = Some(1_600.0);
    let high = running(&study);
    let speed = |solved: &evenport::Solved| operating(solved).blowers[0].drive_ratio;
    assert!(speed(&high) > speed(&low));
    let pressure = evenport::law::air::standard_atmosphere_iso_2533::at(1_600.0).pressure;
    close(operating(&high).ambient_pressure, pressure, 1e-12);
}
