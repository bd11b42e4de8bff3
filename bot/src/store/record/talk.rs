//! Conversations as stored.

use budwood_scheduler::{BlockId, EventId, MessageId, PersonId, jobs::nudge::TextedWeeks};
use chrono::{DateTime, NaiveDate, Utc};
use serde::{Deserialize, Serialize};

use super::{Fault, event::task, instant, question::StoredQuestion};
use crate::words::message::{CodeUse, Digest, Listed, Machine, Open, OpenNudge, Talk};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredTalk {
    number: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    open: Option<StoredOpen>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    nudge: Option<StoredNudge>,
    last: Vec<u64>,
    #[serde(serialize_with = "instant::maybe")]
    last_at: Option<DateTime<Utc>>,
    last_text: Option<(String, DateTime<Utc>)>,
    #[serde(serialize_with = "instant::maybe")]
    helped_at: Option<DateTime<Utc>>,
    unclear: u32,
    #[serde(serialize_with = "instant::all")]
    answered_at: Vec<DateTime<Utc>>,
    last_answer: Option<(String, u32)>,
    #[serde(serialize_with = "instant::maybe")]
    routine_at: Option<DateTime<Utc>>,
    /// The Monday of the newest week with a routine text, and a bit for it and each week before it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    texted: Option<(NaiveDate, u64)>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(serialize_with = "instant::maybe")]
    welcomed_at: Option<DateTime<Utc>>,
    #[serde(serialize_with = "instant::maybe")]
    heard_at: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    heard_by: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(serialize_with = "instant::maybe")]
    fails_since: Option<DateTime<Utc>>,
    /// The question, and how many items of its list were shown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    listed: Option<(String, u32)>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    language: Option<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    spoken: Vec<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    answered_on: Option<(NaiveDate, u32)>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(serialize_with = "instant::maybe")]
    held_at: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[serde(serialize_with = "instant::all")]
    noticed_at: Vec<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    digest: Option<StoredDigest>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(serialize_with = "instant::maybe")]
    visit_until: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    codes: Vec<StoredCodeUse>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    said: Vec<u32>,
    /// A text as a sum, and how often in a row.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    machine: Option<(u32, u32)>,
    #[serde(default, skip_serializing_if = "is_none")]
    full_days: u32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    machine_told_on: Option<NaiveDate>,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde gives a reference")]
const fn is_none(count: &u32) -> bool {
    *count == 0
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredDigest {
    message: u64,
    count: u32,
    people: Vec<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredCodeUse {
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    deed: String,
    was_wrong: bool,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredOpen {
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    message: u64,
    person: Option<u32>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    rest: Option<String>,
    question: StoredQuestion,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredNudge {
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    block: u32,
    task: String,
    due: NaiveDate,
}

impl StoredTalk {
    pub(super) fn new(number: &str, talk: &Talk) -> Self {
        Self {
            number: number.to_owned(),
            open: talk.open.as_ref().map(|open| StoredOpen {
                at: open.at,
                message: open.message.0,
                person: open.person.map(|person| person.0),
                rest: open.rest.clone(),
                question: (&open.question).into(),
            }),
            nudge: talk.nudge.map(|nudge| StoredNudge {
                at: nudge.at,
                block: nudge.block.0,
                task: nudge.task.name().to_owned(),
                due: nudge.due,
            }),
            last: talk.last.iter().map(|event| event.0).collect(),
            last_at: talk.last_at,
            last_text: talk.last_text.clone(),
            helped_at: talk.helped_at,
            unclear: talk.unclear,
            answered_at: talk.answered_at.clone(),
            last_answer: talk.last_answer.clone(),
            routine_at: talk.routine_at,
            texted: talk.texted.map(|texted| (texted.newest, texted.weeks)),
            welcomed_at: talk.welcomed_at,
            heard_at: talk.heard_at,
            heard_by: talk.heard_by.clone(),
            fails_since: talk.fails_since,
            listed: talk
                .listed
                .as_ref()
                .map(|list| (list.text.clone(), list.shown)),
            language: talk.language.clone(),
            spoken: talk.spoken.clone(),
            answered_on: talk.answered_on,
            held_at: talk.held_at,
            noticed_at: talk.noticed_at.clone(),
            digest: talk.digest.as_ref().map(|digest| StoredDigest {
                message: digest.message.0,
                count: digest.count,
                people: digest.people.clone(),
            }),
            visit_until: talk.visit_until,
            codes: talk
                .codes
                .iter()
                .map(|code| StoredCodeUse {
                    at: code.at,
                    deed: code.deed.clone(),
                    was_wrong: code.was_wrong,
                })
                .collect(),
            said: talk.said.clone(),
            machine: talk.machine.map(|machine| (machine.text, machine.times)),
            full_days: talk.full_days,
            machine_told_on: talk.machine_told_on,
        }
    }

    pub(super) fn open(self) -> Result<(String, Talk), Fault> {
        let open = self
            .open
            .map(|open| {
                Ok::<_, Fault>(Open {
                    at: open.at,
                    message: MessageId(open.message),
                    person: open.person.map(PersonId),
                    rest: open.rest,
                    question: open.question.open()?,
                })
            })
            .transpose()?;
        let nudge = self
            .nudge
            .map(|nudge| {
                Ok::<_, Fault>(OpenNudge {
                    at: nudge.at,
                    block: BlockId(nudge.block),
                    task: task(&nudge.task)?,
                    due: nudge.due,
                })
            })
            .transpose()?;
        let talk = Talk {
            open,
            nudge,
            last: self.last.into_iter().map(EventId).collect(),
            last_at: self.last_at,
            last_text: self.last_text,
            helped_at: self.helped_at,
            unclear: self.unclear,
            answered_at: self.answered_at,
            last_answer: self.last_answer,
            routine_at: self.routine_at,
            texted: self
                .texted
                .map(|(newest, weeks)| TextedWeeks { newest, weeks }),
            welcomed_at: self.welcomed_at,
            heard_at: self.heard_at,
            heard_by: self.heard_by,
            fails_since: self.fails_since,
            listed: self.listed.map(|(text, shown)| Listed { text, shown }),
            language: self.language,
            spoken: self.spoken,
            answered_on: self.answered_on,
            held_at: self.held_at,
            noticed_at: self.noticed_at,
            digest: self.digest.map(|digest| Digest {
                message: MessageId(digest.message),
                count: digest.count,
                people: digest.people,
            }),
            visit_until: self.visit_until,
            codes: self
                .codes
                .into_iter()
                .map(|code| CodeUse {
                    at: code.at,
                    deed: code.deed,
                    was_wrong: code.was_wrong,
                })
                .collect(),
            said: self.said,
            machine: (self.machine).map(|(text, times)| Machine { text, times }),
            full_days: self.full_days,
            machine_told_on: self.machine_told_on,
        };
        Ok((self.number, talk))
    }
}
