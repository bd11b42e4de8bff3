//! TELL: an adviser's own words to a group or to one farmer. Who would get them, what they cost, and
//! what is asked before they go.
//!
//! Who asked to rest or said STOP gets none, and a shared phone gets them once.

use budwood_parser::{Query, Reading, Taken, Word};
use budwood_scheduler::{Group, Person, PersonId, jobs::nudge};

use super::codes::Large;
use crate::{
    args,
    engine::{local_time::zone, turn::Turn, view::View},
    wording::{Args, Key, Phrase, Value},
    words::{
        message::{Audience, Deed},
        sms,
    },
};

/// Who gets an adviser's words: a phone each, with the one they are for, and how many get none.
pub(crate) struct Reached<'a> {
    pub(crate) phones: Vec<(&'a str, PersonId)>,
    pub(crate) left_out: usize,
}

impl<'a> View<'a> {
    /// What the text would have said to whom, and what is asked first; or what is said instead.
    pub(crate) fn announcing(
        self,
        turn: &Turn,
        speaker: &Person,
        query: &Query,
    ) -> Result<Large, Phrase> {
        let reading = self.read(turn, speaker.role);
        let (to, words) = self.spoken_to(turn, speaker, query, &reading)?;
        let name = self.audience_name(to);
        if words.is_empty() {
            let args = args! { "name" => Value::name(name) };
            return Err(Phrase::new(Key::AnnounceEmpty, args));
        }
        let over = over_one_sms(words, speaker);
        if over > 0 {
            return Err(Phrase::new(Key::AnnounceLong, args! { "count" => over }));
        }
        let reached = self.reached(to);
        if reached.phones.is_empty() {
            let args = args! { "name" => Value::name(name) };
            return Err(Phrase::new(Key::AnnounceNobody, args));
        }
        let mut args = self.announced_to(&reached, to, speaker);
        args.extend(args! { "cost" => self.cost_of(&reached), "text" => words });
        Ok(Large {
            deed: Deed::Announce {
                to,
                words: words.to_owned(),
            },
            phrase: Phrase::new(Key::AnnounceAsk, args),
        })
    }

    /// To how many phones, from when on, and how many get nothing.
    pub(crate) fn announced_to(self, reached: &Reached<'_>, to: Audience, by: &Person) -> Args {
        let left = (reached.left_out > 0).then(|| {
            let args = args! { "count" => reached.left_out };
            Phrase::new(Key::AnnounceLeft, args)
        });
        args! {
            "phones" => reached.phones.len(),
            "when" => self.goes_from(to, by),
            "left" => left,
        }
    }

    /// Whom the text names behind the word for it, and what it says to them.
    pub(super) fn spoken_to<'t>(
        self,
        turn: &'t Turn,
        speaker: &Person,
        query: &Query,
        reading: &Reading,
    ) -> Result<(Audience, &'t str), Phrase> {
        let is_name = |word: &&Word| word.taken == Taken::Name;
        let mut names = reading.words.iter().skip_while(|word| !is_name(word));
        let first = names.next().ok_or_else(|| self.not_yours(speaker))?;
        let named = turn.text.get(first.span.start..first.span.end);
        let named = named.unwrap_or_default();
        let mut groups = self.world.directory.groups_of(speaker.id);
        let is_group = |group: &&Group| group.name.eq_ignore_ascii_case(named);
        let mut end = first.span.end;
        let to = if let Some(group) = groups.find(is_group) {
            Audience::Group(group.id)
        } else {
            // "tell Keti KOLO: ..." says which Keti.
            let group = query.group.as_deref();
            let next = names.next().filter(is_name);
            let next = next.filter(|word| {
                let told = turn.text.get(word.span.start..word.span.end);
                group.is_some_and(|group| told.is_some_and(|told| told.eq_ignore_ascii_case(group)))
            });
            end = next.map_or(end, |word| word.span.end);
            let found = self.called(speaker, named, group.filter(|_| next.is_some()));
            match found.as_slice() {
                [] => return Err(self.not_yours(speaker)),
                [only] => Audience::Person(only.id),
                several => {
                    let several: Vec<PersonId> = several.iter().map(|one| one.id).collect();
                    return Err(self.which(speaker, &several));
                }
            }
        };
        let words = turn.text.get(end..).unwrap_or_default();
        let is_between = |c: char| c.is_whitespace() || matches!(c, ':' | ',' | ';' | '-' | '.');
        Ok((to, words.trim_start_matches(is_between).trim_end()))
    }

    /// What a group or a person is called.
    pub(crate) fn audience_name(self, to: Audience) -> &'a str {
        match to {
            Audience::Group(group) => self.group_name(Some(group)),
            Audience::Person(person) => self.person(person).map_or("", |one| &one.name),
        }
    }

    fn people_in_audience(self, to: Audience) -> Vec<&'a Person> {
        match to {
            Audience::Group(group) => self.world.directory.members(group).collect(),
            Audience::Person(person) => self.person(person).into_iter().collect(),
        }
    }

    /// Who of them may be texted now.
    pub(crate) fn reached(self, to: Audience) -> Reached<'a> {
        let mut reached = Reached {
            phones: Vec::new(),
            left_out: 0,
        };
        for person in self.people_in_audience(to) {
            let number = self.announced_on(person);
            match number {
                Some(number) if reached.phones.iter().any(|(known, _)| *known == number) => {}
                Some(number) => reached.phones.push((number, person.id)),
                None => reached.left_out += 1,
            }
        }
        reached
    }

    /// The phone on which a person may be told something that they did not ask for.
    pub(crate) fn announced_on(self, person: &Person) -> Option<&'a str> {
        let may = nudge::withheld(person, self.today_of(person.id)).is_none();
        let mut numbers = self.world.directory.numbers_that_reach(person.id);
        numbers.next().filter(|_| may)
    }

    /// At once, or from the next morning on: nobody is texted at night.
    fn goes_from(self, to: Audience, by: &Person) -> Phrase {
        let group = self.people_in_audience(to).into_iter().next();
        let group = group.and_then(|person| self.group_of(person));
        let Some(group) = group else {
            return Key::AnnounceNow.into();
        };
        let local = self.now.with_timezone(&zone(group, self.setup));
        let local = local.naive_local();
        let first = nudge::first_by_day(&self.setup.rules, local, &group.quiet_days);
        if first == local {
            return Key::AnnounceNow.into();
        }
        let args = args! {
            "day" => Value::day_seen(first.date(), self.today_of(by.id)),
            "time" => first.format("%H:%M").to_string(),
        };
        Phrase::new(Key::AnnounceLater, args)
    }

    /// What they cost together, if every gateway tells its price. Each is one part.
    fn cost_of(self, reached: &Reached<'_>) -> Option<Phrase> {
        let price = |(number, _): &(&str, PersonId)| {
            let heard_by = self.talk(number).and_then(|talk| talk.heard_by.as_deref());
            let is_out = |gateway: &str| self.world.links.is_out(gateway, self.now);
            let gateway = self.setup.ways.choose(number, heard_by, is_out)?;
            self.setup.ways.get(gateway)?.price_micro
        };
        let prices: Option<Vec<u64>> = reached.phones.iter().map(price).collect();
        let micro: u64 = prices?.into_iter().fold(0, u64::saturating_add);
        let cost = super::own_week::money(micro);
        Some(Phrase::new(Key::AnnounceCost, args! { "cost" => cost }))
    }
}

/// How many letters too long the words are for one SMS, signed.
fn over_one_sms(words: &str, by: &Person) -> usize {
    let signed = format!("{words} -{}", by.called());
    let mut letters: Vec<char> = sms::bare(&sms::plain(&signed)).chars().collect();
    let mut over = 0;
    while sms::measure(&letters.iter().collect::<String>()).parts > 1 {
        letters.pop();
        over += 1;
    }
    over
}
