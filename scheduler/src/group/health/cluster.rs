//! Reports of one family that lie together in space and time.
//!
//! Near is transitive: a sickness that goes from farm to farm is one cluster, however far it has
//! come. What clears a block is deliberately absent: a sickness that was seen was there.

use alloc::{
    collections::{BTreeMap, BTreeSet},
    vec::Vec,
};

use budwood_parser::Ailment;
use chrono::NaiveDate;

use super::{Family, Rule, usual};
use crate::{
    group::trust,
    words::{
        event::Source,
        id::{BlockId, GroupId, PersonId},
        point::Point,
    },
};

/// The time before a cluster from which it is known what is usual.
const USUAL_DAYS: i64 = 365;

/// Half a report more than was told: nobody's telling of it does not make a sickness impossible
/// (H. Jeffreys' rule for a count).
const UNTOLD: f64 = 0.5;

/// Where a block lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Which block.
    pub block: BlockId,
    /// The group of its owner, that is, the village.
    pub group: Option<GroupId>,
    /// Its point, if it is known.
    pub point: Option<Point>,
}

impl Place {
    /// By the map where both are on it, else by the village.
    fn is_near(&self, other: &Self, rule: Rule) -> bool {
        match (self.point, other.point) {
            (Some(here), Some(there)) => here.kilometres_to(there) <= rule.kilometres,
            (Some(_) | None, None) | (None, Some(_)) => {
                self.block == other.block || (self.group.is_some() && self.group == other.group)
            }
        }
    }
}

/// A report of sick trees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sighting {
    /// Where.
    pub place: Place,
    /// Whose phone told it: people who share a phone count as one.
    pub teller: PersonId,
    /// How it is known.
    pub source: Source,
    /// What was seen.
    pub ailment: Ailment,
    /// When.
    pub on: NaiveDate,
    /// How many trees, if told. None at all is no sighting.
    pub trees: Option<u32>,
}

/// Reports that belong together.
#[derive(Clone, Debug, PartialEq)]
pub struct Cluster {
    /// Of which family.
    pub family: Family,
    /// The sign that most of them tell.
    pub ailment: Ailment,
    /// The first day.
    pub since: NaiveDate,
    /// The last day.
    pub last: NaiveDate,
    /// Reports of different blocks and from different phones.
    pub reports: usize,
    /// Where.
    pub places: Vec<Place>,
    /// Trees told, the most of each block.
    pub trees: u32,
    /// The chance of so many reports in a time like any other.
    pub chance: f64,
    /// How sure it is that something is there, all who told it together.
    pub certainty: f64,
    /// When to look again.
    pub recheck_on: NaiveDate,
}

impl Cluster {
    /// Whether a block is in it.
    #[must_use]
    pub fn holds(&self, block: BlockId) -> bool {
        self.places.iter().any(|place| place.block == block)
    }
}

/// The clusters that are going on today, the earliest first. The order of the sightings does not
/// matter, and one more never makes a cluster smaller.
#[must_use]
pub fn clusters(sightings: &[Sighting], today: NaiveDate) -> Vec<Cluster> {
    let mut by_family: BTreeMap<Family, Vec<&Sighting>> = BTreeMap::new();
    for sighting in sightings {
        if let Some(family) = Family::of(sighting.ailment)
            && sighting.trees != Some(0)
            && sighting.on <= today
        {
            by_family.entry(family).or_default().push(sighting);
        }
    }
    let mut found: Vec<Cluster> = Vec::new();
    for (family, mut all) in by_family {
        all.sort_by_key(|one| key(one));
        // The same told twice on a day is told once.
        all.dedup_by_key(|one| key(one));
        let together = components(&all, family.rule());
        found.extend(
            together
                .iter()
                .filter_map(|part| cluster(family, part, &all, today)),
        );
    }
    found.sort_by_key(|cluster| (cluster.since, cluster.family));
    found
}

/// Blocks near a cluster that are not in it. Their owners are told only when the adviser says so.
#[must_use]
pub fn neighbours(cluster: &Cluster, places: &[Place]) -> BTreeSet<BlockId> {
    let rule = cluster.family.rule();
    places
        .iter()
        .filter(|place| !cluster.holds(place.block))
        .filter(|place| cluster.places.iter().any(|sick| sick.is_near(place, rule)))
        .map(|place| place.block)
        .collect()
}

type Key = (
    NaiveDate,
    BlockId,
    PersonId,
    Source,
    Ailment,
    Option<u32>,
    Option<GroupId>,
);

fn key(one: &Sighting) -> Key {
    let Place { block, group, .. } = one.place;
    (
        one.on,
        block,
        one.teller,
        one.source,
        one.ailment,
        one.trees,
        group,
    )
}

/// Sightings that hang together by steps that are near in space and in time, each by day.
fn components<'a>(all: &[&'a Sighting], rule: Rule) -> Vec<Vec<&'a Sighting>> {
    let mut left: Vec<&Sighting> = all.to_vec();
    let mut found = Vec::new();
    while let Some(first) = left.pop() {
        let mut part = Vec::new();
        let mut open = Vec::from([first]);
        while let Some(one) = open.pop() {
            part.push(one);
            left.retain(|other| {
                let near = (one.on - other.on).num_days().abs() <= rule.days
                    && one.place.is_near(&other.place, rule);
                if near {
                    open.push(other);
                }
                !near
            });
        }
        part.sort_by_key(|one| key(one));
        found.push(part);
    }
    found
}

/// The cluster in a component, if enough of it falls into one span of days, and it goes on.
fn cluster(
    family: Family,
    part: &[&Sighting],
    all: &[&Sighting],
    today: NaiveDate,
) -> Option<Cluster> {
    let rule = family.rule();
    let last = part.last()?.on;
    if (today - last).num_days() > rule.days {
        return None;
    }
    let first_days: BTreeSet<NaiveDate> = part.iter().map(|one| one.on).collect();
    let since = first_days.into_iter().find(|first| {
        let in_span = part.iter().filter(|one| {
            let days = (one.on - *first).num_days();
            (0..=rule.days).contains(&days)
        });
        independent(in_span.copied()) >= rule.reports
    })?;
    let members: Vec<&Sighting> = part.iter().copied().filter(|one| one.on >= since).collect();
    let reports = independent(members.iter().copied());
    let mut by_block: BTreeMap<BlockId, (Place, u32)> = BTreeMap::new();
    for one in &members {
        let known = by_block.entry(one.place.block).or_insert((one.place, 0));
        known.1 = known.1.max(one.trees.unwrap_or(0));
    }
    Some(Cluster {
        family,
        ailment: commonest(&members)?,
        since,
        last,
        reports,
        trees: by_block
            .values()
            .map(|(_, trees)| *trees)
            .fold(0, u32::saturating_add),
        chance: chance(reports, &members, all, (since, last)),
        certainty: certainty(&members),
        places: by_block.into_values().map(|(place, _)| place).collect(),
        recheck_on: family.recheck_on(last),
    })
}

/// The most reports that can be picked so that no two share a block or a phone: a matching of
/// blocks with phones (H. W. Kuhn, Naval Research Logistics Quarterly 2, 1955). What was seen on
/// a visit needs no other phone.
fn independent<'a>(sightings: impl Iterator<Item = &'a Sighting>) -> usize {
    let mut seen: BTreeSet<BlockId> = BTreeSet::new();
    let mut tellers: BTreeMap<BlockId, BTreeSet<PersonId>> = BTreeMap::new();
    for one in sightings {
        if one.source == Source::Visit {
            seen.insert(one.place.block);
        } else {
            tellers
                .entry(one.place.block)
                .or_default()
                .insert(one.teller);
        }
    }
    tellers.retain(|block, _| !seen.contains(block));
    let mut taken: BTreeMap<PersonId, BlockId> = BTreeMap::new();
    for block in tellers.keys() {
        find_teller(*block, &tellers, &mut taken, &mut BTreeSet::new());
    }
    seen.len() + taken.len()
}

/// Gives a block a teller of its own; another block may have to take another one for it. It goes
/// as deep as there are blocks in a cluster.
fn find_teller(
    block: BlockId,
    tellers: &BTreeMap<BlockId, BTreeSet<PersonId>>,
    taken: &mut BTreeMap<PersonId, BlockId>,
    tried: &mut BTreeSet<PersonId>,
) -> bool {
    for teller in tellers.get(&block).into_iter().flatten() {
        if !tried.insert(*teller) {
            continue;
        }
        let is_free = match taken.get(teller).copied() {
            Some(other) => find_teller(other, tellers, taken, tried),
            None => true,
        };
        if is_free {
            taken.insert(*teller, block);
            return true;
        }
    }
    false
}

fn commonest(members: &[&Sighting]) -> Option<Ailment> {
    let mut blocks: BTreeMap<Ailment, BTreeSet<BlockId>> = BTreeMap::new();
    for one in members {
        blocks
            .entry(one.ailment)
            .or_default()
            .insert(one.place.block);
    }
    let most = blocks.values().map(BTreeSet::len).max()?;
    blocks
        .into_iter()
        .find(|(_, blocks)| blocks.len() == most)
        .map(|(ailment, _)| ailment)
}

/// Compares with the year before, near the cluster.
fn chance(
    reports: usize,
    members: &[&Sighting],
    all: &[&Sighting],
    (since, last): (NaiveDate, NaiveDate),
) -> f64 {
    let Some(rule) = members
        .first()
        .and_then(|one| Family::of(one.ailment))
        .map(Family::rule)
    else {
        return 1.0;
    };
    let mut earlier = UNTOLD;
    for one in all {
        let ago = (since - one.on).num_days();
        let near = || {
            members
                .iter()
                .any(|sick| sick.place.is_near(&one.place, rule))
        };
        if (1..=USUAL_DAYS).contains(&ago) && near() {
            earlier += 1.0;
        }
    }
    let days = (last - since).num_days().max(rule.days);
    #[expect(
        clippy::cast_precision_loss,
        reason = "a calendar has far fewer days than a decimal holds"
    )]
    let years = days as f64 / USUAL_DAYS as f64;
    usual::at_least(reports, earlier * years)
}

/// One witness for each block: the surest.
fn certainty(members: &[&Sighting]) -> f64 {
    let mut by_block: BTreeMap<BlockId, f64> = BTreeMap::new();
    for one in members {
        let known = by_block.entry(one.place.block).or_default();
        *known = known.max(trust::worth(one.source));
    }
    trust::together(by_block.into_values())
}

#[cfg(test)]
mod tests;
