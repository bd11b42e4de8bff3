//! What one handbook says, as data: spacing, order times, rounds by age, doses, opening rule.
//!
//! A calendar is a TOML file that people write and check ([`profiles`] holds those that ship).
//! Each value in it names its source and how sure that is; both are kept in
//! [`Calendar::citations`]. Deliberately absent: any rule that is not a figure (those are in
//! [`crate::jobs::task`]), and any chemical against pests, disease or weeds.

mod cited;
mod fault;
mod feeding;
mod local;
mod own;
mod read;
mod section;
#[cfg(test)]
mod tests;

use alloc::{
    collections::{BTreeMap, BTreeSet},
    string::String,
    vec::Vec,
};

use crate::words::job::TaskKind;

pub use cited::{AlsoPublished, Citation, Confidence};
pub use fault::{CalendarError, Fault};
pub use feeding::{Dose, FeedRound, Feeding};
pub use section::{
    Backfill, BusyWeeks, Census, CountAgain, Cover, Datum, DrySeason, Growth, Induction, Intercrop,
    LabourNorm, Land, Opening, Order, PartPayment, Pits, Planting, Pruning, Rounds, Slope, Spacing,
    Survival, Weeding,
};

/// The calendars that ship.
pub mod profiles {
    /// Notes on planting and upkeep, China.
    pub const CHINA: &str = include_str!("../../calendars/china.toml");
    /// Research centre and professional association, Côte d'Ivoire.
    pub const COTE_DIVOIRE: &str = include_str!("../../calendars/cote_divoire.toml");
    /// FAO and INADES, smallholders in West Africa.
    pub const FAO: &str = include_str!("../../calendars/fao.toml");
    /// Rubber Board and university, India.
    pub const INDIA: &str = include_str!("../../calendars/india.toml");
    /// Research centre and estate practice, Indonesia.
    pub const INDONESIA: &str = include_str!("../../calendars/indonesia.toml");
    /// Smallholders' authority, Malaysia.
    pub const MALAYSIA: &str = include_str!("../../calendars/malaysia.toml");
    /// Manual and guides, Philippines.
    pub const PHILIPPINES: &str = include_str!("../../calendars/philippines.toml");
    /// Rubber Development Department and papers, Sri Lanka.
    pub const SRI_LANKA: &str = include_str!("../../calendars/sri_lanka.toml");
    /// Department of Agriculture, Thailand.
    pub const THAILAND: &str = include_str!("../../calendars/thailand.toml");
    /// The same for sandy loam in the south and east.
    pub const THAILAND_SANDY: &str = include_str!("../../calendars/thailand_sandy.toml");
    /// The same for the south and east.
    pub const THAILAND_SOUTH: &str = include_str!("../../calendars/thailand_south.toml");
    /// The other mixture of the Indian guide.
    pub const INDIA_12_12_6: &str = include_str!("../../calendars/india_12_12_6.toml");
    /// Doses of Indonesian estates.
    pub const INDONESIA_ESTATE: &str = include_str!("../../calendars/indonesia_estate.toml");
    /// Rubber group and guides, Vietnam.
    pub const VIETNAM: &str = include_str!("../../calendars/vietnam.toml");
    /// Every calendar that ships: its name and its text.
    pub const ALL: &[(&str, &str)] = &[
        ("china", CHINA),
        ("cote_divoire", COTE_DIVOIRE),
        ("fao", FAO),
        ("india", INDIA),
        ("india_12_12_6", INDIA_12_12_6),
        ("indonesia", INDONESIA),
        ("indonesia_estate", INDONESIA_ESTATE),
        ("malaysia", MALAYSIA),
        ("philippines", PHILIPPINES),
        ("sri_lanka", SRI_LANKA),
        ("thailand", THAILAND),
        ("thailand_sandy", THAILAND_SANDY),
        ("thailand_south", THAILAND_SOUTH),
        ("vietnam", VIETNAM),
    ];
}

/// The handbook of one source. All ages are whole months after planting.
#[derive(Clone, Debug, PartialEq)]
pub struct Calendar {
    /// Short name, as groups refer to it.
    pub name: String,
    /// What a person calls it.
    pub title: String,
    /// The sources in full, by the key that values refer to.
    pub sources: BTreeMap<String, String>,
    /// Where each value comes from, in the order of the file.
    pub citations: Vec<Citation>,
    /// The jobs whose values were all published somewhere: asked with every job of every block, so
    /// it is worked out once.
    published: BTreeSet<TaskKind>,
    /// What other publications say of the same values: contradictions are kept, not settled.
    pub also_published: Vec<AlsoPublished>,
    /// Distances between trees.
    pub spacing: Spacing,
    /// What a slope asks for.
    pub slope: Slope,
    /// Preparing the land.
    pub land: Land,
    /// Ordering of plants.
    pub order: Order,
    /// Planting holes.
    pub pits: Pits,
    /// Planting.
    pub planting: Planting,
    /// The ground cover.
    pub cover: Cover,
    /// Counting the dead.
    pub survival: Survival,
    /// Filling of gaps.
    pub backfill: Backfill,
    /// Weeding.
    pub weeding: Weeding,
    /// Feeding.
    pub feeding: Feeding,
    /// The dry season.
    pub dry_season: DrySeason,
    /// Food crops between the rows.
    pub intercrop: Intercrop,
    /// Side shoots.
    pub pruning: Pruning,
    /// Induction of branches.
    pub induction: Induction,
    /// Root checks by age.
    pub root_check: Vec<Rounds>,
    /// Looks at the leaves in the rains, by age.
    pub leaf_check: Vec<Rounds>,
    /// Growth to be expected.
    pub growth: Growth,
    /// Girth census.
    pub census: Census,
    /// Opening for tapping.
    pub opening: Opening,
    /// Part payments of a programme, the first first; none where nobody pays by these rules.
    pub part_payments: Vec<PartPayment>,
    /// How long kinds of work take, as far as the place has told.
    pub labour: Vec<LabourNorm>,
    /// When people have no time for trees.
    pub busy_weeks: Vec<BusyWeeks>,
}

impl Calendar {
    /// Reads a calendar.
    ///
    /// With `base = "fao"` (or another that ships) at its top, the file is an organisation's own:
    /// it holds a name and a title of its own and only what differs. A value is replaced together
    /// with its source, a list of rounds and a feeding table as a whole.
    ///
    /// # Errors
    ///
    /// Every fault with its line: a text that is not TOML, a key that is missing, unknown or out
    /// of its range, a source that is not listed, a table by age with a gap or an overlap.
    pub fn parse(text: &str) -> Result<Self, CalendarError> {
        read::calendar(text)
    }

    /// Where the value at this path comes from; for a list of rounds, its least sure row.
    #[must_use]
    pub fn citation(&self, path: &str) -> Option<&Citation> {
        let is_of = |cited: &&Citation| {
            let rest = cited.path.strip_prefix(path);
            rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
        };
        self.citations
            .iter()
            .filter(is_of)
            .max_by_key(|cited| cited.confidence)
    }

    /// Whether what a job rests on was published somewhere. What rests on memory or on the practice
    /// of the trade is never told as a rule.
    #[must_use]
    pub fn is_published(&self, kind: TaskKind) -> bool {
        self.published.contains(&kind)
    }

    /// Works out for each job whether it rests on what was published.
    fn with_published(mut self) -> Self {
        let rests_on_it = |kind: &TaskKind| self.are_published(kind.rests_on());
        self.published = TaskKind::ALL.into_iter().filter(rests_on_it).collect();
        self
    }

    fn are_published(&self, paths: &[&str]) -> bool {
        paths.iter().all(|path| {
            self.citation(path)
                .is_some_and(|cited| cited.confidence.is_published())
        })
    }
}
