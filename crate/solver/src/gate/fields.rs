//! Every value of a study against the catalogue: type, presence, finite, inside its bounds.

use serde_json::{Map, Value};

use crate::catalogue::{Catalogue, FieldInfo, KindInfo, catalogue};
use crate::error::{StudyError, StudyErrorKind as Kind};

/// More rows than any manifold has; the solver takes more, the page would not stay fluid.
const MOST_ROWS: usize = 2_000;
const MOST_LOSSES: usize = 200;

type Object = Map<String, Value>;

/// Checks every value; the format and version have been checked.
pub fn check(study: &Object) -> Vec<StudyError> {
    let mut gate = Gate {
        catalogue: catalogue(),
        errors: Vec::new(),
    };
    gate.study(study);
    gate.errors
}

struct Gate {
    catalogue: Catalogue,
    errors: Vec<StudyError>,
}

impl Gate {
    fn say(&mut self, kind: Kind, element: &str, field: &str, message: impl Into<String>) {
        self.errors.push(StudyError {
            kind,
            element: element.to_owned(),
            field: field.to_owned(),
            message: message.into(),
        });
    }

    fn study(&mut self, study: &Object) {
        let known = [
            "format", "version", "name", "notes", "engine", "settings", "network", "variants",
        ];
        self.known_fields(study, "", "", &known);
        self.text(study, "", "name", true);
        self.text(study, "", "notes", false);
        if let Some(engine) = self.object(study, "", "engine", false) {
            self.engine(engine);
        }
        if let Some(settings) = self.object(study, "", "settings", false) {
            self.settings(settings);
        }
        if let Some(network) = self.object(study, "", "network", true) {
            self.network(network, "");
        }
        for (position, variant) in self
            .list(study, "", "variants", false, MOST_ROWS)
            .iter()
            .enumerate()
        {
            let element = format!("variant {}", position + 1);
            let Some(variant) = variant.as_object() else {
                self.say(Kind::WrongType, &element, "", "a variant is an object");
                continue;
            };
            self.known_fields(
                variant,
                &element,
                "",
                &["name", "notes", "nodes", "branches", "removed"],
            );
            self.text(variant, &element, "name", true);
            self.text(variant, &element, "notes", false);
            self.texts(variant, &element, "removed", "an id is text");
            self.network(variant, &element);
        }
    }

    fn network(&mut self, network: &Object, element: &str) {
        if element.is_empty() {
            self.known_fields(network, element, "network", &["nodes", "branches"]);
        }
        let required = element.is_empty();
        for (position, node) in self
            .list(network, element, "nodes", required, MOST_ROWS)
            .iter()
            .enumerate()
        {
            self.node(node, position);
        }
        for (position, branch) in self
            .list(network, element, "branches", required, MOST_ROWS)
            .iter()
            .enumerate()
        {
            self.branch(branch, position);
        }
    }

    fn engine(&mut self, engine: &Object) {
        let fields = self.catalogue.engine.clone();
        let mut known = vec!["cylinders", "reference", "firingOrder"];
        known.extend(fields.iter().map(|field| field.name));
        self.known_fields(engine, "engine", "", &known);
        self.numbers(engine, "engine", "", &fields);
        let cylinder_fields = self.catalogue.cylinder.clone();
        for (position, cylinder) in self
            .list(engine, "engine", "cylinders", false, MOST_ROWS)
            .iter()
            .enumerate()
        {
            let element = id_or_place(cylinder, "cylinder", position);
            let Some(cylinder) = cylinder.as_object() else {
                self.say(Kind::WrongType, &element, "", "a cylinder is an object");
                continue;
            };
            let mut known = vec!["id", "bank"];
            known.extend(cylinder_fields.iter().map(|field| field.name));
            self.known_fields(cylinder, &element, "", &known);
            self.text(cylinder, &element, "id", true);
            self.text(cylinder, &element, "bank", false);
            self.numbers(cylinder, &element, "", &cylinder_fields);
        }
        self.texts(engine, "engine", "firingOrder", "a cylinder id is text");
        if let Some(reference) = self.object(engine, "engine", "reference", false) {
            self.known_fields(reference, "engine", "reference", &["at", "node"]);
            match reference.get("at").and_then(Value::as_str) {
                Some("ambient" | "ports") => {}
                Some("node") => self.text(reference, "engine", "node", true),
                _ => self.say(
                    Kind::UnknownChoice,
                    "engine",
                    "reference.at",
                    "one of ambient, node, ports",
                ),
            }
        }
    }

    fn settings(&mut self, settings: &Object) {
        self.known_fields(settings, "settings", "", &["bench", "running", "units"]);
        let groups = [
            ("bench", self.catalogue.bench.clone()),
            ("running", self.catalogue.running.clone()),
        ];
        for (name, fields) in groups {
            let Some(group) = self.object(settings, "settings", name, false) else {
                continue;
            };
            let mut known: Vec<&str> = fields.iter().map(|field| field.name).collect();
            if name == "bench" {
                known.push("blowing");
                if group
                    .get("blowing")
                    .is_some_and(|value| !value.is_boolean())
                {
                    self.say(
                        Kind::WrongType,
                        "settings",
                        "bench.blowing",
                        "true or false",
                    );
                }
            }
            self.known_fields(group, "settings", name, &known);
            // Settings all have defaults, so none is missing.
            let optional: Vec<FieldInfo> = fields
                .into_iter()
                .map(|field| FieldInfo {
                    required: false,
                    ..field
                })
                .collect();
            self.numbers(group, "settings", &format!("{name}."), &optional);
        }
        if let Some(units) = self.object(settings, "settings", "units", false) {
            for (quantity, unit) in units {
                if !unit.is_string() {
                    self.say(
                        Kind::WrongType,
                        "settings",
                        &format!("units.{quantity}"),
                        "a unit is text",
                    );
                }
            }
        }
    }

    fn node(&mut self, node: &Value, position: usize) {
        let element = id_or_place(node, "node", position);
        let Some(node) = node.as_object() else {
            return self.say(Kind::WrongType, &element, "", "a node is an object");
        };
        self.text(node, &element, "id", true);
        let Some(kind) = self.kind(node, &element, "kind", self.catalogue.nodes.clone()) else {
            return;
        };
        let mut known = vec!["id", "kind"];
        known.extend(kind.fields.iter().map(|field| field.name));
        match kind.kind {
            "tee" | "wye" => {
                known.push("law");
                let laws = self.catalogue.junction_laws.clone();
                if let Some(law) = node.get("law")
                    && !laws.iter().any(|choice| law.as_str() == Some(choice.name))
                {
                    let names: Vec<&str> = laws.iter().map(|choice| choice.name).collect();
                    self.say(
                        Kind::UnknownChoice,
                        &element,
                        "law",
                        format!("one of {}", names.join(", ")),
                    );
                }
            }
            "port" => {
                known.extend(["cylinder", "valve"]);
                self.text(node, &element, "cylinder", true);
                if let Some(valve) = self.object(node, &element, "valve", false) {
                    let fields = self.catalogue.valve.clone();
                    let names: Vec<&str> = fields.iter().map(|field| field.name).collect();
                    self.known_fields(valve, &element, "valve", &names);
                    self.numbers(valve, &element, "valve.", &fields);
                }
            }
            _ => {}
        }
        self.known_fields(node, &element, "", &known);
        self.numbers(node, &element, "", &kind.fields);
    }

    fn branch(&mut self, branch: &Value, position: usize) {
        let element = id_or_place(branch, "branch", position);
        let Some(branch) = branch.as_object() else {
            return self.say(Kind::WrongType, &element, "", "a branch is an object");
        };
        let fields = self.catalogue.branch.clone();
        let mut known = vec!["id", "from", "to", "fromLeg", "toLeg", "losses"];
        known.extend(fields.iter().map(|field| field.name));
        self.known_fields(branch, &element, "", &known);
        for name in ["id", "from", "to"] {
            self.text(branch, &element, name, true);
        }
        for name in ["fromLeg", "toLeg"] {
            if branch
                .get(name)
                .is_some_and(|leg| !matches!(leg.as_str(), Some("run" | "side")))
            {
                self.say(Kind::UnknownChoice, &element, name, "one of run, side");
            }
        }
        self.numbers(branch, &element, "", &fields);
        for (place, loss) in self
            .list(branch, &element, "losses", true, MOST_LOSSES)
            .iter()
            .enumerate()
        {
            self.loss(loss, &element, place);
        }
    }

    fn loss(&mut self, loss: &Value, element: &str, place: usize) {
        let prefix = format!("losses[{place}]");
        let Some(loss) = loss.as_object() else {
            return self.say(Kind::WrongType, element, &prefix, "a loss is an object");
        };
        let kinds = self.catalogue.losses.clone();
        let Some(kind) = self.kind(loss, element, &format!("{prefix}.kind"), kinds) else {
            return;
        };
        let mut known = vec!["kind"];
        known.extend(kind.fields.iter().map(|field| field.name));
        if kind.kind == "typedK" {
            known.push("origin");
            if loss.get("origin").is_some_and(|origin| !origin.is_string()) {
                self.say(
                    Kind::WrongType,
                    element,
                    &format!("{prefix}.origin"),
                    "where the value comes from, as text",
                );
            }
        }
        self.known_fields(loss, element, &prefix, &known);
        self.numbers(loss, element, &format!("{prefix}."), &kind.fields);
    }

    fn kind(
        &mut self,
        row: &Object,
        element: &str,
        field: &str,
        kinds: Vec<KindInfo>,
    ) -> Option<KindInfo> {
        let name = row.get("kind").and_then(Value::as_str);
        let found = kinds.iter().find(|info| Some(info.kind) == name).cloned();
        if found.is_none() {
            let names: Vec<&str> = kinds.iter().map(|info| info.kind).collect();
            self.say(
                Kind::UnknownChoice,
                element,
                field,
                format!("one of {}", names.join(", ")),
            );
        }
        found
    }

    fn numbers(&mut self, row: &Object, element: &str, prefix: &str, fields: &[FieldInfo]) {
        for info in fields {
            let field = format!("{prefix}{}", info.name);
            match row.get(info.name) {
                None if info.required => {
                    self.say(
                        Kind::Missing,
                        element,
                        &field,
                        format!("{} is missing", info.label),
                    );
                }
                None => {}
                // A number that is not finite becomes null on its way through JSON.
                Some(Value::Null) if info.required => {
                    self.say(
                        Kind::Missing,
                        element,
                        &field,
                        format!("{} is missing or no finite number", info.label),
                    );
                }
                Some(Value::Null) => {
                    self.say(
                        Kind::OutOfBounds,
                        element,
                        &field,
                        format!("{} is no finite number; leave it out", info.label),
                    );
                }
                Some(value) => match value.as_f64() {
                    None => self.say(
                        Kind::WrongType,
                        element,
                        &field,
                        format!("{} should be a number", info.label),
                    ),
                    Some(number) if number >= info.minimum && number <= info.maximum => {}
                    Some(number) => {
                        let message = format!(
                            "{} is {number}, outside {} to {} (SI units)",
                            info.label, info.minimum, info.maximum
                        );
                        self.say(Kind::OutOfBounds, element, &field, message);
                    }
                },
            }
        }
    }

    fn text(&mut self, row: &Object, element: &str, field: &str, required: bool) {
        match row.get(field) {
            None if required => self.say(Kind::Missing, element, field, "is missing"),
            Some(value) if !value.is_string() => {
                self.say(Kind::WrongType, element, field, "should be text")
            }
            Some(Value::String(text)) if required && text.trim().is_empty() && field != "name" => {
                self.say(Kind::Missing, element, field, "is empty");
            }
            _ => {}
        }
    }

    fn texts(&mut self, row: &Object, element: &str, field: &str, message: &str) {
        let list = self.list(row, element, field, false, MOST_ROWS).iter();
        for (position, _) in list.enumerate().filter(|(_, text)| !text.is_string()) {
            let field = format!("{field}[{position}]");
            self.say(Kind::WrongType, element, &field, message);
        }
    }

    fn object<'v>(
        &mut self,
        row: &'v Object,
        element: &str,
        field: &str,
        required: bool,
    ) -> Option<&'v Object> {
        match row.get(field) {
            Some(Value::Object(object)) => Some(object),
            Some(_) => {
                self.say(Kind::WrongType, element, field, "should be an object");
                None
            }
            None => {
                if required {
                    self.say(Kind::Missing, element, field, "is missing");
                }
                None
            }
        }
    }

    fn list<'v>(
        &mut self,
        row: &'v Object,
        element: &str,
        field: &str,
        required: bool,
        most: usize,
    ) -> &'v [Value] {
        match row.get(field) {
            Some(Value::Array(list)) if list.len() > most => {
                self.say(
                    Kind::TooMany,
                    element,
                    field,
                    format!("has {} entries, at most {most} are taken", list.len()),
                );
                &[]
            }
            Some(Value::Array(list)) => list,
            Some(_) => {
                self.say(Kind::WrongType, element, field, "should be a list");
                &[]
            }
            None => {
                if required {
                    self.say(Kind::Missing, element, field, "is missing");
                }
                &[]
            }
        }
    }

    fn known_fields(&mut self, row: &Object, element: &str, prefix: &str, known: &[&str]) {
        for name in row.keys().filter(|name| !known.contains(&name.as_str())) {
            let field = if prefix.is_empty() {
                name.clone()
            } else {
                format!("{prefix}.{name}")
            };
            self.say(
                Kind::UnknownField,
                element,
                &field,
                "is not a field of this format",
            );
        }
    }
}

/// An element's id, or its place in the list when it has none.
fn id_or_place(row: &Value, what: &str, position: usize) -> String {
    match row.get("id").and_then(Value::as_str) {
        Some(id) if !id.is_empty() => id.to_owned(),
        _ => format!("{what} {}", position + 1),
    }
}
