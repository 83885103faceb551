//! Which laws each kind follows: what the page of all laws is ordered by.

/// A kind, and a law that it follows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Follows {
    /// Kind of node or loss, or another part of the study that has laws: `blower`, `cooler`, `engine`, `bench`,
    /// `ambient`, `fuel`.
    pub kind: &'static str,
    /// The author in the catalogue's list for whom it holds; empty where it holds for each of them.
    pub author: &'static str,
    /// Its file below `law/`, without its ending.
    pub law: &'static str,
}

const fn each(kind: &'static str, law: &'static str) -> Follows {
    by(kind, "", law)
}

const fn by(kind: &'static str, author: &'static str, law: &'static str) -> Follows {
    Follows { kind, author, law }
}

/// Every kind that computes something with its laws, and every law. A law is told in full at its first kind.
pub static FOLLOWS: [Follows; 69] = [
    by("entrySharp", "idelchik", "entry/sharp_idelchik"),
    by("entrySharp", "rennels2012", "entry/sharp_rennels_2012"),
    by("entryRounded", "rennels2012", "entry/rounded_rennels_2012"),
    by("entryRounded", "idelchik", "entry/rounded_idelchik"),
    by("entryRounded", "swamee2008", "entry/rounded_swamee_2008"),
    each("entryFlared", "entry/flared_idelchik"),
    by(
        "entryReentrant",
        "rennels2012",
        "entry/reentrant_rennels_2012",
    ),
    by("entryReentrant", "idelchik", "entry/reentrant_idelchik"),
    each("duct", "friction/churchill_1977"),
    each("duct", "friction/laminar_noncircular_shah_london_1978"),
    each("hose", "friction/hose_hawthorne_1963"),
    each("hose", "friction/churchill_1977"),
    by("bend", "rennels2012", "bend/rennels_2012"),
    by("bend", "idelchik", "bend/idelchik"),
    by("bend", "craneTp410", "bend/crane_tp410"),
    each("bend", "friction/churchill_1977"),
    each("bendPair", "bend/pair_miller_1990"),
    each("bendPair", "bend/rennels_2012"),
    each("bendPair", "friction/churchill_1977"),
    each("suddenChange", "area/sudden_expansion_borda_carnot"),
    by(
        "suddenChange",
        "rennels2012",
        "area/sudden_contraction_rennels_2012",
    ),
    by(
        "suddenChange",
        "idelchik",
        "area/sudden_contraction_idelchik",
    ),
    by("gradualChange", "rennels2012", "area/diffuser_rennels_2012"),
    by(
        "gradualChange",
        "rennels2012",
        "area/contraction_conical_rennels_2012",
    ),
    by("gradualChange", "craneTp410", "area/diffuser_crane_tp410"),
    by(
        "gradualChange",
        "craneTp410",
        "area/contraction_conical_crane_tp410",
    ),
    each("schedule", "friction/churchill_1977"),
    by("schedule", "rennels2012", "area/diffuser_rennels_2012"),
    by(
        "schedule",
        "rennels2012",
        "area/contraction_conical_rennels_2012",
    ),
    by("schedule", "rennels2012", "bend/rennels_2012"),
    by("schedule", "idelchik", "area/diffuser_rennels_2012"),
    by(
        "schedule",
        "idelchik",
        "area/contraction_conical_rennels_2012",
    ),
    by("schedule", "idelchik", "bend/idelchik"),
    by("schedule", "craneTp410", "area/diffuser_crane_tp410"),
    by(
        "schedule",
        "craneTp410",
        "area/contraction_conical_crane_tp410",
    ),
    by("schedule", "craneTp410", "bend/crane_tp410"),
    each("opening", "opening/contracted_jet"),
    each("opening", "opening/thick_edge_idelchik"),
    by("screenRound", "blevins1984", "screen/round_blevins_1984"),
    by("screenRound", "idelchik", "screen/round_idelchik"),
    by("screenSquare", "blevins1984", "screen/square_blevins_1984"),
    by("screenSquare", "idelchik", "screen/square_idelchik"),
    each("throttle", "throttle/plate_heywood_1988"),
    each("core", "cooler/two_point_fit"),
    each("cooler", "cooler/effectiveness"),
    each("cooler", "cooler/poisson"),
    each("cooler", "cooler/conductance"),
    each("header", "junction/header_momentum"),
    by("tee", "bassett2001", "junction/bassett_2001"),
    by("tee", "idelchik", "junction/idelchik"),
    by("tee", "rennels2012", "junction/rennels_2012"),
    by("tee", "gardel1957", "junction/gardel_1957"),
    by("tee", "craneTp410", "junction/crane_tp410"),
    each("tee", "junction/symmetric_bassett_2001"),
    by("wye", "bassett2001", "junction/bassett_2001"),
    by("wye", "idelchik", "junction/idelchik"),
    by("wye", "rennels2012", "junction/rennels_2012"),
    by("wye", "gardel1957", "junction/gardel_1957"),
    by("wye", "craneTp410", "junction/crane_tp410"),
    each("wye", "junction/symmetric_bassett_2001"),
    each("plenum", "junction/plenum_jet"),
    each("plenum", "junction/impinging_jet_beltaos_1974"),
    each("port", "valve/curtain_area"),
    each("engine", "valve/mach_index_taylor"),
    each("blower", "blower/positive_displacement"),
    each("blower", "blower/table"),
    each("bench", "opening/depression"),
    each("ambient", "air/standard_atmosphere_iso_2533"),
    each("fuel", "mixture"),
];

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;
    use std::fs;
    use std::path::Path;

    use super::FOLLOWS;
    use crate::catalogue::{KindInfo, catalogue};

    /// Every law's file below a folder, as the list names it.
    fn files(folder: &Path, name: &str, found: &mut BTreeSet<String>) {
        for entry in fs::read_dir(folder).expect("the folder of the laws") {
            let path = entry.expect("a file").path();
            let file = path.file_name().expect("a name").to_string_lossy();
            if path.is_dir() {
                files(&path, &format!("{name}{file}/"), found);
            } else if file != "mod.rs" && file != "outside.rs" {
                found.insert(format!("{name}{}", file.trim_end_matches(".rs")));
            }
        }
    }

    /// Kinds with the authors that each offers.
    fn kinds() -> Vec<(&'static KindInfo, BTreeSet<&'static str>)> {
        let catalogue = catalogue();
        let all = catalogue.losses.iter().chain(catalogue.nodes);
        let all = all.chain([&catalogue.blower, &catalogue.cooler]);
        all.map(|kind| {
            let laws = match kind.kind {
                "tee" | "wye" => catalogue.junction_laws,
                _ => kind.laws,
            };
            (kind, laws.iter().map(|law| law.name).collect())
        })
        .collect()
    }

    #[test]
    fn every_law_is_followed_by_a_kind() {
        let mut written = BTreeSet::new();
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("crate/solver/src/law");
        files(&folder, "", &mut written);
        let followed: BTreeSet<String> = FOLLOWS.iter().map(|row| row.law.to_owned()).collect();
        assert_eq!(followed, written);
    }

    #[test]
    fn every_kind_that_computes_follows_a_law_of_each_author() {
        for (kind, authors) in kinds() {
            let rows: Vec<_> = FOLLOWS.iter().filter(|row| row.kind == kind.kind).collect();
            let computes = !kind.equation.is_empty() || kind.scatter > 0.0;
            assert!(
                !rows.is_empty() || !computes || kind.kind == "typedK",
                "{} follows no law",
                kind.kind
            );
            let named: BTreeSet<&str> = rows.iter().map(|row| row.author).collect();
            let named: BTreeSet<&str> = named.into_iter().filter(|name| !name.is_empty()).collect();
            assert_eq!(named, authors, "authors of {}", kind.kind);
        }
    }

    #[test]
    fn every_row_is_of_a_known_kind_and_stands_once() {
        let known: BTreeSet<&str> = kinds().iter().map(|(kind, _)| kind.kind).collect();
        for (place, row) in FOLLOWS.iter().enumerate() {
            let part = matches!(row.kind, "engine" | "bench" | "ambient" | "fuel");
            assert!(part || known.contains(row.kind), "{}", row.kind);
            assert!(!FOLLOWS[..place].contains(row), "{row:?} stands twice");
        }
    }
}
