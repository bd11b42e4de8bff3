//! A text with the scene that it falls into and what must come of it.

use serde_json::{Value, json};

use crate::{
    chance::Chance,
    draw::{happens, weighted},
    farm::Farm,
    noise::{self, Reach},
    plan::{self, Day, Fact},
    rates::Level,
    slips::Seen,
    speech::Speech,
    surface::Teller,
    talk,
    token::Token,
};

/// What a text is counted under.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Class {
    Report,
    Correction,
    /// Answers to a question of ours, questions to the bot, an adviser's questions.
    Talk,
    Negative,
}

/// What must come of a text. It is known from the plan, never read from the text.
#[derive(Clone, Debug)]
pub(crate) enum Want {
    /// Stored at once, exactly so.
    Record(Vec<Value>),
    /// Asked about, not stored.
    Challenge(Vec<Value>),
    /// Stored exactly so, or asked about.
    Either(Vec<Value>),
    /// A slot of the last fact changes to this.
    Change { field: &'static str, to: String },
    /// The last fact is taken back.
    Undo,
    /// An act with an event of this kind, or `what` for a question.
    Act { act: &'static str, is: &'static str },
    /// Nothing is stored and nothing is said.
    Quiet,
    /// Nothing is stored; an answer is right.
    NoEvent,
}

/// A text of the measure.
#[derive(Clone, Debug)]
pub(crate) struct Message {
    pub(crate) class: Class,
    pub(crate) text: String,
    /// The line for `budwood read --lines`.
    pub(crate) line: Value,
    pub(crate) want: Want,
    /// Numbers that were typed wrongly, and whether it can be seen.
    pub(crate) slips: Vec<Seen>,
}

/// What makes the messages of one language at one level.
pub(crate) struct Maker<'a> {
    pub(crate) chance: Chance,
    pub(crate) speech: &'a Speech,
    pub(crate) level: Level,
    /// The code that the reader is told; none: all packs.
    pub(crate) lang: Option<&'a str>,
}

#[derive(Clone, Copy)]
enum Plan {
    Reports(usize),
    NotDone,
    Zero,
    Correction,
    Reply,
    Question,
    Adviser,
}

/// Of a thousand texts; chat and the like are counted apart.
const PLANS: [(Plan, u64); 9] = [
    (Plan::Reports(1), 520),
    (Plan::Reports(2), 90),
    (Plan::Reports(3), 30),
    (Plan::NotDone, 40),
    (Plan::Zero, 15),
    (Plan::Correction, 50),
    (Plan::Reply, 50),
    (Plan::Question, 60),
    (Plan::Adviser, 25),
];

impl Maker<'_> {
    /// A text of a farmer or an adviser that means something to the bot.
    pub(crate) fn message(&mut self) -> Message {
        let farm = Farm::draw(&mut self.chance, self.speech);
        match *weighted(&mut self.chance, &PLANS) {
            Plan::Reports(number) => self.reports(&farm, number),
            Plan::NotDone => self.not_done(&farm),
            Plan::Zero => self.zero(&farm),
            Plan::Correction => talk::correction(self, &farm),
            Plan::Reply => talk::reply(self, &farm),
            Plan::Question => talk::question(self, &farm),
            Plan::Adviser => talk::adviser(self, &farm),
        }
    }

    pub(crate) fn teller<'b>(&'b mut self, farm: &'b Farm) -> Teller<'b> {
        Teller {
            chance: &mut self.chance,
            speech: self.speech,
            farm,
            level: self.level,
        }
    }

    fn facts(&mut self, farm: &Farm, number: usize) -> Vec<Fact> {
        let mut facts: Vec<Fact> = Vec::new();
        let mut plot = farm.plot(&mut self.chance).clone();
        // A kind that was drawn already is drawn again.
        while facts.len() < number {
            if happens(&mut self.chance, 4_000) {
                plot = farm.plot(&mut self.chance).clone();
            }
            let but: Vec<&str> = facts.iter().map(|fact| fact.kind).collect();
            facts.extend(plan::fact(&mut self.chance, self.speech, &plot, &but));
            if but.len() >= 2 && happens(&mut self.chance, 500) {
                break;
            }
        }
        facts
    }

    fn reports(&mut self, farm: &Farm, number: usize) -> Message {
        let facts = self.facts(farm, number);
        let day = Day::draw(&mut self.chance);
        let told = self.teller(farm).tell(&facts, day);
        let lang = self.lang.filter(|_| !told.mixed);
        let noisy = self.noisy(Reach::Report, told.tokens);
        let challenged = told.doubtful || told.blockless || noisy.twin;
        let want = if challenged || told.slips.contains(&Seen::Yes) {
            Want::Challenge(told.events)
        } else if told.slips.contains(&Seen::Perhaps) {
            Want::Either(told.events)
        } else {
            Want::Record(told.events)
        };
        let mut line = line(lang, &noisy.text, farm);
        let twice = happens(&mut self.chance, self.level.rates().twice);
        let want = match (twice, facts.as_slice(), want) {
            (true, [fact], Want::Record(events)) if again(fact, day) => {
                let last = json!({
                    "kind": fact.kind, "count": fact.count, "block": fact.plot.name,
                    "minutes_ago": 3,
                });
                put(&mut line, "last", last);
                Want::Challenge(events)
            }
            (_, _, want) => want,
        };
        Message {
            class: Class::Report,
            text: noisy.text,
            line,
            want,
            slips: told.slips,
        }
    }

    fn not_done(&mut self, farm: &Farm) -> Message {
        let kinds = [
            ("weeded", 40),
            ("fertilised", 30),
            ("pruned", 20),
            ("planted", 10),
        ];
        let kind = *weighted(&mut self.chance, &kinds);
        let plot = farm.plot(&mut self.chance).clone();
        let event = json!({"kind": "not_done", "task": kind, "block": plot.name});
        self.by_template(farm, "not_done", kind, &plot.name, event)
    }

    fn zero(&mut self, farm: &Farm) -> Message {
        let grown: Vec<_> = farm.plots.iter().filter(|plot| plot.planted > 0).collect();
        let Some(plot) = grown.first() else {
            return self.not_done(farm);
        };
        let event = json!({"kind": "dead", "count": 0, "block": plot.name});
        self.by_template(farm, "zero", "dead", &plot.name, event)
    }

    fn by_template(
        &mut self,
        farm: &Farm,
        said: &str,
        kind: &str,
        block: &str,
        event: Value,
    ) -> Message {
        let template = self.speech.said(said).draw(&mut self.chance).to_owned();
        let speech = self.speech;
        let mut teller = self.teller(farm);
        let tokens = crate::token::filled(&template, |name| match name {
            "k" => crate::token::words(
                speech
                    .work
                    .get(kind)
                    .expect("it is listed")
                    .exact(teller.chance),
            ),
            _ => teller.block(block),
        });
        let noisy = self.noisy(Reach::Report, tokens);
        let want = if noisy.twin {
            Want::Challenge(vec![event])
        } else {
            Want::Record(vec![event])
        };
        let line = line(self.lang, &noisy.text, farm);
        Message {
            class: Class::Report,
            text: noisy.text,
            line,
            want,
            slips: Vec::new(),
        }
    }

    pub(crate) fn noisy(&mut self, reach: Reach, tokens: Vec<Token>) -> noise::Noisy {
        noise::noisy(&mut self.chance, self.speech, self.level, reach, tokens)
    }
}

/// A second text with this fact is seen to be the same one.
fn again(fact: &Fact, day: Option<Day>) -> bool {
    let counted = fact.count.is_some_and(|count| count > 0);
    counted && day.is_none_or(|day| day.days_away() > -7)
}

/// A line of input.
pub(crate) fn line(lang: Option<&str>, text: &str, farm: &Farm) -> Value {
    let ctx = json!({"plots": farm.context()});
    json!({"lang": lang, "role": "farmer", "text": text, "ctx": ctx})
}

/// Puts something into a line's context.
pub(crate) fn put(line: &mut Value, name: &str, value: Value) {
    if let Some(ctx) = line.get_mut("ctx").and_then(Value::as_object_mut) {
        ctx.insert(name.to_owned(), value);
    }
}
