//! What the books of a group show: who is missing, who was shown what, who pays for fertiliser, and
//! how plants are shared out.

use alloc::{string::String, vec::Vec};

use budwood_parser::Kind;
use chrono::NaiveDate;

use super::{Figure, Name, Table, Wanted, Window};
use crate::{
    jobs::{feed::BAG_KG, task::Task},
    land::book::Book,
    sums::shares::shares,
    words::{id::PersonId, job::TaskKind},
};

/// Farmers with work due of whom nothing was told lately.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// Each with the job that has been due longest, the longest first.
    pub people: Vec<(PersonId, TaskKind)>,
    /// How many have work due.
    pub of: usize,
}

/// Who was shown how a kind of work is done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taught {
    /// Which work.
    pub kind: Kind,
    /// The last day on which it was shown.
    pub on: NaiveDate,
    /// How many of the farmers came to any such day.
    pub came: usize,
    /// Who came to none.
    pub missed: Vec<PersonId>,
}

/// What one takes home of fertiliser that is bought together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Share {
    /// Who.
    pub person: PersonId,
    /// Grams to take home.
    pub grams: u64,
    /// To pay, in hundredths; none while no price is known.
    pub cents: Option<u64>,
    /// Paid so far, in hundredths.
    pub paid: u64,
}

/// Fertiliser that is bought together: what each takes and pays.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Money {
    /// The day, if it is known.
    pub on: Option<NaiveDate>,
    /// Each one's part, the largest first.
    pub shares: Vec<Share>,
    /// Bags to buy.
    pub bags: u32,
    /// Grams that are left over of the last bag.
    pub left_grams: u64,
    /// The price of all bags, in hundredths, if it is known.
    pub total: Option<u64>,
    /// What was paid so far, by all.
    pub held: u64,
}

/// Plants of one clone that a nursery has, and how they are shared out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Allotted {
    /// Of which clone, if it is told.
    pub clone_name: Option<String>,
    /// Plants that the nurseries have.
    pub supply: u32,
    /// The first day on which they are ready; none where there are none.
    pub ready_on: Option<NaiveDate>,
    /// Plants that are firmly ordered.
    pub ordered: u32,
    /// What each gets, in the order of the days of planting.
    pub shares: Vec<(PersonId, u32)>,
}

const GRAMS_A_KILOGRAM: f64 = 1_000.0;

impl Table<'_> {
    /// Farmers with work due of whom nothing was heard or told in so many days.
    #[must_use]
    pub fn missing(&self, days: i64) -> Figure<Missing> {
        let mut missing = Vec::new();
        let mut of = 0;
        for farmer in &self.farmers {
            let jobs = farmer.stands.iter().flat_map(|stand| farmer.jobs(stand));
            let due = jobs.filter(|task| task.due <= farmer.today && !task.only_tells());
            let Some(first) = due.min_by_key(|task| task.due) else {
                continue;
            };
            of += 1;
            let heard = farmer.heard_on();
            let is_silent =
                |on: NaiveDate| farmer.today.signed_duration_since(on).num_days() >= days;
            if heard.is_none_or(is_silent) {
                missing.push((first.due, farmer.person.id, first.kind));
            }
        }
        missing.sort_by_key(|(due, _, _)| *due);
        let people = missing.into_iter().map(|(_, person, task)| (person, task));
        let missing = Missing {
            people: people.collect(),
            of,
        };
        self.figure(Name::Missing, Window::days(days), missing)
    }

    /// Who was shown how each kind of work is done, or only this one; the last day first.
    #[must_use]
    pub fn taught(&self, book: &Book, only: Option<Kind>) -> Figure<Vec<Taught>> {
        let mut taught: Vec<Taught> = Vec::new();
        for training in book.trainings.iter().rev() {
            let kind = training.kind;
            let is_known = taught.iter().any(|one| one.kind == kind);
            if is_known || only.is_some_and(|only| only != kind) {
                continue;
            }
            let days = book.trainings.iter().filter(|one| one.kind == kind);
            let missed = self.farmers.iter().map(|farmer| farmer.person.id);
            let missed = missed.filter(|person| !book.was_shown(*person, kind));
            let missed: Vec<PersonId> = missed.collect();
            taught.push(Taught {
                kind,
                on: days.map(|one| one.on).max().unwrap_or(training.on),
                came: self.farmers.len() - missed.len(),
                missed,
            });
        }
        taught.sort_by_key(|one| core::cmp::Reverse(one.on));
        self.figure(Name::Taught, Window::ALL, taught)
    }

    /// With whom this work is due who was never shown it, so that no text speaks of it.
    #[must_use]
    pub fn to_be_shown(&self, book: &Book, kind: Kind) -> Figure<Vec<PersonId>> {
        let waits = self.farmers.iter().filter(|farmer| {
            let mut jobs = farmer.stands.iter().flat_map(|stand| farmer.jobs(stand));
            let is_due =
                |task: &Task| task.kind.shown_first() == Some(kind) && task.due <= farmer.today;
            !book.was_shown(farmer.person.id, kind) && jobs.any(is_due)
        });
        let people = waits.map(|farmer| farmer.person.id).collect();
        self.figure(Name::Taught, Window::ALL, people)
    }

    /// The feed that is due, bought together: each pays by weight, and cents and grams add up to what
    /// is bought.
    #[must_use]
    pub fn money(&self, book: &Book) -> Figure<Money> {
        let feed = self.feed_due().value;
        let bags = feed.bags.map_or(0, |bags| bags.pooled);
        let grams: Vec<u64> = feed
            .shares
            .iter()
            .map(|(_, kilograms)| whole_grams(*kilograms))
            .collect();
        let buying = book.buying.as_ref();
        let bag_cents = buying.and_then(|buying| buying.bag_cents);
        let total = bag_cents.map(|cents| cents.saturating_mul(bags.into()));
        let cents = total.map(|total| by_weight(total, &grams));
        let paid_by = |person: PersonId| {
            let mut paid = buying.into_iter().flat_map(|buying| &buying.paid);
            paid.find(|(who, _)| *who == person)
                .map_or(0, |(_, cents)| *cents)
        };
        let people = feed.shares.iter().zip(&grams).enumerate();
        let shares = people.map(|(at, ((person, _), grams))| Share {
            person: *person,
            grams: *grams,
            cents: cents.as_ref().and_then(|cents| cents.get(at)).copied(),
            paid: paid_by(*person),
        });
        let bought = u64::from(bags).saturating_mul(whole_grams(BAG_KG));
        let paid = buying.into_iter().flat_map(|buying| &buying.paid);
        let money = Money {
            on: buying.and_then(|buying| buying.on),
            shares: shares.collect(),
            bags,
            left_grams: bought.saturating_sub(grams.iter().sum()),
            total,
            held: paid.map(|(_, cents)| cents).sum(),
        };
        self.figure(Name::Money, Window::ALL, money)
    }

    /// How plants of nurseries are shared among those who have firmly ordered them, by clone.
    #[must_use]
    pub fn allotted(&self, book: &Book) -> Figure<Vec<Allotted>> {
        let wanted = self.wanted(None).value;
        let mut clones: Vec<Option<&str>> = Vec::new();
        let ordered = wanted.iter().map(|one| one.clone_name.as_deref());
        let raised = book.lots.iter().map(|lot| lot.clone_name.as_deref());
        for clone in ordered.chain(raised) {
            if !clones.contains(&clone) {
                clones.push(clone);
            }
        }
        let allotted = clones.into_iter().map(|clone| {
            let lots = || {
                let all = book.lots.iter();
                all.filter(move |lot| lot.clone_name.as_deref() == clone && lot.plants > 0)
            };
            let firm: Vec<&Wanted> = wanted
                .iter()
                .filter(|one| one.is_firm && one.clone_name.as_deref() == clone)
                .collect();
            // Who has all of it already gets nothing of what is left.
            let wants = firm
                .iter()
                .map(|one| one.plants.saturating_sub(one.received).into());
            let wants: Vec<u64> = wants.collect();
            let supply = lots().fold(0_u32, |sum, lot| sum.saturating_add(lot.plants));
            let parts = shares(supply.into(), &wants);
            let parts = parts
                .into_iter()
                .map(|part| u32::try_from(part).unwrap_or(u32::MAX));
            let people = firm.iter().map(|one| one.person);
            Allotted {
                clone_name: clone.map(Into::into),
                supply,
                ready_on: lots().map(|lot| lot.ready_on).min(),
                ordered: firm
                    .iter()
                    .fold(0_u32, |sum, one| sum.saturating_add(one.plants)),
                shares: people.zip(parts).collect(),
            }
        });
        let allotted = allotted.filter(|one| one.supply > 0 || one.ordered > 0);
        let allotted = allotted.collect();
        self.figure(Name::Allotted, Window::ALL, allotted)
    }
}

/// A price shared by weight, in whole cents that add up to it.
fn by_weight(total: u64, grams: &[u64]) -> Vec<u64> {
    let all: u64 = grams.iter().sum();
    // The rule shares no more than is wanted; of a price per gram above one cent all is.
    let times = total.checked_div(all).unwrap_or(0).saturating_add(1);
    let wants: Vec<u64> = grams.iter().map(|one| one.saturating_mul(times)).collect();
    shares(total, &wants)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "weights are checked to be below what is cast"
)]
fn whole_grams(kilograms: f64) -> u64 {
    let grams = libm::round(kilograms * GRAMS_A_KILOGRAM);
    if (0.0..1e15).contains(&grams) {
        grams as u64
    } else {
        0
    }
}

#[cfg(test)]
mod tests {
    use proptest::{collection::vec, prelude::*};

    use super::{by_weight, whole_grams};

    /// Reckoned by hand: 11 bags of 36.50 are 401.50; of 514.06 kg these are 52.912, 24.986 and
    /// 22.103 %, and the cent that is left goes to the largest remainder.
    #[test]
    fn a_price_is_shared_by_weight() {
        let grams = [272.0, 128.44, 113.62].map(whole_grams);
        let shares = by_weight(40_150, &grams);
        assert_eq!(shares, [21_244, 10_032, 8_874]);
        assert_eq!(shares.iter().sum::<u64>(), 40_150);
        assert_eq!(by_weight(40_150, &[]), []);
        assert_eq!(by_weight(40_150, &[0]), [0]);
    }

    proptest! {
        #[test]
        fn cents_balance_to_zero(
            total in 0_u64..1_000_000_000, grams in vec(0_u64..10_000_000, 1..40)
        ) {
            let paid: u64 = by_weight(total, &grams).iter().sum();
            let anyone = grams.iter().any(|one| *one > 0);
            prop_assert_eq!(paid, if anyone { total } else { 0 });
        }
    }
}
