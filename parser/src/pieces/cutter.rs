//! Tokens become pieces: listed phrases, names, numbers, marks.
//!
//! The names of this conversation come first, then the longest listed phrase, then one guarded
//! repair, then words run together. Deliberately absent: what depends on the pieces around.

use crate::{
    glyphs::names::{Called, is_long_name},
    glyphs::{
        figure::{Figure, Values},
        fold::Folded,
        token::{Shape, tokens},
    },
    lists::{
        called::{is_block_like, name_len_within},
        lexicon::{Langs, Lexicon},
        piece::{Piece, Pieces, Sense, Trust},
        spelling::{Speller, WordToken, WordTokens},
    },
    meaning::{Plain, Traits},
    pack::PHRASE_WORDS_MAX,
    reading::Known,
};

/// Cuts a folded text into pieces.
pub(crate) fn pieces<'r>(
    folded: &'r Folded<'r>,
    lexicon: &'r Lexicon,
    own: Langs,
    known: &Known<'r>,
    pieces: &mut Pieces<'r>,
) {
    let whole = |run: &str| lexicon.is_word(run) || is_block_like(run, known);
    let tokens = tokens(&folded.text, whole);
    let names = [known.blocks, known.groups, known.members];
    let cutter = Cutter {
        folded,
        lexicon,
        own,
        known,
        has_names: !known.rolls.is_empty()
            || names.into_iter().flatten().any(|name| is_long_name(name)),
        has_small_letters: folded.source.contains(char::is_lowercase),
    };
    let speller = Speller {
        folded,
        lexicon,
        own,
        known,
    };
    let mut words = WordTokens::new();
    speller.words(tokens, &mut words);
    if let Some(stop) = cutter.whole_stop(&words) {
        pieces.push(stop);
        return;
    }
    pieces.reserve(words.len());
    let mut at = 0;
    while let Some(token) = words.get(at) {
        let found = cutter.name(&words, at);
        let used = if let Some((name, used)) = found {
            pieces.push(name);
            used
        } else if let Some((phrase, used)) = cutter.phrase(&words, at) {
            pieces.push(phrase);
            used
        } else {
            pieces.push(cutter.lone(token));
            1
        };
        at += used.max(1);
    }
}

type ToSense<'r> = fn(&'r str) -> Sense<'r>;

struct Cutter<'r, 'k> {
    folded: &'r Folded<'r>,
    lexicon: &'r Lexicon,
    own: Langs,
    known: &'k Known<'r>,
    /// Some name is more than a letter or a number.
    has_names: bool,
    /// Not all of the text is in capitals.
    has_small_letters: bool,
}

impl<'r> Cutter<'r, '_> {
    /// A name of this conversation that begins here.
    fn name(&self, words: &[WordToken], at: usize) -> Option<(Piece<'r>, usize)> {
        if !self.has_names {
            return None;
        }
        let start = words.get(at)?.token.start;
        let rest = self.folded.text.get(start..)?;
        let known = self.known;
        let kinds: [(_, ToSense<'r>); 3] = [
            (known.blocks, Sense::Block),
            (known.groups, Sense::Group),
            (known.members, Sense::Member),
        ];
        let mut best: Option<(usize, Sense<'r>)> = None;
        for (names, sense) in kinds {
            for name in names {
                if !is_long_name(name) {
                    continue;
                }
                let first = self
                    .first_name(name)
                    .and_then(|first| name_len_within(rest, first));
                let Some(len) = name_len_within(rest, name).or(first) else {
                    continue;
                };
                if len > best.as_ref().map_or(0, |best| best.0) {
                    best = Some((len, sense(name)));
                }
            }
        }
        if let Some((len, name)) = self.on_a_roll(words, at, rest)
            && len > best.as_ref().map_or(0, |best| best.0)
        {
            best = Some((len, Sense::Member(name)));
        }
        let (len, sense) = best?;
        let end = start + len;
        let used = words
            .iter()
            .skip(at)
            .take_while(|word| word.token.end <= end)
            .count();
        let ends_here = words.get((at + used).checked_sub(1)?)?.token.end == end;
        let piece = Piece {
            start,
            end,
            sense,
            traits: Traits::default(),
            torn: false,
            everyday: false,
            trust: Trust::Full,
            repaired: None,
        };
        ends_here.then_some((piece, used))
    }

    /// Somebody of the groups whose names begin here.
    fn on_a_roll(&self, words: &[WordToken], at: usize, rest: &str) -> Option<(usize, &'r str)> {
        let start = words.get(at)?.token.start;
        let behind = || words.iter().skip(at).map(|word| word.token.end - start);
        let mut best: Option<(usize, Called<'r>)> = None;
        for names in self.known.rolls {
            let Some((len, called)) = names.longest(rest, behind()) else {
                continue;
            };
            best = match best {
                Some((longer, _)) if longer > len => best,
                Some((same, known)) if same == len => Some((len, known.or(called))),
                Some(_) | None => Some((len, called)),
            };
        }
        let (len, called) = best?;
        Some((len, called.one()?))
    }

    /// The first name of a person, if nobody else in this conversation has it.
    fn first_name(&self, name: &str) -> Option<&'r str> {
        let first = |name: &'r str| name.split_whitespace().next();
        let members = self.known.members;
        let whole = members.iter().find(|member| **member == name)?;
        let same = members
            .iter()
            .filter(|member| first(member) == first(whole));
        first(whole).filter(|_| same.count() == 1)
    }

    /// A text that is nothing but the phrase of some language for "no more texts". A phone's own
    /// first word must not hide it.
    fn whole_stop(&self, words: &[WordToken]) -> Option<Piece<'r>> {
        let is_mark = |word: &WordToken| matches!(word.token.shape, Shape::Mark(_));
        let len = words.iter().rposition(|word| !is_mark(word))? + 1;
        let phrase = words.get(..len).filter(|phrase| phrase.len() > 1)?;
        if len > PHRASE_WORDS_MAX {
            return None;
        }
        let id = |word: &WordToken| {
            let text = self.folded.text.get(word.token.start..word.token.end)?;
            // Nearly always it has been found already.
            let found = word.id.and_then(|id| self.lexicon.words.spelling(id));
            if found == Some(text) {
                word.id
            } else {
                self.lexicon.word(text)
            }
        };
        let listed = self.lexicon.stop_phrase(phrase.iter().map(id))?;
        Some(Piece {
            start: phrase.first()?.token.start,
            end: phrase.last()?.token.end,
            sense: Sense::Listed(listed),
            traits: listed.traits(),
            torn: false,
            everyday: false,
            trust: Trust::Full,
            repaired: None,
        })
    }

    fn phrase(&self, words: &[WordToken], at: usize) -> Option<(Piece<'r>, usize)> {
        let here = words.get(at)?;
        let id = here.id?;
        // "ring-weeding", "h.nay": a mark inside a phrase does not part it.
        let along = (at..words.len())
            .filter(|index| {
                let next = words.get(index + 1);
                !words
                    .get(*index)
                    .is_some_and(|word| word.is_inner_mark(next))
            })
            .take(PHRASE_WORDS_MAX);
        // Most words begin no longer phrase. "B morts 3, A sarclé": the letter of a block, in
        // capitals among small letters, is no word.
        let longest = if !self.lexicon.begins_phrase(id) || self.is_own_capital(here) {
            1
        } else {
            PHRASE_WORDS_MAX
        };
        let ids = along.clone().take(longest);
        let ids = ids.map(|index| words.get(index)?.id);
        let (listed, count) = self.lexicon.longest(ids, self.own)?;
        let mut last = if count == 1 {
            at
        } else {
            along.clone().nth(count - 1)?
        };
        let has_dots = words
            .get(at..last)?
            .iter()
            .any(|word| word.token.shape == Shape::Mark('.'));
        // The last dot of "p.m." belongs to it.
        if has_dots && words.get(last + 1).is_some_and(|dot| dot.is_glued('.')) {
            last += 1;
        }
        // A lone number is a number, whatever phrases it also begins.
        if count == 1 && matches!(here.token.shape, Shape::Figure(_)) {
            return None;
        }
        let repaired = words
            .get(at..=last)?
            .iter()
            .find(|word| word.repaired)
            .and_then(|word| self.lexicon.words.spelling(word.id?));
        let piece = Piece {
            start: here.token.start,
            end: words.get(last)?.token.end,
            sense: Sense::Listed(listed),
            traits: listed.traits(),
            torn: false,
            // "hand" is listed for what befalls it; beside work it is as strange as before.
            everyday: listed.traits().has_plain(Plain::Body.bit()),
            // The other words of a phrase say that it is meant.
            trust: if count == 1 && here.trust == Trust::Guess {
                Trust::Guess
            } else {
                Trust::Full
            },
            repaired,
        };
        Some((piece, last - at + 1))
    }

    fn is_own_capital(&self, word: &WordToken) -> bool {
        let written = self.folded.written(word.token.start, word.token.end);
        let is_capital =
            written.len() == 1 && written.starts_with(|letter: char| letter.is_ascii_uppercase());
        is_capital && self.known.blocks.contains(&written) && self.has_small_letters
    }

    fn lone(&self, word: &WordToken) -> Piece<'r> {
        let sense = match (word.token.shape, word.two_kinds) {
            (Shape::Word, Some((one, other))) => Sense::TwoKinds(one, other),
            (Shape::Word, None) => Sense::Unknown,
            (Shape::Mark(mark), _) => Sense::Mark(mark),
            (Shape::Figure(figure), _) => self.sense_of_figure(figure, word),
        };
        let everyday = matches!(sense, Sense::Unknown) && word.everyday;
        Piece {
            start: word.token.start,
            end: word.token.end,
            sense,
            traits: Traits::default(),
            torn: false,
            everyday,
            trust: if matches!(word.token.shape, Shape::Word) {
                word.trust
            } else {
                Trust::Full
            },
            repaired: None,
        }
    }

    fn sense_of_figure(&self, figure: Figure, word: &WordToken) -> Sense<'r> {
        match figure {
            Figure::Number(number) => Sense::Number(number),
            Figure::List { sure } => {
                let written = self.folded.text.get(word.token.start..word.token.end);
                let values = Values::new(written.unwrap_or(""));
                Sense::List { values, sure }
            }
            Figure::Range(from, to) => Sense::Range(from, to),
            Figure::Triple(parts) => Sense::Triple(parts),
            Figure::Iso([year, month, day]) => {
                crate::pieces::dates::calendar(day, month, Some(year), true)
                    .map_or(Sense::NoSuchDay, Sense::When)
            }
            Figure::Fraction(above, below) => Sense::Fraction(above, below),
            Figure::Metres(value) => Sense::Metres(value),
            Figure::Clock => Sense::Clock,
            Figure::Spacing => Sense::Spacing,
            Figure::TooLarge => Sense::TooLarge,
        }
    }
}
