//! What is open in a list, as a table that a person answers in: "yes" beside a proposal, or
//! something better in its place.

use std::collections::BTreeMap;

/// The columns.
const HEADS: [&str; 7] = ["line", "who", "column", "found", "wrong", "proposal", "yes"];

/// Words that agree, in the languages of the texts.
const YES: [&str; 12] = [
    "yes",
    "y",
    "ok",
    "oui",
    "o",
    "ya",
    "sim",
    "s",
    "ใช่",
    "đúng",
    "có",
    "x",
];

/// Something open in a cell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Doubt {
    /// Line of the list.
    pub line: usize,
    /// Whose row it is.
    pub who: String,
    /// The column, as the plain list names it.
    pub column: String,
    /// What is there.
    pub found: String,
    /// What is wrong with it.
    pub wrong: String,
    /// What it probably means; none when nobody can tell.
    pub proposal: Option<String>,
}

/// What a person agreed to: what to take for a cell, by line, column and what is found there.
pub type Yes = BTreeMap<(usize, String, String), String>;

/// The table to answer in, with what is answered already.
#[must_use]
pub fn to_csv(doubts: &[Doubt], yes: &Yes) -> Vec<u8> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    // Writing to memory does not fail.
    let _ = writer.write_record(HEADS);
    for doubt in doubts {
        let line = doubt.line.to_string();
        let proposal = doubt.proposal.as_deref().unwrap_or_default();
        let cells = [&line, &doubt.who, &doubt.column, &doubt.found, &doubt.wrong];
        let cells = cells.map(String::as_str).into_iter().chain([proposal, ""]);
        let _ = writer.write_record(cells);
    }
    // What was agreed to stays, or the next take would ask it again.
    for ((line, column, found), value) in yes {
        let line = line.to_string();
        let cells = [line.as_str(), "", column, found, "agreed", value, "yes"];
        let _ = writer.write_record(cells);
    }
    writer.into_inner().unwrap_or_default()
}

/// The answers in that table. Rows without a yes stay open.
#[must_use]
pub fn from_csv(rows: &[Vec<String>]) -> Yes {
    let answered = rows.iter().filter_map(|cells| {
        let cell = |at: usize| cells.get(at).map_or("", String::as_str);
        let line: usize = cell(0).parse().ok()?;
        let is_agreed = YES.contains(&cell(6).trim().to_lowercase().as_str());
        let key = (line, cell(2).to_owned(), cell(3).to_owned());
        is_agreed.then(|| (key, cell(5).trim().to_owned()))
    });
    answered.collect()
}

#[cfg(test)]
mod tests {
    use super::{Doubt, Yes, from_csv, to_csv};

    #[test]
    fn what_is_written_is_read_back_with_its_answers() {
        let doubt = Doubt {
            line: 7,
            who: "Tamo \"T\" Rill, KOLO".into(),
            column: "area".into(),
            found: "2 1/2".into(),
            wrong: "a number and a half".into(),
            proposal: Some("2.5".into()),
        };
        let csv = String::from_utf8(to_csv(std::slice::from_ref(&doubt), &Yes::new())).unwrap();
        assert!(
            csv.starts_with("line,who,column,found,wrong,proposal,yes\n"),
            "{csv}"
        );
        let mut reader = csv::Reader::from_reader(csv.as_bytes());
        let rows = reader.records().map(|row| row.unwrap());
        let mut rows: Vec<Vec<String>> = rows
            .map(|row| row.iter().map(str::to_owned).collect())
            .collect();
        assert!(from_csv(&rows).is_empty(), "nothing is agreed to");
        rows[0][6] = "Yes".into();
        let yes = from_csv(&rows);
        let key = (7, "area".to_owned(), "2 1/2".to_owned());
        assert_eq!(yes.get(&key).map(String::as_str), Some("2.5"));
        let kept = String::from_utf8(to_csv(&[], &yes)).unwrap();
        assert!(kept.ends_with("7,,area,2 1/2,agreed,2.5,yes\n"), "{kept}");
    }
}
