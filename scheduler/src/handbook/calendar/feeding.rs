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

use super::cited::Cited;

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

pub(super) fn read(table: &Table<'_>, cited: &Cited) -> Feeding {
    let basal = cited.rows(table, "basal", |row| {
        cited.cite(row);
        let product = cited.keep(row.need_text("product")).unwrap_or_default();
        Dose {
            product: product.to_string(),
            grams: cited.number_here(row, "grams", GRAMS),
        }
    });
    let told = cited.number_of_faults();
    let by_month = cited.rows(table, "months", |row| month(row, cited));
    let by_year = cited.rows(table, "years", |row| year(row, cited));
    let rounds = match (by_month.is_empty(), by_year.is_empty()) {
        (false, true) => by_month,
        (true, false) => {
            let a_year = cited.whole(table, "rounds_a_year", 1..=MONTHS_A_YEAR);
            if !MONTHS_A_YEAR.is_multiple_of(a_year) {
                cited.fault(table.error("rounds_a_year", "does not divide 12 months evenly"));
            }
            cited
                .keep(split(table, &by_year, a_year))
                .unwrap_or_default()
        }
        (true, true) => {
            if cited.number_of_faults() == told {
                cited.fault(table.error("months", "or years must be there"));
            }
            Vec::new()
        }
        (false, false) => {
            cited.fault(table.error("months", "and years cannot both be there"));
            Vec::new()
        }
    };
    for (index, (round, next)) in (1..).zip(rounds.iter().zip(rounds.iter().skip(1))) {
        if round.month >= next.month {
            let what = format!("comes after month {} of the row before", round.month);
            cited.fault(table.error(&format!("months[{index}].month"), what));
        }
    }
    Feeding { basal, rounds }
}

fn month(row: &Table<'_>, cited: &Cited) -> FeedRound {
    cited.cite(row);
    let last = YEARS.end() * MONTHS_A_YEAR;
    FeedRound {
        month: cited.whole_here(row, "month", 0..=last),
        doses: doses(row, cited),
    }
}

/// Doses for each year of age from the first to the last, in all.
struct Years {
    from: u32,
    until: u32,
    doses: Vec<Dose>,
}

fn year(row: &Table<'_>, cited: &Cited) -> Years {
    cited.cite(row);
    let from = cited.whole_here(row, "from_year", YEARS);
    Years {
        from,
        until: cited.whole_here(row, "until_year", from..=*YEARS.end()),
        doses: doses(row, cited),
    }
}

fn doses(row: &Table<'_>, cited: &Cited) -> Vec<Dose> {
    let doses = cited.section(row, "grams", |grams| {
        let dose = |product: &str| Dose {
            product: product.to_string(),
            grams: cited.number_here(grams, product, GRAMS),
        };
        grams.keys().into_iter().map(dose).collect()
    });
    doses.unwrap_or_default()
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
