//! Land and people pass from one to another, after the code. Both sides read it.

use std::collections::BTreeMap;

use budwood_parser::Effect;
use budwood_scheduler::{
    Block, BlockId, Body, Consent, Passed, Person, PersonId, PersonLink, Phone, Reason, Role,
    Source, Trees,
    land::enrolment::{Enrolment, Known},
};

use crate::{
    args,
    engine::{
        questions::passing::ending,
        said::Said,
        step::Step,
        turn::{Telling, Turn},
    },
    wording::{Args, Key, Phrase, Value},
    words::passing::Passing,
};

impl Step<'_> {
    /// Lets it pass, and tells those who have a part in it.
    pub(crate) fn pass(&mut self, turn: &Turn, speaker: &Person, passing: Passing) -> Vec<Said> {
        match passing {
            Passing::Owner { block, to } => self.pass_block(turn, block, to),
            Passing::Part { block, to, trees } => self.pass_part(turn, (block, to), trees),
            Passing::Join { person, group } => {
                self.let_pass(turn, Passed::Joined { person, group });
                let name = self.view().person(person).map(|one| one.name.clone());
                vec![self.joined_told(turn, name.unwrap_or_default(), group)]
            }
            Passing::New {
                name,
                number,
                group,
            } => {
                // Since it was asked somebody may have come by it.
                if self.view().is_anybodys(&number) {
                    return Vec::new();
                }
                let person = self.new_person(speaker, &name, group);
                self.use_phone(person, &number, None);
                self.let_pass(turn, Passed::Joined { person, group });
                vec![self.joined_told(turn, name, group)]
            }
            Passing::Leave { person } => self.leave_group(turn, person),
            Passing::Helper {
                person,
                name,
                number,
            } => self.invite_helper(turn, person, name, &number),
        }
    }

    fn let_pass(&mut self, turn: &Turn, passed: Passed) {
        let telling = self.view().telling(turn, turn.speaker);
        self.record(telling, None, Body::Passed(passed));
    }

    fn pass_block(&mut self, turn: &Turn, block: BlockId, to: PersonId) -> Vec<Said> {
        let Some(known) = self.world.directory.block(block).cloned() else {
            return Vec::new();
        };
        let from = known.owner;
        self.let_pass(turn, Passed::Owner { block, from, to });
        self.end_talk_of(from, block);
        let view = self.view();
        let name = view.world.directory.block(block).map(|block| &block.name);
        let trees = view.state(block).map_or(0, |state| state.alive());
        let args = self.args_of((from, to), name.map_or("", |name| name), trees);
        let said = view.reply(turn, Phrase::new(Key::OwnerChanged, args.clone()));
        let mut told = vec![said];
        told.extend(self.tell_owner(turn, to, Key::OwnerToldNew, args.clone()));
        // Who had it knows it by the name that it had.
        let args = self.args_of((from, to), &known.name, trees);
        told.extend(self.tell_owner(turn, from, Key::OwnerToldOld, args));
        told
    }

    /// Nothing that was asked about a block is answered any more by whose it was.
    fn end_talk_of(&mut self, person: PersonId, block: BlockId) {
        let numbers = self.world.directory.numbers_of(person);
        let numbers: Vec<String> = numbers.map(str::to_owned).collect();
        for number in numbers {
            let talk = self.talk(&number);
            talk.nudge = talk.nudge.filter(|nudge| nudge.block != block);
            talk.open = None;
            talk.last = Vec::new();
        }
    }

    fn args_of(&self, (from, to): (PersonId, PersonId), block: &str, trees: u32) -> Args {
        let view = self.view();
        let name = |person| view.person(person).map_or("", |person| &person.name);
        args! {
            "block" => Value::name(block),
            "old" => Value::name(name(from)),
            "name" => Value::name(name(to)),
            "trees" => trees,
        }
    }

    /// Who has agreed to texts reads it; a house that mourns does not.
    fn tell_owner(&self, turn: &Turn, owner: PersonId, key: Key, args: Args) -> Option<Said> {
        let view = self.view();
        let owner = view.person(owner)?;
        let mourns = owner
            .hold
            .as_ref()
            .is_some_and(|hold| hold.reason == Reason::Grief);
        if mourns || !owner.consent.is_given() {
            return None;
        }
        let mut all = args;
        all.extend(view.names_in(owner));
        view.to_other(turn, owner, Phrase::new(key, all))
    }

    /// A part of a block becomes a block of its own, with its part of the land.
    fn pass_part(
        &mut self,
        turn: &Turn,
        (block, to): (BlockId, PersonId),
        living: u32,
    ) -> Vec<Said> {
        let view = self.view();
        let known = view.world.directory.block(block).cloned();
        let state = view.state(block).cloned().unwrap_or_default();
        // Since it was asked some may have died.
        let (Some(known), Some(trees)) = (known, state.trees_that_go(living)) else {
            return vec![view.reply(turn, Key::PartWhich)];
        };
        let from = known.owner;
        let into = self.new_block(&known, to, &trees);
        let (gave, got) = (trees.clone(), trees);
        self.let_pass(
            turn,
            Passed::Gave {
                block,
                into,
                trees: gave,
            },
        );
        self.let_pass(
            turn,
            Passed::Got {
                block: into,
                from: block,
                trees: got,
            },
        );
        // Work that was done on all of it was done there too.
        let rounds = state
            .last
            .iter()
            .filter(|(kind, _)| matches!(kind.effect(), Effect::Round | Effect::Fed));
        let last: BTreeMap<_, _> = rounds.map(|(kind, count)| (*kind, count.on)).collect();
        let census = state
            .girths
            .last()
            .filter(|census| !census.values_cm.is_empty());
        let enrolment = Enrolment {
            block: into,
            on: self.view().today_of(to),
            known: Known {
                last,
                girths: census.map(|census| (census.on, census.values_cm.clone())),
                ..Known::default()
            },
        };
        let telling = Telling {
            source: Source::Sheet,
            ..self.view().telling(turn, turn.speaker)
        };
        for fact in enrolment.facts() {
            self.record(telling, None, fact);
        }
        let view = self.view();
        let name = view.world.directory.block(into).map(|block| &block.name);
        let mut args = self.args_of((from, to), name.map_or("", |name| name), living);
        let left = view.state(block).map_or(0, |state| state.alive());
        args.extend(args! { "alive" => left });
        let said = view.reply(turn, Phrase::new(Key::PartMade, args.clone()));
        let mut told = vec![said];
        if from != to {
            told.extend(self.tell_owner(turn, to, Key::OwnerToldNew, args.clone()));
            let of_old = args! { "block" => Value::name(&known.name) };
            args.retain(|(key, _)| *key != "block");
            args.extend(of_old);
            told.extend(self.tell_owner(turn, from, Key::PartTold, args));
        }
        told
    }

    /// A new block beside the one that its trees come from; the land is divided as the trees are.
    fn new_block(&mut self, known: &Block, to: PersonId, trees: &[Trees]) -> BlockId {
        let view = self.view();
        let last = view.world.directory.blocks().map(|block| block.id.0).max();
        let id = BlockId(last.unwrap_or(0).saturating_add(1));
        let name = view.name_with(to, &known.name);
        let sum = |all: &[Trees]| -> f64 { all.iter().map(|one| f64::from(one.planted)).sum() };
        let state = view.state(known.id).cloned().unwrap_or_default();
        let all = f64::from(state.planted()) + f64::from(state.replaced());
        let share = if all > 0.0 { sum(trees) / all } else { 0.0 };
        let mut here = known.clone();
        let mut there = Block {
            id,
            owner: to,
            name,
            ..known.clone()
        };
        if let Some(area) = known.area {
            let part = (area.value * share * 100.0).round() / 100.0;
            if let Some(own) = &mut there.area {
                own.value = part;
            }
            if let Some(own) = &mut here.area {
                own.value = area.value - part;
            }
        }
        self.put_block(here);
        self.put_block(there);
        id
    }

    fn new_person(
        &mut self,
        speaker: &Person,
        name: &str,
        group: budwood_scheduler::GroupId,
    ) -> PersonId {
        let people = self.world.directory.persons();
        let last = people.map(|person| person.id.0).max();
        let id = PersonId(last.unwrap_or(0).saturating_add(1));
        self.put_person(Person {
            id,
            name: name.to_owned(),
            role: Role::Farmer,
            language: speaker.language.clone(),
            group: Some(group),
            consent: Consent::Unknown,
            sharing: Consent::Unknown,
            erased: false,
            hold: None,
        });
        id
    }

    fn joined_told(&self, turn: &Turn, name: String, group: budwood_scheduler::GroupId) -> Said {
        let view = self.view();
        let args = args! {
            "name" => Value::name(&name),
            "group" => Value::brief(view.group_name(Some(group))),
        };
        view.reply(turn, Phrase::new(Key::Joined, args))
    }

    /// A person uses a phone from now on, or somebody else does for them.
    pub(crate) fn use_phone(
        &mut self,
        person: PersonId,
        number: &str,
        helper: Option<budwood_scheduler::Helper>,
    ) {
        let known = self.world.directory.phone(number).cloned();
        let mut phone = known.unwrap_or_else(|| Phone {
            number: number.to_owned(),
            links: Vec::new(),
            lost_on: None,
        });
        phone.lost_on = None;
        phone.links.push(PersonLink {
            person,
            since: self.view().today_of(person),
            until: None,
            helper,
        });
        self.put_phone(phone);
    }

    fn leave_group(&mut self, turn: &Turn, person: PersonId) -> Vec<Said> {
        let view = self.view();
        let Some(leaver) = view.person(person).cloned() else {
            return Vec::new();
        };
        let Some(group) = leaver.group else {
            return Vec::new();
        };
        // Made first: afterwards nobody knows who signs.
        let args = args! { "group" => Value::brief(view.group_name(Some(group))) };
        let notice = self.tell_owner(turn, person, Key::LeftTold, args);
        let args = args! { "name" => Value::name(&leaver.name) };
        let said = view.reply(turn, Phrase::new(Key::Left, args));
        let numbers = view.world.directory.numbers_of(person);
        let numbers: Vec<String> = numbers.map(str::to_owned).collect();
        for number in numbers {
            self.cancel_waiting(&number);
            self.talk(&number).nudge = None;
        }
        self.let_pass(turn, Passed::Left { person, group });
        std::iter::once(said).chain(notice).collect()
    }

    /// Who does the work is asked on their own phone; nothing goes there before a yes.
    fn invite_helper(
        &mut self,
        turn: &Turn,
        person: PersonId,
        name: String,
        number: &str,
    ) -> Vec<Said> {
        if self.view().is_anybodys(number) {
            return Vec::new();
        }
        let helper = budwood_scheduler::Helper {
            name: name.clone(),
            agreed_on: None,
        };
        self.use_phone(person, number, Some(helper));
        let view = self.view();
        let owner = view.person(person).map_or("", |owner| &owner.name);
        let args = args! {
            "text" => Value::name(&name),
            "name" => Value::name(owner),
            "digits" => ending(number),
        };
        let said = view.reply(turn, Phrase::new(Key::HelperAsked, args));
        let invited = view.helper_invited(person, &name);
        let there = view.to_number(turn.message, (number, person), invited);
        vec![said, there]
    }
}
