//! Questions: is this right, which block, how many.

use budwood_parser::{Doubt, Kind};
use budwood_scheduler::decide::{Draft, Missing, Why};

use super::{
    Key, Phrase, Value,
    facts::{Facts, bare_key},
};
use crate::args;

/// "B: 80 more dead? Only 62 trees are alive. Reply 1 yes, 2 no".
#[must_use]
pub fn confirm(name: Option<&str>, facts: Facts<'_>, why: Option<&Why>) -> Phrase {
    let mut counts = facts.facts.iter();
    let count = counts.find_map(|fact| fact.details.count).unwrap_or(0);
    let key = if name.is_some() {
        Key::ConfirmFor
    } else {
        Key::Confirm
    };
    let args = args! {
        "name" => Value::name(name.unwrap_or_default()),
        "block" => Value::name(facts.block),
        "facts" => facts.clauses(),
        "why" => Value::Spare(vec![why.map(|why| reason(why, count)), None]),
    };
    Phrase::new(key, args)
}

fn reason(why: &Why, count: u32) -> Phrase {
    match why {
        Why::Reading(Doubt::Repaired { from, to }) => {
            let args = args! { "from" => Value::brief(from), "to" => Value::brief(to) };
            Phrase::new(Key::WhyWord, args)
        }
        Why::Reading(_) | Why::TooYoung { .. } => Key::WhyNone.into(),
        Why::MoreThanAreaHolds { holds } => Phrase::new(Key::WhyArea, args! { "holds" => *holds }),
        Why::MoreThanAlive { alive } => Phrase::new(Key::WhyAlive, args! { "alive" => *alive }),
        Why::MoreThanGaps { gaps } => Phrase::new(Key::WhyGaps, args! { "gaps" => *gaps }),
        Why::LargeShare { alive } => Phrase::new(Key::WhyLarge, args! { "alive" => *alive }),
        Why::SameAgain => Phrase::new(Key::WhyAgain, args! { "count" => count }),
        Why::OddValue(value) => Phrase::new(Key::WhyOdd, args! { "value" => *value }),
        Why::Shrunk { before } | Why::Grew { before } => {
            Phrase::new(Key::WhyShrunk, args! { "before" => *before })
        }
        Why::Heaped => Key::WhyHeaped.into(),
        Why::DoesNotAddUp { told, alive } => {
            Phrase::new(Key::WhySum, args! { "told" => *told, "alive" => *alive })
        }
        Why::PerhapsInches => Key::WhyInches.into(),
        Why::TooThin { mean } => Phrase::new(Key::WhyThin, args! { "mean" => *mean }),
        Why::TooMuchFeed => Key::WhyFeed.into(),
        Why::BeforePlanting => Key::WhyBefore.into(),
        Why::NotPlanted => Key::WhyNotPlanted.into(),
    }
}

/// The question for one slot.
#[must_use]
pub fn ask(fact: &Draft, missing: &Missing, blocks: &[String]) -> Phrase {
    let block = || Value::name(fact.block.as_deref().unwrap_or_default());
    let what = || Phrase::from(bare_key(fact.kind));
    match missing {
        Missing::Block { unknown } => ask_block(unknown.as_deref(), blocks),
        Missing::Count { range: None } => {
            let args = args! { "facts" => what(), "block" => block() };
            Phrase::new(Key::AskCount, args)
        }
        Missing::Count {
            range: Some((low, high)),
        } => Phrase::new(
            Key::AskCountRange,
            args! {
                "low" => *low,
                "high" => *high,
                "facts" => what(),
                "block" => block(),
            },
        ),
        Missing::Values => {
            let key = if fact.kind == Kind::Height {
                Key::AskValuesHeight
            } else {
                Key::AskValues
            };
            Phrase::new(key, args! { "block" => block() })
        }
        Missing::Date => Key::AskDate.into(),
    }
}

/// Of many blocks the last ones are only counted, so that how to answer is never cut off.
fn ask_block(unknown: Option<&str>, blocks: &[String]) -> Phrase {
    let list: Vec<Value> = blocks.iter().map(|block| Value::name(block)).collect();
    match unknown {
        None => Phrase::new(Key::AskBlock, args! { "blocks" => list }),
        Some(unknown) => Phrase::new(
            Key::AskBlockUnknown,
            args! { "unknown" => Value::brief(unknown), "blocks" => list },
        ),
    }
}
