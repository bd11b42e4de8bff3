//! Faults of language packs name the file's key.

use std::{
    format,
    string::{String, ToString},
    vec::Vec,
};

use crate::{Kind, Pack, PackFault, Reader, languages};

#[track_caller]
fn fault(toml: &str, expected: &str) {
    let full = format!("code = \"xx\"\nname = \"Test\"\n{toml}");
    assert_eq!(Pack::parse(&full).unwrap_err().to_string(), expected);
}

#[test]
fn faults_are_named() {
    fault(
        "[kinds]\nplantd = []",
        "kinds.plantd: is not a key that is known here",
    );
    fault("colour = 1", "colour: is not a key that is known here");
    fault(
        "[words]\nblock = 1",
        "words.block: expected a list of texts, found integer",
    );
    fault(
        "[words]\nblock = [\"a b c d e f g\"]",
        "words.block: \"a b c d e f g\": expected 1 to 6 words, found 7",
    );
    fault(
        "[words]\nblock = [\"  \"]",
        "words.block: \"  \": expected 1 to 6 words, found 0",
    );
    fault(
        "[kinds]\nplanted = [\"set\"]\ndead = [\"set\"]",
        "language pack xx: \"set\" is listed both as planted and as dead",
    );
    fault(
        "[months]\n13 = [\"x\"]",
        "months.13: is not a key that is known here",
    );
    fault(
        "[numbers]\nunit_after = [1.5]",
        "numbers.unit_after: expected whole numbers",
    );
    fault(
        "[words]\ntrees = [\"tree(s)\"]",
        "language pack xx: \"tree(s)\" can never be found in a text: \"(\" parts a text into words",
    );
    fault(
        "[words]\nblock = [\"555\"]",
        "language pack xx: \"555\" can never be found in a text: a number is read as a number",
    );
    fault(
        "[words]\nblock = [\"a-b-c d-e-f g\"]",
        "language pack xx: \"a-b-c d-e-f g\" can never be found in a text: it has 7 words, and phrases have at most 6",
    );
    fault(
        "[units]\nbag = [\"karung\", \"sekarung\"]\n[expands]\n\"1 karung\" = [\"sekarung\"]",
        "language pack xx: \"sekarung\" can never be found in a text: [expands] puts other words in its place",
    );
    fault(
        "[kinds]\ndead = [\"lost\"]",
        "language pack xx: \"lost\" is in nearly every chat: list it under weak too",
    );
}

#[test]
fn doubts_are_told_and_nothing_is_refused() {
    let toml = r#"
code = "xx"
name = "Test"
weak = ["nowhere"]
[kinds]
planted = ["set", "set", "dặm"]
dead = ["đam", "mt"]
[words]
yes = ["ko"]
no = ["ko"]
[twins]
lost = ["lust"]
"#;
    let doubts: Vec<String> = Pack::parse(toml)
        .unwrap()
        .doubts()
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(
        doubts,
        [
            "\"set\" is listed twice with one meaning",
            "\"nowhere\" is called weak but is not listed",
            "\"lust\" is called a twin of \"lost\", which is not listed",
            "without accents \"dam\" is both dead and planted: list it as it should be read",
            "\"mt\" is very short for a word of work: call it weak",
            "\"ko\" is both \"yes\" and \"no\"",
        ]
    );
}

#[test]
fn nothing_is_doubtful_in_the_packs_that_ship() {
    for text in languages::ALL {
        let pack = Pack::parse(text).unwrap();
        let doubts: Vec<String> = pack.doubts().iter().map(ToString::to_string).collect();
        assert!(doubts.is_empty(), "{}: {doubts:#?}", pack.code());
    }
}

#[test]
fn packs_that_do_not_go_together() {
    let pack = Pack::parse(languages::ENGLISH).unwrap();
    let faults = Reader::new(Vec::from([pack.clone(), pack])).err().unwrap();
    assert_eq!(faults, [PackFault::Twice("en".to_string())]);
}

#[test]
fn every_pack_that_ships_has_words_for_every_kind() {
    let mut missing = Vec::new();
    for text in languages::ALL {
        let pack = Pack::parse(text).unwrap();
        for kind in Kind::ALL.into_iter().filter(|kind| *kind != Kind::NotDone) {
            let listed = pack
                .entries
                .iter()
                .any(|entry| entry.meaning.kind() == Some(kind));
            if !listed {
                missing.push(format!("{}: {}", pack.code(), kind.name()));
            }
        }
    }
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn a_reader_names_its_languages() {
    let codes: Vec<String> = super::reader()
        .languages()
        .map(ToString::to_string)
        .collect();
    assert_eq!(codes.first().map(String::as_str), Some("en"));
    assert_eq!(super::read("planted 120 B").language.as_deref(), Some("en"));
}

/// A second language is data only: another order of words, another way to count, to deny, to say
/// "days ago" before or after the number.
const INDONESIAN: &str = r#"
code = "id"
name = "Indonesian"
[kinds]
planted = ["tanam", "ditanam"]
dead = ["mati"]
weeded = ["siang", "disiang"]
[causes]
animals = ["sapi"]
[units]
bag = ["karung"]
[words]
block = ["blok"]
trees = ["batang", "btg"]
negation = ["belum", "tidak"]
courtesy = ["pak"]
yes = ["ya"]
[days_ago]
1 = ["kemarin"]
[ago]
1 = ["hari lalu", "hari yang lalu"]
[fertilisers]
any = ["pupuk"]
[numbers]
unit_after = [20]
values.2 = ["dua"]
values.100 = ["seratus"]
scales.10 = ["puluh"]
plus.10 = ["belas"]
"#;

const FRENCH: &str = r#"
code = "fr"
name = "French"
[kinds]
dead = ["morts", "séchés"]
weeded = ["sarclé"]
[words]
block = ["bloc"]
negation = ["pas encore", "pas"]
ago_before = ["il y a"]
filler = ["le"]
[periods]
1 = ["jours"]
"#;

#[test]
fn a_second_language_is_data() {
    let reader = super::reader_of(&[languages::ENGLISH, INDONESIAN, FRENCH]);
    let nobody = crate::Known {
        languages: &[],
        ..super::FARMER
    };
    let check = |text: &str, expected: &str| {
        let reading = reader.read(text, &nobody);
        assert_eq!(super::render::reading(&reading), expected, "{text}");
    };
    check("tanam 120 batang blok B kemarin", "planted @B 120 on=1d");
    check("pak, mati dua belas B, sapi", "dead @B 12 cause=animals");
    check(
        "seratus dua puluh ditanam blok A 3 hari lalu",
        "planted @A 120 on=3d",
    );
    check("belum disiang blok A", "not_done @A not=weeded");
    check(
        "2 karung pupuk npk blok A",
        "fertilised @A product=npk amount=2bag",
    );
    check("8 morts bloc B il y a 3 jours", "dead @B 8 on=3d");
    check("8 seches B", "dead @B 8");
    check("pas encore sarclé bloc A", "not_done @A not=weeded");
    check("ya", "!yes");
    check("planted 120 B", "planted @B 120");
    assert_eq!(
        reader.read("tanam 120 blok B", &nobody).language.as_deref(),
        Some("id")
    );
}

/// Units of land of some countries are data: by their size, or known to differ.
#[test]
fn land_is_told_in_local_units() {
    let check = |code: &str, text: &str, expected: &str| {
        let known = crate::Known {
            languages: &[code],
            ..super::FARMER
        };
        let reading = super::reader().read(text, &known);
        assert_eq!(super::render::reading(&reading), expected, "{text}");
    };
    // 1 rai = 4 ngan = 400 square wa = 1,600 square metres (Thai law, common practice).
    check("th", "ถางป่า 3 งาน แปลง B", "cleared @B area=1200m2");
    check("th", "ถางป่า 2 ไร่ แปลง B", "cleared @B area=2rai");
    // An acre has 4,046.86 square metres, 100 cents and 160 perches.
    check(
        "ml",
        "nilam orukki 10 cent plot B",
        "cleared @B area=404.7m2",
    );
    check(
        "si",
        "idama sakas kala 40 perch kotasa B",
        "cleared @B area=1011.6m2",
    );
    check("vi", "khai hoang 2 công lô B", "cleared @B area=2000m2");
    // A sào has 360, 500 or 1,000 square metres by region: it is not guessed, and counts no trees.
    let reading = super::reader().read(
        "khai hoang 3 sào lô B",
        &crate::Known {
            languages: &["vi"],
            ..super::FARMER
        },
    );
    assert_eq!(reading.reports.len(), 1);
    assert_eq!(reading.reports[0].details.area, None);
    assert_eq!(reading.reports[0].details.count, None);
    assert!(!reading.problems.is_empty());
}

#[test]
fn a_size_of_land_is_square_metres() {
    fault(
        "[land]\nlarge = [\"x\"]",
        "land.large: expected square metres as key",
    );
    fault(
        "[land]\n\"40.471\" = [\"x\"]",
        "land.40.471: expected square metres as key",
    );
}
