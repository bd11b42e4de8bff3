//! Person rows: names, roles, numbers and consent.
//!
//! Numbers and people are many to many: a number on several rows is shared, and is kept for all
//! of them. A number that a person no longer has is not taken away by a list.

use std::collections::BTreeMap;

use budwood_parser::Kind;
use budwood_scheduler::{
    Body, Consent, Entered, GroupId, Lesson, Person, PersonId, PersonLink, Phone, Purpose, Role,
};

use super::{
    alike::Alike,
    cell::Cells,
    column::Column,
    draft::{Draft, key},
    finding::Fault,
    odd,
    rows::Row,
};
use crate::words::phone_number::{self, Line};

/// Two cards and the numbers of the house; more is a slip in the list.
const PHONES_MAX: usize = 5;

/// Sharers of one phone are asked "for whom?" by name; nobody chooses from more names than these.
/// Members without a phone need none in the list: a leader can report for them.
const SHARERS_MAX: usize = 50;

/// How consent is known when the list does not say.
const HOW_LISTED: &str = "list";

const SAYS_NO: &str =
    "this says that they did not agree; leave it and its day empty, or write how they agreed";

/// Takes person rows in.
pub(super) fn take<'a>(draft: &mut Draft<'_>, rows: impl Iterator<Item = &'a Row>) {
    let mut names = NamesByGroup::known(draft);
    let mut new = Vec::new();
    for row in rows {
        let cells = Cells::new(row, draft.known.today);
        let person = if row.refused {
            None
        } else {
            let person = person(draft, row.line, &cells);
            draft.keep(row.line, person)
        };
        let Some(mut person) = person else {
            draft.refuse(row.cell(Column::Name));
            continue;
        };
        for purpose in [Purpose::Reminders, Purpose::Buyers] {
            let consent = consent(&cells, purpose);
            if let Some(consent) = draft.keep(row.line, consent) {
                agree(draft, row.line, &mut person, (purpose, consent));
            }
        }
        if draft.known.directory.person(person.id).is_none() {
            let name = person.name.clone();
            if let Some(group) = names.elsewhere(draft, &person) {
                let name = name.clone();
                draft.note(row.line, Fault::NameElsewhere { name, group });
            }
            let numbers = numbers_in(&cells, draft.known.country);
            new.push((row.line, person.group, name, numbers));
        }
        let shown = shown(&cells);
        if let Some(kinds) = draft.keep(row.line, shown) {
            was_shown(draft, &person, &kinds);
        }
        let id = person.id;
        draft.directory.put_person(person);
        match cells.text(Column::Phone) {
            Some(cell) => phones(draft, row.line, cell, id),
            None => unreachable(draft, row.line, id),
        }
    }
    for (_, group, name, _) in &new {
        names.count(*group, name);
    }
    for (line, group, name, numbers) in new {
        if let Some(other) = names.add(group, &name, &numbers) {
            draft.note(line, Fault::Alike { name, other });
        }
    }
    shared(draft);
}

fn person(draft: &mut Draft<'_>, line: usize, cells: &Cells<'_>) -> Result<Person, Fault> {
    let name = cells.name(Column::Name)?;
    let roles: Vec<(&str, Role)> = Role::ALL.iter().map(|role| (role.name(), *role)).collect();
    let role = cells.one_of(Column::Role, &roles)?;
    let languages: Vec<(&str, &str)> = draft.known.languages.iter().map(|l| (*l, *l)).collect();
    let language = cells.one_of(Column::Language, &languages)?;
    let group = group(draft, cells)?;
    let known = draft.people.get(&(group, key(name))).copied();
    if let Some(line) = known.and_then(|id| draft.person_lines.get(&id)).copied() {
        let name = name.to_string();
        return Err(Fault::Twice { name, line });
    }
    let mut person = match known.and_then(|id| draft.directory.person(id)) {
        Some(person) => person.clone(),
        None => Person {
            id: draft.new_person(),
            name: name.to_string(),
            role: Role::Farmer,
            language: draft.known.language.to_string(),
            group,
            consent: Consent::Unknown,
            sharing: Consent::Unknown,
            erased: false,
            hold: None,
        },
    };
    person.role = role.unwrap_or(person.role);
    if let Some(language) = language {
        person.language = language.to_string();
    }
    // The group gives the zone and the season, without which no job has a day.
    if group.is_none() && matches!(person.role, Role::Farmer | Role::Leader) {
        return Err(Fault::Missing(Column::Group, cells.kind()));
    }
    draft.people.insert((group, key(name)), person.id);
    draft.person_lines.insert(person.id, line);
    Ok(person)
}

/// The group of a row, which must be known when it is named.
pub(super) fn group(draft: &Draft<'_>, cells: &Cells<'_>) -> Result<Option<GroupId>, Fault> {
    let Some(name) = cells.text(Column::Group) else {
        return Ok(None);
    };
    match draft.groups.get(&key(name)) {
        Some(id) => Ok(Some(*id)),
        None => Err(Fault::GroupUnknown(name.to_string())),
    }
}

/// Kinds of work that somebody was shown.
fn shown(cells: &Cells<'_>) -> Result<Vec<Kind>, Fault> {
    let names = cells.text(Column::Shown).unwrap_or_default().split(';');
    let names = names.map(str::trim).filter(|name| !name.is_empty());
    let kinds = names.map(|name| {
        let kind = Kind::from_name(&name.to_lowercase());
        kind.ok_or_else(|| {
            let names = Lesson::ALL.map(|lesson| lesson.shown_as().name());
            let want = format!(
                "write kinds of work with ; between, like {}",
                names.join("; ")
            );
            cells.wrong(Column::Shown, want)
        })
    });
    kinds.collect()
}

/// What is new of it is entered in the book of their group.
fn was_shown(draft: &mut Draft<'_>, person: &Person, kinds: &[Kind]) {
    let Some(group) = person.group else {
        return;
    };
    for kind in kinds {
        let known = draft.directory.group(group);
        if known.is_some_and(|known| known.book.was_shown(person.id, *kind)) {
            continue;
        }
        let entered = Entered::Trained {
            kind: *kind,
            on: draft.known.today,
            came: vec![person.id],
        };
        draft.facts.push(Body::Entered { group, entered });
    }
}

/// Consent as the list tells it.
fn consent(cells: &Cells<'_>, purpose: Purpose) -> Result<Option<Consent>, Fault> {
    let (day, manner) = match purpose {
        Purpose::Reminders => (Column::ConsentOn, Column::ConsentHow),
        Purpose::Buyers => (Column::ShareOn, Column::ShareHow),
    };
    let how = cells.text(manner);
    if how.is_some_and(odd::says_no) {
        return Err(cells.wrong(manner, SAYS_NO));
    }
    match cells.past_day(day)? {
        Some(on) => {
            let how = how.unwrap_or(HOW_LISTED).to_string();
            Ok(Some(Consent::Given { on, how }))
        }
        None if how.is_some() => Err(Fault::HalfPair(day, manner)),
        None => Ok(None),
    }
}

/// What the person said themselves stands before what the list says.
fn agree(
    draft: &mut Draft<'_>,
    line: usize,
    person: &mut Person,
    (purpose, listed): (Purpose, Option<Consent>),
) {
    let name = person.name.clone();
    match (person.consent_to(purpose), listed) {
        (Consent::Unknown, None) if purpose == Purpose::Reminders => {
            draft.note(line, Fault::NoConsent(name));
        }
        (Consent::Unknown, Some(listed)) => {
            if let Consent::Given { how, .. } = &listed {
                draft.facts.push(Body::ConsentGiven {
                    person: person.id,
                    purpose,
                    how: how.clone(),
                });
            }
            match purpose {
                Purpose::Reminders => person.consent = listed,
                Purpose::Buyers => person.sharing = listed,
            }
        }
        (Consent::Withdrawn { on, .. }, Some(_)) => {
            let on = *on;
            let fault = match purpose {
                Purpose::Reminders => Fault::StopStands { name, on },
                Purpose::Buyers => Fault::RefusalStands { name, on },
            };
            draft.note(line, fault);
        }
        (known @ Consent::Given { on, how }, Some(listed)) if *known != listed => {
            let (on, how) = (*on, how.clone());
            draft.note(line, Fault::ConsentStands { name, on, how });
        }
        (Consent::Unknown | Consent::Given { .. }, _) | (Consent::Withdrawn { .. }, None) => {}
    }
}

fn phones(draft: &mut Draft<'_>, line: usize, cell: &str, person: PersonId) {
    let written: Vec<&str> = cell
        .split(';')
        .map(str::trim)
        .filter(|number| !number.is_empty())
        .collect();
    if written.len() > PHONES_MAX {
        return draft.note(line, Fault::PhonesMany(PHONES_MAX));
    }
    for found in written {
        match phone_number::parse(found, draft.known.country) {
            Ok(number) => phone(draft, line, number, person),
            Err(fault) => {
                let found = found.to_string();
                draft.note(line, Fault::Phone { found, fault });
            }
        }
    }
}

fn phone(draft: &mut Draft<'_>, line: usize, number: String, person: PersonId) {
    match phone_number::line(&number) {
        _ if phone_number::is_costly(&number) => {
            draft.note(line, Fault::CostlyNumber(number.clone()));
        }
        _ if is_abroad(draft, &number) => {
            draft.note(line, Fault::NumberAbroad(number.clone()));
        }
        Line::Mobile | Line::Service => {}
        Line::Landline => draft.note(line, Fault::Landline(number.clone())),
        Line::Unassigned if phone_number::is_for_fiction(&number) => {}
        Line::Unassigned => draft.note(line, Fault::NumberNotInUse(number.clone())),
    }
    draft.phone_lines.insert(number.clone(), line);
    let mut phone = match draft.directory.phone(&number) {
        Some(phone) => phone.clone(),
        None => Phone {
            number,
            links: Vec::new(),
            lost_on: None,
        },
    };
    if phone.people().any(|user| user == person) {
        return;
    }
    // A list that is older than the move must not give the old number its rights back.
    if phone.links.iter().any(|link| link.person == person) {
        return draft.note(line, Fault::NumberMoved(phone.number));
    }
    if phone.people().count() >= SHARERS_MAX {
        let number = phone.number;
        return draft.note(line, Fault::SharersMany(number, SHARERS_MAX));
    }
    phone.links.push(PersonLink {
        person,
        since: draft.known.today,
        until: None,
        helper: None,
    });
    draft.directory.put_phone(phone);
}

/// Whether a number is of another country than that of the service.
fn is_abroad(draft: &Draft<'_>, number: &str) -> bool {
    let country = draft.known.country;
    let is_mobile = matches!(phone_number::line(number), Line::Mobile | Line::Unassigned);
    is_mobile && !country.is_empty() && !phone_number::is_at_home(number, country)
}

/// Someone without a number in the list, and perhaps on record.
fn unreachable(draft: &mut Draft<'_>, line: usize, id: PersonId) {
    let has_phone = draft.directory.numbers_of(id).next().is_some();
    if let Some(person) = draft.directory.person(id)
        && !has_phone
    {
        let fault = Fault::NoPhone(person.name.clone());
        draft.note(line, fault);
    }
}

/// Numbers of the list that more than one person uses.
fn shared(draft: &mut Draft<'_>) {
    let mut notes = Vec::new();
    for (number, line) in &draft.phone_lines {
        let users = draft.directory.phone(number).into_iter();
        let names: Vec<&str> = users
            .flat_map(Phone::people)
            .filter_map(|id| draft.directory.person(id))
            .map(|person| person.name.as_str())
            .collect();
        if names.len() > 1 {
            let (number, names) = (number.clone(), names.join(", "));
            notes.push((*line, Fault::Shared { number, names }));
        }
    }
    for (line, fault) in notes {
        draft.note(line, fault);
    }
}

/// The numbers of a row that can be read.
fn numbers_in(cells: &Cells<'_>, country: &str) -> Vec<String> {
    let written = cells.text(Column::Phone).unwrap_or_default().split(';');
    let numbers = written.map(|number| phone_number::parse(number.trim(), country));
    numbers.flatten().collect()
}

/// Names that are taken, by group: people of one name in two groups are two people.
struct NamesByGroup(BTreeMap<Option<GroupId>, Alike>);

impl NamesByGroup {
    fn known(draft: &Draft<'_>) -> Self {
        let mut names = Self(BTreeMap::new());
        for person in draft.directory.persons().filter(|person| !person.erased) {
            let numbers = draft.directory.numbers_of(person.id);
            let numbers: Vec<String> = numbers.map(str::to_owned).collect();
            names.count(person.group, &person.name);
            names.add(person.group, &person.name, &numbers);
        }
        names
    }

    fn count(&mut self, group: Option<GroupId>, name: &str) {
        self.0.entry(group).or_default().count(name);
    }

    fn add(&mut self, group: Option<GroupId>, name: &str, numbers: &[String]) -> Option<String> {
        self.0.entry(group).or_default().add(name, numbers)
    }

    /// Another group with somebody of exactly this name.
    fn elsewhere(&self, draft: &Draft<'_>, person: &Person) -> Option<String> {
        let mut others = draft.people.iter();
        let (group, _) = others.find_map(|((group, name), id)| {
            let is_other = *group != person.group && *id != person.id;
            (is_other && *name == key(&person.name)).then_some((*group, *id))
        })?;
        let group = draft.directory.group(group?)?;
        Some(group.name.clone())
    }
}
