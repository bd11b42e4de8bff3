//! What a text is going to say, before any word is chosen: facts that can be true on a farm.

use serde_json::{Map, Value, json};

use crate::{
    chance::Chance,
    draw::{between, happens, pick, weighted},
    farm::{Plot, Stage},
    speech::Speech,
};

/// One fact.
#[derive(Clone, Debug)]
pub(crate) struct Fact {
    pub(crate) kind: &'static str,
    pub(crate) plot: Plot,
    pub(crate) count: Option<u32>,
    pub(crate) extra: Extra,
}

/// What a fact says beside kind, block, count and day.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Extra {
    None,
    /// The cause of deaths.
    Cause(String),
    /// What did the damage; said by the words of work themselves.
    Damage(String),
    Ailment(String),
    Feed {
        product: String,
        formula: Option<&'static str>,
        amount: Option<(u32, &'static str)>,
    },
    /// Tenths of centimetres.
    Girths(Vec<u32>),
    /// Tenths of a unit of land.
    Area(u32, String),
}

/// When, as it will be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Day {
    Today,
    Yesterday,
    Ago(u32),
    Weekday(u32),
    /// Days before today, written as day and month.
    Calendar(u32),
}

impl Day {
    /// Thirty-five texts in a hundred name a day.
    pub(crate) fn draw(chance: &mut Chance) -> Option<Self> {
        if !happens(chance, 3_500) {
            return None;
        }
        let ago = between(chance, 2, 9);
        let back = between(chance, 1, 6);
        let far = between(chance, 2, 40);
        let ways = [
            (Self::Today, 45),
            (Self::Yesterday, 25),
            (Self::Ago(ago), 12),
            (Self::Weekday(back), 10),
            (Self::Calendar(far), 8),
        ];
        Some(*weighted(chance, &ways))
    }

    /// Days from the day of sending.
    pub(crate) fn days_away(self) -> i64 {
        match self {
            Self::Today => 0,
            Self::Yesterday => -1,
            Self::Ago(days) | Self::Weekday(days) | Self::Calendar(days) => -i64::from(days),
        }
    }
}

/// What happens at each age, with how often.
const fn kinds(stage: Stage) -> &'static [(&'static str, u64)] {
    match stage {
        Stage::Bare => &[
            ("planted", 40),
            ("holes_dug", 25),
            ("cleared", 20),
            ("lined", 15),
        ],
        Stage::First => &[
            ("dead", 30),
            ("replaced", 15),
            ("weeded", 25),
            ("fertilised", 15),
            ("pruned", 10),
            ("sprayed", 5),
        ],
        Stage::Young => &[
            ("branch_induction", 10),
            ("branched", 10),
            ("not_branched", 5),
            ("disease", 15),
            ("damage", 15),
            ("weeded", 15),
            ("fertilised", 12),
            ("pruned", 10),
            ("dead", 8),
        ],
        Stage::Growing => &[
            ("girth", 40),
            ("weeded", 10),
            ("fertilised", 15),
            ("disease", 12),
            ("damage", 12),
            ("dead", 6),
            ("sprayed", 5),
        ],
        Stage::Tapping => &[
            ("tapping_opened", 50),
            ("girth", 15),
            ("disease", 12),
            ("damage", 10),
            ("weeded", 8),
            ("dead", 5),
        ],
    }
}

/// A fact that can be true of this block; none of the kinds in `but`.
pub(crate) fn fact(
    chance: &mut Chance,
    speech: &Speech,
    plot: &Plot,
    but: &[&str],
) -> Option<Fact> {
    let mut kind = *weighted(chance, kinds(plot.stage));
    if kind == "replaced" && plot.gaps() == 0 {
        kind = "weeded";
    }
    if but.contains(&kind) || !says(speech, kind) {
        return None;
    }
    Some(Fact {
        kind,
        plot: plot.clone(),
        count: count(chance, kind, plot),
        extra: extra(chance, speech, kind, plot),
    })
}

fn says(speech: &Speech, kind: &str) -> bool {
    match kind {
        "damage" => !speech.damage.is_empty(),
        "disease" => !speech.disease.is_empty(),
        kind => speech.work.contains_key(kind),
    }
}

fn count(chance: &mut Chance, kind: &str, plot: &Plot) -> Option<u32> {
    let alive = plot.alive();
    let share = |chance: &mut Chance, low: u32, high: u32| {
        let percent = between(chance, low, high);
        Some(rounded(chance, (alive * percent / 100).max(1)))
    };
    match kind {
        "planted" | "holes_dug" => {
            let percent = between(chance, 50, 105);
            Some(rounded(chance, (plot.holds * percent / 100).max(2)))
        }
        "dead" => share(chance, 0, 6),
        "replaced" => {
            let gaps = plot.gaps();
            let drawn = between(chance, 1, gaps);
            let told = rounded(chance, drawn);
            Some(told.min(gaps))
        }
        "disease" | "damage" => share(chance, 0, 10),
        "branched" | "tapping_opened" => share(chance, 30, 90),
        "not_branched" => share(chance, 1, 30),
        "branch_induction" => share(chance, 20, 100),
        "pruned" if happens(chance, 4_000) => share(chance, 20, 100),
        _ => None,
    }
}

/// Thirty-five in a hundred counts of twenty and more are round.
fn rounded(chance: &mut Chance, count: u32) -> u32 {
    if count < 20 || !happens(chance, 3_500) {
        return count;
    }
    let step = *pick(chance, &[5, 10]);
    count / step * step
}

fn extra(chance: &mut Chance, speech: &Speech, kind: &str, plot: &Plot) -> Extra {
    let any = |chance: &mut Chance, of: &crate::speech::Lexicon| {
        let names: Vec<&String> = of.keys().collect();
        (*pick(chance, &names)).clone()
    };
    match kind {
        "damage" => Extra::Damage(any(chance, &speech.damage)),
        "disease" => Extra::Ailment(any(chance, &speech.disease)),
        "dead" if happens(chance, 2_000) => Extra::Cause(any(chance, &speech.cause)),
        "fertilised" if happens(chance, 8_000) => {
            let product = any(chance, &speech.product);
            let formula = (product == "npk" && happens(chance, 3_000))
                .then(|| *pick(chance, &["15-15-15", "12-12-17", "20-8-20"]));
            let amount = happens(chance, 6_000)
                .then(|| amount(chance, plot))
                .flatten();
            Extra::Feed {
                product,
                formula,
                amount,
            }
        }
        "girth" => Extra::Girths(girths(chance)),
        "weeded" | "cleared" if happens(chance, 1_000) => {
            let unit = speech.area.clone();
            Extra::Area(between(chance, 2, 30), unit)
        }
        _ => Extra::None,
    }
}

/// Under 600 g a tree, so that nobody need wonder.
fn amount(chance: &mut Chance, plot: &Plot) -> Option<(u32, &'static str)> {
    let kilograms = plot.alive() * 6 / 10;
    let bags = kilograms / 50;
    if bags >= 1 && happens(chance, 4_000) {
        return Some((between(chance, 1, bags.min(6)), "bag"));
    }
    (kilograms >= 2).then(|| (between(chance, 2, kilograms.min(200)), "kg"))
}

/// A sample of stems: within an eighth of their mean; three lists in ten with half centimetres.
fn girths(chance: &mut Chance) -> Vec<u32> {
    let mean = between(chance, 180, 550);
    let number = between(chance, 4, 10);
    let tenths = happens(chance, 3_000);
    let one = |chance: &mut Chance| {
        let value = between(chance, mean - mean / 8, mean + mean / 8);
        if tenths {
            value / 5 * 5
        } else {
            value / 10 * 10
        }
    };
    (0..number).map(|_| one(chance)).collect()
}

impl Fact {
    /// The event as `budwood read` gives it.
    pub(crate) fn event(&self, day: Option<Day>) -> Value {
        let mut event = Map::new();
        let mut put = |name: &str, value: Value| event.insert(name.to_owned(), value);
        put("kind", json!(self.kind));
        put("block", json!(self.plot.name));
        if let Some(count) = self.count {
            put("count", json!(count));
        }
        if let Some(day) = day {
            put("date_rel", json!(day.days_away()));
        }
        match &self.extra {
            Extra::None => {}
            Extra::Cause(cause) | Extra::Damage(cause) => {
                put("cause", json!(cause));
            }
            Extra::Ailment(what) => {
                put("what", json!(what));
            }
            Extra::Feed {
                product,
                formula,
                amount,
            } => {
                put("product", json!(product));
                if let Some(formula) = formula {
                    put("formula", json!(formula));
                }
                if let Some((amount, unit)) = amount {
                    put("amount", json!(amount));
                    put("unit", json!(unit));
                }
            }
            Extra::Girths(tenths) => {
                let values: Vec<f64> = tenths
                    .iter()
                    .map(|value| f64::from(*value) / 10.0)
                    .collect();
                put("values_cm", json!(values));
            }
            Extra::Area(tenths, unit) => {
                put("area", json!(f64::from(*tenths) / 10.0));
                put("unit", json!(unit));
            }
        }
        Value::Object(event)
    }
}
