//! The longest values in texts about what an adviser does: words of their own, promises.

use budwood::{args, wording::Key};
use budwood_parser::Cause;

use super::case::{Case, SHORTEST, TREES};

/// A value of one of these texts; none when it is as long as everywhere.
pub(super) fn longest(case: &Case<'_>, key: &str, value: &str) -> Option<String> {
    let (tongue, day) = (case.tongue, case.day);
    Some(match (key, value) {
        // It is left out where it does not fit.
        ("week-owed", "deadline") => String::new(),
        ("week-owed", "promises") => {
            let text = args! { "number" => 60, "text" => "m".repeat(30), "day" => tongue.day(day) };
            let first = tongue.say(Key::Owed, text);
            let more = tongue.say(Key::More, args! { "count" => 99 });
            format!("{first}, {more}")
        }
        ("hand-ask" | "handed" | "handed-notice", "waiting" | "owed" | "sick") => "500".to_owned(),
        ("hand-ask" | "handed" | "handed-notice", "farmers") => "5000".to_owned(),
        ("waiting-next-choose", "readings") => {
            let facts = tongue.say(
                Key::SaidDamageCount,
                args! {
                    "cause" => tongue.say(Key::Cause(Cause::Drought), args! {}),
                    "count" => TREES,
                },
            );
            let first = args! { "number" => 1, "block" => SHORTEST, "facts" => facts };
            let more = tongue.say(Key::More, args! { "count" => 2 });
            format!("{}, {more}", tongue.say(Key::WaitingReading, first))
        }
        ("promised" | "complaint-told", "number") => "60".to_owned(),
        ("stopped-shared", "people") => {
            let more = tongue.say(Key::More, args! { "count" => 99 });
            format!("{SHORTEST}, {more}")
        }
        (_, "phones") => "500".to_owned(),
        (_, "when") => tongue.say(
            Key::AnnounceLater,
            args! { "day" => tongue.day(day), "time" => "06:00" },
        ),
        (_, "left") if key.starts_with("announce") => {
            tongue.say(Key::AnnounceLeft, args! { "count" => 500 })
        }
        ("announce-ask", "cost") => tongue.say(Key::AnnounceCost, args! { "cost" => "99.99" }),
        ("announce-long", "count") => "1440".to_owned(),
        (_, "time") => "06:00".to_owned(),
        _ => return None,
    })
}
