//! Questions of ours that wait, as stored.

use budwood_scheduler::{GroupId, PersonId};
use chrono::{DateTime, NaiveDate, Utc};
use serde::{Deserialize, Serialize};

use super::{
    Fault,
    details::{StoredDraft, StoredMissing, StoredTold, cause},
    event::ailment,
    instant,
    passing::StoredPassing,
};
use crate::words::message::{Audience, Deed, Question};

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum StoredQuestion {
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
    Announce {
        code: String,
        to: StoredAudience,
        words: String,
    },
    HandOver {
        code: String,
        to: u32,
        groups: Vec<u32>,
    },
    AskHarm {
        code: String,
        group: u32,
        cause: String,
    },
    AskLeaders {
        code: String,
    },
    Pass {
        code: String,
        passing: StoredPassing,
    },
    Visit {
        code: String,
        text: String,
        #[serde(serialize_with = "instant::one")]
        sent_at: DateTime<Utc>,
    },
}

/// Whom an adviser speaks to.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum StoredAudience {
    Group(u32),
    Person(u32),
}

impl From<Audience> for StoredAudience {
    fn from(to: Audience) -> Self {
        match to {
            Audience::Group(group) => Self::Group(group.0),
            Audience::Person(person) => Self::Person(person.0),
        }
    }
}

impl From<StoredAudience> for Audience {
    fn from(to: StoredAudience) -> Self {
        match to {
            StoredAudience::Group(group) => Self::Group(GroupId(group)),
            StoredAudience::Person(person) => Self::Person(PersonId(person)),
        }
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
                deed: Deed::Announce { to, words },
            } => Self::Announce {
                code: code.clone(),
                to: (*to).into(),
                words: words.clone(),
            },
            Question::Code {
                code,
                deed: Deed::AskHarm { group, cause },
            } => Self::AskHarm {
                code: code.clone(),
                group: group.0,
                cause: cause.name().to_owned(),
            },
            Question::Code {
                code,
                deed: Deed::AskLeaders,
            } => Self::AskLeaders { code: code.clone() },
            Question::Code {
                code,
                deed: Deed::Pass { passing },
            } => Self::Pass {
                code: code.clone(),
                passing: passing.into(),
            },
            Question::Code {
                code,
                deed: Deed::HandOver { to, groups },
            } => Self::HandOver {
                code: code.clone(),
                to: to.0,
                groups: groups.iter().map(|group| group.0).collect(),
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
    pub(super) fn open(self) -> Result<Question, Fault> {
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
            Self::Announce { code, to, words } => Question::Code {
                code,
                deed: Deed::Announce {
                    to: to.into(),
                    words,
                },
            },
            Self::AskHarm {
                code,
                group,
                cause: name,
            } => Question::Code {
                code,
                deed: Deed::AskHarm {
                    group: GroupId(group),
                    cause: cause(&name)?,
                },
            },
            Self::AskLeaders { code } => Question::Code {
                code,
                deed: Deed::AskLeaders,
            },
            Self::Pass { code, passing } => Question::Code {
                code,
                deed: Deed::Pass {
                    passing: passing.into(),
                },
            },
            Self::HandOver { code, to, groups } => Question::Code {
                code,
                deed: Deed::HandOver {
                    to: PersonId(to),
                    groups: groups.into_iter().map(GroupId).collect(),
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
