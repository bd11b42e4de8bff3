//! Every text that no other check puts together is one SMS at its longest values.

use budwood::{
    args,
    wording::{
        Args, Key, LateItem, MemberBlock, MemberGirth, Phrase, Tongue, Value, late_item,
        member_block, member_girth,
    },
    words::sms,
};
use budwood_parser::{Ailment, Alarm, Cause};
use budwood_scheduler::{TaskKind, land::block::Living};
use chrono::{NaiveDate, TimeDelta};

use super::{
    asked,
    case::{BLOCK, Case, SHORTEST, TREES, in_every_language},
    done, office, source,
};

/// What the keys of texts begin with that are put into others, or are put together by the checks above.
const PARTS: [&str; 40] = [
    "group-",
    "operator-",
    "living",
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
    "visit-cluster",
    "visit-lost",
    "visit-quiet",
    "visit-ending",
    "member-block",
    "my-block",
    "read-back",
    "confirm",
    "taken-back",
    "feed-ring",
    "walk-",
    "datum-",
    "pit-",
    "rain-",
    "alarm-",
    "concern-",
    "waiting-person",
    "handle-",
    "lesson-",
];

/// Such texts by their whole keys.
const WHOLE: [&str; 32] = [
    "fixed",
    "fixed-moved",
    "put-back",
    "block-facts",
    "person-facts",
    "day",
    "day-year",
    "span",
    "clause-on",
    "amount",
    "land",
    "usual",
    "example",
    "more",
    "more-jobs",
    "gaps-order",
    "task-count",
    "member-due",
    "member-no-blocks",
    "member-girth",
    "member-behind",
    "member-ahead",
    "member-ready",
    "consent-none",
    "told-adviser",
    "told-nobody",
    "decimal",
    "years-ahead",
    "language-name",
    "language-called",
    "changed",
    "moved",
];

/// Values that are names, which give way first.
const NAMES: [&str; 8] = [
    "name", "adviser", "leader", "group", "block", "old", "unknown", "text",
];

fn is_part(key: &str) -> bool {
    let is_of_parts = PARTS.iter().any(|part| key.starts_with(part));
    (is_of_parts || WHOLE.contains(&key)) && key != "status-all"
}

/// The longest values that have a list of their own.
fn elsewhere(case: &Case<'_>, key: &str, value: &str) -> Option<String> {
    done::longest(case, key, value)
        .or_else(|| asked::longest(case, key, value))
        .or_else(|| office::longest(case, key, value))
        .or_else(|| work(case.tongue, value))
}

/// The longest value of this name, with the names of people as short as they get.
#[expect(clippy::too_many_lines, reason = "a table: a line for each value")]
fn longest(case: &Case<'_>, key: &str, value: &str) -> String {
    let (tongue, day) = (case.tongue, case.day);
    let trees = TREES.to_string();
    let job = TaskKind::ALL
        .map(|kind| tongue.job(kind))
        .into_iter()
        .max_by_key(String::len)
        .expect("jobs");
    if let Some(text) = elsewhere(case, key, value) {
        return text;
    }
    let one_of =
        |item: String| format!("{item}, {}", tongue.say(Key::More, args! { "count" => 99 }));
    match value {
        value if NAMES.contains(&value) => SHORTEST.to_owned(),
        "example" => tongue.say(Key::Example, args! { "block" => BLOCK }),
        "day" | "by" | "from" | "to" => tongue.day(day),
        "consent" => tongue.day_year(day),
        "likely" | "earliest" | "latest" => tongue.month_year(day),
        "task" => job,
        "tasks" => one_of(format!("{job} {SHORTEST}")),
        "blocks" if key == "my-data" => one_of(SHORTEST.to_owned()),
        "blocks" if key.starts_with("member") => {
            // As short as it gets: what a longer form adds is told where there is room.
            let block = member_block(&member(day));
            one_of(tongue.say(block.key, block.args))
        }
        "blocks" => one_of(SHORTEST.to_owned()),
        "groups" if key.ends_with("-all") => one_of(group_line(tongue, key)),
        "groups" => one_of(SHORTEST.to_owned()),
        "people" => one_of(person(tongue, key)),
        "due" | "late" => {
            let first = tongue.say(Key::TaskCount, args! { "task" => job, "count" => 500 });
            let others = tongue.say(Key::MoreJobs, args! { "count" => 25 });
            let tasks = format!("{first}, {others}");
            tongue.say(
                source::key(&format!("status-{value}")),
                args! { "tasks" => tasks },
            )
        }
        "ailment" => tongue.say(Key::Ailment(Ailment::Pink), args! {}),
        // It is left out where it does not fit.
        "check" | "lost" | "peace" => String::new(),
        "rain" => tongue.say(Key::RainOpen, args! { "soaked" => 500, "reporters" => 500 }),
        "hours" => "999".to_owned(),
        "minutes" => "10".to_owned(),
        "months" => "120".to_owned(),
        "pooled" => "1200".to_owned(),
        "alone" if key == "feed-group" => "1500".to_owned(),
        "trees" if key == "feed-group" => "300000".to_owned(),
        "alive" if key == "status" => tongue.say(Key::AliveUnknown, args! {}),
        "alarm" | "concern" => longest_concern(tongue),
        "told" => longest_told(tongue),
        "facts" => tongue.say(
            Key::SaidDamageCount,
            args! { "cause" => tongue.say(Key::Cause(Cause::Drought), args! {}), "count" => TREES },
        ),
        "area" => tongue.land(49.9),
        "girth" | "share" => tongue.number(70.0),
        "languages" => {
            "en English, fr Francais, id Indonesia, pt Portugues, th Thai, vi Tieng Viet".to_owned()
        }
        "codes" => "en fr id pt th vi".to_owned(),
        "planted" if key == "status" => "500".to_owned(),
        "code" => "471147".to_owned(),
        "digits" => "4711".to_owned(),
        "count" | "days" | "farmers" | "quiet" | "sick" | "uncounted" | "limit" => "500".to_owned(),
        "living" => {
            let trees = args! { "first" => TREES, "filled" => TREES, "planted" => TREES };
            tongue.say(Key::LivingFilled, trees)
        }
        "low" | "high" | "planted" | "alive" | "order" | "gaps" | "points" | "trees" => trees,
        other => panic!("how long can {other} be, in {key}?"),
    }
}

/// What texts of feeding, of the field round and of phones are about, in the most letters.
fn work(tongue: Tongue<'_>, value: &str) -> Option<String> {
    Some(match value {
        "jobs" => walked(tongue),
        "kilograms" => tongue.number(12_345.5),
        "grams" => tongue.number(1_250.5),
        "ring" => tongue.say(Key::FeedRing, args! {}),
        "product" => "superphosphate".to_owned(),
        "number" => "+447700900123".to_owned(),
        "products" => "urea 125+tsp 60".to_owned(),
        "dose" => {
            let figures = args! {
                "trees" => TREES,
                "grams" => tongue.number(1_250.5),
                "kilograms" => tongue.number(12_345.5),
            };
            tongue.say(Key::FeedSum, figures)
        }
        _ => return None,
    })
}

/// All that a field round is for.
fn walked(tongue: Tongue<'_>) -> String {
    let walks = [
        Key::WalkWeeds,
        Key::WalkShoots,
        Key::WalkRoots,
        Key::WalkLeaves,
        Key::WalkCrops,
    ];
    let walks = walks.map(|key| tongue.say(key, args! {}));
    walks.join(&tongue.say(Key::WalkThen, args! {}))
}

/// Why a text waits, in the most letters.
fn longest_concern(tongue: Tongue<'_>) -> String {
    let others = [
        Key::ConcernCallMe,
        Key::ConcernQuestion,
        Key::ConcernUnclear,
    ];
    let alarms = Alarm::ALL.iter().copied().map(Key::Alarm);
    let all = alarms.chain(others).map(|key| tongue.say(key, args! {}));
    all.max_by_key(|text| sms::measure(text).units)
        .expect("concerns")
}

fn longest_told(tongue: Tongue<'_>) -> String {
    let told = [Key::ToldAdviser, Key::ToldNobody];
    let all = told.map(|key| tongue.say(key, args! { "adviser" => SHORTEST }));
    all.into_iter()
        .max_by_key(|text| sms::measure(text).units)
        .expect("two")
}

/// A line about one of several groups.
fn group_line(tongue: Tongue<'_>, key: &str) -> String {
    if key == "status-all" {
        let alive = args! { "pct" => 100, "visited" => 100 };
        let args = args! {
            "group" => SHORTEST,
            "alive" => tongue.say(Key::AlivePctVisited, alive),
            "late" => 500,
            "quiet" => 500,
            "sick" => 500,
        };
        return tongue.say(Key::StatusLine, args);
    }
    let first = match key {
        "late-all" => person(tongue, "late-list"),
        "sick-all" => person(tongue, "sick-list"),
        _ => tongue.say(Key::GapsOrder, args! { "order" => TREES }),
    };
    let args = args! { "group" => SHORTEST, "count" => TREES, "first" => first };
    tongue.say(Key::GroupFirst, args)
}

fn person(tongue: Tongue<'_>, key: &str) -> String {
    let values = |key: &str| {
        tongue.say(
            source::key(key),
            args! {
                "name" => SHORTEST,
                "days" => 999,
                "hours" => 999,
                "gaps" => TREES,
                "ailment" => tongue.say(Key::Ailment(Ailment::Pink), args! {}),
                "count" => TREES,
                "concern" => longest_concern(tongue),
            },
        )
    };
    match key {
        "late-list" => {
            let late = LateItem {
                name: SHORTEST.to_owned(),
                task: TaskKind::LookAtInduced,
                days: 999,
                told: true,
            };
            tongue.word(&late_item(&late))
        }
        "girth-list" => {
            let girth = tongue.word(&member_girth(&MemberGirth {
                mean_cm: 123.4,
                of: TREES,
                months_ahead: -120,
                ready: None,
            }));
            format!("{SHORTEST}{girth}")
        }
        "quiet-list" => values("quiet-person"),
        "gaps-list" => values("gaps-person"),
        "sick-list" | "sick-list-cluster" => values("sick-person"),
        "visit-list" => values("visit-cluster"),
        "waiting-list" => values("waiting-person"),
        _ => format!("50 {SHORTEST}"),
    }
}

fn member(day: NaiveDate) -> MemberBlock {
    MemberBlock {
        name: SHORTEST.to_owned(),
        planted_on: Some(day),
        living: Living {
            first: TREES,
            filled: TREES,
            planted: TREES,
            gaps: 0,
        },
        hectares: Some(49.9),
        due: Some((TaskKind::LookAtInduced, day)),
        today: day - TimeDelta::days(400),
        girth: None,
    }
}

/// Lists show at least one of what they list, and say how many are left out.
#[test]
fn every_other_text_fits_at_its_longest() {
    in_every_language(|case| {
        let tongue = case.tongue;
        let mut cut = Vec::new();
        let whole = case
            .written
            .keys()
            .filter(|key| !is_part(key) && source::short_form(key) == *key);
        for key in whole {
            let values: Vec<(String, String)> = source::values(&case.written[key])
                .into_iter()
                .map(|value| {
                    let text = longest(case, key, &value);
                    (value, text)
                })
                .collect();
            let args: Args = values
                .iter()
                .map(|(name, text)| {
                    let name: &'static str = Box::leak(name.clone().into_boxed_str());
                    (name, Value::from(text.as_str()))
                })
                .collect();
            let said = tongue.say(source::key(key), args.clone());
            let size = sms::measure(&said);
            let text = tongue.word(&Phrase::new(source::key(key), args));
            let is_whole = text.chars().count() == said.chars().count();
            if !is_whole {
                cut.push(format!("{key} has {} units: {said}", size.units));
            }
            assert!(!text.contains('{'), "{key} lacks a value: {text}");
        }
        assert!(cut.is_empty(), "too long:\n{}", cut.join("\n"));
    });
}
