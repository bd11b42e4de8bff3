//! What is in a fertiliser, and how much of another product brings the same nitrogen.
//!
//! Nutrients are told as bags print them, as oxides (`P2O5`, `K2O`, `MgO`). Deliberately absent: which
//! fertiliser to give. A handbook's table is followed as it stands; what another product would
//! match of it is a figure for the adviser.

/// What straight fertilisers hold in per cent, as most bags print it (common practice). The label
/// of a bag overrides it. Products that differ from maker to maker are not here.
const STRAIGHT: [(&str, Nutrients); 5] = [
    ("urea", Nutrients::of([46.0, 0.0, 0.0, 0.0])),
    ("tsp", Nutrients::of([0.0, 46.0, 0.0, 0.0])),
    ("dap", Nutrients::of([18.0, 46.0, 0.0, 0.0])),
    ("kcl", Nutrients::of([0.0, 0.0, 60.0, 0.0])),
    ("kieserite", Nutrients::of([0.0, 0.0, 0.0, 27.0])),
];

/// Nutrients, as oxides where bags print oxides: per cent of a product, or a weight of each.
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
    const fn of([n, p2o5, k2o, mgo]: [f64; 4]) -> Self {
        Self { n, p2o5, k2o, mgo }
    }

    /// What a product of a feeding table holds: by its grade, or as a straight fertiliser. None
    /// when that must be read on the bag.
    #[must_use]
    pub fn of_product(name: &str) -> Option<Self> {
        let straight = STRAIGHT.iter().find(|(known, _)| *known == name);
        straight
            .map(|(_, holds)| *holds)
            .or_else(|| Self::from_grade(name))
    }

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

    /// The nutrients in this weight of a product of this grade.
    #[must_use]
    pub fn in_weight(self, weight: f64) -> Self {
        let part = weight / 100.0;
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

/// Another product in the place of the table's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swap {
    /// Its weight.
    pub weight: f64,
    /// What it brings too much (or, negative, too little) beside the nitrogen.
    pub over: Nutrients,
}

/// How much of another product brings the nitrogen that is wanted. None when none is wanted, or
/// it has none.
#[must_use]
pub fn swap(wanted: Nutrients, offered: Nutrients) -> Option<Swap> {
    if !(wanted.n > 0.0 && offered.n > 0.0) {
        return None;
    }
    let weight = wanted.n * 100.0 / offered.n;
    let brings = offered.in_weight(weight);
    Some(Swap {
        weight,
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
    use super::{Nutrients, swap};

    fn grade(text: &str) -> Nutrients {
        Nutrients::from_grade(text).unwrap()
    }

    #[track_caller]
    fn near(found: f64, expected: f64, by: f64) {
        assert!((found - expected).abs() <= by, "{found}, not {expected}");
    }

    /// Department of Agriculture, Thailand, month 2 on clay loam: 33.25 kg of 20-8-20 for 475
    /// trees hold 6.65 kg of nitrogen.
    #[test]
    fn nutrients_of_a_round() {
        let round = grade("20-8-20").in_weight(33.25);
        near(round.n, 6.65, 1e-9);
        near(round.p2o5, 2.66, 1e-9);
    }

    /// Worked by hand: 200 kg of 10-10-4-1.5 hold 8 kg of potash and 3 kg of magnesia, and 10 kg of
    /// kieserite 2.7 kg of magnesia more.
    #[test]
    fn magnesia_and_potash_are_added_up() {
        let kieserite = Nutrients::of_product("kieserite").unwrap().in_weight(10.0);
        let round = grade("10-10-4-1.5").in_weight(200.0);
        near(round.and(kieserite).mgo, 5.7, 1e-9);
        let potash = Nutrients::of_product("kcl").unwrap().in_weight(5.0);
        near(round.and(potash).k2o, 11.0, 1e-9);
        near(round.and(round).p2o5, 2.0 * round.p2o5, 1e-9);
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
                .in_weight(dap)
                .and(grade("0-0-60").in_weight(mop))
                .and(grade("46-0-0").in_weight(urea));
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
            near(grade("46-0-0").in_weight(grams).n, n, 0.06);
        }
        let twelfth = Nutrients::of([120.0, 0.0, 0.0, 0.0]);
        near(swap(twelfth, grade("46-0-0")).unwrap().weight, 260.87, 0.01);
        near(grade("0-0-60").in_weight(15.0).k2o, 9.0, 1e-9);
        near(grade("0-0-60").in_weight(180.0).k2o, 108.0, 1e-9);
    }

    /// 100 kg of 10-10-4 in a table, and 15-15-15 in the shop: 66.7 kg match the nitrogen and the
    /// phosphate and bring 6 kg of potash too much.
    #[test]
    fn another_product_is_matched_by_its_nitrogen() {
        let found = swap(grade("10-10-4").in_weight(100.0), grade("15-15-15")).unwrap();
        near(found.weight, 66.67, 0.01);
        near(found.over.p2o5, 0.0, 1e-9);
        near(found.over.k2o, 6.0, 1e-9);
        let with_magnesia = grade("10-10-4-1.5").in_weight(100.0);
        let short = swap(with_magnesia, grade("46-0-0")).unwrap();
        near(short.over.mgo, -1.5, 1e-9);
        assert_eq!(swap(grade("10-10-4"), grade("0-0-60")), None);
        assert_eq!(swap(grade("0-0-60"), grade("10-10-4")), None);
    }

    /// A product is known by its grade or as a straight fertiliser; superphosphate is sold with
    /// 16 to 20 %, so only its bag can tell.
    #[test]
    fn what_a_product_holds() {
        assert_eq!(Nutrients::of_product("20-8-20"), Some(grade("20-8-20")));
        assert_eq!(Nutrients::of_product("urea"), Some(grade("46-0-0")));
        assert_eq!(Nutrients::of_product("superphosphate"), None);
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
            "40-30-20-20",
            "a-b-c",
            "-5-10-10",
            "15--15",
            "NaN-1-1",
            "1e9-1-1",
        ] {
            assert_eq!(Nutrients::from_grade(text), None, "{text}");
        }
    }
}
