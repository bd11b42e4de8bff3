//! Facts in words: what was stored and how the block stands after it.

use budwood_parser::{Ailment, Cause, Details, Kind, Supply, Wetness};
use budwood_scheduler::{BlockState, decide::Draft};
use chrono::NaiveDate;

use super::{Key, Tongue, fit::short};
use crate::args;

/// Facts of one text about one block.
#[derive(Clone, Copy, Debug)]
pub struct Said<'a> {
    /// The block.
    pub block: &'a str,
    /// The facts.
    pub facts: &'a [&'a Draft],
    /// The day of sending, which need not be said.
    pub today: NaiveDate,
}

/// What is to be said about the block after the facts.
#[derive(Clone, Copy, Debug)]
pub struct After<'a> {
    /// How it stands.
    pub state: &'a BlockState,
    /// Planting points that the area holds.
    pub points: Option<u32>,
    /// When the same job comes again.
    pub next: Option<NaiveDate>,
    /// When the stand will likely be ready for opening.
    pub ready: Option<Ready>,
    /// Who is told of sickness and harm.
    pub adviser: &'a str,
}

/// What a census says of opening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ready {
    /// The handbook's rule is met: the adviser looks before anyone taps.
    MeetsRule,
    /// Close: only all trees, or the adviser, can tell.
    Close,
    /// Later: not likely before the first day, nor after the second.
    Between(NaiveDate, NaiveDate),
}

/// Whether a text has room for more than its facts and how to answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Room {
    Enough,
    /// For the shorter of two things to say of the block.
    Less,
    Scarce,
}

impl Tongue<'_> {
    /// "B: 8 more dead, 16 in all, 104 of 120 alive. Wrong? Text NO".
    #[must_use]
    pub fn read_back(&self, said: Said<'_>, after: After<'_>) -> String {
        if said.facts.iter().all(|fact| fact.kind == Kind::Rain) {
            return self.with_facts(said, |facts, _, _| {
                self.say(Key::ReadBackRain, args! { "facts" => facts })
            });
        }
        self.with_stand(Key::ReadBack, None, said, after)
    }

    /// The same after a correction; `old` is the block that it was moved from.
    #[must_use]
    pub fn changed(&self, old: Option<&str>, said: Said<'_>, after: After<'_>) -> String {
        self.with_stand(
            if old.is_some() {
                Key::Moved
            } else {
                Key::Changed
            },
            old,
            said,
            after,
        )
    }

    fn with_stand(&self, key: Key, old: Option<&str>, said: Said<'_>, after: After<'_>) -> String {
        self.with_facts(said, |facts, length, room| {
            let after = After {
                adviser: &short(after.adviser, length),
                ..after
            };
            let stand = match room {
                Room::Enough => self
                    .outlook(said, after)
                    .unwrap_or_else(|| self.stand(said, after)),
                Room::Less => self.stand(said, after),
                Room::Scarce => self.caution(said, after).unwrap_or_default(),
            };
            self.say(
                key,
                args! {
                    "block" => short(said.block, length),
                    "old" => short(old.unwrap_or_default(), length),
                    "facts" => facts,
                    "stand" => stand,
                },
            )
        })
    }

    /// "planted 120 on Fri 13 Jun, 8 more dead".
    #[must_use]
    pub fn clauses(&self, said: Said<'_>) -> String {
        self.some_clauses(said, said.facts.len())
    }

    fn some_clauses(&self, said: Said<'_>, shown: usize) -> String {
        let mut clauses: Vec<String> = said
            .facts
            .iter()
            .take(shown)
            .map(|fact| self.dated(fact, said.today))
            .collect();
        let left = said.facts.len() - clauses.len();
        if left > 0 {
            clauses.push(self.say(Key::More, args! { "count" => left }));
        }
        clauses.join(", ")
    }

    /// A text around facts. Of many facts the last ones are only counted, so that how to answer
    /// is never cut off.
    pub(super) fn with_facts(
        &self,
        said: Said<'_>,
        whole: impl Fn(String, usize, Room) -> String,
    ) -> String {
        let with = |(shown, room): (usize, Room)| {
            let whole = &whole;
            move |length| whole(self.some_clauses(said, shown), length, room)
        };
        let enough = (1..=said.facts.len())
            .rev()
            .map(|shown| (shown, Room::Enough));
        enough
            .chain([(1, Room::Less), (1, Room::Scarce)])
            .find_map(|attempt| self.one_sms(with(attempt)).ok())
            .unwrap_or_else(|| self.fit(with((0, Room::Scarce))))
    }

    fn dated(&self, fact: &Draft, today: NaiveDate) -> String {
        let clause = self.clause(fact.kind, &fact.details);
        if fact.on.from == today && fact.on.to == today {
            return clause;
        }
        self.say(
            Key::ClauseOn,
            args! { "clause" => clause, "day" => self.happened(fact.on) },
        )
    }

    /// What one fact says, without block and date.
    #[must_use]
    pub fn clause(&self, kind: Kind, details: &Details) -> String {
        let count = details.count;
        let counted = |key: Key, uncounted: Key| match count {
            Some(count) => self.say(key, args! { "count" => count }),
            None => self.say(uncounted, args! {}),
        };
        match kind {
            Kind::Cleared => self.say(Key::SaidCleared, args! {}),
            Kind::Lined => counted(Key::SaidLinedCount, Key::SaidLined),
            Kind::HolesDug => counted(Key::SaidHolesDug, Key::BareHolesDug),
            Kind::Received => self.received(details),
            Kind::Planted => counted(Key::SaidPlanted, Key::BarePlanted),
            Kind::Dead if count == Some(0) => self.say(Key::SaidDeadNone, args! {}),
            Kind::Dead => counted(Key::SaidDead, Key::BareDead),
            Kind::Replaced => counted(Key::SaidReplaced, Key::BareReplaced),
            Kind::Weeded => self.say(Key::SaidWeeded, args! {}),
            Kind::Fertilised => self.say(
                Key::SaidFertilised,
                args! { "amount" => self.amount(details) },
            ),
            Kind::Sprayed => self.say(Key::SaidSprayed, args! {}),
            Kind::Pruned => self.say(Key::SaidPruned, args! {}),
            Kind::Branched => counted(Key::SaidBranched, Key::SaidBranchedUncounted),
            Kind::NotBranched => counted(Key::SaidNotBranched, Key::SaidNotBranchedUncounted),
            Kind::BranchInduction => {
                counted(Key::SaidBranchInduction, Key::SaidBranchInductionUncounted)
            }
            Kind::Girth => self.measured(Key::SaidGirth, details),
            Kind::Height => self.measured(Key::SaidHeight, details),
            Kind::Disease => self.disease(details),
            Kind::Damage => self.damage(details),
            Kind::CoverSown => self.say(Key::SaidCoverSown, args! {}),
            Kind::IntercropSown => match &details.species {
                Some(species) => self.say(
                    Key::SaidIntercropSown,
                    args! { "species" => short(species, 12) },
                ),
                None => self.say(Key::SaidIntercropSownUnnamed, args! {}),
            },
            Kind::TappingOpened => counted(Key::SaidTappingOpened, Key::BareTappingOpened),
            Kind::NotDone => match details.not_done {
                Some(kind) => self.say(Key::SaidNotDone, args! { "job" => self.kind(kind) }),
                None => self.say(Key::SaidNotDoneUnnamed, args! {}),
            },
            Kind::Rain => self.rain(details),
        }
    }

    /// A kind of work as a noun.
    #[must_use]
    pub fn kind(&self, kind: Kind) -> String {
        self.say(Key::Kind(kind), args! {})
    }

    fn amount(&self, details: &Details) -> String {
        details.amount.map_or_else(String::new, |amount| {
            let args =
                args! { "value" => self.number(amount.value), "unit" => self.unit(amount.unit) };
            self.say(Key::Amount, args)
        })
    }

    fn received(&self, details: &Details) -> String {
        match (details.supply, details.count) {
            (Some(Supply::Plants), Some(count)) => {
                self.say(Key::SaidReceivedPlants, args! { "count" => count })
            }
            (Some(Supply::Plants), None) => self.say(Key::SaidReceivedPlantsUncounted, args! {}),
            (Some(Supply::Fertiliser), _) => self.say(
                Key::SaidReceivedFertiliser,
                args! { "amount" => self.amount(details) },
            ),
            (None, _) => self.say(Key::SaidReceived, args! {}),
        }
    }

    fn measured(&self, key: Key, details: &Details) -> String {
        if let (Some(count), Some(of)) = (details.count, details.of) {
            return self.say(Key::SaidGirthShare, args! { "count" => count, "of" => of });
        }
        let values = &details.values_cm;
        let mut sum = 0.0;
        let mut trees = 0.0;
        for value in values {
            sum += value;
            trees += 1.0;
        }
        let mean = if trees > 0.0 { sum / trees } else { 0.0 };
        self.say(
            key,
            args! { "number" => values.len(), "mean" => self.number(mean) },
        )
    }

    fn disease(&self, details: &Details) -> String {
        let ailment = self.ailment(details.ailment.unwrap_or(Ailment::Other));
        match details.count {
            Some(0) => self.say(Key::SaidDiseaseNone, args! {}),
            Some(count) => self.say(
                Key::SaidDiseaseCount,
                args! { "ailment" => ailment, "count" => count },
            ),
            None => self.say(Key::SaidDisease, args! { "ailment" => ailment }),
        }
    }

    fn damage(&self, details: &Details) -> String {
        let cause = details.cause.unwrap_or(Cause::Other);
        let cause = self.say(Key::Cause(cause), args! {});
        match details.count {
            Some(0) => self.say(Key::SaidDamageNone, args! {}),
            Some(count) => self.say(
                Key::SaidDamageCount,
                args! { "cause" => cause, "count" => count },
            ),
            None => self.say(Key::SaidDamage, args! { "cause" => cause }),
        }
    }

    fn rain(&self, details: &Details) -> String {
        match (details.wetness, details.mm) {
            (Some(Wetness::None), _) => self.say(Key::SaidRainNone, args! {}),
            (_, Some(mm)) => self.say(Key::SaidRainMm, args! { "mm" => self.number(mm) }),
            (Some(Wetness::Soaked) | None, None) => self.say(Key::SaidRainSoaked, args! {}),
        }
    }

    /// The consequence: what the facts make of the block, or what to take care of.
    fn stand(&self, said: Said<'_>, after: After<'_>) -> String {
        let has = |kind: Kind| said.facts.iter().any(|fact| fact.kind == kind);
        let state = after.state;
        if has(Kind::Replaced) {
            let args = args! { "alive" => state.alive(), "gaps" => state.gaps() };
            return self.say(Key::StandFilled, args);
        }
        if has(Kind::Dead) && state.planted() > 0 {
            let args = args! {
                "dead" => state.dead(),
                "alive" => state.alive(),
                "planted" => state.planted(),
            };
            let first = state.dead() == counted_dead(said);
            return self.say(
                if first {
                    Key::StandAlive
                } else {
                    Key::StandDead
                },
                args,
            );
        }
        if has(Kind::Planted) {
            return self.planted(state, after.points);
        }
        if let Some(caution) = self.caution(said, after) {
            return caution;
        }
        let key = if has(Kind::BranchInduction) {
            Key::StandLook
        } else {
            Key::StandNext
        };
        after.next.map_or_else(String::new, |day| {
            self.say(key, args! { "day" => self.day_ahead(day, said.today) })
        })
    }

    /// What a census says of opening: never a date without a range.
    fn outlook(&self, said: Said<'_>, after: After<'_>) -> Option<String> {
        said.facts.iter().find(|fact| fact.kind == Kind::Girth)?;
        Some(match after.ready? {
            Ready::MeetsRule => self.say(Key::StandMeets, args! { "adviser" => after.adviser }),
            Ready::Close => self.say(Key::StandClose, args! {}),
            Ready::Between(earliest, latest) => self.say(
                Key::StandReady,
                args! {
                    "earliest" => self.month_year(earliest),
                    "latest" => self.month_year(latest),
                },
            ),
        })
    }

    fn caution(&self, said: Said<'_>, after: After<'_>) -> Option<String> {
        let counted = |kind: Kind| {
            said.facts
                .iter()
                .any(|fact| fact.kind == kind && fact.details.count != Some(0))
        };
        let args = args! { "adviser" => after.adviser };
        if counted(Kind::Disease) {
            Some(self.say(Key::StandSick, args))
        } else if counted(Kind::Damage) {
            Some(self.say(Key::StandHarm, args))
        } else if counted(Kind::Sprayed) {
            Some(self.say(Key::StandLabel, args! {}))
        } else {
            None
        }
    }

    fn planted(&self, state: &BlockState, points: Option<u32>) -> String {
        let total = state.planted();
        let room = points
            .map(|points| points.saturating_sub(total))
            .filter(|room| *room > 0);
        match room {
            Some(room) => self.say(Key::StandRoom, args! { "total" => total, "room" => room }),
            None => self.say(Key::StandPlanted, args! { "total" => total }),
        }
    }

    /// What was taken back, and how the block stands without it.
    #[must_use]
    pub fn taken_back(
        &self,
        key: Key,
        said: Said<'_>,
        state: &BlockState,
        example: &str,
    ) -> String {
        let stand = if state.planted() > 0 {
            let args = args! { "alive" => state.alive(), "planted" => state.planted() };
            self.say(Key::StandAlive, args)
        } else {
            String::new()
        };
        let text = self.with_facts(said, |facts, length, _| {
            self.say(
                key,
                args! {
                    "facts" => facts,
                    "block" => short(said.block, length),
                    "stand" => stand.trim(),
                    "example" => example,
                },
            )
        });
        text.trim_end().to_owned()
    }
}

fn counted_dead(said: Said<'_>) -> u32 {
    said.facts
        .iter()
        .filter(|fact| fact.kind == Kind::Dead)
        .filter_map(|fact| fact.details.count)
        .fold(0, u32::saturating_add)
}

/// The text that names what a report of this kind counts.
pub(super) fn bare_key(kind: Kind) -> Key {
    if kind == Kind::Planted {
        Key::BarePlanted
    } else if kind == Kind::Dead {
        Key::BareDead
    } else if kind == Kind::Replaced {
        Key::BareReplaced
    } else if kind == Kind::HolesDug {
        Key::BareHolesDug
    } else if kind == Kind::TappingOpened {
        Key::BareTappingOpened
    } else if kind == Kind::Disease {
        Key::BareDisease
    } else if kind == Kind::Branched {
        Key::BareBranched
    } else {
        Key::BareOther
    }
}
