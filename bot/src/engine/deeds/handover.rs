//! A text that waits goes to a colleague, and whole groups do with what is open in them.

use budwood_parser::Query;
use budwood_scheduler::{Body, GroupId, Person, PersonId};
use chrono::TimeDelta;

use crate::{
    args,
    engine::{
        outcome::Outcome,
        said::{Done, Said},
        step::Step,
        turn::Turn,
    },
    wording::{Key, Phrase, Value},
    words::{limits, matter::Matter, promise::Promise},
};

impl Step<'_> {
    /// P and a name: what was read last waits for a colleague from now on. It is somebody's text,
    /// so it needs the code of a visit.
    pub(crate) fn pass_on(&mut self, turn: &Turn, adviser: &Person, query: &Query) -> Done {
        let view = self.view();
        let to = match view.colleague(adviser, query) {
            Ok(to) => to.clone(),
            Err(instead) => return Outcome::Answered.saying([view.reply(turn, instead)]),
        };
        let Some(read) = view.read_last(adviser).cloned() else {
            return Outcome::Answered.saying([view.reply(turn, Key::PassNone)]);
        };
        if !view.is_on_visit(&turn.number) {
            let visit = view.visit(turn);
            return self.ask_code(turn, visit);
        }
        self.put_matter(Matter {
            passed_to: Some(to.id),
            read_at: None,
            ..read.clone()
        });
        self.forget_shown(adviser.id);
        let view = self.view();
        let sender = view.person(read.person);
        let args = args! {
            "name" => Value::name(sender.map_or("", |sender| &sender.name)),
            "group" => Value::name(view.group_name(sender.and_then(|sender| sender.group))),
            "adviser" => Value::name(adviser.called()),
        };
        let notice = view.notice_to(&to, turn.message, Phrase::new(Key::PassedNotice, args));
        let args = args! {
            "adviser" => Value::name(to.called()),
            "name" => Value::name(sender.map_or("", |sender| &sender.name)),
            "count" => view.waiting_for(adviser).len(),
        };
        let said = view.reply(turn, Phrase::new(Key::Passed, args));
        Outcome::Passed.saying(std::iter::once(said).chain(notice))
    }

    /// What was shown to somebody before is not what the next answer is about.
    pub(super) fn forget_shown(&mut self, reader: PersonId) {
        let view = self.view();
        let waiting = view.person(reader).map(|one| view.waiting_for(one));
        let waiting: Vec<Matter> = waiting.unwrap_or_default().into_iter().cloned().collect();
        for matter in waiting {
            if let Some(at) = matter.read_at {
                let long_ago = at - TimeDelta::hours(limits::READ_HOURS);
                self.put_matter(Matter {
                    read_at: Some(long_ago),
                    ..matter
                });
            }
        }
    }

    /// Groups are another adviser's, with the texts that wait and what was promised there. Both read
    /// it.
    pub(crate) fn hand_over(
        &mut self,
        turn: &Turn,
        from: &Person,
        to: PersonId,
        groups: &[GroupId],
    ) -> Vec<Said> {
        let view = self.view();
        let Some(reader) = view.person(to).cloned() else {
            return Vec::new();
        };
        let directory = &view.world.directory;
        let is_own = |group: &&GroupId| {
            let group = directory.group(**group);
            group.is_some_and(|group| group.adviser == Some(from.id))
        };
        let groups: Vec<GroupId> = groups.iter().filter(is_own).copied().collect();
        let open = view.open_in(from, &groups);
        let mut args = open.clone();
        args.extend(args! { "adviser" => Value::name(from.called()) });
        let notice = view.notice_to(&reader, turn.message, Phrase::new(Key::HandedNotice, args));
        let mut args = open;
        args.extend(args! { "name" => Value::name(&reader.name) });
        let said = view.reply(turn, Phrase::new(Key::Handed, args));
        let promises = view.promises_of(from).into_iter();
        let promises = promises.filter(|promise| view.is_promised_in(promise, &groups));
        let promises: Vec<Promise> = promises.cloned().collect();
        let telling = view.telling(turn, turn.speaker);
        for group in groups {
            self.record(telling, None, Body::HandedOver { group, to });
        }
        for promise in promises {
            let number = self.view().next_promise(&reader);
            self.put_promise(Promise {
                by: to,
                number,
                ..promise
            });
        }
        std::iter::once(said).chain(notice).collect()
    }
}
