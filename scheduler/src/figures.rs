//! Every number that is shown to somebody, made in one place, so that no two places can differ.
//!
//! A [`Table`] is made of farmers as they are known on a day. Each figure of it says what it counts
//! ([`Name`]), of whom ([`Scope`]), over which days ([`Window`]), and its value; the share of it that
//! a visit saw is asked with the facts that it rests on ([`Table::visited_pct`]). A figure of one
//! person and of a whole group is the same figure of another table. Deliberately absent: reading
//! facts, which the caller does, and words.

mod books;
mod labour;
mod land;
mod losses;
mod needs;
mod news;
mod part_payments;
mod rounds;
pub mod season;
mod stand;
#[cfg(test)]
mod tests;
mod work;

use alloc::vec::Vec;
use core::cell::OnceCell;

use budwood_parser::{Cause, Kind};
use chrono::NaiveDate;

use crate::{
    group::trust,
    handbook::calendar::Calendar,
    jobs::{
        nudge::Rules,
        task::{Task, tasks},
    },
    land::{
        block::BlockState,
        directory::{Block, Person, Role},
    },
    words::{
        event::Source,
        id::{GroupId, PersonId},
        season::Season,
    },
};

pub use books::{Allotted, Missing, Money, Share, Taught};
pub use labour::{Labour, busy_weeks};
pub use land::{Mapped, OUTLINE_HECTARES};
pub use losses::{Dead, Loss, lost_pct};
pub use needs::{Feed, Wanted, by_clone};
pub use news::{QUIET_DAYS, SICK_DAYS, Sick, Silent, Why, is_sick};
pub use part_payments::Standing;
pub use rounds::{HARM_DAYS, Round, Survey};
pub use work::{FEED_LOST_DAYS, Jobs, LateJob, days_late};

/// What a figure counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Name {
    /// Farmers and leaders.
    Farmers,
    /// Of these, those with something planted.
    Planted,
    /// Living trees: first ones, filled in, gaps.
    Living,
    /// Gaps, by farmer.
    Gaps,
    /// Gaps for which plants may still be ordered.
    GapsToFill,
    /// Planted blocks whose dead were never counted.
    Uncounted,
    /// Jobs that are due and late, by farmer.
    Jobs,
    /// Rounds of feeding that were not given and are asked for no more, by farmer.
    FeedLost,
    /// Farmers of whom nothing was heard for long.
    Quiet,
    /// Farmers who told of sickness that is not known to be over.
    Sick,
    /// Farmers whom the word to plant will reach.
    ToldToPlant,
    /// Farmers who are left in peace: nothing is due, late or quiet of them.
    InPeace,
    /// Farmers of whom nothing was heard for long, each with why.
    Silent,
    /// First trees that died, by farmer.
    Losses,
    /// The same, by what it was.
    LossesByCause,
    /// First trees by clone.
    Clones,
    /// One kind of work: done, due and late.
    Round,
    /// Harm that was told of, by farmer.
    Harm,
    /// What came of it when a group was asked about harm.
    Survey,
    /// Fertiliser of the rounds that are due.
    Feed,
    /// Plants for plantings to come.
    Wanted,
    /// What is known of the land itself.
    Mapped,
    /// Farmers who told of sick roots that are not known to be over.
    SickRoots,
    /// Farmers with work due of whom nothing was told lately.
    Missing,
    /// Who was shown how a kind of work is done, and who not.
    Taught,
    /// Who pays how much for fertiliser that is bought together, and has paid.
    Money,
    /// How plants of nurseries are shared out.
    Allotted,
    /// What was done, seen, asked and late, by farmer and week.
    Season,
    /// Jobs to come and how long they take.
    Labour,
    /// How blocks stand before a part payment of a programme.
    PartPayment,
}

impl Name {
    /// Whether this kind of fact changes the figure.
    #[must_use]
    pub const fn rests_on(self, kind: Kind) -> bool {
        match self {
            Self::Farmers | Self::InPeace | Self::Mapped | Self::Taught => false,
            Self::Planted
            | Self::Living
            | Self::Gaps
            | Self::GapsToFill
            | Self::ToldToPlant
            | Self::Losses
            | Self::LossesByCause
            | Self::Clones
            | Self::Wanted
            | Self::Allotted => kind.counts_stand(),
            Self::Uncounted => matches!(kind, Kind::Planted | Kind::Dead),
            Self::Sick | Self::SickRoots => matches!(kind, Kind::Disease),
            Self::Harm | Self::Survey => matches!(kind, Kind::Damage),
            Self::Jobs
            | Self::FeedLost
            | Self::Quiet
            | Self::Silent
            | Self::Round
            | Self::Feed
            | Self::Missing
            | Self::Season
            | Self::Money
            | Self::PartPayment
            | Self::Labour => true,
        }
    }
}

/// Of whom a figure is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scope {
    /// A group.
    Group(GroupId),
    /// All groups of an adviser.
    Adviser(PersonId),
}

/// The days that a figure looks at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Window {
    /// So many days back; none for all that is known.
    pub days: Option<i64>,
}

impl Window {
    /// All that is known.
    pub const ALL: Self = Self { days: None };

    /// So many days back.
    #[must_use]
    pub const fn days(days: i64) -> Self {
        Self { days: Some(days) }
    }
}

/// One number, or one list of them, and what it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure<V> {
    /// What it counts.
    pub name: Name,
    /// Of whom.
    pub scope: Scope,
    /// Over which days.
    pub window: Window,
    /// How much.
    pub value: V,
}

/// A fact as far as figures ask for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Known {
    /// What it tells of.
    pub kind: Kind,
    /// Who told it.
    pub source: Source,
    /// The day that it is of.
    pub on: NaiveDate,
    /// How many trees, if it is told.
    pub count: Option<u32>,
    /// What it came from, if it is told.
    pub cause: Option<Cause>,
}

/// A block as figures see it.
#[derive(Clone, Debug)]
pub struct Stand<'a> {
    /// The block.
    pub block: &'a Block,
    /// How it stands.
    pub state: &'a BlockState,
    jobs: OnceCell<Vec<Task>>,
}

impl<'a> Stand<'a> {
    /// A block and how it stands.
    #[must_use]
    pub const fn new(block: &'a Block, state: &'a BlockState) -> Self {
        Self {
            block,
            state,
            jobs: OnceCell::new(),
        }
    }
}

/// A farmer as figures see them.
#[derive(Clone, Debug)]
pub struct Farmer<'a> {
    /// Who.
    pub person: &'a Person,
    /// The day where they live.
    pub today: NaiveDate,
    /// The season there.
    pub season: Season,
    /// The handbook there.
    pub calendar: Option<&'a Calendar>,
    /// The last day on which they texted themselves.
    pub texted_on: Option<NaiveDate>,
    /// Whether a text reaches them.
    pub has_phone: bool,
    /// Since when no text arrives on their phone, by what its network tells.
    pub fails_since: Option<NaiveDate>,
    /// Their blocks.
    pub stands: Vec<Stand<'a>>,
}

impl Farmer<'_> {
    /// Whether they are left in peace today.
    #[must_use]
    pub fn is_in_peace(&self) -> bool {
        let hold = self.person.hold.as_ref();
        hold.is_some_and(|hold| hold.is_on(self.today))
    }

    /// The jobs of a stand today: due, late and to come. Of who is left in peace none is asked.
    #[must_use]
    pub fn jobs<'s>(&self, stand: &'s Stand<'_>) -> &'s [Task] {
        stand.jobs.get_or_init(|| {
            if self.is_in_peace() {
                return Vec::new();
            }
            let jobs =
                |calendar| tasks(stand.block, stand.state, &self.season, calendar, self.today);
            self.calendar.map(jobs).unwrap_or_default()
        })
    }

    /// The last day on which they texted, or something was told of their blocks.
    #[must_use]
    pub fn heard_on(&self) -> Option<NaiveDate> {
        let told = self.stands.iter().map(|stand| stand.state.quiet_since());
        told.max().flatten().max(self.texted_on)
    }

    /// Who has nothing due is not quiet, only idle; who is not to be texted is not asked.
    #[must_use]
    pub fn is_expected(&self) -> bool {
        let is_due = |stand: &Stand<'_>| {
            let mut jobs = self.jobs(stand).iter();
            jobs.any(|task| task.due <= self.today)
        };
        self.person.consent.is_given() && self.stands.iter().any(is_due)
    }
}

/// Whether figures count this person: who works land and was not erased.
#[must_use]
pub const fn is_farmer(person: &Person) -> bool {
    matches!(person.role, Role::Farmer | Role::Leader) && !person.erased
}

/// The figures of some farmers.
#[derive(Clone, Debug)]
pub struct Table<'a> {
    /// Of whom.
    pub scope: Scope,
    /// When a job is nudged for.
    pub rules: &'a Rules,
    /// The farmers.
    pub farmers: Vec<Farmer<'a>>,
}

impl Table<'_> {
    fn figure<V>(&self, name: Name, window: Window, value: V) -> Figure<V> {
        Figure {
            name,
            scope: self.scope,
            window,
            value,
        }
    }

    fn stands(&self) -> impl Iterator<Item = &Stand<'_>> {
        self.farmers.iter().flat_map(|farmer| &farmer.stands)
    }

    fn states(&self) -> impl Iterator<Item = &BlockState> {
        self.stands().map(|stand| stand.state)
    }

    /// Of how many planted trees in per cent the last fact that this figure rests on was seen on a
    /// visit. `facts` gives what is known of a block.
    #[must_use]
    pub fn visited_pct(&self, name: Name, facts: impl Fn(&Block) -> Vec<Known>) -> Option<u32> {
        let stands = self.farmers.iter().flat_map(|farmer| &farmer.stands);
        trust::visited_pct(stands.filter_map(|stand| {
            let facts = facts(stand.block).into_iter();
            let resting = facts.filter(|fact| name.rests_on(fact.kind));
            let last = resting.max_by_key(|fact| (fact.on, fact.source))?;
            Some((stand.state.planted(), last.source))
        }))
    }
}
