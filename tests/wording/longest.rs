//! Every text at its longest values is one SMS, and is not cut: it ends as its file says.

use std::collections::BTreeMap;

use budwood::{
    args, sms,
    wording::{After, Args, LateItem, MemberBlock, NudgeText, Said, Texts, Tongue, number},
};
use budwood_parser::{Ailment, Cause, Details, Doubt, Kind, Measure, Supply, Unit, Wetness};
use budwood_scheduler::{
    BlockId, BlockState, Clock, Cohort, Figures, Happened, Task, TaskKind,
    decide::{Draft, Missing, Why},
};
use chrono::NaiveDate;
use fluent_bundle::FluentValue;

use super::source;
use crate::sim;

/// The longest name that the list of people takes: 30 letters, one word.
const NAME: &str = "Wilhelminamagdalenaconstantina";
/// The longest name of a block: 12 letters.
const BLOCK: &str = "Uppernorthwe";
/// Names shrink to this before a text is cut.
const SHORTEST: &str = "Mmmmm";
/// The most trees that the list takes for a block.
const TREES: u32 = 60_000;

/// The day whose words are longest.
fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 9, 30).expect("a day")
}

fn texts() -> Texts {
    Texts::built_in().unwrap()
}

/// Runs a check in every language, with its texts as written.
fn in_every_language(check: impl Fn(Tongue<'_>, &BTreeMap<String, String>)) {
    let texts = texts();
    for (language, file) in source::files() {
        check(texts.tongue(&language), &source::texts(&file));
    }
}

/// Fails unless a text is one SMS that ends as the text of this name does.
#[track_caller]
fn assert_whole(text: &str, key: &str, written: &BTreeMap<String, String>) {
    sim::assert_one_sms(text);
    let pattern = written.get(key).expect(key);
    let ending = pattern.rsplit('}').next().unwrap_or_default().trim();
    if ending.is_empty() {
        let signature = ["Wilhe", "Mmmmm"].iter().any(|name| {
            let at = text.rfind(name);
            at.is_some_and(|at| text[at..].chars().all(|c| c.is_alphanumeric()))
        });
        let last = pattern.rsplit("{ $").next().unwrap_or_default();
        let signed = last.starts_with("adviser");
        assert!(!signed || signature, "{key} is cut: {text}");
    } else {
        assert!(text.ends_with(ending), "{key} is cut: {text}");
    }
}

#[test]
fn every_nudge_fits_at_its_longest() {
    in_every_language(|tongue, written| {
        for kind in TaskKind::ALL {
            let task = task(kind);
            let text = tongue.nudge(NudgeText {
                name: NAME,
                block: BLOCK,
                task: &task,
                by: day(),
                adviser: NAME,
            });
            assert_whole(&text, &format!("nudge-{}", kind.name()), written);
            assert!(text.contains("Wilhe"), "whom does it speak to? {text}");
            assert!(text.contains("Upper"), "about which block? {text}");
        }
    });
}

fn task(kind: TaskKind) -> Task {
    Task {
        kind,
        block: BlockId(1),
        due: day(),
        late_after: day(),
        ends: None,
        clock: kind.clock(),
        figures: Figures {
            trees: Some(TREES),
            grams_per_tree: Some(1_250.5),
            kilograms: Some(60_000.5),
            height_m: Some(2.7),
            girth_cm: Some(50.0),
            datum_cm: Some(150.0),
            share_pct: Some(70.0),
            days_since: Some(1_000),
            pit_cm: Some(90.0),
            round: Some(12),
        },
    }
}

#[test]
fn each_job_hangs_on_one_clock() {
    let clocks = [Clock::Planting, Clock::Season, Clock::Trees, Clock::Office];
    for kind in TaskKind::ALL {
        assert!(clocks.contains(&kind.clock()), "{}", kind.name());
    }
}

/// The longest that can be said of each kind of work.
fn said(kind: Kind) -> Vec<Draft> {
    let on = Happened {
        from: day() - chrono::Days::new(7),
        to: day(),
    };
    let measure = |unit| {
        Some(Measure {
            value: 12_345.5,
            unit,
        })
    };
    let base = Details {
        count: Some(TREES),
        values_cm: vec![123.4; 30],
        ailment: Some(Ailment::Pink),
        cause: Some(Cause::Drought),
        species: Some("Groundnuts and sweet potato".to_owned()),
        not_done: Some(Kind::BranchInduction),
        amount: measure(Unit::Inch),
        area: measure(Unit::Hectare),
        mm: Some(1_234.5),
        wetness: Some(Wetness::Soaked),
        supply: Some(Supply::Fertiliser),
        ..Details::default()
    };
    let uncounted = Details {
        count: None,
        ..base.clone()
    };
    let sampled = Details {
        of: Some(TREES),
        supply: Some(Supply::Plants),
        mm: None,
        ..base.clone()
    };
    [base, uncounted, sampled]
        .into_iter()
        .map(|details| Draft {
            kind,
            block: Some(BLOCK.to_owned()),
            said: None,
            on,
            details,
        })
        .collect()
}

fn state() -> BlockState {
    let cohort = |backfill| Cohort {
        planted_on: day(),
        clone_name: None,
        planted: TREES,
        dead: TREES / 3,
        backfill,
    };
    BlockState {
        cohorts: vec![cohort(false), cohort(true)],
        ..BlockState::default()
    }
}

fn after(state: &BlockState) -> After<'_> {
    After {
        state,
        points: Some(TREES * 3),
        next: Some(day()),
        adviser: NAME,
    }
}

/// The label of a block on a shared phone: its owner's name and its own.
fn label() -> String {
    format!("{NAME} {BLOCK}")
}

#[test]
fn every_read_back_fits_and_says_how_to_correct_it() {
    let state = state();
    let label = label();
    in_every_language(|tongue, written| {
        let check = |facts: &[&Draft]| {
            let said = Said {
                block: &label,
                facts,
                today: NaiveDate::MIN,
            };
            let text = tongue.read_back(said, after(&state));
            assert_whole(&text, "read-back", written);
            let text = tongue.changed(None, said, after(&state));
            assert_whole(&text, "changed", written);
            let text = tongue.changed(Some(BLOCK), said, after(&state));
            assert_whole(&text, "moved", written);
        };
        for fact in Kind::ALL.into_iter().flat_map(said) {
            check(&[&fact]);
        }
        for first in Kind::ALL.into_iter().filter_map(|kind| said(kind).pop()) {
            for second in Kind::ALL.into_iter().filter_map(|kind| said(kind).pop()) {
                check(&[&first, &second]);
            }
        }
    });
}

#[test]
fn a_text_of_many_reports_is_read_back_as_far_as_it_fits() {
    let state = state();
    let drafts: Vec<Draft> = Kind::ALL.into_iter().flat_map(said).collect();
    let facts: Vec<&Draft> = drafts.iter().collect();
    let label = label();
    in_every_language(|tongue, written| {
        for number in 1..=facts.len() {
            let said = Said {
                block: &label,
                facts: &facts[..number],
                today: NaiveDate::MIN,
            };
            let text = tongue.read_back(said, after(&state));
            assert_whole(&text, "read-back", written);
            let why = Why::MoreThanAlive { alive: TREES };
            let text = tongue.confirm(Some(NAME), said, Some(&why));
            assert_whole(&text, "confirm-for", written);
            for key in ["taken-back-ask", "taken-back-count"] {
                let text = tongue.taken_back(key, said, &state, "dead 8 Uppernorthwe");
                assert_whole(&text, key, written);
            }
        }
    });
}

fn whys() -> Vec<Why> {
    let word = || "Wrongspeltwordoftwenty".to_owned();
    let doubts = [
        Doubt::Repaired {
            from: word(),
            to: word(),
        },
        Doubt::LetterForDigit(word()),
        Doubt::LooseNumber(TREES),
        Doubt::Range(TREES, TREES),
        Doubt::GuessedUnit(Unit::Centimetre),
        Doubt::CommaList,
        Doubt::TwoCounts(TREES, TREES),
    ];
    doubts
        .map(Why::Reading)
        .into_iter()
        .chain([
            Why::MoreThanAreaHolds { holds: TREES },
            Why::MoreThanAlive { alive: TREES },
            Why::MoreThanGaps { gaps: TREES },
            Why::LargeShare { alive: TREES },
            Why::SameAgain,
            Why::OddValue(12_345.5),
            Why::Shrunk { before: 123.4 },
            Why::TooThin { mean: 123.4 },
            Why::TooMuchFeed,
            Why::BeforePlanting,
            Why::NotPlanted,
        ])
        .collect()
}

#[test]
fn every_question_fits_and_says_how_to_answer() {
    let label = label();
    in_every_language(|tongue, written| {
        for draft in Kind::ALL.into_iter().flat_map(said) {
            let said = Said {
                block: &label,
                facts: &[&draft],
                today: NaiveDate::MIN,
            };
            for why in whys() {
                let text = tongue.confirm(None, said, Some(&why));
                assert_whole(&text, "confirm", written);
                let text = tongue.confirm(Some(NAME), said, Some(&why));
                assert_whole(&text, "confirm-for", written);
            }
            for (missing, key) in missing() {
                let blocks: Vec<String> = (0..14).map(|index| format!("{BLOCK}{index}")).collect();
                let text = tongue.ask(&draft, &missing, &blocks);
                if matches!(missing, Missing::Values) {
                    sim::assert_one_sms(&text);
                } else {
                    assert_whole(&text, key, written);
                }
            }
        }
    });
}

fn missing() -> [(Missing, &'static str); 6] {
    let unknown = Some("Wrongblockname".to_owned());
    [
        (Missing::Block { unknown: None }, "ask-block"),
        (Missing::Block { unknown }, "ask-block-unknown"),
        (Missing::Count { range: None }, "ask-count"),
        (
            Missing::Count {
                range: Some((TREES, TREES)),
            },
            "ask-count-range",
        ),
        (Missing::Values, "ask-values"),
        (Missing::Date, "ask-date"),
    ]
}

/// Texts that are put into others, or are put together by the checks above.
fn is_part(key: &str) -> bool {
    const PARTS: [&str; 24] = [
        "weekday-",
        "month-",
        "said-",
        "stand-",
        "unit-",
        "ailment-",
        "cause-",
        "why-",
        "bare-",
        "job-",
        "kind-",
        "nudge-",
        "status-",
        "alive-",
        "late-person",
        "quiet-person",
        "gaps-person",
        "sick-person",
        "member-block",
        "my-block",
        "read-back",
        "confirm",
        "taken-back",
        "feed-",
    ];
    const WHOLE: [&str; 18] = [
        "day",
        "day-year",
        "span",
        "clause-on",
        "amount",
        "example",
        "more",
        "task-count",
        "member-due",
        "member-no-blocks",
        "consent-none",
        "alarm-grief",
        "alarm-danger",
        "alarm-illness",
        "alarm-complaint",
        "alarm-money",
        "changed",
        "moved",
    ];
    PARTS.iter().any(|part| key.starts_with(part)) || WHOLE.contains(&key)
}

/// The longest value of this name, with the names of people as short as they get.
fn longest(tongue: Tongue<'_>, key: &str, value: &str) -> String {
    let trees = TREES.to_string();
    let job = TaskKind::ALL
        .map(|kind| tongue.job(kind))
        .into_iter()
        .max_by_key(String::len)
        .expect("jobs");
    let one_of = |item: String| format!("{item}, {}", tongue.say("more", args! { "count" => 99 }));
    match value {
        "name" | "adviser" | "group" | "block" | "old" | "unknown" => SHORTEST.to_owned(),
        "example" => tongue.say("example", args! { "block" => BLOCK }),
        "day" | "by" | "from" | "to" => tongue.day(day()),
        "consent" => tongue.day_year(day()),
        "likely" | "earliest" | "latest" => tongue.month_year(day()),
        "task" => job,
        "tasks" => one_of(format!("{job} {SHORTEST}")),
        "blocks" if key == "my-data" => one_of(SHORTEST.to_owned()),
        "blocks" if key.starts_with("member") => one_of(tongue.member_block(&member(), 5)),
        "blocks" => one_of(SHORTEST.to_owned()),
        "groups" => one_of(SHORTEST.to_owned()),
        "people" => one_of(person(tongue, key)),
        "due" | "late" => {
            let tasks = one_of(tongue.say("task-count", args! { "task" => job, "count" => 500 }));
            tongue.say(&format!("status-{value}"), args! { "tasks" => tasks })
        }
        "alive" if key == "status" => tongue.say("alive-unknown", args! {}),
        "ring" => tongue.say("feed-ring", args! {}),
        "alarm" => tongue.say("alarm-complaint", args! {}),
        "facts" => tongue.say(
            "said-damage-count",
            args! { "cause" => "drought", "count" => TREES },
        ),
        "kilograms" => number(12_345.5),
        "grams" => number(1_250.5),
        "area" => number(49.9),
        "girth" | "share" => number(70.0),
        "code" | "digits" => "4711".to_owned(),
        "days" | "farmers" | "quiet" | "sick" | "uncounted" | "limit" => "500".to_owned(),
        "low" | "high" | "planted" | "alive" | "order" | "gaps" | "points" | "trees" => trees,
        other => panic!("how long can {other} be, in {key}?"),
    }
}

fn person(tongue: Tongue<'_>, key: &str) -> String {
    let values = |key: &str| {
        tongue.say(
            key,
            args! {
                "name" => SHORTEST,
                "days" => 999,
                "gaps" => TREES,
                "ailment" => "pink disease",
                "count" => TREES,
            },
        )
    };
    match key {
        "late-list" => {
            let late = LateItem {
                name: NAME.to_owned(),
                task: TaskKind::LookAtInduced,
                days: 999,
                told: true,
            };
            tongue.late_item(&late, 5)
        }
        "quiet-list" => values("quiet-person"),
        "gaps-list" => values("gaps-person"),
        "sick-list" => values("sick-person"),
        _ => format!("50 {SHORTEST}"),
    }
}

fn member() -> MemberBlock {
    MemberBlock {
        name: BLOCK.to_owned(),
        planted_on: Some(day()),
        planted: TREES,
        alive: TREES,
        area: "49.9 ha".to_owned(),
        due: Some((TaskKind::LookAtInduced, day())),
    }
}

/// Lists show at least one of what they list, and say how many are left out.
#[test]
fn every_other_text_fits_at_its_longest() {
    in_every_language(|tongue, written| {
        let whole = written.keys().filter(|key| !is_part(key));
        for key in whole {
            let values: Vec<(String, String)> = source::values(&written[key])
                .into_iter()
                .map(|value| {
                    let text = longest(tongue, key, &value);
                    (value, text)
                })
                .collect();
            let args: Args<'_> = values
                .iter()
                .map(|(name, text)| {
                    let name: &'static str = Box::leak(name.clone().into_boxed_str());
                    (name, FluentValue::from(text.as_str()))
                })
                .collect();
            let text = sms::plain(&tongue.say(key, args)).into_owned();
            let size = sms::measure(&text);
            assert_eq!(size.parts, 1, "{key} has {} units: {text}", size.units);
            assert!(!text.contains('{'), "{key} lacks a value: {text}");
        }
    });
}
