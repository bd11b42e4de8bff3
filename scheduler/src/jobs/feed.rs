//! How much fertiliser one round takes.

use alloc::{string::String, vec::Vec};

use crate::{
    handbook::calendar::{Dose, FeedRound, Feeding},
    sums::rounding,
};

const GRAMS_A_KILOGRAM: f64 = 1_000.0;
/// Weight of a common bag, in kilograms (common practice).
pub const BAG_KG: f64 = 50.0;

/// The round that trees of this age get: the last whose month has come.
#[must_use]
pub fn round_at(feeding: &Feeding, month: u32) -> Option<&FeedRound> {
    feeding
        .rounds
        .iter()
        .take_while(|round| round.month <= month)
        .last()
}

/// Grams of all products together for one tree.
#[must_use]
pub fn grams_per_tree(doses: &[Dose]) -> f64 {
    doses.iter().map(|dose| dose.grams).sum()
}

/// Kilograms of one product, or of all, for so many live trees. Always for live trees, never for
/// an area.
#[must_use]
pub fn kilograms(live_trees: u32, grams_per_tree: f64) -> f64 {
    f64::from(live_trees) * grams_per_tree / GRAMS_A_KILOGRAM
}

/// What trees of one age get in a round.
#[derive(Clone, Debug, PartialEq)]
pub struct Ration {
    /// How many trees.
    pub trees: u32,
    /// Each product, in the order of the table.
    pub products: Vec<Portion>,
}

/// One product of a ration.
#[derive(Clone, Debug, PartialEq)]
pub struct Portion {
    /// The product, as the table has it.
    pub product: String,
    /// Grams for each tree.
    pub grams_per_tree: f64,
    /// Kilograms for all trees of the ration.
    pub kilograms: f64,
}

impl Ration {
    fn new(trees: u32, doses: &[Dose]) -> Self {
        let portion = |dose: &Dose| Portion {
            product: dose.product.clone(),
            grams_per_tree: dose.grams,
            kilograms: kilograms(trees, dose.grams),
        };
        Self {
            trees,
            products: doses.iter().map(portion).collect(),
        }
    }

    /// Grams of all products together for one tree.
    #[must_use]
    pub fn grams_per_tree(&self) -> f64 {
        self.products.iter().map(|one| one.grams_per_tree).sum()
    }

    /// Kilograms of all products together.
    #[must_use]
    pub fn kilograms(&self) -> f64 {
        kilograms(self.trees, self.grams_per_tree())
    }

    fn is_of(&self, doses: &[Dose]) -> bool {
        let same = |(portion, dose): (&Portion, &Dose)| {
            portion.product == dose.product && portion.grams_per_tree == dose.grams
        };
        self.products.len() == doses.len() && self.products.iter().zip(doses).all(same)
    }
}

/// Adds trees that get these doses: to those that get the same, or as a ration of their own.
pub(crate) fn add_ration(rations: &mut Vec<Ration>, trees: u32, doses: &[Dose]) {
    match rations.iter_mut().find(|ration| ration.is_of(doses)) {
        Some(ration) => *ration = Ration::new(ration.trees.saturating_add(trees), doses),
        None => rations.push(Ration::new(trees, doses)),
    }
}

/// Bags to buy for several farmers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bags {
    /// When each buys alone: each rounds up.
    pub alone: u32,
    /// When they buy together: rounded up once.
    pub pooled: u32,
}

/// Whole bags for the kilograms that each farmer needs. None when a need is no weight, or more
/// bags than there are.
#[must_use]
pub fn bags(needs_kg: impl IntoIterator<Item = f64>, bag_kg: f64) -> Option<Bags> {
    let (mut alone, mut all_kg) = (0_u32, 0.0);
    for need_kg in needs_kg {
        if !(need_kg >= 0.0 && bag_kg > 0.0) {
            return None;
        }
        alone = alone.checked_add(rounding::ceil(need_kg / bag_kg)?)?;
        all_kg += need_kg;
    }
    Some(Bags {
        alone,
        pooled: rounding::ceil(all_kg / bag_kg)?,
    })
}

#[cfg(test)]
mod tests {
    use std::{format, string::ToString, vec, vec::Vec};

    use super::{BAG_KG, Bags, add_ration, bags, grams_per_tree, kilograms, round_at};
    use crate::handbook::calendar::{Calendar, Dose, profiles};

    fn indonesia(rounds_a_year: &str) -> Calendar {
        let text = profiles::INDONESIA.replace(
            "rounds_a_year = { value = 2",
            &format!("rounds_a_year = {{ value = {rounds_a_year}"),
        );
        Calendar::parse(&text).unwrap()
    }

    fn grams_of(calendar: &Calendar, month: u32, product: &str) -> f64 {
        let round = round_at(&calendar.feeding, month).unwrap();
        let dose = round.doses.iter().find(|dose| dose.product == product);
        dose.unwrap().grams
    }

    #[track_caller]
    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() <= 0.051, "{found}, not {expected}");
    }

    /// A worked example: 7 farmers with 3,010 living trees, 150 g each, need 452 kg; that is 12
    /// bags when each buys alone, 10 together.
    #[test]
    fn bags_alone_and_together() {
        let trees = [520, 400, 430, 330, 660, 340, 330];
        assert_eq!(trees.iter().sum::<u32>(), 3_010);
        near(kilograms(3_010, 150.0).round(), 452.0);
        let needs = trees.map(|trees| kilograms(trees, 150.0));
        let expected = Bags {
            alone: 12,
            pooled: 10,
        };
        assert_eq!(bags(needs, BAG_KG), Some(expected));
        // 520 trees alone: 78 kg, a full bag and more than half of another.
        near(kilograms(520, 150.0), 78.0);
        let none = Bags {
            alone: 0,
            pooled: 0,
        };
        assert_eq!(bags([], BAG_KG), Some(none));
        assert_eq!(bags([f64::NAN], BAG_KG), None);
        assert_eq!(bags([-5.0], BAG_KG), None);
        assert_eq!(bags([1e300], BAG_KG), None);
        assert_eq!(bags([10.0], 0.0), None);
    }

    /// Trees of two seasons that get the same are one ration; another product or amount is another.
    #[test]
    fn trees_that_get_the_same_are_one_ration() {
        let dose = |product: &str, grams| Dose {
            product: product.to_string(),
            grams,
        };
        let (urea, less) = ([dose("urea", 250.0)], [dose("urea", 125.0)]);
        let (potash, both) = (
            [dose("kcl", 250.0)],
            [dose("urea", 250.0), dose("kcl", 50.0)],
        );
        let mut rations = vec![];
        for (trees, doses) in [
            (400, &urea[..]),
            (60, &less),
            (20, &urea),
            (7, &potash),
            (5, &both),
            (3, &both),
        ] {
            add_ration(&mut rations, trees, doses);
        }
        let trees: Vec<u32> = rations.iter().map(|ration| ration.trees).collect();
        assert_eq!(trees, [420, 60, 7, 8]);
        near(rations[0].kilograms(), 105.0);
        near(rations[3].kilograms(), 2.4);
    }

    /// Compost and rock phosphate for 380 pits as the Rubber Board of India and Kerala
    /// Agricultural University have them, 12 kg and 175 g each: 4,560 kg and 66.5 kg.
    #[test]
    fn what_goes_into_the_pits() {
        near(kilograms(380, 12_000.0), 4_560.0);
        near(kilograms(380, 175.0), 66.5);
    }

    /// Doses of the Indonesian Rubber Research Centre, worked by hand: 476 trees in year 1 take
    /// 119.0 kg of urea, 59.5 kg in each of two rounds, 19.8 kg in each of six.
    #[test]
    fn urea_of_the_first_year() {
        near(kilograms(476, grams_of(&indonesia("1"), 6, "urea")), 119.0);
        near(kilograms(476, grams_of(&indonesia("2"), 3, "urea")), 59.5);
        near(kilograms(476, grams_of(&indonesia("6"), 1, "urea")), 19.8);
    }

    /// 555 trees in year 4 take 555 x 250 g of potash.
    #[test]
    fn potash_of_the_fourth_year() {
        near(kilograms(555, grams_of(&indonesia("1"), 42, "kcl")), 138.8);
    }

    /// Two rounds of month 3 for 476 trees: half of (250 + 120 + 100 + 50) g each.
    #[test]
    fn all_products_of_a_round_together() {
        let calendar = indonesia("2");
        let round = round_at(&calendar.feeding, 8).unwrap();
        near(grams_per_tree(&round.doses), 260.0);
        assert!(round_at(&calendar.feeding, 2).is_none());
    }

    /// Department of Agriculture, Thailand, 20-8-20 on clay loam: grams a tree for each round, by
    /// month; 475 trees in month 2 take 33.25 kg.
    #[test]
    fn a_table_by_month() {
        let thailand = Calendar::parse(profiles::THAILAND).unwrap();
        let printed = [
            (2, 70.0),
            (5, 100.0),
            (11, 130.0),
            (14, 150.0),
            (28, 230.0),
            (40, 240.0),
            (52, 260.0),
        ];
        for (month, grams) in printed {
            assert_eq!(grams_of(&thailand, month, "20-8-20"), grams);
        }
        assert_eq!(grams_of(&thailand, 4, "20-8-20"), 70.0);
        near(kilograms(475, grams_of(&thailand, 2, "20-8-20")), 33.25);
    }

    /// The same schedule on sandy loam, as printed to month 52.
    #[test]
    fn sandy_soil_has_a_table_of_its_own() {
        let sandy = Calendar::parse(profiles::THAILAND_SANDY).unwrap();
        let printed = [
            (2, 100.0),
            (5, 140.0),
            (11, 170.0),
            (14, 200.0),
            (16, 210.0),
            (23, 210.0),
            (28, 320.0),
            (36, 320.0),
            (40, 330.0),
            (47, 330.0),
            (52, 360.0),
        ];
        for (month, grams) in printed {
            assert_eq!(grams_of(&sandy, month, "20-8-20"), grams, "month {month}");
        }
        near(kilograms(475, grams_of(&sandy, 2, "20-8-20")), 47.5);
    }

    /// Vietnamese page on fertiliser: kilograms a hectare and year for 476 trees, in three rounds of the
    /// first year, at one leaf whorl and then monthly, and in two of each later one.
    #[test]
    fn a_table_by_hectare() {
        let vietnam = Calendar::parse(profiles::VIETNAM).unwrap();
        let printed = [
            (1, [35.0, 100.0, 15.0], 3),
            (2, [100.0, 290.0, 25.0], 2),
            (3, [140.0, 210.0, 40.0], 2),
            (6, [140.0, 210.0, 40.0], 2),
        ];
        for (year, a_hectare, rounds) in printed {
            let of_year = vietnam
                .feeding
                .rounds
                .iter()
                .filter(|round| round.month / 12 + 1 == year);
            assert_eq!(of_year.clone().count(), rounds, "year {year}");
            for (product, kg) in ["urea", "superphosphate", "kcl"].iter().zip(a_hectare) {
                let doses = of_year.clone().flat_map(|round| &round.doses);
                let grams: f64 = doses
                    .filter(|dose| dose.product == *product)
                    .map(|dose| dose.grams)
                    .sum();
                near(kilograms(476, grams), kg);
            }
        }
    }

    /// An Indonesian estate text, in grams a tree for each round by month. Its urea, at 46 % nitrogen,
    /// is 10, 20, 30 ... g of nitrogen; its potash, at 60 %, is 9, 18, 27 ... g of K2O.
    #[test]
    fn the_table_of_estates() {
        let estate = Calendar::parse(profiles::INDONESIA_ESTATE).unwrap();
        let nutrients = [
            (3, 10.0, 9.0),
            (9, 20.0, 18.0),
            (15, 30.0, 27.0),
            (21, 40.0, 36.0),
            (27, 50.0, 45.0),
            (33, 60.0, 54.0),
            (39, 80.0, 72.0),
            (45, 100.0, 90.0),
        ];
        for (month, nitrogen, potash) in nutrients {
            near(grams_of(&estate, month, "urea") * 0.46, nitrogen);
            near(grams_of(&estate, month, "kcl") * 0.60, potash);
        }
        near(grams_of(&estate, 51, "kcl") * 0.60, 108.0);
    }

    /// The same guide prints 12-12-6 for the same months.
    #[test]
    fn the_other_mixture_of_india() {
        let india = Calendar::parse(profiles::INDIA_12_12_6).unwrap();
        let printed = [190.0, 380.0, 380.0, 480.0, 480.0, 380.0, 380.0];
        for (month, grams) in (3..).step_by(6).zip(printed) {
            assert_eq!(grams_of(&india, month, "12-12-6"), grams, "{month}");
        }
    }

    /// Tamil Nadu guide, read in two reposted copies that print the same: 10-10-4-1.5 by month after planting, and 400 kg
    /// a hectare and year from year 5 to tapping, at the 445 trees printed for the spacing.
    #[test]
    fn the_table_of_india() {
        let india = Calendar::parse(profiles::INDIA).unwrap();
        let printed = [
            (3, 225.0),
            (9, 445.0),
            (15, 450.0),
            (21, 450.0),
            (27, 550.0),
            (33, 550.0),
            (39, 450.0),
        ];
        for (month, grams) in printed {
            assert_eq!(grams_of(&india, month, "10-10-4-1.5"), grams, "{month}");
        }
        let rounds = &india.feeding.rounds;
        for year in 5..=7 {
            let months = (year - 1) * 12..year * 12;
            let grams: f64 = rounds
                .iter()
                .filter(|round| months.contains(&round.month))
                .map(|round| grams_per_tree(&round.doses))
                .sum();
            assert!(
                (kilograms(445, grams) - 400.0).abs() < 1.0,
                "{year}: {grams}"
            );
        }
    }
}
