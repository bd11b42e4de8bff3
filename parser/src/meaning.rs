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
    /// A unit of land of some country: how large, in square decimetres; none where that differs
    /// from place to place.
    Land(Option<u32>),
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

/// What a word can be, at a glance: its plain classes, and the sorts of its other meanings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Traits {
    /// One bit for each [`Plain`] class.
    pub(crate) plain: u64,
    /// One bit for each sort of meaning, as in [`sort`].
    pub(crate) sorts: u32,
}

impl Traits {
    /// The traits of a word with this meaning alone.
    pub(crate) const fn of(meaning: Meaning) -> Self {
        let plain = if let Meaning::Plain(class) = meaning {
            class.bit()
        } else {
            0
        };
        Self {
            plain,
            sorts: meaning.sort(),
        }
    }

    /// Those of both.
    pub(crate) const fn and(self, other: Self) -> Self {
        Self {
            plain: self.plain | other.plain,
            sorts: self.sorts | other.sorts,
        }
    }

    /// Whether any of these plain classes is there.
    pub(crate) const fn has_plain(self, classes: u64) -> bool {
        self.plain & classes != 0
    }

    /// Whether any of these sorts is there.
    pub(crate) const fn has(self, sorts: u32) -> bool {
        self.sorts & sorts != 0
    }
}

/// Sorts of meanings, one bit each. Plain classes have none.
pub(crate) mod sort {
    pub(crate) const KIND: u32 = 1;
    pub(crate) const AILMENT: u32 = 1 << 1;
    pub(crate) const CAUSE: u32 = 1 << 2;
    pub(crate) const FERTILISER: u32 = 1 << 3;
    pub(crate) const SPRAY: u32 = 1 << 4;
    pub(crate) const CROP: u32 = 1 << 5;
    pub(crate) const COVER: u32 = 1 << 6;
    pub(crate) const CLONE: u32 = 1 << 7;
    pub(crate) const MATERIAL: u32 = 1 << 8;
    pub(crate) const UNIT: u32 = 1 << 9;
    pub(crate) const EXTENT: u32 = 1 << 10;
    pub(crate) const WETNESS: u32 = 1 << 11;
    pub(crate) const PER: u32 = 1 << 12;
    pub(crate) const DAYS_AGO: u32 = 1 << 13;
    pub(crate) const WEEKDAY: u32 = 1 << 14;
    pub(crate) const MONTH: u32 = 1 << 15;
    pub(crate) const AGO: u32 = 1 << 16;
    pub(crate) const PERIOD: u32 = 1 << 17;
    pub(crate) const STANCE: u32 = 1 << 18;
    pub(crate) const ALARM: u32 = 1 << 19;
    pub(crate) const TOPIC: u32 = 1 << 20;
    pub(crate) const ADVISER_TOPIC: u32 = 1 << 21;
    pub(crate) const NUMERAL: u32 = 1 << 22;
    pub(crate) const LAND: u32 = 1 << 23;
    /// A part of a day as said.
    pub(crate) const DAY: u32 = DAYS_AGO | WEEKDAY | MONTH;
    /// A word of work, or a thing that names work.
    pub(crate) const WORK: u32 = KIND | AILMENT | CAUSE | FERTILISER | SPRAY | CROP | COVER | CLONE;
}

impl Meaning {
    /// The bit of its sort.
    pub(crate) const fn sort(self) -> u32 {
        match self {
            Self::Kind(_) => sort::KIND,
            Self::Ailment(_) => sort::AILMENT,
            Self::Cause(_) => sort::CAUSE,
            Self::Fertiliser => sort::FERTILISER,
            Self::Spray => sort::SPRAY,
            Self::Crop => sort::CROP,
            Self::Cover => sort::COVER,
            Self::Clone => sort::CLONE,
            Self::Material(_) => sort::MATERIAL,
            Self::Unit(_) => sort::UNIT,
            Self::Land(_) => sort::LAND,
            Self::Extent(_) => sort::EXTENT,
            Self::Wetness(_) => sort::WETNESS,
            Self::Per(_) => sort::PER,
            Self::DaysAgo(_) => sort::DAYS_AGO,
            Self::Weekday(_) => sort::WEEKDAY,
            Self::Month(_) => sort::MONTH,
            Self::Ago(_) => sort::AGO,
            Self::Period(_) => sort::PERIOD,
            Self::Stance(_) => sort::STANCE,
            Self::Alarm(_) => sort::ALARM,
            Self::Topic(_) => sort::TOPIC,
            Self::AdviserTopic(_) => sort::ADVISER_TOPIC,
            Self::Numeral(_) => sort::NUMERAL,
            Self::Plain(_) => 0,
        }
    }
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
    land: Land(Option<u32>),
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
    /// "both blocks".
    BothBlocks = "both_blocks",
    /// "all blocks".
    EveryBlock = "every_block",
    /// "group": the name of one stands beside it.
    Group = "group",
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
    /// "last year": too far back for a day.
    LastYear = "last_year",
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
    /// "not" of what follows alone, as Vietnamese "không"; behind the work it asks.
    Ahead = "ahead",
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
    /// "leg", "hand": a part of a person, and of no tree.
    Body = "body",
    /// "phone", "sim".
    Phone = "phone",
    /// "lost", "broken".
    Lost = "lost",
    /// What stands beside the number of a day of the month, as Portuguese "dia".
    DayNumber = "day_number",
}
