//! Signs of a whole text that something is asked, each a bit: few, and worth more than any one word.

use crate::{
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain},
    reading::{Query, Sender, Stance},
    spoken::queries::{is_question, is_trade},
};

/// All signs.
pub(crate) const SIGNALS: usize = 32;

/// The signs of a text, one bit each.
pub(crate) type Signals = u32;

/// What the lists alone make of a text.
#[derive(Clone, Copy)]
pub(crate) struct ByLists {
    /// It reports something.
    reports: bool,
    /// One bit for each stance.
    stances: u32,
}

impl ByLists {
    /// Of the reports and stances that the lists found.
    pub(crate) fn of(reports: bool, stances: &[Stance]) -> Self {
        let bits = stances.iter().map(|stance| 1 << (*stance as u32));
        Self {
            reports,
            stances: bits.fold(0, |all, bit| all | bit),
        }
    }
}

/// The longest texts of each size.
const SIZES: [usize; 4] = [2, 4, 8, 15];

/// The signs of a text.
pub(crate) fn signals(
    pieces: &[Piece<'_>],
    sender: Sender,
    lists: ByLists,
    asked: Option<&Query>,
) -> Signals {
    let any = |is: &dyn Fn(&Piece<'_>) -> bool| pieces.iter().any(is);
    let adviser = sender == Sender::Adviser;
    let asks = is_question(pieces);
    let trade = any(&is_trade);
    let topic = any(&|piece| piece.part(Meaning::topic).is_some());
    let place = any(&|piece| {
        let land = piece.is_any(&[Plain::Block, Plain::Land, Plain::Trees]);
        land || matches!(piece.sense, Sense::Block(_))
    });
    let name = any(&|piece| matches!(piece.sense, Sense::Group(_) | Sense::Member(_)));
    let told = lists.reports && lists.stances == 0;
    let signs = [
        adviser,
        asks,
        trade,
        topic,
        place,
        asks && (trade || topic || place),
        topic && (trade || place),
        told,
        lists.reports && !told,
        told && adviser,
        name,
        any(&|piece| piece.is_mark('?')),
        asked.is_some(),
        asked.is_some() && told,
    ];
    let size = SIZES.iter().filter(|most| pieces.len() > **most).count();
    let bits = signs.iter().enumerate();
    let bits = bits.fold(0, |all, (at, is)| all | u32::from(*is) << at);
    bits | (1 << (signs.len() + size)) | lists.stances << STANCES
}

/// Signs that a text is about work: an adviser, a word of the trade, land, a group or a person.
pub(crate) const OF_WORK: Signals = 1 | 1 << 2 | 1 << 4 | 1 << 10;

/// Signs that it is worded as a question.
pub(crate) const WORDED: Signals = 1 << 1 | 1 << 11;

/// The bit of the first stance.
const STANCES: u32 = 20;
