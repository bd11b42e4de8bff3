//! Whom and which group an adviser asks about: theirs only. And the answer about one farmer.

use budwood_parser::{Kind, Query, Topic};
use budwood_scheduler::{BlockState, Group, Person, PersonId, Role};

use super::figures::Names;
use crate::{
    args,
    engine::{turn::Turn, view::View},
    wording::{Key, MemberBlock, MemberGirth, Phrase, Value, member_block},
};

impl<'a> View<'a> {
    /// The group asked about, if it is the adviser's; without a name the only one there is.
    pub(crate) fn group_asked(self, speaker: &Person, query: &Query) -> Option<&'a Group> {
        let mut own = self.groups_of(speaker);
        match &query.group {
            Some(name) => own.find(|group| group.name.eq_ignore_ascii_case(name)),
            None => {
                let first = own.next()?;
                own.next().is_none().then_some(first)
            }
        }
    }

    /// Who of the adviser's is called this: all of one whole name, else all of one first name; of
    /// the group that is named, if one is.
    pub(crate) fn called(
        self,
        adviser: &Person,
        name: &str,
        group: Option<&str>,
    ) -> Vec<&'a Person> {
        let directory = &self.world.directory;
        let groups = self
            .groups_of(adviser)
            .filter(|one| group.is_none_or(|group| one.name.eq_ignore_ascii_case(group)));
        let found: Vec<&Person> = groups
            .flat_map(|group| directory.members(group.id))
            .filter(|person| person.is_named(name))
            .collect();
        let is_whole = |person: &&Person| person.name.eq_ignore_ascii_case(name);
        let whole: Vec<&Person> = found.iter().copied().filter(is_whole).collect();
        if whole.is_empty() { found } else { whole }
    }

    /// Of the leader's own group, or of those that the adviser looks after: who counts on a visit
    /// texts for the farmer. Several when namesakes are not told apart by their group.
    pub(crate) fn members_named(self, turn: &Turn, teller: &Person, name: &str) -> Vec<PersonId> {
        let directory = &self.world.directory;
        if teller.role == Role::Leader {
            let group = teller.group.into_iter();
            let mut members = group.flat_map(|group| directory.members(group));
            let found = members.find(|person| person.is_named(name));
            return found.map(|person| person.id).into_iter().collect();
        }
        let found = self.called(teller, name, None);
        let is_said = |person: &&Person| {
            let group = self.group_name(person.group);
            let mut words = turn.text.split(|c: char| !c.is_alphanumeric());
            words.any(|word| word.eq_ignore_ascii_case(group))
        };
        let said: Vec<&Person> = found.iter().copied().filter(is_said).collect();
        let found = if said.is_empty() { found } else { said };
        found.into_iter().map(|person| person.id).collect()
    }

    /// What is asked of the one who is called so. Namesakes are told apart.
    pub(crate) fn one_called(self, speaker: &Person, name: &str, query: &Query) -> Phrase {
        let found = self.called(speaker, name, query.group.as_deref());
        let person = match found.as_slice() {
            [] => return self.not_yours(speaker),
            [person] => *person,
            several => {
                let several: Vec<PersonId> = several.iter().map(|one| one.id).collect();
                return self.which(speaker, &several);
            }
        };
        let is = |topic: Topic, kind: Kind| query.topic == topic || query.kind == Some(kind);
        if query.topic == Topic::Last {
            self.last_told(person, query)
        } else if query.topic == Topic::Labour {
            self.labour(person)
        } else if is(Topic::Girth, Kind::Girth) {
            self.girths_of(person)
        } else if is(Topic::Ready, Kind::TappingOpened) {
            self.ready_of(person)
        } else {
            self.about(person)
        }
    }

    /// A person's whole name; with the group where the teller has a namesake.
    pub(crate) fn told_apart(self, teller: PersonId, person: &Person) -> String {
        let name = &person.name;
        let found = self
            .person(teller)
            .map(|teller| self.called(teller, name, None));
        if found.is_some_and(|found| found.len() > 1) {
            format!("{name} ({})", self.group_name(person.group))
        } else {
            name.clone()
        }
    }

    /// Which of several namesakes is meant?
    pub(crate) fn which(self, speaker: &Person, several: &[PersonId]) -> Phrase {
        let names = Names::of_all(self, speaker);
        let people = several.iter().map(|one| Value::from(names.shown(*one)));
        let args = args! { "people" => Value::List(people.collect()) };
        Phrase::new(Key::MemberWhich, args)
    }

    /// What the record has of a farmer.
    fn about(self, person: &'a Person) -> Phrase {
        let blocks = self.member_blocks(person);
        let blocks = match blocks.as_slice() {
            [] => Phrase::from(Key::MemberNoBlocks).into(),
            blocks => Value::List(blocks.iter().map(|one| member_block(one).into()).collect()),
        };
        let farmer = self.farmer(person);
        let (key, day) = match (farmer.texted_on, farmer.heard_on()) {
            (Some(texted), _) => (Key::Member, Some(texted)),
            (None, Some(told)) => (Key::MemberTold, Some(told)),
            (None, None) => (Key::MemberNever, None),
        };
        let day = day.map(|day| Value::day_seen(day, farmer.today));
        let args = args! {
            "name" => Value::brief(&person.name),
            "group" => Value::brief(self.group_name(person.group)),
            "blocks" => blocks,
            "day" => day.unwrap_or_else(Value::nothing),
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
                    living: state.map(BlockState::living).unwrap_or_default(),
                    hectares: block.hectares(),
                    due: due.map(|task| (task.kind, task.due)),
                    today,
                    girth: girth(block.id),
                }
            })
            .collect()
    }

    /// No group or farmer of that name is theirs; these are.
    pub(crate) fn not_yours(self, speaker: &Person) -> Phrase {
        let groups = self.groups_of(speaker);
        let groups = groups.map(|group| Value::name(&group.name));
        let args = args! { "groups" => Value::List(groups.collect()) };
        Phrase::new(Key::NotYourGroup, args)
    }
}
