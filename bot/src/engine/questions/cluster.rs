//! Sickness that gathers in a group: what the adviser is told when it begins, and when asked.
//!
//! Only the adviser is told: neighbours hear of it on the adviser's word alone.

use budwood_scheduler::{
    Block, BlockId, GroupId, MessageId, Person,
    figures::{Sick, is_sick},
    group::health::{Cluster, Family, Place, Sighting, clusters, neighbours},
};
use chrono::NaiveDate;

use super::block_facts::Look;
use crate::engine::view::View;

/// A sighting and the text that told it.
type Seen = (Option<MessageId>, Sighting);

impl View<'_> {
    /// The clusters of a group that go on today, the largest first.
    pub(crate) fn clusters_of(self, group: GroupId, today: NaiveDate) -> Vec<Cluster> {
        clusters_in(&self.sightings_of(group, today), today)
    }

    /// A cluster that this text makes in a group of what was none before it.
    pub(crate) fn cluster_begun(
        self,
        group: GroupId,
        text: MessageId,
        today: NaiveDate,
    ) -> Option<Cluster> {
        begun(&self.sightings_of(group, today), text, today)
    }

    /// Blocks of the adviser's groups with living trees, near a cluster and not in it.
    pub(crate) fn near(self, adviser: &Person, cluster: &Cluster) -> Vec<BlockId> {
        let directory = &self.world.directory;
        let places: Vec<Place> = directory
            .groups_of(adviser.id)
            .flat_map(|group| directory.members(group.id))
            .flat_map(|person| directory.blocks_of(person.id))
            .filter(|block| {
                let state = self.state(block.id);
                state.is_some_and(|state| state.alive() > 0)
            })
            .map(|block| self.place(block))
            .collect();
        neighbours(cluster, &places).into_iter().collect()
    }

    /// Who is in a cluster, with what was last told there of its family; not whose block is clear
    /// again.
    pub(crate) fn people_in(self, cluster: &Cluster, today: NaiveDate) -> Vec<Sick> {
        let days = 2 * cluster.family.rule().days;

        let directory = &self.world.directory;
        let in_cluster = |place: &Place| {
            let owner = directory.person(directory.block(place.block)?.owner)?;
            let state = self.state(place.block)?;
            let (ailment, count) = state
                .sick
                .iter()
                .filter(|(ailment, _)| Family::of(**ailment) == Some(cluster.family))
                .filter(|(ailment, count)| is_sick(state, **ailment, **count, today, days))
                .max_by_key(|(_, count)| count.on)?;
            Some(Sick {
                person: owner.id,
                ailment: *ailment,
                trees: count.trees,
            })
        };
        let mut people: Vec<Sick> = cluster.places.iter().filter_map(in_cluster).collect();
        people.sort_by_key(|one| std::cmp::Reverse(one.trees));
        people
    }

    /// Reports of sick trees in a group. Facts are read only where enough blocks tell of one
    /// family in a time that one cluster can span.
    fn sightings_of(self, group: GroupId, today: NaiveDate) -> Vec<Seen> {
        let directory = &self.world.directory;
        let sick: Vec<&Block> = directory
            .members(group)
            .flat_map(|person| directory.blocks_of(person.id))
            .filter(|block| {
                let state = self.state(block.id);
                state.is_some_and(|state| !state.sick.is_empty())
            })
            .collect();
        let families = [Family::Root, Family::Leaf, Family::Shoot, Family::Termites];
        let may_be_one = families.into_iter().any(|family| {
            let rule = family.rule();
            let told = sick.iter().filter(|block| {
                let state = self.state(block.id);
                let last = state.into_iter().flat_map(|state| &state.sick);
                last.filter(|(ailment, _)| Family::of(**ailment) == Some(family))
                    .any(|(_, count)| (today - count.on).num_days() <= 2 * rule.days)
            });
            told.count() >= rule.reports
        });
        if !may_be_one {
            return Vec::new();
        }
        sightings(&self.look(&sick))
    }
}

/// All that was seen on these blocks.
pub(crate) fn sightings(looks: &[(&Block, Look)]) -> Vec<Seen> {
    looks
        .iter()
        .flat_map(|(_, look)| look.sightings.iter().copied())
        .collect()
}

/// The clusters that go on today, the largest first.
pub(crate) fn clusters_in(seen: &[Seen], today: NaiveDate) -> Vec<Cluster> {
    let sightings: Vec<Sighting> = seen.iter().map(|(_, sighting)| *sighting).collect();
    let mut found = clusters(&sightings, today);
    found.sort_by_key(|cluster| std::cmp::Reverse(cluster.reports));
    found
}

/// A cluster that this text makes of what was none before it.
fn begun(seen: &[Seen], text: MessageId, today: NaiveDate) -> Option<Cluster> {
    let (new, before): (Vec<Seen>, Vec<Seen>) = seen
        .iter()
        .copied()
        .partition(|(message, _)| *message == Some(text));
    let known = clusters_in(&before, today);
    let is_known = |cluster: &Cluster| {
        let mut same = known.iter().filter(|one| one.family == cluster.family);
        same.any(|one| cluster.places.iter().any(|place| one.holds(place.block)))
    };
    let tells_of = |cluster: &Cluster| {
        let family = |sighting: &Sighting| Family::of(sighting.ailment) == Some(cluster.family);
        let mut told = new.iter().filter(|(_, one)| family(one));
        told.any(|(_, one)| cluster.holds(one.place.block))
    };
    clusters_in(seen, today)
        .into_iter()
        .find(|cluster| tells_of(cluster) && !is_known(cluster))
}
