//! The uses of a number: counted, weighed, measured, a block, a day, or nothing that is kept.
//!
//! Deliberately absent: how the use of a number is found (`uses`, `roles`).

use smallvec::SmallVec;

use crate::{kind::Kind, lists::piece::IN_PLACE_MAX};

/// What a number is used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Use {
    /// Money, people, hours, rows, a dimension.
    Nothing,
    Count,
    /// Of so many that were looked at.
    Of,
    Amount,
    Area,
    /// A girth or a height.
    Value,
    /// Millimetres of rain.
    Rain,
    /// The name of a block.
    Place,
    /// A day of the month.
    Day,
}

impl Use {
    /// Whether a number of this kind of work can be used so.
    pub(crate) const fn suits(self, kind: Kind) -> bool {
        match self {
            Self::Nothing | Self::Place | Self::Day => true,
            Self::Count | Self::Of => !matches!(kind, Kind::Rain),
            Self::Amount => kind.takes_amount() && !matches!(kind, Kind::Rain),
            Self::Area => !kind.needs_values() && !matches!(kind, Kind::Rain),
            Self::Value => kind.needs_values(),
            Self::Rain => matches!(kind, Kind::Rain),
        }
    }
}

/// All uses, in the order of their columns.
pub(crate) const ALL: [Use; 9] = [
    Use::Nothing,
    Use::Count,
    Use::Of,
    Use::Amount,
    Use::Area,
    Use::Value,
    Use::Rain,
    Use::Place,
    Use::Day,
];

/// The use of each number, and by how much it is likelier than another.
pub(crate) type Uses = SmallVec<[Option<(Use, i32)>; IN_PLACE_MAX]>;
