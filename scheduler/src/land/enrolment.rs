//! The day from which a block is on the record, and what was known of it then.
//!
//! What lies before that day is not known: it is never late, and nobody was ever quiet then. What
//! was known becomes ordinary facts, so that nothing else need tell an old stand from a new one;
//! the day is [`BlockState::listed_on`](crate::land::block::BlockState::listed_on).

use alloc::{collections::BTreeMap, string::String, vec::Vec};

use budwood_parser::{Details, Kind};
use chrono::NaiveDate;

use crate::words::{
    event::{Body, Happened},
    id::BlockId,
};

/// A block that comes on the record.
#[derive(Clone, Debug, PartialEq)]
pub struct Enrolment {
    /// Which block.
    pub block: BlockId,
    /// From this day.
    pub on: NaiveDate,
    /// What was known of it.
    pub known: Known,
}

/// What is known of a block on the day on which it comes on the record. What is left out is not
/// known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Known {
    /// When it was planted, and how many trees.
    pub planted: Option<(Happened, u32)>,
    /// Of which clone.
    pub clone_name: Option<String>,
    /// Of these trees so many live, and the day on which they were counted, if that is known.
    pub alive: Option<(u32, Option<NaiveDate>)>,
    /// Girths in centimetres, and when they were measured.
    pub girths: Option<(NaiveDate, Vec<f64>)>,
    /// Since when the stand is tapped, and how many trees.
    pub opened: Option<(NaiveDate, u32)>,
    /// The last round of each kind of work.
    pub last: BTreeMap<Kind, NaiveDate>,
}

impl Enrolment {
    /// What was known, as facts, in the order in which it happened to the trees. Nothing of it lies
    /// after the day of enrolment.
    #[must_use]
    pub fn facts(&self) -> Vec<Body> {
        let known = &self.known;
        let mut facts = Vec::new();
        let mut told = |kind, on: Happened, details| {
            facts.push(Body::Reported {
                block: self.block,
                kind,
                on: Happened {
                    from: on.from.min(self.on),
                    to: on.to.min(self.on),
                },
                details,
            });
        };
        let trees = |count| Details {
            count: Some(count),
            ..Details::default()
        };
        if let Some((on, planted)) = known.planted {
            let planting = Details {
                clone_name: known.clone_name.clone(),
                ..trees(planted)
            };
            told(Kind::Planted, on, planting);
            if let Some((alive, counted_on)) = known.alive {
                let dead = planted.saturating_sub(alive);
                let counted_on = Happened::on(counted_on.unwrap_or(self.on));
                told(Kind::Dead, counted_on, trees(dead));
            }
        }
        let mut add = |kind, on, details| told(kind, Happened::on(on), details);
        // A round is work on a day; how often it was done before is not known.
        for (kind, on) in &known.last {
            add(*kind, *on, Details::default());
        }
        if let Some((on, values_cm)) = &known.girths {
            let measured = Details {
                values_cm: values_cm.clone(),
                ..Details::default()
            };
            add(Kind::Girth, *on, measured);
        }
        if let Some((on, opened)) = known.opened {
            add(Kind::TappingOpened, on, trees(opened));
        }
        facts
    }
}
