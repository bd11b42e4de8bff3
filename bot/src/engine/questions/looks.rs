//! Pages of the office: who may see which, and what stands on each.
//!
//! A page asks the same figures as an answer by text, so that no page can show another number than a
//! text. Deliberately absent: how a page looks.

mod farmer;
mod group;
mod groups;
mod line;
mod queue;
mod season;
mod sick;
mod stock;
mod today;

use budwood_scheduler::{Consent, Group, Person, PersonId, Role};

use crate::engine::{
    looks::{Look, Part, Seen, Unseen, Viewer},
    roles::{self, Reach, Verb},
    view::View,
};
use crate::wording::Value;

/// What stands on a page.
pub(crate) struct Page {
    title: Value,
    parts: Vec<Part>,
    about: Option<PersonId>,
}

impl Page {
    fn new(title: Value, parts: Vec<Part>) -> Self {
        Self {
            title,
            parts,
            about: None,
        }
    }
}

impl Look {
    /// What it is to look at this.
    const fn verb(&self) -> Verb {
        match self {
            Self::Today
            | Self::Groups
            | Self::Group(_)
            | Self::Person(_)
            | Self::Under(..)
            | Self::Fact(_)
            | Self::Sick
            | Self::Season => Verb::Look,
            Self::Stock => Verb::LookAtPlants,
            Self::Line => Verb::LookAtNumbers,
            Self::Queue(_) => Verb::ReadQueue,
        }
    }
}

/// The pages that begin a menu, in its order.
const MENU: [Look; 7] = [
    Look::Today,
    Look::Queue(None),
    Look::Groups,
    Look::Sick,
    Look::Season,
    Look::Stock,
    Look::Line,
];

/// The pages that somebody of this role finds in the menu.
fn menu(role: Role) -> Vec<Look> {
    let may = |look: &Look| roles::may(role, look.verb());
    MENU.into_iter().filter(may).collect()
}

/// Whether somebody of this role may see any.
pub(crate) fn may_look(role: Role) -> bool {
    !menu(role).is_empty()
}

impl<'a> View<'a> {
    /// What somebody sees who wants to see this.
    pub(crate) fn looked(self, viewer: &Viewer, look: &Look) -> Result<Box<Seen>, Unseen> {
        let viewer = self.viewer(viewer).ok_or(Unseen::Stranger)?;
        let menu = menu(viewer.role);
        if menu.is_empty() {
            return Err(Unseen::Stranger);
        }
        if !roles::may(viewer.role, look.verb()) {
            return Err(Unseen::NotTheirs(menu));
        }
        let Some(page) = self.page(viewer, look) else {
            return Err(Unseen::Nothing(menu));
        };
        Ok(Box::new(Seen {
            title: page.title,
            reader: viewer.name.clone(),
            language: self.language_of(viewer.id),
            today: self.today_of(viewer.id),
            menu,
            parts: page.parts,
            about: page.about,
        }))
    }

    fn page(self, viewer: &'a Person, look: &Look) -> Option<Page> {
        Some(match look {
            Look::Today => self.today_page(viewer),
            Look::Groups => self.groups_page(viewer),
            Look::Group(name) => self.group_page(viewer, name)?,
            Look::Person(person) => self.farmer_page(viewer, *person)?,
            Look::Under(block, rests) => self.facts_page(viewer, *block, *rests)?,
            Look::Fact(fact) => self.fact_page(viewer, *fact)?,
            Look::Sick => self.sick_page(viewer),
            Look::Season => self.season_page(viewer),
            Look::Stock => self.stock_page(viewer),
            Look::Line => self.line_page(),
            Look::Queue(message) => self.queue_page(viewer, *message)?,
        })
    }

    /// Who looks, as long as they are who they were: their phone is theirs and not lost, and they did
    /// not say STOP.
    pub(crate) fn viewer(self, viewer: &Viewer) -> Option<&'a Person> {
        let person = self.person(viewer.person)?;
        let is_gone = person.erased || matches!(person.consent, Consent::Withdrawn { .. });
        let mut numbers = self.world.directory.numbers_that_reach(person.id);
        let is_theirs = numbers.any(|number| number == viewer.number);
        (!is_gone && is_theirs).then_some(person)
    }

    /// The groups that somebody reaches so.
    fn groups_by(self, person: &Person, verb: Verb) -> Vec<&'a Group> {
        match roles::reach(person.role, verb) {
            Reach::Advised => self.world.directory.groups_of(person.id).collect(),
            Reach::OwnGroup => self.group_of(person).into_iter().collect(),
            Reach::Nobody => Vec::new(),
        }
    }

    /// A farmer whom somebody may look at.
    pub(crate) fn farmer_looked_at(self, viewer: &Person, person: PersonId) -> Option<&'a Person> {
        let person = self.person(person)?;
        let mut groups = self.groups_of(viewer);
        groups
            .any(|group| person.group == Some(group.id))
            .then_some(person)
    }
}
