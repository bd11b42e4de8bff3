//! What the watcher sees: scenes with who texted what, and the rest in one line.
//!
//! Columns: the day and time, who texts, the text. What the bot sends stands behind `>`, with the
//! name of the phone where it is not the one that just texted.

use std::io::{self, Write};

use chrono::NaiveDateTime;

use crate::roll::Plan;

/// Columns of a line, at most: what a terminal beside another window shows.
const COLUMNS: usize = 100;
/// Columns before a text.
const INDENT: usize = 22;

/// Fewer nudges than this behind the scenes are told with the next ones.
const HIDDEN_NUDGES_MIN: u32 = 10;

/// The lines of the play.
pub(super) struct Screen<'a, W> {
    out: &'a mut W,
    all: bool,
    /// The heading and notes of a scene that waits for the first thing that happens in it.
    announced: Vec<String>,
    /// Nudges since the last scene.
    hidden_nudges: u32,
}

impl<'a, W: Write> Screen<'a, W> {
    /// Shows scenes, or all.
    pub(super) fn new(out: &'a mut W, all: bool) -> Self {
        Self {
            out,
            all,
            announced: Vec::new(),
            hidden_nudges: 0,
        }
    }

    /// The list of people and blocks was taken in, with its doubtful lines.
    pub(super) fn list(&mut self, plan: &Plan) -> io::Result<()> {
        let what = format!(
            "The office loads its list: {} people, {} phones, {} blocks. {} lines are doubtful, like",
            plan.persons.len(),
            plan.phones.len(),
            plan.blocks.len(),
            plan.findings.len()
        );
        writeln!(self.out, "{what}")?;
        match plan.findings.first() {
            Some(finding) => wrapped(self.out, "  ", 4, &finding.to_string()),
            None => Ok(()),
        }
    }

    /// A scene begins with this heading.
    pub(super) fn scene(&mut self, heading: &str) {
        self.announced = vec![heading.to_owned()];
    }

    /// A sentence for the watcher.
    pub(super) fn note(&mut self, note: &str) -> io::Result<()> {
        if self.announced.is_empty() {
            wrapped(self.out, "  ", 2, note)
        } else {
            self.announced.push(note.to_owned());
            Ok(())
        }
    }

    /// A text that somebody sends by the script.
    pub(super) fn texted(&mut self, at: NaiveDateTime, who: &str, text: &str) -> io::Result<()> {
        self.open(at)?;
        self.line(at, who, text)
    }

    /// A text that somebody sends behind the scenes.
    pub(super) fn texted_behind(
        &mut self,
        at: NaiveDateTime,
        who: &str,
        text: &str,
    ) -> io::Result<()> {
        if self.all {
            self.line(at, who, text)?;
        }
        Ok(())
    }

    /// A text of the bot in a scene. `to` is said where it is not plain.
    pub(super) fn answered(&mut self, to: Option<&str>, text: &str) -> io::Result<()> {
        let who = to.map_or_else(|| ">".to_owned(), |to| format!("> {to}"));
        wrapped(self.out, &format!("{:14}{who:<7} ", ""), INDENT, text)
    }

    /// Whether every text is shown.
    pub(super) const fn shows_all(&self) -> bool {
        self.all
    }

    /// The bot says nothing.
    pub(super) fn silent(&mut self, nothing: &str) -> io::Result<()> {
        self.answered(None, nothing)
    }

    /// A text of the bot behind the scenes.
    pub(super) fn answered_behind(
        &mut self,
        at: NaiveDateTime,
        to: &str,
        text: &str,
    ) -> io::Result<()> {
        if self.all {
            self.line(at, &format!("> {to}"), text)?;
        }
        Ok(())
    }

    /// A nudge went out behind the scenes.
    pub(super) fn nudged(&mut self) {
        self.hidden_nudges += 1;
    }

    /// A text of the bot that lies on a phone since then.
    pub(super) fn read(
        &mut self,
        now: NaiveDateTime,
        at: NaiveDateTime,
        to: &str,
        text: &str,
    ) -> io::Result<()> {
        self.open(now)?;
        if self.all {
            return Ok(());
        }
        self.line(at, &format!("> {to}"), text)
    }

    fn line(&mut self, at: NaiveDateTime, who: &str, text: &str) -> io::Result<()> {
        let head = format!(" {} {who:<7} ", at.format("%e %b %H:%M"));
        wrapped(self.out, &head, INDENT, text)
    }

    fn open(&mut self, at: NaiveDateTime) -> io::Result<()> {
        let announced = std::mem::take(&mut self.announced);
        let Some((heading, notes)) = announced.split_first() else {
            return Ok(());
        };
        let hidden = self.hidden_till_now();
        if self.all {
            writeln!(self.out)?;
        }
        let month = at.format("%b %Y");
        wrapped(self.out, &format!("{month}{hidden}: "), 2, heading)?;
        for note in notes {
            wrapped(self.out, "  ", 2, note)?;
        }
        Ok(())
    }

    /// What went on behind the scenes, if it is worth a word.
    fn hidden_till_now(&mut self) -> String {
        if self.all || self.hidden_nudges < HIDDEN_NUDGES_MIN {
            return String::new();
        }
        let nudges = std::mem::take(&mut self.hidden_nudges);
        format!(", {nudges} nudges later")
    }
}

/// Writes a text behind its head, its further lines under it.
pub(super) fn wrapped(
    out: &mut impl Write,
    head: &str,
    indent: usize,
    text: &str,
) -> io::Result<()> {
    let mut line = head.to_owned();
    let mut width = head.chars().count();
    let mut is_bare = true;
    for word in text.split(' ') {
        let length = word.chars().count();
        if !is_bare && width + 1 + length > COLUMNS {
            writeln!(out, "{}", line.trim_end())?;
            line = " ".repeat(indent);
            width = indent;
            is_bare = true;
        }
        if !is_bare {
            line.push(' ');
            width += 1;
        }
        line.push_str(word);
        width += length;
        is_bare = false;
    }
    writeln!(out, "{}", line.trim_end())
}
