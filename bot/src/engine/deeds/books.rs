//! Entries in the books of a group: who came to a training, who has paid for fertiliser, when it is
//! bought, what a nursery has and gives out.

use budwood_parser::{Query, Topic};
use budwood_scheduler::{
    Body, Entered, GroupId, Person, PersonId,
    decide::{date_ahead, resolve_date},
};
use chrono::NaiveDate;

use crate::{
    args,
    engine::{
        outcome::Outcome,
        questions::books::{cents, shown_kind},
        roles::{self, Verb},
        said::{Done, Said},
        step::Step,
        turn::Turn,
    },
    wording::{Key, Phrase, Value},
    words::limits,
};

impl Step<'_> {
    /// Enters what a text says in the books; none where it only asks.
    pub(crate) fn enter(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Option<Done> {
        let entry = &query.entry;
        let is_day = query.topic == Topic::PickUp && entry.when.is_some();
        let is_entry = !entry.lines.is_empty() || entry.amount.is_some() || is_day;
        let verb = if matches!(query.topic, Topic::Stock | Topic::Sent | Topic::PickUp) {
            Verb::RaisePlants
        } else {
            Verb::KeepBooks
        };
        if !is_entry || !query.topic.is_of_books() {
            return None;
        }
        if !roles::may(speaker.role, verb) {
            return Some(self.answered(turn, self.view().signed(speaker, Key::NotYours)));
        }
        let mut people: Vec<(PersonId, Option<f64>)> = Vec::new();
        for (name, number) in &entry.lines {
            match self.view().members_named(turn, speaker, name)[..] {
                [] => {}
                [only] => people.push((only, *number)),
                ref several => {
                    let phrase = self.view().which(speaker, several);
                    return Some(self.answered(turn, phrase));
                }
            }
        }
        let is_theirs = if matches!(query.topic, Topic::Trained | Topic::Paid) {
            !people.is_empty()
        } else {
            !self.view().books_asked(speaker, query).is_empty()
        };
        if !is_theirs {
            return Some(self.answered(turn, self.view().not_yours(speaker)));
        }
        if roles::needs_code(speaker.role) && !self.view().is_on_visit(&turn.number) {
            let visit = self.view().visit(turn);
            return Some(self.ask_code(turn, visit));
        }
        Some(if query.topic == Topic::Trained {
            self.trained(turn, speaker, query, &people)
        } else if query.topic == Topic::Paid {
            self.paid(turn, speaker, &people)
        } else if query.topic == Topic::Buying {
            self.buying(turn, speaker, query)
        } else if query.topic == Topic::PickUp {
            self.pick_up(turn, speaker, query)
        } else {
            self.plants(turn, speaker, query)
        })
    }

    fn answered(&self, turn: &Turn, phrase: Phrase) -> Done {
        Outcome::Answered.saying([self.view().reply(turn, phrase)])
    }

    fn put_in_book(&mut self, turn: &Turn, group: GroupId, entered: Entered) {
        let telling = self.view().telling(turn, turn.speaker);
        self.record(telling, None, Body::Entered { group, entered });
    }

    /// People by group: an adviser may name those of several in one text.
    fn by_group(&self, people: &[PersonId]) -> Vec<(GroupId, Vec<PersonId>)> {
        let mut groups: Vec<(GroupId, Vec<PersonId>)> = Vec::new();
        for person in people {
            let group = self.view().person(*person).and_then(|person| person.group);
            let Some(group) = group else {
                continue;
            };
            match groups.iter_mut().find(|(known, _)| *known == group) {
                Some((_, of_group)) => of_group.push(*person),
                None => groups.push((group, vec![*person])),
            }
        }
        groups
    }

    /// A day that a text tells of what was: never one to come.
    fn day_told(&self, turn: &Turn, query: &Query) -> NaiveDate {
        let today = self.view().day_of(turn);
        let said = query.entry.when.and_then(|when| resolve_date(when, today));
        said.map_or(today, |on| on.day().min(today))
    }

    fn trained(
        &mut self,
        turn: &Turn,
        speaker: &Person,
        query: &Query,
        people: &[(PersonId, Option<f64>)],
    ) -> Done {
        let Some(kind) = query.kind.map(shown_kind) else {
            return self.answered(turn, Key::TrainWhich.into());
        };
        let people: Vec<PersonId> = people.iter().map(|(person, _)| *person).collect();
        let groups = self.by_group(&people);
        if groups.is_empty() {
            return self.answered(turn, self.view().not_yours(speaker));
        }
        let on = self.day_told(turn, query);
        for (group, came) in groups {
            self.put_in_book(turn, group, Entered::Trained { kind, on, came });
        }
        let names = people
            .iter()
            .filter_map(|person| self.view().person(*person));
        let names = names.map(|person| Value::name(person.called()));
        let args = args! {
            "work" => kind,
            "day" => on,
            "count" => people.len(),
            "people" => Value::List(names.collect()),
        };
        Outcome::Recorded.saying([self
            .view()
            .reply(turn, Phrase::new(Key::TrainEntered, args))])
    }

    /// Each who paid reads it: money is what people fall out over.
    fn paid(&mut self, turn: &Turn, speaker: &Person, people: &[(PersonId, Option<f64>)]) -> Done {
        let amounts = people.iter().map(|(person, number)| {
            let amount = number.and_then(whole_cents)?;
            let group = self.view().person(*person)?.group?;
            Some((*person, group, amount))
        });
        let Some(amounts) = amounts
            .collect::<Option<Vec<_>>>()
            .filter(|all| !all.is_empty())
        else {
            return self.answered(turn, Key::PaidWhich.into());
        };
        let mut notices: Vec<Said> = Vec::new();
        for (person, group, amount) in &amounts {
            let entered = Entered::Paid {
                person: *person,
                cents: *amount,
            };
            self.put_in_book(turn, *group, entered);
            let view = self.view();
            let Some(payer) = view.person(*person).filter(|payer| payer.id != speaker.id) else {
                continue;
            };
            let args = args! {
                "leader" => Value::name(speaker.called()),
                "cents" => cents(*amount),
            };
            let phrase = view.signed_with(payer, Key::PaidTold, args);
            notices.extend(view.to_other(turn, payer, phrase));
        }
        let view = self.view();
        let told = amounts.iter().filter_map(|(person, _, amount)| {
            let name = Value::name(view.person(*person)?.called());
            let args = args! { "name" => name, "cents" => cents(*amount) };
            Some(Phrase::new(Key::PaidPerson, args).into())
        });
        let args = args! { "people" => Value::List(told.collect()) };
        let said = view.reply(turn, Phrase::new(Key::PaidEntered, args));
        Outcome::Recorded.saying([said].into_iter().chain(notices))
    }

    fn buying(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Done {
        let today = self.view().day_of(turn);
        let on = query.entry.when.and_then(|when| date_ahead(when, today));
        let price = query.entry.amount.and_then(whole_cents);
        let groups = self.view().books_asked(speaker, query);
        let ([group], Some(bag_cents), Some(on)) = (groups.as_slice(), price, on) else {
            return self.answered(turn, Key::BuyingWhich.into());
        };
        let group = group.id;
        self.put_in_book(turn, group, Entered::Buying { on, bag_cents });
        let view = self.view();
        let Some(phrase) = view.buying_told(group) else {
            return Outcome::Recorded.silently();
        };
        Outcome::Recorded.saying([view.reply(turn, phrase)])
    }

    /// PICK UP DAY: each who gets plants reads the day and the number.
    fn pick_up(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Done {
        let today = self.view().day_of(turn);
        let on = query.entry.when.and_then(|when| date_ahead(when, today));
        let groups = self.view().books_asked(speaker, query);
        let ([group], Some(on)) = (groups.as_slice(), on) else {
            return self.answered(turn, Key::PickUpWhich.into());
        };
        let (id, name) = (group.id, group.name.clone());
        let shares = self.view().plants_for(group);
        if shares.is_empty() {
            let args = args! { "group" => Value::name(&name) };
            return self.answered(turn, Phrase::new(Key::PickUpNone, args));
        }
        self.put_in_book(turn, id, Entered::PickUp { on });
        let view = self.view();
        let mut notices: Vec<Said> = Vec::new();
        let mut told: Vec<Value> = Vec::new();
        for (person, plants) in &shares {
            let Some(farmer) = view.person(*person) else {
                continue;
            };
            let args = args! { "plants" => *plants, "day" => Value::day_seen(on, today) };
            let phrase = view.signed_with(farmer, Key::PickUpTold, args);
            notices.extend(view.to_other(turn, farmer, phrase));
            let count = args! { "name" => Value::name(farmer.called()), "gaps" => *plants };
            told.push(Phrase::new(Key::GapsPerson, count).into());
        }
        let args = args! {
            "group" => Value::brief(&name),
            "day" => Value::day_seen(on, today),
            "count" => notices.len(),
            "people" => Value::List(told),
        };
        let said = view.reply(turn, Phrase::new(Key::PickUpSet, args));
        Outcome::Recorded.saying([said].into_iter().chain(notices))
    }

    /// STOCK and DISPATCHED of a nursery.
    fn plants(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Done {
        let today = self.view().day_of(turn);
        let groups = self.view().books_asked(speaker, query);
        let count = query.entry.amount.and_then(whole_plants);
        let ([group], Some(plants)) = (groups.as_slice(), count) else {
            return self.answered(turn, Key::StockWhich.into());
        };
        let group = group.id;
        let nursery = speaker.id;
        let clone_name = query.entry.clone_name.clone();
        let entered = if query.topic == Topic::Stock {
            let ready = query.entry.when.and_then(|when| date_ahead(when, today));
            Entered::Stocked {
                nursery,
                clone_name,
                plants,
                ready_on: ready.unwrap_or(today),
            }
        } else {
            Entered::Sent {
                nursery,
                clone_name,
                plants,
                on: self.day_told(turn, query),
            }
        };
        self.put_in_book(turn, group, entered);
        let view = self.view();
        let phrase = view.about_books(speaker, query);
        match phrase {
            Some(phrase) => Outcome::Recorded.saying([view.reply(turn, phrase)]),
            None => Outcome::Recorded.silently(),
        }
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the range is checked in the line above"
)]
fn whole_cents(amount: f64) -> Option<u64> {
    let whole = (amount * 100.0).round();
    (0.0..=limits::CENTS_MAX)
        .contains(&whole)
        .then_some(whole as u64)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the range is checked in the line above"
)]
fn whole_plants(count: f64) -> Option<u32> {
    let whole = (0.0..=limits::PLANTS_MAX).contains(&count) && count.fract() == 0.0;
    whole.then_some(count as u32)
}
