//! The longest values in what is said of a group's own books: what its leader tells, and who is told.

use budwood::{
    args,
    wording::{Key, Tongue},
};
use budwood_parser::{Cause, Kind};
use budwood_scheduler::TaskKind;

use super::case::{Case, SHORTEST, TREES};

/// A value of one of these texts; none when it is as long as everywhere.
pub(super) fn longest(case: &Case<'_>, key: &str, value: &str) -> Option<String> {
    let tongue = case.tongue;
    let more = |item: String| format!("{item}, {}", tongue.say(Key::More, args! { "count" => 99 }));
    Some(match (key, value) {
        // As many digits as a sheet and its rows may have.
        ("sheet-none" | "sheet-rows", "number") => "999999".to_owned(),
        ("sheet-rows", "rows") => "20000".to_owned(),
        ("leader-told" | "leader-took-back" | "contested-notice", "facts") => {
            more(told_of(case, Key::BlockFacts))
        }
        ("confirm-many" | "many-told", "people") => more(told_of(case, Key::PersonFacts)),
        // It is left out where it does not fit.
        ("paid-list" | "paid-whole", "buying") | ("buying-set", "left") => String::new(),
        ("allot-clone", "ready") => String::new(),
        (_, "held" | "total" | "cents" | "price") => "99999.99".to_owned(),
        ("paid-list" | "paid-entered" | "buying-set", "people") => {
            more(item(case, Key::PaidPerson))
        }
        ("list-group", "people") => more(item(case, Key::ListPerson)),
        ("train-list" | "train-entered" | "train-waits", "people") => more(SHORTEST.to_owned()),
        ("pick-up-set", "people") => more(item(case, Key::GapsPerson)),
        ("pick-up-told" | "order-pick-up", "plants") => TREES.to_string(),
        ("train-topics", "topics") => more(item(case, Key::TrainTopic)),
        ("allot-list" | "allot-line", "people") => more(item(case, Key::AllotClone)),
        (_, "work") => longest_work(tongue),
        (_, "told" | "of" | "came" | "bags" | "paid") if is_of_books(key) => "500".to_owned(),
        (_, "ordered") => TREES.to_string(),
        ("list-all" | "train-all" | "paid-all" | "allot-all", "groups") => {
            more(item(case, line_of(key)))
        }
        _ => return None,
    })
}

fn is_of_books(key: &str) -> bool {
    let books = ["list-", "train-", "paid-", "buying-", "allot-"];
    books.iter().any(|book| key.starts_with(book))
}

/// What stands for one of several groups.
fn line_of(key: &str) -> Key {
    match key {
        "list-all" => Key::ListPerson,
        "train-all" => Key::TrainTopic,
        "paid-all" => Key::PaidLine,
        _ => Key::AllotClone,
    }
}

fn longest_work(tongue: Tongue<'_>) -> String {
    let all = Kind::ALL
        .iter()
        .map(|kind| tongue.say(Key::Kind(*kind), args! {}));
    all.max_by_key(String::len).expect("kinds")
}

/// An item of a list with everything that may stand in one.
fn item(case: &Case<'_>, key: Key) -> String {
    let tongue = case.tongue;
    let task = TaskKind::ALL.map(|kind| tongue.job(kind));
    let task = task.into_iter().max_by_key(String::len).expect("jobs");
    let all = args! {
        "name" => SHORTEST,
        "group" => SHORTEST,
        "clone" => SHORTEST,
        "cents" => "99999.99",
        "held" => "99999.99",
        "total" => "99999.99",
        "task" => task,
        "work" => longest_work(tongue),
        "day" => tongue.day(case.day),
        "came" => 500,
        "of" => 500,
        "plants" => TREES,
        "gaps" => TREES,
        "ordered" => TREES,
        "ready" => "",
    };
    tongue.say(key, all)
}

/// What is told of somebody's block.
fn told_of(case: &Case<'_>, key: Key) -> String {
    let tongue = case.tongue;
    let cause = tongue.say(Key::Cause(Cause::Drought), args! {});
    let harm = args! { "cause" => cause, "count" => TREES };
    let facts = tongue.say(Key::SaidDamageCount, harm);
    let args = args! { "name" => SHORTEST, "block" => SHORTEST, "facts" => facts };
    tongue.say(key, args)
}
