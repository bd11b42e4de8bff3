//! Days as iCalendar (RFC 5545), each under an id that stays: a calendar program that takes the file
//! in again moves the entry and makes no second one.

use chrono::{DateTime, NaiveDate, Utc};

/// A line has at most so many octets (RFC 5545, 3.1).
const LINE_OCTETS: usize = 75;

/// An entry of a whole day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Day {
    /// The id that stays.
    pub uid: String,
    /// The day.
    pub on: NaiveDate,
    /// What is shown.
    pub title: String,
}

/// The file.
#[must_use]
pub fn calendar(days: &[Day], made_at: DateTime<Utc>) -> Vec<u8> {
    let mut out = String::new();
    let stamp = made_at.format("%Y%m%dT%H%M%SZ").to_string();
    for line in ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Budwood//EN"] {
        put(&mut out, line);
    }
    for day in days {
        let next = day.on.succ_opt().unwrap_or(day.on);
        put(&mut out, "BEGIN:VEVENT");
        put(&mut out, &format!("UID:{}", text(&day.uid)));
        put(&mut out, &format!("DTSTAMP:{stamp}"));
        put(&mut out, &format!("DTSTART;VALUE=DATE:{}", date(day.on)));
        put(&mut out, &format!("DTEND;VALUE=DATE:{}", date(next)));
        put(&mut out, &format!("SUMMARY:{}", text(&day.title)));
        // Nobody is busy all day by it.
        put(&mut out, "TRANSP:TRANSPARENT");
        put(&mut out, "END:VEVENT");
    }
    put(&mut out, "END:VCALENDAR");
    out.into_bytes()
}

fn date(day: NaiveDate) -> String {
    day.format("%Y%m%d").to_string()
}

/// A text as a value (RFC 5545, 3.3.11). Other control characters have no place in one.
fn text(value: &str) -> String {
    let mut out = String::with_capacity(value.len());
    for letter in value.chars() {
        match letter {
            '\\' | ';' | ',' => out.extend(['\\', letter]),
            '\n' => out.push_str("\\n"),
            letter if letter.is_control() => {}
            letter => out.push(letter),
        }
    }
    out
}

/// A line, folded between letters where it is too long.
fn put(out: &mut String, line: &str) {
    let mut room = LINE_OCTETS;
    for letter in line.chars() {
        if letter.len_utf8() > room {
            out.push_str("\r\n ");
            // The blank counts.
            room = LINE_OCTETS - 1;
        }
        room -= letter.len_utf8();
        out.push(letter);
    }
    out.push_str("\r\n");
}

#[cfg(test)]
mod tests {
    use chrono::{DateTime, NaiveDate, Utc};

    use super::{Day, calendar};

    /// RFC 5545: lines of 75 octets at most without the break, texts with a backslash before comma,
    /// semicolon and backslash. `tests/peers/parcels.rs` has a reader that is not ours.
    #[test]
    fn lines_are_short_and_texts_are_escaped() {
        let title = "a, b; c\\d ".to_owned() + &"\u{e01}\u{e34}\u{e48}".repeat(40);
        let day = Day {
            uid: "due-1-weed@budwood".to_owned(),
            on: NaiveDate::from_ymd_opt(2026, 12, 31).unwrap(),
            title: title.clone(),
        };
        let file = calendar(&[day], DateTime::<Utc>::UNIX_EPOCH);
        let file = String::from_utf8(file).unwrap();
        assert!(file.ends_with("END:VCALENDAR\r\n"));
        assert!(file.split("\r\n").all(|line| line.len() <= 75), "{file}");
        let unfolded = file.replace("\r\n ", "");
        let escaped = title
            .replace('\\', "\\\\")
            .replace(',', "\\,")
            .replace(';', "\\;");
        assert!(unfolded.contains(&format!("\r\nSUMMARY:{escaped}\r\n")));
        assert!(unfolded.contains("DTEND;VALUE=DATE:20270101\r\n"));
    }
}
