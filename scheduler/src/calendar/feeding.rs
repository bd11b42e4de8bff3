//! The feeding table: which products, how many grams a tree, at which months after planting.
//!
//! Handbooks print doses in one of two ways, by month for each round or by year of age in all;
//! both end up as rounds. Two tables are never blended.

use alloc::{
    format,
    string::{String, ToString},
    vec::Vec,
};
use core::ops::RangeInclusive;

use budwood_parser::table::{Table, TableError};

use super::cited::{Cited, in_range};

/// Grams of one product for one tree that a table may ask for; the largest published single dose
/// known is 550 g, so that ten times that is a slip of the pen.
const GRAMS: RangeInclusive<f64> = 0.0..=5_000.0;
/// Years that a table may reach: beyond the thirtieth a stand is felled.
const YEARS: RangeInclusive<u32> = 1..=30;
const MONTHS_A_YEAR: u32 = 12;

/// The feeding table.
#[derive(Clone, Debug, PartialEq)]
pub struct Feeding {
    /// What goes into the hole at planting.
    pub basal: Vec<Dose>,
    /// Rounds by month after planting, in order.
    pub rounds: Vec<FeedRound>,
}

/// One round of feeding.
#[derive(Clone, Debug, PartialEq)]
pub struct FeedRound {
    /// Months after planting.
    pub month: u32,
    /// What each tree gets in this round.
    pub doses: Vec<Dose>,
}

/// One product for one tree.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    /// The product, in lower case ("urea", "tsp", "20-8-20").
    pub product: String,
    /// Grams for a tree.
    pub grams: f64,
}

pub(super) fn read(table: &Table<'_>, cited: &Cited) -> Result<Feeding, TableError> {
    let basal = table.tables("basal", |row| {
        cited.cite(row)?;
        Ok(Dose {
            product: row.need_text("product")?.to_string(),
            grams: in_range(row, "grams", row.need_number("grams")?, GRAMS)?,
        })
    })?;
    let by_month = table.tables("months", |row| month(row, cited))?;
    let by_year = table.tables("years", |row| year(row, cited))?;
    let rounds = match (by_month.is_empty(), by_year.is_empty()) {
        (false, true) => by_month,
        (true, false) => {
            let a_year = cited.whole(table, "rounds_a_year", 1..=MONTHS_A_YEAR)?;
            if !MONTHS_A_YEAR.is_multiple_of(a_year) {
                return Err(table.error("rounds_a_year", "does not divide 12 months evenly"));
            }
            split(table, &by_year, a_year)?
        }
        (true, true) => return Err(table.error("months", "or years must be there")),
        (false, false) => return Err(table.error("months", "and years cannot both be there")),
    };
    if rounds
        .iter()
        .zip(rounds.iter().skip(1))
        .any(|(round, next)| round.month >= next.month)
    {
        return Err(table.error("months", "are not in rising order"));
    }
    Ok(Feeding { basal, rounds })
}

fn month(row: &Table<'_>, cited: &Cited) -> Result<FeedRound, TableError> {
    cited.cite(row)?;
    let last = YEARS.end() * MONTHS_A_YEAR;
    Ok(FeedRound {
        month: in_range(row, "month", row.need_whole("month")?, 0..=last)?,
        doses: doses(row)?,
    })
}

/// Doses for each year of age from the first to the last, in all.
struct Years {
    from: u32,
    until: u32,
    doses: Vec<Dose>,
}

fn year(row: &Table<'_>, cited: &Cited) -> Result<Years, TableError> {
    cited.cite(row)?;
    let from = in_range(row, "from_year", row.need_whole("from_year")?, YEARS)?;
    let last = from..=*YEARS.end();
    Ok(Years {
        from,
        until: in_range(row, "until_year", row.need_whole("until_year")?, last)?,
        doses: doses(row)?,
    })
}

fn doses(row: &Table<'_>) -> Result<Vec<Dose>, TableError> {
    row.need_table("grams", |grams| {
        grams
            .keys()
            .into_iter()
            .map(|product| {
                Ok(Dose {
                    product: product.to_string(),
                    grams: in_range(grams, product, grams.need_number(product)?, GRAMS)?,
                })
            })
            .collect()
    })
}

/// Spreads the dose of each year evenly over its rounds. Each round falls in the middle of its
/// share of the year: with two rounds in months 3 and 9, as estate tables have it.
fn split(table: &Table<'_>, years: &[Years], a_year: u32) -> Result<Vec<FeedRound>, TableError> {
    let between = MONTHS_A_YEAR / a_year;
    let mut rounds = Vec::new();
    let mut next = 1;
    for span in years {
        if span.from != next {
            return Err(table.error("years", format!("year {next} is missing or there twice")));
        }
        next = span.until + 1;
        let share: Vec<Dose> = span
            .doses
            .iter()
            .map(|dose| Dose {
                product: dose.product.clone(),
                grams: dose.grams / f64::from(a_year),
            })
            .collect();
        for year in span.from..=span.until {
            for round in 0..a_year {
                rounds.push(FeedRound {
                    month: (year - 1) * MONTHS_A_YEAR + round * between + between / 2,
                    doses: share.clone(),
                });
            }
        }
    }
    Ok(rounds)
}
