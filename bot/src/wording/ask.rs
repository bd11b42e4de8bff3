//! Questions in words: is this right, which block, how many.

use budwood_parser::Kind;
use budwood_scheduler::decide::{Draft, Missing, Why};

use super::{
    Tongue,
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
                    "confirm-for"
                } else {
                    "confirm"
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
                "why-word",
                args! { "from" => short(from, 12), "to" => short(to, 12) },
            ),
            Why::Reading(_) | Why::TooYoung { .. } => self.say("why-none", args! {}),
            Why::MoreThanAreaHolds { holds } => self.say("why-area", args! { "holds" => *holds }),
            Why::MoreThanAlive { alive } => self.say("why-alive", args! { "alive" => *alive }),
            Why::MoreThanGaps { gaps } => self.say("why-gaps", args! { "gaps" => *gaps }),
            Why::LargeShare { alive } => self.say("why-large", args! { "alive" => *alive }),
            Why::SameAgain => self.say("why-again", args! { "count" => count }),
            Why::OddValue(value) => self.say("why-odd", args! { "value" => self.number(*value) }),
            Why::Shrunk { before } | Why::Grew { before } => {
                self.say("why-shrunk", args! { "before" => self.number(*before) })
            }
            Why::Heaped => self.say("why-heaped", args! {}),
            Why::DoesNotAddUp { told, alive } => {
                self.say("why-sum", args! { "told" => *told, "alive" => *alive })
            }
            Why::PerhapsInches => self.say("why-inches", args! {}),
            Why::TooThin { mean } => self.say("why-thin", args! { "mean" => self.number(*mean) }),
            Why::TooMuchFeed => self.say("why-feed", args! {}),
            Why::BeforePlanting => self.say("why-before", args! {}),
            Why::NotPlanted => self.say("why-not-planted", args! {}),
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
                self.say("ask-count", args)
            }),
            Missing::Count {
                range: Some((low, high)),
            } => self.fit(|length| {
                self.say(
                    "ask-count-range",
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
                    "ask-values-height"
                } else {
                    "ask-values"
                };
                self.fit(|length| self.say(key, args! { "block" => short(block, length) }))
            }
            Missing::Date => self.whole("ask-date", args! {}),
        }
    }

    /// Of many blocks the last ones are only counted, so that how to answer is never cut off.
    fn ask_block(&self, unknown: Option<&str>, blocks: &[String]) -> String {
        self.people(
            blocks,
            |block, length| short(block, length),
            |list| match unknown {
                None => self.say("ask-block", args! { "blocks" => list }),
                Some(unknown) => {
                    let unknown = short(unknown, SHORT_NAME);
                    self.say(
                        "ask-block-unknown",
                        args! { "unknown" => unknown, "blocks" => list },
                    )
                }
            },
        )
    }
}
