//! Sickness in more than one place: which signs belong together, how near is near, and when to
//! look again.
//!
//! Farmers name a sign, not a disease, and name it differently; so signs are gathered in
//! families. Deliberately absent: what to do against a sickness. That is for label, local law and
//! trained people; neighbours are told only when the adviser says so.

use budwood_parser::Ailment;
use chrono::{Days, NaiveDate};

pub use crate::words::point::Point;
pub use cluster::{Cluster, Place, Sighting, clusters, neighbours};

mod cluster;
mod usual;

/// Signs that may be one sickness.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Family {
    /// Goes from root to root.
    Root,
    /// Spots, mildew, leaves that fall: spores in the air.
    Leaf,
    /// Bark and shoots: pink disease, dieback.
    Shoot,
    /// Termites.
    Termites,
}

/// When reports of one family are a cluster.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    /// So many reports, of different blocks and from different phones.
    pub reports: usize,
    /// Blocks so far apart are near each other.
    pub kilometres: f64,
    /// Reports so far apart belong together.
    pub days: i64,
    /// So long after the last report it is time to look again.
    pub recheck_days: u64,
}

impl Family {
    /// The family of a sign; none for one that may be anything.
    #[must_use]
    pub const fn of(ailment: Ailment) -> Option<Self> {
        match ailment {
            Ailment::WhiteRoot => Some(Self::Root),
            Ailment::LeafFall | Ailment::LeafSpot | Ailment::Mildew => Some(Self::Leaf),
            Ailment::Pink | Ailment::Dieback => Some(Self::Shoot),
            Ailment::Termites => Some(Self::Termites),
            Ailment::Other => None,
        }
    }

    /// Leaf, three reports within 5 km in 21 days, and root within 180 days: common practice.
    /// Leaf, look again after 16 days: signs show 4 to 16 days after infection (note on leaf fall
    /// by Fair Rubber, 2023, as read in a summary). Root, look again after three months: common
    /// practice in the first years. Pink disease monthly in the wet season and termites monthly:
    /// common practice. The rest are own rules: root disease goes no further than roots touch, so
    /// 0.5 km stands for farms that may share a boundary.
    #[must_use]
    pub const fn rule(self) -> Rule {
        let (reports, kilometres, days, recheck_days) = match self {
            Self::Root => (3, 0.5, 180, 90),
            Self::Leaf => (3, 5.0, 21, 16),
            Self::Shoot => (3, 5.0, 60, 30),
            Self::Termites => (3, 1.0, 60, 30),
        };
        Rule {
            reports,
            kilometres,
            days,
            recheck_days,
        }
    }

    /// When to look again after a report of this day.
    #[must_use]
    pub fn recheck_on(self, last: NaiveDate) -> NaiveDate {
        last.checked_add_days(Days::new(self.rule().recheck_days))
            .unwrap_or(last)
    }
}
