//! Sheets: the figures that answers by text show, as tables to be printed.
//!
//! Each sheet is a file here. Deliberately absent: how a table is written, which is the room
//! `sheet`, and what is kept of one that was printed, which is the deeds'.

mod cards;
mod census;
mod handover;
mod holds;
mod maker;
mod meeting;
mod pickup;
mod season;
mod shares;
mod visits;

use budwood_scheduler::{BlockId, Group};

use self::maker::Maker;
use crate::{engine::view::View, sheet::Sheet, words::printed::SheetKind};

/// A sheet that somebody wants.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetOrder {
    /// Which.
    pub kind: SheetKind,
    /// Of which group.
    pub group: String,
    /// In which language; without it the adviser's.
    pub language: Option<String>,
}

impl<'a> View<'a> {
    /// The blocks of the rows of a sheet, if they are to be kept.
    pub(crate) fn rows_to_keep(self, kind: SheetKind, group: &'a Group) -> Option<Vec<BlockId>> {
        (kind == SheetKind::Meeting).then(|| self.meeting_blocks(group))
    }

    /// A sheet of a group, under the number by which its rows are kept.
    pub(crate) fn sheet(
        self,
        order: &'a SheetOrder,
        group: &'a Group,
        number: Option<u32>,
    ) -> Sheet {
        let adviser = group.adviser.and_then(|adviser| self.person(adviser));
        let texts = &self.setup.texts;
        let wanted = [
            order.language.as_deref(),
            adviser.map(|adviser| adviser.language.as_str()),
        ];
        let mut wanted = wanted.into_iter().flatten();
        let language = wanted.find_map(|code| texts.known(code)).unwrap_or("en");
        let maker = Maker {
            view: self,
            group,
            tongue: texts.tongue(&[language]),
            language,
        };
        let sheet = match order.kind {
            SheetKind::Meeting => maker.meeting(number),
            SheetKind::Shares => maker.shares(),
            SheetKind::Pickup => maker.pickup(),
            SheetKind::Visits => maker.visits(),
            SheetKind::Holds => maker.holds(),
            SheetKind::Census => maker.census(),
            SheetKind::Cards => maker.cards(),
            SheetKind::Season => maker.season(),
            SheetKind::Handover => maker.handover(),
        };
        maker.stamped(sheet, number)
    }
}
