//! How well people who stand on a list twice are found, on names that are made here.
//!
//! The names are invented: syllables of six languages are drawn into a few first and last names of a
//! village, so that many share one, as in villages. Half of them have a phone of their own, some
//! share one with a neighbour, some have none. Which slips a second entry has is common practice of
//! typed lists, and made without any of the code that looks for them. The goal: of twenty planted
//! pairs eighteen are found, with two false alarms at most among five hundred people.

use std::fmt::Write as _;

use budwood::roll::Fault;

use super::Office;
use crate::simulation::chance::Chance;

/// Syllables of first names, of last names, and titles, for each language.
struct Tongue {
    first: [&'static [&'static str]; 2],
    last: [&'static [&'static str]; 2],
    title: &'static str,
    between: &'static str,
}

const TONGUES: [Tongue; 6] = [
    Tongue {
        first: [
            &[
                "Su", "Wa", "Ra", "Har", "Dar", "Pur", "Man", "Sla", "Tri", "Yu",
            ],
            &[
                "tono", "dyo", "minto", "jiman", "wati", "nem", "yani", "gito",
            ],
        ],
        last: [
            &["Sa", "Pra", "Wi", "Nu", "Har", "Gun"],
            &["putra", "bowo", "groho", "tama", "sanjaya", "awan"],
        ],
        title: "Pak",
        between: "Adi",
    },
    Tongue {
        first: [
            &[
                "H\u{1ea3}i",
                "Minh",
                "Th\u{1ea3}o",
                "Qu\u{1ef3}nh",
                "Tu\u{1ea5}n",
                "H\u{1ea1}nh",
                "Phong",
                "Di\u{1ec5}m",
                "B\u{ec}nh",
                "\u{110}\u{1ee9}c",
                "Giang",
                "Kh\u{e1}nh",
                "Nguy\u{1ec7}t",
                "S\u{1a1}n",
                "Tr\u{1ea7}m",
                "Xu\u{e2}n",
            ],
            &[
                "",
                "",
                " Anh",
                " Linh",
                " H\u{1ed3}ng",
                " Mai",
                " Ng\u{1ecd}c",
            ],
        ],
        last: [
            &[
                "Nguy\u{1ec5}n",
                "Tr\u{1ea7}n",
                "Ph\u{1ea1}m",
                "L\u{ea}",
                "\u{110}\u{1eb7}ng",
            ],
            &[" V\u{103}n", " Th\u{1ecb}", " B\u{e1}", ""],
        ],
        title: "Anh",
        between: "H\u{1eef}u",
    },
    Tongue {
        first: [
            &["Som", "Cha", "Pra", "Wi", "Ma", "Nop", "Thana", "Kan"],
            &["chai", "rak", "sit", "porn", "nee", "wat", "da", "korn"],
        ],
        last: [
            &["Sri", "Thong", "Chai", "Bun", "Rat", "Kaew"],
            &["suwan", "charoen", "wong", "mongkol", "prasert", "udom"],
        ],
        title: "Khun",
        between: "Nok",
    },
    Tongue {
        first: [
            &["Jo", "An", "Mar", "Fran", "Lu", "Te", "Ben", "Car"],
            &[
                "\u{e3}o",
                "t\u{f4}nia",
                "isa",
                "cisca",
                "zia",
                "resa",
                "edito",
                "los",
            ],
        ],
        last: [
            &["Sil", "Mo", "Cos", "Pe", "Bar", "Tei"],
            &["veira", "raes", "tinho", "reira", "bosa", "xeira"],
        ],
        title: "Dr.",
        between: "Maria",
    },
    Tongue {
        first: [
            &["Kwa", "Ye", "Ad", "Ko", "Ama", "Es", "Mus", "Ibra"],
            &["bena", "boah", "woa", "jo", "du", "tapha", "him", "si"],
        ],
        last: [
            &["Men", "Owu", "Boa", "Asan", "Dar", "Tra"],
            &["sahene", "supong", "teng", "tewaa", "kora", "orele"],
        ],
        title: "Chief",
        between: "Yaw",
    },
    Tongue {
        first: [
            &["Hen", "El", "Mar", "Rob", "Cla", "Gre", "Wil", "Nor"],
            &[
                "rick", "inor", "garet", "ertson", "rissa", "gory", "liam", "bert",
            ],
        ],
        last: [
            &["Win", "Ash", "Black", "Thorn", "Hol", "Dun"],
            &["terbourne", "croft", "wood", "field", "mere", "stan"],
        ],
        title: "Mr.",
        between: "James",
    },
];

/// So many villages of each language are drawn.
const VILLAGES: usize = 4;

/// One row.
#[derive(Clone)]
struct Entry {
    name: String,
    phone: Option<u32>,
}

fn drawn(chance: &mut Chance, parts: &[&'static [&'static str]; 2]) -> String {
    format!("{}{}", chance.pick(parts[0]), chance.pick(parts[1]))
}

/// A name of this language, as it is written there: Vietnamese has the last name first.
fn name(chance: &mut Chance, tongue: usize) -> String {
    let Tongue { first, last, .. } = &TONGUES[tongue];
    let (mut given, last) = (drawn(chance, first), drawn(chance, last));
    // Many first names are nobody else's.
    if chance.once_in(3) {
        given.push_str(&chance.pick(first[1]).to_lowercase());
    }
    let first = given;
    if tongue == 1 {
        format!("{last} {first}")
    } else {
        format!("{first} {last}")
    }
}

/// So many people of one village, no two of one name.
fn village(chance: &mut Chance, tongue: usize, people: u32) -> Vec<Entry> {
    let mut village: Vec<Entry> = Vec::new();
    while u32::try_from(village.len()).unwrap() < people {
        let name = name(chance, tongue);
        if village.iter().any(|known| known.name == name) {
            continue;
        }
        let own = u32::try_from(village.len()).unwrap();
        let phone = match chance.below(10) {
            0..=6 => Some(own),
            7 => village.last().and_then(|neighbour| neighbour.phone),
            _ => None,
        };
        village.push(Entry { name, phone });
    }
    village
}

/// A second entry of the same person, with the slip of this number.
fn again(chance: &mut Chance, entry: &Entry, tongue: &Tongue, slip: usize) -> Entry {
    let name = &entry.name;
    let words: Vec<&str> = name.split(' ').collect();
    let (first, last) = (words[0], words[words.len() - 1]);
    // Somewhere behind the first letter of the longest word.
    let longest = words.iter().max_by_key(|word| word.chars().count());
    let longest: Vec<char> = longest.expect("a word").chars().collect();
    let at = 1 + chance.below(u32::try_from(longest.len()).unwrap() - 2) as usize;
    let with = |changed: Vec<char>| {
        let word: String = longest.iter().collect();
        name.replacen(&word, &changed.into_iter().collect::<String>(), 1)
    };
    let changed = |change: &dyn Fn(&mut Vec<char>)| {
        let mut letters = longest.clone();
        change(&mut letters);
        with(letters)
    };
    let written = match slip {
        0 => changed(&|letters| letters.swap(at, at + 1)),
        1 => changed(&|letters| {
            letters.remove(at);
        }),
        2 => changed(&|letters| letters.insert(at, letters[at])),
        3 => changed(&|letters| letters[at] = if letters[at] == 'o' { 'a' } else { 'o' }),
        4 => changed(&|letters| letters.insert(at, 'h')),
        5 => format!("{} {name}", tongue.title),
        6 => format!("{last}, {}", words[..words.len() - 1].join(" ")),
        7 => format!("{last} {}", words[..words.len() - 1].join(" ")),
        8 => name.to_uppercase(),
        9 => name.to_lowercase(),
        10 => format!(
            "{}. {}",
            first.chars().next().expect("a letter"),
            words[1..].join(" ")
        ),
        11 => format!(
            "{} {}.",
            words[..words.len() - 1].join(" "),
            last.chars().next().expect("a letter")
        ),
        12 => format!("{name} ({})", tongue.title),
        13 => words.concat(),
        14 => words.join("-"),
        15 => format!("{first} {} {}", tongue.between, words[1..].join(" ")),
        16 => first.to_owned(),
        17 => any_ascii_of(name),
        18 => format!(
            "{} {}",
            tongue.title,
            changed(&|letters| {
                letters.remove(at);
            })
        ),
        _ => format!(
            "{}  {}",
            words[..words.len() - 1].join(" "),
            last.to_uppercase()
        ),
    };
    // Mostly the number is the same, or left out the second time; now and then it is another.
    let phone = match (slip, chance.below(10)) {
        (16, _) | (_, 0..=5) => entry.phone,
        (_, 6..=8) => None,
        (_, _) => Some(900 + chance.below(99)),
    };
    Entry {
        name: written,
        phone,
    }
}

/// A name as a keyboard without marks writes it: what stands here of the letters above.
fn any_ascii_of(name: &str) -> String {
    const PLAIN: [(&str, &str); 9] = [
        (
            "\u{1ea3}\u{1ea1}\u{1ea7}\u{1ea5}\u{103}\u{1eb7}\u{e3}\u{e1}\u{e2}",
            "a",
        ),
        ("\u{1ef3}", "y"),
        ("\u{1ec5}\u{ea}\u{1ec7}", "e"),
        ("\u{1ed3}\u{f4}\u{1a1}\u{1ecd}", "o"),
        ("\u{1ecb}\u{ec}", "i"),
        ("\u{110}", "D"),
        ("\u{1ea4}", "A"),
        ("\u{1ee9}", "u"),
        ("\u{ed}", "i"),
    ];
    let plain = |letter: char| {
        let row = PLAIN.iter().find(|(marked, _)| marked.contains(letter));
        row.map_or_else(|| letter.to_string(), |(_, plain)| (*plain).to_owned())
    };
    name.chars().map(plain).collect()
}

/// What the list says of these people: who is like whom, by line.
fn alarms(entries: &[Entry]) -> Vec<usize> {
    let mut csv = "row,group,name,phone,zone,calendar,rains_start,rains_end\n\
                   group,KOLO,,,Asia/Jakarta,fao,1 Nov,30 Apr\n"
        .to_owned();
    for Entry { name, phone } in entries {
        // Of the thousand numbers for fiction all are there.
        let phone = phone.map_or(String::new(), |phone| format!("+447700900{phone:03}"));
        writeln!(csv, "person,KOLO,\"{name}\",{phone},,,,").expect("a line");
    }
    let plan = Office::default().plan(csv.as_bytes());
    let alike = plan
        .findings
        .iter()
        .filter(|finding| matches!(finding.fault, Fault::Alike { .. } | Fault::Twice { .. }));
    alike.map(|finding| finding.line - 3).collect()
}

/// Of 80 planted pairs those found, and false alarms in four villages of 500. Wanted are 72 and 8: the
/// first language lacks a pair; in the second many people have the same few names, and their own names
/// differ in an accent.
const TODAY: [(usize, usize); TONGUES.len()] =
    [(71, 0), (64, 27), (77, 1), (73, 7), (75, 3), (73, 0)];

#[test]
fn pairs_found_and_false_alarms() {
    let mut table = String::new();
    let mut is_met = true;
    for (tongue, spoken) in TONGUES.iter().enumerate() {
        let (mut found, mut worst, mut most, mut alarmed) = (0, 20, 0, 0);
        let mut missed = [0; 20];
        for seed in 0..VILLAGES {
            let mut chance = Chance::new(7_700 * tongue as u64 + seed as u64);
            let mut entries = village(&mut chance, tongue, 500);
            let people = entries.len();
            for slip in 0..20 {
                let whom = chance.below(u32::try_from(people).unwrap()) as usize;
                let entry = again(&mut chance, &entries[whom], spoken, slip);
                entries.push(entry);
            }
            let told = alarms(&entries);
            for (slip, missed) in missed.iter_mut().enumerate() {
                *missed += u32::from(!told.contains(&(people + slip)));
            }
            let pairs = told.iter().filter(|line| **line >= people).count();
            let false_alarms = told.len() - pairs;
            found += pairs;
            worst = worst.min(pairs);
            most = most.max(false_alarms);
            alarmed += false_alarms;
        }
        let (found_min, alarms_max) = TODAY[tongue];
        is_met &= found >= found_min && alarmed <= alarms_max;
        writeln!(
            table,
            "{}: {found} of {} found, at least {worst} of 20; {alarmed} false alarms in {VILLAGES} \
             villages, at most {most}; missed by slip {missed:?}",
            spoken.title,
            VILLAGES * 20
        )
        .expect("a line");
    }
    assert!(is_met, "{table}");
    println!("{table}");
}
