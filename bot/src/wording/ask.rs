//! Questions in words: is this right, which block, how many.

use budwood_parser::Kind;
use budwood_scheduler::decide::{Draft, Missing, Why};

use super::{
    Key, Tongue,
    facts::{Room, Said, bare_key},
    fit::short,
};
use crate::{args, words::limits::SHORT_NAME};

impl Tongue<'_> {
    /// "B: 80 more dead? Only 62 trees are alive. Reply 1 yes, 2 no".
    #[must_use]
    pub fn confirm(&self, name: Option<&str>, said: Said<'_>, why: Option<&Why>) -> String {
        let count = said
            .facts
            .iter()
            .find_map(|fact| fact.details.count)
            .unwrap_or(0);
        self.with_facts(said, |facts, length, room| {
            let why = why.filter(|_| room == Room::Enough);
            self.say(
                if name.is_some() {
                    Key::ConfirmFor
                } else {
                    Key::Confirm
                },
                args! {
                    "name" => short(name.unwrap_or_default(), length),
                    "block" => short(said.block, length),
                    "facts" => facts,
                    "why" => why.map_or_else(String::new, |why| self.why(why, count)),
                },
            )
        })
    }

    fn why(&self, why: &Why, count: u32) -> String {
        match why {
            Why::Reading(budwood_parser::Doubt::Repaired { from, to }) => self.say(
                Key::WhyWord,
                args! { "from" => short(from, 12), "to" => short(to, 12) },
            ),
            Why::Reading(_) => self.say(Key::WhyNone, args! {}),
            Why::MoreThanAreaHolds { holds } => self.say(Key::WhyArea, args! { "holds" => *holds }),
            Why::MoreThanAlive { alive } => self.say(Key::WhyAlive, args! { "alive" => *alive }),
            Why::MoreThanGaps { gaps } => self.say(Key::WhyGaps, args! { "gaps" => *gaps }),
            Why::LargeShare { alive } => self.say(Key::WhyLarge, args! { "alive" => *alive }),
            Why::SameAgain => self.say(Key::WhyAgain, args! { "count" => count }),
            Why::OddValue(value) => self.say(Key::WhyOdd, args! { "value" => self.number(*value) }),
            Why::Shrunk { before } | Why::Grew { before } => {
                self.say(Key::WhyShrunk, args! { "before" => self.number(*before) })
            }
            Why::Heaped => self.say(Key::WhyHeaped, args! {}),
            Why::DoesNotAddUp { told, alive } => {
                self.say(Key::WhySum, args! { "told" => *told, "alive" => *alive })
            }
            Why::PerhapsInches => self.say(Key::WhyInches, args! {}),
            Why::TooThin { mean } => self.say(Key::WhyThin, args! { "mean" => self.number(*mean) }),
            Why::TooMuchFeed => self.say(Key::WhyFeed, args! {}),
            Why::BeforePlanting => self.say(Key::WhyBefore, args! {}),
            Why::NotPlanted => self.say(Key::WhyNotPlanted, args! {}),
        }
    }

    /// The question for one slot.
    #[must_use]
    pub fn ask(&self, fact: &Draft, missing: &Missing, blocks: &[String]) -> String {
        let block = fact.block.as_deref().unwrap_or_default();
        let what = || self.say(bare_key(fact.kind), args! {});
        match missing {
            Missing::Block { unknown } => self.ask_block(unknown.as_deref(), blocks),
            Missing::Count { range: None } => self.fit(|length| {
                let args = args! { "facts" => what(), "block" => short(block, length) };
                self.say(Key::AskCount, args)
            }),
            Missing::Count {
                range: Some((low, high)),
            } => self.fit(|length| {
                self.say(
                    Key::AskCountRange,
                    args! {
                        "low" => *low,
                        "high" => *high,
                        "facts" => what(),
                        "block" => short(block, length),
                    },
                )
            }),
            Missing::Values => {
                let height = fact.kind == Kind::Height;
                let key = if height {
                    Key::AskValuesHeight
                } else {
                    Key::AskValues
                };
                self.fit(|length| self.say(key, args! { "block" => short(block, length) }))
            }
            Missing::Date => self.whole(Key::AskDate, args! {}),
        }
    }

    /// Of many blocks the last ones are only counted, so that how to answer is never cut off.
    fn ask_block(&self, unknown: Option<&str>, blocks: &[String]) -> String {
        self.people(
            blocks,
            |block, length| short(block, length),
            |list| match unknown {
                None => self.say(Key::AskBlock, args! { "blocks" => list }),
                Some(unknown) => {
                    let unknown = short(unknown, SHORT_NAME);
                    self.say(
                        Key::AskBlockUnknown,
                        args! { "unknown" => unknown, "blocks" => list },
                    )
                }
            },
        )
    }
}
