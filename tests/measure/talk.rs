//! What is said to the bot itself: corrections, answers to its questions, questions.

use serde_json::{Value, json};

use crate::{
    draw::{between, happens, weighted},
    farm::{Farm, Naming},
    message::{Class, Maker, Message, Want, line, put},
    noise::Reach,
    token::{Token, What, filled, words},
};

/// The group that an adviser asks about.
const GROUP: &str = "KOLO";

fn number(number: u32) -> Vec<Token> {
    vec![Token::new(number.to_string(), What::Number)]
}

impl Maker<'_> {
    fn talk(&mut self, farm: &Farm, tokens: Vec<Token>, class: Class, want: Want) -> Message {
        let text = self.noisy(Reach::Manner, tokens).text;
        let line = line(self.lang, &text, farm);
        Message {
            class,
            text,
            line,
            want,
            slips: Vec::new(),
        }
    }
}

/// A correction of a count or a block, or a fact taken back.
pub(crate) fn correction(maker: &mut Maker<'_>, farm: &Farm) -> Message {
    let plot = farm.plot(&mut maker.chance).clone();
    let (kind, most) = if plot.planted == 0 {
        ("planted", plot.holds)
    } else {
        ("dead", (plot.alive() / 8).max(3))
    };
    let from = between(&mut maker.chance, 1, most);
    let to = 1 + (from + between(&mut maker.chance, 0, most - 2)) % most;
    // A block's number as the new count could mean the block.
    let to = if farm.naming == Naming::Numbers {
        to + 4
    } else {
        to
    };
    let to = if to == from { to + 1 } else { to };
    let other = farm
        .plots
        .iter()
        .find(|other| other.name != plot.name && (other.planted == 0) == (plot.planted == 0));
    let what = *weighted(
        &mut maker.chance,
        &[
            ("correct", 60),
            ("correct_block", 15),
            ("undo", 15),
            ("wrong", 10),
        ],
    );
    let template = maker.speech.said(what).draw(&mut maker.chance).to_owned();
    let name = |name: &str| vec![Token::new(name, What::Name)];
    let (tokens, want) = match (what, other) {
        ("correct_block", Some(other)) => (
            filled(&template, |letter| {
                name(if letter == "b" {
                    &other.name
                } else {
                    &plot.name
                })
            }),
            Want::Change {
                field: "block",
                to: other.name.clone(),
            },
        ),
        ("undo" | "wrong", _) => (words(&template), Want::Undo),
        _ => {
            let template = maker
                .speech
                .said("correct")
                .draw(&mut maker.chance)
                .to_owned();
            (
                filled(&template, |letter| {
                    number(if letter == "n" { to } else { from })
                }),
                Want::Change {
                    field: "count",
                    to: to.to_string(),
                },
            )
        }
    };
    let mut message = maker.talk(farm, tokens, Class::Correction, want);
    let last = json!({"kind": kind, "count": from, "block": plot.name, "minutes_ago": 9});
    put(&mut message.line, "last", last);
    message
}

/// An answer to something that the bot asked.
pub(crate) fn reply(maker: &mut Maker<'_>, farm: &Farm) -> Message {
    let asked = [
        ("yes", 30),
        ("no", 15),
        ("count", 20),
        ("block", 20),
        ("done", 10),
        ("later", 5),
    ];
    let what = *weighted(&mut maker.chance, &asked);
    let plot = farm.plot(&mut maker.chance).clone();
    let template = maker.speech.said(what).draw(&mut maker.chance).to_owned();
    let count = between(&mut maker.chance, 1, (plot.alive() / 8).max(3));
    let mut teller = maker.teller(farm);
    let tokens = filled(&template, |letter| match letter {
        "n" => number(count),
        _ => vec![Token::new(&plot.name, What::Name)],
    });
    let tokens = if what == "block" && happens(teller.chance, 5_000) {
        teller.block(&plot.name)
    } else {
        tokens
    };
    let kind = if plot.planted == 0 { "planted" } else { "dead" };
    let (want, pending): (Want, Value) = match what {
        "yes" => (
            Want::Act {
                act: "reply",
                is: "yes",
            },
            json!("confirm"),
        ),
        "no" => (
            Want::Act {
                act: "reply",
                is: "no",
            },
            json!("confirm"),
        ),
        "done" => (
            Want::Act {
                act: "reply",
                is: "done",
            },
            json!("nudge"),
        ),
        "later" => (
            Want::Act {
                act: "reply",
                is: "later",
            },
            json!("nudge"),
        ),
        "count" => (
            Want::Record(vec![
                json!({"kind": kind, "count": count, "block": plot.name}),
            ]),
            json!({"ask": "count", "kind": kind, "block": plot.name}),
        ),
        _ => (
            Want::Record(vec![json!({"kind": "weeded", "block": plot.name})]),
            json!({"ask": "block", "kind": "weeded"}),
        ),
    };
    let mut message = maker.talk(farm, tokens, Class::Talk, want);
    put(&mut message.line, "pending", pending);
    message
}

/// A farmer's question.
pub(crate) fn question(maker: &mut Maker<'_>, farm: &Farm) -> Message {
    let topics = [
        ("next", 30),
        ("status", 20),
        ("when", 20),
        ("how_much", 15),
        ("may_i", 15),
    ];
    let topic = *weighted(&mut maker.chance, &topics);
    let plot = farm.plot(&mut maker.chance).clone();
    let speech = maker.speech;
    let asked = speech.ask.get(topic).expect("every topic is asked about");
    let template = asked.draw(&mut maker.chance).to_owned();
    let mut teller = maker.teller(farm);
    let tokens = filled(&template, |_| teller.block(&plot.name));
    maker.talk(
        farm,
        tokens,
        Class::Talk,
        Want::Act {
            act: "answer",
            is: topic,
        },
    )
}

/// An adviser's question about a group.
pub(crate) fn adviser(maker: &mut Maker<'_>, farm: &Farm) -> Message {
    let topics = [
        ("status", 40),
        ("late", 20),
        ("quiet", 10),
        ("gaps", 15),
        ("sick", 15),
    ];
    let topic = *weighted(&mut maker.chance, &topics);
    let asked = maker
        .speech
        .adviser
        .get(topic)
        .expect("every topic is asked about");
    let template = asked.draw(&mut maker.chance).to_owned();
    let tokens = filled(&template, |_| vec![Token::new(GROUP, What::Name)]);
    let want = Want::Act {
        act: "answer",
        is: topic,
    };
    let mut message = maker.talk(farm, tokens, Class::Talk, want);
    if let Some(line) = message.line.as_object_mut() {
        line.insert("role".to_owned(), json!("adviser"));
    }
    put(&mut message.line, "groups", json!([GROUP]));
    message
}
