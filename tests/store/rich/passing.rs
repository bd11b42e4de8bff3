//! Land and people that pass from one to another, and a question that leaders are asked.

use budwood::words::{
    message::{Deed, Question},
    passing::Passing,
};
use budwood_scheduler::{BlockId, Body, Passed, PersonId, Trees};

use super::day;

/// A question that waits for its code.
pub(super) fn question(code: &str) -> Question {
    Question::Code {
        code: code.to_owned(),
        deed: Deed::Pass {
            passing: Passing::Helper {
                person: PersonId(3),
                name: "Mina".to_owned(),
                number: "+447700900555".to_owned(),
            },
        },
    }
}

/// Leaders are asked about who is silent, after a code.
pub(super) fn leaders(code: &str) -> Question {
    Question::Code {
        code: code.to_owned(),
        deed: Deed::AskLeaders,
    }
}

/// A fact about a block.
pub(super) fn fact(block: BlockId) -> Body {
    Body::Passed(Passed::Gave {
        block,
        into: BlockId(9),
        trees: vec![Trees {
            planted_on: day(1, 9),
            clone_name: Some("GT1".to_owned()),
            planted: 240,
            dead: 12,
            backfill: true,
        }],
    })
}
