//! What phones, keys, haste and habit do to a text, each on its own.

use crate::{
    chance::Chance,
    draw::{happens, pick},
    keys,
    rates::{Level, Rates},
    spacing,
    speech::Speech,
    token::{Token, What, words},
};

/// How much of the noise falls on a text.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Reach {
    /// All of it.
    Report,
    /// Manner only: courtesy, capitals, spaces, marks. An answer of one word or a correction with
    /// a slip in it is another text, and nobody could say which.
    Manner,
}

/// A text with its noise.
pub(crate) struct Noisy {
    pub(crate) text: String,
    /// A word became another real word, which must be asked about.
    pub(crate) twin: bool,
}

/// The longest text; what a phone sends beyond it comes as a second text.
const LETTERS_MAX: usize = 160;

/// Puts noise on a text.
pub(crate) fn noisy(
    chance: &mut Chance,
    speech: &Speech,
    level: Level,
    reach: Reach,
    mut tokens: Vec<Token>,
) -> Noisy {
    let rates = level.rates();
    let mut twin = false;
    if reach == Reach::Report {
        twin = twins(chance, speech, rates, &mut tokens);
        shorthand(chance, speech, rates, &mut tokens);
        for token in &mut tokens {
            if token.what == What::Word {
                token.text = keys::slipped(chance, rates, &token.text);
            }
        }
        tokens = with_fillers(chance, speech, rates, tokens);
    }
    let tokens = with_courtesy(chance, speech, rates, reach, tokens);
    let text = spacing::joined(chance, speech, rates, &tokens);
    let text = if speech.bare || speech.strips_marks && happens(chance, rates.no_marks) {
        keys::without_marks(&text)
    } else {
        text
    };
    let text = in_case(chance, rates, text);
    Noisy {
        text: text.chars().take(LETTERS_MAX).collect(),
        twin,
    }
}

fn twins(chance: &mut Chance, speech: &Speech, rates: &Rates, tokens: &mut [Token]) -> bool {
    let mut any = false;
    for token in tokens.iter_mut().filter(|token| token.what == What::Word) {
        let twin = speech
            .manner
            .twins
            .pairs()
            .find(|(word, _)| *word == token.text);
        if let Some((_, twin)) = twin
            && happens(chance, rates.twin)
        {
            twin.clone_into(&mut token.text);
            any = true;
        }
    }
    any
}

fn shorthand(chance: &mut Chance, speech: &Speech, rates: &Rates, tokens: &mut [Token]) {
    for token in tokens.iter_mut().filter(|token| token.what == What::Word) {
        let short = speech
            .manner
            .shorthand
            .pairs()
            .find(|(word, _)| *word == token.text);
        if let Some((_, short)) = short
            && happens(chance, rates.shorthand)
        {
            short.clone_into(&mut token.text);
        }
    }
}

fn with_fillers(
    chance: &mut Chance,
    speech: &Speech,
    rates: &Rates,
    tokens: Vec<Token>,
) -> Vec<Token> {
    let fillers = tokens
        .iter()
        .filter(|_| happens(chance, rates.strange))
        .count();
    let mut places: Vec<usize> = tokens
        .iter()
        .enumerate()
        .filter_map(|(place, token)| token.opens.then_some(place))
        .collect();
    places.push(tokens.len());
    let mut tokens = tokens;
    let mut chosen: Vec<usize> = (0..fillers).map(|_| *pick(chance, &places)).collect();
    chosen.sort_unstable();
    for place in chosen.into_iter().rev() {
        let filler = words(speech.manner.strange.draw(chance));
        tokens.splice(place..place, filler);
    }
    tokens
}

fn with_courtesy(
    chance: &mut Chance,
    speech: &Speech,
    rates: &Rates,
    reach: Reach,
    tokens: Vec<Token>,
) -> Vec<Token> {
    let manner = &speech.manner;
    let mut all = Vec::new();
    if happens(chance, rates.greeting) {
        all.extend(words(manner.greeting.draw(chance)));
        if happens(chance, 5_000) {
            all.push(Token::new(",", What::Mark));
        }
    }
    // "we 120 planted" is said by nobody.
    let is_work = tokens
        .first()
        .is_some_and(|token| token.what == What::Word && token.opens);
    if reach == Reach::Report && is_work && happens(chance, rates.opening) {
        all.extend(words(manner.opening.draw(chance)));
    }
    all.extend(tokens);
    if happens(chance, rates.title) {
        all.extend(words(manner.title.draw(chance)));
    }
    if happens(chance, rates.thanks) {
        if happens(chance, 5_000) {
            all.push(Token::new(".", What::Mark));
        }
        all.extend(words(manner.thanks.draw(chance)));
    }
    all
}

fn in_case(chance: &mut Chance, rates: &Rates, text: String) -> String {
    match chance.below(10_000) {
        drawn if drawn < rates.all_small => text.to_lowercase(),
        drawn if drawn < rates.all_small + rates.all_capitals => text.to_uppercase(),
        _ if rates.all_small > 0 => {
            let mut letters = text.chars();
            let first = letters.next().map(char::to_uppercase);
            first.into_iter().flatten().chain(letters).collect()
        }
        _ => text,
    }
}
