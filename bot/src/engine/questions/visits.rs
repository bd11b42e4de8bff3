//! Whom the adviser should visit first: gathers what the scheduler puts in order.

use std::collections::BTreeMap;

use budwood_scheduler::{
    Block, Consent, Group, Person, PersonId, Source,
    figures::{Farmer, SICK_DAYS, is_farmer, is_sick},
    group::{
        health::{Cluster, Family},
        silence::{Habit, Silence, silence},
        trust::{self, Evidence},
        visit::{Findings, Job, Lost, Reason, Sick, Visit, visits},
    },
};
use chrono::NaiveDate;

use super::{
    adviser::left_in_peace,
    block_facts::Look,
    cluster::{clusters_in, sightings},
    figures::Names,
    tasks::season_of,
};
use crate::{
    args,
    engine::view::View,
    wording::{Key, Phrase, Value, visit},
};

/// What the facts tell of each farmer of a group.
type Looks<'a> = BTreeMap<PersonId, Vec<(&'a Block, Look)>>;

impl<'a> View<'a> {
    /// Whom to visit first, with the reason; of all groups when none is named.
    pub(crate) fn visit_list(self, speaker: &Person, only: Option<&'a Group>) -> Phrase {
        let groups: Vec<&Group> = match only {
            Some(group) => vec![group],
            None => self.groups_of(speaker).collect(),
        };
        let names = Names::of(self, groups.iter().copied());
        let findings = groups.iter().flat_map(|group| self.findings_of(group));
        let findings: Vec<Findings> = findings.collect();
        let list: Vec<(String, Reason)> = visits(&findings)
            .into_iter()
            .map(|visit| (names.shown(visit.person), visit.reason))
            .collect();
        let peace = match only {
            Some(group) => left_in_peace(&self.table(group)),
            None => left_in_peace(&self.table_of(speaker)),
        };
        if list.is_empty() {
            return Phrase::new(Key::VisitNone, args! { "peace" => peace });
        }
        let people = list.iter().map(|(name, reason)| visit(name, reason).into());
        let people: Vec<Value> = people.collect();
        Phrase::new(
            Key::VisitList,
            args! { "people" => people, "peace" => peace },
        )
    }

    /// Whom to visit in a group, the first first.
    pub(super) fn visits_in(self, group: &Group) -> Vec<Visit> {
        visits(&self.findings_of(group))
    }

    /// How many there are to visit.
    pub(crate) fn to_visit(self, speaker: &Person) -> usize {
        let groups = self.groups_of(speaker);
        let findings: Vec<Findings> = groups.flat_map(|group| self.findings_of(group)).collect();
        visits(&findings).len()
    }

    pub(super) fn findings_of(self, group: &Group) -> Vec<Findings> {
        let today = self.today_in(group);
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
                let farmer = self.farmer(person);
                Findings {
                    person: person.id,
                    sick: self.sick_of(looks, &clusters, today),
                    lost: self.lost_of(looks, today),
                    silence: silence_of(&farmer, (habit(person.id), all)),
                    jobs: self.open_jobs_of(&farmer),
                }
            })
            .collect()
    }

    /// What was seen on a visit waits until it is time to look again.
    fn sick_of(
        self,
        looks: &[(&Block, Look)],
        clusters: &[Cluster],
        today: NaiveDate,
    ) -> Vec<Sick> {
        let mut found = Vec::new();
        for (block, look) in looks {
            let Some(state) = self.state(block.id) else {
                continue;
            };
            for (ailment, count) in &state.sick {
                let family = Family::of(*ailment);
                let days = family.map_or(SICK_DAYS, |family| family.rule().days);
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
                if visited || !is_sick(state, *ailment, *count, today, days) {
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
    fn lost_of(self, looks: &[(&Block, Look)], today: NaiveDate) -> Option<Lost> {
        let states = looks.iter().filter_map(|(block, look)| {
            let state = self.state(block.id)?;
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

    fn open_jobs_of(self, farmer: &Farmer<'_>) -> Vec<Job> {
        let mut open = Vec::new();
        for stand in &farmer.stands {
            let due = farmer
                .jobs(stand)
                .iter()
                .filter(|task| task.due <= farmer.today);
            for task in due.filter(|task| !task.only_tells()) {
                let late = farmer.late_job(stand, task, &self.setup.rules);
                open.push(Job {
                    task: task.kind,
                    late_days: late.map_or(0, |late| late.days),
                    in_vain: late.is_some_and(|late| late.in_vain),
                    ends_in: task.ends.map(|end| (end - farmer.today).num_days()),
                });
            }
        }
        open
    }
}

/// Of who never told anything since they agreed to be texted.
fn silence_of(farmer: &Farmer<'_>, (own, group): (Habit, Habit)) -> Option<Silence> {
    if !farmer.is_expected() {
        return None;
    }
    let agreed = match &farmer.person.consent {
        Consent::Given { on, .. } => Some(*on),
        Consent::Unknown | Consent::Withdrawn { .. } => None,
    };
    let since = farmer.heard_on().max(agreed)?;
    let days = (farmer.today - since).num_days();
    Some(silence(own, group, days))
}
