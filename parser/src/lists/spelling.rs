//! Tokens become words: listed, of every day, repaired, or parted where they were run together.
//!
//! Deliberately absent: phrases and names of more than one word (`cutter`).

use smallvec::SmallVec;

use crate::{
    glyphs::{
        fold::{BareWord, Folded, has_accents},
        token::{Shape, Token},
    },
    kind::Kind,
    lists::{
        called::is_name,
        compile::TURNS,
        lexicon::{Langs, Lexicon, Listed},
        pairs::{self, Slip},
        piece::{IN_PLACE_MAX, Trust},
        repair::{SURE_LETTERS_MIN, is_one_slip, is_shortened},
        runs::{Ways, Words, split_block, split_phrase, split_run, split_stranger},
        vocabulary::{Found, WordId},
    },
    meaning::{Meaning, Plain, Traits, sort},
    reading::Known,
};

/// The words of a text.
pub(crate) type WordTokens = SmallVec<[WordToken; IN_PLACE_MAX]>;

/// A token with the word that it is or was repaired to.
pub(crate) struct WordToken {
    pub(crate) token: Token,
    pub(crate) id: Option<WordId>,
    pub(crate) repaired: bool,
    pub(crate) two_kinds: Option<(Kind, Kind)>,
    pub(crate) trust: Trust,
    /// It is a word of every day that is not listed.
    pub(crate) everyday: bool,
}

impl WordToken {
    const fn plain(token: Token, id: Option<WordId>) -> Self {
        Self {
            token,
            id,
            repaired: false,
            two_kinds: None,
            trust: Trust::Full,
            everyday: false,
        }
    }

    fn found(token: Token, found: Option<Found>) -> Self {
        Self {
            everyday: found.is_some_and(|found| found.common),
            ..Self::plain(token, found.and_then(Found::listed_id))
        }
    }

    /// A hyphen behind a word, or a dot between two.
    pub(crate) fn is_inner_mark(&self, next: Option<&Self>) -> bool {
        let goes_on = next.is_some_and(|next| next.token.glued);
        self.is_glued('-') || (self.is_glued('.') && goes_on)
    }

    /// This mark, right behind a word.
    pub(crate) fn is_glued(&self, mark: char) -> bool {
        self.token.glued && self.token.shape == Shape::Mark(mark)
    }
}

/// Finds the words of a text.
pub(crate) struct Speller<'r, 'k> {
    pub(crate) folded: &'r Folded<'r>,
    pub(crate) lexicon: &'r Lexicon,
    pub(crate) own: Langs,
    pub(crate) known: &'k Known<'r>,
}

impl<'r> Speller<'r, '_> {
    /// Finds the words of these tokens; a token may be several.
    pub(crate) fn words(
        &self,
        mut tokens: impl Iterator<Item = Token> + Clone,
        words: &mut WordTokens,
    ) {
        let mut ways = Ways::default();
        while let Some(token) = tokens.next() {
            if words.len() == words.capacity() {
                // Room for all that is left, as long as spaces part the words.
                words.reserve((self.folded.text.len() - token.start) / 2 + 1);
            }
            let text = self.text(&token);
            let found = match token.shape {
                Shape::Mark(_) => None,
                Shape::Word | Shape::Figure(_) => self.lexicon.find(text),
            };
            let exact = found.and_then(Found::listed_id);
            if let Some(whole) = exact.and_then(|id| self.lexicon.expansion(id, self.own)) {
                words.extend(expanded(&token, &whole.parts));
                continue;
            }
            if token.shape == Shape::Word && self.is_foreign(found) {
                let before = words.last().and_then(|word| word.id);
                words.push(self.foreign(token, found, before));
                continue;
            }
            if found.is_some() || token.shape != Shape::Word || is_name(text, self.known) {
                words.push(WordToken::found(token, found));
                continue;
            }
            // "blockA1": the name goes on behind the word.
            let next = tokens.clone().next();
            if let Some((word, name)) = self.glued_name(&token, next.as_ref()) {
                tokens.next();
                words.push(word);
                words.push(name);
                continue;
            }
            self.unlisted(token, next.as_ref(), words, &mut ways);
        }
    }

    fn text(&self, token: &Token) -> &'r str {
        self.folded.text.get(token.start..token.end).unwrap_or("")
    }

    fn run_words(&self) -> Words<'r, '_> {
        Words {
            lexicon: self.lexicon,
            own: self.own,
            known: self.known,
        }
    }

    /// A word of no list: a slip, a run of words, or unknown.
    fn unlisted(
        &self,
        token: Token,
        next: Option<&Token>,
        words: &mut WordTokens,
        ways: &mut Ways,
    ) {
        let text = self.text(&token);
        let names_block = next.is_some_and(|next| is_name(self.text(next), self.known));
        // "ploot b" is a slip, "blockc" is block C.
        let block_word = names_block.then(|| self.block_word(text)).flatten();
        if let Some(id) = block_word {
            words.push(WordToken {
                repaired: true,
                ..WordToken::plain(token, Some(id))
            });
            return;
        }
        let written = self.folded.written(token.start, token.end);
        let border = split_block(text, written, self.run_words())
            .or_else(|| split_phrase(text, self.run_words()));
        let ends = border.map(|border| [(0, border), (border, text.len())]);
        let mut run = ends.as_ref().map_or(&[][..], |ends| ends);
        if run.is_empty() || names_block {
            let last = words.last();
            let before = last.and_then(|word| word.id);
            let after = next.and_then(|next| self.lexicon.find(self.text(next))?.listed_id());
            let repaired = match unaccented(text) {
                Some(plain) => self.repair(&token, plain.as_str(), (before, after)),
                None => self.repair(&token, text, (before, after)),
            };
            // "vingtcinq" is two number words, and no slip of one.
            if repaired.id.is_some_and(|id| !self.is_far_number(text, id)) {
                words.push(repaired);
                return;
            }
            let is_figure = |word: &WordToken| matches!(word.token.shape, Shape::Figure(_));
            let after_number = last.is_some_and(is_figure);
            let names = last
                .and_then(|word| word.id)
                .is_some_and(|id| self.traits(id).has_plain(Plain::Block.bit()));
            // "plot Hilltop" is a name.
            if !(names && written.starts_with(char::is_uppercase)) {
                run = split_run(text, self.run_words(), after_number, ways);
            }
            if run.is_empty() {
                let trust = if repaired.trust == Trust::Suspect {
                    Trust::Suspect
                } else {
                    Trust::Full
                };
                let unlisted = WordToken {
                    id: None,
                    repaired: false,
                    trust,
                    ..repaired
                };
                self.stranger(text, unlisted, words);
                return;
            }
        }
        for &(start, end) in run {
            let part = Token {
                start: token.start + start,
                end: token.start + end,
                shape: Shape::Word,
                glued: token.glued || start > 0,
            };
            let found = self.lexicon.find(self.text(&part));
            words.push(WordToken::found(part, found));
        }
    }

    /// Whether a word is listed only in languages that the phone does not use.
    fn is_foreign(&self, found: Option<Found>) -> bool {
        let own = |id| self.lexicon.may_be_meant(id, self.own);
        let listed = found.and_then(Found::listed_id);
        listed.is_some_and(|id| !own(id)) && !found.is_some_and(|found| found.common)
    }

    /// A foreign word: it may be a slip of one of the phone's own languages.
    fn foreign(&self, token: Token, found: Option<Found>, before: Option<WordId>) -> WordToken {
        let listed = found.and_then(Found::listed_id);
        let word = WordToken::found(token, found);
        let text = self.text(&word.token);
        let stops = |id| self.traits(id).has_plain(Plain::Stop.bit());
        let says = listed.is_some_and(|id| self.has_weight(id) || stops(id));
        let repaired = self.repair(&word.token, text, (before, None));
        if says {
            // It is understood as it stands.
            return word;
        }
        if repaired.id.is_some() {
            return repaired;
        }
        WordToken {
            trust: repaired.trust,
            ..word
        }
    }

    /// A word of no list, or one that runs on into a listed word.
    fn stranger(&self, text: &str, word: WordToken, words: &mut WordTokens) {
        let joint = split_stranger(text, self.run_words()).filter(|_| word.two_kinds.is_none());
        let Some(joint) = joint else {
            words.push(word);
            return;
        };
        let border = word.token.start + joint.border;
        let ends = [(word.token.start, border), (border, word.token.end)];
        for (start, end) in ends {
            let part = Token {
                start,
                end,
                shape: Shape::Word,
                glued: word.token.glued || start == border,
            };
            let found = self.lexicon.find(self.text(&part));
            let is_listed = found.is_some_and(|found| found.listed);
            words.push(WordToken {
                repaired: is_listed,
                trust: if is_listed && joint.is_work {
                    Trust::Guess
                } else {
                    Trust::Full
                },
                ..WordToken::found(part, found)
            });
        }
    }

    /// A number word that is more than one slip away: it is not guessed.
    fn is_far_number(&self, text: &str, id: WordId) -> bool {
        let listed = self.lexicon.single(id, self.own);
        let is_number = listed.is_some_and(|listed| listed.traits().has(sort::NUMERAL));
        let spelling = self.lexicon.words.spelling(id).unwrap_or("");
        is_number && !is_one_slip(text, spelling)
    }

    /// The word for a block that a word before a block's name is a slip of. It only says what the
    /// name says too, so that short words may be mended here.
    fn block_word(&self, text: &str) -> Option<WordId> {
        let lexicon = self.lexicon;
        let mut near = lexicon.block_words.iter().filter(|(langs, id)| {
            let listed = lexicon.words.spelling(*id).unwrap_or("");
            (self.own == 0 || langs & self.own != 0) && is_one_slip(text, listed)
        });
        near.next().map(|(_, id)| *id)
    }

    /// "blocka" and "1", where A1 is a block: the word and the name.
    fn glued_name(&self, token: &Token, next: Option<&Token>) -> Option<(WordToken, WordToken)> {
        let next = next.filter(|next| next.glued && matches!(next.shape, Shape::Figure(_)))?;
        let run = self.folded.text.get(token.start..next.end)?;
        let border = split_block(run, "", self.run_words())?;
        let part = |start: usize, end: usize, glued: bool| Token {
            start: token.start + start,
            end: token.start + end,
            shape: Shape::Word,
            glued,
        };
        let word = part(0, border, token.glued);
        let name = part(border, run.len(), true);
        let found = self.lexicon.find(self.text(&word));
        Some((WordToken::found(word, found), WordToken::plain(name, None)))
    }

    /// One guarded repair: never of a common word, never between two kinds. A short word is only
    /// guessed at, and only where the phone's language is known.
    fn repair(
        &self,
        token: &Token,
        text: &str,
        (before, after): (Option<WordId>, Option<WordId>),
    ) -> WordToken {
        let mut word = WordToken::plain(*token, None);
        let lexicon = self.lexicon;
        match pairs::slip(text, (before, after), self.lexicon, self.own) {
            Some(Slip::Of(id)) => {
                word.id = Some(id);
                word.repaired = true;
                return word;
            }
            Some(Slip::Unsure) => {
                word.trust = Trust::Suspect;
                return word;
            }
            None => {}
        }
        let is_short = text.len() < SURE_LETTERS_MIN;
        if is_short && self.own == 0 {
            return word;
        }
        let nearest = lexicon.repairs.nearest(text, &lexicon.words, |id| {
            lexicon.may_be_meant(id, self.own) && (self.own != 0 || self.is_long(id))
        });
        // "leaf flling": the word that goes on a phrase.
        let is_pair = |pair: [Option<WordId>; 2]| {
            let found = self.lexicon.longest(pair.into_iter(), self.own);
            found.is_some_and(|(_, used)| used == 2)
        };
        let goes_on = nearest
            .iter()
            .find(|id| is_pair([before, Some(*id)]) || is_pair([Some(*id), after]));
        let kind = |id: WordId| {
            let listed = self.lexicon.single(id, self.own)?;
            listed.meanings().find_map(Meaning::kind)
        };
        let first = nearest.iter().next();
        let other = nearest.iter().find(|id| kind(*id) != first.and_then(kind));
        let only = first.filter(|_| other.is_none());
        if goes_on.is_some() {
            word.id = goes_on;
        } else if let Some(id) = only {
            let is_sure = !is_short && self.is_long(id);
            let shortened = is_shortened(text, lexicon.words.spelling(id).unwrap_or(""));
            let may_guess =
                self.may_guess(id) && (shortened || (nearest.is_cheap() && !is_tiny(text)));
            word.id = (is_sure || may_guess).then_some(id);
            if !is_sure && !shortened && self.has_weight(id) {
                word.trust = Trust::Guess;
            }
        } else if let (Some(one), Some(other)) = (first.and_then(kind), other.and_then(kind)) {
            word.two_kinds = Some((one, other)).filter(|_| !is_short);
        }
        word.repaired = word.id.is_some();
        if word.id.is_none() {
            let is_suspect = if is_tiny(text) {
                lexicon.is_near_turn(text, self.own)
            } else {
                nearest.iter().any(|id| self.has_weight(id))
            };
            word.trust = if is_suspect {
                Trust::Suspect
            } else {
                Trust::Full
            };
        }
        word
    }

    fn is_long(&self, id: WordId) -> bool {
        let spelling = self.lexicon.words.spelling(id);
        spelling.is_some_and(|listed| listed.len() >= SURE_LETTERS_MIN)
    }

    /// Whether a short word may be taken for this one: no number, and nothing that turns what is
    /// said around.
    fn may_guess(&self, id: WordId) -> bool {
        let traits = self.traits(id);
        !traits.has(sort::NUMERAL | sort::STANCE | sort::ALARM) && !traits.has_plain(ANSWERS)
    }

    /// Whether a word says something by itself.
    fn has_weight(&self, id: WordId) -> bool {
        let traits = self.traits(id);
        traits.has(WEIGHTY) || traits.has_plain(TURNS)
    }

    fn traits(&self, id: WordId) -> Traits {
        let listed = self.lexicon.single(id, self.own);
        listed.map_or(Traits::default(), Listed::traits)
    }
}

/// The letters without their accents, if they have any; slips are looked for there.
pub(crate) fn unaccented(text: &str) -> Option<BareWord> {
    (!text.is_ascii() && has_accents(text)).then(|| BareWord::new(text))
}

/// A text of so few letters may be anything.
fn is_tiny(text: &str) -> bool {
    text.len() < GUESS_LETTERS_MIN
}

/// Shorter words are guessed only where a vowel was left out.
pub(crate) const GUESS_LETTERS_MIN: usize = 4;
/// What carries a value of a report, or takes it back.
const WEIGHTY: u32 = sort::WORK
    | sort::WETNESS
    | sort::EXTENT
    | sort::DAY
    | sort::AGO
    | sort::NUMERAL
    | sort::STANCE;
/// What is said to the bot, and corrections.
const ANSWERS: u64 = Plain::Yes.bit()
    | Plain::No.bit()
    | Plain::Undo.bit()
    | Plain::Stop.bit()
    | Plain::Start.bit()
    | Plain::Help.bit()
    | Plain::Later.bit()
    | Plain::Done.bit()
    | Plain::Correction.bit()
    | Plain::Instead.bit();

/// The words that one word stands for. The first has its place in the text, the others stand at its
/// end.
fn expanded(token: &Token, parts: &[(WordId, Shape)]) -> impl Iterator<Item = WordToken> {
    let starts = [token.start]
        .into_iter()
        .chain(core::iter::repeat(token.end));
    let end = token.end;
    let glued = token.glued;
    parts.iter().zip(starts).map(move |((id, shape), start)| {
        let token = Token {
            start,
            end,
            shape: *shape,
            glued,
        };
        WordToken::plain(token, Some(*id))
    })
}
