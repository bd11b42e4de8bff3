//! What passes from one to another, as stored: before it is done, and as a fact.

use budwood_scheduler::{BlockId, GroupId, Passed, PersonId, Trees};
use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::words::passing::Passing;

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum StoredPassing {
    Owner {
        block: u32,
        to: u32,
    },
    Part {
        block: u32,
        to: u32,
        trees: u32,
    },
    Join {
        person: u32,
        group: u32,
    },
    New {
        name: String,
        number: String,
        group: u32,
    },
    Leave {
        person: u32,
    },
    Helper {
        person: u32,
        name: String,
        number: String,
    },
}

impl From<&Passing> for StoredPassing {
    fn from(passing: &Passing) -> Self {
        match passing {
            Passing::Owner { block, to } => Self::Owner {
                block: block.0,
                to: to.0,
            },
            Passing::Part { block, to, trees } => Self::Part {
                block: block.0,
                to: to.0,
                trees: *trees,
            },
            Passing::Join { person, group } => Self::Join {
                person: person.0,
                group: group.0,
            },
            Passing::New {
                name,
                number,
                group,
            } => Self::New {
                name: name.clone(),
                number: number.clone(),
                group: group.0,
            },
            Passing::Leave { person } => Self::Leave { person: person.0 },
            Passing::Helper {
                person,
                name,
                number,
            } => Self::Helper {
                person: person.0,
                name: name.clone(),
                number: number.clone(),
            },
        }
    }
}

impl From<StoredPassing> for Passing {
    fn from(stored: StoredPassing) -> Self {
        match stored {
            StoredPassing::Owner { block, to } => Self::Owner {
                block: BlockId(block),
                to: PersonId(to),
            },
            StoredPassing::Part { block, to, trees } => Self::Part {
                block: BlockId(block),
                to: PersonId(to),
                trees,
            },
            StoredPassing::Join { person, group } => Self::Join {
                person: PersonId(person),
                group: GroupId(group),
            },
            StoredPassing::New {
                name,
                number,
                group,
            } => Self::New {
                name,
                number,
                group: GroupId(group),
            },
            StoredPassing::Leave { person } => Self::Leave {
                person: PersonId(person),
            },
            StoredPassing::Helper {
                person,
                name,
                number,
            } => Self::Helper {
                person: PersonId(person),
                name,
                number,
            },
        }
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredTrees {
    planted_on: NaiveDate,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    clone: Option<String>,
    planted: u32,
    dead: u32,
    backfill: bool,
}

fn stored(trees: &[Trees]) -> Vec<StoredTrees> {
    let trees = trees.iter().map(|trees| StoredTrees {
        planted_on: trees.planted_on,
        clone: trees.clone_name.clone(),
        planted: trees.planted,
        dead: trees.dead,
        backfill: trees.backfill,
    });
    trees.collect()
}

fn opened(trees: Vec<StoredTrees>) -> Vec<Trees> {
    let trees = trees.into_iter().map(|stored| Trees {
        planted_on: stored.planted_on,
        clone_name: stored.clone,
        planted: stored.planted,
        dead: stored.dead,
        backfill: stored.backfill,
    });
    trees.collect()
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum StoredPassed {
    Owner {
        block: u32,
        from: u32,
        to: u32,
    },
    Gave {
        block: u32,
        into: u32,
        trees: Vec<StoredTrees>,
    },
    Got {
        block: u32,
        from: u32,
        trees: Vec<StoredTrees>,
    },
    Joined {
        person: u32,
        group: u32,
    },
    Left {
        person: u32,
        group: u32,
    },
    Helper {
        person: u32,
    },
    HelperLeft {
        person: u32,
    },
}

impl From<&Passed> for StoredPassed {
    fn from(passed: &Passed) -> Self {
        match passed {
            Passed::Owner { block, from, to } => Self::Owner {
                block: block.0,
                from: from.0,
                to: to.0,
            },
            Passed::Gave { block, into, trees } => Self::Gave {
                block: block.0,
                into: into.0,
                trees: stored(trees),
            },
            Passed::Got { block, from, trees } => Self::Got {
                block: block.0,
                from: from.0,
                trees: stored(trees),
            },
            Passed::Joined { person, group } => Self::Joined {
                person: person.0,
                group: group.0,
            },
            Passed::Left { person, group } => Self::Left {
                person: person.0,
                group: group.0,
            },
            Passed::Helper { person } => Self::Helper { person: person.0 },
            Passed::HelperLeft { person } => Self::HelperLeft { person: person.0 },
        }
    }
}

impl From<StoredPassed> for Passed {
    fn from(stored: StoredPassed) -> Self {
        match stored {
            StoredPassed::Owner { block, from, to } => Self::Owner {
                block: BlockId(block),
                from: PersonId(from),
                to: PersonId(to),
            },
            StoredPassed::Gave { block, into, trees } => Self::Gave {
                block: BlockId(block),
                into: BlockId(into),
                trees: opened(trees),
            },
            StoredPassed::Got { block, from, trees } => Self::Got {
                block: BlockId(block),
                from: BlockId(from),
                trees: opened(trees),
            },
            StoredPassed::Joined { person, group } => Self::Joined {
                person: PersonId(person),
                group: GroupId(group),
            },
            StoredPassed::Left { person, group } => Self::Left {
                person: PersonId(person),
                group: GroupId(group),
            },
            StoredPassed::Helper { person } => Self::Helper {
                person: PersonId(person),
            },
            StoredPassed::HelperLeft { person } => Self::HelperLeft {
                person: PersonId(person),
            },
        }
    }
}
