//! Facts in words: what was stored and how the block stands after it.

use budwood_parser::{Care, Details, Effect, Kind, Supply, Wetness};
use budwood_scheduler::{BlockState, decide::Draft};
use chrono::NaiveDate;

use super::{Tongue, fit::short};
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
    /// "B: 8 more dead trees. 16 in all, 104 of 120 alive. Wrong? Text NO".
    #[must_use]
    pub fn read_back(&self, said: Said<'_>, after: After<'_>) -> String {
        if said.facts.iter().all(|fact| fact.kind == Kind::Rain) {
            return self.with_facts(said, |facts, _, _| {
                self.say("read-back-rain", args! { "facts" => facts })
            });
        }
        self.with_stand("read-back", None, said, after)
    }

    /// The same after a correction; `old` is the block that it was moved from.
    #[must_use]
    pub fn changed(&self, old: Option<&str>, said: Said<'_>, after: After<'_>) -> String {
        self.with_stand(
            if old.is_some() { "moved" } else { "changed" },
            old,
            said,
            after,
        )
    }

    fn with_stand(&self, key: &str, old: Option<&str>, said: Said<'_>, after: After<'_>) -> String {
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

    /// "120 planted Fri 13 Jun, 8 more dead trees".
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
            clauses.push(self.say("more", args! { "count" => left }));
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
            "clause-on",
            args! { "clause" => clause, "day" => self.happened(fact.on, today) },
        )
    }

    /// What one fact says, without block and date.
    #[must_use]
    pub fn clause(&self, kind: Kind, details: &Details) -> String {
        let count = details.count;
        let counted = |key: &str, uncounted: &str| match count {
            Some(count) => self.say(key, args! { "count" => count }),
            None => self.say(uncounted, args! {}),
        };
        match kind.effect() {
            Effect::Round => self.round(kind, details),
            Effect::Holes => counted("said-holes-dug", "bare-holes_dug"),
            Effect::Arrival => self.received(details),
            Effect::Planted => counted("said-planted", "bare-planted"),
            Effect::Dead if count == Some(0) => self.say("said-dead-none", args! {}),
            Effect::Dead => counted("said-dead", "bare-dead"),
            Effect::Replaced => counted("said-replaced", "bare-replaced"),
            Effect::Branched => counted("said-branched", "said-branched-uncounted"),
            Effect::Tall => counted("said-not-branched", "said-not-branched-uncounted"),
            Effect::Induced => counted("said-branch-induction", "said-branch-induction-uncounted"),
            Effect::Girth => self.measured("said-girth", details),
            Effect::Height => self.measured("said-height", details),
            Effect::Sick => self.disease(details),
            Effect::Harmed => self.damage(details),
            Effect::Opened => counted("said-tapping-opened", "bare-tapping_opened"),
            Effect::Nothing => match details.not_done {
                Some(kind) => self.say("said-not-done", args! { "job" => self.kind(kind) }),
                None => self.say("said-not-done-unnamed", args! {}),
            },
            Effect::Rain => self.rain(details),
        }
    }

    /// Work of which the day is what counts: its text is called after it.
    fn round(&self, kind: Kind, details: &Details) -> String {
        let key = format!("said-{}", kind.name().replace('_', "-"));
        if kind == Kind::IntercropSown {
            return match &details.species {
                Some(species) => self.say(&key, args! { "species" => short(species, 12) }),
                None => self.say("said-intercrop-sown-unnamed", args! {}),
            };
        }
        match details.count.filter(|_| kind.wants_count()) {
            Some(count) => self.say(&format!("{key}-count"), args! { "count" => count }),
            None => self.say(&key, args! { "amount" => self.amount(details) }),
        }
    }

    /// A kind of work as a noun.
    #[must_use]
    pub fn kind(&self, kind: Kind) -> String {
        self.say(&format!("kind-{}", kind.name()), args! {})
    }

    fn amount(&self, details: &Details) -> String {
        details.amount.map_or_else(String::new, |amount| {
            let args =
                args! { "value" => self.number(amount.value), "unit" => self.unit(amount.unit) };
            self.say("amount", args)
        })
    }

    fn received(&self, details: &Details) -> String {
        match (details.supply, details.count) {
            (Some(Supply::Plants), Some(count)) => {
                self.say("said-received-plants", args! { "count" => count })
            }
            (Some(Supply::Plants), None) => self.say("said-received-plants-uncounted", args! {}),
            (Some(Supply::Fertiliser), _) => self.say(
                "said-received-fertiliser",
                args! { "amount" => self.amount(details) },
            ),
            (None, _) => self.say("said-received", args! {}),
        }
    }

    fn measured(&self, key: &str, details: &Details) -> String {
        if let (Some(count), Some(of)) = (details.count, details.of) {
            return self.say("said-girth-share", args! { "count" => count, "of" => of });
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
        let name = details
            .ailment
            .map_or("other", budwood_parser::Ailment::name);
        let ailment = self.say(&format!("ailment-{name}"), args! {});
        match details.count {
            Some(0) => self.say("said-disease-none", args! {}),
            Some(count) => self.say(
                "said-disease-count",
                args! { "ailment" => ailment, "count" => count },
            ),
            None => self.say("said-disease", args! { "ailment" => ailment }),
        }
    }

    fn damage(&self, details: &Details) -> String {
        let name = details.cause.map_or("other", budwood_parser::Cause::name);
        let cause = self.say(&format!("cause-{name}"), args! {});
        match details.count {
            Some(0) => self.say("said-damage-none", args! {}),
            Some(count) => self.say(
                "said-damage-count",
                args! { "cause" => cause, "count" => count },
            ),
            None => self.say("said-damage", args! { "cause" => cause }),
        }
    }

    fn rain(&self, details: &Details) -> String {
        match (details.wetness, details.mm) {
            (Some(Wetness::None), _) => self.say("said-rain-none", args! {}),
            (_, Some(mm)) => self.say("said-rain-mm", args! { "mm" => self.number(mm) }),
            (Some(Wetness::Soaked) | None, None) => self.say("said-rain-soaked", args! {}),
        }
    }

    /// The consequence: what the facts make of the block, or what to take care of.
    fn stand(&self, said: Said<'_>, after: After<'_>) -> String {
        let has = |kind: Kind| said.facts.iter().any(|fact| fact.kind == kind);
        let state = after.state;
        if has(Kind::Replaced) {
            let args = args! { "alive" => state.alive(), "gaps" => state.gaps() };
            return self.say("stand-filled", args);
        }
        if has(Kind::Dead) && state.planted() > 0 {
            let args = args! {
                "dead" => state.dead(),
                "alive" => state.alive(),
                "planted" => state.planted(),
            };
            let first = state.dead() == counted_dead(said);
            return self.say(if first { "stand-alive" } else { "stand-dead" }, args);
        }
        if has(Kind::Planted) {
            return self.planted(state, after.points);
        }
        if let Some(caution) = self.caution(said, after) {
            return caution;
        }
        let key = if has(Kind::BranchInduction) {
            "stand-look"
        } else {
            "stand-next"
        };
        after.next.map_or_else(String::new, |day| {
            self.say(key, args! { "day" => self.day_ahead(day, said.today) })
        })
    }

    /// What a census says of opening: never a date without a range.
    fn outlook(&self, said: Said<'_>, after: After<'_>) -> Option<String> {
        said.facts.iter().find(|fact| fact.kind == Kind::Girth)?;
        Some(match after.ready? {
            Ready::MeetsRule => self.say("stand-meets", args! { "adviser" => after.adviser }),
            Ready::Close => self.say("stand-close", args! {}),
            Ready::Between(earliest, latest) => self.say(
                "stand-ready",
                args! {
                    "earliest" => self.month_year(earliest),
                    "latest" => self.month_year(latest),
                },
            ),
        })
    }

    fn caution(&self, said: Said<'_>, after: After<'_>) -> Option<String> {
        let facts = said.facts.iter();
        let seen = facts.filter(|fact| fact.details.count != Some(0));
        let args = args! { "adviser" => after.adviser };
        Some(match seen.filter_map(|fact| fact.kind.care()).min()? {
            Care::Sick => self.say("stand-sick", args),
            Care::Harmed => self.say("stand-harm", args),
            Care::Label => self.say("stand-label", args! {}),
        })
    }

    fn planted(&self, state: &BlockState, points: Option<u32>) -> String {
        let total = state.planted();
        let room = points
            .map(|points| points.saturating_sub(total))
            .filter(|room| *room > 0);
        match room {
            Some(room) => self.say("stand-room", args! { "total" => total, "room" => room }),
            None => self.say("stand-planted", args! { "total" => total }),
        }
    }

    /// What was taken back, and how the block stands without it.
    #[must_use]
    pub fn taken_back(
        &self,
        key: &str,
        said: Said<'_>,
        state: &BlockState,
        example: &str,
    ) -> String {
        let stand = if state.planted() > 0 {
            let args = args! { "alive" => state.alive(), "planted" => state.planted() };
            self.say("stand-alive", args)
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
pub(super) fn bare_key(kind: Kind) -> String {
    let counted = kind.is_counted().then(|| kind.name());
    format!("bare-{}", counted.unwrap_or("other"))
}
