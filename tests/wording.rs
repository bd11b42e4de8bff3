//! What is sent: each text fits one SMS at its longest values, and none says anything unsafe.
//!
//! Limits: 160 septets of the GSM default alphabet (3GPP TS 23.038, 6.2.1), 70 UTF-16 units
//! otherwise (3GPP TS 23.040, 9.2.3.24). All languages are checked alike; a new file of texts is
//! found by itself. Deliberately absent: whether the words are good ones, which people judge.

mod asked;
mod asking;
mod case;
mod caution;
mod done;
mod figures;
mod lessons;
mod locale;
mod longest;
mod memory;
mod office;
mod operator;
mod others;
mod printed;
mod reply;
mod source;
mod speech;

use std::collections::BTreeSet;

use budwood::wording::{Key, Texts};

/// Units that make a dose of a number before them, in the languages of the texts.
const DOSES: [&str; 22] = [
    "ml",
    "cc",
    "l/ha",
    "g/l",
    "kg/ha",
    "g/ha",
    "ml/l",
    "ppm",
    "litre",
    "litres",
    "liter",
    "liters",
    "litro",
    "litros",
    "lit",
    "lít",
    "cl",
    "mg",
    "มล",
    "ซีซี",
    "ลิตร",
    "oz",
];

/// Beginnings of the common names of weedkillers, fungicides and insecticides as ISO 1750 lists
/// them (those met in rubber, from memory) in the spellings of the languages of the texts, and
/// words for them. None of them is ever named.
const CHEMICALS: [&str; 37] = [
    "glyphosat",
    "glifosat",
    "ไกลโฟเซต",
    "glufosinat",
    "กลูโฟซิเนต",
    "paraquat",
    "parakuat",
    "พาราควอต",
    "2,4-d",
    "triclopyr",
    "triklopir",
    "picloram",
    "metsulfuron",
    "diuron",
    "fluroxypyr",
    "hexaconazol",
    "heksakonazol",
    "propiconazol",
    "tridemorf",
    "tridemorph",
    "tebuconazol",
    "mancozeb",
    "mankozeb",
    "carbendazim",
    "benomyl",
    "thiram",
    "fosetyl",
    "metalax",
    "fipronil",
    "chlorpyri",
    "clorpiri",
    "cypermethrin",
    "imidaclopri",
    "herbi",
    "thuoc co",
    "thuốc cỏ",
    "ยาฆ่าหญ้า",
];

/// Languages that are not read without letters of their own.
const IN_OWN_LETTERS: [&str; 2] = ["th", "vi"];

#[test]
fn every_language_has_its_texts_in_the_program() {
    let texts = Texts::built_in().unwrap();
    let loaded: BTreeSet<&str> = texts.languages().collect();
    let files = source::files();
    let written: BTreeSet<&str> = files
        .iter()
        .map(|(language, _)| language.as_str())
        .collect();
    assert_eq!(loaded, written);
}

#[test]
fn every_file_has_exactly_the_texts_that_there_are_keys_for() {
    let keys: Vec<String> = Key::all().map(|key| key.name().into_owned()).collect();
    let known: BTreeSet<&str> = keys.iter().map(String::as_str).collect();
    assert_eq!(known.len(), keys.len(), "two keys have one name");
    for (language, file) in source::files() {
        let texts = source::texts(&file);
        let written = texts.keys().map(|key| source::short_form(key));
        let written: BTreeSet<&str> = written.collect();
        let missing: Vec<&&str> = known.difference(&written).collect();
        assert!(missing.is_empty(), "{language} lacks {missing:?}");
        let unknown: Vec<&&str> = written.difference(&known).collect();
        assert!(unknown.is_empty(), "{language} has in vain {unknown:?}");
    }
}

/// A text that nobody asks for is dead; a key that is asked for and is not there does not compile.
#[test]
fn every_text_is_asked_for() {
    let code = source::code();
    let asked: BTreeSet<&str> = code
        .split("Key::")
        .skip(1)
        .filter_map(|rest| rest.split(|c: char| !c.is_alphanumeric()).next())
        .collect();
    let variant = |key: Key| {
        let shown = format!("{key:?}");
        let end = shown.find('(').unwrap_or(shown.len());
        shown[..end].to_owned()
    };
    let unused: BTreeSet<String> = Key::all()
        .map(variant)
        .filter(|variant| !asked.contains(variant.as_str()))
        .collect();
    assert!(unused.is_empty(), "nobody says {unused:?}");
}

#[test]
fn all_languages_put_the_same_values_into_a_text() {
    let files = source::files();
    let (_, english) = files
        .iter()
        .find(|(language, _)| language == "en")
        .expect("English");
    let english = source::texts(english);
    for (language, file) in &files {
        for (key, text) in source::texts(file) {
            let known = english
                .get(source::short_form(&key))
                .map(|text| source::values(text));
            let known = known.unwrap_or_else(|| BTreeSet::from(["(no such text)".to_owned()]));
            // There is room for names in some, for codes only in others.
            let known = match key.as_str() {
                "languages" => BTreeSet::from(["languages", "codes"].map(str::to_owned)),
                // Each in the unit of its place.
                "land" => BTreeSet::from(["hectares", "rai"].map(str::to_owned)),
                _ => known,
            };
            let extra: Vec<String> = source::values(&text).difference(&known).cloned().collect();
            assert!(extra.is_empty(), "{language}: {key} has {extra:?}");
        }
    }
}

#[test]
fn no_text_names_a_dose_or_a_chemical() {
    for (language, file) in source::files() {
        for (key, text) in source::texts(&file) {
            let lower = text.to_lowercase();
            let named: Vec<&&str> = CHEMICALS
                .iter()
                .filter(|name| lower.contains(**name))
                .collect();
            assert!(named.is_empty(), "{language}: {key} names {named:?}");
            let dose = dose_in(&lower);
            assert!(dose.is_none(), "{language}: {key} says {dose:?}");
        }
    }
}

/// A number, or a value put in, with a unit of doses after it.
fn dose_in(text: &str) -> Option<&str> {
    let mut words = text.split([' ', ',']).filter(|word| !word.is_empty());
    let mut before = "";
    words.find(|word| {
        let number = before.ends_with(|c: char| c.is_ascii_digit()) || before == "}";
        let unit = word.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.' || c == '}');
        let glued = unit.len() < word.len();
        let unit = unit.trim_end_matches(['.', ';', ':', '?']);
        before = word;
        (number || glued) && DOSES.contains(&unit)
    })
}

#[test]
fn the_dose_linter_finds_doses() {
    for text in [
        "use 20 ml for",
        "mix 20ml.",
        "5 g/l water",
        "{ $n } litres",
        "20 ซีซี",
        "2.5 l/ha",
    ] {
        assert!(dose_in(text).is_some(), "{text}");
    }
    for text in [
        "120 trees x { $grams } g = 12 kg",
        "below 2 m",
        "30 trees, every 10th",
    ] {
        assert_eq!(dose_in(text), None, "{text}");
    }
}

#[test]
fn only_reply_words_are_in_capitals() {
    for (speech, texts) in reply::spoken() {
        let replies = speech.words.iter().flat_map(|(_, word)| word.split(' '));
        let known: BTreeSet<&str> = replies.chain(speech.capitals.iter().copied()).collect();
        for (key, text) in texts {
            let own = source::own_letters(&text);
            for word in own.split(|c: char| !c.is_alphanumeric()) {
                let shouted = word.chars().filter(|c| c.is_uppercase()).count() > 1;
                assert!(
                    !shouted || known.contains(word),
                    "{}: {key} shouts {word}",
                    speech.code
                );
            }
        }
    }
}

/// Letters that leave the GSM alphabet cost more than half of an SMS, in a language that is read
/// without them.
#[test]
fn texts_stay_in_the_gsm_alphabet_where_they_can() {
    for (language, file) in source::files() {
        for (key, text) in source::texts(&file) {
            if !IN_OWN_LETTERS.contains(&language.as_str()) && key != "language-called" {
                let size = budwood::words::sms::measure(&source::own_letters(&text));
                let is_gsm = size.alphabet == budwood::words::sms::Alphabet::Gsm7;
                assert!(is_gsm, "{language}: {key}: {text}");
            }
        }
    }
}

/// An adviser's status is shortened until it ends in its last figure; who is left in peace is told
/// behind it where there is room.
#[test]
fn a_status_ends_in_its_last_figure() {
    for (speech, texts) in reply::spoken() {
        let status = texts.get("status").expect("status");
        let last = "{ $sick }{ $peace }";
        assert!(status.ends_with(last), "{}: {status}", speech.code);
    }
}

/// A day of opening without a range would look surer than it is.
#[test]
fn no_day_of_opening_without_its_range() {
    for (language, file) in source::files() {
        let texts = source::texts(&file);
        let with = |value: &str| -> BTreeSet<&String> {
            let place = format!("{{ ${value} }}");
            let holding = texts.iter().filter(|(_, text)| text.contains(&place));
            holding.map(|(key, _)| key).collect()
        };
        let (earliest, likely, latest) = (with("earliest"), with("likely"), with("latest"));
        assert!(earliest.len() >= 3, "{language}: {earliest:?}");
        assert_eq!(earliest, latest, "{language}");
        assert!(likely.is_subset(&earliest), "{language}: {likely:?}");
    }
}
