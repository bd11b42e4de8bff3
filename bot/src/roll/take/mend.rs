//! One cell of an office's list, as the plain list wants it.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use super::{Answers, amounts, day, mended::Mended};
use crate::{
    roll::{column::Column, odd},
    words::phone_number,
};

/// Words for an empty cell.
const EMPTY: [&str; 14] = [
    "-",
    "--",
    "none",
    "nil",
    "n/a",
    "na",
    "no phone",
    "tidak ada",
    "aucun",
    "nenhum",
    "ไม่มี",
    "không",
    "không có",
    "?",
];

/// Names of languages as they are typed (common practice), by code.
const LANGUAGES: [(&str, &str); 20] = [
    ("english", "en"),
    ("anglais", "en"),
    ("inggris", "en"),
    ("french", "fr"),
    ("français", "fr"),
    ("francais", "fr"),
    ("bahasa", "id"),
    ("bahasa indonesia", "id"),
    ("indonesian", "id"),
    ("indonesia", "id"),
    ("thai", "th"),
    ("ไทย", "th"),
    ("ภาษาไทย", "th"),
    ("vietnamese", "vi"),
    ("tiếng việt", "vi"),
    ("viet", "vi"),
    ("portuguese", "pt"),
    ("português", "pt"),
    ("portugues", "pt"),
    ("eng", "en"),
];

/// Words that say that somebody agreed, without the day.
const AGREED: [&str; 14] = [
    "yes",
    "y",
    "ok",
    "signed",
    "oui",
    "o",
    "ya",
    "setuju",
    "sim",
    "s",
    "ใช่",
    "ยินยอม",
    "có",
    "đồng ý",
];

/// A cell of a column, filled. None when it hangs on an answer that is not given yet.
pub(super) fn mended(column: Column, cell: &str, answers: &Answers) -> Option<Mended> {
    let cell = cell.strip_prefix('\'').unwrap_or(cell).trim();
    let is_empty = EMPTY.contains(&cell.to_lowercase().as_str());
    Some(match column {
        // Nobody agreed by a dash, and "none" beside a name says no.
        Column::ConsentHow | Column::ShareHow => Mended::Plain(cell.to_owned()),
        Column::ConsentOn => return consent(cell, answers, answers.consent_on),
        // One day of signing for all is that of the reminders.
        Column::ShareOn => return consent(cell, answers, None),
        _ if is_empty => Mended::Plain(String::new()),
        Column::Phone => phones(cell, &answers.country),
        Column::PlantedOn
        | Column::CountedOn
        | Column::PlannedOn
        | Column::MeasuredOn
        | Column::OpenedOn
        | Column::WeededOn
        | Column::FedOn
        | Column::PrunedOn => {
            return day::mended(cell, answers.day_order);
        }
        Column::Planted | Column::Alive | Column::Opened => amounts::trees(cell),
        Column::Language => language(cell),
        Column::CloneName => match odd::clone_name(cell) {
            Some(name) => Mended::Plain(name),
            None => Mended::Refused("write one clone, like PB260, or nothing".into()),
        },
        Column::Group => one_word(cell),
        Column::Block => one_word(cell),
        Column::Name | Column::Adviser => match odd::unspoiled(cell) {
            Some(name) => Mended::proposed(name, "letters that a program spoiled"),
            None => Mended::Plain(cell.to_owned()),
        },
        Column::SlopePct | Column::Latitude | Column::Longitude | Column::RowM | Column::TreeM => {
            Mended::Plain(cell.trim_end_matches(['%', '°', 'm', ' ']).to_owned())
        }
        Column::Role | Column::Row => Mended::Plain(cell.to_lowercase()),
        Column::Shown
        | Column::Zone
        | Column::Calendar
        | Column::MarketDay
        | Column::RainsStart
        | Column::RainsEnd
        | Column::Area
        | Column::Unit
        | Column::Girths => Mended::Plain(cell.to_owned()),
    })
}

/// A day, or a word that everybody's one day of signing stands behind.
fn consent(cell: &str, answers: &Answers, of_all: Option<NaiveDate>) -> Option<Mended> {
    let lower = cell.to_lowercase();
    if lower == "-" || lower == "?" || lower == "0" {
        return Some(Mended::Plain(String::new()));
    }
    if odd::says_no(cell) {
        let why = "they did not agree: they are kept without consent, and get no texts";
        return Some(Mended::proposed("", why));
    }
    if AGREED.contains(&lower.as_str()) {
        let on = of_all.map(|on| on.to_string());
        return Some(on.map_or_else(
            || Mended::Refused("write the day on which they agreed, or answer with --consent-on DAY when it was one day for all".into()),
            Mended::Plain,
        ));
    }
    day::mended(cell, answers.day_order)
}

/// One word in capitals of what names a group or a block.
fn one_word(cell: &str) -> Mended {
    let joined: String = cell
        .chars()
        .filter(|c| !c.is_whitespace() && *c != '.')
        .collect();
    if joined == cell {
        return Mended::Plain(joined);
    }
    Mended::proposed(joined, "a name of several words, which is to be one")
}

fn language(cell: &str) -> Mended {
    let lower = cell.to_lowercase();
    let known: BTreeMap<&str, &str> = LANGUAGES.into_iter().collect();
    let code = known.get(lower.as_str()).map(|code| (*code).to_owned());
    Mended::Plain(code.unwrap_or(lower))
}

/// Several numbers come with a semicolon between them.
fn phones(cell: &str, country: &str) -> Mended {
    let is_good = |text: &str| phone_number::parse(text, country).is_ok();
    let whole = cell.strip_suffix(".0").unwrap_or(cell);
    let parts: Vec<&str> = whole.split(';').map(str::trim).collect();
    if parts.iter().all(|part| part.is_empty() || is_good(part)) {
        return Mended::Plain(whole.to_owned());
    }
    if let Some(number) = all_digits(whole)
        && is_good(&number)
    {
        return Mended::proposed(number, "a spreadsheet's short form; all digits are in it");
    }
    let several = whole
        .split(['/', ',', '\n'])
        .flat_map(|part| part.split(" or "));
    let several: Vec<&str> = several
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .collect();
    if several.len() > 1 && several.iter().all(|part| is_good(part)) {
        return Mended::proposed(several.join("; "), "several numbers");
    }
    let (number, note) = whole.split_once('(').unwrap_or((whole, ""));
    if !note.is_empty() && is_good(number.trim()) {
        return Mended::proposed(number.trim(), "a number with a note");
    }
    let letters: String = whole.chars().map(as_digit).collect();
    if letters != whole && is_good(&letters) {
        return Mended::proposed(letters, "letters in the place of digits");
    }
    // What is wrong is told by whoever reads the plain list.
    Mended::Plain(whole.to_owned())
}

/// "4.47700900006E+11": as many digits as the number has.
fn all_digits(text: &str) -> Option<String> {
    let lower = text.to_lowercase().replace(',', ".");
    let (mantissa, exponent) = lower.split_once('e')?;
    let exponent: usize = exponent.trim_start_matches('+').parse().ok()?;
    let (whole, part) = mantissa.split_once('.')?;
    let digits = format!("{whole}{part}");
    let are_digits = digits.bytes().all(|byte| byte.is_ascii_digit());
    (are_digits && whole.len() == 1 && part.len() == exponent).then_some(digits)
}

const fn as_digit(letter: char) -> char {
    match letter {
        'o' | 'O' => '0',
        'l' | 'I' => '1',
        other => other,
    }
}
