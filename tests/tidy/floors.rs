//! The rooms of each crate stand on floors: a room knows only those below it, and no files know
//! each other in a circle.
//!
//! A file and those in the folder of its name are one room to each other: the inner ones may use
//! what the outer one says. The picture in DEVELOPERS.md is made from here.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    expect_none,
    imports::{Imports, Module, imports},
    read, sources,
};

/// The rooms within a folder, from the top floor down; rooms of one floor do not know each other.
struct House {
    /// The folder with the sources.
    folder: &'static str,
    /// The module within which the rooms lie; empty for the crate.
    within: &'static str,
    /// The floors.
    floors: &'static [&'static [&'static str]],
}

/// Every list of floors that there is.
const HOUSES: [House; 4] = [
    House {
        folder: "bot/src",
        within: "",
        floors: &[
            &["commands"],
            &["backup", "play"],
            &["service"],
            &["engine"],
            &["parcel", "roll", "sheet", "store", "wording"],
            &["words"],
        ],
    },
    House {
        folder: "bot/src",
        within: "engine",
        floors: &[
            &["deeds", "watched"],
            &["post"],
            &["step"],
            &["questions"],
            &["said", "view"],
            &["memory", "turn"],
            &["budget", "local_time", "looks", "outcome", "roles", "setup"],
        ],
    },
    House {
        folder: "parser/src",
        within: "",
        floors: &[
            &["teach"],
            &["reader"],
            &["spoken"],
            &["learned"],
            &["rules"],
            &["pieces"],
            &["lists"],
            &["pack"],
            &["meaning"],
            &["reading"],
            &["glyphs"],
            &["when"],
            &["details"],
            &["kind", "languages", "span", "table"],
        ],
    },
    House {
        folder: "scheduler/src",
        within: "",
        floors: &[
            &["decide", "figures"],
            &["plan"],
            &["jobs"],
            &["group", "outlook"],
            &["land"],
            &["handbook"],
            &["words"],
            &["sums"],
        ],
    },
];

/// Crates whose files must not know each other in a circle.
const WITHOUT_CIRCLES: [&str; 2] = ["bot/src", "scheduler/src"];

impl House {
    fn name(&self) -> String {
        let within = if self.within.is_empty() { "" } else { "/" };
        format!("{}{within}{}", self.folder, self.within)
    }

    /// The room of a module, and its floor counted from the top.
    fn room<'m>(&self, module: &'m Module) -> Option<(usize, &'m str)> {
        let name = match (self.within, module.as_slice()) {
            ("", [room, ..]) => room,
            (within, [outer, room, ..]) if outer == within => room,
            _ => return None,
        };
        let floor = self
            .floors
            .iter()
            .position(|rooms| rooms.contains(&name.as_str()))?;
        Some((floor, name))
    }

    /// Arrows between rooms, each with the files that make it.
    fn arrows<'m>(&self, imports: &'m Imports) -> BTreeMap<(&'m str, &'m str), Vec<String>> {
        let mut arrows: BTreeMap<(&str, &str), Vec<String>> = BTreeMap::new();
        for (from, to) in pairs(imports) {
            let (Some((_, one)), Some((_, other))) = (self.room(from), self.room(to)) else {
                continue;
            };
            if one != other {
                let files = format!("{} -> {}", from.join("::"), to.join("::"));
                arrows.entry((one, other)).or_default().push(files);
            }
        }
        arrows
    }

    fn floor_of(&self, room: &str) -> usize {
        let floor = self.floors.iter().position(|rooms| rooms.contains(&room));
        floor.expect("the room is on a floor")
    }
}

fn pairs(imports: &Imports) -> impl Iterator<Item = (&Module, &Module)> {
    imports
        .iter()
        .flat_map(|(from, taken)| taken.iter().map(move |to| (from, to)))
}

#[test]
fn every_room_stands_on_a_floor() {
    let sources = sources();
    let mut breaches = Vec::new();
    for house in &HOUSES {
        let imports = imports(&sources, house.folder);
        let depth = if house.within.is_empty() { 1 } else { 2 };
        let inside = imports.keys().filter(|module| {
            module.len() >= depth && (house.within.is_empty() || module[0] == house.within)
        });
        for module in inside.filter(|module| house.room(module).is_none()) {
            breaches.push(format!("{}: {}", house.name(), module.join("::")));
        }
    }
    expect_none(
        &breaches,
        "give the room a floor in the list of tests/tidy/floors.rs",
    );
}

#[test]
fn no_room_knows_one_above_it_or_beside_it() {
    let sources = sources();
    let mut breaches = Vec::new();
    for house in &HOUSES {
        let imports = imports(&sources, house.folder);
        for ((one, other), files) in house.arrows(&imports) {
            if house.floor_of(other) <= house.floor_of(one) {
                breaches.extend(
                    files
                        .iter()
                        .map(|files| format!("{}: {files}", house.name())),
                );
            }
        }
    }
    expect_none(
        &breaches,
        "move what is needed down to a room that both may know, or ask from above",
    );
}

#[test]
fn no_files_know_each_other_in_a_circle() {
    let sources = sources();
    let mut breaches = Vec::new();
    for folder in WITHOUT_CIRCLES {
        let mut imports = imports(&sources, folder);
        for (from, taken) in &mut imports {
            // The inner files of a room may use what its outer file says.
            taken.retain(|to| !from.starts_with(to));
        }
        for circle in circles(&imports) {
            let names: Vec<String> = circle.iter().map(|module| module.join("::")).collect();
            breaches.push(format!("{folder}: {}", names.join(", ")));
        }
    }
    expect_none(
        &breaches,
        "a file that both need is missing: move the shared words into one below them",
    );
}

/// Takes away what knows nothing any more, again and again, from both ends; what is left are
/// circles and what lies between them.
fn circles(imports: &Imports) -> Vec<BTreeSet<Module>> {
    let mut left = imports.clone();
    loop {
        let known: BTreeSet<Module> = left.values().flatten().cloned().collect();
        let before = left.len();
        left.retain(|module, taken| !taken.is_empty() && known.contains(module));
        let modules: BTreeSet<Module> = left.keys().cloned().collect();
        for taken in left.values_mut() {
            taken.retain(|to| modules.contains(to));
        }
        if left.len() == before {
            let all: BTreeSet<Module> = left.into_keys().collect();
            return if all.is_empty() {
                Vec::new()
            } else {
                vec![all]
            };
        }
    }
}

#[test]
fn circles_are_found() {
    let module = |name: &str| vec![name.to_owned()];
    let imports = |pairs: &[(&str, &str)]| {
        let mut imports = Imports::new();
        for (from, to) in pairs {
            imports.entry(module(from)).or_default().insert(module(to));
            imports.entry(module(to)).or_default();
        }
        imports
    };
    assert!(circles(&imports(&[("a", "b"), ("b", "c"), ("a", "c")])).is_empty());
    let found = circles(&imports(&[("a", "b"), ("b", "c"), ("c", "b"), ("c", "d")]));
    assert_eq!(found, [BTreeSet::from([module("b"), module("c")])]);
}

/// One line a room: its floor, its name, and the rooms from which it takes something.
fn picture() -> String {
    let sources = sources();
    let mut page = String::new();
    for house in &HOUSES {
        let imports = imports(&sources, house.folder);
        let arrows = house.arrows(&imports);
        page += &format!("{}\n", house.name());
        for (down, rooms) in house.floors.iter().enumerate() {
            for room in *rooms {
                let below: Vec<&str> = arrows
                    .keys()
                    .filter(|(one, _)| one == room)
                    .map(|(_, other)| *other)
                    .collect();
                let floor = house.floors.len() - down;
                let line = format!("  {floor}  {room:<10} -> {}", below.join(", "));
                page += &format!("{}\n", line.trim_end_matches([' ', '>', '-']));
            }
        }
    }
    page
}

#[test]
fn the_picture_is_the_one_that_contributors_see() {
    let picture = picture();
    assert!(
        read("DEVELOPERS.md").contains(&picture),
        "\n{picture}\nWhat to do: put this picture into DEVELOPERS.md\n"
    );
}
