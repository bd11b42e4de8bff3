//! Groups go to another adviser, with what is open in them.

use budwood_scheduler::{Body, GroupId, Person, PersonId};

use crate::{
    args,
    engine::{said::Said, step::Step, turn::Turn},
    wording::{Key, Phrase, Value},
    words::promise::Promise,
};

impl Step<'_> {
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
