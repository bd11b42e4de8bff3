//! The list with rains that come later.

use anyhow::Context;
use chrono::{Days, NaiveDate};

/// The columns that hold a day of the rains.
const COLUMNS: [&str; 2] = ["rains_start", "rains_end"];

/// The list with each day of the rains moved by so many days.
pub(super) fn shifted(csv: &str, days: i64) -> anyhow::Result<String> {
    if days == 0 {
        return Ok(csv.to_owned());
    }
    let first = csv.lines().next().unwrap_or_default();
    let delimiter = if first.contains(';') { b';' } else { b',' };
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(delimiter)
        .flexible(true)
        .from_reader(csv.as_bytes());
    let heads = reader
        .headers()
        .context("the list has no first line")?
        .clone();
    let mut writer = csv::WriterBuilder::new()
        .delimiter(delimiter)
        .flexible(true)
        .from_writer(Vec::new());
    writer.write_record(&heads)?;
    for row in reader.records() {
        let row = row?;
        let cells = heads.iter().zip(row.iter()).map(|(head, cell)| {
            let moves = COLUMNS.contains(&head.trim().trim_start_matches('\u{feff}'));
            moves
                .then(|| all_moved(cell, days))
                .flatten()
                .unwrap_or_else(|| cell.to_owned())
        });
        writer.write_record(cells)?;
    }
    Ok(String::from_utf8(writer.into_inner()?)?)
}

/// The day on which a play of this list can begin: nothing that it tells has yet to happen, and if
/// nothing has, half a year of preparing is left.
pub(super) fn begin(csv: &str) -> anyhow::Result<NaiveDate> {
    let days = |column: &str| -> Vec<NaiveDate> {
        let first = csv.lines().next().unwrap_or_default();
        let delimiter = if first.contains(';') { b';' } else { b',' };
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(delimiter)
            .flexible(true)
            .from_reader(csv.as_bytes());
        let heads = reader.headers().cloned().unwrap_or_default();
        let place = heads.iter().position(|head| head.trim() == column);
        let rows = reader.records().filter_map(Result::ok);
        rows.filter_map(|row| row.get(place?)?.trim().parse().ok())
            .collect()
    };
    let told = [days("consent_on"), days("planted_on")].concat();
    let planned = days("planned_on");
    let half_a_year = |day: &NaiveDate| *day - Days::new(183);
    told.iter()
        .max()
        .copied()
        .or_else(|| planned.iter().min().map(half_a_year))
        .context("no day in the list says when to begin: give --from")
}

/// One day, or two with a semicolon between.
fn all_moved(cell: &str, days: i64) -> Option<String> {
    let moved: Option<Vec<String>> = cell.split(';').map(|day| moved(day, days)).collect();
    Some(moved?.join("; "))
}

fn moved(cell: &str, days: i64) -> Option<String> {
    // Not a leap year, so that a year later is the same day.
    let day = NaiveDate::parse_from_str(&format!("{} 2027", cell.trim()), "%d %b %Y").ok()?;
    let by = Days::new(days.unsigned_abs());
    let day = if days < 0 { day - by } else { day + by };
    Some(day.format("%-d %b").to_string())
}

#[cfg(test)]
mod tests {
    use super::shifted;

    #[test]
    fn only_the_rains_move() {
        let csv = "row,name,rains_start,rains_end\ngroup,A,20 May,20 Dec\nperson,\"Rill, T\",,\n";
        assert_eq!(shifted(csv, 0).unwrap(), csv);
        assert_eq!(
            shifted(csv, 21).unwrap(),
            "row,name,rains_start,rains_end\ngroup,A,10 Jun,10 Jan\nperson,\"Rill, T\",,\n"
        );
        assert!(shifted(csv, -20).unwrap().contains("30 Apr,30 Nov"));
        let twice = csv.replace("20 May,20 Dec", "1 Apr; 1 Sep,15 Jul;15 Nov");
        let moved = shifted(&twice, 21).unwrap();
        assert!(moved.contains("22 Apr; 22 Sep,5 Aug; 6 Dec"), "{moved}");
    }
}
