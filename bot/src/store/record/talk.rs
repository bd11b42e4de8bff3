//! Conversations as stored.

use budwood_scheduler::{BlockId, EventId, GroupId, MessageId, PersonId};
use chrono::{DateTime, NaiveDate, Utc};
use serde::{Deserialize, Serialize};

use super::{
    Fault,
    details::{StoredDraft, StoredMissing, StoredTold},
    event::{ailment, task},
    instant,
};
use crate::words::message::{CodeUse, Deed, Digest, Listed, Open, OpenNudge, Question, Talk};

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

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum StoredQuestion {
    Confirm {
        facts: Vec<StoredDraft>,
    },
    ConfirmMany {
        told: Vec<StoredTold>,
    },
    Ask {
        facts: Vec<StoredDraft>,
        missing: StoredMissing,
    },
    ForWhom {
        people: Vec<u32>,
        text: String,
        #[serde(serialize_with = "instant::one")]
        sent_at: DateTime<Utc>,
    },
    OpenWindow {
        code: String,
        group: u32,
        on: NaiveDate,
    },
    Warn {
        code: String,
        group: u32,
        ailment: String,
    },
    HoldPlanting {
        code: String,
        group: u32,
        on: NaiveDate,
    },
    Erase {
        code: String,
        person: u32,
    },
    Stop {
        code: String,
    },
    Lost {
        code: String,
        person: u32,
    },
    Found {
        code: String,
        person: u32,
    },
    Moved {
        code: String,
        person: u32,
        number: String,
    },
    Visit {
        code: String,
        text: String,
        #[serde(serialize_with = "instant::one")]
        sent_at: DateTime<Utc>,
    },
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
        };
        Ok((self.number, talk))
    }
}

fn drafts(facts: Vec<StoredDraft>) -> Result<Vec<budwood_scheduler::decide::Draft>, Fault> {
    facts.into_iter().map(StoredDraft::open).collect()
}

impl From<&Question> for StoredQuestion {
    #[expect(clippy::too_many_lines, reason = "an arm for each question")]
    fn from(question: &Question) -> Self {
        match question {
            Question::Confirm(facts) => Self::Confirm {
                facts: facts.iter().map(Into::into).collect(),
            },
            Question::ConfirmMany(told) => Self::ConfirmMany {
                told: told.iter().map(Into::into).collect(),
            },
            Question::Ask { facts, missing } => Self::Ask {
                facts: facts.iter().map(Into::into).collect(),
                missing: missing.into(),
            },
            Question::ForWhom {
                people,
                text,
                sent_at,
            } => Self::ForWhom {
                people: people.iter().map(|person| person.0).collect(),
                text: text.clone(),
                sent_at: *sent_at,
            },
            Question::Code {
                code,
                deed: Deed::OpenWindow { group, on },
            } => Self::OpenWindow {
                code: code.clone(),
                group: group.0,
                on: *on,
            },
            Question::Code {
                code,
                deed: Deed::Warn { group, ailment },
            } => Self::Warn {
                code: code.clone(),
                group: group.0,
                ailment: ailment.name().to_owned(),
            },
            Question::Code {
                code,
                deed: Deed::HoldPlanting { group, on },
            } => Self::HoldPlanting {
                code: code.clone(),
                group: group.0,
                on: *on,
            },
            Question::Code {
                code,
                deed: Deed::Erase { person },
            } => Self::Erase {
                code: code.clone(),
                person: person.0,
            },
            Question::Code {
                code,
                deed: Deed::Stop,
            } => Self::Stop { code: code.clone() },
            Question::Code {
                code,
                deed: Deed::Lost { person },
            } => Self::Lost {
                code: code.clone(),
                person: person.0,
            },
            Question::Code {
                code,
                deed: Deed::Found { person },
            } => Self::Found {
                code: code.clone(),
                person: person.0,
            },
            Question::Code {
                code,
                deed: Deed::Moved { person, number },
            } => Self::Moved {
                code: code.clone(),
                person: person.0,
                number: number.clone(),
            },
            Question::Code {
                code,
                deed: Deed::Visit { text, sent_at },
            } => Self::Visit {
                code: code.clone(),
                text: text.clone(),
                sent_at: *sent_at,
            },
        }
    }
}

impl StoredQuestion {
    #[expect(clippy::too_many_lines, reason = "an arm for each question")]
    fn open(self) -> Result<Question, Fault> {
        Ok(match self {
            Self::Confirm { facts } => Question::Confirm(drafts(facts)?),
            Self::ConfirmMany { told } => {
                let told = told.into_iter().map(StoredTold::open);
                Question::ConfirmMany(told.collect::<Result<_, _>>()?)
            }
            Self::Ask { facts, missing } => Question::Ask {
                facts: drafts(facts)?,
                missing: missing.into(),
            },
            Self::ForWhom {
                people,
                text,
                sent_at,
            } => Question::ForWhom {
                people: people.into_iter().map(PersonId).collect(),
                text,
                sent_at,
            },
            Self::OpenWindow { code, group, on } => Question::Code {
                code,
                deed: Deed::OpenWindow {
                    group: GroupId(group),
                    on,
                },
            },
            Self::Warn {
                code,
                group,
                ailment: name,
            } => Question::Code {
                code,
                deed: Deed::Warn {
                    group: GroupId(group),
                    ailment: ailment(&name)?,
                },
            },
            Self::HoldPlanting { code, group, on } => Question::Code {
                code,
                deed: Deed::HoldPlanting {
                    group: GroupId(group),
                    on,
                },
            },
            Self::Erase { code, person } => Question::Code {
                code,
                deed: Deed::Erase {
                    person: PersonId(person),
                },
            },
            Self::Stop { code } => Question::Code {
                code,
                deed: Deed::Stop,
            },
            Self::Lost { code, person } => Question::Code {
                code,
                deed: Deed::Lost {
                    person: PersonId(person),
                },
            },
            Self::Found { code, person } => Question::Code {
                code,
                deed: Deed::Found {
                    person: PersonId(person),
                },
            },
            Self::Moved {
                code,
                person,
                number,
            } => Question::Code {
                code,
                deed: Deed::Moved {
                    person: PersonId(person),
                    number,
                },
            },
            Self::Visit {
                code,
                text,
                sent_at,
            } => Question::Code {
                code,
                deed: Deed::Visit { text, sent_at },
            },
        })
    }
}
