//! What is sent: each text fits one SMS at its longest values, and none says anything unsafe.
//!
//! Limits: 160 septets of the GSM default alphabet (3GPP TS 23.038, 6.2.1), 70 UTF-16 units
//! otherwise (3GPP TS 23.040, 9.2.3.24). All languages are checked alike; a new file of texts is
//! found by itself. Deliberately absent: whether the words are good ones, which people judge.

mod longest;
mod source;

use std::collections::BTreeSet;

use budwood::wording::Texts;
use budwood_parser::{Ailment, Alarm, Cause, Kind, Unit};
use budwood_scheduler::TaskKind;

/// Words in capitals that a text may have: what people reply, and what advisers ask.
const REPLY_WORDS: [&str; 32] = [
    "NO", "YES", "STOP", "START", "ERASE", "HELP", "CALL", "ME", "DONE", "PITS", "PLANTED", "DEAD",
    "FILLED", "WEEDED", "FED", "PRUNED", "INDUCED", "BRANCHED", "ROOT", "GIRTH", "OPENED",
    "STATUS", "LATE", "QUIET", "GAPS", "SICK", "WINDOW", "LATER", "SMS", "PIN", "MY", "DATA",
];

/// Units that make a dose of a number before them.
const DOSES: [&str; 12] = [
    "ml", "cc", "l/ha", "g/l", "kg/ha", "g/ha", "ml/l", "ppm", "litre", "litres", "liter", "liters",
];

/// Common names of weedkillers, fungicides and insecticides as ISO 1750 lists them (those met in
/// rubber, from memory), and words for them. None of them is ever named.
const CHEMICALS: [&str; 24] = [
    "glyphosate",
    "glufosinate",
    "paraquat",
    "2,4-d",
    "triclopyr",
    "picloram",
    "metsulfuron",
    "diuron",
    "fluroxypyr",
    "hexaconazole",
    "propiconazole",
    "tridemorph",
    "tebuconazole",
    "mancozeb",
    "carbendazim",
    "benomyl",
    "thiram",
    "fosetyl",
    "metalaxyl",
    "fipronil",
    "chlorpyrifos",
    "cypermethrin",
    "imidacloprid",
    "herbicide",
];

/// What a text that can lead to harm must say, in English.
const CAUTIONS: [(&str, &[&str]); 13] = [
    ("nudge-weed", &["by hand", "blade away"]),
    ("nudge-prune", &["from the ground", "no climbing"]),
    (
        "nudge-induce_branching",
        &["no climbing", "the way you were shown"],
    ),
    ("nudge-dig_pits", &["mark open pits", "children off"]),
    ("nudge-feed", &["gloves"]),
    ("nudge-root_check", &["do not pull"]),
    ("nudge-open", &["looks before you open"]),
    ("stand-sick", &["do not pull or spray"]),
    ("stand-harm", &["stay clear of hanging branches"]),
    ("stand-label", &["label", "wash hands"]),
    (
        "may-spray",
        &["can not give spray advice", "label", "cover up"],
    ),
    ("may-tap-check", &["do not tap yet"]),
    ("call-me", &["danger", "safe place"]),
];

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

/// Names of texts that are put together from the name of a thing.
fn built_keys() -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    let mut add = |prefix: &str, names: Vec<&str>| {
        keys.extend(names.into_iter().map(|name| format!("{prefix}-{name}")));
    };
    add("job", TaskKind::ALL.map(TaskKind::name).to_vec());
    add("nudge", TaskKind::ALL.map(TaskKind::name).to_vec());
    add("kind", Kind::ALL.map(Kind::name).to_vec());
    add("unit", Unit::ALL.iter().map(|one| one.name()).collect());
    add(
        "ailment",
        Ailment::ALL.iter().map(|one| one.name()).collect(),
    );
    add("cause", Cause::ALL.iter().map(|one| one.name()).collect());
    add("alarm", Alarm::ALL.iter().map(|one| one.name()).collect());
    let numbers: Vec<String> = (1..=12).map(|number| number.to_string()).collect();
    let numbers: Vec<&str> = numbers.iter().map(String::as_str).collect();
    add("month", numbers.clone());
    add("weekday", numbers.into_iter().take(7).collect());
    add("status", vec!["due-none", "late-none"]);
    keys
}

#[test]
fn every_text_asked_for_is_there_and_every_text_is_asked_for() {
    let code = source::code();
    let literals = source::literals(&code);
    let mut asked = source::asked_for(&code);
    asked.extend(built_keys());
    for (language, file) in source::files() {
        let texts = source::texts(&file);
        let missing: Vec<&String> = asked
            .iter()
            .filter(|key| !texts.contains_key(*key))
            .collect();
        assert!(missing.is_empty(), "{language} lacks {missing:?}");
        let unused: Vec<&String> = texts
            .keys()
            .filter(|key| !asked.contains(*key) && !literals.contains(*key))
            .collect();
        assert!(unused.is_empty(), "{language} has in vain {unused:?}");
    }
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
            let known = english.get(&key).map(|text| source::values(text));
            let known = known.unwrap_or_else(|| BTreeSet::from(["(no such text)".to_owned()]));
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
fn what_can_harm_comes_with_its_caution() {
    let files = source::files();
    let english = files.iter().find(|(language, _)| language == "en");
    let texts = source::texts(&english.expect("English").1);
    for (key, cautions) in CAUTIONS {
        let text = texts.get(key).expect(key).to_lowercase();
        for caution in cautions {
            assert!(
                text.contains(caution),
                "{key} does not say {caution:?}: {text}"
            );
        }
    }
}

#[test]
fn only_reply_words_are_in_capitals() {
    for (language, file) in source::files() {
        for (key, text) in source::texts(&file) {
            let own = source::own_letters(&text);
            for word in own.split(|c: char| !c.is_alphanumeric()) {
                let shouted = word.chars().filter(|c| c.is_uppercase()).count() > 1;
                assert!(
                    !shouted || REPLY_WORDS.contains(&word),
                    "{language}: {key} shouts {word}"
                );
            }
        }
    }
}

/// Marks that leave the GSM alphabet cost more than half of an SMS, in a language that has no
/// need of them.
#[test]
fn english_stays_in_the_gsm_alphabet() {
    for (language, file) in source::files() {
        for (key, text) in source::texts(&file) {
            if language == "en" {
                let size = budwood::sms::measure(&source::own_letters(&text));
                assert_eq!(size.alphabet, budwood::sms::Alphabet::Gsm7, "{key}: {text}");
            }
        }
    }
}
