//! How the texts of `tests/corpus` are read: the table by part, language and kind of text.
//!
//! `cargo test -p budwood --test measure corpus -- --nocapture` prints it. Texts of `learn` taught the
//! weights, so their lines flatter most. Those of `tune` are of people whom the weights never met, but
//! the thresholds of `parser/src/learned/verdict.rs` were chosen by them, so they flatter too. `sealed` chose
//! nothing; it is printed with `BUDWOOD_SEALED=1` only, once for each great change of the reader.
//!
//! `BUDWOOD_SHOW=false` prints the texts of `learn` that were stored with something false, beside what
//! was stored; `quiet`, `repl`, `stor` and `talk` those of these columns (of `talk` what was not heard).

use std::{collections::BTreeMap, env, path::Path};

use serde_json::{Map, Value, json};

use self::read::{Faults, GROUPS, faults, is_fact, kind, texts};
use crate::run::{answers_to, reader};

mod read;

/// What became of the texts of one language.
#[derive(Clone, Copy, Default)]
struct Tally {
    /// Texts that tell facts; stored with every fact right; right after one yes; with something false;
    /// met with silence or another act.
    told: u32,
    first: u32,
    yes: u32,
    wrong: u32,
    silent: u32,
    /// Texts that tell nothing; facts stored of them; needless replies.
    none: u32,
    made_up: u32,
    replies: u32,
    /// Doubtful texts; stored without a question.
    doubtful: u32,
    unasked: u32,
    /// Questions, answers, corrections; understood.
    talk: u32,
    understood: u32,
}

impl Tally {
    fn add(&mut self, other: &Self) {
        let pairs = [
            (&mut self.told, other.told),
            (&mut self.first, other.first),
            (&mut self.yes, other.yes),
            (&mut self.wrong, other.wrong),
            (&mut self.silent, other.silent),
            (&mut self.none, other.none),
            (&mut self.made_up, other.made_up),
            (&mut self.replies, other.replies),
            (&mut self.doubtful, other.doubtful),
            (&mut self.unasked, other.unasked),
            (&mut self.talk, other.talk),
            (&mut self.understood, other.understood),
        ];
        for (mine, more) in pairs {
            *mine += more;
        }
    }

    /// Whether one text came out so.
    fn is(&self, outcome: &str) -> bool {
        match outcome {
            "false" => self.wrong > 0,
            "quiet" => self.silent > 0,
            "repl" => self.replies > 0,
            "stor" => self.unasked > 0,
            "talk" => self.talk > self.understood,
            _ => false,
        }
    }

    fn row(&self) -> String {
        let rate = |part: u32| f64::from(part) * 100.0 / f64::from(self.told.max(1));
        format!(
            "{:5} {:5.0} {:5.0} {:5.1} {:5.1}   {:4} {:4} {:4}   {:4} {:4}   {:4} {:4}",
            self.told,
            rate(self.first),
            rate(self.first + self.yes),
            rate(self.wrong),
            rate(self.silent),
            self.none,
            self.made_up,
            self.replies,
            self.doubtful,
            self.unasked,
            self.talk,
            self.understood
        )
    }
}

/// The texts of a part, and what is made of each.
fn read_part(part: &str) -> Vec<(Value, Value)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../tests/corpus")
        .join(part);
    let texts = texts(&folder);
    let lines: Vec<Value> = texts.iter().map(line).collect();
    let answers = answers_to(&reader(), &lines);
    assert_eq!(answers.len(), texts.len(), "one answer for each text");
    texts.into_iter().zip(answers).collect()
}

/// A text as it is given to the reader.
fn line(text: &Value) -> Value {
    let mut line = json!({ "id": text["id"], "text": text["text"], "role": text["role"] });
    if text["lang"] != "mix" {
        line["lang"] = text["lang"].clone();
    }
    let known = ["farmer", "leader", "adviser", "unknown"];
    if !known.iter().any(|role| text["role"] == *role) {
        line["role"] = json!("farmer");
    }
    let mut ctx = Map::new();
    for key in ["plots", "last", "pending", "groups", "members"] {
        if let Some(value) = text["ctx"].get(key) {
            ctx.insert(key.to_owned(), value.clone());
        }
    }
    if text["role"] == "adviser" {
        ctx.entry("groups").or_insert_with(|| json!(GROUPS));
    }
    line["ctx"] = Value::Object(ctx);
    line
}

fn judge(text: &Value, answer: &Value) -> Tally {
    let mut tally = Tally::default();
    let act = answer["act"].as_str().unwrap_or_default();
    let wanted_act = text["act"].as_str().unwrap_or_default();
    let other = text["act_alt"].as_array();
    let is_fair = act == wanted_act || other.is_some_and(|all| all.iter().any(|it| it == act));
    let none = Vec::new();
    let got = answer["events"].as_array().unwrap_or(&none);
    let Some(wanted) = text["expect"].as_array() else {
        return tally;
    };
    if wanted.is_empty() {
        tally.none = 1;
        tally.made_up = u32::from(act == "record" && got.iter().any(is_fact));
        let quiet = is_fair || act == "silent" || act == "person";
        tally.replies = u32::from(tally.made_up == 0 && !quiet);
        return tally;
    }
    // Beside facts a question may be left unheard.
    let heard = |event: &&Value| {
        wanted_act != "record" || is_fact(event) || got.iter().any(|got| kind(got) == kind(event))
    };
    let all: Vec<&Value> = wanted.iter().filter(heard).collect();
    let found = faults(&all, got);
    let right = found == Faults::default();
    match wanted_act {
        "record" => {
            tally.told = 1;
            let asked = matches!(act, "confirm" | "ask" | "help");
            tally.first = u32::from(right && (act == "record" || is_fair));
            tally.yes = u32::from(right && tally.first == 0 && act == "confirm");
            tally.wrong = u32::from(act == "record" && (found.slots > 0 || found.extra > 0));
            tally.silent = u32::from(act != "record" && !asked && tally.first == 0);
        }
        "confirm" | "ask" => {
            tally.doubtful = 1;
            tally.unasked = u32::from(act == "record" && !is_fair);
        }
        _ => {
            tally.talk = 1;
            let named = wanted
                .iter()
                .all(|event| got.iter().any(|got| kind(got) == kind(event)));
            tally.understood = u32::from(is_fair && (right || named));
        }
    }
    tally
}

/// What became of questions and deeds, in a part of the texts.
#[derive(Clone, Copy, Default)]
struct Asked {
    all: u32,
    /// Read with the right word and names; with the right word for the first that is asked.
    right: u32,
    what: u32,
    /// A person is told; the reading tells a fact; nothing is said.
    person: u32,
    fact: u32,
    silent: u32,
}

impl Asked {
    fn of(text: &Value, answer: &Value) -> Self {
        let events = |from: &Value| from.as_array().cloned().unwrap_or_default();
        let (wanted, got) = (events(&text["expect"]), events(&answer["events"]));
        let is_asked = |event: &&Value| matches!(kind(event), "query" | "deed");
        let is_fair = text["act"] == "answer" && wanted.iter().all(|event| is_asked(&event));
        let Some(first) = wanted.first().filter(|_| is_fair) else {
            return Self::default();
        };
        let act = answer["act"].as_str().unwrap_or_default();
        let found = faults(&wanted.iter().collect::<Vec<_>>(), &got);
        let what = |event: &Value| kind(event) == kind(first) && event["what"] == first["what"];
        Self {
            all: 1,
            right: u32::from(act == "answer" && found == Faults::default()),
            what: u32::from(act == "answer" && got.iter().any(what)),
            person: u32::from(act == "person"),
            fact: u32::from(act == "record"),
            silent: u32::from(act == "silent"),
        }
    }

    fn add(&mut self, other: Self) {
        self.all += other.all;
        self.right += other.right;
        self.what += other.what;
        self.person += other.person;
        self.fact += other.fact;
        self.silent += other.silent;
    }

    fn percent(self, of: u32) -> f64 {
        f64::from(of) * 100.0 / f64::from(self.all.max(1))
    }

    fn row(self) -> String {
        let parts = [self.right, self.what, self.person, self.fact, self.silent];
        let parts = parts.map(|part| format!("{:6.1}", self.percent(part)));
        format!("{:5} {}", self.all, parts.join(""))
    }
}

/// How questions and deeds of a part are read: all, and by language and by what is asked.
fn measure_asked(part: &str) -> (Asked, BTreeMap<String, Asked>) {
    let (mut all, mut rows) = (Asked::default(), BTreeMap::new());
    for (text, answer) in read_part(part) {
        let asked = Asked::of(&text, &answer);
        let first = &text["expect"][0];
        let what = first["what"].as_str().unwrap_or_default();
        let language = text["lang"].as_str().unwrap_or_default().to_owned();
        all.add(asked);
        for row in [language, format!("  {} {what}", kind(first))] {
            rows.entry(row).or_insert_with(Asked::default).add(asked);
        }
    }
    rows.retain(|_, asked| asked.all > 0);
    (all, rows)
}

/// The whole part, its languages, its kinds of text.
fn measure(part: &str) -> (Tally, BTreeMap<String, Tally>) {
    let mut all = Tally::default();
    let mut rows = BTreeMap::new();
    for (text, answer) in read_part(part) {
        let tally = judge(&text, &answer);
        if part == "learn" && env::var("BUDWOOD_SHOW").is_ok_and(|show| tally.is(&show)) {
            println!("{text}\n  {answer}");
        }
        all.add(&tally);
        let language = text["lang"].as_str().unwrap_or_default().to_owned();
        let first = text["expect"]
            .get(0)
            .map(|event| format!("  {}", kind(event)));
        let sort = first.unwrap_or_else(|| "  nothing".to_owned());
        for row in [language, sort] {
            rows.entry(row).or_insert_with(Tally::default).add(&tally);
        }
    }
    (all, rows)
}

/// In percent of the texts that tell facts: what is right at once, false, and met with silence. Floors
/// of today, for people whom the weights never met.
const FIRST_MIN: f64 = 25.5;
const WRONG_MAX: f64 = 2.3;
const SILENT_MAX: f64 = 9.9;
/// In percent of the questions, deeds, corrections and answers: those understood.
const HEARD_MIN: f64 = 66.0;

#[test]
fn corpus_by_part_language_and_kind() {
    let sealed = env::var_os("BUDWOOD_SEALED").is_some();
    for part in ["learn", "tune"]
        .into_iter()
        .chain(sealed.then_some("sealed"))
    {
        let (all, rows) = measure(part);
        println!(
            "{part:17}  told first  +yes false quiet   none made repl   doub stor   talk heard"
        );
        for (name, row) in &rows {
            println!("{name:17} {}", row.row());
        }
        println!("{:17} {}\n", "all", all.row());
        if part == "tune" {
            let rate = |of: u32| f64::from(of) * 100.0 / f64::from(all.told);
            assert!(
                rate(all.first) >= FIRST_MIN,
                "read at once: {}",
                rate(all.first)
            );
            assert!(rate(all.wrong) <= WRONG_MAX, "false: {}", rate(all.wrong));
            assert!(
                rate(all.silent) <= SILENT_MAX,
                "silent: {}",
                rate(all.silent)
            );
            assert_eq!(all.made_up, 0, "facts of texts that tell none");
            let heard = f64::from(all.understood) * 100.0 / f64::from(all.talk);
            assert!(heard >= HEARD_MIN, "understood: {heard}");
        }
    }
}

/// In percent of the questions and deeds: what is read with the right word and names, and met with
/// silence. Floors of today, for people whom the weights never met.
const RIGHT_MIN: f64 = 56.0;
const ASKED_SILENT_MAX: f64 = 8.0;

#[test]
fn corpus_of_questions_and_deeds() {
    let sealed = env::var_os("BUDWOOD_SEALED").is_some();
    let parts = ["learn", "tune"].into_iter();
    for part in parts.chain(sealed.then_some("sealed")) {
        let (all, rows) = measure_asked(part);
        println!("{part:22} asked right what person fact silent");
        for (name, row) in &rows {
            println!("{name:22} {}", row.row());
        }
        println!("{:22} {}\n", "all", all.row());
        if part == "tune" {
            let right = all.percent(all.right);
            assert!(right >= RIGHT_MIN, "right: {right}");
            let silent = all.percent(all.silent);
            assert!(silent <= ASKED_SILENT_MAX, "silent: {silent}");
        }
    }
}
