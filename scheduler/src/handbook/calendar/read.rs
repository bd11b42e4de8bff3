//! From the text of a calendar to its values: one function for each section of the file.
//!
//! Ranges are wide: they catch a slip of the pen (a height in centimetres where metres are
//! asked), not an unusual opinion.

use alloc::{
    collections::{BTreeMap, BTreeSet},
    format,
    string::{String, ToString},
    vec::Vec,
};
use core::{cmp::Ordering, ops::RangeInclusive};

use budwood_parser::{
    Material,
    table::{Table, TableError},
};

use super::{
    Backfill, Calendar, CalendarError, Census, CountAgain, Cover, Datum, DrySeason, Growth,
    Induction, Intercrop, Land, Opening, Order, Pits, Planting, Pruning, Rounds, Slope, Spacing,
    Survival, Weeding, cited::Cited, feeding, local, own,
};

/// Distances between trees in metres: closer is a hedge, wider is no plantation.
const SPACING_M: RangeInclusive<f64> = 1.0..=40.0;
/// A share in per cent.
const PER_CENT: RangeInclusive<f64> = 0.0..=100.0;
/// Loss on the way: all of them lost would need an endless order.
const LOSS_PCT: RangeInclusive<f64> = 0.0..=90.0;
/// How wide and how deep planting pits are.
const PIT_CM: RangeInclusive<u32> = 20..=200;
/// Days of a time before or between jobs: three years at most.
const DAYS: RangeInclusive<u32> = 0..=1_095;
/// Days from round to round, at least one.
const EVERY_DAYS: RangeInclusive<u32> = 1..=1_095;
/// Months after planting: thirty years, a stand's life.
const MONTHS: RangeInclusive<u32> = 0..=360;
/// Height on a tree in metres.
const HEIGHT_M: RangeInclusive<f64> = 0.5..=10.0;
/// A girth that a curve of growth can pass through: below every limit that is reckoned with.
const GROWTH_CM: RangeInclusive<f64> = 5.0..=75.0;
/// The age that belongs to it, in years: before, the curve does not hold.
const GROWTH_YEARS: RangeInclusive<f64> = 1.5..=30.0;
/// Trees of a sample.
const SAMPLE: RangeInclusive<u32> = 1..=10_000;

/// Months of the year, for months a place plants or opens in.
const MONTHS_OF_YEAR: RangeInclusive<u32> = 1..=12;

pub(super) fn calendar(text: &str) -> Result<Calendar, CalendarError> {
    own::read_on_base(text, whole).map_err(|faults| CalendarError::of(text, faults))
}

fn whole(file: &Table<'_>) -> Result<Calendar, Vec<TableError>> {
    let cited = Cited::new(file);
    let calendar = sections(file, &cited);
    let also_published = cited.rows(file, "also_published", |row| cited.also_published(row));
    for unknown in file.take_unknown() {
        cited.fault(unknown);
    }
    let (mut sources, citations, faults) = cited.into_parts();
    let also_published: Vec<_> = also_published.into_iter().flatten().collect();
    match calendar {
        Some(calendar) if faults.is_empty() => {
            let is_used = |key: &String| {
                citations.iter().any(|cited| cited.source == *key)
                    || also_published.iter().any(|other| other.source == *key)
            };
            // A base lists more than what is left of it.
            sources.retain(|key, _| is_used(key));
            let calendar = Calendar {
                sources,
                citations,
                also_published,
                ..calendar
            };
            Ok(calendar.with_published())
        }
        Some(_) | None => Err(faults),
    }
}

/// Every section is read, whatever is wrong in those before it.
fn sections(file: &Table<'_>, cited: &Cited) -> Option<Calendar> {
    // Asked for here so that it is known; read where files are laid over each other.
    let _ = cited.keep(file.text("base"));
    let name = cited.keep(file.need_text("name"));
    let title = cited.keep(file.need_text("title"));
    let spacing = cited.section(file, "spacing", |table| spacing(table, cited));
    let slope = cited.section(file, "slope", |table| slope(table, cited));
    let land = cited.section(file, "land", |table| land(table, cited));
    let order = cited.section(file, "order", |table| order(table, cited));
    let pits = cited.section(file, "pits", |table| pits(table, cited));
    let planting = cited.section(file, "planting", |table| planting(table, cited));
    let cover = cited.section(file, "cover", |table| cover(table, cited));
    let survival = cited.section(file, "survival", |table| survival(table, cited));
    let backfill = cited.section(file, "backfill", |table| backfill(table, cited));
    let weeding = cited.section(file, "weeding", |table| weeding(table, cited));
    let feeding = cited.section(file, "feeding", |table| feeding::read(table, cited));
    let dry_season = cited.section(file, "dry_season", |table| dry_season(table, cited));
    let intercrop = cited.section(file, "intercrop", |table| intercrop(table, cited));
    let pruning = cited.section(file, "pruning", |table| pruning(table, cited));
    let induction = cited.section(file, "induction", |table| induction(table, cited));
    let root_check = cited.section(file, "root_check", |table| rounds(table, cited));
    let leaf_check = cited.section(file, "leaf_check", |table| rounds(table, cited));
    let growth = cited.section(file, "growth", |table| growth(table, cited));
    let census = cited.section(file, "census", |table| census(table, cited));
    let opening = cited
        .section(file, "opening", |table| opening(table, cited))
        .flatten();
    Some(Calendar {
        name: name?.to_string(),
        title: title?.to_string(),
        sources: BTreeMap::new(),
        citations: Vec::new(),
        published: BTreeSet::new(),
        also_published: Vec::new(),
        spacing: spacing?,
        slope: slope?,
        land: land?,
        order: order??,
        pits: pits?,
        planting: planting?,
        cover: cover?,
        survival: survival?,
        backfill: backfill?,
        weeding: weeding?,
        feeding: feeding?,
        dry_season: dry_season?,
        intercrop: intercrop?,
        pruning: pruning?,
        induction: induction?,
        root_check: root_check?,
        leaf_check: leaf_check?,
        growth: growth?,
        census: census?,
        opening: opening?,
        part_payments: local::part_payments(file, cited),
        labour: local::labour(file, cited),
        busy_weeks: local::busy_weeks(file, cited),
    })
}

fn spacing(table: &Table<'_>, cited: &Cited) -> Spacing {
    Spacing {
        row_m: cited.number(table, "row_m", SPACING_M),
        in_row_m: cited.number(table, "in_row_m", SPACING_M),
        margin_m: cited.number(table, "margin_m", 0.0..=20.0),
    }
}

fn slope(table: &Table<'_>, cited: &Cited) -> Slope {
    Slope {
        contour_pct: cited.number(table, "contour_pct", PER_CENT),
        terrace_pct: cited.number_if_there(table, "terrace_pct", PER_CENT),
        most_pct: cited.number_if_there(table, "most_pct", PER_CENT),
    }
}

fn land(table: &Table<'_>, cited: &Cited) -> Land {
    let clear_months_before = cited.whole(table, "clear_months_before", 1..=24);
    Land {
        measure_months_before: cited.whole(
            table,
            "measure_months_before",
            clear_months_before..=36,
        ),
        clear_months_before,
        clear_days_before: cited.whole(table, "clear_days_before", 0..=clear_months_before * 28),
        line_months_before: cited.whole(table, "line_months_before", 1..=clear_months_before),
    }
}

fn order(table: &Table<'_>, cited: &Cited) -> Option<Order> {
    let leads = cited.section(table, "lead_days", |leads| {
        let lead = |material: &Material| (*material, cited.whole(leads, material.name(), DAYS));
        Material::ALL.iter().map(lead).collect()
    });
    let material = cited.word(table, "material", Material::ALL, Material::name);
    let order = Order {
        spares_pct: cited.number(table, "spares_pct", PER_CENT),
        transit_loss_pct: cited.number(table, "transit_loss_pct", LOSS_PCT),
        slack_days: cited.whole(table, "slack_days", DAYS),
        notice_days: cited.whole(table, "notice_days", DAYS),
        material: material.unwrap_or(Material::Polybag),
        lead_days: leads?,
    };
    material.map(|_| order)
}

fn pits(table: &Table<'_>, cited: &Cited) -> Pits {
    let dig_months_before = cited.whole(table, "dig_months_before", 1..=12);
    // Not before they are dug, whatever the length of the month.
    let refill_days = 0..=dig_months_before * 28;
    Pits {
        edge_cm: cited.whole(table, "edge_cm", PIT_CM),
        round_deep_cm: cited.whole_if_there(table, "round_deep_cm", PIT_CM),
        dig_months_before,
        refill_days_before: cited.whole(table, "refill_days_before", refill_days),
    }
}

fn planting(table: &Table<'_>, cited: &Cited) -> Planting {
    let window_days = cited.whole(table, "window_days", DAYS);
    Planting {
        late_days: cited.whole(table, "late_days", 0..=window_days),
        window_days,
        months: months(table, cited),
    }
}

fn cover(table: &Table<'_>, cited: &Cited) -> Cover {
    Cover {
        is_asked: cited.flag(table, "is_asked"),
        within_days: cited.whole(table, "within_days", DAYS),
    }
}

fn survival(table: &Table<'_>, cited: &Cited) -> Survival {
    let first_days = cited.whole(table, "first_days", DAYS);
    let every_days = cited.whole_if_there(table, "every_days", EVERY_DAYS);
    let until_days = cited.whole_if_there(table, "until_days", first_days..=*DAYS.end());
    let again = match (every_days, until_days) {
        (Some(every_days), Some(until_days)) => Some(CountAgain {
            every_days,
            until_days,
        }),
        (None, None) => None,
        (Some(_), None) => {
            cited.fault(table.error("until_days", "is missing beside every_days"));
            None
        }
        (None, Some(_)) => {
            cited.fault(table.error("every_days", "is missing beside until_days"));
            None
        }
    };
    Survival { first_days, again }
}

fn backfill(table: &Table<'_>, cited: &Cited) -> Backfill {
    Backfill {
        until_months: cited.whole(table, "until_months", MONTHS),
        rain_left_days: cited.whole(table, "rain_left_days", 0..=180),
        survival_target_pct: cited.number(table, "survival_target_pct", PER_CENT),
    }
}

fn weeding(table: &Table<'_>, cited: &Cited) -> Weeding {
    Weeding {
        strip_m: cited.number(table, "strip_m", 0.5..=20.0),
        rounds: rounds(table, cited),
    }
}

fn dry_season(table: &Table<'_>, cited: &Cited) -> DrySeason {
    DrySeason {
        days_before: cited.whole(table, "days_before", 0..=120),
        mulch_until_month: cited.whole(table, "mulch_until_month", MONTHS),
        mulch_gap_cm: cited.whole(table, "mulch_gap_cm", 0..=100),
        firebreak_until_month: cited.whole(table, "firebreak_until_month", MONTHS),
        firebreak_m: cited.number(table, "firebreak_m", 0.5..=50.0),
    }
}

fn intercrop(table: &Table<'_>, cited: &Cited) -> Intercrop {
    Intercrop {
        until_month: cited.whole(table, "until_month", MONTHS),
        distance_m: cited.number(table, "distance_m", 0.2..=10.0),
        most_pct: cited.number_if_there(table, "most_pct", PER_CENT),
        every_days: cited.whole(table, "every_days", EVERY_DAYS),
    }
}

fn pruning(table: &Table<'_>, cited: &Cited) -> Pruning {
    let from_month = cited.whole(table, "from_month", MONTHS);
    Pruning {
        height_m: cited.number(table, "height_m", HEIGHT_M),
        from_month,
        until_month: cited.whole(table, "until_month", from_month..=*MONTHS.end()),
        every_days: cited.whole(table, "every_days", EVERY_DAYS),
        waits_for_rain: cited.flag(table, "waits_for_rain"),
    }
}

fn induction(table: &Table<'_>, cited: &Cited) -> Induction {
    let from_month = cited.whole(table, "from_month", MONTHS);
    let look_from_days = cited.whole(table, "look_from_days", DAYS);
    Induction {
        height_m: cited.number(table, "height_m", HEIGHT_M),
        from_month,
        until_month: cited.whole(table, "until_month", from_month..=*MONTHS.end()),
        count_every_days: cited.whole(table, "count_every_days", EVERY_DAYS),
        look_from_days,
        look_until_days: cited.whole(table, "look_until_days", look_from_days..=60),
    }
}

fn growth(table: &Table<'_>, cited: &Cited) -> Growth {
    Growth {
        girth_cm: cited.number(table, "girth_cm", GROWTH_CM),
        age_years: cited.number(table, "age_years", GROWTH_YEARS),
        is_opening: cited.flag(table, "is_opening"),
    }
}

fn census(table: &Table<'_>, cited: &Cited) -> Census {
    Census {
        sample_trees: cited.whole(table, "sample_trees", SAMPLE),
        rounds: rounds(table, cited),
    }
}

fn opening(table: &Table<'_>, cited: &Cited) -> Option<Opening> {
    let datum = cited.word(table, "datum", &[Datum::Ground, Datum::Union], Datum::name);
    let opening = Opening {
        girth_cm: cited.number(table, "girth_cm", 10.0..=200.0),
        height_cm: cited.number(table, "height_cm", 10.0..=300.0),
        datum: datum.unwrap_or(Datum::Ground),
        share_pct: cited.number(table, "share_pct", PER_CENT),
        minimum_months: cited.whole(table, "minimum_months", MONTHS),
        sample_trees: cited.whole(table, "sample_trees", SAMPLE),
        months: months(table, cited),
        ready_days_before: cited.whole(table, "ready_days_before", DAYS),
        rest_every_days: cited.whole(table, "rest_every_days", EVERY_DAYS),
    };
    datum.map(|_| opening)
}

/// Months of the year, if the handbook names any.
fn months(table: &Table<'_>, cited: &Cited) -> Vec<u32> {
    let months = cited.cell(table, "months", |row| {
        let names = cited.keep(row.numbers("value")).unwrap_or_default();
        let months: Vec<u32> = MONTHS_OF_YEAR
            .filter(|month| names.contains(&f64::from(*month)))
            .collect();
        if months.len() != names.len() {
            cited.fault(row.error("value", "expected months from 1 to 12, each once"));
        }
        months
    });
    months.unwrap_or_default()
}

/// A table by age: rows must follow each other without a gap or an overlap.
fn rounds(table: &Table<'_>, cited: &Cited) -> Vec<Rounds> {
    let told = cited.number_of_faults();
    let rows = cited.rows(table, "rounds", |row| {
        cited.cite(row);
        let from_month = cited.whole_here(row, "from_month", MONTHS);
        let last = from_month + 1..=*MONTHS.end() + 1;
        Rounds {
            from_month,
            until_month: cited.whole_here(row, "until_month", last),
            every_days: cited.whole_here(row, "every_days", EVERY_DAYS),
        }
    });
    // Rows that could not be read stand in no order.
    if cited.number_of_faults() > told {
        return rows;
    }
    if rows.is_empty() {
        cited.fault(table.error("rounds", "is missing"));
    }
    for (index, (row, next)) in (1..).zip(rows.iter().zip(rows.iter().skip(1))) {
        let (ends, begins) = (row.until_month, next.from_month);
        let fault = match ends.cmp(&begins) {
            Ordering::Less => format!("leaves a gap: no row holds from month {ends} to {begins}"),
            Ordering::Greater => {
                format!("is an overlap: the row before holds until month {ends}, not {begins}")
            }
            Ordering::Equal => continue,
        };
        cited.fault(table.error(&format!("rounds[{index}].from_month"), fault));
    }
    rows
}
