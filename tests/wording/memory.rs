//! What no publication says is never told to a farmer as a rule.

use budwood::{
    wording::{NudgeText, nudge},
    words::sms,
};
use budwood_scheduler::{
    BlockId, Calendar, Figures, Task, TaskKind,
    handbook::calendar::{Confidence, profiles},
};
use chrono::NaiveDate;

use super::{
    case::{Case, in_every_language},
    source,
};

/// How each language speaks of a rule, in the letters of its texts.
const RULE: [(&str, &[&str]); 6] = [
    ("en", &["rule", "opens at", "official", "handbook"]),
    ("fr", &["règle", "s'ouvre à", "officiel"]),
    ("id", &["syarat", "dibuka bila", "resmi"]),
    ("pt", &["regra", "abre com", "oficial"]),
    ("th", &["เกณฑ์", "ต้องรอบต้น"]),
    ("vi", &["đã đủ", "mở cạo khi", "quy định"]),
];

/// The only texts that speak of a rule; both have a form beside them for what is not published.
const AS_RULE: [&str; 2] = ["nudge-open", "may-tap-no"];

#[test]
fn only_two_texts_speak_of_a_rule() {
    for (language, file) in source::files() {
        let words = RULE
            .iter()
            .find(|(code, _)| *code == language)
            .expect("known")
            .1;
        for (key, text) in source::texts(&file) {
            let speaks = words.iter().any(|word| text.contains(word));
            assert_eq!(
                speaks,
                AS_RULE.contains(&source::short_form(&key)),
                "{language}: {key}: {text}"
            );
        }
    }
}

#[test]
fn an_opening_from_memory_is_not_told_as_a_rule() {
    let mut from_memory = 0;
    for (name, text) in profiles::ALL {
        let calendar = Calendar::parse(text).unwrap();
        let paths = TaskKind::Open.rests_on();
        let weakest = paths
            .iter()
            .filter_map(|path| calendar.citation(path))
            .map(|cited| cited.confidence)
            .max();
        let is_memory = weakest >= Some(Confidence::CommonPractice);
        from_memory += usize::from(is_memory);
        assert_eq!(calendar.is_published(TaskKind::Open), !is_memory, "{name}");
        let day = NaiveDate::from_ymd_opt(2032, 12, 2).unwrap();
        let task = Task {
            kind: TaskKind::Open,
            block: BlockId(1),
            due: day,
            late_after: day,
            ends: None,
            clock: TaskKind::Open.clock(),
            figures: Figures {
                girth_cm: Some(calendar.opening.girth_cm),
                share_pct: Some(calendar.opening.share_pct),
                is_published: calendar.is_published(TaskKind::Open),
                ..Figures::default()
            },
        };
        in_every_language(|case| {
            let nudge = case.tongue.word(&nudge(NudgeText {
                name: "Tamo",
                block: "A",
                task: &task,
                by: day,
                adviser: "Mara",
                is_new: false,
            }));
            let speaks = RULE
                .iter()
                .flat_map(|(_, words)| *words)
                .any(|word| nudge.contains(word));
            assert!(!speaks || !is_memory, "{name}: {nudge}");
        });
    }
    assert!(from_memory >= 2, "nothing was checked");
}

/// A length from memory or common practice is told as what is usual, in each language.
#[test]
fn a_length_from_memory_is_not_told_as_a_rule() {
    let day = NaiveDate::from_ymd_opt(2032, 12, 2).unwrap();
    for kind in [
        TaskKind::DigPits,
        TaskKind::Prune,
        TaskKind::CountTall,
        TaskKind::Firebreak,
        TaskKind::Intercrop,
        TaskKind::Mulch,
    ] {
        let told = |case: &Case<'_>, is_published: bool| {
            let task = Task {
                kind,
                block: BlockId(1),
                due: day,
                late_after: day,
                ends: None,
                clock: kind.clock(),
                figures: Figures {
                    trees: Some(480),
                    height_m: Some(2.4),
                    pit_cm: Some(60.0),
                    width_m: Some(5.0),
                    gap_cm: Some(20.0),
                    distance_m: Some(1.5),
                    is_published,
                    ..Figures::default()
                },
            };
            case.tongue.word(&nudge(NudgeText {
                name: "Tamo",
                block: "A",
                task: &task,
                by: day,
                adviser: "Mara",
                is_new: false,
            }))
        };
        in_every_language(|case| {
            let usual = sms::bare(case.written["usual"].split(' ').next().expect("a word"));
            let says = |text: &str| sms::bare(text).contains(&usual);
            let (memory, printed) = (told(case, false), told(case, true));
            assert!(says(&memory), "{memory}");
            assert!(!says(&printed), "{printed}");
        });
    }
}
