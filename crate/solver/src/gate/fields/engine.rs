//! The engine, its blower and its charge coolers.

use serde_json::Value;

use super::{At, Gate, Object, value};
use crate::catalogue::catalogue;
use crate::error::StudyErrorKind as Kind;

/// Points along one side of an efficiency table, and in all.
const MOST_POINTS: usize = 2_000;

impl Gate {
    pub(super) fn engine(&mut self, engine: &Object) {
        let at = At::element("engine");
        let fields = catalogue().engine;
        let known = [
            "cylinders",
            "reference",
            "firingOrder",
            "volumetricTable",
            "cycle",
            "fuel",
        ];
        self.known_fields(engine, at, &known, fields);
        self.numbers(engine, at, fields);
        self.elements(engine, at, "cylinders", false, "cylinder", Self::cylinder);
        self.texts(engine, at, "firingOrder", "a cylinder id is text");
        self.table(engine, at, "volumetricTable");
        self.choice(engine, at, "cycle", catalogue().cycles);
        if let Some(fuel) = self.object(engine, at, "fuel", false) {
            let at = At::inside("engine", "fuel");
            self.known_fields(fuel, at, &["setting"], catalogue().fuel);
            self.numbers(fuel, at, catalogue().fuel);
            self.choice(fuel, at, "setting", catalogue().fuel_settings);
        }
        if let Some(reference) = self.object(engine, at, "reference", false) {
            let at = At::inside("engine", "reference");
            self.known_fields(reference, at, &["at", "node"], &[]);
            match value(reference, "at").and_then(Value::as_str) {
                Some("ambient" | "ports") => {}
                Some("node") => self.text(reference, at, "node", true),
                _ => self.say(Kind::UnknownChoice, at, "at", "one of ambient, node, ports"),
            }
        }
    }

    fn cylinder(&mut self, cylinder: &Object, at: At) {
        let fields = catalogue().cylinder;
        self.known_fields(cylinder, at, &["id", "bank"], fields);
        self.text(cylinder, at, "id", true);
        self.text(cylinder, at, "bank", false);
        self.numbers(cylinder, at, fields);
    }

    pub(super) fn blower(&mut self, blower: &Object, at: At) {
        let fields = catalogue().blower.fields;
        let known = ["boostNode", "volumetricTable", "isentropicTable"];
        self.known_fields(blower, at, &known, fields);
        self.numbers(blower, at, fields);
        self.text(blower, at, "boostNode", false);
        self.table(blower, at, "volumetricTable");
        self.table(blower, at, "isentropicTable");
    }

    pub(super) fn cooler(&mut self, cooler: &Object, at: At) {
        let fields = catalogue().cooler.fields;
        self.known_fields(cooler, at, &["id", "mixing", "series"], fields);
        self.text(cooler, at, "id", true);
        self.numbers(cooler, at, fields);
        self.choice(cooler, at, "mixing", catalogue().mixings);
        self.texts(cooler, at, "series", "an id is text");
    }

    /// An efficiency table: lists of finite numbers. What they say together is asked once they are read.
    fn table(&mut self, row: &Object, at: At, field: &str) {
        let Some(table) = self.object(row, at, field, false) else {
            return;
        };
        let way = at.field(field);
        let at = At::inside(at.element, &way);
        self.known_fields(table, at, &["speeds", "ratios", "values"], &[]);
        for (name, required) in [("speeds", true), ("ratios", false), ("values", true)] {
            let list = self.list(table, at, name, required, MOST_POINTS);
            if !list
                .iter()
                .all(|point| point.as_f64().is_some_and(f64::is_finite))
            {
                self.say(Kind::WrongType, at, name, "a list of finite numbers");
            }
        }
    }
}
