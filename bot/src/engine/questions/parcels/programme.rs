//! Facts and texts by id. Texts lose every name that is on record and every long number.

use std::collections::BTreeSet;

use budwood_scheduler::{Body, Event, EventId, PersonId, Source};

use super::{Parcel, table};
use crate::{
    engine::view::View,
    sheet::{Cell, ColumnKind, Sheet},
    store::{Change, StoreError, read_line},
    words::{
        limits,
        message::{Outbound, Purpose, Received},
    },
};

/// A number with so many digits may be that of a phone, a card or a book.
const DIGITS_KEPT_MAX: usize = 5;
/// What stands for what was taken out.
const OUT: &str = "…";

impl View<'_> {
    pub(super) fn programme_parcel(self) -> Result<Parcel, StoreError> {
        let mut facts = facts_table();
        let mut texts = texts_table();
        let names = self.names();
        let counting = self.counting();
        let mut at: Option<Vec<u8>> = None;
        loop {
            let records = self.store.records(at.as_deref(), limits::COPY_RECORDS)?;
            let Some(last) = records.last() else {
                break;
            };
            at = Some(last.key.clone());
            for record in &records {
                let mut found = Change::default();
                read_line(&record.line, &mut found)?;
                let events = found.events.iter();
                facts
                    .rows
                    .extend(events.filter_map(|event| self.fact(event, &counting)));
                let received = found.received.iter();
                texts
                    .rows
                    .extend(received.filter_map(|text| self.text_in(text, &names)));
                let outbound = found.outbound.iter();
                texts
                    .rows
                    .extend(outbound.filter_map(|text| self.text_out(text, &names)));
            }
        }
        let people = self.people_table();
        let blocks = self.blocks_table();
        Ok(Parcel {
            people: people.rows.len(),
            blocks: blocks.rows.len(),
            sheets: vec![self.indicator_table(), blocks, people, facts, texts],
            notes: vec![
                "Without names, numbers and places, and row by row only of people who agreed that \
                 others are told: a person and a block are an id, which is the same in every parcel."
                    .to_owned(),
                "A fact that does not count was corrected or taken back later. In texts, names on \
                 record and numbers of six digits and more are left out; a farmer may have named \
                 somebody who is not on record, so do not pass texts on."
                    .to_owned(),
                "Figures of fewer than five people are left out of the indicators, and so are those \
                 of one more group where the sum would tell them."
                    .to_owned(),
            ],
            ..Parcel::default()
        })
    }

    /// Every word of every name on record.
    fn names(self) -> BTreeSet<String> {
        let names = self.people_known().flat_map(|person| words(&person.name));
        names.map(str::to_lowercase).collect()
    }

    /// The facts that count on each block.
    fn counting(self) -> BTreeSet<EventId> {
        let states = self.world.states.values();
        states
            .flat_map(|state| state.facts.iter().copied())
            .collect()
    }

    fn fact(self, event: &Event, counting: &BTreeSet<EventId>) -> Option<Vec<Cell>> {
        let Body::Reported {
            block,
            kind,
            on,
            details,
        } = &event.body
        else {
            return None;
        };
        let owner = self.world.directory.block(*block)?.owner;
        if !self.shares(owner) {
            return None;
        }
        let area = details
            .area
            .map(|area| format!("{} {}", area.value, area.unit.name()));
        let amount = details.amount;
        let amount = amount.map(|amount| format!("{} {}", amount.value, amount.unit.name()));
        let values: Vec<String> = details.values_cm.iter().map(f64::to_string).collect();
        let what = details.ailment.map(|ailment| ailment.name());
        let what = what.or(details.cause.map(|cause| cause.name()));
        Some(vec![
            Cell::Count(event.id.0),
            event.at.to_rfc3339().into(),
            source(event.source).into(),
            block.0.into(),
            kind.name().into(),
            Cell::Day(on.from),
            Cell::Day(on.to),
            details.count.into(),
            details.of.into(),
            area.into(),
            details.clone_name.as_deref().into(),
            details.product.as_deref().into(),
            details.formula.as_deref().into(),
            amount.into(),
            values.join(" ").into(),
            what.into(),
            if counting.contains(&event.id) {
                "yes"
            } else {
                "no"
            }
            .into(),
            event
                .supersedes
                .map_or(Cell::Blank, |old| Cell::Count(old.0)),
        ])
    }

    fn text_in(self, text: &Received, names: &BTreeSet<String>) -> Option<Vec<Cell>> {
        Some(vec![
            Cell::Count(text.id.0),
            text.at.to_rfc3339().into(),
            "in".into(),
            self.person_on(&text.from)?.0.into(),
            text.gateway.as_str().into(),
            text.outcome.as_str().into(),
            Cell::Blank,
            Cell::Blank,
            without_names(&text.text, names).into(),
        ])
    }

    fn text_out(self, text: &Outbound, names: &BTreeSet<String>) -> Option<Vec<Cell>> {
        Some(vec![
            Cell::Count(text.id.0),
            text.at.to_rfc3339().into(),
            "out".into(),
            self.person_on(&text.to)?.0.into(),
            text.gateway.as_deref().into(),
            text.state.name().into(),
            purpose(&text.purpose).into(),
            text.parts.into(),
            without_names(&text.text, names).into(),
        ])
    }

    /// The person on a phone, where it is one who agreed that others are told.
    fn person_on(self, number: &str) -> Option<PersonId> {
        let people: Vec<PersonId> = self.everyone_on(number);
        match people.as_slice() {
            [one] if self.shares(*one) => Some(*one),
            [] | [_, ..] => None,
        }
    }
}

fn facts_table() -> Sheet {
    let (number, words, day) = (ColumnKind::Number, ColumnKind::Words, ColumnKind::Day);
    table(
        "facts",
        "Facts as they were told",
        &[
            ("fact_id", number),
            ("told_at", words),
            ("told_by", words),
            ("block_id", number),
            ("kind", words),
            ("from", day),
            ("to", day),
            ("count", number),
            ("of", number),
            ("area", words),
            ("clone", words),
            ("product", words),
            ("grade", words),
            ("amount", words),
            ("values_cm", words),
            ("what", words),
            ("counts", words),
            ("corrects", number),
        ],
    )
}

fn texts_table() -> Sheet {
    let (number, words) = (ColumnKind::Number, ColumnKind::Words);
    table(
        "messages",
        "Texts in and out",
        &[
            ("message_id", number),
            ("at", words),
            ("way", words),
            ("person_id", number),
            ("gateway", words),
            ("became", words),
            ("purpose", words),
            ("parts", number),
            ("text", words),
        ],
    )
}

const fn source(source: Source) -> &'static str {
    match source {
        Source::Bot => "bot",
        Source::OwnText => "own text",
        Source::Leader => "leader",
        Source::Sheet => "list",
        Source::Visit => "visit",
    }
}

const fn purpose(purpose: &Purpose) -> &'static str {
    match purpose {
        Purpose::Answer { .. } => "answer",
        Purpose::Nudge { .. } => "nudge",
        Purpose::Notice { .. } => "notice",
        Purpose::Welcome { .. } => "welcome",
        Purpose::Announcement { .. } => "announcement",
        Purpose::Service { .. } => "service",
    }
}

fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| word.chars().count() > 1)
}

/// A text without names and long numbers. Marks that stand alone (of Thai) belong to their word.
fn without_names(text: &str, names: &BTreeSet<String>) -> String {
    let mut out = String::with_capacity(text.len());
    let mut word = String::new();
    let mut digits = 0_usize;
    let mut number = String::new();
    let end_word = |word: &mut String, out: &mut String| {
        let is_name = names.contains(&word.to_lowercase());
        out.push_str(if is_name { OUT } else { word });
        word.clear();
    };
    let end_number = |number: &mut String, digits: &mut usize, out: &mut String| {
        out.push_str(if *digits > DIGITS_KEPT_MAX {
            OUT
        } else {
            number
        });
        number.clear();
        *digits = 0;
    };
    for letter in text.chars() {
        let joins = matches!(letter, ' ' | '-' | '.' | '(' | ')' | '/') && digits > 0;
        if letter.is_numeric() || (letter == '+' && number.is_empty()) || joins {
            end_word(&mut word, &mut out);
            digits += usize::from(letter.is_numeric());
            number.push(letter);
        } else if letter.is_alphanumeric() {
            end_number(&mut number, &mut digits, &mut out);
            word.push(letter);
        } else {
            end_number(&mut number, &mut digits, &mut out);
            end_word(&mut word, &mut out);
            out.push(letter);
        }
    }
    end_number(&mut number, &mut digits, &mut out);
    end_word(&mut word, &mut out);
    out
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::without_names;

    #[test]
    fn names_and_numbers_are_left_out() {
        let names: BTreeSet<String> = ["tor", "pell"].map(str::to_owned).into();
        for (text, kept) in [
            ("Tor Pell: 8 dead B", "… …: 8 dead B"),
            ("call +44 7700 900-001 now", "call …now"),
            ("planted 480, dead 12", "planted 480, dead 12"),
            ("TOR's phone 07700900001", "…'s phone …"),
            ("stored 12 torn", "stored 12 torn"),
            ("", ""),
        ] {
            assert_eq!(without_names(text, &names), kept);
        }
    }
}
