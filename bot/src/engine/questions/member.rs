//! Whom and which group an adviser asks about: theirs only. And the answer about one farmer.

use budwood_parser::Query;
use budwood_scheduler::{Group, Person};

use crate::{
    args,
    engine::view::View,
    wording::{Key, MemberBlock, MemberGirth, Phrase, Value, member_block},
};

impl<'a> View<'a> {
    /// The group asked about, if it is the adviser's; without a name the only one there is.
    pub(crate) fn group_asked(self, speaker: &Person, query: &Query) -> Option<&'a Group> {
        let mut own = self.world.directory.groups_of(speaker.id);
        match &query.group {
            Some(name) => own.find(|group| group.name.eq_ignore_ascii_case(name)),
            None => {
                let first = own.next()?;
                own.next().is_none().then_some(first)
            }
        }
    }

    /// A farmer of the adviser's, by name.
    pub(crate) fn member(self, speaker: &Person, name: &str) -> Phrase {
        let directory = &self.world.directory;
        let found = directory.groups_of(speaker.id).find_map(|group| {
            let mut members = directory.members(group.id);
            Some((group, members.find(|person| person.is_named(name))?))
        });
        let Some((group, person)) = found else {
            return self.not_yours(speaker);
        };
        let blocks = self.member_blocks(person);
        let blocks = match blocks.as_slice() {
            [] => Phrase::from(Key::MemberNoBlocks).into(),
            blocks => Value::List(blocks.iter().map(|one| member_block(one).into()).collect()),
        };
        let heard = self.last_heard(person.id);
        let today = self.today_of(person.id);
        let key = if heard.is_some() {
            Key::Member
        } else {
            Key::MemberNever
        };
        let args = args! {
            "name" => Value::brief(&person.name),
            "group" => Value::brief(&group.name),
            "blocks" => blocks,
            "day" => heard.map_or_else(Value::nothing, |day| Value::day_past(day, today)),
        };
        Phrase::new(key, args)
    }

    fn member_blocks(self, person: &Person) -> Vec<MemberBlock> {
        let today = self.today_of(person.id);
        let neighbours = self
            .group_of(person)
            .and_then(|group| self.neighbours(group));
        let girth = |block| {
            let neighbours = neighbours.as_ref()?;
            let ready = self.ready_between(neighbours, block, today);
            let girth = self.member_girth(neighbours, block)?;
            Some(MemberGirth { ready, ..girth })
        };
        let blocks = self.world.directory.blocks_of(person.id);
        blocks
            .map(|block| {
                let state = self.state(block.id);
                let jobs = self.tasks_of(block.id, today);
                let due = jobs
                    .iter()
                    .filter(|task| task.due <= today)
                    .min_by_key(|task| (task.urgency(), task.due))
                    .or_else(|| jobs.iter().min_by_key(|task| task.due));
                MemberBlock {
                    name: block.name.clone(),
                    planted_on: state.and_then(|state| state.planted_on()),
                    planted: state.map_or(0, |state| state.planted()),
                    alive: state.map_or(0, |state| state.alive()),
                    hectares: block.hectares(),
                    due: due.map(|task| (task.kind, task.due)),
                    girth: girth(block.id),
                }
            })
            .collect()
    }

    /// No group or farmer of that name is theirs; these are.
    pub(crate) fn not_yours(self, speaker: &Person) -> Phrase {
        let groups = self.world.directory.groups_of(speaker.id);
        let groups = groups.map(|group| Value::name(&group.name));
        let args = args! { "groups" => Value::List(groups.collect()) };
        Phrase::new(Key::NotYourGroup, args)
    }
}
