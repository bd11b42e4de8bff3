//! What only an organisation tells of its place: what a programme pays on, how long work takes, when
//! nobody has time. No handbook that ships has any of it.

use alloc::{format, vec::Vec};
use core::ops::RangeInclusive;

use budwood_parser::table::Table;

use super::{BusyWeeks, LabourNorm, PartPayment, cited::Cited};
use crate::words::job::TaskKind;

/// Months after planting: thirty years, a stand's life.
const MONTHS: RangeInclusive<u32> = 0..=360;
/// How many days ago a visit may have been: three years.
const VISIT_DAYS: RangeInclusive<u32> = 1..=1_095;
/// Months of the year.
const MONTHS_OF_YEAR: RangeInclusive<u32> = 1..=12;

pub(super) fn labour(file: &Table<'_>, cited: &Cited) -> Vec<LabourNorm> {
    let rows = cited.rows(file, "labour", |row| {
        cited.cite(row);
        let days_per_ha = cited.number_here(row, "days_per_ha", 0.1..=200.0);
        let job = cited.keep(row.need_text("job"))?;
        let task = TaskKind::from_name(job);
        if task.is_none() {
            cited.fault(row.error("job", format!("no job is called \"{job}\"")));
        }
        let task = task?;
        Some(LabourNorm { task, days_per_ha })
    });
    rows.into_iter().flatten().collect()
}

pub(super) fn busy_weeks(file: &Table<'_>, cited: &Cited) -> Vec<BusyWeeks> {
    cited.rows(file, "busy_weeks", |row| {
        cited.cite(row);
        let date = |month: &str, day: &str| {
            let month = cited.whole_here(row, month, MONTHS_OF_YEAR);
            (month, cited.whole_here(row, day, 1..=31))
        };
        BusyWeeks {
            from: date("from_month", "from_day"),
            until: date("until_month", "until_day"),
        }
    })
}

/// Each part once, and none earlier than the one before it.
pub(super) fn part_payments(file: &Table<'_>, cited: &Cited) -> Vec<PartPayment> {
    let told = cited.number_of_faults();
    let rows = cited.rows(file, "part_payments", |row| {
        cited.cite(row);
        PartPayment {
            part: cited.whole_here(row, "part", 1..=20),
            months: cited.whole_here(row, "months", MONTHS),
            stand_per_ha: cited.number_here(row, "stand_per_ha", 1.0..=1_500.0),
            visit_days: cited.whole_here(row, "visit_days", VISIT_DAYS),
        }
    });
    if cited.number_of_faults() > told {
        return rows;
    }
    for (index, (row, next)) in (1..).zip(rows.iter().zip(rows.iter().skip(1))) {
        if next.part <= row.part || next.months < row.months {
            let key = format!("part_payments[{index}].part");
            cited.fault(file.error(&key, "comes after a later part: parts stand in order"));
        }
    }
    rows
}

#[cfg(test)]
mod tests {
    use std::{format, string::ToString, vec::Vec};

    use crate::handbook::calendar::{Calendar, profiles};

    const OWN: &str = "base = \"fao\"\nname = \"valley\"\ntitle = \"Growers\"\n[sources]\nvalley = \"Rules of the valley\"\n";

    #[test]
    fn part_payments_stand_in_order_with_their_source() {
        let part = |part: u32, months: u32, source: &str| {
            format!(
                "\n[[part_payments]]\npart = {part}\nmonths = {months}\nstand_per_ha = 400.0\nvisit_days = 90\nsource = \"{source}\"\nconfidence = \"read\"\n"
            )
        };
        let own = |rows: &str| Calendar::parse(&format!("{OWN}{rows}"));
        let two = own(&(part(1, 12, "valley") + &part(2, 48, "valley"))).unwrap();
        let months: Vec<u32> = two.part_payments.iter().map(|one| one.months).collect();
        assert_eq!(months, [12, 48]);
        assert_eq!(two.citation("part_payments[1]").unwrap().source, "valley");
        let fao = Calendar::parse(profiles::FAO).unwrap();
        assert!(fao.part_payments.is_empty());
        let turned = own(&(part(2, 48, "valley") + &part(1, 12, "valley")));
        assert!(
            turned
                .unwrap_err()
                .to_string()
                .contains("parts stand in order")
        );
        let unknown = own(&part(1, 12, "nobody"));
        assert!(
            unknown
                .unwrap_err()
                .to_string()
                .contains("not listed in sources")
        );
    }

    #[test]
    fn work_takes_days_and_weeks_are_busy() {
        let row = "source = \"valley\"\nconfidence = \"read\"\n";
        let own = |job: &str| {
            let labour = format!("[[labour]]\njob = \"{job}\"\ndays_per_ha = 6.0\n{row}");
            let busy =
                "[[busy_weeks]]\nfrom_month = 12\nfrom_day = 20\nuntil_month = 1\nuntil_day = 5\n";
            Calendar::parse(&format!("{OWN}{labour}{busy}{row}"))
        };
        let calendar = own("weed").unwrap();
        assert_eq!(calendar.labour[0].days_per_ha, 6.0);
        assert_eq!(calendar.busy_weeks[0].until, (1, 5));
        let fault = own("dance").unwrap_err().to_string();
        assert!(fault.contains("no job is called \"dance\""), "{fault}");
    }
}
