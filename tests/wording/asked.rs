//! The longest values in answers to an adviser's questions about figures.

use budwood::{
    args,
    wording::{Args, Key, Tongue},
};
use budwood_parser::{Ailment, Cause};
use budwood_scheduler::TaskKind;

use super::{
    case::{Case, SHORTEST, TREES},
    source,
};

/// A value of one of these texts; none when it is as long as everywhere.
#[expect(clippy::too_many_lines, reason = "a table: a line for each value")]
pub(super) fn longest(case: &Case<'_>, key: &str, value: &str) -> Option<String> {
    let (tongue, day) = (case.tongue, case.day);
    let more = |item: String| format!("{item}, {}", tongue.say(Key::More, args! { "count" => 99 }));
    let is_round = ["work-", "root-", "fire-"]
        .iter()
        .any(|of| key.starts_with(of));
    Some(match (key, value) {
        (_, "done" | "due" | "late") if is_round => "500".to_owned(),
        ("ready-group", "now" | "early" | "unknown") | ("map-list", "area" | "blocks") => {
            "500".to_owned()
        }
        ("my-data" | "share-ask", "sharing") => tongue.say(Key::SharingNo, args! {}),
        (_, "shared" | "kept") => "500".to_owned(),
        (_, "stands" | "point" | "large" | "soaked" | "reporters" | "failing") => "500".to_owned(),
        ("week" | "week-owed", "made" | "left" | "waiting") => "500".to_owned(),
        ("ready-person", "low" | "high") | (_, "pct" | "spread") => "100".to_owned(),
        ("map-list", "limit") => tongue.land(4.0),
        (_, "source") => tongue.say(Key::SourceVisit, args! {}),
        (_, "cause") if key.starts_with("harm-") => drought(tongue),
        (_, "phones" | "answered" | "of" | "hurt" | "farmers") if key.starts_with("harm-") => {
            "500".to_owned()
        }
        ("harm-list" | "harm-asked", "people") => more(item(case, "gaps-person")),
        (_, "leaders") => "99".to_owned(),
        ("leaders-ask" | "leader-asked", "people") => more(SHORTEST.to_owned()),
        (_, "effort") => "999".to_owned(),
        ("labour-days", "jobs") => more(item(case, "labour-job-days")),
        ("labour-busy", "from" | "to") => tongue.day(day),
        (_, "clone") => SHORTEST.to_owned(),
        (_, "plants" | "firm" | "wished" | "dead" | "of") => TREES.to_string(),
        (_, "land") => tongue.land(123.4),
        (_, "mean" | "smallest") => tongue.number(123.4),
        (_, "year") => "2026".to_owned(),
        (_, "cost") => "99999.99".to_owned(),
        ("cost", "parts") => "999999".to_owned(),
        // These are left out where they do not fit.
        ("labour-days", "busy")
        | ("order-list", "by")
        | ("dead-list", "uncounted")
        | ("ready-close", "more")
        | ("ready-trees", "hectare" | "places" | "runts") => String::new(),
        ("quiet-failing", "person") => item(case, "quiet-person"),
        ("quiet-list" | "quiet-none", "why") => {
            item(case, "quiet-resting") + &item(case, "quiet-idle")
        }
        ("dead-part", "what") => drought(tongue),
        ("last-fact", "what") => tongue.say(
            Key::SaidDamageCount,
            args! { "cause" => drought(tongue), "count" => TREES },
        ),
        ("last-fact", "block") => format!(" {SHORTEST}"),
        ("dead-parts", "parts") => more(item(case, "dead-part")),
        ("order-list", "parts") => more(item(case, "order-part")),
        (_, "clones") => more(item(case, "clone-share")),
        (_, "part") if key.starts_with("grant-") => "20".to_owned(),
        ("grant-list" | "grant-whole", "stand") => "1500".to_owned(),
        ("grant-list" | "grant-whole", "months") => "360".to_owned(),
        ("grant-list" | "grant-whole", "days") => "365".to_owned(),
        (_, "pass" | "short" | "unseen" | "young") => "500".to_owned(),
        ("grant-list", "people") => more(item(case, "grant-short")),
        (_, "years") => more(item(case, "ready-year")),
        ("last-list", "facts") => more(item(case, "last-fact")),
        ("labour", "jobs") => more(item(case, "labour-job")),
        ("root-round", "found") => more(item(case, "sick-person")),
        ("fire-round", "found") => more(item(case, "gaps-person")),
        (_, "against") => tongue.say(Key::MemberBehind, args! { "months" => 120 }),
        ("best", "alive") => more(item(case, "group-count")),
        ("best", "gaps" | "quiet") => item(case, "group-count"),
        (_, "money") => item(case, "cost-money"),
        ("cost", "share") => tongue.say(Key::OperatorShare, args! { "pct" => 100 }),
        (_, "deadline") => tongue.say(Key::WeekOrder, args! { "day" => tongue.day(day) }),
        (_, "other") => item(case, "whose-other"),
        (_, "last") => tongue.say(Key::WhoseLast, args! { "day" => tongue.day(day) }),
        ("dead-list", "people") => more(item(case, "dead-person")),
        ("feed-group", "people") => more(item(case, "feed-share")),
        ("work-round", "people") => more(item(case, "quiet-person")),
        ("wind-list", "people") => more(item(case, "gaps-person")),
        ("ready-now", "people") => more(item(case, "ready-person")),
        ("whose", "people") => more(item(case, "whose-person")),
        (_, "groups") => more(line(case, key)?),
        _ => return None,
    })
}

/// A line about one of several groups.
fn line(case: &Case<'_>, key: &str) -> Option<String> {
    let first = match key {
        "dead-all" => return Some(item(case, "dead-line")),
        "work-all" | "root-all" | "fire-all" => return Some(item(case, "work-line")),
        "grant-all" => return Some(item(case, "grant-line")),
        "rain-all" => return Some(item(case, "rain-line-hold")),
        "clone-all" => item(case, "clone-share"),
        "order-all" => item(case, "order-firm"),
        "feed-all" => case.tongue.say(
            Key::FeedWeight,
            args! { "kilograms" => case.tongue.number(12_345.5) },
        ),
        "wind-all" | "harm-all" | "girth-all" => return Some(item(case, "group-count")),
        "map-all" => item(case, "map-point"),
        _ => return None,
    };
    let args = args! { "group" => SHORTEST, "count" => TREES, "first" => first };
    Some(case.tongue.say(Key::GroupFirst, args))
}

/// An item of a list with everything that may stand in one.
fn item(case: &Case<'_>, key: &str) -> String {
    let tongue = case.tongue;
    let all: Args = args! {
        "name" => SHORTEST,
        "group" => SHORTEST,
        "block" => SHORTEST,
        "clone" => SHORTEST,
        "person" => SHORTEST,
        "pct" => 100,
        "low" => 100,
        "high" => 100,
        "source" => tongue.say(Key::SourceVisit, args! {}),
        "count" => TREES,
        "gaps" => TREES,
        "trees" => TREES,
        "dead" => TREES,
        "of" => TREES,
        "planted" => TREES,
        "plants" => TREES,
        "firm" => TREES,
        "stands" => 500,
        "part" => 20,
        "effort" => 999,
        "pass" => 500,
        "short" => 500,
        "unseen" => 500,
        "done" => 500,
        "due" => 500,
        "late" => 500,
        "soaked" => 500,
        "reporters" => 500,
        "days" => 999,
        "year" => "2026",
        "cost" => "99999.99",
        "digits" => "4711",
        "kilograms" => tongue.number(12_345.5),
        "land" => tongue.land(123.4),
        "day" => tongue.day_year(case.day),
        "consent" => tongue.day_year(case.day),
        "other" => "",
        "task" => tongue.job(TaskKind::LookAtInduced),
        "ailment" => tongue.say(Key::Ailment(Ailment::WhiteRoot), args! {}),
        "what" => drought(tongue),
    };
    tongue.say(source::key(key), all)
}

fn drought(tongue: Tongue<'_>) -> String {
    tongue.say(Key::Cause(Cause::Drought), args! {})
}
