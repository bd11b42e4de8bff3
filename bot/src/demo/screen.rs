//! What the watcher sees: scenes with who texted what, and the rest in one line.
//!
//! Columns: the day and time, who texts, the text. What the bot sends stands behind `>`, with the
//! name of the phone where it is not the one that just texted.

use std::io::{self, Write};

use chrono::{Datelike, NaiveDateTime};

/// Columns of a line, at most: half a printed page, or a small terminal.
const COLUMNS: usize = 98;
/// Columns before a text.
const INDENT: usize = 22;

/// The lines of the play.
pub(super) struct Screen<'a, W> {
    out: &'a mut W,
    all: bool,
    scene: Scene,
    hidden: Hidden,
}

/// How far the scene is.
enum Scene {
    /// Nothing is shown.
    None,
    /// Its heading waits for the first thing that happens.
    Announced(Vec<String>),
    /// It plays.
    Open,
}

/// What happened since the last thing that was shown.
#[derive(Default)]
struct Hidden {
    nudges: u32,
    answers: u32,
}

impl<'a, W: Write> Screen<'a, W> {
    /// Shows scenes, or all.
    pub(super) fn new(out: &'a mut W, all: bool) -> Self {
        Self {
            out,
            all,
            scene: Scene::None,
            hidden: Hidden::default(),
        }
    }

    /// A scene begins with this heading; none: it ends.
    pub(super) fn scene(&mut self, heading: Option<&str>) {
        self.scene = match heading {
            Some(heading) => Scene::Announced(vec![heading.to_owned()]),
            None => Scene::None,
        };
    }

    /// A sentence for the watcher.
    pub(super) fn note(&mut self, note: &str) -> io::Result<()> {
        match &mut self.scene {
            Scene::Announced(lines) => lines.push(note.to_owned()),
            Scene::Open | Scene::None => wrapped(self.out, "  ", 2, note)?,
        }
        Ok(())
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
        self.hidden.answers += 1;
        if self.all {
            self.line(at, who, text)?;
        }
        Ok(())
    }

    /// A text of the bot in a scene. `to` is said where it is not plain.
    pub(super) fn answered(&mut self, to: Option<&str>, text: &str) -> io::Result<()> {
        let who = to.map_or_else(|| ">".to_owned(), |to| format!("> {to}"));
        let head = format!("{:14}{who:8}", "");
        wrapped(self.out, &head, INDENT, text)
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
        self.hidden.nudges += 1;
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

    /// The last line of what happened behind the scenes.
    pub(super) fn close(&mut self) -> io::Result<()> {
        self.sum_up_hidden()
    }

    fn line(&mut self, at: NaiveDateTime, who: &str, text: &str) -> io::Result<()> {
        let head = format!("  {} {who:8}", at.format("%e %b %H:%M"));
        wrapped(self.out, &head, INDENT, text)
    }

    fn open(&mut self, at: NaiveDateTime) -> io::Result<()> {
        let Scene::Announced(lines) = &self.scene else {
            return Ok(());
        };
        let lines = lines.clone();
        self.sum_up_hidden()?;
        let mut lines = lines.iter();
        if let Some(heading) = lines.next() {
            writeln!(self.out, "\n{heading}, {} {}", at.format("%B"), at.year())?;
        }
        for note in lines {
            wrapped(self.out, "  ", 2, note)?;
        }
        self.scene = Scene::Open;
        Ok(())
    }

    fn sum_up_hidden(&mut self) -> io::Result<()> {
        let hidden = std::mem::take(&mut self.hidden);
        if hidden.nudges > 0 && !self.all {
            writeln!(
                self.out,
                "  ... between: {} nudges, {} answers",
                hidden.nudges, hidden.answers
            )?;
        }
        Ok(())
    }
}

/// Writes a text behind its head, its further lines under it.
fn wrapped(out: &mut impl Write, head: &str, indent: usize, text: &str) -> io::Result<()> {
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
