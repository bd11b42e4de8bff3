//! What a leader tells of a member: the member reads it at once, and may contest it for a week.
//!
//! A contested fact is taken back, and the leader and the adviser are told; what is right is asked
//! of the member, as after any wrong read-back.

use budwood_scheduler::{
    Block, BlockId, Event, EventId, Group, Person, PersonId, Source, decide::Draft,
};
use chrono::TimeDelta;

use super::read_back::draft_of;
use crate::{
    args,
    engine::{
        roles::{self, Reach, Verb},
        said::Said,
        turn::{Telling, Turn},
        view::View,
    },
    wording::{Facts, Key, Phrase, Value},
    words::limits,
};

impl View<'_> {
    /// Whose block a fact is of.
    pub(crate) fn owner_of(self, event: &Event) -> Option<PersonId> {
        let block = self.world.directory.block(event.body.block()?)?;
        Some(block.owner)
    }

    /// What somebody put right of somebody else, by its number, as long as that holds.
    pub(crate) fn fix_numbered(self, speaker: &Person, number: u64) -> Option<Event> {
        if !roles::may(speaker.role, Verb::Fix) {
            return None;
        }
        let id = EventId(number);
        let groups: Vec<&Group> = match roles::reach(speaker.role, Verb::Fix) {
            Reach::Advised => self.world.directory.groups_of(speaker.id).collect(),
            Reach::OwnGroup => self.group_of(speaker).into_iter().collect(),
            Reach::Nobody => Vec::new(),
        };
        let mut blocks = groups
            .into_iter()
            .flat_map(|group| self.blocks_of_group(group));
        let holds = |block: &&Block| {
            let state = self.state(block.id);
            state.is_some_and(|state| state.facts.contains(&id))
        };
        // Asked for only where it is: a fact that is gone ends the step.
        blocks.find(holds)?;
        let event = self.event(id)?;
        let is_own = event.by == Some(speaker.id) && event.supersedes.is_some();
        let is_of_others = self.owner_of(&event) != Some(speaker.id);
        (is_own && is_of_others).then_some(event)
    }

    /// What the member reads whom a leader told of.
    pub(crate) fn told_for(
        self,
        turn: &Turn,
        telling: Telling,
        touched: &[(BlockId, Vec<&Draft>)],
    ) -> Option<Said> {
        if telling.source != Source::Leader {
            return None;
        }
        let member = self.person(turn.target)?;
        let today = self.today_of(member.id);
        let facts = touched.iter().filter_map(|(block, drafts)| {
            let name = &self.world.directory.block(*block)?.name;
            Some(of_block(name, drafts, today))
        });
        let args = args! {
            "leader" => Value::name(self.person(turn.speaker)?.called()),
            "facts" => Value::List(facts.collect()),
        };
        self.to_other(
            turn,
            member,
            self.signed_with(member, Key::LeaderTold, args),
        )
    }

    /// What a leader told of the one who texts and may still be contested: of the latest text, if
    /// they told nothing since, and were asked nothing that NO answers.
    pub(crate) fn contestable(self, turn: &Turn) -> Vec<EventId> {
        if turn.target != turn.speaker || self.open_question(&turn.number).is_some() {
            return Vec::new();
        }
        let talk = self.talk(&turn.number);
        let told_at = talk.and_then(|talk| talk.last_at);
        let asked_at = talk
            .and_then(|talk| talk.nudge)
            .filter(|nudge| nudge.task.only_tells())
            .map(|nudge| nudge.at);
        let since = self.now - TimeDelta::days(limits::CONTEST_DAYS);
        let since = [told_at, asked_at]
            .into_iter()
            .flatten()
            .fold(since, Ord::max);
        let blocks = self.world.directory.blocks_of(turn.speaker);
        let facts = blocks.filter_map(|block| self.state(block.id));
        let facts = facts.flat_map(|state| {
            let last = state.facts.iter().rev();
            last.take(limits::FACTS_OF_BLOCK)
        });
        let told: Vec<Event> = facts
            .filter_map(|fact| self.event(*fact))
            .filter(|event| event.source == Source::Leader && event.by != Some(turn.speaker))
            .filter(|event| event.at >= since)
            .collect();
        let latest = told.iter().map(|event| event.message).max().flatten();
        let of_latest = told.iter().filter(|event| event.message == latest);
        let mut found: Vec<EventId> = of_latest.map(|event| event.id).collect();
        found.sort_unstable();
        found
    }

    /// Who is told that facts do not hold any more: of what a leader told, the leader and the
    /// adviser; of what the leader takes back, the member.
    pub(crate) fn told_of_taking_back(self, turn: &Turn, events: &[Event]) -> Vec<Said> {
        let mut said = self.contested(turn, events);
        let is_theirs =
            |event: &Event| event.source == Source::Leader && event.by == Some(turn.speaker);
        let mut owners: Vec<PersonId> = events
            .iter()
            .filter(|event| is_theirs(event))
            .filter_map(|event| self.owner_of(event))
            .filter(|owner| *owner != turn.speaker)
            .collect();
        owners.dedup();
        said.extend(owners.into_iter().filter_map(|owner| {
            let of_owner = |event: &&Event| is_theirs(event) && self.owner_of(event) == Some(owner);
            let member = self.person(owner)?;
            let args = args! {
                "leader" => Value::name(self.person(turn.speaker)?.called()),
                "facts" => self.facts_of(events.iter().filter(of_owner), owner),
            };
            self.to_other(
                turn,
                member,
                self.signed_with(member, Key::LeaderTookBack, args),
            )
        }));
        said
    }

    /// The leader and the adviser are told that a member says it is not so.
    pub(crate) fn contested(self, turn: &Turn, events: &[Event]) -> Vec<Said> {
        let is_contested = |event: &&Event| {
            event.source == Source::Leader
                && event.by != Some(turn.speaker)
                && self.owner_of(event) == Some(turn.speaker)
        };
        let contested = || events.iter().filter(is_contested);
        let teller = contested().find_map(|event| event.by);
        let known = teller.and_then(|leader| self.person(leader));
        let Some((leader, member)) = known.zip(self.person(turn.speaker)) else {
            return Vec::new();
        };
        let args = args! {
            "name" => Value::name(&member.name),
            "group" => Value::name(self.group_name(member.group)),
            "leader" => Value::name(leader.called()),
            "facts" => self.facts_of(contested(), member.id),
        };
        let readers = [Some(leader), self.adviser_of(member)];
        let readers = readers.into_iter().flatten();
        let phrase = Phrase::new(Key::ContestedNotice, args);
        readers
            .filter_map(|reader| self.to_other(turn, reader, phrase.clone()))
            .collect()
    }

    /// Facts with their blocks, as somebody else reads them.
    fn facts_of<'e>(self, events: impl Iterator<Item = &'e Event>, owner: PersonId) -> Value {
        let today = self.today_of(owner);
        let drafts = events.filter_map(|event| draft_of(&self.world.directory, event));
        let facts = drafts.map(|draft| {
            let block = draft.block.clone().unwrap_or_default();
            of_block(&block, &[&draft], today)
        });
        Value::List(facts.collect())
    }

    /// A notice to somebody on another phone; who reads it on this one was answered.
    pub(crate) fn to_other(self, turn: &Turn, reader: &Person, phrase: Phrase) -> Option<Said> {
        let said = self.notice_to(reader, turn.message, phrase);
        said.filter(|said| said.to.number != turn.number)
    }
}

/// "A: weeded, 3 more dead trees".
fn of_block(block: &str, drafts: &[&Draft], today: chrono::NaiveDate) -> Value {
    let facts = Facts {
        block,
        facts: drafts,
        today,
    };
    let args = args! { "block" => Value::name(block), "facts" => facts.clauses() };
    Phrase::new(Key::BlockFacts, args).into()
}
