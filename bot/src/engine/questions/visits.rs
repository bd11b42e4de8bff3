//! Whom the adviser should visit first: gathers what the scheduler puts in order.

use std::collections::BTreeMap;

use budwood_scheduler::{
    Block, Consent, Group, Person, PersonId, Source,
    group::{
        health::{Cluster, Family},
        silence::{Habit, Silence, silence},
        trust::{self, Evidence},
        visit::{Findings, Job, Lost, Reason, Sick, visits},
    },
};
use chrono::NaiveDate;

use super::{
    block_facts::Look,
    cluster::{clusters_in, sightings},
    summary::{Names, is_expected, is_farmer, last_heard, late_item},
};
use crate::{
    args,
    engine::{
        deeds::due_index::{season_of, tasks_of},
        step::{Step, civil_day, zone},
    },
    wording::Key,
    words::limits,
};

/// What the facts tell of each farmer of a group.
type Looks<'a> = BTreeMap<PersonId, Vec<(&'a Block, Look)>>;

impl Step<'_> {
    /// Whom to visit first, with the reason; of all groups when none is named.
    pub(crate) fn visit_list(&self, speaker: &Person, only: Option<&Group>) -> String {
        let groups: Vec<&Group> = match only {
            Some(group) => vec![group],
            None => self.world.directory.groups_of(speaker.id).collect(),
        };
        let mut names: BTreeMap<PersonId, String> = BTreeMap::new();
        let mut findings: Vec<Findings> = Vec::new();
        for group in groups {
            let called = Names::of(self.world, group.id);
            for (person, looks) in self.findings_of(group) {
                names.insert(person.id, called.shown(person).to_owned());
                findings.push(looks);
            }
        }
        let list: Vec<(String, Reason)> = visits(&findings)
            .into_iter()
            .filter_map(|visit| Some((names.get(&visit.person)?.clone(), visit.reason)))
            .collect();
        let tongue = self.tongue(speaker);
        if list.is_empty() {
            return tongue.whole(Key::VisitNone, args! {});
        }
        tongue.people(
            &list,
            |(name, reason), length| tongue.visit(name, reason, length),
            |people| tongue.say(Key::VisitList, args! { "people" => people }),
        )
    }

    fn findings_of(&self, group: &Group) -> Vec<(&Person, Findings)> {
        let today = civil_day(self.now, zone(group, self.setup));
        let directory = &self.world.directory;
        let farmers = || directory.members(group.id).filter(|one| is_farmer(one));
        let blocks: Vec<&Block> = farmers()
            .flat_map(|person| directory.blocks_of(person.id))
            .collect();
        let looks = self.look(&blocks);
        let clusters = clusters_in(&sightings(&looks), today);
        let mut by_person: Looks<'_> = BTreeMap::new();
        for (block, look) in looks {
            by_person
                .entry(block.owner)
                .or_default()
                .push((block, look));
        }
        let habit = |person: PersonId| {
            let heard: Vec<NaiveDate> = by_person
                .get(&person)
                .into_iter()
                .flatten()
                .flat_map(|(_, look)| look.heard.iter().copied())
                .collect();
            Habit::of(&heard, season_of(group), today)
        };
        let all = farmers().fold(Habit::default(), |sum, one| sum.with(habit(one.id)));
        farmers()
            .map(|person| {
                let looks = by_person.get(&person.id).map_or(&[][..], Vec::as_slice);
                let findings = Findings {
                    person: person.id,
                    sick: self.sick_of(looks, &clusters, today),
                    lost: self.lost_of(looks, today),
                    silence: self.silence_of(person, (habit(person.id), all), today),
                    jobs: self.open_jobs_of(person, today),
                };
                (person, findings)
            })
            .collect()
    }

    /// What was seen on a visit waits until it is time to look again.
    fn sick_of(
        &self,
        looks: &[(&Block, Look)],
        clusters: &[Cluster],
        today: NaiveDate,
    ) -> Vec<Sick> {
        let mut found = Vec::new();
        for (block, look) in looks {
            let Some(state) = self.world.states.get(&block.id) else {
                continue;
            };
            for (ailment, count) in &state.sick {
                let family = Family::of(*ailment);
                let days = family.map_or(limits::SICK_DAYS, |family| family.rule().days);
                let of_this = look
                    .sightings
                    .iter()
                    .map(|(_, sighting)| sighting)
                    .filter(|sighting| sighting.ailment == *ailment);
                let visited = of_this
                    .clone()
                    .filter(|sighting| sighting.source == Source::Visit)
                    .any(|sighting| {
                        sighting.on >= count.on
                            && family.is_some_and(|family| today < family.recheck_on(sighting.on))
                    });
                let over = count.trees == Some(0) || (today - count.on).num_days() > days;
                if over || visited {
                    continue;
                }
                let told: Vec<Evidence> = of_this
                    .map(|sighting| Evidence {
                        source: sighting.source,
                        on: sighting.on,
                        figure: sighting.trees.unwrap_or(0),
                        sample: None,
                    })
                    .collect();
                let own = trust::weigh(&told, today).map_or(0.0, |trust| trust.certainty);
                let cluster = clusters
                    .iter()
                    .find(|one| Some(one.family) == family && one.holds(block.id));
                found.push(Sick {
                    ailment: *ailment,
                    trees: count.trees,
                    alive: state.alive(),
                    certainty: cluster.map_or(own, |cluster| own.max(cluster.certainty)),
                    cluster: cluster.map(|cluster| cluster.reports),
                });
            }
        }
        found
    }

    /// Losses of all blocks, as sure as the count of the block that lost most.
    fn lost_of(&self, looks: &[(&Block, Look)], today: NaiveDate) -> Option<Lost> {
        let states = looks.iter().filter_map(|(block, look)| {
            let state = self.world.states.get(&block.id)?;
            Some((state.gaps(), state.planted(), look))
        });
        let (mut trees, mut planted) = (0_u32, 0_u32);
        for (gaps, all, _) in states.clone() {
            trees = trees.saturating_add(gaps);
            planted = planted.saturating_add(all);
        }
        let (_, _, worst) = states.max_by_key(|(gaps, _, _)| *gaps)?;
        let counted = worst.counted?;
        (trees > 0).then(|| Lost {
            trees,
            planted,
            certainty: trust::certainty(&counted, today),
        })
    }

    /// Of who never told anything since they agreed to be texted.
    fn silence_of(
        &self,
        person: &Person,
        (own, group): (Habit, Habit),
        today: NaiveDate,
    ) -> Option<Silence> {
        if !is_expected(self.world, self.setup, person, today) {
            return None;
        }
        let agreed = match &person.consent {
            Consent::Given { on, .. } => Some(*on),
            Consent::Unknown | Consent::Withdrawn { .. } => None,
        };
        let since = last_heard(self.world, self.setup, person.id).max(agreed)?;
        Some(silence(own, group, (today - since).num_days()))
    }

    fn open_jobs_of(&self, person: &Person, today: NaiveDate) -> Vec<Job> {
        let blocks = self.world.directory.blocks_of(person.id);
        blocks
            .flat_map(|block| tasks_of(self.world, self.setup, block.id, today))
            .filter(|task| task.due <= today && !task.only_tells())
            .map(|task| {
                let late = late_item(self.world, self.setup, "", &task, today);
                Job {
                    task: task.kind,
                    late_days: late.as_ref().map_or(0, |late| late.days),
                    in_vain: late.is_some_and(|late| late.told),
                    ends_in: task.ends.map(|end| (end - today).num_days()),
                }
            })
            .collect()
    }
}
