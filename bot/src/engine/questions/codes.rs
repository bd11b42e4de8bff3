//! Large deeds that need a code first: what is asked, and what is said once they are done.
//!
//! Sender numbers can be forged. Whoever forges one does not see the code, because it is texted
//! to the registered number. What an adviser does to one farmer's record needs a code once a day:
//! the right one opens a visit, until the evening. What goes to many, and what cannot be taken
//! back, needs one each time, as the code is also the yes to what was shown.

use budwood_scheduler::{
    Group, GroupId, Person, PersonId, Role,
    decide::{Decision, Reply},
};
use chrono::{DateTime, NaiveDate, NaiveTime, TimeDelta, Utc};

use crate::{
    args,
    engine::{
        local_time::{instant, zone},
        roles,
        said::Said,
        turn::Turn,
        view::View,
    },
    wording::{Key, Phrase, Value},
    words::{
        limits,
        message::{CodeUse, Deed},
    },
};

/// Codes have six digits: short enough to type, and with three guesses a day too many to guess.
const CODE_DIGITS: usize = 6;
const CODES: u64 = 900_000;
const FIRST_CODE: u64 = 100_000;

/// A large deed, and the question that waits for its code.
pub(crate) struct Large {
    pub(crate) deed: Deed,
    pub(crate) phrase: Phrase,
}

impl View<'_> {
    /// The code for what this text asks for.
    pub(crate) fn code(self, turn: &Turn) -> String {
        self.code_of(&format!("{} {}", turn.message, turn.number))
    }

    /// The code with which somebody comes in to look at pages, after so many were given out.
    pub(crate) fn door_code(self, person: PersonId, given: u64) -> String {
        self.code_of(&format!("door {} {given}", person.0))
    }

    fn code_of(self, what: &str) -> String {
        let about = format!("{what} {}", self.now.timestamp_millis());
        let mac = hmac_sha256::HMAC::mac(about, self.setup.secret.to_be_bytes());
        let [a, b, c, d, e, f, g, h, ..] = mac;
        let number = u64::from_be_bytes([a, b, c, d, e, f, g, h]);
        (FIRST_CODE + number % CODES).to_string()
    }

    /// How often a code for this deed was asked for on this phone lately, and a wrong one came.
    pub(crate) fn codes_used(self, number: &str, deed: &Deed) -> (usize, usize) {
        let since = self.now - TimeDelta::hours(limits::CODE_HOURS);
        let codes = self.talk(number).map(|talk| talk.codes.as_slice());
        let lately = codes
            .unwrap_or_default()
            .iter()
            .filter(|code| code.at > since);
        let is_wrong = |code: &&CodeUse| code.was_wrong && code.deed == deed.name();
        let asked = lately.clone().filter(|code| !code.was_wrong).count();
        (asked, lately.filter(is_wrong).count())
    }

    /// How often one for this deed was.
    fn asked_for(self, number: &str, deed: &Deed) -> usize {
        let since = self.now - TimeDelta::hours(limits::CODE_HOURS);
        let codes = self.talk(number).map(|talk| talk.codes.iter());
        let of_it = codes.into_iter().flatten().filter(|code| {
            let is_it = code.deed == deed.name() && !code.was_wrong;
            is_it && code.at > since
        });
        of_it.count()
    }

    /// Whether nobody is asked for a code for this deed on this phone now.
    pub(crate) fn is_locked(self, number: &str, deed: &Deed) -> bool {
        let (asked, wrong) = self.codes_used(number, deed);
        let goes_to_many = matches!(
            deed,
            Deed::Announce { .. } | Deed::AskHarm { .. } | Deed::AskLeaders
        );
        let most = if goes_to_many {
            limits::ANNOUNCED_A_DAY
        } else {
            limits::CODES_SENT_MAX
        };
        let of_it = self.asked_for(number, deed);
        asked >= limits::CODES_SENT_MAX || of_it >= most || wrong >= limits::WRONG_CODES_MAX
    }

    /// Whether a text would change what belongs to others, by an adviser whose phone has not shown
    /// today that it is in their hands.
    pub(crate) fn needs_visit(self, turn: &Turn, role: Role, decision: &Decision) -> bool {
        if !roles::needs_code(role) || self.is_on_visit(&turn.number) {
            return false;
        }
        match decision {
            Decision::Record(_)
            | Decision::Confirm { .. }
            | Decision::Ask { .. }
            | Decision::Reply(Reply::Yes(_)) => turn.target != turn.speaker,
            // What is put right may be of somebody else, though the text names nobody.
            Decision::Amend(_) => self.in_reach(&turn.number).any(|event| {
                let block = event.body.block();
                let block = block.and_then(|block| self.world.directory.block(block));
                block.is_some_and(|block| block.owner != turn.speaker)
            }),
            Decision::Both(first, second) => [first, second]
                .into_iter()
                .any(|decision| self.needs_visit(turn, role, decision)),
            // What waits for her is closed by it.
            Decision::Reply(Reply::Done) => {
                let adviser = self.person(turn.speaker);
                adviser.is_some_and(|adviser| self.read_last(adviser).is_some())
            }
            Decision::Reply(Reply::No | Reply::Seen | Reply::Later(_) | Reply::Choice(_))
            | Decision::Answer(_)
            | Decision::Help(_)
            | Decision::Silent(_)
            | Decision::Person(_) => false,
        }
    }

    /// Whether a code has opened a visit by this phone, and it goes on.
    pub(crate) fn is_on_visit(self, number: &str) -> bool {
        let until = self.talk(number).and_then(|talk| talk.visit_until);
        until.is_some_and(|until| self.now < until)
    }

    /// Too many wrong codes came.
    pub(crate) fn locked(self, turn: &Turn) -> Said {
        self.reply(turn, Key::CodeLocked)
    }

    /// A visit that waits for its code.
    pub(crate) fn visit(self, turn: &Turn) -> Large {
        let whose = self.person(turn.target);
        let is_own = |person: &&Person| person.id == turn.speaker;
        let read = whose.filter(is_own).and_then(|own| self.read_last(own));
        let whose = read.map_or(whose, |matter| self.person(matter.person));
        let whom = whose.map_or("", |person| &person.name);
        let deed = Deed::Visit {
            text: turn.text.clone(),
            sent_at: turn.sent_at,
        };
        Large {
            deed,
            phrase: Phrase::new(Key::VisitAsk, args! { "name" => Value::name(whom) }),
        }
    }

    /// When the evening of an adviser begins, in which a visit ends; after that, midnight.
    pub(crate) fn visit_ends(self, person: &Person) -> DateTime<Utc> {
        let mut groups = self.groups_of(person);
        let zone = groups
            .next()
            .map_or_else(|| self.zone_of(person.id), |group| zone(group, self.setup));
        let local = self.now.with_timezone(&zone).naive_local();
        let evening = local.date().and_time(self.setup.rules.quiet_from);
        let midnight = (local.date() + TimeDelta::days(1)).and_time(NaiveTime::MIN);
        instant(if local < evening { evening } else { midnight }, zone)
    }

    /// Opening the planting window of a group.
    pub(crate) fn opening_window(self, group: &Group) -> Large {
        let on = self.today_in(group);
        let args = args! {
            "group" => group.name.as_str(),
            "day" => on,
            "rain" => self.rain_told(group.id, on),
            "farmers" => self.table(group).told_to_plant().value,
        };
        let group = group.id;
        Large {
            deed: Deed::OpenWindow { group, on },
            phrase: Phrase::new(Key::WindowAsk, args),
        }
    }

    /// Holding planting in a group again; what is said instead when it is not open.
    pub(crate) fn holding_planting(self, group: &Group) -> Result<Large, Phrase> {
        let mut args = args! { "group" => group.name.as_str() };
        if group.window_opened.is_none() {
            return Err(Phrase::new(Key::HoldNone, args));
        }
        args.extend(args! { "farmers" => self.table(group).told_to_plant().value });
        let on = self.today_in(group);
        let group = group.id;
        Ok(Large {
            deed: Deed::HoldPlanting { group, on },
            phrase: Phrase::new(Key::HoldAsk, args),
        })
    }

    /// Warning the neighbours of the largest cluster of a group; what is said instead when there
    /// is none.
    pub(crate) fn warning(self, adviser: &Person, group: GroupId) -> Result<Large, Phrase> {
        let name = self.group_name(Some(group));
        let clusters = self.clusters_of(group, self.today_of(adviser.id));
        let cluster = clusters.into_iter().next();
        let near = cluster.map(|cluster| (self.near(adviser, &cluster), cluster));
        let Some((near, cluster)) = near.filter(|(near, _)| !near.is_empty()) else {
            return Err(Phrase::new(Key::WarnNone, args! { "group" => name }));
        };
        let ailment = cluster.ailment;
        let args = args! {
            "group" => Value::name(name),
            "ailment" => ailment,
            "count" => cluster.reports,
            "blocks" => near.len(),
        };
        Ok(Large {
            deed: Deed::Warn { group, ailment },
            phrase: Phrase::new(Key::WarnAsk, args),
        })
    }

    /// The window of a group was opened, or planting is held.
    pub(crate) fn window_told(self, turn: &Turn, key: Key, group: GroupId, on: NaiveDate) -> Said {
        let record = self.world.directory.group(group);
        let farmers = record.map_or(0, |group| self.table(group).told_to_plant().value);
        let args = args! {
            "group" => self.group_name(Some(group)),
            "day" => on,
            "farmers" => farmers,
        };
        self.reply(turn, Phrase::new(key, args))
    }
}

/// The code that a text brings: nothing else in it has digits, as a number or a report would.
pub(crate) fn code_in(text: &str) -> Option<&str> {
    let mut parts = text
        .split(|c: char| !c.is_alphanumeric())
        .filter(|part| part.chars().any(char::is_numeric));
    let code = parts.next().filter(|_| parts.next().is_none())?;
    let is_code = code.len() == CODE_DIGITS && code.chars().all(|c| c.is_ascii_digit());
    is_code.then_some(code)
}

#[cfg(test)]
mod tests {
    use super::code_in;

    /// Six digits and no other number: "code 123456" is one, "planted 123456" of 2 blocks is none.
    #[test]
    fn a_code_is_the_only_number_of_its_text() {
        for text in [
            "123456",
            " 123456. ",
            "code: 123456",
            "123456 yes please",
            "#123456",
        ] {
            assert_eq!(code_in(text), Some("123456"), "{text}");
        }
        for text in [
            "",
            "yes",
            "12345",
            "1234567",
            "123 456",
            "123456 2",
            "123456 dead 4 A",
            "A123456",
            "12345O",
            "١٢٣٤٥٦",
            "123456 ٢",
        ] {
            assert_eq!(code_in(text), None, "{text}");
        }
    }
}
