//! Decides where a letter, a code or a number is the name of a block.
//!
//! "A" is a block, an article, or neither; "2" is a count, or block 2. The neighbours decide.
//! Deliberately absent: whether the farmer has such a block; the scheduler crate asks that.

use smallvec::SmallVec;

use crate::{
    glyphs::fold::{Folded, has_accents},
    lists::{
        called::letter_named,
        piece::{IN_PLACE_MAX, Piece, Pieces, Sense},
    },
    meaning::{Meaning, Numeral, Plain, sort},
    pieces::{codes::join_codes, endings, known::is_clear_work},
    reading::Known,
};

/// The name of a block is a letter and at most two digits.
const CODE_CHARS_MAX: usize = 3;
/// Further on nothing is looked for, so that the time for a text grows with its length alone.
const NEAR_PIECES_MAX: usize = 48;
/// The plain letters that a letter of another script may look like.
const CAPITALS: [&str; 26] = [
    "A", "B", "C", "D", "E", "F", "G", "H", "I", "J", "K", "L", "M", "N", "O", "P", "Q", "R", "S",
    "T", "U", "V", "W", "X", "Y", "Z",
];

/// Settles every piece that may be the name of a block.
pub(crate) fn settle<'r>(pieces: &mut Pieces<'r>, folded: &'r Folded<'r>, known: &Known<'r>) {
    // The pieces do not change meanwhile.
    let mut settled: SmallVec<[(usize, Sense<'r>); IN_PLACE_MAX]> = SmallVec::new();
    let works = pieces.iter().any(|piece| piece.kind().is_some());
    for at in 0..pieces.len() {
        let here = Here {
            pieces,
            at,
            folded,
            known,
            works,
        };
        if let Some(sense) = here.settled() {
            if settled.len() == settled.capacity() {
                settled.reserve(pieces.len() - at);
            }
            settled.push((at, sense));
        }
    }
    for &(at, sense) in &settled {
        if let Some(piece) = pieces.get_mut(at) {
            piece.becomes(sense);
        }
    }
    join_codes(pieces, folded);
    endings::settle(pieces, folded, known);
}

struct Here<'a, 'r> {
    pieces: &'a [Piece<'r>],
    at: usize,
    folded: &'r Folded<'r>,
    known: &'a Known<'r>,
    /// Work is named somewhere in the text.
    works: bool,
}

impl<'r> Here<'_, 'r> {
    /// The new sense of the piece, if it changes.
    fn settled(&self) -> Option<Sense<'r>> {
        let piece = self.pieces.get(self.at)?;
        let is_unknown = matches!(piece.sense, Sense::Unknown);
        // Most words are listed and too long for the name of a block.
        let is_long = piece.end - piece.start > CODE_CHARS_MAX;
        if (is_long && piece.listed().is_some()) || matches!(piece.sense, Sense::Mark(_)) {
            return None;
        }
        if let Some(own) = self.named_letter(piece) {
            return Some(Sense::Block(own));
        }
        let written = self.code(piece);
        let is_block = if piece.number().is_some() {
            self.number_is_block(written)
        } else if is_code(written) && (is_unknown || piece.listed().is_some()) {
            self.code_is_block(written, is_unknown)
        } else {
            // "plot Hilltop": a name that we do not know is still a name.
            let is_name = || {
                written.starts_with(char::is_uppercase)
                    || (!written.is_ascii() && written.chars().count() == 1)
            };
            is_unknown && self.after(Plain::Block) && is_name()
        };
        is_block.then(|| Sense::Block(self.own(written).unwrap_or(written)))
    }

    /// "lô bê", "แปลงบี", "ബി 4": one of the farmer's letters by its name, after a word for a block or
    /// where scripts without capitals write a lone letter.
    fn named_letter(&self, piece: &Piece<'_>) -> Option<&'r str> {
        let name = self.folded.text.get(piece.start..piece.end)?;
        let (letter, alone) = letter_named(name)?;
        let own = self.own(letter)?;
        let begins = || {
            self.previous().is_none_or(|before| {
                matches!(before.sense, Sense::Mark(_)) || before.is_plain(Plain::Courtesy)
            })
        };
        let before_place = || {
            self.next()
                .is_some_and(|next| next.is_any(&[Plain::At, Plain::Block]) || next.is_mark(':'))
        };
        let is_place =
            self.after_block_word() || (alone && (begins() || before_place() || self.works));
        is_place.then_some(own)
    }

    /// The piece as written; in plain letters where it was written in others that look alike.
    fn code(&self, piece: &Piece<'_>) -> &'r str {
        let written = self.folded.written(piece.start, piece.end);
        if written.is_ascii() || written.chars().count() > CODE_CHARS_MAX {
            return written;
        }
        let plain = self.folded.text.get(piece.start..piece.end);
        let upper = CAPITALS.iter().find(|capital| {
            written.starts_with(char::is_uppercase)
                && plain.is_some_and(|plain| plain.eq_ignore_ascii_case(capital))
        });
        match upper {
            Some(capital) => capital,
            None => plain.filter(|plain| plain.is_ascii()).unwrap_or(written),
        }
    }

    fn number_is_block(&self, written: &str) -> bool {
        match self.own(written) {
            Some(_) => self.after_block_word() || self.after(Plain::At),
            None => self.names_new_block(written),
        }
    }

    /// "plot 7" names a block that we do not know. "dam 11", where the word also means work and the
    /// farmer's blocks are known, counts.
    fn names_new_block(&self, written: &str) -> bool {
        let works = self
            .previous()
            .is_some_and(|piece| piece.kind().is_some() && !self.known.blocks.is_empty());
        self.after_block_word() && written.len() <= 2 && !self.counts() && !works
    }

    fn code_is_block(&self, written: &str, is_unknown: bool) -> bool {
        self.after_block_word()
            || match self.own(written) {
                Some(_) => self.own_letter_is_block(written),
                None => {
                    // "in D" is a block, also where "d" is a small word.
                    let at = self.after(Plain::At) && self.is_capital_inside(written);
                    (is_unknown || at) && self.is_clear_code(written)
                }
            }
    }

    /// The pieces of a text of ordinary length; a longer one is a story.
    fn near(&self) -> impl Iterator<Item = &Piece<'r>> {
        self.pieces.iter().take(NEAR_PIECES_MAX)
    }

    fn previous(&self) -> Option<&Piece<'r>> {
        self.pieces.get(self.at.checked_sub(1)?)
    }

    fn next(&self) -> Option<&Piece<'r>> {
        self.pieces.get(self.at + 1)
    }

    fn own(&self, written: &str) -> Option<&'r str> {
        let mut blocks = self.known.blocks.iter();
        blocks
            .find(|own| own.eq_ignore_ascii_case(written))
            .copied()
    }

    fn after(&self, class: Plain) -> bool {
        self.previous().is_some_and(|piece| piece.is_plain(class))
    }

    /// "dead 8 habaq b aje": a letter that is no word, in a text of work.
    fn is_place_of_work(&self) -> bool {
        let is_word =
            self.is_listed() || self.pieces.get(self.at).is_some_and(|piece| piece.everyday);
        self.works && !is_word
    }

    fn is_latin(&self, piece: &Piece<'_>) -> bool {
        let text = self.folded.text.get(piece.start..piece.end).unwrap_or("");
        text.is_ascii() || has_accents(text)
    }

    fn is_listed(&self) -> bool {
        self.pieces
            .get(self.at)
            .is_some_and(|piece| piece.listed().is_some())
    }

    fn after_block_word(&self) -> bool {
        self.after(Plain::Block) || self.after(Plain::Land)
    }

    /// What follows is counted, so that a number here is a count.
    fn counts(&self) -> bool {
        let is_only_number = self
            .pieces
            .iter()
            .enumerate()
            .all(|(at, piece)| at == self.at || !matches!(piece.sense, Sense::Number(_)));
        self.next().is_some_and(|next| {
            (next.kind().is_some() && is_only_number)
                || next.is_plain(Plain::Trees)
                || next.means(|meaning| matches!(meaning, Meaning::Unit(_)))
        })
    }

    /// One of the farmer's own letters: a block, unless it reads as an article or stands beside
    /// a word that we do not know.
    fn own_letter_is_block(&self, written: &str) -> bool {
        if self.after_block_word() {
            return true;
        }
        if self.is_article(written) || self.is_polite() || self.is_at_in_chat(written) {
            return false;
        }
        if self.after(Plain::At) {
            return true;
        }
        let beside_unknown = [self.previous(), self.next()]
            .into_iter()
            .flatten()
            .any(|piece| {
                // Between letters of another script a letter is no word.
                matches!(piece.sense, Sense::Unknown | Sense::TwoKinds(..)) && self.is_latin(piece)
            });
        let is_capital = written.starts_with(|letter: char| letter.is_ascii_uppercase());
        // "on a planté 120": no block, but the verb.
        if !is_capital && self.after(Plain::Subject) && self.is_listed() && self.next().is_some() {
            return false;
        }
        let after_number = self
            .previous()
            .is_some_and(|piece| matches!(piece.sense, Sense::Number(_)));
        let is_unit = after_number
            && !is_capital
            && self
                .pieces
                .get(self.at)
                .is_some_and(|piece| piece.means(|meaning| matches!(meaning, Meaning::Unit(_))));
        // "died b habaq 4": the work beside it says enough of a letter that is no word.
        let after_work = !self.is_listed()
            && self.previous().is_some_and(|piece| {
                piece.kind().is_some() || piece.number().is_some() || piece.is_plain(Plain::Trees)
            });
        !is_unit && (is_capital || !beside_unknown || after_work || self.is_place_of_work())
    }

    /// "wifi ouvert a 95": a letter that is also "at", before a number, in a text of no clear work with
    /// a word that we do not know.
    fn is_at_in_chat(&self, written: &str) -> bool {
        let is_small = !written.starts_with(char::is_uppercase) && self.is_listed();
        let is_number = self.next().is_some_and(|next| next.number().is_some());
        let is_strange = |piece: &Piece<'_>| matches!(piece.sense, Sense::Unknown);
        let strange = || self.near().any(is_strange);
        is_small && is_number && strange() && !self.near().any(is_clear_work)
    }

    /// "lam co lo B a": a letter that is also a polite word, where each work has its block.
    fn is_polite(&self) -> bool {
        let is_polite = |piece: &Piece<'_>| piece.is_plain(Plain::Courtesy);
        if !self.pieces.get(self.at).is_some_and(is_polite) {
            return false;
        }
        let others = self.near().filter(|piece| !is_polite(piece));
        let places = others.filter(|piece| {
            matches!(piece.sense, Sense::Block(_)) || self.own(self.code(piece)).is_some()
        });
        let works = self.near().filter(|piece| piece.is_of(sort::WORK));
        let (places, works) = (places.count(), works.count());
        // "18 không phải 14a", but "b khong phai a".
        let counts = works == 0
            && self
                .previous()
                .is_some_and(|piece| piece.number().is_some());
        let is_denied = self.previous().is_some_and(|piece| {
            piece.is_any(&[Plain::Instead, Plain::Negation, Plain::Correction])
        });
        !is_denied && works <= places && (places > 0 || counts)
    }

    /// A letter that is also a small word: "a tree", "a cow"; but "weeded a", "a dead 8", "A fire 25".
    fn is_article(&self, written: &str) -> bool {
        let is_small_word = self.pieces.get(self.at).is_some_and(|piece| {
            piece.is_plain(Plain::Filler)
                || piece.means(|meaning| meaning == Meaning::Numeral(Numeral::One))
        });
        let Some(next) = self.next().filter(|_| is_small_word) else {
            return false;
        };
        if self.is_capital_inside(written) {
            return false;
        }
        let is_thing = matches!(next.sense, Sense::Unknown | Sense::TwoKinds(..))
            || next.is_any(&[Plain::Trees, Plain::Row, Plain::Round, Plain::Block])
            || next.means(|meaning| {
                matches!(
                    meaning,
                    Meaning::Unit(_) | Meaning::Numeral(Numeral::Scale(_) | Numeral::Loose(_))
                )
            });
        let is_cause = next.means(|meaning| matches!(meaning, Meaning::Cause(_)));
        let counted = self
            .previous()
            .is_some_and(|piece| piece.number().is_some() || piece.is_plain(Plain::Trees))
            || self
                .pieces
                .get(self.at + 2)
                .is_some_and(|piece| piece.number().is_some());
        let has_number = || self.pieces.iter().any(|piece| piece.number().is_some());
        let is_capital = written.starts_with(|letter: char| letter.is_ascii_uppercase());
        is_thing
            || (is_cause && !counted && !(is_capital && has_number()))
            || (!is_capital && !is_cause && !may_follow_block(next))
    }

    /// "weeded A abeg": nobody writes an article in capitals, unless it begins a sentence or all of
    /// the text is in capitals.
    fn is_capital_inside(&self, written: &str) -> bool {
        let begins = self.previous().is_none_or(|piece| {
            matches!(piece.sense, Sense::Mark(_)) || piece.is_plain(Plain::Courtesy)
        });
        let has_small_letters = self.folded.source.contains(char::is_lowercase);
        written.starts_with(|letter: char| letter.is_ascii_uppercase())
            && !begins
            && has_small_letters
    }

    /// A letter in capitals, or a letter with digits, that stands like a block name.
    fn is_clear_code(&self, written: &str) -> bool {
        if !written.starts_with(|letter: char| letter.is_ascii_uppercase()) || written == "I" {
            return false;
        }
        let beside_work = |piece: Option<&Piece<'_>>| {
            piece.is_some_and(|piece| {
                piece.kind().is_some()
                    || piece.is_any(&[Plain::At, Plain::And, Plain::Trees, Plain::Block])
                    || matches!(
                        piece.sense,
                        Sense::Number(_) | Sense::When(_) | Sense::Block(_)
                    )
                    || piece.means(|meaning| {
                        matches!(
                            meaning,
                            Meaning::Unit(_)
                                | Meaning::Fertiliser
                                | Meaning::Ailment(_)
                                | Meaning::Cause(_)
                        )
                    })
            })
        };
        beside_work(self.previous()) || beside_work(self.next())
    }
}

/// What stands after a block written "a": the end, work, a number, a day, a small word that joins.
fn may_follow_block(piece: &Piece<'_>) -> bool {
    piece.kind().is_some()
        || piece.is_any(&[
            Plain::And,
            Plain::Courtesy,
            Plain::Negation,
            Plain::NotYet,
            Plain::LastWeek,
            Plain::LastMonth,
        ])
        || piece.means(|meaning| {
            matches!(
                meaning,
                Meaning::DaysAgo(_)
                    | Meaning::Weekday(_)
                    | Meaning::Fertiliser
                    | Meaning::Ailment(_)
                    | Meaning::Numeral(Numeral::Value(_))
            )
        })
        || matches!(
            piece.sense,
            Sense::Mark(_)
                | Sense::Number(_)
                | Sense::When(_)
                | Sense::Triple(_)
                | Sense::Fraction(..)
                | Sense::Block(_)
                | Sense::List { .. }
        )
}

/// A letter, or a letter and one or two digits.
fn is_code(written: &str) -> bool {
    let mut letters = written.chars();
    let letter = letters
        .next()
        .is_some_and(|letter| letter.is_ascii_alphabetic());
    let digits = letters.as_str();
    letter && digits.len() <= 2 && digits.bytes().all(|byte| byte.is_ascii_digit())
}
