//! Plurals, numbers and days as each language writes them.
//!
//! Plural rules, decimal signs and eras are those of the Unicode CLDR, release 47 (files
//! `plurals.xml` and each language's own); short names of days and months too, without dots and,
//! where a text stays in the GSM alphabet, without the marks that it lacks.

use budwood::{
    wording::{Args, Key, NudgeText, Phrase, Texts, Tongue, Value, clause, nudge},
    words::sms::{self, Alphabet},
};
use budwood_parser::{Details, Kind};
use budwood_scheduler::{BlockId, Figures, Task, TaskKind};
use chrono::NaiveDate;

#[track_caller]
fn check(language: &str, say: impl Fn(Tongue<'_>) -> String, expected: &str) {
    let texts = Texts::built_in().unwrap();
    assert_eq!(say(texts.tongue(&[language])), expected, "{language}");
}

#[test]
fn none_and_one_are_singular_in_french_and_portuguese() {
    let planted = |count| {
        move |tongue: Tongue<'_>| {
            let details = Details {
                count: Some(count),
                ..Details::default()
            };
            tongue.word(&clause(Kind::Planted, &details))
        }
    };
    check("fr", planted(0), "0 planté");
    check("fr", planted(1), "1 planté");
    check("fr", planted(2), "2 plantés");
    check("pt", planted(0), "0 plantada");
    check("pt", planted(1), "1 plantada");
    check("pt", planted(2), "2 plantadas");
    check("id", planted(2), "2 ditanam");
    check("th", planted(2), "ปลูก 2 ต้น");
}

#[test]
fn only_one_is_singular_in_english() {
    let measured = |trees: usize| {
        move |tongue: Tongue<'_>| {
            let details = Details {
                values_cm: vec![42.5; trees],
                ..Details::default()
            };
            tongue.word(&clause(Kind::Height, &details))
        }
    };
    check("en", measured(0), "height of 0 trees, mean 0 cm");
    check("en", measured(1), "height of 1 tree, mean 42.5 cm");
    check("en", measured(2), "height of 2 trees, mean 42.5 cm");
}

#[test]
fn numbers_have_the_decimal_sign_of_the_language() {
    for language in ["fr", "id", "pt", "vi", "vi-bare"] {
        check(language, |tongue| tongue.number(42.5), "42,5");
        check(language, |tongue| tongue.number(42.0), "42");
    }
    for language in ["en", "en-WA", "th"] {
        check(language, |tongue| tongue.number(42.5), "42.5");
    }
}

#[test]
fn days_are_written_as_in_the_language() {
    let day = NaiveDate::from_ymd_opt(2026, 8, 5).expect("a day");
    let days = |tongue: Tongue<'_>| format!("{} | {}", tongue.day(day), tongue.month_year(day));
    check("en", days, "Wed 5 Aug | Aug 2026");
    check("fr", days, "mer 5 aout | aout 2026");
    check("id", days, "Rab 5 Agu | Agu 2026");
    check("pt", days, "qua 5 ago | ago 2026");
    check("vi", days, "T4 5/8 | 8/2026");
    // The Buddhist era, which is 543 years ahead.
    check("th", days, "5 ส.ค. | ส.ค. 2569");
}

/// Lists come from office programs, which put curly quotes and long dashes into names.
#[test]
fn what_a_name_brings_along_costs_no_room() {
    let texts = Texts::built_in().unwrap();
    let task = Task {
        kind: TaskKind::Weed,
        block: BlockId(1),
        due: NaiveDate::MIN,
        late_after: NaiveDate::MIN,
        ends: None,
        clock: TaskKind::Weed.clock(),
        figures: Figures::default(),
    };
    for (name, plain) in [
        ("D’Arc", "D'Arc"),
        ("Ro–Ma", "Ro-Ma"),
        ("Hà\u{a0}My", "Hà My"),
        ("Nguyễn", "Nguyen"),
    ] {
        for language in ["en", "fr", "id", "pt"] {
            let text = texts.tongue(&[language]).word(&nudge(NudgeText {
                name,
                block: "B…2",
                task: &task,
                by: NaiveDate::MIN,
                adviser: "“Mara”",
                is_new: false,
            }));
            assert!(text.starts_with(plain), "{text}");
            assert!(text.contains("B...2"), "{text}");
            assert!(text.ends_with("-\"Mara\""), "{text}");
            assert_eq!(sms::measure(&text).alphabet, Alphabet::Gsm7, "{text}");
        }
    }
}

#[test]
fn marks_stay_while_they_fit_and_go_where_they_are_not_typed() {
    let check = |language: &str, name: &str, expected: &str| {
        let texts = Texts::built_in().unwrap();
        let tongue = texts.tongue(&[language]);
        let job = Value::from(TaskKind::Weed);
        let listed = Value::Joined(vec![job, ": ".into(), name.into()]);
        let args: Args = vec![("blocks", listed)];
        let text = tongue.word(&Phrase::new(Key::MyBlocks, args));
        assert_eq!(text, expected);
    };
    let long = "Nguyễn ".repeat(10);
    let bare = "Nguyen ".repeat(10);
    check("vi", "Thảo", "làm cỏ: Thảo");
    check("vi-bare", "Thảo", "lam co: Thao");
    check("vi", &long, &format!("lam co: {}", bare.trim_end()));
    check("th", "สมชาย", "ตัดหญ้า: สมชาย");
    check("en", "Thảo", "weed: Thao");
}
