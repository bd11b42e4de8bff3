//! `budwood read`: what would be made of a text, without storing anything.
//!
//! For support, for people who write a language pack, and for measuring. The reader and the
//! policy are those of the service; only the scene is given by hand.

mod explain;
mod input;
mod output;
mod plain;

use std::io::{BufRead, Read, Write};

use anyhow::Context;
use budwood_parser::Reader;
use chrono::NaiveDateTime;

use self::input::Line;
use crate::words::limits;

/// Reads JSON lines and writes one JSON line for each. A line that is not right gets an answer
/// that says so, and the next one is read.
///
/// # Errors
///
/// When standard input or output breaks.
pub fn lines(
    reader: &Reader,
    received: NaiveDateTime,
    mut from: impl BufRead,
    mut to: impl Write,
) -> anyhow::Result<()> {
    let mut bytes = Vec::new();
    loop {
        bytes.clear();
        let most = limits::READ_LINE_BYTES_MAX;
        let read = from.by_ref().take(most).read_until(b'\n', &mut bytes);
        if read.context("cannot read standard input")? == 0 {
            break;
        }
        let whole = bytes.last() == Some(&b'\n') || bytes.len() < usize::try_from(most)?;
        if !whole {
            skip_line(&mut from)?;
        }
        let line = String::from_utf8_lossy(&bytes);
        if line.trim().is_empty() {
            continue;
        }
        let answer = if whole {
            one_line(reader, received, line.trim())
        } else {
            output::too_long()
        };
        writeln!(to, "{answer}").context("cannot write standard output")?;
    }
    to.flush().context("cannot write standard output")
}

fn skip_line(from: &mut impl BufRead) -> anyhow::Result<()> {
    from.skip_until(b'\n')
        .context("cannot read standard input")?;
    Ok(())
}

fn one_line(reader: &Reader, received: NaiveDateTime, line: &str) -> String {
    match Line::parse(line, reader) {
        Ok(line) => {
            let (reading, decision) = line.read(reader, received.date());
            output::answer(
                line.id.as_ref(),
                &reading,
                &decision,
                received.date(),
                line.by_adviser(),
            )
        }
        Err(what) => output::fault(&what),
    }
}

/// Reads one text and explains to a person what was made of it.
#[must_use]
pub fn explained(reader: &Reader, received: NaiveDateTime, text: &str) -> String {
    let line = Line::plain(text);
    let (reading, decision) = line.read(reader, received.date());
    let trace = line.trace(reader, received.date());
    explain::explain(text, (&reading, &trace), &decision, received.date())
}
