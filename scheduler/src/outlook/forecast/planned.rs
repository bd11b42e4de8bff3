//! The same for a stand that is only planned: as wide as what the handbook leads to expect leaves it.

use chrono::NaiveDate;

use super::{
    Member, Outlook, Range,
    aim::Part,
    bank::{Beside, bank},
    sample::Sample,
};
use crate::{
    handbook::calendar::Calendar, outlook::growth::GrowingYear, sums::days, words::season::Season,
};

/// By this age, in years, every shape has begun to grow.
const BEGUN_YEARS: f64 = 1.0;

/// When a stand that is planted on this day will likely be opened, were nothing ever measured.
#[must_use]
pub fn of_planting(
    planted_on: NaiveDate,
    clone_name: Option<&str>,
    calendar: &Calendar,
    season: &Season,
) -> Option<Range> {
    let begun = |member: Member| Member {
        path: member.path.later(BEGUN_YEARS),
        ..member
    };
    let bank = bank(calendar, clone_name, Beside::default(), &[]);
    let outlook = Outlook {
        cohorts: [].into(),
        planted_on,
        bank: bank.into_iter().map(begun).collect(),
        last: Sample::unmeasured(days::months_after(planted_on, 12)?, &calendar.opening),
        year: GrowingYear::new(season),
    };
    let all = Part {
        trees: 1.0,
        older_years: 0.0,
    };
    outlook.range(calendar, planted_on, &[all])
}

#[cfg(test)]
mod tests {
    use chrono::NaiveDate;

    use super::of_planting;
    use crate::{
        handbook::calendar::{Calendar, profiles},
        words::season::Season,
    };

    /// Calendars that give the age at which stands are opened are taken at their word. Thailand's
    /// gives a girth before it: 29 cm at 4.5 years (Nhean, abstract), where the monomolecular curve
    /// with limits of 80 to 110 cm reaches 50 cm at 8.4 to 9.2 years and a straight line at 7.2.
    #[test]
    fn a_planting_opens_about_when_its_handbook_says() {
        let planted_on = NaiveDate::from_ymd_opt(2027, 6, 1).unwrap();
        for (name, text) in profiles::ALL {
            let mut calendar = Calendar::parse(text).unwrap();
            // Here nothing is put off.
            calendar.opening.months.clear();
            calendar.opening.minimum_months = 0;
            let range = of_planting(planted_on, None, &calendar, &Season::default()).unwrap();
            let years = |day: NaiveDate| {
                f64::from(i32::try_from((day - planted_on).num_days()).unwrap()) / 365.25
            };
            let (first, likely, last) = (
                years(range.earliest),
                years(range.likely),
                years(range.latest),
            );
            if calendar.growth.is_opening {
                let told = calendar.growth.age_years;
                assert!((likely - told).abs() < 0.15, "{name}: {likely:.2}");
            } else {
                assert!(first < 7.2 && 9.2 < last, "{name}: {first:.2} {last:.2}");
            }
            assert!(likely - first > 0.6 && last - likely > 1.0, "{name}");
        }
    }
}
