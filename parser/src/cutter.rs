//! Tokens become pieces: listed phrases, names, numbers, marks.
//!
//! The names of this conversation come first, then the longest listed phrase, then one guarded
//! repair, then words run together. Deliberately absent: what depends on the pieces around.

use alloc::{string::ToString, vec::Vec};

use crate::{
    figure::Figure,
    fold::Folded,
    kind::Kind,
    lexicon::{Langs, Lexicon},
    meaning::{Meaning, Traits},
    pack::PHRASE_WORDS_MAX,
    piece::{Piece, Sense},
    reading::Known,
    runs::{Words, split_block, split_run},
    token::{Shape, Token, tokens},
    vocabulary::WordId,
};

/// Cuts a folded text into pieces.
pub(crate) fn pieces<'r>(
    folded: &'r Folded<'r>,
    lexicon: &'r Lexicon,
    own: Langs,
    known: &Known<'r>,
) -> Vec<Piece<'r>> {
    let whole = |run: &str| lexicon.is_word(run) || is_block_like(run, known);
    let tokens = tokens(&folded.text, whole);
    let names = [known.blocks, known.groups, known.members];
    let cutter = Cutter {
        folded,
        lexicon,
        own,
        known,
        has_names: names.into_iter().flatten().any(|name| is_long_name(name)),
    };
    let words = cutter.word_ids(tokens);
    let mut pieces = Vec::with_capacity(words.len());
    let mut at = 0;
    while let Some(token) = words.get(at) {
        let (piece, used) = cutter
            .name(&words, at)
            .or_else(|| cutter.phrase(&words, at))
            .unwrap_or_else(|| (cutter.lone(token), 1));
        pieces.push(piece);
        at += used.max(1);
    }
    pieces
}

/// A token with the word that it is or was repaired to.
struct WordToken {
    token: Token,
    id: Option<WordId>,
    repaired: bool,
    two_kinds: Option<(Kind, Kind)>,
    /// It is a word of every day that is not listed.
    everyday: bool,
}

type ToSense<'r> = fn(&'r str) -> Sense<'r>;

struct Cutter<'r, 'k> {
    folded: &'r Folded<'r>,
    lexicon: &'r Lexicon,
    own: Langs,
    known: &'k Known<'r>,
    /// Some name is more than a letter or a number.
    has_names: bool,
}

impl<'r> Cutter<'r, '_> {
    fn text(&self, token: &Token) -> &'r str {
        self.folded.text.get(token.start..token.end).unwrap_or("")
    }

    fn word_ids(&self, tokens: Vec<Token>) -> Vec<WordToken> {
        let mut words = Vec::with_capacity(tokens.len());
        let mut tokens = tokens.into_iter().peekable();
        while let Some(token) = tokens.next() {
            let text = self.text(&token);
            let found = match token.shape {
                Shape::Mark(_) => None,
                Shape::Word | Shape::Figure(_) => self.lexicon.find(text),
            };
            let exact = found.filter(|found| found.listed).map(|found| found.id);
            let common = found.is_some_and(|found| found.common);
            if let Some(whole) = exact.and_then(|id| self.lexicon.expansion(id, self.own)) {
                words.extend(expanded(&token, &whole.parts));
                continue;
            }
            let as_it_is = exact.is_some() || common || token.shape != Shape::Word;
            if as_it_is || self.is_name(text) {
                words.push(WordToken {
                    everyday: common,
                    ..WordToken::plain(token, exact)
                });
                continue;
            }
            // "blokc D" is a slip, "blockc" is block C.
            let next = tokens.peek();
            let names_block = next.is_some_and(|next| self.is_name(self.text(next)));
            let written = self.folded.written(token.start, token.end);
            let listed = Words {
                lexicon: self.lexicon,
                own: self.own,
                known: self.known,
            };
            let mut run = split_block(text, written, listed);
            if run.is_empty() || names_block {
                let before = words.last().and_then(|word: &WordToken| word.id);
                let repaired = self.repair(&token, text, before);
                if repaired.id.is_some() {
                    words.push(repaired);
                    continue;
                }
                let after_number = token.glued
                    && words.last().is_some_and(|word: &WordToken| {
                        matches!(word.token.shape, Shape::Figure(_))
                    });
                run = split_run(text, listed, after_number);
                if run.is_empty() {
                    words.push(repaired);
                    continue;
                }
            }
            for (start, end) in run {
                let part = Token {
                    start: token.start + start,
                    end: token.start + end,
                    shape: Shape::Word,
                    glued: token.glued || start > 0,
                };
                let found = self.lexicon.find(self.text(&part));
                let id = found.filter(|found| found.listed).map(|found| found.id);
                words.push(WordToken {
                    everyday: found.is_some_and(|found| found.common),
                    ..WordToken::plain(part, id)
                });
            }
        }
        words
    }

    /// One guarded repair: never of a common word, never between two kinds.
    fn repair(&self, token: &Token, text: &str, before: Option<WordId>) -> WordToken {
        let mut word = WordToken::plain(token.clone(), None);
        let lexicon = self.lexicon;
        let nearest = lexicon.repairs.nearest(text, &lexicon.words, |id| {
            lexicon.may_be_meant(id, self.own)
        });
        // "leaf flling": the word that goes on a phrase.
        let goes_on = nearest.iter().find(|id| {
            let pair = [before, Some(*id)].into_iter();
            let found = self.lexicon.longest(pair, self.own);
            found.is_some_and(|(_, used)| used == 2)
        });
        let kind = |id: WordId| {
            let listed = self.lexicon.single(id, self.own)?;
            listed.meanings().find_map(Meaning::kind)
        };
        let first = nearest.iter().next();
        let other = nearest.iter().find(|id| kind(*id) != first.and_then(kind));
        word.id = goes_on.or(first.filter(|_| other.is_none()));
        word.repaired = word.id.is_some();
        if let (None, Some(one), Some(other)) =
            (word.id, first.and_then(kind), other.and_then(kind))
        {
            word.two_kinds = Some((one, other));
        }
        word
    }

    fn is_name(&self, text: &str) -> bool {
        let starts = |name: &&str| {
            let first = name.split_whitespace().next().unwrap_or("");
            name_len(text, first) == Some(text.len())
        };
        let known = self.known;
        known.blocks.iter().any(starts)
            || known.groups.iter().any(starts)
            || known.members.iter().any(starts)
    }

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
            repaired: None,
        };
        ends_here.then_some((piece, used))
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

    fn phrase(&self, words: &[WordToken], at: usize) -> Option<(Piece<'r>, usize)> {
        let here = words.get(at)?;
        here.id?;
        // "ring-weeding": a hyphen inside a phrase does not part it.
        let along: Vec<usize> = (at..words.len())
            .filter(|index| !words.get(*index).is_some_and(WordToken::is_inner_hyphen))
            .take(PHRASE_WORDS_MAX)
            .collect();
        let ids = along.iter().map(|index| words.get(*index)?.id);
        let (listed, count) = self.lexicon.longest(ids, self.own)?;
        let last = *along.get(count - 1)?;
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
            everyday: false,
            repaired,
        };
        Some((piece, last - at + 1))
    }

    fn lone(&self, word: &WordToken) -> Piece<'r> {
        let sense = match (&word.token.shape, word.two_kinds) {
            (Shape::Word, Some((one, other))) => Sense::TwoKinds(one, other),
            (Shape::Word, None) => Sense::Unknown,
            (Shape::Mark(mark), _) => Sense::Mark(*mark),
            (Shape::Figure(figure), _) => sense_of_figure(figure),
        };
        let everyday = matches!(sense, Sense::Unknown) && word.everyday;
        Piece {
            start: word.token.start,
            end: word.token.end,
            sense,
            traits: Traits::default(),
            torn: false,
            everyday,
            repaired: None,
        }
    }
}

impl WordToken {
    const fn plain(token: Token, id: Option<WordId>) -> Self {
        Self {
            token,
            id,
            repaired: false,
            two_kinds: None,
            everyday: false,
        }
    }

    fn is_inner_hyphen(&self) -> bool {
        self.token.glued && self.token.shape == Shape::Mark('-')
    }
}

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
            shape: shape.clone(),
            glued,
        };
        WordToken::plain(token, Some(*id))
    })
}

fn sense_of_figure<'r>(figure: &Figure) -> Sense<'r> {
    match figure {
        Figure::Number(number) => Sense::Number(*number),
        Figure::List { values, sure } => Sense::List {
            values: values.clone(),
            sure: *sure,
        },
        Figure::Range(from, to) => Sense::Range(*from, *to),
        Figure::Triple(parts) => Sense::Triple(*parts),
        Figure::Iso([year, month, day]) => crate::dates::calendar(*day, *month, Some(*year), true)
            .map_or(Sense::NoSuchDay, Sense::When),
        Figure::Fraction(above, below) => Sense::Fraction(*above, *below),
        Figure::Metres(value) => Sense::Metres(*value),
        Figure::Clock => Sense::Clock,
        Figure::TooLarge => Sense::TooLarge,
    }
}

/// Whether a run such as "b2" reads as a block name rather than block B and the number 2.
fn is_block_like(run: &str, known: &Known<'_>) -> bool {
    let named = |run: &str| {
        known
            .blocks
            .iter()
            .any(|block| name_len(run, block) == Some(run.len()))
    };
    if named(run) {
        return true;
    }
    let mut letters = run.chars();
    let letter = letters.next().filter(char::is_ascii_alphabetic);
    let digits = letters.as_str();
    let is_code = matches!(digits.len(), 1 | 2) && digits.bytes().all(|byte| byte.is_ascii_digit());
    match letter {
        // "l2" may be a mistyped 12.
        Some('l' | 'o' | 'i') | None => false,
        Some(letter) => is_code && !named(letter.to_string().as_str()),
    }
}

/// "1" and "A" are a number and a letter until their neighbours say otherwise.
fn is_long_name(name: &str) -> bool {
    name.len() > 1 && !name.bytes().all(|byte| byte.is_ascii_digit())
}

/// The length of the name at the start of the text, if it ends at the end of a word.
fn name_len_within(text: &str, name: &str) -> Option<usize> {
    let len = name_len(text, name)?;
    (len > 0).then_some(len)
}

/// Compares a name with the start of a folded text, capitals and width of spaces aside.
fn name_len(text: &str, name: &str) -> Option<usize> {
    let mut rest = text;
    let mut after_space = false;
    for letter in name.chars().flat_map(char::to_lowercase) {
        if letter.is_whitespace() {
            if !after_space && !rest.starts_with(char::is_whitespace) {
                return None;
            }
            rest = rest.trim_start();
            after_space = true;
            continue;
        }
        rest = rest.strip_prefix(letter)?;
        after_space = false;
    }
    Some(text.len() - rest.len())
}
