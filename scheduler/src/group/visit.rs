//! Whom to visit first, and why.
//!
//! A score puts people in order: trees at risk, times how bad the sign is, times how sure it is;
//! and a point for each day of an unusual silence, of a job late, of a deadline near. All weights
//! are own rules. The score itself is shown to nobody: the reason is, and the adviser decides.
//! Deliberately absent: roads, and what the adviser promised; neither is known.

use alloc::vec::Vec;

use budwood_parser::Ailment;

use crate::{
    group::silence::Silence,
    words::{id::PersonId, job::TaskKind},
};

/// Sick trees where no number was told: own rule.
const UNCOUNTED_TREES: u32 = 5;

/// Losses of less than this share are as usual: own rule. Handbooks reckon with about a tenth for
/// infilling.
const LOST_PCT: u32 = 10;

/// A job that was nudged for in vain gets so many points more: nothing else will move it.
const IN_VAIN: f64 = 20.0;

/// A job gets no more points by being later than this: it is then given up, not urgent.
const LATE_DAYS_MAX: i64 = 60;

/// Deadlines further off than this do not press.
const DEADLINE_DAYS: i64 = 30;

/// What is known of one farmer.
#[derive(Clone, Debug, PartialEq)]
pub struct Findings {
    /// Who.
    pub person: PersonId,
    /// Sickness told lately.
    pub sick: Vec<Sick>,
    /// Trees that died and were not replaced.
    pub lost: Option<Lost>,
    /// The silence, if anything is due; else it is none of our business.
    pub silence: Option<Silence>,
    /// Jobs that are open.
    pub jobs: Vec<Job>,
}

/// A sickness on one block.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sick {
    /// What.
    pub ailment: Ailment,
    /// On how many trees, if told.
    pub trees: Option<u32>,
    /// Living trees of the block.
    pub alive: u32,
    /// How sure it is, from 0 to 1.
    pub certainty: f64,
    /// Reports of the cluster that it belongs to.
    pub cluster: Option<usize>,
}

/// Losses of one farmer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lost {
    /// Gaps.
    pub trees: u32,
    /// Of so many planted.
    pub planted: u32,
    /// How sure it is, from 0 to 1.
    pub certainty: f64,
}

/// An open job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Job {
    /// Which.
    pub task: TaskKind,
    /// Days late; 0 when it is not.
    pub late_days: i64,
    /// Every nudge for it was given.
    pub in_vain: bool,
    /// Days until there is no point in it any more.
    pub ends_in: Option<i64>,
}

/// Why to visit somebody.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// Part of a cluster.
    Cluster {
        /// Of what.
        ailment: Ailment,
        /// Of so many reports.
        reports: usize,
    },
    /// Sick trees.
    Sick {
        /// With what.
        ailment: Ailment,
        /// How many, if told.
        trees: Option<u32>,
    },
    /// Many trees died.
    Lost {
        /// Of those planted, in per cent.
        pct: u32,
    },
    /// Nothing is heard.
    Silent {
        /// For so many days.
        days: i64,
    },
    /// A job is late.
    Late {
        /// Which.
        task: TaskKind,
        /// For so many days.
        days: i64,
        /// Every nudge for it was given.
        in_vain: bool,
    },
    /// A job has an end that is near.
    Ending {
        /// Which.
        task: TaskKind,
        /// Days left.
        days: i64,
    },
}

/// Somebody to visit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Visit {
    /// Who.
    pub person: PersonId,
    /// How pressing it is, beside others.
    pub score: f64,
    /// What weighs most.
    pub reason: Reason,
}

/// The visit list, most pressing first. Who has nothing against them is not on it.
#[must_use]
pub fn visits(findings: &[Findings]) -> Vec<Visit> {
    let mut list: Vec<Visit> = findings.iter().filter_map(visit).collect();
    list.sort_by(|one, two| {
        let pressing = two.score.total_cmp(&one.score);
        pressing.then(one.person.cmp(&two.person))
    });
    list
}

fn visit(findings: &Findings) -> Option<Visit> {
    let mut score = 0.0;
    let mut most: Option<(f64, Reason)> = None;
    for (points, reason) in reasons(findings) {
        score += points;
        if points > 0.0 && most.is_none_or(|(before, _)| points > before) {
            most = Some((points, reason));
        }
    }
    most.map(|(_, reason)| Visit {
        person: findings.person,
        score,
        reason,
    })
}

fn reasons(findings: &Findings) -> impl Iterator<Item = (f64, Reason)> {
    let sick = findings.sick.iter().map(of_sickness);
    let lost = findings.lost.iter().filter_map(of_losses);
    let silent = findings.silence.iter().filter_map(of_silence);
    let jobs = findings.jobs.iter().filter_map(of_job);
    sick.chain(lost).chain(silent).chain(jobs)
}

/// In a cluster every tree of the block is at risk.
fn of_sickness(sick: &Sick) -> (f64, Reason) {
    let told = sick.trees.unwrap_or(UNCOUNTED_TREES);
    let (trees, reason) = match sick.cluster {
        Some(reports) => (
            told.max(sick.alive),
            Reason::Cluster {
                ailment: sick.ailment,
                reports,
            },
        ),
        None => (
            told,
            Reason::Sick {
                ailment: sick.ailment,
                trees: sick.trees,
            },
        ),
    };
    let points = f64::from(trees) * severity(sick.ailment) * sick.certainty;
    (points, reason)
}

/// Root disease kills the tree and its neighbours; leaves grow again.
const fn severity(ailment: Ailment) -> f64 {
    match ailment {
        Ailment::WhiteRoot => 3.0,
        Ailment::LeafFall | Ailment::Pink | Ailment::Dieback => 2.0,
        Ailment::LeafSpot | Ailment::Mildew | Ailment::Termites | Ailment::Other => 1.0,
    }
}

fn of_losses(lost: &Lost) -> Option<(f64, Reason)> {
    let pct = u64::from(lost.trees).saturating_mul(100);
    let pct = pct.checked_div(u64::from(lost.planted))?;
    let pct = u32::try_from(pct).unwrap_or(u32::MAX);
    let points = f64::from(lost.trees) * lost.certainty;
    (pct >= LOST_PCT).then_some((points, Reason::Lost { pct }))
}

fn of_silence(silence: &Silence) -> Option<(f64, Reason)> {
    let days = silence.days;
    silence.is_unusual().then(|| {
        (
            points(days) * (1.0 - silence.chance),
            Reason::Silent { days },
        )
    })
}

fn of_job(job: &Job) -> Option<(f64, Reason)> {
    let pressing = job
        .ends_in
        .filter(|left| (0..=DEADLINE_DAYS).contains(left))
        .map_or(0, |left| DEADLINE_DAYS - left);
    let late = job.late_days.clamp(0, LATE_DAYS_MAX);
    let in_vain = if job.in_vain { IN_VAIN } else { 0.0 };
    let reason = match job.ends_in {
        Some(days) if pressing > late => Reason::Ending {
            task: job.task,
            days,
        },
        Some(_) | None => Reason::Late {
            task: job.task,
            days: job.late_days.max(0),
            in_vain: job.in_vain,
        },
    };
    let sum = points(late) + points(pressing) + in_vain;
    (sum > 0.0).then_some((sum, reason))
}

#[expect(
    clippy::cast_precision_loss,
    reason = "a calendar has far fewer days than a decimal holds"
)]
const fn points(days: i64) -> f64 {
    days as f64
}

#[cfg(test)]
mod tests {
    use budwood_parser::Ailment;
    use proptest::prelude::*;
    use std::{vec, vec::Vec};

    use super::{Findings, Job, Lost, Reason, Sick, visits};
    use crate::{
        group::{
            silence::{Habit, silence},
            trust::worth,
        },
        words::{event::Source, id::PersonId, job::TaskKind},
    };

    fn nothing(person: u32) -> Findings {
        Findings {
            person: PersonId(person),
            sick: Vec::new(),
            lost: None,
            silence: None,
            jobs: Vec::new(),
        }
    }

    /// The list that an adviser would make: first the leaf cluster, then who lost 31 %, then who
    /// is silent for 64 days and has gaps, last a job that is a little late. Common practice.
    #[test]
    fn the_adviser_s_own_order() {
        let siti = Findings {
            sick: vec![Sick {
                ailment: Ailment::LeafSpot,
                trees: Some(12),
                alive: 300,
                certainty: worth(Source::OwnText),
                cluster: Some(3),
            }],
            ..nothing(4)
        };
        let budi = Findings {
            lost: Some(Lost {
                trees: 155,
                planted: 500,
                certainty: worth(Source::Visit),
            }),
            ..nothing(3)
        };
        let awa = Findings {
            lost: Some(Lost {
                trees: 60,
                planted: 500,
                certainty: worth(Source::OwnText),
            }),
            silence: Some(silence(
                Habit {
                    gaps: 20,
                    days: 140,
                },
                Habit::default(),
                64,
            )),
            ..nothing(2)
        };
        let tim = Findings {
            jobs: vec![Job {
                task: TaskKind::GirthCensus,
                late_days: 5,
                in_vain: false,
                ends_in: None,
            }],
            ..nothing(1)
        };
        let list = visits(&[nothing(9), tim, awa, budi, siti]);
        let shown: Vec<(u32, Reason)> = list
            .iter()
            .map(|visit| (visit.person.0, visit.reason))
            .collect();
        let cluster = Reason::Cluster {
            ailment: Ailment::LeafSpot,
            reports: 3,
        };
        let late = Reason::Late {
            task: TaskKind::GirthCensus,
            days: 5,
            in_vain: false,
        };
        assert_eq!(
            shown,
            [
                (4, cluster),
                (3, Reason::Lost { pct: 31 }),
                (2, Reason::Silent { days: 64 }),
                (1, late),
            ]
        );
    }

    #[test]
    fn a_usual_silence_and_usual_losses_are_no_reason() {
        let calm = Findings {
            silence: Some(silence(Habit::default(), Habit::default(), 64)),
            lost: Some(Lost {
                trees: 40,
                planted: 500,
                certainty: 0.95,
            }),
            ..nothing(1)
        };
        assert_eq!(visits(&[calm]), []);
    }

    #[test]
    fn a_deadline_presses_more_the_nearer_it_is() {
        let ends_in = |person, left| Findings {
            jobs: vec![Job {
                task: TaskKind::Backfill,
                late_days: 0,
                in_vain: false,
                ends_in: Some(left),
            }],
            ..nothing(person)
        };
        let list = visits(&[
            ends_in(1, 25),
            ends_in(2, 3),
            ends_in(3, 90),
            ends_in(4, -2),
        ]);
        let shown: Vec<u32> = list.iter().map(|visit| visit.person.0).collect();
        assert_eq!(shown, [2, 1]);
    }

    proptest! {
        #[test]
        fn order_of_people_does_not_matter(sick in prop::collection::vec((0..9_u32, 0..90_u32), 0..20)) {
            let mut findings: Vec<Findings> = sick
                .into_iter()
                .enumerate()
                .map(|(at, (alive, trees))| Findings {
                    sick: vec![Sick {
                        ailment: Ailment::Pink,
                        trees: Some(trees / 10),
                        alive,
                        certainty: 0.6,
                        cluster: None,
                    }],
                    ..nothing(u32::try_from(at).unwrap())
                })
                .collect();
            let there = visits(&findings);
            findings.reverse();
            prop_assert_eq!(there, visits(&findings));
        }
    }
}
