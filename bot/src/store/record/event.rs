//! Facts as stored.

use budwood_parser::Ailment;
use budwood_scheduler::{
    BlockId, Body, Event, EventId, GroupId, Happened, MessageId, PersonId, Source, TaskKind,
};
use chrono::{DateTime, NaiveDate, Utc};
use serde::{Deserialize, Serialize};

use super::{
    Fault,
    book::StoredEntered,
    details::{StoredDetails, kind},
    directory::{StoredHold, StoredPurpose},
    instant, name_fault,
    passing::StoredPassed,
};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredEvent {
    id: u64,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    by: Option<u32>,
    source: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    message: Option<u64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    supersedes: Option<u64>,
    fact: StoredBody,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum StoredBody {
    Reported {
        block: u32,
        kind: String,
        from: NaiveDate,
        to: NaiveDate,
        details: Box<StoredDetails>,
    },
    TaskDone {
        block: u32,
        task: String,
        on: NaiveDate,
    },
    Postponed {
        block: u32,
        task: String,
        until: NaiveDate,
    },
    Nudged {
        block: u32,
        task: String,
        on: NaiveDate,
        due: NaiveDate,
    },
    TakenBack {
        block: u32,
    },
    Warned {
        block: u32,
        ailment: String,
        on: NaiveDate,
    },
    WindowOpened {
        group: u32,
        on: NaiveDate,
    },
    PlantingHeld {
        group: u32,
        on: NaiveDate,
    },
    ConsentGiven {
        person: u32,
        #[serde(default, skip_serializing_if = "StoredPurpose::is_reminders")]
        purpose: StoredPurpose,
        how: String,
    },
    ConsentWithdrawn {
        person: u32,
        #[serde(default, skip_serializing_if = "StoredPurpose::is_reminders")]
        purpose: StoredPurpose,
        how: String,
    },
    LeftAlone {
        person: u32,
        hold: StoredHold,
    },
    GoneOn {
        person: u32,
    },
    PhoneLost {
        person: u32,
    },
    PhoneFound {
        person: u32,
    },
    NumberMoved {
        person: u32,
    },
    Entered {
        group: u32,
        entered: StoredEntered,
    },
    HandedOver {
        group: u32,
        to: u32,
    },
    Passed(StoredPassed),
    Erased {
        person: u32,
    },
}

pub(super) const fn source_name(source: Source) -> &'static str {
    match source {
        Source::Bot => "bot",
        Source::OwnText => "own_text",
        Source::Leader => "leader",
        Source::Sheet => "sheet",
        Source::Visit => "visit",
    }
}

pub(super) fn source(name: &str) -> Result<Source, Fault> {
    [
        Source::Bot,
        Source::OwnText,
        Source::Leader,
        Source::Sheet,
        Source::Visit,
    ]
    .into_iter()
    .find(|source| source_name(*source) == name)
    .ok_or_else(|| name_fault("source", name))
}

pub(super) fn task(name: &str) -> Result<TaskKind, Fault> {
    TaskKind::from_name(name).ok_or_else(|| name_fault("task", name))
}

pub(super) fn ailment(name: &str) -> Result<Ailment, Fault> {
    Ailment::from_name(name).ok_or_else(|| name_fault("ailment", name))
}

impl From<&Event> for StoredEvent {
    fn from(event: &Event) -> Self {
        Self {
            id: event.id.0,
            at: event.at,
            by: event.by.map(|person| person.0),
            source: source_name(event.source).to_owned(),
            message: event.message.map(|message| message.0),
            supersedes: event.supersedes.map(|event| event.0),
            fact: (&event.body).into(),
        }
    }
}

impl TryFrom<StoredEvent> for Event {
    type Error = Fault;

    fn try_from(stored: StoredEvent) -> Result<Self, Fault> {
        Ok(Self {
            id: EventId(stored.id),
            at: stored.at,
            by: stored.by.map(PersonId),
            source: source(&stored.source)?,
            message: stored.message.map(MessageId),
            supersedes: stored.supersedes.map(EventId),
            body: stored.fact.open()?,
        })
    }
}

impl From<&Body> for StoredBody {
    #[expect(clippy::too_many_lines, reason = "an arm for each kind of fact")]
    fn from(body: &Body) -> Self {
        match body {
            Body::Reported {
                block,
                kind,
                on,
                details,
            } => Self::Reported {
                block: block.0,
                kind: kind.name().to_owned(),
                from: on.from,
                to: on.to,
                details: Box::new(details.into()),
            },
            Body::TaskDone { block, task, on } => Self::TaskDone {
                block: block.0,
                task: task.name().to_owned(),
                on: *on,
            },
            Body::Postponed { block, task, until } => Self::Postponed {
                block: block.0,
                task: task.name().to_owned(),
                until: *until,
            },
            Body::Nudged {
                block,
                task,
                on,
                due,
            } => Self::Nudged {
                block: block.0,
                task: task.name().to_owned(),
                on: *on,
                due: *due,
            },
            Body::TakenBack { block } => Self::TakenBack { block: block.0 },
            Body::Warned { block, ailment, on } => Self::Warned {
                block: block.0,
                ailment: ailment.name().to_owned(),
                on: *on,
            },
            Body::PlantingHeld { group, on } => Self::PlantingHeld {
                group: group.0,
                on: *on,
            },
            Body::WindowOpened { group, on } => Self::WindowOpened {
                group: group.0,
                on: *on,
            },
            Body::ConsentGiven {
                person,
                purpose,
                how,
            } => Self::ConsentGiven {
                person: person.0,
                purpose: (*purpose).into(),
                how: how.clone(),
            },
            Body::ConsentWithdrawn {
                person,
                purpose,
                how,
            } => Self::ConsentWithdrawn {
                person: person.0,
                purpose: (*purpose).into(),
                how: how.clone(),
            },
            Body::LeftAlone { person, hold } => Self::LeftAlone {
                person: person.0,
                hold: hold.into(),
            },
            Body::GoneOn { person } => Self::GoneOn { person: person.0 },
            Body::PhoneLost { person } => Self::PhoneLost { person: person.0 },
            Body::PhoneFound { person } => Self::PhoneFound { person: person.0 },
            Body::NumberMoved { person } => Self::NumberMoved { person: person.0 },
            Body::Entered { group, entered } => Self::Entered {
                group: group.0,
                entered: entered.into(),
            },
            Body::HandedOver { group, to } => Self::HandedOver {
                group: group.0,
                to: to.0,
            },
            Body::Passed(passed) => Self::Passed(passed.into()),
            Body::Erased { person } => Self::Erased { person: person.0 },
        }
    }
}

impl StoredBody {
    #[expect(clippy::too_many_lines, reason = "an arm for each kind of fact")]
    fn open(self) -> Result<Body, Fault> {
        // The field of this name hides the function.
        let job = task;
        Ok(match self {
            Self::Reported {
                block,
                kind: name,
                from,
                to,
                details,
            } => Body::Reported {
                block: BlockId(block),
                kind: kind(&name)?,
                on: Happened { from, to },
                details: details.open()?,
            },
            Self::TaskDone { block, task, on } => Body::TaskDone {
                block: BlockId(block),
                task: job(&task)?,
                on,
            },
            Self::Postponed { block, task, until } => Body::Postponed {
                block: BlockId(block),
                task: job(&task)?,
                until,
            },
            Self::Nudged {
                block,
                task: name,
                on,
                due,
            } => Body::Nudged {
                block: BlockId(block),
                task: task(&name)?,
                on,
                due,
            },
            Self::TakenBack { block } => Body::TakenBack {
                block: BlockId(block),
            },
            Self::Warned {
                block,
                ailment: name,
                on,
            } => Body::Warned {
                block: BlockId(block),
                ailment: ailment(&name)?,
                on,
            },
            Self::PlantingHeld { group, on } => Body::PlantingHeld {
                group: GroupId(group),
                on,
            },
            Self::WindowOpened { group, on } => Body::WindowOpened {
                group: GroupId(group),
                on,
            },
            Self::ConsentGiven {
                person,
                purpose,
                how,
            } => Body::ConsentGiven {
                person: PersonId(person),
                purpose: purpose.into(),
                how,
            },
            Self::ConsentWithdrawn {
                person,
                purpose,
                how,
            } => Body::ConsentWithdrawn {
                person: PersonId(person),
                purpose: purpose.into(),
                how,
            },
            Self::LeftAlone { person, hold } => Body::LeftAlone {
                person: PersonId(person),
                hold: hold.into(),
            },
            Self::GoneOn { person } => Body::GoneOn {
                person: PersonId(person),
            },
            Self::PhoneLost { person } => Body::PhoneLost {
                person: PersonId(person),
            },
            Self::PhoneFound { person } => Body::PhoneFound {
                person: PersonId(person),
            },
            Self::HandedOver { group, to } => Body::HandedOver {
                group: GroupId(group),
                to: PersonId(to),
            },
            Self::NumberMoved { person } => Body::NumberMoved {
                person: PersonId(person),
            },
            Self::Entered { group, entered } => Body::Entered {
                group: GroupId(group),
                entered: entered.open()?,
            },
            Self::Passed(passed) => Body::Passed(passed.into()),
            Self::Erased { person } => Body::Erased {
                person: PersonId(person),
            },
        })
    }
}
