//! From planned facts to words: which word, in which order, with which number.

use chrono::{Datelike, NaiveDate, TimeDelta};
use serde_json::Value;

use crate::{
    chance::Chance,
    draw::{between, happens, weighted},
    farm::{Farm, Naming},
    order::{self, Pieces},
    plan::{Day, Extra, Fact},
    rates::Level,
    slips::{self, Seen},
    speech::{Speech, Words},
    token::{Token, What, words},
};

/// The day on which every text of the measure is sent, a Wednesday.
pub(crate) fn sent_on() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 3, 18).expect("it exists")
}

/// Reports in words.
#[derive(Default)]
pub(crate) struct Told {
    pub(crate) tokens: Vec<Token>,
    pub(crate) events: Vec<Value>,
    /// Numbers that were typed wrongly.
    pub(crate) slips: Vec<Seen>,
    /// A number is said loosely, or holds a letter: must be asked about.
    pub(crate) doubtful: bool,
    /// No block is named, though there are several.
    pub(crate) blockless: bool,
    /// An English word in another language.
    pub(crate) mixed: bool,
}

/// What tells: the speech, the farm and the level of noise.
pub(crate) struct Teller<'a> {
    pub(crate) chance: &'a mut Chance,
    pub(crate) speech: &'a Speech,
    pub(crate) farm: &'a Farm,
    pub(crate) level: Level,
}

impl Teller<'_> {
    /// Facts in the words of the language. The day stands in the first or in the last report.
    pub(crate) fn tell(&mut self, facts: &[Fact], day: Option<Day>) -> Told {
        let mut told = Told::default();
        let several = facts.len() > 1;
        let day_in = if happens(self.chance, 6_000) {
            0
        } else {
            facts.len() - 1
        };
        let silent = happens(
            self.chance,
            if self.farm.plots.len() > 1 {
                800
            } else {
                5_000
            },
        );
        let one_place = facts.windows(2).all(|pair| match pair {
            [a, b] => a.plot.name == b.plot.name,
            _ => true,
        });
        let nameless = silent && one_place;
        told.blockless = nameless && self.farm.plots.len() > 1;
        let mut before: Option<&str> = None;
        for (index, fact) in facts.iter().enumerate() {
            let again = before == Some(fact.plot.name.as_str());
            let names = !nameless && (!again || happens(self.chance, 4_000));
            let day_here = day.filter(|_| index == day_in);
            let (fact_as_typed, mut pieces) = self.pieces(fact, several, &mut told);
            if names {
                pieces.block = self.block(&fact.plot.name);
            }
            if let Some(day) = day_here {
                pieces.day = self.day(day);
            }
            if index > 0 {
                let joiner = self.joiner();
                told.tokens.extend(joiner);
            }
            let tokens = order::arranged(self.chance, &pieces);
            told.tokens.extend(tokens);
            told.events.push(fact_as_typed.event(day));
            before = Some(fact.plot.name.as_str());
        }
        told
    }

    /// One fact with its block and nothing else, in every order.
    pub(crate) fn in_every_order(&mut self, fact: &Fact) -> Vec<Vec<Token>> {
        let mut told = Told::default();
        let (_, mut pieces) = self.pieces(fact, false, &mut told);
        pieces.block = words(self.speech.block.exact(self.chance));
        pieces.block.push(Token::new(&fact.plot.name, What::Name));
        order::in_every_order(&pieces)
    }

    fn pieces(&mut self, fact: &Fact, several: bool, told: &mut Told) -> (Fact, Pieces) {
        let mut fact = fact.clone();
        let mut pieces = Pieces {
            kind: self.kind(&fact, told),
            ..Pieces::default()
        };
        if let Some(count) = fact.count {
            pieces.number = self.count(&mut fact, count, several, told);
        }
        match fact.extra.clone() {
            Extra::None | Extra::Damage(_) | Extra::Ailment(_) => {}
            Extra::Cause(cause) => {
                let word = self
                    .speech
                    .cause
                    .get(&cause)
                    .expect("it was drawn")
                    .draw(self.chance);
                pieces.cause = piece(words(word));
            }
            Extra::Feed {
                product,
                formula,
                amount,
            } => {
                pieces.number = self.feed(&product, formula, amount);
            }
            Extra::Girths(tenths) => pieces.number = self.girths(&mut fact, tenths, told),
            Extra::Area(tenths, unit) => {
                let mut tokens = vec![Token::new(self.decimal(tenths), What::Number)];
                tokens.extend(words(self.unit(&unit)));
                pieces.number = piece(tokens);
            }
        }
        (fact, pieces)
    }

    fn kind(&mut self, fact: &Fact, told: &mut Told) -> Vec<Token> {
        let bare = fact.kind == "fertilised" && fact.extra == Extra::None;
        let listed: &Words = match &fact.extra {
            Extra::Damage(cause) => self.speech.damage.get(cause),
            Extra::Ailment(what) => self.speech.disease.get(what),
            Extra::None
            | Extra::Cause(_)
            | Extra::Feed { .. }
            | Extra::Girths(_)
            | Extra::Area(..) => self.speech.work.get(fact.kind),
        }
        .expect("only what can be said is planned");
        if let Some(loan) = self.speech.loans.get(fact.kind)
            && happens(self.chance, 1_500)
        {
            told.mixed = true;
            return piece(words(loan.draw(self.chance)));
        }
        let word = if bare {
            listed.exact(self.chance)
        } else {
            listed.draw(self.chance)
        };
        piece(words(word))
    }

    fn count(&mut self, fact: &mut Fact, count: u32, several: bool, told: &mut Told) -> Vec<Token> {
        let mut tokens = self.number(fact, count, several, told);
        if happens(self.chance, 4_500) && !matches!(fact.kind, "holes_dug") {
            tokens.extend(words(self.unit("tree")));
        }
        piece(tokens)
    }

    fn number(
        &mut self,
        fact: &mut Fact,
        count: u32,
        several: bool,
        told: &mut Told,
    ) -> Vec<Token> {
        let rates = self.level.rates();
        if happens(self.chance, rates.number_words) {
            if self.level == Level::Heavy
                && happens(self.chance, 3_333)
                && let Some(loose) = self.loose(count)
            {
                told.doubtful = true;
                return words(&loose);
            }
            if let Some(spoken) = self.speech.numbers.get(&count) {
                return words(spoken);
            }
        }
        if happens(self.chance, rates.number_slip)
            && let Some(slip) = slips::slip(self.chance, count)
        {
            fact.count = Some(slip.value);
            let seen = if slip.letter {
                Seen::Yes
            } else {
                slips::seen(fact, slip.value, several)
            };
            told.slips.push(seen);
            return vec![Token::new(slip.text, What::Number)];
        }
        vec![Token::new(count.to_string(), What::Number)]
    }

    /// "one twenty", "a dozen".
    fn loose(&self, count: u32) -> Option<String> {
        let number = count.to_string();
        if let Some((_, words)) = self
            .speech
            .number
            .loose
            .pairs()
            .find(|(of, _)| *of == number)
        {
            return Some(words.to_owned());
        }
        let (hundreds, rest) = (count / 100, count % 100);
        let fits = self.speech.number.loose_hundreds && (1..=9).contains(&hundreds) && rest >= 20;
        let spoken = |number: u32| self.speech.numbers.get(&number);
        fits.then(|| Some(format!("{} {}", spoken(hundreds)?, spoken(rest)?)))
            .flatten()
    }

    fn feed(
        &mut self,
        product: &str,
        formula: Option<&str>,
        amount: Option<(u32, &str)>,
    ) -> Vec<Token> {
        let listed = self.speech.product.get(product).expect("it was drawn");
        let mut what = words(listed.draw(self.chance));
        what.extend(formula.map(|formula| Token::new(formula, What::Code)));
        let Some((amount, unit)) = amount else {
            return piece(what);
        };
        let mut how_much = vec![Token::new(amount.to_string(), What::Number)];
        how_much.extend(words(self.unit(unit)));
        let amount_first = formula.is_some() || happens(self.chance, 4_000);
        let (first, second) = if amount_first {
            (how_much, what)
        } else {
            (what, how_much)
        };
        piece(first.into_iter().chain(second).collect())
    }

    fn girths(&mut self, fact: &mut Fact, mut tenths: Vec<u32>, told: &mut Told) -> Vec<Token> {
        let rate = self.level.rates().number_slip;
        let mut shown: Vec<String> = tenths.iter().map(|value| self.decimal(*value)).collect();
        let place = self.chance.place(tenths.len());
        let slips = (0..tenths.len()).any(|_| happens(self.chance, rate));
        let whole = tenths.iter().all(|value| value % 10 == 0);
        if slips
            && whole
            && let Some(value) = tenths.get_mut(place)
            && let Some(slip) = slips::slip(self.chance, *value / 10)
        {
            let typed = slip.value * 10;
            let before = tenths.clone();
            if let (Some(value), Some(text)) = (tenths.get_mut(place), shown.get_mut(place)) {
                *value = typed;
                *text = slip.text;
            }
            let seen = slips::stands_out(&before, typed);
            told.slips.push(if slip.letter { Seen::Yes } else { seen });
            fact.extra = Extra::Girths(tenths);
        }
        // A comma both before decimals and between values is two things at once; few do that.
        let commas = (whole || self.speech.decimal == ".") && happens(self.chance, 5_000);
        let mut tokens = Vec::new();
        for (index, text) in shown.into_iter().enumerate() {
            if index > 0 && commas {
                tokens.push(Token::new(",", What::Mark));
            }
            tokens.push(Token::new(text, What::Listed));
        }
        if happens(self.chance, 3_000) {
            tokens.extend(words(self.unit("cm")));
        }
        piece(tokens)
    }

    /// Tenths as a number, with the mark of the language where people keep to it.
    fn decimal(&mut self, tenths: u32) -> String {
        if tenths.is_multiple_of(10) {
            return (tenths / 10).to_string();
        }
        let own = happens(self.chance, self.level.rates().own_decimal);
        let mark = if own {
            self.speech.decimal.as_str()
        } else {
            "."
        };
        format!("{}{mark}{}", tenths / 10, tenths % 10)
    }

    fn unit(&mut self, unit: &str) -> &str {
        self.speech
            .unit
            .get(unit)
            .expect("units are listed")
            .draw(self.chance)
    }

    /// A block as it is named: "block B", "B".
    pub(crate) fn block(&mut self, name: &str) -> Vec<Token> {
        let mut tokens = Vec::new();
        if !self.speech.manner.at.0.is_empty() && happens(self.chance, 1_500) {
            tokens.extend(words(self.speech.manner.at.draw(self.chance)));
        }
        if self.farm.naming == Naming::Numbers || happens(self.chance, 5_000) {
            tokens.extend(words(self.speech.block.draw(self.chance)));
        }
        tokens.push(Token::new(name, What::Name));
        piece(tokens)
    }

    fn day(&mut self, day: Day) -> Vec<Token> {
        let dates = &self.speech.date;
        let back = |days: u32| sent_on() - TimeDelta::days(i64::from(days));
        let tokens = match day {
            Day::Today => words(dates.today.draw(self.chance)),
            Day::Yesterday => words(dates.yesterday.draw(self.chance)),
            Day::Ago(days) => words(
                &dates
                    .ago
                    .draw(self.chance)
                    .replace("{n}", &days.to_string()),
            ),
            Day::Weekday(days) => {
                let place = back(days).weekday().num_days_from_monday() as usize;
                let name = dates.weekdays.0.get(place).expect("seven days are listed");
                words(&dates.on.draw(self.chance).replace("{d}", name))
            }
            Day::Calendar(days) => {
                let date = back(days);
                let (d, m, y) = (date.day(), date.month(), date.year());
                let ways = [
                    (format!("{d}/{m}"), 60),
                    (format!("{d:02}/{m:02}"), 15),
                    (format!("{d}/{m}/{}", y % 100), 10),
                    (format!("{d}-{m}-{y}"), 5),
                    (format!("{d}/{m}/{y}"), 10),
                ];
                vec![Token::new(weighted(self.chance, &ways).clone(), What::Code)]
            }
        };
        piece(tokens)
    }

    fn joiner(&mut self) -> Vec<Token> {
        let mark = |mark: &str| vec![Token::new(mark, What::Mark)];
        match between(self.chance, 1, 20) {
            1..=9 => mark(","),
            10..=16 => words(self.speech.manner.and.draw(self.chance)),
            _ => mark("."),
        }
    }
}

/// Marks where a piece begins.
fn piece(mut tokens: Vec<Token>) -> Vec<Token> {
    if let Some(first) = tokens.first_mut() {
        first.opens = true;
    }
    tokens
}
