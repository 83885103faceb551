//! Mutations of a study as JSON: what random bytes would hardly ever reach, a document that is wrong in one
//! place only, or in none.

use evenport::{FieldInfo, KindInfo, catalogue};
use serde_json::{Map, Number, Value};

/// xorshift64*, Vigna 2016.
pub struct Random(u64);

impl Random {
    /// Numbers from a seed.
    #[must_use]
    pub fn new(seed: u32) -> Self {
        // Spread, so that neighbouring seeds begin differently; never zero, where the generator would stay.
        Self((u64::from(seed) << 1 | 1).wrapping_mul(0x9E37_79B9_7F4A_7C15))
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 16
    }

    /// A whole number below a count, which is not zero.
    pub fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }

    fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        list[self.below(list.len())]
    }
}

/// The text of a document with a few changes; nothing when it is no JSON.
#[must_use]
pub fn mutated(text: &str, random: &mut Random) -> Option<String> {
    let mut document: Value = serde_json::from_str(text).ok()?;
    for _ in 0..=random.below(4) {
        let donor = random.below(4) == 0;
        let given = donor.then(|| picked(&document, random).clone());
        let place = random.below(count(&document));
        change(at(&mut document, place), given, random);
    }
    serde_json::to_string(&document).ok()
}

/// One document with a part of another in it; nothing when one of them is no JSON.
#[must_use]
pub fn crossed(text: &str, other: &str, random: &mut Random) -> Option<String> {
    let mut document: Value = serde_json::from_str(text).ok()?;
    let other: Value = serde_json::from_str(other).ok()?;
    let place = random.below(count(&document));
    let given = picked(&other, random).clone();
    change(at(&mut document, place), Some(given), random);
    serde_json::to_string(&document).ok()
}

/// Changes a value: puts `given` into it or in its place, or else something that makes trouble.
fn change(value: &mut Value, given: Option<Value>, random: &mut Random) {
    match value {
        Value::Array(list) => change_list(list, given, random),
        Value::Object(object) => change_object(object, given, random),
        Value::Number(number) if given.is_none() && random.below(2) == 0 => {
            let factor = random.one_of(&[0.0, 0.5, 0.999, 1.001, 2.0, 10.0, 1e3, 1e-3, 1e6, -1.0]);
            let number = number.as_f64().unwrap_or(1.0) * factor;
            *value = Number::from_f64(number).map_or(Value::Null, Value::Number);
        }
        _ => *value = given.unwrap_or_else(|| scalar(random)),
    }
}

fn change_list(list: &mut Vec<Value>, given: Option<Value>, random: &mut Random) {
    if let Some(given) = given {
        return list.insert(random.below(list.len() + 1), given);
    }
    if list.is_empty() {
        return list.push(scalar(random));
    }
    let place = random.below(list.len());
    match random.below(5) {
        0 => drop(list.remove(place)),
        1 => list.insert(place, list[place].clone()),
        2 => {
            let other = random.below(list.len());
            list.swap(place, other);
        }
        3 => {
            let copies = 1 << random.below(6);
            let row = list[place].clone();
            list.extend(std::iter::repeat_n(row, copies));
        }
        _ => list[place] = scalar(random),
    }
}

fn change_object(object: &mut Map<String, Value>, given: Option<Value>, random: &mut Random) {
    let keys: Vec<String> = object.keys().cloned().collect();
    let key = (!keys.is_empty()).then(|| keys[random.below(keys.len())].clone());
    match (random.below(5), key) {
        (0, Some(key)) => drop(object.remove(&key)),
        (1, Some(key)) => {
            let value = object.remove(&key).unwrap_or_default();
            object.insert(word(random).to_owned(), value);
        }
        // Another kind of node or loss, with all that it needs.
        (2, _) => {
            let catalogue = catalogue();
            let kinds = [catalogue.nodes, catalogue.losses][random.below(2)];
            fill(object, &kinds[random.below(kinds.len())], random);
        }
        (3, _) => {
            let fields = fields(random);
            let field = fields[random.below(fields.len())];
            object.insert(field.name.to_owned(), bounded(&field, random));
        }
        (_, Some(key)) => {
            object.insert(key, given.unwrap_or_else(|| scalar(random)));
        }
        _ => drop(object.insert(word(random).to_owned(), scalar(random))),
    }
}

fn fill(object: &mut Map<String, Value>, kind: &KindInfo, random: &mut Random) {
    object.insert("kind".to_owned(), kind.kind.into());
    for field in kind.fields {
        if field.required || random.below(2) == 0 {
            object.insert(field.name.to_owned(), bounded(field, random));
        }
    }
    if !kind.laws.is_empty() {
        let law = kind.laws[random.below(kind.laws.len())].name;
        object.insert("law".to_owned(), law.into());
    }
}

/// Some list of fields of the catalogue; none is empty.
fn fields(random: &mut Random) -> &'static [FieldInfo] {
    let all = catalogue();
    let lists = [
        all.branch,
        all.engine,
        all.cylinder,
        all.valve,
        all.bench,
        all.reading.fields,
        all.running,
        all.ambient,
        all.fuel,
        all.blower.fields,
        all.cooler.fields,
        all.check,
        all.station,
        all.station_bend,
    ];
    let kinds = [all.nodes, all.losses].concat();
    let kinds = kinds.iter().map(|kind| kind.fields);
    let lists: Vec<_> = lists
        .into_iter()
        .chain(kinds)
        .filter(|list| !list.is_empty())
        .collect();
    random.one_of(&lists)
}

/// A number at or near the ends of what a field can be, or somewhere between them.
fn bounded(field: &FieldInfo, random: &mut Random) -> Value {
    let FieldInfo {
        minimum, maximum, ..
    } = *field;
    let number = match random.below(8) {
        0 => minimum,
        1 => maximum,
        2 => minimum.next_down(),
        3 => maximum.next_up(),
        4 => field.default.unwrap_or(minimum),
        _ => {
            let part = random.below(1001) as f64 / 1000.0;
            // Evenly over decades where a field has some.
            if minimum > 0.0 && random.below(2) == 0 {
                minimum * (maximum / minimum).powf(part)
            } else {
                minimum + (maximum - minimum) * part
            }
        }
    };
    Number::from_f64(number).map_or(Value::Null, Value::Number)
}

fn scalar(random: &mut Random) -> Value {
    const NUMBERS: [f64; 20] = [
        0.0,
        -0.0,
        1.0,
        -1.0,
        2.0,
        0.5,
        1e-3,
        1e-6,
        1e-12,
        5e-324,
        f64::MIN_POSITIVE,
        1e-300,
        1e300,
        f64::MAX,
        f64::MIN,
        f64::EPSILON,
        4_294_967_296.0,
        9_007_199_254_740_993.0,
        1e19,
        273.15,
    ];
    const TEXTS: [&str; 12] = [
        "",
        " ",
        "\0",
        "\n",
        "1",
        "constructor",
        "__proto__",
        "\u{202e}",
        "\u{feff}",
        "e\u{301}",
        "💥",
        "</script>",
    ];
    match random.below(8) {
        0 => Value::Null,
        1 => Value::Bool(random.below(2) == 0),
        2 => Value::Array(Vec::new()),
        3 => Value::Object(Map::new()),
        4 => random.one_of(&TEXTS).into(),
        5 => word(random).into(),
        6 => {
            let fields = fields(random);
            bounded(&fields[random.below(fields.len())], random)
        }
        _ => random.one_of(&NUMBERS).into(),
    }
}

/// A word of the format.
fn word(random: &mut Random) -> &'static str {
    const WORDS: [&str; 62] = [
        "format",
        "version",
        "name",
        "notes",
        "engine",
        "settings",
        "network",
        "coolers",
        "variants",
        "nodes",
        "branches",
        "removed",
        "order",
        "cylinders",
        "firingOrder",
        "reference",
        "at",
        "node",
        "ports",
        "ambient",
        "bench",
        "running",
        "check",
        "units",
        "readings",
        "blowing",
        "id",
        "kind",
        "from",
        "to",
        "fromLeg",
        "toLeg",
        "run",
        "side",
        "losses",
        "blower",
        "bypass",
        "cylinder",
        "bank",
        "valve",
        "dischargeTable",
        "boostNode",
        "volumetricTable",
        "isentropicTable",
        "speeds",
        "ratios",
        "values",
        "cycle",
        "twoStroke",
        "fuel",
        "setting",
        "upstream",
        "closedLoopPerBank",
        "law",
        "cooler",
        "series",
        "mixing",
        "airMixed",
        "stations",
        "bends",
        "origin",
        "kReversed",
    ];
    match random.below(4) {
        0 => {
            let fields = fields(random);
            fields[random.below(fields.len())].name
        }
        1 => {
            let kinds = [catalogue().nodes, catalogue().losses][random.below(2)];
            kinds[random.below(kinds.len())].kind
        }
        _ => random.one_of(&WORDS),
    }
}

/// How many values a document has, itself and all that it holds.
fn count(value: &Value) -> usize {
    1 + match value {
        Value::Array(list) => list.iter().map(count).sum(),
        Value::Object(object) => object.values().map(count).sum(),
        _ => 0,
    }
}

/// The value in a place, counted as `count` does.
fn at(value: &mut Value, place: usize) -> &mut Value {
    fn inside<'v>(values: impl Iterator<Item = &'v mut Value>, mut place: usize) -> &'v mut Value {
        for value in values {
            let count = count(value);
            if place < count {
                return at(value, place);
            }
            place -= count;
        }
        unreachable!("a place below the count is in one of the values")
    }
    if place == 0 {
        return value;
    }
    match value {
        Value::Array(list) => inside(list.iter_mut(), place - 1),
        Value::Object(object) => inside(object.values_mut(), place - 1),
        _ => value,
    }
}

fn picked<'v>(value: &'v Value, random: &mut Random) -> &'v Value {
    let mut found = value;
    loop {
        let inner: Vec<&Value> = match found {
            Value::Array(list) => list.iter().collect(),
            Value::Object(object) => object.values().collect(),
            _ => return found,
        };
        if inner.is_empty() || (random.below(4) == 0 && !std::ptr::eq(found, value)) {
            return found;
        }
        found = inner[random.below(inner.len())];
    }
}
