//! Who there is: people, their phones, their groups and their blocks.
//!
//! A number is not a person: phones and persons are linked, with dates, many to many.

use alloc::{
    collections::{BTreeMap, BTreeSet},
    string::String,
    vec::Vec,
};

use budwood_parser::details::Measure;
use chrono::{NaiveDate, Weekday};

use crate::{
    land::book::Book,
    words::{
        event::Purpose,
        hold::Hold,
        id::{BlockId, GroupId, PersonId},
        point::Point,
    },
};

/// A person, as the bot knows them.
#[derive(Clone, Debug, PartialEq)]
pub struct Person {
    /// Which.
    pub id: PersonId,
    /// The name that people call them by; a code after erasure.
    pub name: String,
    /// What they do.
    pub role: Role,
    /// Language pack code.
    pub language: String,
    /// Their group, if any.
    pub group: Option<GroupId>,
    /// Whether they agreed to texts.
    pub consent: Consent,
    /// Whether they agreed that buyers are told of them and their land.
    pub sharing: Consent,
    /// Name and numbers were erased at their wish.
    pub erased: bool,
    /// They are left in peace.
    pub hold: Option<Hold>,
}

impl Person {
    /// What they said to a purpose.
    #[must_use]
    pub const fn consent_to(&self, purpose: Purpose) -> &Consent {
        match purpose {
            Purpose::Reminders => &self.consent,
            Purpose::Buyers => &self.sharing,
        }
    }

    /// What people call them: the first of their names.
    #[must_use]
    pub fn called(&self) -> &str {
        self.name.split_whitespace().next().unwrap_or(&self.name)
    }

    /// Whether someone who says this name means them: the whole name, or what they are called.
    #[must_use]
    pub fn is_named(&self, name: &str) -> bool {
        self.name.eq_ignore_ascii_case(name) || self.called().eq_ignore_ascii_case(name)
    }
}

/// What a person does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Works own blocks.
    Farmer,
    /// A farmer who reports for a group.
    Leader,
    /// Looks after groups.
    Adviser,
    /// Types lists.
    Clerk,
    /// Raises plants.
    Nursery,
    /// Only looks.
    Viewer,
}

impl Role {
    /// Every role.
    pub const ALL: [Self; 6] = [
        Self::Farmer,
        Self::Leader,
        Self::Adviser,
        Self::Clerk,
        Self::Nursery,
        Self::Viewer,
    ];

    /// The name in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Farmer => "farmer",
            Self::Leader => "leader",
            Self::Adviser => "adviser",
            Self::Clerk => "clerk",
            Self::Nursery => "nursery",
            Self::Viewer => "viewer",
        }
    }

    /// The role with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|role| role.name() == name)
    }
}

/// Whether a person agreed to something, since when, and how it is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Consent {
    /// Not asked, or not answered.
    Unknown,
    /// Agreed.
    Given {
        /// On this day.
        on: NaiveDate,
        /// How: "signed sheet", "text START".
        how: String,
    },
    /// Said no, or STOP.
    Withdrawn {
        /// On this day.
        on: NaiveDate,
        /// How.
        how: String,
    },
}

impl Consent {
    /// Whether it is agreed to.
    #[must_use]
    pub const fn is_given(&self) -> bool {
        matches!(self, Self::Given { .. })
    }
}

/// A phone number and who uses it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Phone {
    /// E.164, with the plus.
    pub number: String,
    /// Who uses it, past and present.
    pub links: Vec<PersonLink>,
    /// Since when it is lost: whoever holds it is told nothing and changes nothing.
    pub lost_on: Option<NaiveDate>,
}

/// That a person uses a phone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PersonLink {
    /// Who.
    pub person: PersonId,
    /// From this day.
    pub since: NaiveDate,
    /// To this day, if it is over.
    pub until: Option<NaiveDate>,
    /// Who uses it for them, when they do not themselves.
    pub helper: Option<Helper>,
}

/// Who does the work for a person, and is texted on a phone of their own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Helper {
    /// What they are called.
    pub name: String,
    /// Since when they have agreed to be texted.
    pub agreed_on: Option<NaiveDate>,
}

impl Phone {
    /// For whom somebody else uses this phone, and who that is.
    #[must_use]
    pub fn helper(&self) -> Option<(PersonId, &Helper)> {
        let mut links = self.links.iter().filter(|link| link.until.is_none());
        links.find_map(|link| Some((link.person, link.helper.as_ref()?)))
    }

    /// Who uses this phone now.
    pub fn people(&self) -> impl Iterator<Item = PersonId> + '_ {
        self.links
            .iter()
            .filter(|link| link.until.is_none())
            .map(|link| link.person)
    }
}

/// A group of farmers with one adviser and one season.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Which.
    pub id: GroupId,
    /// Short name, one word.
    pub name: String,
    /// Who looks after it.
    pub adviser: Option<PersonId>,
    /// IANA time zone name, such as "Asia/Jakarta".
    pub zone: String,
    /// Name of the calendar profile, such as "fao".
    pub calendar: String,
    /// Phones are charged on this day; texts go the afternoon before, if they can wait.
    pub market_day: Option<Weekday>,
    /// Days without routine texts.
    pub quiet_days: Vec<NaiveDate>,
    /// Usual first day of the rains, as month and day.
    pub rains_start: Option<(u32, u32)>,
    /// Usual last day of the rains, as month and day.
    pub rains_end: Option<(u32, u32)>,
    /// Usual first and last day of the second rains, where there are two in a year.
    pub second_rains: Option<((u32, u32), (u32, u32))>,
    /// The day on which the adviser opened the planting window, for this season.
    pub window_opened: Option<NaiveDate>,
    /// Its books.
    pub book: Book,
}

/// A farmer's piece of land with a name of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct Block {
    /// Which.
    pub id: BlockId,
    /// Whose.
    pub owner: PersonId,
    /// Short name, unique for that farmer.
    pub name: String,
    /// Area as told.
    pub area: Option<Measure>,
    /// Where the area comes from: "told", "tape", "gps".
    pub area_source: String,
    /// Slope in per cent.
    pub slope_pct: Option<f64>,
    /// Spacing of rows and in the row, in metres, when it differs from the profile's.
    pub spacing_m: Option<(f64, f64)>,
    /// Where it lies, if somebody went there with a positioning device.
    pub point: Option<Point>,
    /// The day on which planting is meant to begin.
    pub planned_on: Option<NaiveDate>,
    /// Clone to be planted.
    pub clone_name: Option<String>,
}

impl Block {
    /// Area in hectares, if it is known.
    #[must_use]
    pub fn hectares(&self) -> Option<f64> {
        self.area.and_then(crate::words::area::hectares)
    }
}

/// Everyone and everything that has a name, with the look-ups that the engine needs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Directory {
    persons: BTreeMap<PersonId, Person>,
    phones: BTreeMap<String, Phone>,
    groups: BTreeMap<GroupId, Group>,
    blocks: BTreeMap<BlockId, Block>,
    by_owner: BTreeSet<(PersonId, BlockId)>,
    by_group: BTreeSet<(GroupId, PersonId)>,
    by_person: BTreeSet<(PersonId, String)>,
}

impl Directory {
    /// Adds a person, or puts a new record in the place of the old one.
    pub fn put_person(&mut self, person: Person) {
        if let Some(old) = self.persons.get(&person.id)
            && let Some(group) = old.group
        {
            self.by_group.remove(&(group, person.id));
        }
        if let Some(group) = person.group {
            self.by_group.insert((group, person.id));
        }
        self.persons.insert(person.id, person);
    }

    /// Adds a phone, or puts a new record in the place of the old one.
    pub fn put_phone(&mut self, phone: Phone) {
        if let Some(old) = self.phones.get(&phone.number) {
            for person in old.people() {
                self.by_person.remove(&(person, phone.number.clone()));
            }
        }
        for person in phone.people() {
            self.by_person.insert((person, phone.number.clone()));
        }
        self.phones.insert(phone.number.clone(), phone);
    }

    /// Takes a number out (erasure).
    pub fn remove_phone(&mut self, number: &str) {
        if let Some(old) = self.phones.remove(number) {
            for person in old.people() {
                self.by_person.remove(&(person, old.number.clone()));
            }
        }
    }

    /// Adds a group, or puts a new record in the place of the old one.
    pub fn put_group(&mut self, group: Group) {
        self.groups.insert(group.id, group);
    }

    /// Adds a block, or puts a new record in the place of the old one.
    pub fn put_block(&mut self, block: Block) {
        if let Some(old) = self.blocks.get(&block.id) {
            self.by_owner.remove(&(old.owner, block.id));
        }
        self.by_owner.insert((block.owner, block.id));
        self.blocks.insert(block.id, block);
    }

    /// A person.
    #[must_use]
    pub fn person(&self, id: PersonId) -> Option<&Person> {
        self.persons.get(&id)
    }

    /// A phone by its E.164 number.
    #[must_use]
    pub fn phone(&self, number: &str) -> Option<&Phone> {
        self.phones.get(number)
    }

    /// A group.
    #[must_use]
    pub fn group(&self, id: GroupId) -> Option<&Group> {
        self.groups.get(&id)
    }

    /// A block.
    #[must_use]
    pub fn block(&self, id: BlockId) -> Option<&Block> {
        self.blocks.get(&id)
    }

    /// The group of this name, capitals or not.
    #[must_use]
    pub fn group_named(&self, name: &str) -> Option<&Group> {
        self.groups
            .values()
            .find(|group| group.name.eq_ignore_ascii_case(name))
    }

    /// The people of a group, by id.
    pub fn members(&self, group: GroupId) -> impl Iterator<Item = &Person> {
        self.by_group
            .range((group, PersonId(0))..=(group, PersonId(u32::MAX)))
            .filter_map(|(_, person)| self.persons.get(person))
    }

    /// The blocks of a person, by id.
    pub fn blocks_of(&self, owner: PersonId) -> impl Iterator<Item = &Block> {
        self.by_owner
            .range((owner, BlockId(0))..=(owner, BlockId(u32::MAX)))
            .filter_map(|(_, block)| self.blocks.get(block))
    }

    /// The numbers that a person uses now.
    pub fn numbers_of(&self, person: PersonId) -> impl Iterator<Item = &str> {
        self.by_person
            .range((person, String::new())..)
            .take_while(move |(owner, _)| *owner == person)
            .map(|(_, number)| number.as_str())
    }

    /// The numbers that reach a person: those that are used now and are not lost. First the phone of
    /// whoever does the work for them, once they have agreed to be texted.
    pub fn numbers_that_reach(&self, person: PersonId) -> impl Iterator<Item = &str> {
        let helper = |number: &str| self.phones.get(number).and_then(Phone::helper);
        let found = move |number: &&str| !self.is_lost(number);
        let helps = move |number: &&str| {
            helper(number).is_some_and(|(_, helper)| helper.agreed_on.is_some())
        };
        let helpers = self.numbers_of(person).filter(helps);
        let own = self.numbers_of(person);
        let own = own.filter(move |number| helper(number).is_none());
        helpers.chain(own).filter(found)
    }

    /// Whether a phone is lost.
    #[must_use]
    pub fn is_lost(&self, number: &str) -> bool {
        let phone = self.phones.get(number);
        phone.is_some_and(|phone| phone.lost_on.is_some())
    }

    /// The groups that an adviser looks after.
    pub fn groups_of(&self, adviser: PersonId) -> impl Iterator<Item = &Group> {
        self.groups
            .values()
            .filter(move |group| group.adviser == Some(adviser))
    }

    /// The group of a block's owner.
    #[must_use]
    pub fn group_of_block(&self, block: &Block) -> Option<&Group> {
        self.person(block.owner)
            .and_then(|owner| owner.group)
            .and_then(|group| self.group(group))
    }

    /// All people.
    pub fn persons(&self) -> impl Iterator<Item = &Person> {
        self.persons.values()
    }

    /// All phones.
    pub fn phones(&self) -> impl Iterator<Item = &Phone> {
        self.phones.values()
    }

    /// All groups.
    pub fn groups(&self) -> impl Iterator<Item = &Group> {
        self.groups.values()
    }

    /// All blocks.
    pub fn blocks(&self) -> impl Iterator<Item = &Block> {
        self.blocks.values()
    }
}
