//! Facts: what was stored and how the block stands after it.

use budwood_parser::{Ailment, Care, Cause, Details, Effect, Kind, Material, Supply, Wetness};
use budwood_scheduler::{BlockState, decide::Draft, land::block::Living};
use chrono::NaiveDate;

use super::{Key, Phrase, Value};
use crate::args;

/// Facts of one text about one block.
#[derive(Clone, Copy, Debug)]
pub struct Facts<'a> {
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
    /// Places for trees: the pits, the pegs, or what the area holds.
    pub places: Option<u32>,
    /// When the same job comes again.
    pub next: Option<NaiveDate>,
    /// When the stand will likely be ready for opening.
    pub ready: Option<Ready>,
    /// Who looks after the farmer.
    pub adviser: &'a str,
    /// Whether they are told of sickness and harm.
    pub is_told: bool,
    /// Plants that were ordered.
    pub ordered: Option<u32>,
}

/// What a census says of opening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ready {
    /// The handbook's rule is met: the adviser looks before anyone taps.
    MeetsRule,
    /// Close: only all trees, or the adviser, can tell.
    Close,
    /// Later, but the range is too wide to be told.
    TooEarly,
    /// Later: not likely before the first day, nor after the second.
    Between(NaiveDate, NaiveDate),
}

impl Facts<'_> {
    /// "120 planted Fri 13 Jun, 8 more dead trees".
    #[must_use]
    pub fn clauses(self) -> Value {
        let clauses = self.facts.iter().map(|fact| self.dated(fact).into());
        Value::List(clauses.collect())
    }

    fn dated(self, fact: &Draft) -> Phrase {
        let clause = clause(fact.kind, &fact.details);
        let clause = if fact.details.is_part_of(fact.kind) {
            Phrase::new(Key::SaidPart, args! { "clause" => clause })
        } else {
            clause
        };
        let on = fact.on;
        if on.from == self.today && on.to == self.today {
            return clause;
        }
        let day = |day| Value::day_seen(day, self.today);
        let day = if on.from == on.to {
            day(on.from)
        } else {
            Phrase::new(
                Key::Span,
                args! { "from" => day(on.from), "to" => day(on.to) },
            )
            .into()
        };
        Phrase::new(Key::ClauseOn, args! { "clause" => clause, "day" => day })
    }

    fn tell_of(self, kind: Kind) -> bool {
        self.facts.iter().any(|fact| fact.kind == kind)
    }
}

/// "B: 8 more dead trees. 16 in all, 104 of 120 alive. Wrong? Text NO".
#[must_use]
pub fn read_back(facts: Facts<'_>, after: After<'_>) -> Phrase {
    if facts.facts.iter().all(|fact| fact.kind == Kind::Rain) {
        return Phrase::new(Key::ReadBackRain, args! { "facts" => facts.clauses() });
    }
    with_stand(Key::ReadBack, None, facts, after)
}

/// The same after a correction; `old` is the block that it was moved from.
#[must_use]
pub fn changed(old: Option<&str>, facts: Facts<'_>, after: After<'_>) -> Phrase {
    let key = if old.is_some() {
        Key::Moved
    } else {
        Key::Changed
    };
    with_stand(key, old, facts, after)
}

/// The same of somebody else's record: by its number it can be taken back later, too.
#[must_use]
pub fn fixed(number: u64, old: Option<&str>, facts: Facts<'_>, after: After<'_>) -> Phrase {
    let key = if old.is_some() {
        Key::FixedMoved
    } else {
        Key::Fixed
    };
    let mut phrase = with_stand(key, old, facts, after);
    phrase.args.extend(args! { "number" => number.to_string() });
    phrase
}

/// That a record is again as it was told before.
#[must_use]
pub fn put_back(facts: Facts<'_>, after: After<'_>) -> Phrase {
    with_stand(Key::PutBack, None, facts, after)
}

fn with_stand(key: Key, old: Option<&str>, facts: Facts<'_>, after: After<'_>) -> Phrase {
    let fullest = outlook(facts, after).or_else(|| stand(facts, after));
    let forms = vec![fullest, stand(facts, after), caution(facts, after)];
    let args = args! {
        "block" => Value::name(facts.block),
        "old" => Value::name(old.unwrap_or_default()),
        "facts" => facts.clauses(),
        "stand" => Value::Spare(forms),
    };
    Phrase::new(key, args)
}

/// What one fact says, without block and date.
#[must_use]
pub fn clause(kind: Kind, details: &Details) -> Phrase {
    let count = details.count;
    let counted = |key: Key, uncounted: Key| match count {
        Some(count) => Phrase::new(key, args! { "count" => count }),
        None => uncounted.into(),
    };
    match kind.effect() {
        Effect::Round | Effect::Pegs | Effect::Fed => round(kind, details),
        Effect::Holes => counted(Key::SaidHolesDug, bare_key(kind)),
        Effect::Arrival => received(details),
        Effect::Planted => counted(Key::SaidPlanted, bare_key(kind)),
        Effect::Dead if count == Some(0) => Key::SaidDeadNone.into(),
        Effect::Dead => counted(Key::SaidDead, bare_key(kind)),
        Effect::Replaced => counted(Key::SaidReplaced, bare_key(kind)),
        Effect::Branched => counted(Key::SaidBranched, Key::SaidBranchedUncounted),
        Effect::Tall => counted(Key::SaidNotBranched, Key::SaidNotBranchedUncounted),
        Effect::Induced => counted(Key::SaidBranchInduction, Key::SaidBranchInductionUncounted),
        Effect::Girth => measured(Key::SaidGirth, details),
        Effect::Height => measured(Key::SaidHeight, details),
        Effect::Sick => disease(details),
        Effect::Harmed => damage(details),
        Effect::Opened => counted(Key::SaidTappingOpened, bare_key(kind)),
        Effect::Nothing => match details.not_done {
            Some(kind) => Phrase::new(Key::SaidNotDone, args! { "job" => kind }),
            None => Key::SaidNotDoneUnnamed.into(),
        },
        Effect::Rain => rain(details),
    }
}

/// Work of which the day is what counts: its text is called after it.
fn round(kind: Kind, details: &Details) -> Phrase {
    if kind == Kind::IntercropSown {
        return match &details.species {
            Some(species) => {
                let args = args! { "species" => Value::brief(species) };
                Phrase::new(Key::Round(kind), args)
            }
            None if details.count == Some(0) => Key::SaidIntercropNone.into(),
            None => Key::SaidIntercropSownUnnamed.into(),
        };
    }
    match details.count.filter(|_| kind.wants_count()) {
        Some(count) => Phrase::new(Key::RoundCount(kind), args! { "count" => count }),
        None => Phrase::new(Key::Round(kind), args! { "amount" => amount(details) }),
    }
}

fn amount(details: &Details) -> Option<Phrase> {
    let amount = details.amount?;
    let args = args! { "value" => amount.value, "unit" => amount.unit };
    Some(Phrase::new(Key::Amount, args))
}

fn received(details: &Details) -> Phrase {
    match (details.supply, details.count) {
        (Some(Supply::Plants), Some(count)) => {
            Phrase::new(Key::SaidReceivedPlants, args! { "count" => count })
        }
        (Some(Supply::Plants), None) => Key::SaidReceivedPlantsUncounted.into(),
        (Some(Supply::Fertiliser), _) => Phrase::new(
            Key::SaidReceivedFertiliser,
            args! { "amount" => amount(details) },
        ),
        (None, _) => Key::SaidReceived.into(),
    }
}

fn measured(key: Key, details: &Details) -> Phrase {
    if let (Some(count), Some(of)) = (details.count, details.of) {
        return Phrase::new(Key::SaidGirthShare, args! { "count" => count, "of" => of });
    }
    let values = &details.values_cm;
    let mut sum = 0.0;
    let mut trees = 0.0;
    for value in values {
        sum += value;
        trees += 1.0;
    }
    let mean = if trees > 0.0 { sum / trees } else { 0.0 };
    Phrase::new(key, args! { "number" => values.len(), "mean" => mean })
}

fn disease(details: &Details) -> Phrase {
    let ailment = details.ailment.unwrap_or(Ailment::Other);
    match details.count {
        Some(0) => Key::SaidDiseaseNone.into(),
        Some(count) => Phrase::new(
            Key::SaidDiseaseCount,
            args! { "ailment" => ailment, "count" => count },
        ),
        None => Phrase::new(Key::SaidDisease, args! { "ailment" => ailment }),
    }
}

fn damage(details: &Details) -> Phrase {
    let cause = details.cause.unwrap_or(Cause::Other);
    match details.count {
        Some(0) => Key::SaidDamageNone.into(),
        Some(count) => Phrase::new(
            Key::SaidDamageCount,
            args! { "cause" => cause, "count" => count },
        ),
        None => Phrase::new(Key::SaidDamage, args! { "cause" => cause }),
    }
}

fn rain(details: &Details) -> Phrase {
    match (details.wetness, details.mm) {
        (Some(Wetness::None), _) => Key::SaidRainNone.into(),
        (_, Some(mm)) => Phrase::new(Key::SaidRainMm, args! { "mm" => mm }),
        (Some(Wetness::Soaked) | None, None) => Key::SaidRainSoaked.into(),
    }
}

/// The consequence: what the facts make of the block, or what to take care of.
fn stand(facts: Facts<'_>, after: After<'_>) -> Option<Phrase> {
    let state = after.state;
    if facts.tell_of(Kind::Replaced) {
        let args = args! { "living" => living(state.living()), "gaps" => state.gaps() };
        return Some(Phrase::new(Key::StandFilled, args));
    }
    if facts.tell_of(Kind::Dead) && state.planted() > 0 {
        let args = args! {
            "dead" => state.dead(),
            "living" => living(state.living()),
        };
        let first = state.dead() == counted_dead(facts);
        let key = if first {
            Key::StandAlive
        } else {
            Key::StandDead
        };
        return Some(Phrase::new(key, args));
    }
    if facts.tell_of(Kind::Planted) {
        return Some(planted(state, after.places));
    }
    if let Some(arrived) = arrived(facts, after) {
        return Some(arrived);
    }
    if let Some(caution) = caution(facts, after) {
        return Some(caution);
    }
    let key = if facts.tell_of(Kind::BranchInduction) {
        Key::StandLook
    } else {
        Key::StandNext
    };
    let day = Value::day_seen(after.next?, facts.today);
    Some(Phrase::new(key, args! { "day" => day }))
}

/// What a census says of opening: never a date without a range.
fn outlook(facts: Facts<'_>, after: After<'_>) -> Option<Phrase> {
    facts.tell_of(Kind::Girth).then_some(())?;
    Some(match after.ready? {
        Ready::MeetsRule => {
            let args = args! { "adviser" => Value::name(after.adviser) };
            Phrase::new(Key::StandMeets, args)
        }
        Ready::Close => Key::StandClose.into(),
        Ready::TooEarly => Key::StandEarly.into(),
        Ready::Between(earliest, latest) => Phrase::new(
            Key::StandReady,
            args! {
                "earliest" => Value::Month(earliest),
                "latest" => Value::Month(latest),
            },
        ),
    })
}

fn caution(facts: Facts<'_>, after: After<'_>) -> Option<Phrase> {
    let facts = facts.facts.iter();
    let seen = facts.filter(|fact| fact.details.count != Some(0));
    let hangs = seen.clone().any(|fact| {
        let is_harm = fact.kind.care() == Some(Care::Harmed);
        is_harm && fact.details.cause.is_none_or(Cause::leaves_hanging)
    });
    let args = args! { "adviser" => Value::name(after.adviser) };
    Some(match seen.filter_map(|fact| fact.kind.care()).min()? {
        Care::Harmed if !hangs && after.is_told => Phrase::new(Key::StandTold, args),
        Care::Harmed if !hangs => return None,
        Care::Sick if after.is_told => Phrase::new(Key::StandSick, args),
        Care::Sick => Key::StandSickUntold.into(),
        Care::Harmed if after.is_told => Phrase::new(Key::StandHarm, args),
        Care::Harmed => Key::StandHarmUntold.into(),
        Care::Label => Key::StandLabel.into(),
    })
}

/// What came, how it is kept alive, and how much of the order is still to come.
fn arrived(facts: Facts<'_>, after: After<'_>) -> Option<Phrase> {
    let came = facts
        .facts
        .iter()
        .find(|fact| fact.kind == Kind::Received && fact.details.supply == Some(Supply::Plants))?;
    let handle = match came.details.material {
        Some(Material::Polybag) => Key::HandleBag,
        Some(Material::BuddedStump | Material::Stump) => Key::HandleStump,
        Some(Material::Seedling) | None => Key::HandleAny,
    };
    let mut args = args! { "handle" => Phrase::from(handle) };
    let ordered = after.ordered.unwrap_or(0);
    let short = ordered.saturating_sub(after.state.plants_received);
    if short == 0 || came.details.count.is_none() {
        return Some(Phrase::new(Key::StandArrived, args));
    }
    args.extend(args! { "short" => short, "ordered" => ordered });
    Some(Phrase::new(Key::StandShort, args))
}

fn planted(state: &BlockState, places: Option<u32>) -> Phrase {
    let total = state.planted();
    let room = places
        .map(|places| places.saturating_sub(total))
        .filter(|room| *room > 0);
    match room {
        Some(room) => Phrase::new(Key::StandRoom, args! { "total" => total, "room" => room }),
        None => Phrase::new(Key::StandPlanted, args! { "total" => total }),
    }
}

/// What was taken back, and how the block stands without it.
#[must_use]
pub fn taken_back(key: Key, facts: Facts<'_>, state: &BlockState, example: Phrase) -> Phrase {
    let stand = (state.planted() > 0).then(|| {
        let args = args! { "living" => living(state.living()) };
        Phrase::new(Key::StandAlive, args)
    });
    let args = args! {
        "facts" => facts.clauses(),
        "block" => Value::name(facts.block),
        "stand" => stand,
        "example" => example,
    };
    Phrase::new(key, args)
}

/// "457 + 23 of 480": the living trees, one way everywhere.
#[must_use]
pub fn living(trees: Living) -> Phrase {
    let key = if trees.filled > 0 {
        Key::LivingFilled
    } else {
        Key::Living
    };
    let args = args! {
        "first" => trees.first,
        "filled" => trees.filled,
        "planted" => trees.planted,
    };
    Phrase::new(key, args)
}

fn counted_dead(facts: Facts<'_>) -> u32 {
    facts
        .facts
        .iter()
        .filter(|fact| fact.kind == Kind::Dead)
        .filter_map(|fact| fact.details.count)
        .fold(0, u32::saturating_add)
}

/// The text that names what a report of this kind counts.
pub(super) fn bare_key(kind: Kind) -> Key {
    if kind.is_counted() {
        Key::Bare(kind)
    } else {
        Key::BareOther
    }
}
