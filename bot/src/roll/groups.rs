//! Group rows: the season, the zone and the adviser of a group.

use std::{collections::BTreeMap, str::FromStr};

use budwood_scheduler::{Book, Group, GroupId, PersonId, Role};
use chrono::Weekday;

use super::{
    cell::Cells,
    column::Column,
    draft::{Draft, key},
    finding::Fault,
    rows::Row,
};

const ZONE_FORM: &str = "write a name of the time zone database, like Asia/Jakarta";
const WEEKDAY_FORM: &str = "write a day of the week, like Mon or Monday";

const TWO_RAINS_FORM: &str =
    "write as many days as rains_start has, one rains after the other, like 15 Jul; 15 Nov";

/// Takes group rows in, without their advisers, who may not be known yet.
pub(super) fn take<'a>(draft: &mut Draft<'_>, rows: impl Iterator<Item = &'a Row>) {
    for row in rows {
        let cells = Cells::new(row, draft.known.today);
        let group = if row.refused {
            None
        } else {
            let group = group(draft, row.line, &cells);
            draft.keep(row.line, group)
        };
        match group {
            Some(group) => draft.directory.put_group(group),
            None => draft.refuse(row.cell(Column::Group)),
        }
    }
}

/// Takes the advisers of group rows in, when all people are known.
pub(super) fn take_advisers<'a>(draft: &mut Draft<'_>, rows: impl Iterator<Item = &'a Row>) {
    let advisers = advisers(draft);
    for row in rows {
        let group = row
            .cell(Column::Group)
            .and_then(|name| draft.groups.get(&key(name)))
            .and_then(|id| draft.directory.group(*id))
            .cloned();
        // A row that was refused is not spoken of twice.
        let Some(mut group) = group else { continue };
        if draft.group_lines.get(&group.id) != Some(&row.line) {
            continue;
        }
        if let Some(name) = row.cell(Column::Adviser) {
            let adviser = adviser(&advisers, name);
            group.adviser = draft.keep(row.line, adviser).or(group.adviser);
        } else if group.adviser.is_none() {
            draft.note(row.line, Fault::NoAdviser(group.name.clone()));
        }
        draft.directory.put_group(group);
    }
}

fn group(draft: &mut Draft<'_>, line: usize, cells: &Cells<'_>) -> Result<Group, Fault> {
    let name = cells.short_name(Column::Group)?;
    let known = draft.groups.get(&key(name)).copied();
    if let Some(line) = known.and_then(|id| draft.group_lines.get(&id)).copied() {
        let name = name.to_string();
        return Err(Fault::Twice { name, line });
    }
    let calendars: Vec<(&str, &str)> = draft.known.calendars.iter().map(|c| (*c, *c)).collect();
    let zone = zone(cells)?;
    let calendar = cells.one_of(Column::Calendar, &calendars)?;
    let market_day = market_day(cells)?;
    let rains = rains(cells)?;
    let need = |column| Fault::Missing(column, cells.kind());
    let mut group = match known.and_then(|id| draft.directory.group(id)) {
        Some(group) => group.clone(),
        None => new_group(
            draft.new_group(),
            name,
            zone.ok_or_else(|| need(Column::Zone))?,
            calendar.ok_or_else(|| need(Column::Calendar))?,
        ),
    };
    set(&mut group.zone, zone.map(str::to_string));
    set(&mut group.calendar, calendar.map(str::to_string));
    group.market_day = market_day.or(group.market_day);
    if let Some((first, second)) = rains {
        (group.rains_start, group.rains_end) = (Some(first.0), Some(first.1));
        group.second_rains = second;
    }
    draft.groups.insert(key(name), group.id);
    draft.group_lines.insert(group.id, line);
    Ok(group)
}

fn new_group(id: GroupId, name: &str, zone: &str, calendar: &str) -> Group {
    Group {
        id,
        name: name.to_string(),
        adviser: None,
        zone: zone.to_string(),
        calendar: calendar.to_string(),
        market_day: None,
        quiet_days: Vec::new(),
        rains_start: None,
        rains_end: None,
        second_rains: None,
        window_opened: None,
        book: Book::default(),
    }
}

/// First and last day of rains, each as month and day.
type Rains = ((u32, u32), (u32, u32));

/// The usual rains, and the second ones of the year where there are two.
fn rains(cells: &Cells<'_>) -> Result<Option<(Rains, Option<Rains>)>, Fault> {
    let starts = cells.month_days(Column::RainsStart)?;
    let ends = cells.month_days(Column::RainsEnd)?;
    match (starts.as_slice(), ends.as_slice()) {
        ([], []) => Ok(None),
        ([_, ..], []) => Err(Fault::HalfPair(Column::RainsEnd, Column::RainsStart)),
        ([], [_, ..]) => Err(Fault::HalfPair(Column::RainsStart, Column::RainsEnd)),
        ([start], [end]) => Ok(Some(((*start, *end), None))),
        ([one, two], [end, last]) if follow([*one, *end, *two, *last]) => {
            Ok(Some(((*one, *end), Some((*two, *last)))))
        }
        (_, _) => Err(cells.wrong(Column::RainsEnd, TWO_RAINS_FORM)),
    }
}

/// Whether days of a year come one after the other, once round from the first.
fn follow(days: [(u32, u32); 4]) -> bool {
    let mut turned = days;
    let first = (0..days.len()).min_by_key(|at| days.get(*at).copied());
    turned.rotate_left(first.unwrap_or(0));
    turned
        .windows(2)
        .all(|pair| matches!(pair, [one, next] if one < next))
}

/// A name of the IANA time zone database, in its own spelling.
fn zone(cells: &Cells<'_>) -> Result<Option<&'static str>, Fault> {
    let Some(text) = cells.text(Column::Zone) else {
        return Ok(None);
    };
    chrono_tz::TZ_VARIANTS
        .iter()
        .map(|zone| zone.name())
        .find(|name| name.eq_ignore_ascii_case(text))
        .map(Some)
        .ok_or_else(|| cells.wrong(Column::Zone, ZONE_FORM))
}

fn market_day(cells: &Cells<'_>) -> Result<Option<Weekday>, Fault> {
    let Some(text) = cells.text(Column::MarketDay) else {
        return Ok(None);
    };
    Weekday::from_str(text)
        .map(Some)
        .map_err(|_| cells.wrong(Column::MarketDay, WEEKDAY_FORM))
}

/// Advisers by name. They belong to no group, or to any.
fn advisers(draft: &Draft<'_>) -> BTreeMap<String, Vec<PersonId>> {
    let mut advisers: BTreeMap<String, Vec<PersonId>> = BTreeMap::new();
    for person in draft.directory.persons() {
        if person.role == Role::Adviser && !person.erased {
            let same_name = advisers.entry(key(&person.name)).or_default();
            same_name.push(person.id);
        }
    }
    advisers
}

fn adviser(advisers: &BTreeMap<String, Vec<PersonId>>, name: &str) -> Result<PersonId, Fault> {
    match advisers.get(&key(name)).map(Vec::as_slice) {
        Some([one]) => Ok(*one),
        Some(_) => Err(Fault::AdviserUnclear(name.to_string())),
        None => Err(Fault::AdviserUnknown(name.to_string())),
    }
}

/// An empty cell leaves what is known.
fn set<T>(slot: &mut T, value: Option<T>) {
    if let Some(value) = value {
        *slot = value;
    }
}
