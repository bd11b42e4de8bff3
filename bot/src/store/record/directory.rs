//! People, phones, groups and blocks as stored.

use budwood_scheduler::{
    Block, BlockId, Consent, Group, GroupId, Helper, Hold, Person, PersonId, PersonLink, Phone,
    Purpose, Reason, Role, words::point::Point,
};
use chrono::{NaiveDate, Weekday};
use serde::{Deserialize, Serialize};

use super::{Fault, book::StoredBook, details::StoredMeasure, name_fault};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredPerson {
    id: u32,
    name: String,
    role: String,
    language: String,
    group: Option<u32>,
    consent: StoredConsent,
    #[serde(default, skip_serializing_if = "StoredConsent::is_unknown")]
    sharing: StoredConsent,
    erased: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    hold: Option<StoredHold>,
}

#[derive(Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum StoredConsent {
    #[default]
    Unknown,
    Given {
        on: NaiveDate,
        how: String,
    },
    Withdrawn {
        on: NaiveDate,
        how: String,
    },
}

impl StoredConsent {
    const fn is_unknown(&self) -> bool {
        matches!(self, Self::Unknown)
    }
}

impl From<&Consent> for StoredConsent {
    fn from(consent: &Consent) -> Self {
        match consent {
            Consent::Unknown => Self::Unknown,
            Consent::Given { on, how } => Self::Given {
                on: *on,
                how: how.clone(),
            },
            Consent::Withdrawn { on, how } => Self::Withdrawn {
                on: *on,
                how: how.clone(),
            },
        }
    }
}

impl From<StoredConsent> for Consent {
    fn from(stored: StoredConsent) -> Self {
        match stored {
            StoredConsent::Unknown => Self::Unknown,
            StoredConsent::Given { on, how } => Self::Given { on, how },
            StoredConsent::Withdrawn { on, how } => Self::Withdrawn { on, how },
        }
    }
}

/// What somebody agrees to.
#[derive(Clone, Copy, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum StoredPurpose {
    #[default]
    Reminders,
    Buyers,
}

impl StoredPurpose {
    #[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks so")]
    pub(super) const fn is_reminders(&self) -> bool {
        matches!(self, Self::Reminders)
    }
}

impl From<Purpose> for StoredPurpose {
    fn from(purpose: Purpose) -> Self {
        match purpose {
            Purpose::Reminders => Self::Reminders,
            Purpose::Buyers => Self::Buyers,
        }
    }
}

impl From<StoredPurpose> for Purpose {
    fn from(stored: StoredPurpose) -> Self {
        match stored {
            StoredPurpose::Reminders => Self::Reminders,
            StoredPurpose::Buyers => Self::Buyers,
        }
    }
}

/// That somebody is left in peace.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredHold {
    since: NaiveDate,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    until: Option<NaiveDate>,
    reason: StoredReason,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum StoredReason {
    Grief,
    Told(String),
}

impl From<&Hold> for StoredHold {
    fn from(hold: &Hold) -> Self {
        Self {
            since: hold.since,
            until: hold.until,
            reason: match &hold.reason {
                Reason::Grief => StoredReason::Grief,
                Reason::Told(words) => StoredReason::Told(words.clone()),
            },
        }
    }
}

impl From<StoredHold> for Hold {
    fn from(stored: StoredHold) -> Self {
        Self {
            since: stored.since,
            until: stored.until,
            reason: match stored.reason {
                StoredReason::Grief => Reason::Grief,
                StoredReason::Told(words) => Reason::Told(words),
            },
        }
    }
}

impl From<&Person> for StoredPerson {
    fn from(person: &Person) -> Self {
        Self {
            id: person.id.0,
            name: person.name.clone(),
            role: person.role.name().to_owned(),
            language: person.language.clone(),
            group: person.group.map(|group| group.0),
            consent: (&person.consent).into(),
            sharing: (&person.sharing).into(),
            erased: person.erased,
            hold: person.hold.as_ref().map(Into::into),
        }
    }
}

impl TryFrom<StoredPerson> for Person {
    type Error = Fault;

    fn try_from(stored: StoredPerson) -> Result<Self, Fault> {
        Ok(Self {
            id: PersonId(stored.id),
            name: stored.name,
            role: Role::from_name(&stored.role).ok_or_else(|| name_fault("role", &stored.role))?,
            language: stored.language,
            group: stored.group.map(GroupId),
            consent: stored.consent.into(),
            sharing: stored.sharing.into(),
            erased: stored.erased,
            hold: stored.hold.map(Into::into),
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredPhone {
    number: String,
    people: Vec<StoredLink>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    lost_on: Option<NaiveDate>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredLink {
    person: u32,
    since: NaiveDate,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    until: Option<NaiveDate>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    helper: Option<StoredHelper>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredHelper {
    name: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    agreed_on: Option<NaiveDate>,
}

impl From<&Phone> for StoredPhone {
    fn from(phone: &Phone) -> Self {
        let people = phone
            .links
            .iter()
            .map(|link| StoredLink {
                person: link.person.0,
                since: link.since,
                until: link.until,
                helper: link.helper.as_ref().map(|helper| StoredHelper {
                    name: helper.name.clone(),
                    agreed_on: helper.agreed_on,
                }),
            })
            .collect();
        Self {
            number: phone.number.clone(),
            people,
            lost_on: phone.lost_on,
        }
    }
}

impl TryFrom<StoredPhone> for Phone {
    type Error = Fault;

    fn try_from(stored: StoredPhone) -> Result<Self, Fault> {
        let links = stored
            .people
            .into_iter()
            .map(|link| PersonLink {
                person: PersonId(link.person),
                since: link.since,
                until: link.until,
                helper: link.helper.map(|stored| Helper {
                    name: stored.name,
                    agreed_on: stored.agreed_on,
                }),
            })
            .collect();
        Ok(Self {
            number: stored.number,
            links,
            lost_on: stored.lost_on,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredGroup {
    id: u32,
    name: String,
    adviser: Option<u32>,
    zone: String,
    calendar: String,
    market_day: Option<String>,
    quiet_days: Vec<NaiveDate>,
    rains_start: Option<(u32, u32)>,
    rains_end: Option<(u32, u32)>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    second_rains: Option<((u32, u32), (u32, u32))>,
    window_opened: Option<NaiveDate>,
    #[serde(default, skip_serializing_if = "StoredBook::is_empty")]
    book: StoredBook,
}

impl From<&Group> for StoredGroup {
    fn from(group: &Group) -> Self {
        Self {
            id: group.id.0,
            name: group.name.clone(),
            adviser: group.adviser.map(|person| person.0),
            zone: group.zone.clone(),
            calendar: group.calendar.clone(),
            market_day: group.market_day.map(|day| day.to_string()),
            quiet_days: group.quiet_days.clone(),
            rains_start: group.rains_start,
            rains_end: group.rains_end,
            second_rains: group.second_rains,
            window_opened: group.window_opened,
            book: (&group.book).into(),
        }
    }
}

impl TryFrom<StoredGroup> for Group {
    type Error = Fault;

    fn try_from(stored: StoredGroup) -> Result<Self, Fault> {
        let market_day = stored
            .market_day
            .map(|day| day.parse::<Weekday>().map_err(|_| name_fault("day", &day)))
            .transpose()?;
        Ok(Self {
            id: GroupId(stored.id),
            name: stored.name,
            adviser: stored.adviser.map(PersonId),
            zone: stored.zone,
            calendar: stored.calendar,
            market_day,
            quiet_days: stored.quiet_days,
            rains_start: stored.rains_start,
            rains_end: stored.rains_end,
            second_rains: stored.second_rains,
            window_opened: stored.window_opened,
            book: stored.book.open()?,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredBlock {
    id: u32,
    owner: u32,
    name: String,
    area: Option<StoredMeasure>,
    area_source: String,
    slope_pct: Option<f64>,
    spacing_m: Option<(f64, f64)>,
    /// Latitude and longitude.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    point: Option<(f64, f64)>,
    planned_on: Option<NaiveDate>,
    clone: Option<String>,
}

impl From<&Block> for StoredBlock {
    fn from(block: &Block) -> Self {
        Self {
            id: block.id.0,
            owner: block.owner.0,
            name: block.name.clone(),
            area: block.area.map(Into::into),
            area_source: block.area_source.clone(),
            slope_pct: block.slope_pct,
            spacing_m: block.spacing_m,
            point: block.point.map(|point| (point.latitude, point.longitude)),
            planned_on: block.planned_on,
            clone: block.clone_name.clone(),
        }
    }
}

impl TryFrom<StoredBlock> for Block {
    type Error = Fault;

    fn try_from(stored: StoredBlock) -> Result<Self, Fault> {
        Ok(Self {
            id: BlockId(stored.id),
            owner: PersonId(stored.owner),
            name: stored.name,
            area: stored.area.as_ref().map(StoredMeasure::open).transpose()?,
            area_source: stored.area_source,
            slope_pct: stored.slope_pct,
            spacing_m: stored.spacing_m,
            point: stored.point.map(|(latitude, longitude)| Point {
                latitude,
                longitude,
            }),
            planned_on: stored.planned_on,
            clone_name: stored.clone,
        })
    }
}
