//! What has to be bought: fertiliser that is due, and plants.

use alloc::{collections::BTreeMap, string::String, vec::Vec};
use core::cmp::Reverse;

use chrono::{Datelike, NaiveDate};

use super::{Farmer, Figure, Name, Stand, Table, Window};
use crate::{
    handbook::calendar::Calendar,
    jobs::{
        feed::{BAG_KG, Bags, bags},
        orders::{order_by, plants_to_order, usual_lead_days},
        task::Task,
    },
    plan,
    words::{id::PersonId, job::TaskKind},
};

/// Fertiliser of the rounds that are due.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Feed {
    /// Kilograms of each farmer, most first.
    pub shares: Vec<(PersonId, f64)>,
    /// Kilograms of each product, most first: a bag holds one of them.
    pub products: Vec<(String, f64)>,
    /// Trees that are fed.
    pub trees: u32,
    /// Bags together and alone; none where it is more than can be counted.
    pub bags: Option<Bags>,
}

impl Feed {
    /// Kilograms of all.
    #[must_use]
    pub fn kilograms(&self) -> f64 {
        self.shares.iter().map(|(_, kilograms)| kilograms).sum()
    }
}

/// Plants for a planting to come.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// For whom.
    pub person: PersonId,
    /// Of which clone, if it is told.
    pub clone_name: Option<String>,
    /// Places to plant.
    pub points: u32,
    /// Plants for them, with spares and what is lost on the way.
    pub plants: u32,
    /// The land.
    pub hectares: f64,
    /// The day on which planting is meant to begin.
    pub planned_on: NaiveDate,
    /// The last day on which to order.
    pub order_by: Option<NaiveDate>,
    /// Whether they were ordered; else they are wished.
    pub is_firm: bool,
    /// Plants that came for them already.
    pub received: u32,
}

impl Table<'_> {
    /// Fertiliser of the rounds that are due.
    #[must_use]
    pub fn feed_due(&self) -> Figure<Feed> {
        let mut feed = Feed::default();
        for farmer in &self.farmers {
            let (kilograms, trees) = farmer.feed_due();
            if kilograms > 0.0 {
                feed.shares.push((farmer.person.id, kilograms));
                feed.trees = feed.trees.saturating_add(trees);
            }
        }
        feed.products = self.products_due();
        feed.bags = bags(feed.shares.iter().map(|(_, kilograms)| *kilograms), BAG_KG);
        feed.shares
            .sort_by(|(_, one), (_, other)| other.total_cmp(one));
        self.figure(Name::Feed, Window::ALL, feed)
    }

    fn products_due(&self) -> Vec<(String, f64)> {
        let jobs = self.farmers.iter().flat_map(Farmer::feeds_due);
        let rations = jobs.flat_map(|job| &job.figures.rations);
        let mut sums: BTreeMap<&str, f64> = BTreeMap::new();
        for portion in rations.flat_map(|ration| &ration.products) {
            *sums.entry(&portion.product).or_default() += portion.kilograms;
        }
        let sums = sums
            .into_iter()
            .map(|(name, sum)| (String::from(name), sum));
        let mut products: Vec<(String, f64)> = sums.collect();
        products.sort_by(|(_, one), (_, other)| other.total_cmp(one));
        products
    }

    /// Plants for plantings to come, of one year or of all, the first first.
    #[must_use]
    pub fn wanted(&self, year: Option<i32>) -> Figure<Vec<Wanted>> {
        let farmers = self.farmers.iter();
        let all = farmers.flat_map(|farmer| {
            let stands = farmer.stands.iter();
            stands.filter_map(|stand| farmer.wanted(stand, farmer.calendar?))
        });
        let mut wanted: Vec<Wanted> = all
            .filter(|one| year.is_none_or(|year| one.planned_on.year() == year))
            .collect();
        wanted.sort_by_key(|one| one.planned_on);
        self.figure(Name::Wanted, Window::ALL, wanted)
    }
}

impl Farmer<'_> {
    /// Kilograms of the rounds that are due, and the trees that get them.
    #[must_use]
    pub fn feed_due(&self) -> (f64, u32) {
        let due = self.feeds_due();
        let (mut kilograms, mut trees) = (0.0, 0_u32);
        for job in due {
            kilograms += job.figures.kilograms_in_all();
            trees = trees.saturating_add(job.figures.trees_fed());
        }
        (kilograms, trees)
    }

    /// The rounds of feeding that are due.
    fn feeds_due(&self) -> impl Iterator<Item = &Task> {
        let jobs = self.stands.iter().flat_map(|stand| self.jobs(stand));
        jobs.filter(|job| job.kind == TaskKind::Feed && job.due <= self.today)
    }

    fn wanted(&self, stand: &Stand<'_>, calendar: &Calendar) -> Option<Wanted> {
        let planned_on = stand.block.planned_on?;
        if stand.state.planted() > 0 || self.is_in_peace() {
            return None;
        }
        let points = plan::points_of(stand.block, calendar)?.ok()?;
        let order = &calendar.order;
        let lead_days = usual_lead_days(order);
        Some(Wanted {
            person: self.person.id,
            clone_name: stand.block.clone_name.clone(),
            points,
            plants: plants_to_order(points, order.spares_pct, order.transit_loss_pct)?,
            hectares: stand.block.hectares()?,
            planned_on,
            order_by: lead_days.and_then(|days| order_by(planned_on, days, order.slack_days)),
            received: stand.state.plants_received,
            is_firm: stand.state.done.contains_key(&TaskKind::OrderPlants),
        })
    }
}

/// Plants by clone and day of planting, most first.
#[must_use]
pub fn by_clone(wanted: &[Wanted]) -> Vec<(Option<&str>, NaiveDate, u32)> {
    let mut sums: BTreeMap<(NaiveDate, Option<&str>), u32> = BTreeMap::new();
    for one in wanted {
        let sum = sums
            .entry((one.planned_on, one.clone_name.as_deref()))
            .or_default();
        *sum = sum.saturating_add(one.plants);
    }
    let sums = sums.into_iter();
    let mut sums: Vec<_> = sums
        .map(|((day, clone), plants)| (clone, day, plants))
        .collect();
    sums.sort_by_key(|(_, _, plants)| Reverse(*plants));
    sums
}
