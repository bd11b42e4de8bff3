//! What taking back the last list would do: what goes as it was before, and what stays, because
//! others have built on it since.

use std::{
    collections::{BTreeMap, BTreeSet},
    fmt,
};

use budwood_scheduler::{
    Block, BlockId, Body, Consent, Entered, Event, EventId, Group, GroupId, Passed, Person,
    PersonId, Phone, Role,
};

use crate::{
    engine::{questions::address::last_digits, view::View},
    words::{erasure, limits, load::Load, message::Audience},
};

/// How it is known that somebody agrees no more.
const HOW: &str = "list taken back";

const CHANGED: &str = "the record was changed since";
const TOLD: &str = "something was told of it since";
const TEXTED: &str = "texts went to or came from that phone since";

/// What is put back, and what stays.
#[derive(Debug, Default)]
pub(crate) struct Unload {
    /// Facts that supersede those of the list.
    pub(crate) facts: Vec<(EventId, Body)>,
    /// Groups as they are then.
    pub(crate) groups: Vec<Group>,
    /// People as they are then.
    pub(crate) persons: Vec<Person>,
    /// Phones as they are then.
    pub(crate) phones: Vec<Phone>,
    /// Numbers that nobody has any more.
    pub(crate) gone_phones: Vec<String>,
    /// Blocks as they are then.
    pub(crate) blocks: Vec<Block>,
    /// How many blocks go, those of people who go among them.
    blocks_gone: usize,
    /// What stays, and why.
    stays: Vec<String>,
}

/// Whom and what the facts since the list are about.
#[derive(Default)]
struct Since {
    persons: BTreeSet<PersonId>,
    blocks: BTreeSet<BlockId>,
}

impl Unload {
    /// Whether there is anything to take back.
    pub(crate) const fn is_empty(&self) -> bool {
        self.facts.is_empty()
            && self.groups.is_empty()
            && self.persons.is_empty()
            && self.phones.is_empty()
            && self.gone_phones.is_empty()
            && self.blocks.is_empty()
    }
}

impl fmt::Display for Unload {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "taken back: groups {}", self.groups.len())?;
        writeln!(f, "taken back: people {}", self.persons.len())?;
        let phones = self.phones.len() + self.gone_phones.len();
        writeln!(f, "taken back: phones {phones}")?;
        writeln!(f, "taken back: blocks {}", self.blocks_gone)?;
        writeln!(f, "taken back: facts {}", self.facts.len())?;
        for stays in self.stays.iter().take(limits::UNLOAD_SHOWN_MAX) {
            writeln!(f, "stays: {stays}")?;
        }
        let hidden = self.stays.len().saturating_sub(limits::UNLOAD_SHOWN_MAX);
        if hidden > 0 {
            writeln!(f, "and {hidden} more stay")?;
        }
        Ok(())
    }
}

impl View<'_> {
    /// What taking the last list back would do, or why that cannot be.
    pub(crate) fn plan_unload(self) -> Result<Unload, String> {
        let load = self.world.load.as_ref().filter(|load| !load.is_empty());
        let load = load.ok_or("there is no list that could be taken back")?;
        let new_facts = self.world.next_event().0.saturating_sub(load.next.0);
        if new_facts > limits::UNLOAD_FACTS_MAX {
            return Err(format!(
                "{new_facts} facts have come since that list: too much stands on it; put single \
                 rows right instead"
            ));
        }
        let made = load.persons.iter().filter(|was| was.before.is_none());
        let blocks = load.blocks.iter().filter(|was| was.before.is_none());
        let mut back = Back {
            view: self,
            load,
            since: self.since(load),
            made: made.map(|was| was.after.id).collect(),
            made_blocks: blocks.map(|was| (was.after.id, &was.after)).collect(),
            gone: BTreeSet::new(),
            unload: Unload::default(),
        };
        back.people_gone();
        back.persons();
        back.groups();
        back.phones();
        let blocks = back.blocks();
        back.unload.blocks_gone = blocks.len();
        back.facts(&blocks);
        Ok(back.unload)
    }

    fn since(self, load: &Load) -> Since {
        let mut since = Since::default();
        let ids = (load.next.0..self.world.next_event().0).map(EventId);
        for event in ids.filter_map(|id| self.event(id)) {
            since.persons.extend(event.by);
            since.persons.extend(people_of(&event));
            since.blocks.extend(event.body.block());
        }
        since
    }

    /// Whether a text of theirs waits, or somebody owes them something.
    fn is_waited_for(self, id: PersonId) -> bool {
        let mut matters = self.world.matters.all();
        let mut promises = self.world.promises.values();
        matters.any(|matter| matter.person == id || matter.passed_to == Some(id))
            || promises.any(|promise| promise.by == id || promise.to == Audience::Person(id))
    }
}

/// A list on its way back.
struct Back<'a> {
    view: View<'a>,
    load: &'a Load,
    since: Since,
    /// Whom the list made.
    made: BTreeSet<PersonId>,
    /// Which blocks the list made, and how.
    made_blocks: BTreeMap<BlockId, &'a Block>,
    /// Those of them who go.
    gone: BTreeSet<PersonId>,
    unload: Unload,
}

impl Back<'_> {
    fn stays(&mut self, what: &str, why: &str) {
        self.unload.stays.push(format!("{what}: {why}"));
    }

    /// Finds out who of those whom the list made can go.
    fn people_gone(&mut self) {
        let load = self.load;
        let mut numbers: BTreeMap<PersonId, Vec<&str>> = BTreeMap::new();
        for phone in load.phones.iter().filter(|was| was.before.is_none()) {
            for link in &phone.after.links {
                let known = numbers.entry(link.person).or_default();
                known.push(&phone.after.number);
            }
        }
        let listed: BTreeSet<GroupId> = load.groups.iter().map(|was| was.after.id).collect();
        for was in load.persons.iter().filter(|was| was.before.is_none()) {
            let numbers = numbers.get(&was.after.id).map_or(&[][..], Vec::as_slice);
            match self.why_person_stays(&was.after, numbers, &listed) {
                None => {
                    self.gone.insert(was.after.id);
                }
                Some(why) => self.stays(&was.after.name, why),
            }
        }
    }

    fn why_person_stays(
        &self,
        person: &Person,
        numbers: &[&str],
        listed: &BTreeSet<GroupId>,
    ) -> Option<&'static str> {
        let (id, view) = (person.id, self.view);
        if view.person(id) != Some(person) {
            return Some(CHANGED);
        }
        if self.since.persons.contains(&id) || view.is_waited_for(id) {
            return Some(TOLD);
        }
        if numbers.iter().any(|number| view.talk(number).is_some()) {
            return Some(TEXTED);
        }
        let directory = &view.world.directory;
        for block in directory.blocks_of(id) {
            if self.made_blocks.get(&block.id) != Some(&block) {
                return Some("they have a block that the list did not make like that");
            }
            if self.since.blocks.contains(&block.id) {
                return Some(TOLD);
            }
        }
        let advises = directory
            .groups_of(id)
            .any(|group| !listed.contains(&group.id));
        advises.then_some("they look after a group that the list did not name")
    }

    /// People as they were; whom the list made leaves an empty record, so that nobody else ever
    /// gets the same id.
    fn persons(&mut self) {
        for was in &self.load.persons {
            let id = was.after.id;
            match &was.before {
                None if self.gone.contains(&id) => {
                    self.unload.persons.push(nobody(id, &was.after));
                }
                None => {}
                Some(before) if self.view.person(id) == Some(&was.after) => {
                    self.unload.persons.push(before.clone());
                }
                Some(before) => self.stays(&before.name, CHANGED),
            }
        }
    }

    /// Groups as they were, but for their books. One that the list made stays, without anybody: its
    /// name may stand on paper.
    fn groups(&mut self) {
        for was in &self.load.groups {
            let Some(now) = self.view.world.directory.group(was.after.id) else {
                continue;
            };
            let listed = Group {
                book: now.book.clone(),
                ..was.after.clone()
            };
            let what = format!("group {}", now.name);
            let mut group = match &was.before {
                Some(before) if *now == listed => before.clone(),
                Some(_) => {
                    self.stays(&what, CHANGED);
                    now.clone()
                }
                None => {
                    self.stays(&what, "a group is not taken away, only what is in it");
                    now.clone()
                }
            };
            group.book = now.book.clone();
            group.adviser = group.adviser.filter(|adviser| !self.gone.contains(adviser));
            if group != *now {
                self.unload.groups.push(group);
            }
        }
    }

    /// Phones without the people whom the list linked with them.
    fn phones(&mut self) {
        for was in &self.load.phones {
            let Some(now) = self.view.world.directory.phone(&was.after.number) else {
                continue;
            };
            let before = was.before.iter().flat_map(|phone| &phone.links);
            let before: BTreeSet<PersonId> = before.map(|link| link.person).collect();
            let is_used = was.before.is_none() && self.view.talk(&now.number).is_some();
            let mut phone = now.clone();
            phone.links.retain(|link| {
                let person = &link.person;
                let goes = self.gone.contains(person) || !(self.made.contains(person) || is_used);
                before.contains(person) || !goes
            });
            if phone.links.is_empty() {
                self.unload.gone_phones.push(phone.number);
            } else if phone != *now {
                self.unload.phones.push(phone);
            } else if is_used {
                let what = format!("phone …{}", last_digits(&phone.number));
                self.stays(&what, TEXTED);
            }
        }
    }

    /// Blocks as they were. One that the list gave to somebody who was there before goes to nobody,
    /// so that its id is never given out again. Gives those that go back.
    fn blocks(&mut self) -> BTreeSet<BlockId> {
        let mut back = BTreeSet::new();
        let mut heir = self.gone.first().copied();
        for was in &self.load.blocks {
            let Some(now) = self.view.world.directory.block(was.after.id) else {
                continue;
            };
            if self.gone.contains(&now.owner) {
                back.insert(now.id);
                continue;
            }
            // What was made for somebody who stays, stays with them.
            if was.before.is_none() && self.made.contains(&now.owner) {
                continue;
            }
            let is_told = self.since.blocks.contains(&now.id);
            if *now != was.after || is_told {
                let what = self.name_of(now.id);
                self.stays(&what, if is_told { TOLD } else { CHANGED });
                continue;
            }
            back.insert(now.id);
            let block = match &was.before {
                Some(before) => before.clone(),
                None => Block {
                    owner: *heir.get_or_insert_with(|| self.new_nobody()),
                    ..now.clone()
                },
            };
            self.unload.blocks.push(block);
        }
        back
    }

    /// An empty record to own what was given to somebody who was there before.
    fn new_nobody(&mut self) -> PersonId {
        let persons = self.view.world.directory.persons();
        let last = persons.map(|person| person.id).max();
        let id = PersonId(last.map_or(1, |last| last.0.saturating_add(1)));
        let like = Person {
            id,
            name: String::new(),
            role: Role::Farmer,
            language: String::new(),
            group: None,
            consent: Consent::Unknown,
            sharing: Consent::Unknown,
            erased: true,
            hold: None,
        };
        self.unload.persons.push(nobody(id, &like));
        id
    }

    /// What takes the facts of the list back.
    fn facts(&mut self, blocks: &BTreeSet<BlockId>) {
        let people: BTreeSet<PersonId> =
            self.unload.persons.iter().map(|person| person.id).collect();
        for id in &self.load.facts {
            let Some(event) = self.view.event(*id) else {
                continue;
            };
            if let Some(block) = event.body.block() {
                if blocks.contains(&block) || self.is_alone_on(block) {
                    self.unload.facts.push((*id, Body::TakenBack { block }));
                } else {
                    let what = self.name_of(block);
                    self.stays(&what, "what the list told of it stays with it");
                }
            } else if let Body::ConsentGiven {
                person, purpose, ..
            } = event.body
            {
                if people.contains(&person) {
                    let withdrawn = Body::ConsentWithdrawn {
                        person,
                        purpose,
                        how: HOW.to_owned(),
                    };
                    self.unload.facts.push((*id, withdrawn));
                }
            } else if let Body::Entered { group, .. } = event.body {
                let what = format!("group {}", self.view.group_name(Some(group)));
                self.stays(&what, "what was entered in its books is not taken out");
            }
        }
    }

    /// Whether a block was there before as it is, and nothing but the list told of it since.
    fn is_alone_on(&self, block: BlockId) -> bool {
        let owner = self.view.world.directory.block(block);
        let made = owner.is_some_and(|block| self.made.contains(&block.owner));
        let mut listed = self.load.blocks.iter();
        !made && !self.since.blocks.contains(&block) && !listed.any(|was| was.after.id == block)
    }

    fn name_of(&self, block: BlockId) -> String {
        let block = self.view.world.directory.block(block);
        let owner = block.and_then(|block| self.view.person(block.owner));
        let block = block.map_or("", |block| &block.name);
        let owner = owner.map_or("", |owner| &owner.name);
        format!("block {block} of {owner}")
    }
}

/// The record of nobody, with the id of somebody.
fn nobody(id: PersonId, like: &Person) -> Person {
    Person {
        id,
        name: erasure::code(id),
        group: None,
        consent: Consent::Unknown,
        sharing: Consent::Unknown,
        erased: true,
        hold: None,
        ..like.clone()
    }
}

/// The people of whom a fact tells, beside the owner of its block.
fn people_of(event: &Event) -> Vec<PersonId> {
    match &event.body {
        Body::ConsentGiven { person, .. }
        | Body::ConsentWithdrawn { person, .. }
        | Body::LeftAlone { person, .. }
        | Body::GoneOn { person }
        | Body::PhoneLost { person }
        | Body::PhoneFound { person }
        | Body::NumberMoved { person }
        | Body::Erased { person } => vec![*person],
        Body::HandedOver { to, .. } => vec![*to],
        Body::Passed(passed) => match passed {
            Passed::Owner { from, to, .. } => vec![*from, *to],
            Passed::Joined { person, .. }
            | Passed::Left { person, .. }
            | Passed::Helper { person, .. }
            | Passed::HelperLeft { person, .. } => vec![*person],
            Passed::Gave { .. } | Passed::Got { .. } => Vec::new(),
        },
        Body::Entered { entered, .. } => match entered {
            Entered::Paid { person, .. } => vec![*person],
            Entered::Stocked { nursery, .. } | Entered::Sent { nursery, .. } => vec![*nursery],
            Entered::Trained { came, .. } => came.clone(),
            Entered::Asked { people, .. } => people.clone(),
            Entered::Buying { .. } | Entered::PickUp { .. } => Vec::new(),
        },
        Body::Reported { .. }
        | Body::TaskDone { .. }
        | Body::Postponed { .. }
        | Body::Nudged { .. }
        | Body::Warned { .. }
        | Body::TakenBack { .. }
        | Body::WindowOpened { .. }
        | Body::PlantingHeld { .. } => Vec::new(),
    }
}
