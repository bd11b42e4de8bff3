//! Laws that hold for every text.

use std::{
    format,
    string::{String, ToString},
    vec,
    vec::Vec,
};

use proptest::prelude::*;

use super::{ADVISER, FARMER, read, reader, render};
use crate::{Kind, Reading, Stance, glyphs::fold::fold};

fn facts(reading: &Reading) -> Vec<String> {
    reading.reports.iter().map(render::report).collect()
}

/// Whether it is stored without a question.
fn is_stored(reading: &Reading) -> bool {
    let is_clear = reading
        .reports
        .iter()
        .all(|report| report.doubts.is_empty());
    !reading.reports.is_empty() && is_clear && reading.stances.is_empty() && reading.acts.is_empty()
}

/// What may stand beside a report, and what it is there when it is stored.
const PARTS: &[(&str, &str)] = &[
    ("701", "701"),
    ("901 trees", "901"),
    ("weeded", "weeded"),
    ("holes dug 703", "holes_dug"),
    ("tapping opened 704", "tapping_opened"),
    ("in D", "@D"),
    ("block D", "@D"),
    ("2/9", "on=2/9"),
    ("705 706", "never stored"),
    ("blarg 707", "never stored"),
];

/// Words that a text of a farmer may hold.
fn word() -> impl Strategy<Value = String> {
    prop_oneof![
        Just("planted"),
        Just("dead"),
        Just("girth"),
        Just("no"),
        Just("not yet"),
        Just("A"),
        Just("block"),
        Just("120"),
        Just("1,200"),
        Just("12/5"),
        Just("npk"),
        Just("kg"),
        Just("yesterday"),
        Just("hundred"),
        Just("and"),
        Just("twenty"),
        Just("of"),
        Just("wind"),
        Just("?"),
        Just(","),
        Just("."),
        Just("-"),
        Just("sorry"),
        Just("Tamo"),
        Just("15-15-15"),
    ]
    .prop_map(ToString::to_string)
}

/// One plain report: kind, number, block.
fn plain_report() -> impl Strategy<Value = (&'static str, u32, &'static str)> {
    let kind = prop_oneof![
        Just("planted"),
        Just("dead"),
        Just("replaced"),
        Just("branched"),
        Just("pruned"),
    ];
    (
        kind,
        2_u32..700,
        prop_oneof![Just("A"), Just("B"), Just("C")],
    )
}

/// How one language says a plain report, and what takes it away.
#[derive(Clone, Copy, Debug)]
struct Speech {
    code: &'static str,
    kinds: [&'static str; 3],
    trees: &'static str,
    block: &'static str,
    greeting: &'static str,
    thanks: &'static str,
    not_yet: &'static str,
    tomorrow: &'static str,
}

const fn speech(
    code: &'static str,
    kinds: [&'static str; 3],
    [trees, block]: [&'static str; 2],
    [greeting, thanks]: [&'static str; 2],
    [not_yet, tomorrow]: [&'static str; 2],
) -> Speech {
    Speech {
        code,
        kinds,
        trees,
        block,
        greeting,
        thanks,
        not_yet,
        tomorrow,
    }
}

/// Planted, dead, replaced. From memory, as the packs are.
#[rustfmt::skip]
const SPEECHES: [Speech; 16] = [
    speech("en", ["planted", "dead", "replaced"], ["trees", "block"], ["good morning sir", "thanks"], ["not yet", "tomorrow"]),
    speech("en-WA", ["we plant", "done die", "we supply"], ["sticks", "block"], ["morning o", "tank u"], ["not yet", "next tomorrow"]),
    speech("fr", ["planté", "morts", "remplacé"], ["arbres", "bloc"], ["bonjour chef", "merci"], ["pas encore", "demain"]),
    speech("id", ["tanam", "mati", "sulam"], ["batang", "blok"], ["selamat pagi pak", "terima kasih"], ["belum", "besok"]),
    speech("ms", ["tanam", "mati", "sulam"], ["pokok", "blok"], ["salam tuan", "terima kasih"], ["belum", "esok"]),
    speech("th", ["ปลูก", "ตาย", "ปลูกซ่อม"], ["ต้น", "แปลง"], ["สวัสดีครับ", "ขอบคุณครับ"], ["ยังไม่ได้", "พรุ่งนี้"]),
    speech("th-Latn", ["pluk", "tai", "pluk som"], ["ton", "plaeng"], ["sawatdee krap", "khob khun krap"], ["yang mai dai", "phrung ni"]),
    speech("vi", ["trồng", "chết", "trồng dặm"], ["cây", "lô"], ["chào anh", "cám ơn anh"], ["chưa", "ngày mai"]),
    speech("vi-bare", ["trong", "chet", "trong dam"], ["cay", "lo"], ["chao anh", "cam on anh"], ["chua", "ngay mai"]),
    speech("pt", ["plantei", "morreram", "replantei"], ["mudas", "talhão"], ["bom dia doutor", "obrigado"], ["ainda não", "amanhã"]),
    speech("ta", ["நட்டேன்", "செத்தது", "மாற்றி நட்டேன்"], ["மரம்", "தோட்டம்"], ["வணக்கம் ஐயா", "நன்றி"], ["இன்னும் இல்லை", "நாளைக்கு"]),
    speech("ta-Latn", ["natten", "setthu pochu", "maatri natten"], ["maram", "thottam"], ["vanakkam sir", "nandri"], ["innum illa", "naalaikku"]),
    speech("ml", ["നട്ടു", "ഉണങ്ങി", "മാറ്റി നട്ടു"], ["തൈ", "തോട്ടം"], ["നമസ്കാരം സാർ", "നന്ദി"], ["ഇതുവരെ ഇല്ല", "നാളെ"]),
    speech("ml-Latn", ["nattu", "unangi", "maatti nattu"], ["thai", "thottam"], ["namaskaram sir", "nanni"], ["ithuvare illa", "naale"]),
    speech("si", ["හිටෙව්වා", "මැරිලා", "හිඩැස් පිරෙව්වා"], ["ගස්", "කොටස"], ["ආයුබෝවන්", "ස්තූතියි"], ["තාම නෑ", "හෙට"]),
    speech("si-Latn", ["hitewwa", "marila", "hidas pirewwa"], ["gas", "kotasa"], ["ayubowan", "sthuthi"], ["thama na", "heta"]),
];

/// A plain report of any language: how it is said, the kind, the count and the block.
fn spoken() -> impl Strategy<Value = (Speech, &'static str, u32, &'static str)> {
    let block = prop_oneof![Just("A"), Just("B"), Just("C")];
    (
        prop::sample::select(&SPEECHES[..]),
        0..3_usize,
        2_u32..700,
        block,
    )
        .prop_map(|(speech, kind, count, block)| (speech, speech.kinds[kind], count, block))
}

/// Reads as a phone of this language is read.
fn read_as(speech: &Speech, text: &str) -> Reading {
    let known = crate::Known {
        languages: &[speech.code],
        ..FARMER
    };
    reader().read(text, &known)
}

/// Letters, marks, digits and joiners of the scripts that people text in.
fn typed() -> impl Strategy<Value = String> {
    let latin = "[ -~\u{a0}-\u{17f}\u{1e00}-\u{1eff}\u{300}-\u{323}]";
    let indic = "[\u{b80}-\u{bff}\u{d00}-\u{d7f}\u{d80}-\u{dff}\u{e00}-\u{e5b}]";
    let other = "[\u{200b}-\u{200f}\u{2010}-\u{2019}\u{ff01}-\u{ff5e}]";
    prop::collection::vec(prop_oneof![latin, indic, other], 0..40).prop_map(|all| all.concat())
}

proptest! {
    /// Words of a pack and names are folded once, texts too: they only meet if once is enough.
    #[test]
    fn folding_twice_is_folding_once(text in typed()) {
        let once = fold(&text);
        prop_assert_eq!(fold(&once), once);
    }

    #[test]
    fn reading_never_panics_and_every_word_has_its_place(text in "\\PC{0,80}") {
        places_are_right(&text);
    }

    #[test]
    fn words_of_work_in_any_order_never_panic(words in prop::collection::vec(word(), 0..25)) {
        places_are_right(&words.join(" "));
        places_are_right(&words.concat());
    }

    #[test]
    fn manner_does_not_change_what_is_said((kind, count, block) in plain_report()) {
        let plain = read(&format!("{kind} {count} {block}"));
        prop_assert!(plain.stances.is_empty());
        for text in [
            format!("hello sir, {kind} {count} {block}"),
            format!("{kind} {count} {block} thanks"),
            format!("{kind}  {count}   {block}"),
            format!("{kind} {count} {block}."),
            format!("{kind} {count} {block}").to_uppercase(),
            format!("{kind} {count} trees in block {block}"),
            format!("{block} {kind} {count}"),
            format!("{count} {kind} {block}"),
            format!("{kind} {block} {count}"),
            format!("{block} {count} {kind}"),
        ] {
            let other = read(&text);
            prop_assert_eq!(facts(&plain), facts(&other), "{}", text);
            prop_assert!(other.stances.is_empty(), "{}: {:?}", text, other.stances);
        }
    }

    #[test]
    fn denial_future_and_question_take_the_fact_away((kind, count, block) in plain_report()) {
        for text in [
            format!("{kind} {count} {block} not yet"),
            format!("{kind} {count} {block} tomorrow"),
            format!("{kind} {count} {block}?"),
            format!("will {kind} {count} {block}"),
            format!("if {kind} {count} {block}"),
        ] {
            let reading = read(&text);
            let none = reading.reports.iter().all(|report| report.kind == Kind::NotDone);
            prop_assert!(none || !reading.stances.is_empty(), "{}", text);
        }
    }

    #[test]
    fn manner_does_not_change_what_is_said_in_any_language(
        (speech, kind, count, block) in spoken()
    ) {
        // Known: in "bloc A planté", "a planté" is a phrase.
        prop_assume!(speech.code != "fr" || block != "A");
        let Speech { trees, block: word, greeting, thanks, .. } = speech;
        let report = format!("{kind} {count} {trees} {word} {block}");
        let plain = read_as(&speech, &report);
        prop_assert_eq!(plain.reports.len(), 1, "{}", &report);
        prop_assert_eq!(plain.reports[0].details.count, Some(count), "{}", &report);
        prop_assert!(plain.stances.is_empty(), "{}: {:?}", &report, &plain.stances);
        for text in [
            format!("{greeting}, {report}"),
            format!("{report} {thanks}"),
            format!("{report}. {thanks}"),
            report.replace(' ', "  "),
            format!("{report}."),
            report.to_uppercase(),
            format!("{word} {block} {kind} {count} {trees}"),
            format!("{count} {trees} {kind} {word} {block}"),
            format!("{word} {block} {count} {trees} {kind}"),
        ] {
            let other = read_as(&speech, &text);
            prop_assert_eq!(facts(&plain), facts(&other), "{}", text);
            prop_assert!(other.stances.is_empty(), "{}: {:?}", text, other.stances);
        }
    }

    #[test]
    fn denial_future_and_question_take_the_fact_away_in_any_language(
        (speech, kind, count, block) in spoken()
    ) {
        let Speech { trees, block: word, not_yet, tomorrow, .. } = speech;
        let report = format!("{kind} {count} {trees} {word} {block}");
        for text in [
            format!("{not_yet} {report}"),
            format!("{report} {not_yet}"),
            format!("{tomorrow} {report}"),
            format!("{report} {tomorrow}"),
            format!("{report}?"),
        ] {
            let reading = read_as(&speech, &text);
            let told = reading.reports.iter().filter(|report| report.kind != Kind::NotDone);
            let none = told.clone().all(|report| report.details.count == Some(0));
            prop_assert!(
                none || !reading.stances.is_empty() || !reading.acts.is_empty(),
                "{}: {:?}", text, facts(&reading)
            );
        }
    }

    /// The account: what is stored has taken up every number, word of work and block of the text.
    #[test]
    fn nothing_that_is_stored_leaves_a_part_of_the_text_without_a_role(
        (kind, count, block) in plain_report(),
        (more, role) in prop::sample::select(PARTS),
        joined in prop::sample::select(&[" ", ", ", " and ", " with ", " the "][..]),
        first in prop::bool::ANY,
    ) {
        let report = format!("{kind} {count} {block}");
        let (one, other) = if first { (more, &*report) } else { (&*report, more) };
        let text = format!("{one}{joined}{other}");
        let reading = read(&text);
        let told = facts(&reading).join(" + ");
        prop_assert!(!is_stored(&reading) || told.contains(role), "{}: {}", text, told);
    }

    /// A sentence more takes nothing away from what is stored, and changes nothing of it.
    #[test]
    fn what_is_stored_of_two_sentences_is_what_each_of_them_tells(
        (speech, kind, count, block) in spoken(), other in 0..3_usize, more in 2_u32..700,
        mark in prop::sample::select(&[". ", "\n", "! "][..]),
    ) {
        let Speech { trees, block: word, .. } = speech;
        let one = format!("{kind} {count} {trees} {word} {block}");
        let two = format!("{} {more} {trees} {word} D", speech.kinds[other]);
        let whole = read_as(&speech, &format!("{one}{mark}{two}"));
        let mut each = facts(&read_as(&speech, &one));
        each.extend(facts(&read_as(&speech, &two)));
        prop_assert!(!is_stored(&whole) || facts(&whole) == each, "{}{}{}", one, mark, two);
    }

    #[test]
    fn another_number_changes_one_value_in_any_language(
        (speech, kind, count, block) in spoken(), other in 2_u32..700
    ) {
        let Speech { trees, block: word, .. } = speech;
        let text = |count| format!("{kind} {count} {trees} {word} {block}");
        let mut one = read_as(&speech, &text(count)).reports;
        let two = read_as(&speech, &text(other)).reports;
        prop_assert_eq!(one[0].details.count, Some(count));
        one[0].details.count = Some(other);
        one[0].span = two[0].span;
        prop_assert_eq!(one, two);
    }

    #[test]
    fn another_number_changes_one_value((kind, count, block) in plain_report(), other in 2_u32..700) {
        let mut one = read(&format!("{kind} {count} {block}")).reports;
        let two = read(&format!("{kind} {other} {block}")).reports;
        prop_assert_eq!(one[0].details.count, Some(count));
        one[0].details.count = Some(other);
        one[0].span = two[0].span;
        prop_assert_eq!(one, two);
    }
}

fn places_are_right(text: &str) {
    for known in [&FARMER, &ADVISER] {
        let reading = reader().read(text, known);
        let mut last = 0;
        for word in &reading.words {
            assert!(last <= word.span.start && word.span.start <= word.span.end);
            assert!(
                text.get(word.span.start..word.span.end).is_some(),
                "{text:?}"
            );
            last = word.span.end;
        }
        for report in &reading.reports {
            assert!(report.span.end <= text.len());
        }
    }
}

#[test]
fn every_word_of_the_text_is_in_the_words() {
    let text = "Hello planted 120 zzyx in B, not A?";
    let covered: String = read(text)
        .words
        .iter()
        .map(|word| text.get(word.span.start..word.span.end).unwrap())
        .collect();
    let marks = |letter: &char| letter.is_alphanumeric() || *letter == '?';
    let all: String = text.chars().filter(marks).collect();
    let covered: String = covered.chars().filter(marks).collect();
    assert_eq!(covered, all);
}

#[test]
fn a_long_story_is_cut_and_is_no_report() {
    let text = "planted 120 B and then we went on ".repeat(100);
    let reading = read(&text);
    assert!(
        matches!(reading.problems.last(), Some(crate::Problem::Cut(span)) if span.end == text.len())
    );
    let text = format!(
        "{} weeded A",
        "we walked by the river for a time and ".repeat(6)
    );
    assert!(read(&text).stances.contains(&Stance::Chat));
}

/// Time grows no faster than the text, also for text made to be slow.
#[test]
fn hostile_texts_are_read() {
    for unit in [
        "a1",
        "1a",
        "120 ",
        "planted 1 ",
        "A B ",
        "one hundred and ",
        "1,",
        "1/",
        "1-",
        "plan",
        "\u{301}",
        "กขค",
        "\u{200b}",
    ] {
        let reading = read(&unit.repeat(3_000));
        assert!(reading.words.len() <= 1_600, "{unit:?}");
    }
}

#[test]
fn a_reader_can_be_shared() {
    fn shared<T: Send + Sync>(_: &T) {}
    shared(reader());
}
