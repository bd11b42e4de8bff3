//! Slots, drafts and days as stored.

use budwood_parser::{
    Ailment, Cause, Day, Details, Extent, Kind, Material, Measure, Per, Supply, Unit, Wetness, When,
};
use budwood_scheduler::{
    Happened, PersonId,
    decide::{Draft, Missing},
};
use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::{Fault, name_fault};
use crate::words::message::Told;

/// Reads a name that may be absent.
fn named<T>(
    what: &str,
    name: Option<&String>,
    read: impl Fn(&str) -> Option<T>,
) -> Result<Option<T>, Fault> {
    name.map(|name| read(name).ok_or_else(|| name_fault(what, name)))
        .transpose()
}

pub(super) fn kind(name: &str) -> Result<Kind, Fault> {
    Kind::from_name(name).ok_or_else(|| name_fault("kind", name))
}

pub(super) fn cause(name: &str) -> Result<Cause, Fault> {
    Cause::from_name(name).ok_or_else(|| name_fault("cause", name))
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredMeasure {
    value: f64,
    unit: String,
}

impl From<Measure> for StoredMeasure {
    fn from(measure: Measure) -> Self {
        Self {
            value: measure.value,
            unit: measure.unit.name().to_owned(),
        }
    }
}

impl StoredMeasure {
    pub(super) fn open(&self) -> Result<Measure, Fault> {
        let unit = Unit::from_name(&self.unit).ok_or_else(|| name_fault("unit", &self.unit))?;
        Ok(Measure {
            value: self.value,
            unit,
        })
    }
}

#[derive(Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub(super) struct StoredDetails {
    #[serde(skip_serializing_if = "Option::is_none")]
    count: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    of: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    weak: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    area: Option<StoredMeasure>,
    #[serde(skip_serializing_if = "Option::is_none")]
    clone: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    material: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    product: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    formula: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    amount: Option<StoredMeasure>,
    #[serde(skip_serializing_if = "Option::is_none")]
    per: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    values_cm: Vec<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ailment: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    cause: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    extent: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    species: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    not_done: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    wetness: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    supply: Option<String>,
}

impl From<&Details> for StoredDetails {
    fn from(details: &Details) -> Self {
        // Taken apart by name, so that a new slot cannot be forgotten here.
        let Details {
            count,
            of,
            weak,
            area,
            clone_name,
            material,
            product,
            formula,
            amount,
            per,
            values_cm,
            ailment,
            cause,
            extent,
            species,
            not_done,
            wetness,
            mm,
            supply,
        } = details;
        Self {
            count: *count,
            of: *of,
            weak: *weak,
            area: area.map(Into::into),
            clone: clone_name.clone(),
            material: material.map(|value| value.name().to_owned()),
            product: product.clone(),
            formula: formula.clone(),
            amount: amount.map(Into::into),
            per: per.map(|value| value.name().to_owned()),
            values_cm: values_cm.clone(),
            ailment: ailment.map(|value| value.name().to_owned()),
            cause: cause.map(|value| value.name().to_owned()),
            extent: extent.map(|value| value.name().to_owned()),
            species: species.clone(),
            not_done: not_done.map(|value| value.name().to_owned()),
            wetness: wetness.map(|value| value.name().to_owned()),
            mm: *mm,
            supply: supply.map(|value| value.name().to_owned()),
        }
    }
}

impl StoredDetails {
    pub(super) fn open(self) -> Result<Details, Fault> {
        Ok(Details {
            count: self.count,
            of: self.of,
            weak: self.weak,
            area: self.area.as_ref().map(StoredMeasure::open).transpose()?,
            clone_name: self.clone,
            material: named("material", self.material.as_ref(), Material::from_name)?,
            product: self.product,
            formula: self.formula,
            amount: self.amount.as_ref().map(StoredMeasure::open).transpose()?,
            per: named("per", self.per.as_ref(), Per::from_name)?,
            values_cm: self.values_cm,
            ailment: named("ailment", self.ailment.as_ref(), Ailment::from_name)?,
            cause: named("cause", self.cause.as_ref(), Cause::from_name)?,
            extent: named("extent", self.extent.as_ref(), Extent::from_name)?,
            species: self.species,
            not_done: named("kind", self.not_done.as_ref(), Kind::from_name)?,
            wetness: named("wetness", self.wetness.as_ref(), Wetness::from_name)?,
            mm: self.mm,
            supply: named("supply", self.supply.as_ref(), Supply::from_name)?,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum StoredWhen {
    DaysAgo(u16),
    Weekday(String),
    Calendar {
        day: u8,
        month: u8,
        year: Option<u16>,
        named: bool,
    },
    MonthDay(u8),
    LastWeek,
    LastMonth,
}

impl From<When> for StoredWhen {
    fn from(when: When) -> Self {
        match when {
            When::DaysAgo(days) => Self::DaysAgo(days),
            When::Weekday(day) => Self::Weekday(day.name().to_owned()),
            When::Calendar {
                day,
                month,
                year,
                named,
            } => Self::Calendar {
                day,
                month,
                year,
                named,
            },
            When::MonthDay(day) => Self::MonthDay(day),
            When::LastWeek => Self::LastWeek,
            When::LastMonth => Self::LastMonth,
        }
    }
}

impl StoredWhen {
    fn open(self) -> Result<When, Fault> {
        Ok(match self {
            Self::DaysAgo(days) => When::DaysAgo(days),
            Self::Weekday(name) => {
                When::Weekday(Day::from_name(&name).ok_or_else(|| name_fault("day", &name))?)
            }
            Self::Calendar {
                day,
                month,
                year,
                named,
            } => When::Calendar {
                day,
                month,
                year,
                named,
            },
            Self::MonthDay(day) => When::MonthDay(day),
            Self::LastWeek => When::LastWeek,
            Self::LastMonth => When::LastMonth,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredDraft {
    kind: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    block: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    said: Option<StoredWhen>,
    from: NaiveDate,
    to: NaiveDate,
    details: StoredDetails,
}

impl From<&Draft> for StoredDraft {
    fn from(draft: &Draft) -> Self {
        Self {
            kind: draft.kind.name().to_owned(),
            block: draft.block.clone(),
            said: draft.said.map(Into::into),
            from: draft.on.from,
            to: draft.on.to,
            details: (&draft.details).into(),
        }
    }
}

impl StoredDraft {
    pub(super) fn open(self) -> Result<Draft, Fault> {
        Ok(Draft {
            kind: kind(&self.kind)?,
            block: self.block,
            said: self.said.map(StoredWhen::open).transpose()?,
            on: Happened {
                from: self.from,
                to: self.to,
            },
            details: self.details.open()?,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredTold {
    person: u32,
    facts: Vec<StoredDraft>,
}

impl From<&Told> for StoredTold {
    fn from(told: &Told) -> Self {
        Self {
            person: told.person.0,
            facts: told.facts.iter().map(Into::into).collect(),
        }
    }
}

impl StoredTold {
    pub(super) fn open(self) -> Result<Told, Fault> {
        let facts = self.facts.into_iter().map(StoredDraft::open);
        Ok(Told {
            person: PersonId(self.person),
            facts: facts.collect::<Result<_, _>>()?,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum StoredMissing {
    Block { unknown: Option<String> },
    Count { range: Option<(u32, u32)> },
    Values,
    Date,
}

impl From<&Missing> for StoredMissing {
    fn from(missing: &Missing) -> Self {
        match missing {
            Missing::Block { unknown } => Self::Block {
                unknown: unknown.clone(),
            },
            Missing::Count { range } => Self::Count { range: *range },
            Missing::Values => Self::Values,
            Missing::Date => Self::Date,
        }
    }
}

impl From<StoredMissing> for Missing {
    fn from(missing: StoredMissing) -> Self {
        match missing {
            StoredMissing::Block { unknown } => Self::Block { unknown },
            StoredMissing::Count { range } => Self::Count { range },
            StoredMissing::Values => Self::Values,
            StoredMissing::Date => Self::Date,
        }
    }
}
