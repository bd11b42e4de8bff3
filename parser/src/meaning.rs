//! What a listed word can mean.
//!
//! One word may have several meanings ("plant" is work and a unit of count): the later steps
//! choose by neighbours. Deliberately absent: how a meaning acts; that is said where it is used.

use crate::{
    details::{Ailment, Cause, Extent, Material, Per, Unit, Wetness},
    kind::Kind,
    reading::{Alarm, Stance, Topic},
    when::Day,
};

/// One meaning of a listed word or phrase.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Meaning {
    /// Work or a sight.
    Kind(Kind),
    Ailment(Ailment),
    Cause(Cause),
    Fertiliser,
    Spray,
    Crop,
    Cover,
    Clone,
    Material(Material),
    Unit(Unit),
    Extent(Extent),
    Wetness(Wetness),
    Per(Per),
    DaysAgo(u16),
    Weekday(Day),
    Month(u8),
    /// "days ago": so many days for each one counted.
    Ago(u16),
    /// "days", "weeks": so many days each.
    Period(u16),
    Stance(Stance),
    Alarm(Alarm),
    /// A question about this.
    Topic(Topic),
    /// A question about this when an adviser texts.
    AdviserTopic(Topic),
    Numeral(Numeral),
    /// Everything that carries no value.
    Plain(Plain),
}

macro_rules! parts {
    ($($(#[$doc:meta])* $method:ident: $variant:ident($part:ty),)+) => {
        impl Meaning {
            $($(#[$doc])* pub(crate) fn $method(self) -> Option<$part> {
                if let Self::$variant(part) = self { Some(part) } else { None }
            })+
        }
    };
}

parts! {
    /// The kind of work that it names outright.
    kind: Kind(Kind),
    ailment: Ailment(Ailment),
    cause: Cause(Cause),
    unit: Unit(Unit),
    numeral: Numeral(Numeral),
    days_ago: DaysAgo(u16),
    weekday: Weekday(Day),
    month: Month(u8),
    ago: Ago(u16),
    period: Period(u16),
    topic: Topic(Topic),
    adviser_topic: AdviserTopic(Topic),
}

/// Part of a number in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Numeral {
    /// A value below a hundred, or a whole word such as Indonesian "seratus".
    Value(u32),
    /// Ten, hundred, thousand: multiplies what stands before it.
    Scale(u32),
    /// Adds to the unit before it, as Indonesian "belas" adds ten.
    Plus(u32),
    /// A loose measure that multiplies: a dozen.
    Loose(u32),
    /// "a" in "a hundred".
    One,
    /// "and" in "a hundred and twenty".
    Join,
    /// Half of the scale before it, as Vietnamese "rưỡi".
    HalfScale,
}

macro_rules! plain {
    ($($(#[$doc:meta])* $variant:ident = $text:literal,)+) => {
        /// A class of words without a value of their own.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub(crate) enum Plain { $($(#[$doc])* $variant,)+ }

        impl Plain {
            /// The class as one bit of a set.
            pub(crate) const fn bit(self) -> u64 {
                1 << self as u64
            }

            /// The class with this name in a pack.
            pub(crate) fn from_name(name: &str) -> Option<Self> {
                match name { $($text => Some(Self::$variant),)+ _ => None }
            }
        }
    };
}

plain! {
    /// "block", "plot".
    Block = "block",
    /// "farm", "hill": a block word only before a letter or a number.
    Land = "land",
    /// "row", "line".
    Row = "row",
    /// "rounds", "times".
    Round = "round",
    /// "trees", "plants".
    Trees = "trees",
    /// "gaps": missing trees, or what was filled.
    Gaps = "gaps",
    /// "tall": not branched with a count, height with a length.
    Tall = "tall",
    /// "weak" trees, counted beside dead ones.
    Weak = "weak",
    /// "last week".
    LastWeek = "last_week",
    /// "last month".
    LastMonth = "last_month",
    /// What stands before the days that have passed, as French "il y a".
    AgoBefore = "ago_before",
    /// What may stand before the year of a date, as Vietnamese "năm".
    Year = "year",
    /// The name of a month in a language that counts years from 543 before the common era.
    BuddhistMonth = "buddhist_month",
    /// What makes the number beside it a time of day, as Indonesian "jam".
    Clock = "clock",
    /// "last", before a weekday.
    Last = "last",
    /// "next", before a weekday or a period.
    Next = "next",
    /// "not", "no", "didn't".
    Negation = "negation",
    /// "not yet".
    NotYet = "not_yet",
    /// "yes".
    Yes = "yes",
    /// "no" as an answer.
    No = "no",
    /// "done".
    Done = "done",
    /// "later".
    Later = "later",
    /// "undo".
    Undo = "undo",
    /// "help".
    Help = "help",
    /// "stop".
    Stop = "stop",
    /// "start".
    Start = "start",
    /// "sorry", "i mean".
    Correction = "correction",
    /// "instead of", "not" between two values.
    Instead = "instead",
    /// "of", "out of" between two numbers.
    Of = "of",
    /// "to" between two numbers.
    To = "to",
    /// "and", "then".
    And = "and",
    /// "in", "on", "at" before a place.
    At = "at",
    /// "from", "for" before a person.
    From = "from",
    /// "I", "we".
    Subject = "subject",
    /// Father, mother.
    Relative = "relative",
    /// "please", "thanks".
    Courtesy = "courtesy",
    /// A small word without weight.
    Filler = "filler",
}
