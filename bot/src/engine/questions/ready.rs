//! Questions of the adviser about girths of one farmer, and about when stands will be ready.

use std::collections::BTreeMap;

use budwood_scheduler::{
    Block, Census, Group, Person,
    outlook::readiness::{Readiness, readiness, tappable},
};
use chrono::Datelike;

use super::{
    figures::Names,
    girth::{Neighbours, Outlook},
    losses::letter,
};
use crate::{
    args,
    engine::view::View,
    wording::{Key, Phrase, Ready, Value},
};

/// Stands of a group by when they will likely be ready.
#[derive(Default)]
pub(crate) struct Years {
    /// By year: stands and their hectares.
    pub(crate) by_year: BTreeMap<i32, (usize, f64)>,
    /// To be looked at now.
    pub(crate) now: usize,
    /// Of which it is too early to say.
    pub(crate) early: usize,
    /// Planted, not opened, and without girths.
    pub(crate) unknown: usize,
}

impl<'a> View<'a> {
    /// GIRTH of one farmer: the last census of each block.
    pub(super) fn girths_of(self, person: &Person) -> Phrase {
        let neighbours = self
            .group_of(person)
            .and_then(|group| self.neighbours(group));
        let blocks = self.world.directory.blocks_of(person.id);
        let girths = blocks.filter_map(|block| {
            let census = self.last_census(block)?;
            Some(
                self.census_told(person, block, census, neighbours.as_ref())
                    .into(),
            )
        });
        let girths: Vec<Value> = girths.collect();
        if girths.is_empty() {
            let args = args! { "name" => Value::name(&person.name) };
            return Phrase::new(Key::GirthUnknown, args);
        }
        Phrase::new(Key::MyBlocks, args! { "blocks" => girths })
    }

    fn last_census(self, block: &Block) -> Option<&'a Census> {
        let girths = self.state(block.id)?.girths.iter();
        girths.max_by_key(|census| census.on)
    }

    fn census_told(
        self,
        person: &Person,
        block: &Block,
        census: &Census,
        neighbours: Option<&Neighbours<'_>>,
    ) -> Phrase {
        let mut args = args! {
            "name" => Value::name(person.called()),
            "block" => Value::name(&block.name),
            "day" => Value::day_seen(census.on, self.today_of(person.id)),
            "source" => Phrase::from(letter(census.source)),
        };
        let least = census.values_cm.iter().copied().reduce(f64::min);
        let (Some(mean), Some(least)) = (census.mean_cm(), least) else {
            let (reached, of) = census.reached.unwrap_or_default();
            args.extend(args! { "count" => reached, "of" => of });
            return Phrase::new(Key::GirthShare, args);
        };
        let ahead = neighbours
            .and_then(|neighbours| self.member_girth(neighbours, block.id))
            .map(|girth| girth.months_ahead);
        let against = ahead.map(|months| {
            let key = if months < 0 {
                Key::MemberBehind
            } else {
                Key::MemberAhead
            };
            Phrase::new(key, args! { "months" => months.unsigned_abs() })
        });
        args.extend(args! {
            "trees" => census.values_cm.len(),
            "mean" => mean,
            "spread" => (census.spread().unwrap_or_default() * 100.0).round(),
            "smallest" => least,
            "against" => against,
        });
        Phrase::new(Key::GirthOne, args)
    }

    /// READY of one farmer: each block, never a date without its range.
    pub(super) fn ready_of(self, person: &Person) -> Phrase {
        let neighbours = self
            .group_of(person)
            .and_then(|group| self.neighbours(group));
        let blocks = self.world.directory.blocks_of(person.id);
        let told = blocks.map(|block| {
            let outlook = neighbours.as_ref().and_then(|neighbours| {
                self.outlook_among(neighbours, block.id, self.today_of(person.id))
            });
            self.ready_told(person, block, outlook).into()
        });
        let told: Vec<Value> = told.collect();
        if told.is_empty() {
            let args = args! { "name" => Value::name(&person.name) };
            return Phrase::new(Key::GirthUnknown, args);
        }
        Phrase::new(Key::MyBlocks, args! { "blocks" => told })
    }

    fn ready_told(self, person: &Person, block: &Block, outlook: Option<Outlook>) -> Phrase {
        let mut args = args! {
            "name" => Value::name(person.called()),
            "block" => Value::name(&block.name),
        };
        let is_open = self.state(block.id).is_some_and(|state| state.opened > 0);
        let trees = self.last_census(block).map_or(0, |one| one.values_cm.len());
        let key = match outlook {
            _ if is_open => Key::ReadyOpened,
            None => Key::ReadyUnknown,
            Some(Outlook {
                ready: Ready::Between(earliest, latest),
                forecast: Some(seen),
            }) => {
                args.extend(args! {
                    "likely" => Value::Month(seen.block.likely),
                    "earliest" => Value::Month(earliest),
                    "latest" => Value::Month(latest),
                });
                Key::ReadyOne
            }
            Some(Outlook {
                ready: Ready::MeetsRule | Ready::Close,
                ..
            }) => {
                args.extend(args! { "more" => Value::Spare(self.trees_to_tap(block)) });
                Key::ReadyClose
            }
            Some(_) => Key::ReadyEarly,
        };
        args.extend(args! { "trees" => trees });
        Phrase::new(key, args)
    }

    /// What is to be tapped of a stand, from the fullest form to none.
    fn trees_to_tap(self, block: &Block) -> Vec<Option<Phrase>> {
        let found = || {
            let group = self.world.directory.group_of_block(block)?;
            tappable(block, self.state(block.id)?, self.calendar_of(group)?)
        };
        let Some(found) = found() else {
            return vec![None];
        };
        let hectare = found.a_hectare.map(|trees| {
            let args = args! { "trees" => Value::Figure(trees.round()) };
            Phrase::new(Key::ReadyHectare, args)
        });
        let percent =
            |key, name, pct: f64| Phrase::new(key, vec![(name, Value::Figure(pct.round()))]);
        let places = found.places_pct;
        let places = places.map(|pct| percent(Key::ReadyPlaces, "pct", pct));
        let uneven = found.uneven;
        let spread = uneven.map(|one| percent(Key::ReadySpread, "spread", one.spread_pct));
        let runts = uneven.filter(|one| one.runts_pct > 0.0);
        let runts = runts.map(|one| percent(Key::ReadyRunts, "pct", one.runts_pct));
        let told = |hectare, places, spread, runts| {
            let args = args! {
                "trees" => found.trees,
                "hectare" => hectare,
                "pct" => Value::Figure(found.living_pct.round()),
                "places" => places,
                "spread" => spread,
                "runts" => runts,
            };
            Some(Phrase::new(Key::ReadyTrees, args))
        };
        vec![
            told(hectare.clone(), places.clone(), spread.clone(), runts),
            told(hectare.clone(), places.clone(), spread, None),
            told(hectare, places, None, None),
            told(None, None, None, None),
            None,
        ]
    }

    /// READY of a group: how many stands in which year.
    pub(super) fn ready_in(self, group: &Group) -> Phrase {
        let years = self.years_of(group);
        let by_year = years.by_year.iter().map(|(year, (stands, hectares))| {
            let args = args! {
                "year" => year.to_string(),
                "stands" => *stands,
                "land" => Value::Land(*hectares),
            };
            Phrase::new(Key::ReadyYear, args).into()
        });
        let by_year: Vec<Value> = by_year.collect();
        let by_year = if by_year.is_empty() {
            Phrase::from(Key::ReadyNoYear).into()
        } else {
            Value::List(by_year)
        };
        let args = args! {
            "group" => Value::brief(&group.name),
            "years" => by_year,
            "now" => years.now,
            "early" => years.early,
            "unknown" => years.unknown,
        };
        Phrase::new(Key::ReadyGroup, args)
    }

    pub(crate) fn years_of(self, group: &Group) -> Years {
        let mut years = Years::default();
        let Some(neighbours) = self.neighbours(group) else {
            return years;
        };
        let today = self.today_in(group);
        for block in self.blocks_of_group(group) {
            let state = self.state(block.id);
            if state.is_none_or(|state| state.opened > 0 || state.alive() == 0) {
                continue;
            }
            match self.outlook_among(&neighbours, block.id, today) {
                None => years.unknown += 1,
                Some(Outlook {
                    ready: Ready::MeetsRule | Ready::Close,
                    ..
                }) => years.now += 1,
                Some(Outlook {
                    ready: Ready::Between(..),
                    forecast: Some(seen),
                }) => {
                    let year = years.by_year.entry(seen.block.likely.year()).or_default();
                    year.0 += 1;
                    year.1 += block.hectares().unwrap_or_default();
                }
                Some(_) => years.early += 1,
            }
        }
        years
    }

    /// READY without a name: which stands somebody should look at now, with the share of thick trees
    /// and where that of the stand may lie; the largest share first.
    pub(super) fn ready_now(self, speaker: &Person) -> Phrase {
        let names = Names::of_all(self, speaker);
        let mut found: Vec<(&Block, Readiness)> = Vec::new();
        for group in self.groups_of(speaker) {
            let (Some(neighbours), Some(calendar)) =
                (self.neighbours(group), self.calendar_of(group))
            else {
                continue;
            };
            let today = self.today_in(group);
            let close = self
                .blocks_of_group(group)
                .filter(|block| self.is_close(&neighbours, block.id, today));
            let judged = close.filter_map(|block| {
                let ready = readiness(self.state(block.id)?, calendar)?;
                Some((block, ready))
            });
            found.extend(judged);
        }
        if found.is_empty() {
            return Key::ReadyNowNone.into();
        }
        found.sort_by(|(_, one), (_, other)| other.share_pct.total_cmp(&one.share_pct));
        let people = found.iter().map(|(block, ready)| {
            let (low, high) = ready.interval_pct;
            let args = args! {
                "name" => Value::name(&names.shown(block.owner)),
                "block" => Value::name(&block.name),
                "pct" => ready.share_pct.round(),
                "of" => ready.of,
                "low" => low.round(),
                "high" => high.round(),
            };
            Phrase::new(Key::ReadyPerson, args).into()
        });
        let args = args! { "people" => Value::List(people.collect()) };
        Phrase::new(Key::ReadyNow, args)
    }
}
