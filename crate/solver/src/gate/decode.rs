//! From a document in which `fields` found nothing wrong to the study's own types.
//!
//! By hand: readers derived by serde take any format and word every mistake a second time, and were a
//! quarter of all that the page loads. Nothing is missing or of the wrong type here; were the check and
//! this ever to disagree, the study would be refused as a whole.

use std::collections::BTreeMap;

use serde_json::Value;

use super::{Object, value};
use crate::answer::{Draw, Part};
use crate::defaults::{
    bench_limit, one, running_limit, standard_depression, standard_pressure, standard_temperature,
};
use crate::paired::{Split, Worlds};
use crate::study::{
    Ambient, Bench, Blower, Branch, Check, Cooler, Cycle, Cylinder, EfficiencyTable, Engine, Fuel,
    FuelSetting, JunctionLaw, Leg, Mixing, Network, Node, NodeKind, Reading, Reference, Running,
    Settings, Study, VERSION, Valve, Variant,
};

mod loss;

use loss::loss;

/// The study that a checked document holds.
pub fn study(document: &Object) -> Option<Study> {
    let row = Row(document);
    Some(Study {
        format: row.text("format")?,
        version: VERSION,
        name: row.text("name")?,
        notes: row.text("notes").unwrap_or_default(),
        engine: row.object("engine", engine).unwrap_or_default(),
        settings: row.object("settings", settings).unwrap_or_default(),
        network: row.object("network", network)?,
        coolers: row.list("coolers", cooler)?,
        variants: row.list("variants", variant)?,
    })
}

/// One loss by itself, as the tests of the catalogue need it.
#[cfg(test)]
pub fn loss_alone(row: &Object) -> Option<crate::study::Loss> {
    loss(Row(row))
}

/// The part of an answer that an unchecked value names.
pub fn part(wanted: &Value) -> Option<Part> {
    let named = |object, field| value(object, field)?.as_str().and_then(draw);
    match wanted {
        Value::String(word) if word == "whole" => Some(Part::Whole),
        Value::String(word) if word == "headline" => Some(Part::Headline),
        Value::Object(object) => match (named(object, "first"), named(object, "rest")) {
            (Some(first), None) => Some(Part::First(first)),
            (None, Some(rest)) => Some(Part::Rest(rest)),
            _ => None,
        },
        _ => None,
    }
}

/// The worlds that an unchecked value asks for.
pub fn worlds(wanted: &Value) -> Option<Worlds> {
    let object = wanted.as_object()?;
    let whole = |field: &str| u32::try_from(value(object, field)?.as_u64()?).ok();
    Some(Worlds {
        draw: draw(value(object, "draw")?.as_str()?)?,
        seed: whole("seed")?,
        split: match value(object, "split")?.as_str()? {
            "asStated" => Split::AsStated,
            "allCommon" => Split::AllCommon,
            "allPlace" => Split::AllPlace,
            _ => return None,
        },
        first: whole("first")?,
        count: whole("count")?,
    })
}

/// The draws that an unchecked value lists.
pub fn draws(wanted: &Value) -> Option<Vec<Draw>> {
    let words = wanted.as_array()?.iter();
    words.map(|word| draw(word.as_str()?)).collect()
}

fn draw(word: &str) -> Option<Draw> {
    match word {
        "benchOneAtATime" => Some(Draw::BenchOneAtATime),
        "benchAllOpen" => Some(Draw::BenchAllOpen),
        "running" => Some(Draw::Running),
        "cycleMean" => Some(Draw::CycleMean),
        _ => None,
    }
}

/// A JSON object whose fields are asked for by name; what is not there is `None`, a list then empty.
#[derive(Clone, Copy)]
struct Row<'d>(&'d Object);

// Not inlined, as `value` is not.
impl<'d> Row<'d> {
    fn value(self, field: &str) -> Option<&'d Value> {
        value(self.0, field)
    }

    #[inline(never)]
    fn number(self, field: &str) -> Option<f64> {
        self.value(field)?.as_f64()
    }

    #[inline(never)]
    fn word(self, field: &str) -> Option<&'d str> {
        self.value(field)?.as_str()
    }

    #[inline(never)]
    fn text(self, field: &str) -> Option<String> {
        self.word(field).map(str::to_owned)
    }

    fn object<T>(self, field: &str, read: fn(Row) -> Option<T>) -> Option<T> {
        self.value(field)?
            .as_object()
            .and_then(|row| read(Row(row)))
    }

    #[inline(never)]
    fn list<T>(self, field: &str, read: fn(Row) -> Option<T>) -> Option<Vec<T>> {
        let rows = self.values(field);
        let mut list = Vec::with_capacity(rows.len());
        for row in rows {
            list.push(read(Row(row.as_object()?))?);
        }
        Some(list)
    }

    #[inline(never)]
    fn texts(self, field: &str) -> Option<Vec<String>> {
        let values = self.values(field);
        let mut texts = Vec::with_capacity(values.len());
        for text in values {
            texts.push(text.as_str()?.to_owned());
        }
        Some(texts)
    }

    #[inline(never)]
    fn numbers(self, field: &str) -> Option<Vec<f64>> {
        let values = self.values(field);
        let mut numbers = Vec::with_capacity(values.len());
        for number in values {
            numbers.push(number.as_f64()?);
        }
        Some(numbers)
    }

    fn pairs(self, field: &str) -> Option<Vec<[f64; 2]>> {
        let values = self.values(field);
        let mut pairs = Vec::with_capacity(values.len());
        for pair in values {
            match pair.as_array()?.as_slice() {
                [one, other] => pairs.push([one.as_f64()?, other.as_f64()?]),
                _ => return None,
            }
        }
        Some(pairs)
    }

    #[inline(never)]
    fn flag(self, field: &str) -> bool {
        self.value(field).and_then(Value::as_bool) == Some(true)
    }

    /// The choice that a word names; the default where none is given.
    fn choice<T: Copy + Default>(self, field: &str, choices: &[(&str, T)]) -> Option<T> {
        let Some(word) = self.word(field) else {
            return Some(T::default());
        };
        let named = choices.iter().find(|(name, _)| *name == word);
        named.map(|(_, choice)| *choice)
    }

    #[inline(never)]
    fn values(self, field: &str) -> &'d [Value] {
        let list = self.value(field).and_then(Value::as_array);
        list.map_or(&[], Vec::as_slice)
    }
}

fn variant(row: Row) -> Option<Variant> {
    Some(Variant {
        name: row.text("name")?,
        notes: row.text("notes").unwrap_or_default(),
        nodes: row.list("nodes", node)?,
        branches: row.list("branches", branch)?,
        removed: row.texts("removed")?,
        order: row.texts("order")?,
    })
}

fn network(row: Row) -> Option<Network> {
    Some(Network {
        nodes: row.list("nodes", node)?,
        branches: row.list("branches", branch)?,
    })
}

fn engine(row: Row) -> Option<Engine> {
    Some(Engine {
        cylinders: row.list("cylinders", cylinder)?,
        speed: row.number("speed"),
        volumetric_efficiency: row.number("volumetricEfficiency"),
        reference: row.object("reference", reference).unwrap_or_default(),
        event_angle: row.number("eventAngle"),
        volumetric_table: row.object("volumetricTable", table),
        cycle: match row.word("cycle") {
            None | Some("fourStroke") => Cycle::FourStroke,
            Some("twoStroke") => Cycle::TwoStroke,
            Some(_) => return None,
        },
        bore: row.number("bore"),
        stroke: row.number("stroke"),
        speed_from: row.number("speedFrom"),
        speed_to: row.number("speedTo"),
        fuel: row.object("fuel", fuel).unwrap_or_default(),
        firing_order: row.texts("firingOrder")?,
        charge_exponent: row.number("chargeExponent"),
    })
}

fn table(row: Row) -> Option<EfficiencyTable> {
    Some(EfficiencyTable {
        speeds: row.numbers("speeds")?,
        ratios: row.numbers("ratios")?,
        values: row.numbers("values")?,
    })
}

fn fuel(row: Row) -> Option<Fuel> {
    Some(Fuel {
        setting: match row.word("setting") {
            None | Some("equalPerPort") => FuelSetting::EqualPerPort,
            Some("closedLoopPerBank") => FuelSetting::ClosedLoopPerBank,
            Some("upstream") => FuelSetting::Upstream,
            Some(_) => return None,
        },
        lambda: row.number("lambda"),
        stoichiometric_ratio: row.number("stoichiometricRatio"),
    })
}

fn cooler(row: Row) -> Option<Cooler> {
    Some(Cooler {
        id: row.text("id")?,
        mixing: match row.word("mixing") {
            None | Some("bothUnmixed") => Mixing::BothUnmixed,
            Some("coolantMixed") => Mixing::CoolantMixed,
            Some("airMixed") => Mixing::AirMixed,
            Some(_) => return None,
        },
        coolant_temperature: row.number("coolantTemperature")?,
        coolant_flow: row.number("coolantFlow"),
        coolant_specific_heat: row.number("coolantSpecificHeat"),
        effectiveness: row.number("effectiveness")?,
        measured_flow: row.number("measuredFlow"),
        measured_coolant_flow: row.number("measuredCoolantFlow"),
        air_part: row.number("airPart"),
        air_exponent: row.number("airExponent"),
        series: row.texts("series")?,
    })
}

fn blower(row: Row) -> Option<Blower> {
    Some(Blower {
        displacement: row.number("displacement")?,
        drive_ratio: row.number("driveRatio"),
        crank_pulley: row.number("crankPulley"),
        blower_pulley: row.number("blowerPulley"),
        boost: row.number("boost"),
        boost_node: row.text("boostNode"),
        volumetric_efficiency: row.number("volumetricEfficiency"),
        volumetric_table: row.object("volumetricTable", table),
        isentropic_efficiency: row.number("isentropicEfficiency"),
        isentropic_table: row.object("isentropicTable", table),
        greatest_speed: row.number("greatestSpeed"),
        greatest_rim_speed: row.number("greatestRimSpeed"),
    })
}

fn cylinder(row: Row) -> Option<Cylinder> {
    Some(Cylinder {
        id: row.text("id")?,
        swept_volume: row.number("sweptVolume"),
        bank: row.text("bank"),
    })
}

fn reference(row: Row) -> Option<Reference> {
    Some(match row.word("at")? {
        "ambient" => Reference::Ambient,
        "node" => Reference::Node {
            node: row.text("node")?,
        },
        "ports" => Reference::Ports,
        _ => return None,
    })
}

fn settings(row: Row) -> Option<Settings> {
    let mut units = BTreeMap::new();
    let given = row.value("units").and_then(Value::as_object);
    for (quantity, unit) in given.into_iter().flatten() {
        units.insert(quantity.clone(), unit.as_str()?.to_owned());
    }
    Some(Settings {
        bench: row.object("bench", bench).unwrap_or_default(),
        running: row.object("running", running).unwrap_or_default(),
        ambient: row.object("ambient", ambient).unwrap_or_default(),
        check: row.object("check", check).unwrap_or_default(),
        units,
    })
}

fn bench(row: Row) -> Option<Bench> {
    Some(Bench {
        ambient_pressure: row
            .number("ambientPressure")
            .unwrap_or_else(standard_pressure),
        ambient_temperature: row
            .number("ambientTemperature")
            .unwrap_or_else(standard_temperature),
        depression: row.number("depression").unwrap_or_else(standard_depression),
        blowing: row.flag("blowing"),
        limit: row.number("limit").unwrap_or_else(bench_limit),
        readings: row.list("readings", reading)?,
    })
}

fn reading(row: Row) -> Option<Reading> {
    Some(Reading {
        depression: row.number("depression")?,
        flow: row.number("flow")?,
        pressure: row.number("pressure"),
        temperature: row.number("temperature"),
    })
}

fn ambient(row: Row) -> Option<Ambient> {
    Some(Ambient {
        altitude: row.number("altitude"),
        pressure: row.number("pressure"),
        temperature: row.number("temperature"),
    })
}

fn running(row: Row) -> Option<Running> {
    Some(Running {
        limit: row.number("limit").unwrap_or_else(running_limit),
    })
}

fn check(row: Row) -> Option<Check> {
    Some(Check {
        total_volume: row.number("totalVolume"),
        tolerance: row.number("tolerance"),
    })
}

fn node(row: Row) -> Option<Node> {
    let kind = match row.word("kind")? {
        "source" => NodeKind::Source {
            pressure: row.number("pressure"),
            temperature: row.number("temperature"),
            boost: row.number("boost"),
            boost_node: row.text("boostNode"),
            ambient: row.flag("ambient"),
        },
        "plenum" => NodeKind::Plenum {
            volume: row.number("volume"),
            cad_volume: row.number("cadVolume"),
        },
        "header" => NodeKind::Header {
            area: row.number("area")?,
            regain_dividing: row.number("regainDividing"),
            regain_combining: row.number("regainCombining"),
            volume: row.number("volume"),
            cad_volume: row.number("cadVolume"),
        },
        "tee" => NodeKind::Tee {
            area: row.number("area")?,
            side_area: row.number("sideArea")?,
            law: junction_law(row)?,
        },
        "wye" => NodeKind::Wye {
            area: row.number("area")?,
            side_area: row.number("sideArea")?,
            angle: row.number("angle")?,
            law: junction_law(row)?,
        },
        "joint" => NodeKind::Joint {},
        "port" => NodeKind::Port {
            cylinder: row.text("cylinder")?,
            valve: row.object("valve", valve),
            cad_section: row.number("cadSection"),
        },
        _ => return None,
    };
    Some(Node {
        id: row.text("id")?,
        kind,
    })
}

fn junction_law(row: Row) -> Option<JunctionLaw> {
    Some(match row.word("law") {
        None => JunctionLaw::default(),
        Some("bassett2001") => JunctionLaw::Bassett2001,
        Some("idelchik") => JunctionLaw::Idelchik,
        Some("rennels2012") => JunctionLaw::Rennels2012,
        Some("gardel1957") => JunctionLaw::Gardel1957,
        Some("craneTp410") => JunctionLaw::CraneTp410,
        Some(_) => return None,
    })
}

fn valve(row: Row) -> Option<Valve> {
    Some(Valve {
        diameter: row.number("diameter")?,
        lift: row.number("lift")?,
        discharge_coefficient: row.number("dischargeCoefficient"),
        discharge_table: row.pairs("dischargeTable")?,
        throat_diameter: row.number("throatDiameter"),
        stem_diameter: row.number("stemDiameter"),
        count: row.number("count").unwrap_or_else(one),
    })
}

fn branch(row: Row) -> Option<Branch> {
    Some(Branch {
        id: row.text("id")?,
        from: row.text("from")?,
        to: row.text("to")?,
        from_leg: row.word("fromLeg").and_then(leg),
        to_leg: row.word("toLeg").and_then(leg),
        jet_fraction: row.number("jetFraction"),
        jet_distance: row.number("jetDistance"),
        jet_offset: row.number("jetOffset"),
        jet_angle: row.number("jetAngle"),
        losses: row.list("losses", loss)?,
        blower: row.object("blower", blower),
        bypass: row.flag("bypass"),
        temperature_rise: row.number("temperatureRise"),
    })
}

fn leg(word: &str) -> Option<Leg> {
    match word {
        "run" => Some(Leg::Run),
        "side" => Some(Leg::Side),
        _ => None,
    }
}
