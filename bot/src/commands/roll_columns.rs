//! `budwood roll columns`: what a list may hold.

use crate::roll::{Column, Need, RowKind};

pub(super) fn page() -> String {
    let [group, person, block] = RowKind::ALL.map(RowKind::name);
    let mut page = format!(
        "A list is a CSV file in UTF-8 with , or ; between the cells. Its first line names the columns, \
         in any order.\n\
         + the row needs it   o it may be empty   . the row has no use for it\n\n\
         {:<12} {group:<6} {person:<6} {block:<6} {:<15} what\n",
        "column", "example"
    );
    for column in Column::ALL {
        let [group, person, block] = RowKind::ALL.map(|kind| sign(column.need(kind)));
        page += &format!(
            "{:<12} {group:<6} {person:<6} {block:<6} {:<15} {}\n",
            column.name(),
            column.example(),
            column.what()
        );
    }
    page
}

const fn sign(need: Option<Need>) -> &'static str {
    match need {
        Some(Need::Must) => "+",
        Some(Need::May) => "o",
        None => ".",
    }
}
