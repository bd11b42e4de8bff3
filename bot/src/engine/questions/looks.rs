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
mod whom;

use budwood_scheduler::{Person, PersonId, Role};

use crate::engine::{
    looks::{Look, Part, Seen, Unseen, Viewer},
    roles::{self, Verb},
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
}
