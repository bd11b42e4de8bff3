//! Short lessons: each step is one SMS, has a source, and its figures are published.
//!
//! The sources are those that the calendars cite. Deliberately absent: cautions, which are one list for
//! all texts.

use budwood::{
    args,
    wording::{Key, Phrase},
    words::sms,
};
use budwood_parser::{Act, Known, Sender, Topic};
use budwood_scheduler::{Lesson, handbook::lesson::STEPS};

use super::case::in_every_language;
use crate::fixture;

/// Read at the source.
const FAO: &str = "FAO and INADES-Formation, The rubber tree, Better Farming Series 25, 1977";
const INDIA: &str = "Rubber Board of India, monthly plantation tips";
const KERALA: &str = "Kerala Agricultural University, crop pages on rubber";
const APROMAC: &str = "APROMAC (Cote d'Ivoire), planting with a bag plant, 2021";
const RISDA: &str = "RISDA (Malaysia), technology page on planting and upkeep";
/// Read in a copy.
const UPKEEP: &str = "Rubber Board of India, field upkeep, copy of 2020";
const THAI: &str = "Thai guide to pruning rubber";
const STUMPS: &str = "Vietnamese thesis on bare-root stumps";
const INDUCTION: &str = "Pages of an Indonesian rubber researcher on branch induction, 2017";
const CENSUS: &str = "Rouf, Setiono and Pamungkas 2013, girth census, Warta Perkaretan";
/// Common practice: no single publication, and so no figure.
const TRADE: &str = "";

/// Where each step is from.
const fn sources(lesson: Lesson) -> [&'static str; STEPS] {
    match lesson {
        Lesson::Plants => [TRADE, RISDA, UPKEEP, TRADE, TRADE],
        Lesson::Stumps => [STUMPS, TRADE, INDIA, TRADE, STUMPS],
        Lesson::Pits => [FAO, TRADE, FAO, KERALA, TRADE],
        Lesson::Planting => [INDIA, APROMAC, APROMAC, TRADE, TRADE],
        Lesson::Shoots => [UPKEEP, THAI, TRADE, THAI, THAI],
        Lesson::Branching => [INDUCTION, INDUCTION, INDUCTION, TRADE, INDUCTION],
        Lesson::Girth => [TRADE, TRADE, TRADE, CENSUS, TRADE],
    }
}

/// The words of a report are no figure of the trade: "GIRTH 41 43 39".
const EXAMPLE: &str = "41 43 39";

#[test]
fn every_step_is_one_message_and_only_published_ones_have_figures() {
    in_every_language(|case| {
        for lesson in Lesson::ALL {
            for (at, source) in sources(lesson).into_iter().enumerate() {
                let key = Key::Lesson(lesson, at + 1);
                let text = case.tongue.say(key, args! {});
                let args = args! { "step" => at + 1, "of" => STEPS, "text" => Phrase::from(key) };
                let said = case.tongue.word(&Phrase::new(Key::LessonStep, args));
                // Where marks would take a second message they are left out.
                let is_whole = sms::bare(&said).contains(&sms::bare(&text));
                assert!(is_whole, "cut: {said}");
                assert_eq!(sms::measure(&said).parts, 1, "{said}");
                let has_figure = text
                    .replace(EXAMPLE, "")
                    .contains(|c: char| c.is_ascii_digit());
                assert!(!has_figure || source != TRADE, "whose figure? {text}");
            }
        }
    });
}

/// The pits, shoots and plants of each language, as people ask. From memory.
#[test]
fn a_lesson_is_asked_for_in_every_language() {
    let reader = &fixture::setup().reader;
    let asked = [
        ("en", "how prune", Lesson::Shoots),
        ("en", "how to dig pits?", Lesson::Pits),
        ("en", "how do i plant", Lesson::Planting),
        ("en", "how stumps", Lesson::Stumps),
        ("en", "how girth", Lesson::Girth),
        ("fr", "comment planter", Lesson::Planting),
        ("fr", "comment stumps", Lesson::Stumps),
        ("id", "cara tanam", Lesson::Planting),
        ("id", "cara stum", Lesson::Stumps),
        ("pt", "como plantar", Lesson::Planting),
        ("pt", "como tocos", Lesson::Stumps),
        ("th", "วิธี ปลูก", Lesson::Planting),
        ("vi", "cách trồng", Lesson::Planting),
        ("vi", "cach trong", Lesson::Planting),
    ];
    let mut missed = Vec::new();
    for (code, text, lesson) in asked {
        let known = Known {
            languages: &[code],
            blocks: &["A"],
            groups: &[],
            members: &[],
            rolls: &[],
            sender: Sender::Farmer,
        };
        let reading = reader.read(text, &known);
        let found = match reading.acts.as_slice() {
            [Act::Query(query)] if query.topic == Topic::HowTo => {
                Lesson::asked(query.kind, query.material)
            }
            _ => None,
        };
        if found != Some(lesson) {
            missed.push(format!(
                "{code}: {text}: {:?} {:?}",
                reading.acts, reading.reports
            ));
        }
    }
    assert!(missed.is_empty(), "{}", missed.join("\n"));
}

/// A count is asked for, and no lesson.
#[test]
fn how_many_is_no_lesson() {
    let reader = &fixture::setup().reader;
    for text in ["how many dead", "how much fertiliser", "how planted 120 A"] {
        let known = Known {
            languages: &["en"],
            blocks: &["A"],
            groups: &[],
            members: &[],
            rolls: &[],
            sender: Sender::Farmer,
        };
        let reading = reader.read(text, &known);
        let is_lesson = reading.acts.iter().any(|act| {
            matches!(act, Act::Query(query) if query.topic == Topic::HowTo
                && Lesson::asked(query.kind, query.material).is_some())
        });
        assert!(!is_lesson, "{text}: {:?}", reading.acts);
    }
}
