//! Every value of a study against the catalogue: type, presence, finite, inside its bounds.

mod engine;

use serde_json::Value;

use super::variants::name_variant;
use super::{LONGEST_NAME, MOST_ERRORS, Object, value};
use crate::catalogue::{ChoiceInfo, FieldInfo, KindInfo, catalogue};
use crate::digits::plain;
use crate::error::{StudyError, StudyErrorKind as Kind};

/// More rows than any manifold has; the solver takes more, the page would not stay fluid.
const MOST_ROWS: usize = 2_000;
const MOST_LOSSES: usize = 200;
/// Each is looked for in every branch.
const MOST_COOLERS: usize = 100;
const MOST_STATIONS: usize = 500;

/// Checks every value; the format and version have been checked.
pub fn check(study: &Object) -> Vec<StudyError> {
    let mut gate = Gate { errors: Vec::new() };
    gate.study(study);
    gate.errors
}

/// Where an object stands: its element, and the way from there to it. Worded only when it is told.
#[derive(Clone, Copy)]
struct At<'a> {
    /// Id of the element.
    element: &'a str,
    /// The element's field that holds the object; empty for the element itself.
    inside: &'a str,
    /// The object's place in that field, when it is a list.
    place: Option<usize>,
}

impl<'a> At<'a> {
    fn element(element: &'a str) -> Self {
        Self::inside(element, "")
    }

    fn inside(element: &'a str, inside: &'a str) -> Self {
        Self {
            element,
            inside,
            place: None,
        }
    }

    /// The way to a field of the object, or to the object itself when it is empty.
    fn field(self, name: &str) -> String {
        let mut way = self.inside.to_owned();
        if let Some(place) = self.place {
            way += &format!("[{place}]");
        }
        if !way.is_empty() && !name.is_empty() {
            way.push('.');
        }
        way + name
    }
}

struct Gate {
    errors: Vec<StudyError>,
}

impl Gate {
    fn say(&mut self, kind: Kind, at: At, field: &str, message: &str) {
        if self.is_full() {
            return;
        }
        self.errors.push(StudyError {
            kind,
            element: at.element.to_owned(),
            field: at.field(field),
            message: message.to_owned(),
        });
    }

    /// Whether another error would not be told, so that it need not be looked for.
    fn is_full(&self) -> bool {
        self.errors.len() >= MOST_ERRORS
    }

    fn study(&mut self, study: &Object) {
        let at = At::element("");
        let known = [
            "format", "version", "name", "notes", "engine", "settings", "network", "coolers",
            "variants",
        ];
        self.known_fields(study, at, &known, &[]);
        self.text(study, at, "name", true);
        self.text(study, at, "notes", false);
        if let Some(engine) = self.object(study, at, "engine", false) {
            self.engine(engine);
        }
        if let Some(settings) = self.object(study, at, "settings", false) {
            self.settings(settings);
        }
        if let Some(network) = self.object(study, at, "network", true) {
            let known = ["nodes", "branches"];
            self.known_fields(network, At::inside("", "network"), &known, &[]);
            self.network(network, at, true);
        }
        self.elements(study, at, "coolers", false, "cooler", Self::cooler);
        self.elements(study, at, "variants", false, "variant", Self::variant);
    }

    fn variant(&mut self, variant: &Object, at: At) {
        let before = self.errors.len();
        let known = ["name", "notes", "nodes", "branches", "removed", "order"];
        self.known_fields(variant, at, &known, &[]);
        self.text(variant, at, "name", true);
        self.text(variant, at, "notes", false);
        self.texts(variant, at, "removed", "an id is text");
        self.texts(variant, at, "order", "an id is text");
        self.network(variant, at, false);
        let name = value(variant, "name").and_then(Value::as_str);
        for error in &mut self.errors[before..] {
            name_variant(error, name.unwrap_or_default(), at.element);
        }
    }

    fn network(&mut self, network: &Object, at: At, required: bool) {
        self.elements(network, at, "nodes", required, "node", Self::node);
        self.elements(network, at, "branches", required, "branch", Self::branch);
    }

    fn settings(&mut self, settings: &Object) {
        let at = At::element("settings");
        let known = ["bench", "running", "ambient", "check", "units"];
        self.known_fields(settings, at, &known, &[]);
        if let Some(bench) = self.object(settings, at, "bench", false) {
            let at = At::inside("settings", "bench");
            self.flag(bench, at, "blowing");
            self.known_fields(bench, at, &["blowing", "readings"], catalogue().bench);
            self.rows(bench, at, "readings", false, catalogue().reading.fields);
            self.numbers(bench, at, catalogue().bench);
        }
        for (group, fields) in [
            ("running", catalogue().running),
            ("ambient", catalogue().ambient),
            ("check", catalogue().check),
        ] {
            if let Some(object) = self.object(settings, at, group, false) {
                let at = At::inside("settings", group);
                self.known_fields(object, at, &[], fields);
                self.numbers(object, at, fields);
            }
        }
        if let Some(units) = self.object(settings, at, "units", false) {
            let at = At::inside("settings", "units");
            for (quantity, _) in units.iter().filter(|(_, unit)| !unit.is_string()) {
                self.say(Kind::WrongType, at, quantity, "a unit is text");
            }
        }
    }

    fn node(&mut self, node: &Object, at: At) {
        self.text(node, at, "id", true);
        let Some(kind) = self.kind(node, at, catalogue().nodes) else {
            return;
        };
        let known: &[&str] = match kind.kind {
            "tee" | "wye" => {
                self.choice(node, at, "law", catalogue().junction_laws);
                &["id", "kind", "law"]
            }
            "port" => {
                self.text(node, at, "cylinder", true);
                if let Some(valve) = self.object(node, at, "valve", false) {
                    let at = At::inside(at.element, "valve");
                    self.known_fields(valve, at, &["dischargeTable"], catalogue().valve);
                    self.pairs(valve, at, "dischargeTable");
                    self.numbers(valve, at, catalogue().valve);
                }
                &["id", "kind", "cylinder", "valve"]
            }
            "source" => {
                self.text(node, at, "boostNode", false);
                self.flag(node, at, "ambient");
                &["id", "kind", "boostNode", "ambient"]
            }
            _ => &["id", "kind"],
        };
        self.known_fields(node, at, known, kind.fields);
        self.numbers(node, at, kind.fields);
    }

    /// A word of a closed list, if it is there.
    fn choice(&mut self, row: &Object, at: At, field: &str, choices: &[ChoiceInfo]) {
        let mut names = choices.iter().map(|choice| choice.name);
        if let Some(word) = value(row, field)
            && !names.clone().any(|name| word.as_str() == Some(name))
        {
            self.say(Kind::UnknownChoice, at, field, &one_of(&mut names));
        }
    }

    fn flag(&mut self, row: &Object, at: At, field: &str) {
        if value(row, field).is_some_and(|value| !value.is_boolean()) {
            self.say(Kind::WrongType, at, field, "true or false");
        }
    }

    fn branch(&mut self, branch: &Object, at: At) {
        let fields = catalogue().branch;
        let known = [
            "id", "from", "to", "fromLeg", "toLeg", "losses", "blower", "bypass",
        ];
        self.known_fields(branch, at, &known, fields);
        for name in ["id", "from", "to"] {
            self.text(branch, at, name, true);
        }
        for name in ["fromLeg", "toLeg"] {
            let leg = value(branch, name);
            if leg.is_some_and(|leg| !matches!(leg.as_str(), Some("run" | "side"))) {
                self.say(Kind::UnknownChoice, at, name, "one of run, side");
            }
        }
        self.numbers(branch, at, fields);
        self.flag(branch, at, "bypass");
        if let Some(blower) = self.object(branch, at, "blower", false) {
            self.blower(blower, At::inside(at.element, "blower"));
        }
        let losses = self.list(branch, at, "losses", true, MOST_LOSSES).iter();
        for (place, loss) in losses.enumerate() {
            if self.is_full() {
                return;
            }
            let at = At {
                place: Some(place),
                ..At::inside(at.element, "losses")
            };
            match loss {
                Value::Object(loss) => self.loss(loss, at),
                _ => self.say(Kind::WrongType, at, "", "a loss is an object"),
            }
        }
    }

    fn loss(&mut self, loss: &Object, at: At) {
        let Some(kind) = self.kind(loss, at, catalogue().losses) else {
            return;
        };
        let known: &[&str] = match kind.kind {
            "typedK" => {
                if value(loss, "origin").is_some_and(|origin| !origin.is_string()) {
                    let message = "where the value comes from, as text";
                    self.say(Kind::WrongType, at, "origin", message);
                }
                &["kind", "origin"]
            }
            "core" => {
                self.text(loss, at, "cooler", false);
                &["kind", "cooler"]
            }
            "schedule" => {
                self.rows(loss, at, "stations", true, catalogue().station);
                self.rows(loss, at, "bends", false, catalogue().station_bend);
                self.choice(loss, at, "law", kind.laws);
                &["kind", "stations", "bends", "law"]
            }
            _ if kind.laws.is_empty() => &["kind"],
            _ => {
                self.choice(loss, at, "law", kind.laws);
                &["kind", "law"]
            }
        };
        self.known_fields(loss, at, known, kind.fields);
        self.numbers(loss, at, kind.fields);
    }

    /// The rows of a list: numbers only.
    fn rows(&mut self, loss: &Object, at: At, field: &str, required: bool, fields: &[FieldInfo]) {
        let way = at.field(field);
        let list = self.list(loss, at, field, required, MOST_STATIONS).iter();
        for (place, row) in list.enumerate() {
            let at = At {
                place: Some(place),
                ..At::inside(at.element, &way)
            };
            match row {
                Value::Object(row) => {
                    self.known_fields(row, at, &[], fields);
                    self.numbers(row, at, fields);
                }
                _ => self.say(Kind::WrongType, at, "", "a row is an object"),
            }
        }
    }

    /// A list of pairs of finite numbers.
    fn pairs(&mut self, row: &Object, at: At, field: &str) {
        let list = self.list(row, at, field, false, MOST_STATIONS).iter();
        for (place, pair) in list.enumerate() {
            let numbers = pair.as_array().map_or(&[][..], Vec::as_slice);
            let finite = |number: &Value| number.as_f64().is_some_and(f64::is_finite);
            if numbers.len() != 2 || !numbers.iter().all(finite) {
                let name = format!("{field}[{place}]");
                self.say(Kind::WrongType, at, &name, "two finite numbers");
            }
        }
    }

    fn kind(
        &mut self,
        row: &Object,
        at: At,
        kinds: &'static [KindInfo],
    ) -> Option<&'static KindInfo> {
        let name = value(row, "kind").and_then(Value::as_str);
        let found = kinds.iter().find(|info| Some(info.kind) == name);
        if found.is_none() {
            let message = one_of(&mut kinds.iter().map(|info| info.kind));
            self.say(Kind::UnknownChoice, at, "kind", &message);
        }
        found
    }

    fn numbers(&mut self, row: &Object, at: At, fields: &[FieldInfo]) {
        for info in fields {
            let label = info.label;
            let (kind, message) = match value(row, info.name) {
                None if info.required => (Kind::Missing, format!("{label} is missing")),
                None => continue,
                // A number that is not finite becomes null on its way through JSON.
                Some(Value::Null) if info.required => (
                    Kind::Missing,
                    format!("{label} is missing or no finite number"),
                ),
                Some(Value::Null) => (
                    Kind::OutOfBounds,
                    format!("{label} is no finite number; leave it out"),
                ),
                Some(value) => match value.as_f64() {
                    None => (Kind::WrongType, format!("{label} should be a number")),
                    Some(number) if number >= info.minimum && number <= info.maximum => continue,
                    Some(number) => (
                        Kind::OutOfBounds,
                        format!(
                            "{label} is {}, outside {} to {} (SI units)",
                            plain(number),
                            plain(info.minimum),
                            plain(info.maximum)
                        ),
                    ),
                },
            };
            self.say(kind, at, info.name, &message);
        }
    }

    fn text(&mut self, row: &Object, at: At, field: &str, required: bool) {
        match value(row, field) {
            None if required => self.say(Kind::Missing, at, field, "is missing"),
            Some(Value::String(text)) if required && text.trim().is_empty() && field != "name" => {
                self.say(Kind::Missing, at, field, "is empty");
            }
            Some(Value::String(text)) if text.len() > LONGEST_NAME && field != "notes" => {
                let message = format!("has {} bytes, at most {LONGEST_NAME} are taken", text.len());
                self.say(Kind::TooLarge, at, field, &message);
            }
            None | Some(Value::String(_)) => {}
            Some(_) => self.say(Kind::WrongType, at, field, "should be text"),
        }
    }

    fn texts(&mut self, row: &Object, at: At, field: &str, message: &str) {
        let list = self.list(row, at, field, false, MOST_ROWS).iter();
        for (place, _) in list.enumerate().filter(|(_, text)| !text.is_string()) {
            let at = At {
                place: Some(place),
                ..At::inside(at.element, field)
            };
            self.say(Kind::WrongType, at, "", message);
        }
    }

    fn object<'v>(
        &mut self,
        row: &'v Object,
        at: At,
        field: &str,
        required: bool,
    ) -> Option<&'v Object> {
        match value(row, field) {
            Some(Value::Object(object)) => return Some(object),
            Some(_) => self.say(Kind::WrongType, at, field, "should be an object"),
            None if required => self.say(Kind::Missing, at, field, "is missing"),
            None => {}
        }
        None
    }

    /// Checks the elements of a list one by one; `what` is the word for one of them.
    fn elements(
        &mut self,
        row: &Object,
        at: At,
        field: &str,
        required: bool,
        what: &str,
        check: fn(&mut Self, &Object, At),
    ) {
        let most = match what {
            "cooler" => MOST_COOLERS,
            _ => MOST_ROWS,
        };
        let list = self.list(row, at, field, required, most).iter();
        for (place, element) in list.enumerate() {
            if self.is_full() {
                return;
            }
            let name = id_or_place(element, what, place);
            let at = At::element(&name);
            match element {
                Value::Object(element) => check(self, element, at),
                _ => self.say(Kind::WrongType, at, "", &format!("a {what} is an object")),
            }
        }
    }

    fn list<'v>(
        &mut self,
        row: &'v Object,
        at: At,
        field: &str,
        required: bool,
        most: usize,
    ) -> &'v [Value] {
        match value(row, field) {
            Some(Value::Array(list)) if list.len() <= most => return list,
            Some(Value::Array(list)) => {
                let message = format!("has {} entries, at most {most} are taken", list.len());
                self.say(Kind::TooMany, at, field, &message);
            }
            Some(_) => self.say(Kind::WrongType, at, field, "should be a list"),
            None if required => self.say(Kind::Missing, at, field, "is missing"),
            None => {}
        }
        &[]
    }

    /// Tells of fields that are neither `known` nor among the `numbers`.
    fn known_fields(&mut self, row: &Object, at: At, known: &[&str], numbers: &[FieldInfo]) {
        for name in row.keys() {
            let name = name.as_str();
            if !known.contains(&name) && !numbers.iter().any(|info| info.name == name) {
                self.say(
                    Kind::UnknownField,
                    at,
                    name,
                    "is not a field of this format",
                );
            }
        }
    }
}

fn one_of(names: &mut dyn Iterator<Item = &'static str>) -> String {
    let names: Vec<&str> = names.collect();
    format!("one of {}", names.join(", "))
}

/// An element's id, or its place in the list when it has none.
fn id_or_place(row: &Value, what: &str, place: usize) -> String {
    let id = row.as_object().and_then(|row| value(row, "id"));
    match id.and_then(Value::as_str) {
        Some(id) if !id.is_empty() && id.len() <= LONGEST_NAME => id.to_owned(),
        _ => format!("{what} {}", place + 1),
    }
}
