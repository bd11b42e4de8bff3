//! Days as offices write them, in the form of ISO 8601.

use chrono::{Datelike, Days, Month, NaiveDate};

use super::{DayOrder, mended::Mended};

/// The Buddhist calendar is 543 years ahead (common practice).
const BUDDHIST_YEARS: i32 = 543;
/// From this year on it is one of the Buddhist calendar.
const BUDDHIST_FROM: i32 = 2400;
/// A day as a spreadsheet counts it lies between 1954 and 2064.
const SERIALS: std::ops::RangeInclusive<u64> = 20_000..=60_000;
/// Day 0 of that count (ECMA-376, part 1, 18.17.4.1, as far as it concerns days after February 1900).
const SERIAL_ZERO: (i32, u32, u32) = (1899, 12, 30);

/// Months as they begin in the languages of the lists, where they differ from English (common
/// practice).
const MONTHS: [(&str, u32); 24] = [
    ("jan", 1),
    ("fev", 2),
    ("fév", 2),
    ("peb", 2),
    ("mar", 3),
    ("avr", 4),
    ("abr", 4),
    ("apr", 4),
    ("mai", 5),
    ("mei", 5),
    ("may", 5),
    ("juin", 6),
    ("jun", 6),
    ("juil", 7),
    ("jul", 7),
    ("aou", 8),
    ("aoû", 8),
    ("agu", 8),
    ("ago", 8),
    ("set", 9),
    ("okt", 10),
    ("out", 10),
    ("des", 12),
    ("dez", 12),
];

/// A day, month or year; `order` says which part comes first where both are possible. None when two
/// readings are left.
pub(super) fn mended(text: &str, order: Option<DayOrder>) -> Option<Mended> {
    let day = text.split(['T', ' ']).next().unwrap_or(text);
    if is_iso(day) {
        let rest = text.get(day.len()..).unwrap_or_default();
        let is_midnight = rest.chars().all(|c| "T 0:.".contains(c));
        return Some(if is_midnight {
            in_common_years(day)
        } else {
            Mended::Refused("this is a day and something else; write the day alone".into())
        });
    }
    if let Some(day) = serial(text) {
        let why = "a spreadsheet's number of a day";
        return Some(Mended::proposed(day.to_string(), why));
    }
    if let Some(found) = three_numbers(text) {
        return match found.read(order) {
            Some(day) => Some(in_common_years(&day)),
            None if found.could_be_any() => None,
            None => Some(Mended::Refused("there is no such day".into())),
        };
    }
    let named = with_month(text).or_else(|| year_and_words(text));
    Some(named.unwrap_or_else(|| {
        Mended::Refused("write the day as year-month-day, like 2026-04-15".into())
    }))
}

/// Which part comes first, as the days that leave no doubt show.
pub(super) fn order_of<'c>(cells: impl Iterator<Item = &'c str>) -> Option<DayOrder> {
    let (mut day_first, mut month_first) = (false, false);
    for found in cells.filter_map(three_numbers) {
        day_first |= found.first > 12;
        month_first |= found.second > 12;
    }
    match (day_first, month_first) {
        (true, false) => Some(DayOrder::DayFirst),
        (false, true) => Some(DayOrder::MonthFirst),
        (true, true) | (false, false) => None,
    }
}

/// 20/11/2024, 20.11.2024 or 20-11-2024.
struct Three {
    first: u32,
    second: u32,
    year: i32,
}

impl Three {
    fn could_be_any(&self) -> bool {
        (1..=12).contains(&self.first)
            && (1..=12).contains(&self.second)
            && self.first != self.second
    }

    fn read(&self, order: Option<DayOrder>) -> Option<String> {
        let (day, month) = match order {
            _ if self.first > 12 => (self.first, self.second),
            _ if self.second > 12 => (self.second, self.first),
            _ if self.first == self.second => (self.first, self.second),
            Some(DayOrder::DayFirst) => (self.first, self.second),
            Some(DayOrder::MonthFirst) => (self.second, self.first),
            None => return None,
        };
        // A day of a Buddhist year is a day of the common one too, leap days apart.
        let common = common_year(self.year);
        NaiveDate::from_ymd_opt(common, month, day)?;
        Some(format!("{:04}-{month:02}-{day:02}", self.year))
    }
}

fn three_numbers(text: &str) -> Option<Three> {
    let day = text.split(' ').next()?;
    let mut parts = day.split(['/', '.', '-']);
    let (first, second, year) = (parts.next()?, parts.next()?, parts.next()?);
    let is_short = |part: &str| (1..=2).contains(&part.len());
    if parts.next().is_some() || !is_short(first) || !is_short(second) || year.len() != 4 {
        return None;
    }
    Some(Three {
        first: first.parse().ok()?,
        second: second.parse().ok()?,
        year: year.parse().ok()?,
    })
}

fn is_iso(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let are_digits = |part: &&str| part.bytes().all(|byte| byte.is_ascii_digit());
    let lengths: Vec<usize> = parts.iter().map(|part| part.len()).collect();
    parts.iter().all(are_digits) && matches!(lengths[..], [4] | [4, 2] | [4, 2, 2])
}

const fn common_year(year: i32) -> i32 {
    if year >= BUDDHIST_FROM {
        year - BUDDHIST_YEARS
    } else {
        year
    }
}

/// A day of the Buddhist calendar is proposed in the common one.
fn in_common_years(day: &str) -> Mended {
    let year: Option<i32> = day.get(..4).and_then(|year| year.parse().ok());
    match year {
        Some(year) if year >= BUDDHIST_FROM => {
            let rest = day.get(4..).unwrap_or_default();
            let day = format!("{:04}{rest}", common_year(year));
            Mended::proposed(day, "a Buddhist year")
        }
        Some(_) | None => Mended::Plain(day.to_owned()),
    }
}

fn serial(text: &str) -> Option<NaiveDate> {
    let days: u64 = text.strip_suffix(".0").unwrap_or(text).parse().ok()?;
    let (year, month, day) = SERIAL_ZERO;
    let zero = NaiveDate::from_ymd_opt(year, month, day)?;
    let found = SERIALS
        .contains(&days)
        .then(|| zero.checked_add_days(Days::new(days)))?;
    found.filter(|day| day.year() > 0)
}

fn month(word: &str) -> Option<u32> {
    let word = word.to_lowercase();
    let word = word.trim_end_matches('.');
    if let Ok(month) = word.parse::<Month>() {
        return Some(month.number_from_month());
    }
    let mut months = MONTHS.iter();
    months
        .find(|(begin, _)| word.starts_with(begin))
        .map(|(_, month)| *month)
}

/// "Nov 2024", "20 Nov 2024", "20-nov-2024".
fn with_month(text: &str) -> Option<Mended> {
    let parts = text
        .split([' ', '-', '/', ','])
        .filter(|part| !part.is_empty());
    let parts: Vec<&str> = parts.collect();
    let (day, word, year) = match parts.as_slice() {
        [word, year] => (None, word, year),
        [day, word, year] if day.len() <= 2 => (Some(day.parse::<u32>().ok()?), word, year),
        _ => return None,
    };
    let month = month(word)?;
    let year: i32 = Some(year).filter(|year| year.len() == 4)?.parse().ok()?;
    let text = match day {
        Some(day) => format!("{year:04}-{month:02}-{day:02}"),
        None => format!("{year:04}-{month:02}"),
    };
    Some(in_common_years(&text))
}

/// "2021, rains", "early 2021": the year is what is known.
fn year_and_words(text: &str) -> Option<Mended> {
    let mut years = text
        .split(|c: char| !c.is_ascii_digit())
        .filter(|part| part.len() == 4)
        .filter_map(|part| part.parse::<i32>().ok())
        .map(common_year)
        .filter(|year| (1950..2100).contains(year));
    let year = years.next()?;
    let has_digits_else = text.chars().filter(char::is_ascii_digit).count() > 4;
    (years.next().is_none() && !has_digits_else)
        .then(|| Mended::proposed(format!("{year:04}"), "some time of this year"))
}

#[cfg(test)]
mod tests {
    use super::{DayOrder, Mended, mended, order_of};

    #[track_caller]
    fn plain(text: &str, order: Option<DayOrder>, day: &str) {
        assert_eq!(
            mended(text, order),
            Some(Mended::Plain(day.to_owned())),
            "{text}"
        );
    }

    #[track_caller]
    fn proposed(text: &str, day: &str) {
        match mended(text, None) {
            Some(Mended::Proposed { value, .. }) => assert_eq!(value, day, "{text}"),
            other => panic!("{text}: {other:?}"),
        }
    }

    #[test]
    fn days_of_offices() {
        plain("2024-11-20", None, "2024-11-20");
        plain("2024-11-20 00:00:00", None, "2024-11-20");
        plain("2024-11", None, "2024-11");
        plain("2024", None, "2024");
        plain("20/11/2024", None, "2024-11-20");
        plain("11/20/2024", None, "2024-11-20");
        plain("5.5.2024", None, "2024-05-05");
        plain("5/6/2024", Some(DayOrder::DayFirst), "2024-06-05");
        plain("5/6/2024", Some(DayOrder::MonthFirst), "2024-05-06");
        plain("Nov 2024", None, "2024-11");
        plain("20 Mei 2024", None, "2024-05-20");
        assert_eq!(mended("5/6/2024", None), None, "two readings");
        // 45616 is 20 November 2024 in every spreadsheet program.
        proposed("45616", "2024-11-20");
        proposed("2567", "2024");
        proposed("20/11/2567", "2024-11-20");
        proposed("2021, rains", "2021");
        for text in [
            "2024-11-20 14:00",
            "31/02/2024",
            "soon",
            "?",
            "99/99/2024",
            "2020-2021",
        ] {
            assert!(
                matches!(mended(text, None), Some(Mended::Refused(_))),
                "{text}"
            );
        }
    }

    #[test]
    fn a_column_shows_its_order() {
        assert_eq!(
            order_of(["5/6/2024", "20/11/2024"].into_iter()),
            Some(DayOrder::DayFirst)
        );
        assert_eq!(
            order_of(["5/6/2024", "11/20/2024"].into_iter()),
            Some(DayOrder::MonthFirst)
        );
        assert_eq!(order_of(["20/11/2024", "11/20/2024"].into_iter()), None);
    }
}
