//! ASK: after a storm, a fire, a flood or a drought everybody in a group is asked what it did; and
//! leaders are asked about who is silent. Who would be asked, and what is shown first.

use budwood_parser::{Cause, Known, Names, Query, Sender, Taken};
use budwood_scheduler::{
    Group, GroupId, Person, PersonId, Role,
    figures::{HARM_DAYS, QUIET_DAYS, Survey, Why},
};
use chrono::TimeDelta;

use super::{announced::Reached, asked::Asked, codes::Large, figures::Names as Shown};
use crate::{
    args,
    engine::{turn::Turn, view::View},
    wording::{Key, Phrase, Value},
    words::message::{Audience, Deed},
};

/// What a whole group can be asked about.
const ASKED_ABOUT: [Cause; 4] = [Cause::Wind, Cause::Fire, Cause::Flood, Cause::Drought];

/// A leader, and of whom in the own group nothing is heard.
pub(crate) struct Leader {
    pub(crate) leader: PersonId,
    pub(crate) silent: Vec<PersonId>,
}

impl<'a> View<'a> {
    /// What is asked of whom; or what is said instead.
    pub(crate) fn asking(
        self,
        turn: &Turn,
        speaker: &Person,
        query: &Query,
    ) -> Result<Large, Phrase> {
        let Some(cause) = self.cause_named(&turn.text) else {
            return self.asking_leaders(speaker);
        };
        let Some(group) = self.group_asked(speaker, query) else {
            return Err(self.not_yours(speaker));
        };
        let reached = self.asked_about_harm(group.id);
        if reached.phones.is_empty() {
            let args = args! { "name" => Value::name(&group.name) };
            return Err(Phrase::new(Key::AnnounceNobody, args));
        }
        let args = args! {
            "phones" => reached.phones.len(),
            "group" => Value::name(&group.name),
            "cause" => cause,
        };
        Ok(Large {
            deed: Deed::AskHarm {
                group: group.id,
                cause,
            },
            phrase: Phrase::new(Key::HarmAsk, args),
        })
    }

    fn asking_leaders(self, speaker: &Person) -> Result<Large, Phrase> {
        let leaders = self.leaders_to_ask(speaker);
        if leaders.is_empty() {
            return Err(Key::LeadersNone.into());
        }
        let silent = leaders.iter().flat_map(|one| &one.silent);
        let names = Shown::of_all(self, speaker);
        let people = silent.map(|person| Value::name(&names.shown(*person)));
        let args = args! {
            "leaders" => leaders.len(),
            "people" => Value::List(people.collect()),
        };
        Ok(Large {
            deed: Deed::AskLeaders,
            phrase: Phrase::new(Key::LeadersAsk, args),
        })
    }

    /// What a text says trees were hurt by, of what a group is asked about.
    pub(crate) fn cause_named(self, text: &str) -> Option<Cause> {
        let none: &[&Names] = &[];
        let known = Known {
            languages: &[],
            blocks: &[],
            groups: &[],
            members: &[],
            rolls: none,
            sender: Sender::Farmer,
        };
        let reading = self.setup.reader.read(text, &known);
        let causes = reading.words.iter().filter_map(|word| {
            if let Taken::Cause(cause) = word.taken {
                Some(cause)
            } else {
                None
            }
        });
        let mut asked = causes.filter(|cause| ASKED_ABOUT.contains(cause));
        asked.next()
    }

    /// Phones of those in a group who have trees, with whom each is for.
    pub(crate) fn asked_about_harm(self, group: GroupId) -> Reached<'a> {
        let mut reached = self.reached(Audience::Group(group));
        let all = reached.phones.len();
        reached.phones.retain(|(number, _)| {
            let people = self.everyone_on(number);
            people.into_iter().any(|person| self.has_trees(person))
        });
        reached.left_out += all - reached.phones.len();
        reached
    }

    fn has_trees(self, person: PersonId) -> bool {
        let mut blocks = self.world.directory.blocks_of(person);
        blocks.any(|block| self.state(block.id).is_some_and(|state| state.alive() > 0))
    }

    /// Everybody with trees on phones that are asked: who shares one answers for each.
    pub(crate) fn people_asked(self, reached: &Reached<'_>, group: GroupId) -> Vec<PersonId> {
        let on_phones = reached.phones.iter();
        let on_phones = on_phones.flat_map(|(number, _)| self.everyone_on(number));
        let mut people: Vec<PersonId> = Vec::new();
        for id in on_phones {
            let is_of_group = self.person(id).is_some_and(|one| one.group == Some(group));
            if is_of_group && self.has_trees(id) && !people.contains(&id) {
                people.push(id);
            }
        }
        people
    }

    /// The leaders who can be asked about somebody silent of their own group.
    pub(crate) fn leaders_to_ask(self, adviser: &Person) -> Vec<Leader> {
        let groups = self.groups_of(adviser);
        let asked = groups.filter_map(|group| {
            let silent = self.table(group).silent().value.into_iter();
            let silent = silent.filter(|one| matches!(one.why, Why::Unknown | Why::PhoneFails));
            let mut members = self.world.directory.members(group.id);
            let leader =
                members.find(|one| one.role == Role::Leader && self.announced_on(one).is_some())?;
            let silent = silent.map(|one| one.person);
            let silent: Vec<PersonId> = silent.filter(|one| *one != leader.id).collect();
            (!silent.is_empty()).then_some(Leader {
                leader: leader.id,
                silent,
            })
        });
        asked.collect()
    }

    /// What a leader reads of the silent.
    pub(crate) fn leader_asked(self, leader: &Person, silent: &[PersonId]) -> Phrase {
        let group = self.group_of(leader);
        let names = Shown::of(self, group);
        let people = silent
            .iter()
            .map(|person| Value::name(&names.shown(*person)));
        let args = args! {
            "people" => Value::List(people.collect()),
            "limit" => QUIET_DAYS,
        };
        self.signed_with(leader, Key::LeaderAsked, args)
    }

    /// What came of it when a group was asked about harm lately; none when it was not.
    pub(super) fn survey_told(self, asked: &Asked<'a, '_>, cause: Cause) -> Option<Phrase> {
        let survey = self.survey_of(asked.group, asked, cause)?;
        let hurt = survey.hurt.iter().map(|(person, trees)| {
            let name = Value::name(&asked.names.shown(*person));
            Phrase::new(Key::GapsPerson, args! { "name" => name, "gaps" => *trees }).into()
        });
        let silent = survey.silent.iter().map(|person| {
            let name = Value::name(&asked.names.shown(*person));
            Phrase::new(Key::HarmSilent, args! { "name" => name }).into()
        });
        let trees = survey.hurt.iter().map(|(_, trees)| *trees);
        let mut args = args! {
            "cause" => cause,
            "group" => Value::brief(&asked.group.name),
            "day" => Value::day_seen(survey.on, self.today_in(asked.group)),
            "answered" => survey.asked - survey.silent.len(),
            "of" => survey.asked,
            "hurt" => survey.hurt.len(),
            "trees" => trees.fold(0, u32::saturating_add),
        };
        let people: Vec<Value> = hurt.chain(silent).collect();
        if people.is_empty() {
            return Some(Phrase::new(Key::HarmAskedNone, args));
        }
        args.extend(args! { "people" => Value::List(people) });
        Some(Phrase::new(Key::HarmAsked, args))
    }

    fn survey_of(self, group: &Group, asked: &Asked<'a, '_>, cause: Cause) -> Option<Survey> {
        let since = self.today_in(group) - TimeDelta::days(HARM_DAYS);
        let survey = asked.table.survey(&group.book, cause).value?;
        (survey.on >= since).then_some(survey)
    }
}
