//! A story as it is written: its lines, its people, its moments.

use chrono::{DateTime, NaiveDateTime, TimeZone, Utc};
use chrono_tz::{Asia::Jakarta, Tz};

use crate::fixture::DEMO_ROLL;

/// Where the invented valley lies.
pub(super) const ZONE: Tz = Jakarta;

/// Our side of a story.
pub(super) const INDENT: &str = "    ";

/// One line of a story.
pub(super) enum Line<'a> {
    /// A comment, an empty line.
    Comment,
    /// Whom the story is about, of the demo's list.
    People(&'a str),
    /// A row of the list.
    Row(&'a str),
    /// Time passes.
    At(NaiveDateTime),
    /// A text comes in.
    Text(Text<'a>),
    /// How does a block stand?
    Ask { who: &'a str, block: &'a str },
}

pub(super) struct Text<'a> {
    pub(super) who: &'a str,
    pub(super) options: Vec<&'a str>,
    pub(super) text: &'a str,
}

/// The lines that are not ours, each with what it means.
pub(super) fn lines(story: &str) -> Vec<(&str, Line<'_>)> {
    let ours = |line: &&str| !line.starts_with(INDENT);
    story
        .lines()
        .filter(ours)
        .map(|line| (line, parse(line)))
        .collect()
}

fn parse(line: &str) -> Line<'_> {
    if line.is_empty() || line.starts_with('#') {
        return Line::Comment;
    }
    if ["row,", "group,", "person,", "block,"]
        .iter()
        .any(|row| line.starts_with(row))
    {
        return Line::Row(line);
    }
    if let Some(names) = line.strip_prefix("people ") {
        return Line::People(names);
    }
    if let Some(moment) = line.strip_prefix("== ") {
        return Line::At(moment_of(moment));
    }
    if let Some((who, block)) = line
        .strip_prefix("? ")
        .and_then(|asked| asked.rsplit_once(' '))
    {
        return Line::Ask { who, block };
    }
    let mut options = Vec::new();
    let (mut who, text) = line
        .split_once(':')
        .filter(|(who, _)| !who.contains('('))
        .unwrap_or_else(|| line.split_once("):").expect("a name, a colon, a text"));
    if let Some((name, said)) = who.split_once(" (") {
        who = name;
        options = said.trim_end_matches(')').split(", ").collect();
    }
    Line::Text(Text {
        who,
        options,
        text: text.strip_prefix(' ').unwrap_or(text),
    })
}

/// A local moment as written.
pub(super) fn moment_of(text: &str) -> NaiveDateTime {
    NaiveDateTime::parse_from_str(text, "%Y-%m-%d %H:%M").expect("a moment")
}

/// The instant of a local moment.
pub(super) fn instant(local: NaiveDateTime) -> DateTime<Utc> {
    ZONE.from_local_datetime(&local)
        .single()
        .expect("a zone without clock changes")
        .to_utc()
}

/// The rows of the demo's list about these people and their group.
pub(super) fn excerpt(names: &str) -> String {
    let names: Vec<&str> = names.split(", ").collect();
    let demo = str::from_utf8(DEMO_ROLL).expect("a list in UTF-8");
    let mut rows = String::new();
    for row in demo.lines() {
        let mut cells = row.split(',');
        let kind = cells.next();
        let called = cells.nth(1).and_then(|name| name.split(' ').next());
        let is_asked = called.is_some_and(|name| names.contains(&name));
        if matches!(kind, Some("row" | "group")) || is_asked {
            rows.push_str(row);
            rows.push('\n');
        }
    }
    rows
}
