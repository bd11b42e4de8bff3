//! The longest values in what is said of a group's own books: what its leader tells, and who is told.

use budwood::{args, wording::Key};
use budwood_parser::Cause;

use super::case::{Case, SHORTEST, TREES};

/// A value of one of these texts; none when it is as long as everywhere.
pub(super) fn longest(case: &Case<'_>, key: &str, value: &str) -> Option<String> {
    let tongue = case.tongue;
    let more = |item: String| format!("{item}, {}", tongue.say(Key::More, args! { "count" => 99 }));
    Some(match (key, value) {
        ("leader-told" | "leader-took-back" | "contested-notice", "facts") => {
            more(told_of(case, Key::BlockFacts))
        }
        ("confirm-many" | "many-told", "people") => more(told_of(case, Key::PersonFacts)),
        _ => return None,
    })
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
