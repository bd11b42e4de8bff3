//! What is in a fertiliser: grades, and the two ways in which nutrients are told.
//!
//! Bags print oxides (`P2O5`, `K2O`, `MgO`), papers often the element. Deliberately absent: which
//! fertiliser to give. A handbook's table is followed as it stands; what another product would
//! match of it is a figure for the adviser.

/// Atomic weights, abridged (IUPAC 2021).
const OXYGEN: f64 = 15.999;
const MAGNESIUM: f64 = 24.305;
const PHOSPHORUS: f64 = 30.974;
const POTASSIUM: f64 = 39.098;

/// Phosphorus in its oxide: 0.436.
pub const P_IN_P2O5: f64 = 2.0 * PHOSPHORUS / (2.0 * PHOSPHORUS + 5.0 * OXYGEN);
/// Potassium in its oxide: 0.830.
pub const K_IN_K2O: f64 = 2.0 * POTASSIUM / (2.0 * POTASSIUM + OXYGEN);
/// Magnesium in its oxide: 0.603.
pub const MG_IN_MGO: f64 = MAGNESIUM / (MAGNESIUM + OXYGEN);

/// Nutrients, as oxides where bags print oxides: per cent of a product, or kilograms.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Nutrients {
    /// Nitrogen, `N`.
    pub n: f64,
    /// Phosphate, `P2O5`.
    pub p2o5: f64,
    /// Potash, `K2O`.
    pub k2o: f64,
    /// Magnesia, `MgO`.
    pub mgo: f64,
}

impl Nutrients {
    /// Reads a grade: "15-15-15", "10:10:4:1.5", "20/8/20". None when it is none, or when more
    /// than the whole would be nutrients.
    #[must_use]
    pub fn from_grade(grade: &str) -> Option<Self> {
        let mut parts = grade.trim().split(['-', ':', '/']).map(str::trim);
        let mut next = || -> Option<f64> {
            let part: f64 = parts.next()?.parse().ok()?;
            (0.0..=100.0).contains(&part).then_some(part)
        };
        let (n, p2o5, k2o) = (next()?, next()?, next()?);
        let mgo = match parts.next() {
            Some(part) => part
                .parse()
                .ok()
                .filter(|mgo| (0.0..=100.0).contains(mgo))?,
            None => 0.0,
        };
        let grade = Self { n, p2o5, k2o, mgo };
        (parts.next().is_none() && grade.n + grade.p2o5 + grade.k2o + grade.mgo <= 100.0)
            .then_some(grade)
    }

    /// The nutrients in so many kilograms of a product of this grade.
    #[must_use]
    pub fn in_kilograms(self, kilograms: f64) -> Self {
        let part = kilograms / 100.0;
        Self {
            n: self.n * part,
            p2o5: self.p2o5 * part,
            k2o: self.k2o * part,
            mgo: self.mgo * part,
        }
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            n: self.n + other.n,
            p2o5: self.p2o5 + other.p2o5,
            k2o: self.k2o + other.k2o,
            mgo: self.mgo + other.mgo,
        }
    }
}

/// Kilograms of a product that hold so many of a nutrient of which it has this many per cent.
/// None when it has none.
#[must_use]
pub fn product_for(nutrient_kg: f64, pct: f64) -> Option<f64> {
    (pct > 0.0 && pct <= 100.0).then(|| nutrient_kg * 100.0 / pct)
}

/// What a product that matches the nitrogen of another brings too much (or, negative, too little)
/// of the rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swap {
    /// Kilograms of the product offered.
    pub kilograms: f64,
    /// Its nutrients less those of the one in the table, in kilograms.
    pub over: Nutrients,
}

/// Reckons another product in the place of the table's by their nitrogen. None when one of them
/// has no nitrogen.
#[must_use]
pub fn swap(table: Nutrients, kilograms: f64, offered: Nutrients) -> Option<Swap> {
    let wanted = table.in_kilograms(kilograms);
    let needed = (wanted.n > 0.0).then_some(wanted.n)?;
    let needed = product_for(needed, offered.n)?;
    let brings = offered.in_kilograms(needed);
    Some(Swap {
        kilograms: needed,
        over: Nutrients {
            n: 0.0,
            p2o5: brings.p2o5 - wanted.p2o5,
            k2o: brings.k2o - wanted.k2o,
            mgo: brings.mgo - wanted.mgo,
        },
    })
}

#[cfg(test)]
mod tests {
    use super::{K_IN_K2O, MG_IN_MGO, Nutrients, P_IN_P2O5, product_for, swap};

    fn grade(text: &str) -> Nutrients {
        Nutrients::from_grade(text).unwrap()
    }

    #[track_caller]
    fn near(found: f64, expected: f64, by: f64) {
        assert!((found - expected).abs() <= by, "{found}, not {expected}");
    }

    /// The factors that fertiliser tables print: `P = 0.436 P2O5`, `K = 0.830 K2O`,
    /// `Mg = 0.603 MgO` (common practice; here from atomic weights).
    #[test]
    fn elements_and_oxides() {
        near(P_IN_P2O5, 0.436, 0.000_5);
        near(K_IN_K2O, 0.830, 0.000_5);
        near(MG_IN_MGO, 0.603, 0.000_5);
        // Weerasuriya 1988, Sri Lanka: 33 g of K a plant in year 1, as K2O.
        near(33.0 / K_IN_K2O, 39.75, 0.01);
    }

    /// Department of Agriculture, Thailand, month 2 on clay loam: 33.25 kg of 20-8-20 for 475
    /// trees hold 6.65 kg of nitrogen.
    #[test]
    fn nutrients_of_a_round() {
        let round = grade("20-8-20").in_kilograms(33.25);
        near(round.n, 6.65, 1e-9);
        near(round.p2o5, 2.66, 1e-9);
    }

    /// Thai home blends of DAP (18-46-0), MOP (0-0-60) and urea (46-0-0), kilograms and what they
    /// come to, worked by hand: 20-8-20, 20-10-12 and 30-5-18.
    #[test]
    fn home_blends_come_to_what_they_are_called() {
        for ([dap, mop, urea], [n, p2o5, k2o]) in [
            ([18.0, 34.0, 38.0], [20.7, 8.3, 20.4]),
            ([22.0, 20.0, 36.0], [20.5, 10.1, 12.0]),
            ([10.0, 30.0, 60.0], [29.4, 4.6, 18.0]),
        ] {
            let blend = grade("18-46-0")
                .in_kilograms(dap)
                .and(grade("0-0-60").in_kilograms(mop))
                .and(grade("46-0-0").in_kilograms(urea));
            near(blend.n, n, 0.051);
            near(blend.p2o5, p2o5, 0.051);
            near(blend.k2o, k2o, 0.051);
        }
    }

    /// Indonesian estate table: urea of 46 % and potash of 60 %. Month 3 is 10 g of N and 9 g of
    /// K2O, month 45 100 g of N; the 250.86 g of month 51 do not fit its row (120 g of N would be
    /// 260.86), which looks like a misprint.
    #[test]
    fn an_estate_table_is_round_in_nutrients() {
        let urea = [21.73, 43.47, 65.32, 86.95, 108.69, 130.43, 173.91, 217.39];
        let nitrogen = [10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0];
        for (grams, n) in urea.into_iter().zip(nitrogen) {
            near(grade("46-0-0").in_kilograms(grams).n, n, 0.06);
        }
        near(product_for(120.0, 46.0).unwrap(), 260.87, 0.01);
        near(grade("0-0-60").in_kilograms(15.0).k2o, 9.0, 1e-9);
        near(grade("0-0-60").in_kilograms(180.0).k2o, 108.0, 1e-9);
    }

    /// 100 kg of 10-10-4 in a table, and 15-15-15 in the shop: 66.7 kg match the nitrogen and the
    /// phosphate and bring 6 kg of potash too much.
    #[test]
    fn another_product_is_matched_by_its_nitrogen() {
        let found = swap(grade("10-10-4"), 100.0, grade("15-15-15")).unwrap();
        near(found.kilograms, 66.67, 0.01);
        near(found.over.p2o5, 0.0, 1e-9);
        near(found.over.k2o, 6.0, 1e-9);
        let short = swap(grade("10-10-4-1.5"), 100.0, grade("46-0-0")).unwrap();
        near(short.over.mgo, -1.5, 1e-9);
        assert_eq!(swap(grade("10-10-4"), 100.0, grade("0-0-60")), None);
        assert_eq!(swap(grade("0-0-60"), 100.0, grade("10-10-4")), None);
    }

    #[test]
    fn what_is_no_grade() {
        assert_eq!(
            Nutrients::from_grade("10.7:16.6:9.5:2.4"),
            Some(Nutrients {
                n: 10.7,
                p2o5: 16.6,
                k2o: 9.5,
                mgo: 2.4
            })
        );
        for text in [
            "",
            "15",
            "15-15",
            "15-15-15-2-1",
            "60-30-20",
            "a-b-c",
            "-5-10-10",
            "15--15",
            "NaN-1-1",
            "1e9-1-1",
        ] {
            assert_eq!(Nutrients::from_grade(text), None, "{text}");
        }
        assert_eq!(product_for(10.0, 0.0), None);
        assert_eq!(product_for(10.0, f64::NAN), None);
    }
}
