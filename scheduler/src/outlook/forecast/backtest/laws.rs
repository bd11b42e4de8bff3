//! The laws by which the made-up stands grow. Some are shapes of the bank, some are not.
//!
//! Each is written down anew and laid through a girth at an age by halving. That girth is the handbook's,
//! which the forecast expects too; what differs from it is the pace of the place and of the stand.

/// A law of growth that passes through a girth at an age.
#[derive(Clone, Copy)]
pub(super) struct Law {
    form: fn(f64, f64) -> f64,
    rate: f64,
    start_years: f64,
}

/// A form: the girth after so many years at this rate.
pub(super) type Form = fn(f64, f64) -> f64;

/// Shapes that the bank holds, under the names in the table.
pub(super) const INSIDE: [(&str, Form); 6] = [
    ("slowing to 80 cm", |rate, years| slowing(80.0, rate, years)),
    ("slowing to 100 cm", |rate, years| {
        slowing(100.0, rate, years)
    }),
    ("slowing to 150 cm", |rate, years| {
        slowing(150.0, rate, years)
    }),
    ("straight", |rate, years| rate * years),
    ("straight to 45 cm", |rate, years| {
        let straight = rate * years;
        if straight < 45.0 {
            straight
        } else {
            45.0 + (straight - 45.0) * 0.5
        }
    }),
    ("Gompertz", |rate, years| {
        95.0 * libm::exp(-4.55 * libm::exp(-rate * years))
    }),
];

/// Shapes that it does not hold.
pub(super) const OUTSIDE: [(&str, Form); 5] = [
    ("logistic", |rate, years| {
        90.0 / (1.0 + 30.0 * libm::exp(-rate * years)) - 2.9
    }),
    ("Richards", |rate, years| {
        100.0 * libm::pow(1.0 - libm::exp(-rate * years), 1.5)
    }),
    ("hyperbola", |rate, years| {
        160.0 * rate * years / (1.0 + rate * years)
    }),
    ("power 0.75", |rate, years| libm::pow(rate * years, 0.75)),
    ("crowns close", |rate, years| {
        // From the fifth year on a third less each year than the year before, down to a floor.
        let young = years.min(4.5);
        let old = (years - 4.5).max(0.0);
        rate * (young + 0.35 * old + 0.65 * (1.0 - libm::exp(-old * 0.4)) / 0.4)
    }),
];

fn slowing(limit_cm: f64, rate: f64, years: f64) -> f64 {
    limit_cm * (1.0 - libm::exp(-rate * years))
}

impl Law {
    /// The law of this form through a girth at an age.
    pub(super) fn through(form: Form, girth_cm: f64, age_years: f64, start_years: f64) -> Self {
        let years = age_years - start_years;
        let (mut low, mut high) = (1e-6, 400.0);
        for _ in 0..200 {
            let middle = libm::sqrt(low * high);
            if form(middle, years) < girth_cm {
                low = middle;
            } else {
                high = middle;
            }
        }
        Self {
            form,
            rate: high,
            start_years,
        }
    }

    pub(super) fn girth_cm(self, age_years: f64) -> f64 {
        (self.form)(self.rate, (age_years - self.start_years).max(0.0)).max(0.5)
    }
}
