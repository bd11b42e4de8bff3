//! From what is seen to HTML: words in the language of the reader, put into the files of `bot/pages`.
//!
//! All that is shown is escaped by these, names and texts too.

use askama::Template;
use budwood_scheduler::figures::season::Week;
use chrono::Datelike;

use super::{
    drawn::{self, Map, Shape, Years},
    paths,
};
use crate::{
    engine::looks::{Cell, Grid, Look, Part, Range, Seen, Waits, Weeks},
    wording::{Args, Key, Texts, Tongue, Value},
};

/// The one style sheet.
pub(super) const STYLE: &str = include_str!("../../../../pages/office.css");

/// What a page says, in one language.
#[derive(Clone, Copy)]
struct Words<'a> {
    tongue: Tongue<'a>,
    code: &'a str,
}

impl<'a> Words<'a> {
    fn of(texts: &'a Texts, language: Option<&'a str>) -> Self {
        let code = language.and_then(|language| texts.known(language));
        // Marks are left out only where a phone cannot show them.
        let code = code.and_then(|code| code.split('-').next()).unwrap_or("en");
        Self {
            tongue: texts.tongue(&[code]),
            code,
        }
    }

    /// A text of a page.
    fn say(&self, name: &'static str) -> String {
        self.tongue.say(Key::Page(name), Args::new())
    }

    fn whole(&self, value: &Value) -> String {
        self.tongue.whole(value)
    }
}

/// A link.
struct To {
    path: String,
    label: String,
    is_here: bool,
}

struct Shown {
    text: String,
    path: Option<String>,
    mark: Option<String>,
    is_struck: bool,
    is_number: bool,
}

struct Table {
    title: String,
    head: Vec<String>,
    rows: Vec<Vec<Shown>>,
}

struct Season {
    /// Day and month of each week.
    from: Vec<(String, String)>,
    rows: Vec<(Shown, Vec<Week>)>,
}

struct Matter {
    waits: Waits,
    sender: Shown,
    concern: String,
    at: String,
    readings: Vec<(usize, String)>,
    jobs: Vec<String>,
    facts: Vec<String>,
    next: Option<String>,
}

enum Piece {
    Note(String),
    Table(Table),
    Season(Season),
    Map(Map),
    Years(Years, Vec<String>),
    Matter(Box<Matter>),
    Fix {
        fact: u64,
        person: u32,
        count: Option<u32>,
    },
}

#[derive(Template)]
#[template(path = "page.html")]
struct Page<'a> {
    words: Words<'a>,
    title: String,
    reader: &'a str,
    today: String,
    menu: Vec<To>,
    pieces: Vec<Piece>,
    token: &'a str,
}

/// A name that was given, and now its code is asked for.
pub(super) struct Asks<'a> {
    /// The name.
    pub(super) name: &'a str,
    /// Whether a wrong code came.
    pub(super) was_wrong: bool,
}

#[derive(Template)]
#[template(path = "door.html")]
struct Door<'a> {
    words: Words<'a>,
    asks: Option<&'a Asks<'a>>,
}

#[derive(Template)]
#[template(path = "problem.html")]
struct Problem<'a> {
    words: Words<'a>,
    what: String,
}

/// A page.
pub(super) fn page(texts: &Texts, seen: &Seen, look: &Look, token: &str) -> String {
    let words = Words::of(texts, seen.language.as_deref());
    let menu = seen.menu.iter().map(|one| To {
        path: paths::path(one),
        label: words.say(label(one)),
        is_here: is_below(one, look),
    });
    let page = Page {
        words,
        title: words.whole(&seen.title),
        reader: &seen.reader,
        today: words.whole(&Value::DayYear(seen.today)),
        menu: menu.collect(),
        pieces: seen.parts.iter().map(|part| piece(words, part)).collect(),
        token,
    };
    finished(&page)
}

/// The door.
pub(super) fn door(texts: &Texts, language: Option<&str>, asks: Option<&Asks<'_>>) -> String {
    let words = Words::of(texts, language);
    finished(&Door { words, asks })
}

/// A page that says what is wrong.
pub(super) fn problem(texts: &Texts, language: Option<&str>, what: &'static str) -> String {
    let words = Words::of(texts, language);
    let what = words.say(what);
    finished(&Problem { words, what })
}

/// Writing into memory does not fail; should it, nothing is shown.
fn finished(page: &impl Template) -> String {
    page.render().unwrap_or_default()
}

/// What a page is called in the menu.
const fn label(look: &Look) -> &'static str {
    match look {
        Look::Today => "page-today",
        Look::Groups | Look::Group(_) => "page-groups",
        Look::Person(_) | Look::Under(..) | Look::Fact(_) => "page-about",
        Look::Sick => "page-sick",
        Look::Season => "page-season",
        Look::Stock => "page-stock",
        Look::Line => "page-line",
        Look::Queue(_) => "page-queue",
    }
}

/// Whether a page stands below one of the menu.
fn is_below(menu: &Look, look: &Look) -> bool {
    let of_group = matches!(
        look,
        Look::Group(_) | Look::Person(_) | Look::Under(..) | Look::Fact(_)
    );
    menu == look
        || (of_group && *menu == Look::Groups)
        || (matches!(look, Look::Queue(_)) && matches!(menu, Look::Queue(_)))
}

fn piece(words: Words<'_>, part: &Part) -> Piece {
    match part {
        Part::Note(value) => Piece::Note(words.whole(value)),
        Part::Table(grid) => Piece::Table(table(words, grid)),
        Part::Weeks(weeks) => Piece::Season(season(words, weeks)),
        Part::Spots(spots) => Piece::Map(drawn::map(&spots.spots)),
        Part::Ranges(ranges) => {
            let lines = ranges.iter().map(|range| range_line(words, range));
            Piece::Years(drawn::years(ranges), lines.collect())
        }
        Part::Matter(waits) => Piece::Matter(Box::new(matter(words, waits))),
        Part::Fix {
            fact,
            person,
            count,
        } => Piece::Fix {
            fact: fact.0,
            person: person.0,
            count: *count,
        },
    }
}

fn table(words: Words<'_>, grid: &Grid) -> Table {
    let row = |cells: &Vec<Cell>| cells.iter().map(|cell| shown(words, cell)).collect();
    Table {
        title: words.whole(&grid.title),
        head: grid.head.iter().map(|head| words.whole(head)).collect(),
        rows: grid.rows.iter().map(row).collect(),
    }
}

fn shown(words: Words<'_>, cell: &Cell) -> Shown {
    Shown {
        text: words.whole(&cell.value),
        path: cell.to.as_ref().map(paths::path),
        mark: cell.mark.map(|mark| words.tongue.say(mark, Args::new())),
        is_struck: cell.is_struck,
        is_number: matches!(
            cell.value,
            Value::Count(_) | Value::Figure(_) | Value::Land(_)
        ),
    }
}

fn season(words: Words<'_>, weeks: &Weeks) -> Season {
    let from = weeks.from.iter().map(|day| {
        let month = words.tongue.say(Key::Month(day.month()), Args::new());
        (day.day().to_string(), month)
    });
    let rows = weeks
        .rows
        .iter()
        .map(|(who, weeks)| (shown(words, who), weeks.clone()));
    Season {
        from: from.collect(),
        rows: rows.collect(),
    }
}

fn range_line(words: Words<'_>, range: &Range) -> String {
    let args = crate::args! {
        "block" => Value::name(&range.block),
        "earliest" => Value::Month(range.earliest),
        "likely" => Value::Month(range.likely),
        "latest" => Value::Month(range.latest),
        "trees" => range.of,
        "day" => Value::DayYear(range.census_on),
    };
    words.tongue.say(Key::Page("page-range"), args)
}

fn matter(words: Words<'_>, waits: &Waits) -> Matter {
    let all = |values: &[Value]| values.iter().map(|one| words.whole(one)).collect();
    let readings = waits.readings.iter().map(|one| words.whole(one));
    Matter {
        sender: shown(words, &waits.sender),
        concern: words.whole(&waits.concern),
        at: words.whole(&Value::DayYear(waits.on)),
        readings: (1..).zip(readings).collect(),
        jobs: all(&waits.jobs),
        facts: all(&waits.facts),
        next: waits.next.map(|next| paths::path(&Look::Queue(Some(next)))),
        waits: waits.clone(),
    }
}
