//! From the text of a calendar to its values: one function for each section of the file.
//!
//! Ranges are wide: they catch a slip of the pen (a height in centimetres where metres are
//! asked), not an unusual opinion.

use alloc::{string::ToString, vec::Vec};
use core::ops::RangeInclusive;

use budwood_parser::{
    Material,
    table::{Table, TableError, read_changed, read_file},
};

use super::{
    Backfill, Calendar, Census, CountAgain, Datum, Induction, Opening, Order, Pits, Planting,
    Pruning, Rounds, Spacing, Survival, Weeding,
    cited::{Cited, in_range},
    feeding,
};

/// Distances between trees in metres: closer is a hedge, wider is no plantation.
const SPACING_M: RangeInclusive<f64> = 1.0..=40.0;
/// A share in per cent.
const PER_CENT: RangeInclusive<f64> = 0.0..=100.0;
/// Loss on the way: all of them lost would need an endless order.
const LOSS_PCT: RangeInclusive<f64> = 0.0..=90.0;
/// Days of a time before or between jobs: three years at most.
const DAYS: RangeInclusive<u32> = 0..=1_095;
/// Days from round to round, at least one.
const EVERY_DAYS: RangeInclusive<u32> = 1..=1_095;
/// Months after planting: thirty years, a stand's life.
const MONTHS: RangeInclusive<u32> = 0..=360;
/// Height on a tree in metres.
const HEIGHT_M: RangeInclusive<f64> = 0.5..=10.0;
/// Trees of a sample.
const SAMPLE: RangeInclusive<u32> = 1..=10_000;

type Read<T> = Result<T, TableError>;

pub(super) fn calendar(text: &str) -> Read<Calendar> {
    read_file(text, whole)
}

pub(super) fn changed_calendar(text: &str, changes: &str) -> Read<Calendar> {
    read_changed(text, changes, "value", whole)
}

fn whole(file: &Table<'_>) -> Read<Calendar> {
    let cited = Cited::new(file)?;
    let calendar = Calendar {
        name: file.need_text("name")?.to_string(),
        title: file.need_text("title")?.to_string(),
        spacing: file.need_table("spacing", |table| spacing(table, &cited))?,
        order: file.need_table("order", |table| order(table, &cited))?,
        pits: file.need_table("pits", |table| pits(table, &cited))?,
        planting: file.need_table("planting", |table| planting(table, &cited))?,
        survival: file.need_table("survival", |table| survival(table, &cited))?,
        backfill: file.need_table("backfill", |table| backfill(table, &cited))?,
        weeding: file.need_table("weeding", |table| weeding(table, &cited))?,
        feeding: file.need_table("feeding", |table| feeding::read(table, &cited))?,
        pruning: file.need_table("pruning", |table| pruning(table, &cited))?,
        induction: file.need_table("induction", |table| induction(table, &cited))?,
        root_check: file.need_table("root_check", |table| rounds(table, &cited))?,
        census: file.need_table("census", |table| census(table, &cited))?,
        opening: file.need_table("opening", |table| opening(table, &cited))?,
        sources: cited.sources.clone(),
        citations: Vec::new(),
    };
    Ok(Calendar {
        citations: cited.into_citations(),
        ..calendar
    })
}

fn spacing(table: &Table<'_>, cited: &Cited) -> Read<Spacing> {
    Ok(Spacing {
        row_m: cited.number(table, "row_m", SPACING_M)?,
        in_row_m: cited.number(table, "in_row_m", SPACING_M)?,
    })
}

fn order(table: &Table<'_>, cited: &Cited) -> Read<Order> {
    Ok(Order {
        spares_pct: cited.number(table, "spares_pct", PER_CENT)?,
        transit_loss_pct: cited.number(table, "transit_loss_pct", LOSS_PCT)?,
        slack_days: cited.whole(table, "slack_days", DAYS)?,
        notice_days: cited.whole(table, "notice_days", DAYS)?,
        material: cited.word(table, "material", Material::ALL, Material::name)?,
        lead_days: table.need_table("lead_days", |leads| {
            Material::ALL
                .iter()
                .map(|material| Ok((*material, cited.whole(leads, material.name(), DAYS)?)))
                .collect()
        })?,
    })
}

fn pits(table: &Table<'_>, cited: &Cited) -> Read<Pits> {
    let dig_months_before = cited.whole(table, "dig_months_before", 1..=12)?;
    // Not before they are dug, whatever the length of the month.
    let refill_days = 0..=dig_months_before * 28;
    Ok(Pits {
        edge_cm: cited.whole(table, "edge_cm", 20..=200)?,
        dig_months_before,
        refill_days_before: cited.whole(table, "refill_days_before", refill_days)?,
    })
}

fn planting(table: &Table<'_>, cited: &Cited) -> Read<Planting> {
    let window_days = cited.whole(table, "window_days", DAYS)?;
    Ok(Planting {
        late_days: cited.whole(table, "late_days", 0..=window_days)?,
        window_days,
    })
}

fn survival(table: &Table<'_>, cited: &Cited) -> Read<Survival> {
    let first_days = cited.whole(table, "first_days", DAYS)?;
    let every_days = cited.whole_if_there(table, "every_days", EVERY_DAYS)?;
    let until_days = cited.whole_if_there(table, "until_days", first_days..=*DAYS.end())?;
    let again = match (every_days, until_days) {
        (Some(every_days), Some(until_days)) => Some(CountAgain {
            every_days,
            until_days,
        }),
        (None, None) => None,
        (Some(_), None) => return Err(table.error("until_days", "is missing beside every_days")),
        (None, Some(_)) => return Err(table.error("every_days", "is missing beside until_days")),
    };
    Ok(Survival { first_days, again })
}

fn backfill(table: &Table<'_>, cited: &Cited) -> Read<Backfill> {
    Ok(Backfill {
        until_months: cited.whole(table, "until_months", MONTHS)?,
        rain_left_days: cited.whole(table, "rain_left_days", 0..=180)?,
        survival_target_pct: cited.number(table, "survival_target_pct", PER_CENT)?,
    })
}

fn weeding(table: &Table<'_>, cited: &Cited) -> Read<Weeding> {
    Ok(Weeding {
        strip_m: cited.number(table, "strip_m", 0.5..=20.0)?,
        rounds: rounds(table, cited)?,
    })
}

fn pruning(table: &Table<'_>, cited: &Cited) -> Read<Pruning> {
    let from_month = cited.whole(table, "from_month", MONTHS)?;
    Ok(Pruning {
        height_m: cited.number(table, "height_m", HEIGHT_M)?,
        from_month,
        until_month: cited.whole(table, "until_month", from_month..=*MONTHS.end())?,
        every_days: cited.whole(table, "every_days", EVERY_DAYS)?,
        waits_for_rain: cited.flag(table, "waits_for_rain")?,
    })
}

fn induction(table: &Table<'_>, cited: &Cited) -> Read<Induction> {
    let from_month = cited.whole(table, "from_month", MONTHS)?;
    let look_from_days = cited.whole(table, "look_from_days", DAYS)?;
    Ok(Induction {
        height_m: cited.number(table, "height_m", HEIGHT_M)?,
        from_month,
        until_month: cited.whole(table, "until_month", from_month..=*MONTHS.end())?,
        look_from_days,
        look_until_days: cited.whole(table, "look_until_days", look_from_days..=60)?,
    })
}

fn census(table: &Table<'_>, cited: &Cited) -> Read<Census> {
    Ok(Census {
        sample_trees: cited.whole(table, "sample_trees", SAMPLE)?,
        rounds: rounds(table, cited)?,
    })
}

fn opening(table: &Table<'_>, cited: &Cited) -> Read<Opening> {
    let months = table.table("months", |row| {
        cited.cite(row)?;
        months_of_year(row)
    })?;
    Ok(Opening {
        girth_cm: cited.number(table, "girth_cm", 10.0..=200.0)?,
        height_cm: cited.number(table, "height_cm", 10.0..=300.0)?,
        datum: cited.word(table, "datum", &[Datum::Ground, Datum::Union], Datum::name)?,
        share_pct: cited.number(table, "share_pct", PER_CENT)?,
        minimum_months: cited.whole(table, "minimum_months", MONTHS)?,
        sample_trees: cited.whole(table, "sample_trees", SAMPLE)?,
        months: months.unwrap_or_default(),
    })
}

fn months_of_year(row: &Table<'_>) -> Read<Vec<u32>> {
    let names = row.numbers("value")?;
    let months: Vec<u32> = (1..=12)
        .filter(|month| names.contains(&f64::from(*month)))
        .collect();
    if months.len() == names.len() {
        Ok(months)
    } else {
        Err(row.error("value", "expected months from 1 to 12, each once"))
    }
}

/// A table by age: rows must follow each other without a gap or an overlap.
fn rounds(table: &Table<'_>, cited: &Cited) -> Read<Vec<Rounds>> {
    let rows = table.tables("rounds", |row| {
        cited.cite(row)?;
        let from_month = in_range(row, "from_month", row.need_whole("from_month")?, MONTHS)?;
        let last = from_month + 1..=*MONTHS.end();
        Ok(Rounds {
            from_month,
            until_month: in_range(row, "until_month", row.need_whole("until_month")?, last)?,
            every_days: in_range(row, "every_days", row.need_whole("every_days")?, EVERY_DAYS)?,
        })
    })?;
    if rows.is_empty() {
        return Err(table.error("rounds", "is missing"));
    }
    if rows
        .iter()
        .zip(rows.iter().skip(1))
        .any(|(row, next)| row.until_month != next.from_month)
    {
        return Err(table.error("rounds", "ages overlap or leave a gap"));
    }
    Ok(rows)
}
