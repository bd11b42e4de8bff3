//! Texts from which nothing may be stored: chat with words of work in it, plans, news of others,
//! adverts, rubbish.

use crate::{
    draw::{between, pick, weighted},
    farm::Farm,
    message::{Class, Maker, Message, Want, line},
    noise::Reach,
    token::{Token, What, filled, words},
};

/// How often each sort comes.
const SORTS: [(&str, u64); 11] = [
    ("trigger", 40),
    ("chat", 15),
    ("plan", 10),
    ("hearsay", 7),
    ("stock", 4),
    ("request", 5),
    ("hypothetical", 4),
    ("question", 4),
    ("advert", 7),
    ("garbage", 3),
    ("empty", 1),
];

impl Maker<'_> {
    /// A text from which nothing may be stored.
    pub(crate) fn negative(&mut self) -> Message {
        let farm = Farm::draw(&mut self.chance, self.speech);
        let sort = *weighted(&mut self.chance, &SORTS);
        let tokens = self.negative_tokens(&farm, sort);
        let text = self.noisy(Reach::Report, tokens).text;
        // "If 20 trees die, what happens?" is a question too.
        let want = if matches!(sort, "question" | "hypothetical") {
            Want::NoEvent
        } else {
            Want::Quiet
        };
        let line = line(self.lang, &text, &farm);
        Message {
            class: Class::Negative,
            text,
            line,
            want,
            slips: Vec::new(),
        }
    }

    fn negative_tokens(&mut self, farm: &Farm, sort: &str) -> Vec<Token> {
        let negative = &self.speech.negative;
        let Some(templates) = negative.get(sort) else {
            return Vec::new();
        };
        let template = templates.draw(&mut self.chance).to_owned();
        let subjects = negative.get("subjects").expect("subjects are listed");
        let subject = subjects.draw(&mut self.chance);
        let plot = farm.plot(&mut self.chance).name.clone();
        let mut teller = self.teller(farm);
        filled(&template, |name| match name {
            "s" => words(subject),
            "b" => teller.block(&plot),
            "c" => vec![Token::new(
                *pick(teller.chance, &["A", "B", "C", "D"]),
                What::Name,
            )],
            _ => {
                let number = between(teller.chance, 2, 400);
                vec![Token::new(number.to_string(), What::Number)]
            }
        })
    }
}
