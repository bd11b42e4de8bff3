//! A text as pieces, before it is one string: noise must know a number from a word.

/// What a token is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum What {
    /// A word, open to slips.
    Word,
    /// A number alone.
    Number,
    /// A number of a list.
    Listed,
    /// A block's name.
    Name,
    /// A product code, a grade, a day as figures.
    Code,
    /// A comma, a full stop.
    Mark,
}

#[derive(Clone, Debug)]
pub(crate) struct Token {
    pub(crate) text: String,
    pub(crate) what: What,
    /// A piece begins here, so that a filler may stand before it.
    pub(crate) opens: bool,
}

impl Token {
    pub(crate) fn new(text: impl Into<String>, what: What) -> Self {
        Self {
            text: text.into(),
            what,
            opens: false,
        }
    }

    pub(crate) fn begins_with_digit(&self) -> bool {
        self.text
            .starts_with(|letter: char| letter.is_ascii_digit())
    }

    pub(crate) fn ends_with_digit(&self) -> bool {
        self.text.ends_with(|letter: char| letter.is_ascii_digit())
    }

    pub(crate) fn begins_with_letter(&self) -> bool {
        self.text.starts_with(char::is_alphabetic)
    }
}

/// The words of a phrase, each a token; marks at their ends stand alone.
pub(crate) fn words(phrase: &str) -> Vec<Token> {
    let mut tokens = Vec::new();
    for part in phrase.split_whitespace() {
        let word = part.trim_end_matches([',', '.', '?', '!', ':']);
        if !word.is_empty() {
            let figures = word.starts_with(|letter: char| letter.is_ascii_digit());
            tokens.push(Token::new(
                word,
                if figures { What::Code } else { What::Word },
            ));
        }
        let marks = part.get(word.len()..).unwrap_or_default();
        if !marks.is_empty() {
            tokens.push(Token::new(marks, What::Mark));
        }
    }
    tokens
}

/// A template in tokens: what stands in braces is given by `fill`, by its letter.
pub(crate) fn filled(template: &str, mut fill: impl FnMut(&str) -> Vec<Token>) -> Vec<Token> {
    let mut tokens = Vec::new();
    let mut rest = template;
    while let Some((before, after)) = rest.split_once('{') {
        let (name, after) = after.split_once('}').expect("braces are closed");
        tokens.extend(words(before));
        tokens.extend(fill(name));
        rest = after;
    }
    tokens.extend(words(rest));
    tokens
}
