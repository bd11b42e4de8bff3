//! Reads the script of the demo: what people text, when, in scenes.
//!
//! One line is one thing:
//!
//! ```text
//! # a remark for whoever edits the script
//! == A heading: a scene begins
//! -- A sentence for whoever watches
//! 2026-12-12 17:05 Tamo: planted 420 A       Tamo texts this
//! 2026-12-12 17:05 Tamo reads                the last text on Tamo's phone is shown
//! 2026-12-12 17:05 Tamo is late              how Tamo answers nudges from then on
//! => 420 in all                              what was just shown holds these words
//! => (nothing)                               nothing was said
//! ```
//!
//! Times are local and never go back. Nothing here is said by the bot: `=>` only holds a heading
//! to its word, and a play in which it is not so breaks off.

use chrono::NaiveDateTime;

use crate::play::manner::Manner;

const MOMENT: &str = "%Y-%m-%d %H:%M";
/// Characters of a moment as written.
const MOMENT_CHARS: usize = 16;

/// One line of the script.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Line {
    /// Its number in the file, from 1.
    pub(super) number: usize,
    /// What it says.
    pub(super) said: Said,
}

/// What a line says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Said {
    /// A scene begins.
    Scene(String),
    /// A sentence for whoever watches.
    Note(String),
    /// Somebody does something.
    Cue(Cue),
    /// What was just shown holds these words.
    Holds(String),
}

/// Somebody does something at a moment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Cue {
    /// When, local to the farm.
    pub(super) at: NaiveDateTime,
    /// Who: a name of the list, or a number that is not on it.
    pub(super) who: String,
    /// What.
    pub(super) deed: Deed,
}

/// What somebody does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Deed {
    /// Sends a text.
    Texts(String),
    /// Looks at the last text on the phone.
    Reads,
    /// Answers nudges like this from now on.
    Is(Manner),
}

/// Why a script cannot be played.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("line {line} of the script: {what}")]
pub(super) struct ScriptError {
    /// The line, from 1.
    pub(super) line: usize,
    /// What is wrong, and what is expected.
    pub(super) what: String,
}

/// Reads a whole script.
///
/// # Errors
///
/// At the first line that is not understood or goes back in time.
pub(super) fn parse(script: &str) -> Result<Vec<Line>, ScriptError> {
    let mut lines = Vec::new();
    let mut before: Option<NaiveDateTime> = None;
    for (index, text) in script.lines().enumerate() {
        let number = index + 1;
        let text = text.trim();
        if text.is_empty() || text.starts_with('#') {
            continue;
        }
        let said = line(text).map_err(|what| ScriptError { line: number, what })?;
        if let Said::Cue(cue) = &said {
            if let Some(before) = before.filter(|before| cue.at < *before) {
                let what = format!(
                    "{} is before {}",
                    cue.at.format(MOMENT),
                    before.format(MOMENT)
                );
                return Err(ScriptError { line: number, what });
            }
            before = Some(cue.at);
        }
        lines.push(Line { number, said });
    }
    Ok(lines)
}

fn line(text: &str) -> Result<Said, String> {
    if let Some(heading) = text.strip_prefix("==") {
        return Ok(Said::Scene(heading.trim().to_owned()));
    }
    if let Some(note) = text.strip_prefix("--") {
        return Ok(Said::Note(note.trim().to_owned()));
    }
    if let Some(words) = text.strip_prefix("=>") {
        return Ok(Said::Holds(words.trim().to_owned()));
    }
    let (at, rest) = text
        .split_at_checked(MOMENT_CHARS)
        .and_then(|(at, rest)| Some((NaiveDateTime::parse_from_str(at, MOMENT).ok()?, rest)))
        .ok_or_else(|| {
            format!("expected a moment like 2026-12-12 17:05, ==, --, => or #, but found {text:?}")
        })?;
    let (who, deed) = deed(rest.trim())?;
    Ok(Said::Cue(Cue { at, who, deed }))
}

fn deed(rest: &str) -> Result<(String, Deed), String> {
    if let Some((who, text)) = rest.split_once(':')
        && !who.contains(' ')
        && !who.is_empty()
    {
        return Ok((who.to_owned(), Deed::Texts(text.trim().to_owned())));
    }
    match rest.split_whitespace().collect::<Vec<_>>().as_slice() {
        [who, "reads"] => Ok(((*who).to_owned(), Deed::Reads)),
        [who, "is", word] => {
            let manner = Manner::from_word(word).ok_or_else(|| {
                let known: Vec<&str> = Manner::ALL.iter().map(|manner| manner.word()).collect();
                format!(
                    "no manner is called {word:?}; there are {}",
                    known.join(", ")
                )
            })?;
            Ok(((*who).to_owned(), Deed::Is(manner)))
        }
        _ => Err(format!(
            "expected \"Name: text\", \"Name reads\" or \"Name is manner\", but found {rest:?}"
        )),
    }
}
