//! The corpus, as what is to be learned.

use std::{
    io::Write,
    path::Path,
    process::{Command, Stdio},
    string::{String, ToString},
    sync::OnceLock,
    vec::Vec,
};

use serde_json::{Value, json};

use self::read::{Faults, GROUPS, faults, is_fact, texts};
use super::entry::entry;
use crate::{
    Kind, Known, Pack, Reader, Report, Sender,
    glyphs::{figure::Number, fold::Folded},
    languages,
    learned::{
        course::{ASKED, DENIED, TALK, TOLD},
        sure::Signs,
    },
    lists::piece::{Piece, Sense},
    pieces::used::Use,
    tests::render::{reading as render, report},
};

#[path = "../../../tests/measure/corpus/read.rs"]
mod read;

/// One text with what is expected of it.
pub(super) struct Line {
    pub(super) lang: String,
    pub(super) text: String,
    pub(super) act: String,
    pub(super) role: String,
    /// Kept for measuring.
    pub(super) aside: bool,
    /// No text of a person.
    phrase: bool,
    /// Only to see how sure readings of such texts are.
    pub(super) listed: bool,
    who: String,
    pub(super) alternatives: Vec<String>,
    blocks: Vec<String>,
    groups: Vec<String>,
    members: Vec<String>,
    pub(super) expect: Option<Vec<Value>>,
}

/// A state that a text must or may pass, with what is said in it.
pub(super) struct Want {
    pub(super) state: usize,
    pub(super) must: bool,
    numbers: Vec<f64>,
    block: Option<String>,
    pub(super) event: Value,
}

/// The texts of a folder.
pub(super) fn lines(folder: &Path) -> Vec<Line> {
    texts(folder).iter().map(Line::of).collect()
}

/// The phrases of a folder.
pub(super) fn phrases(folder: &Path) -> Vec<Line> {
    super::phrases::phrases(folder)
        .iter()
        .map(Line::of)
        .collect()
}

/// What the lists of all packs are made for and read rightly.
pub(super) fn listed() -> Vec<Line> {
    let packs = languages::ALL.iter().map(|pack| Pack::parse(pack).unwrap());
    let lines = packs.flat_map(|pack| super::phrases::listed(&pack));
    let lines = lines.map(|line| Line {
        listed: true,
        ..Line::of(&line)
    });
    lines.filter(|line| line.is_as_listed()).collect()
}

/// The texts of patterns of questions.
pub(super) fn patterns(folder: &Path) -> Vec<Line> {
    super::patterns::questions(folder)
        .iter()
        .map(Line::of)
        .collect()
}

/// Every second text of the real chat that `tests/all` installs, of which nothing is told; the others
/// check what was learned (`tests/peers/chat.rs`).
pub(super) fn chat() -> Vec<Line> {
    let peers = std::env::var("BUDWOOD_PEERS").expect("BUDWOOD_PEERS names the peers of tests/all");
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/peers/chat.py");
    let mut child = Command::new(Path::new(&peers).join("python/bin/python"))
        .arg(script)
        .env("PYTHONIOENCODING", "utf-8")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().unwrap().write_all(b"{}\n").unwrap();
    let output = child.wait_with_output().unwrap();
    let texts = String::from_utf8(output.stdout).unwrap();
    assert!(!texts.is_empty(), "the peer gives its texts");
    let mut lines = Vec::new();
    for (at, line) in texts.lines().enumerate() {
        let mut value: Value = serde_json::from_str(line).unwrap();
        value["act"] = "silent".into();
        value["who"] = std::format!("chat{at}").into();
        value["expect"] = Value::Array(Vec::new());
        if at % 2 == 1 {
            lines.push(Line::of(&value));
        }
    }
    lines
}

pub(super) fn reader() -> &'static Reader {
    static READER: OnceLock<Reader> = OnceLock::new();
    READER.get_or_init(new_reader)
}

/// A reader of all languages that ship.
pub(super) fn new_reader() -> Reader {
    let packs = languages::ALL
        .iter()
        .map(|pack| Pack::parse(pack).unwrap())
        .collect();
    Reader::new(packs).unwrap()
}

/// People are parted into so many folds; what is learned of some is tried on the others.
pub(super) const FOLDS: usize = 4;

/// Signs of a reading by weights that never saw its writer, and whether it was right.
pub(super) struct Seen {
    pub(super) signs: Signs,
    pub(super) right: bool,
    /// How much it counts.
    pub(super) weight: f32,
}

/// A text of the lists counts so much of one by a person.
const LISTED_WEIGHT: f32 = 0.25;

impl Line {
    fn of(value: &Value) -> Self {
        let text = |key: &str| value[key].as_str().unwrap_or_default().to_string();
        let names = |value: &Value| match value {
            Value::Object(map) => map.keys().cloned().collect(),
            Value::Array(all) => all
                .iter()
                .filter_map(|name| name.as_str().map(ToString::to_string))
                .collect(),
            _ => Vec::new(),
        };
        let ctx = &value["ctx"];
        let mut blocks: Vec<String> = names(&ctx["plots"]);
        if ctx["plots"].is_null() {
            blocks = ["A", "B", "C", "D"].map(ToString::to_string).to_vec();
        }
        let role = text("role");
        let mut groups: Vec<String> = names(&ctx["groups"]);
        if role == "adviser" && groups.is_empty() {
            groups = GROUPS.map(ToString::to_string).to_vec();
        }
        Self {
            lang: text("lang"),
            text: text("text"),
            act: text("act"),
            role,
            aside: value["aside"] == true,
            phrase: value["phrase"] == true,
            listed: false,
            who: text("who"),
            alternatives: names(&value["act_alt"]),
            blocks,
            groups,
            members: names(&ctx["members"]),
            expect: value["expect"]
                .as_array()
                .or(value["events"].as_array())
                .cloned(),
        }
    }

    /// The fold of its writer; a phrase is in none, so it is always learned of.
    pub(super) fn fold(&self) -> Option<usize> {
        if self.phrase {
            return None;
        }
        let sum = self
            .who
            .bytes()
            .fold(7_u32, |sum, byte| sum.wrapping_mul(31) + u32::from(byte));
        Some((sum >> 3) as usize % FOLDS)
    }

    /// All that a reader tries of it, and whether that is right; nothing where no report is found or it
    /// is fair either way.
    pub(super) fn seen(&self, reader: &Reader) -> Vec<Seen> {
        let Some(expect) = self.expect.as_ref().filter(|_| !self.phrase) else {
            return Vec::new();
        };
        let none = matches!(
            self.act.as_str(),
            "silent" | "person" | "help" | "ask" | "confirm"
        );
        if none && self.alternatives.iter().any(|act| act == "record") {
            return Vec::new();
        }
        let weight = if self.listed { LISTED_WEIGHT } else { 1.0 };
        let tried = self.with_known(|known, _| reader.tried(&self.text, known));
        let told = tried.iter().filter(|one| !one.told.reports.is_empty());
        told.map(|one| Seen {
            signs: one.signs,
            right: !none && is_right(expect, &one.told.reports),
            weight,
        })
        .collect()
    }

    /// Whether the rules of the lists read it rightly.
    fn is_as_listed(&self) -> bool {
        let (rules, stances, _, _) =
            self.with_known(|known, _| reader().both_of(&self.text, known));
        let expect = self.expect.as_deref().unwrap_or_default();
        stances.is_empty() && is_right(expect, &rules.reports)
    }

    /// What a reader learned of it, beside what is expected.
    pub(super) fn shown(&self, reader: &Reader) -> Value {
        let (reading, (rules, stances, learned, words)) = self.with_known(|known, _| {
            let both = reader.both_of(&self.text, known);
            (reader.read(&self.text, known), both)
        });
        let expect = self.expect.clone().unwrap_or_default();
        let told = |reports: &[Report]| reports.iter().map(report).collect::<Vec<String>>();
        let stances: Vec<&str> = stances.iter().map(|stance| stance.name()).collect();
        json!({
            "lang": self.lang, "who": self.who, "text": self.text, "act": self.act, "alt": self.alternatives,
            "right": is_right(&expect, &learned.told.reports), "sure": learned.sure,
            "evidence": learned.evidence, "agreement": learned.agreement,
            "told": told(&learned.told.reports), "rules": told(&rules.reports), "stances": stances,
            "rules_right": is_right(&expect, &rules.reports),
            "learned_wrong": is_false(&expect, &learned.told.reports),
            "rules_wrong": is_false(&expect, &rules.reports),
            "final_wrong": is_false(&expect, &reading.reports),
            "final": told(&reading.reports), "final_right": is_right(&expect, &reading.reports),
            "doubts": reading.reports.iter().map(|report| report.doubts.len()).sum::<usize>(),
            "stored": reading.stances.is_empty(),
            "open": learned.told.reports.iter().flat_map(|report| &report.doubts).count(),
            "closed": learned.account.is_closed(), "loose": learned.account.numbers,
            "strange": words.strange, "count": words.count, "unknown": words.unknown,
            "expect": expect, "signs": learned.signs.to_vec(), "read": render(&reading),
        })
    }

    /// Reads it up to its pieces.
    pub(super) fn with_pieces<T>(
        &self,
        look: impl FnOnce(&[Piece<'_>], &Folded<'_>, bool) -> T,
    ) -> T {
        self.with_known(|known, adviser| {
            reader().with_pieces(&self.text, known, |pieces, folded| {
                look(pieces, folded, adviser)
            })
        })
    }

    pub(super) fn with_known<T>(&self, look: impl FnOnce(&Known<'_>, bool) -> T) -> T {
        let languages = if self.lang == "mix" || self.lang.is_empty() {
            Vec::new()
        } else {
            Vec::from([self.lang.as_str()])
        };
        let blocks: Vec<&str> = self.blocks.iter().map(String::as_str).collect();
        let groups: Vec<&str> = self.groups.iter().map(String::as_str).collect();
        let members: Vec<&str> = self.members.iter().map(String::as_str).collect();
        let adviser = self.role == "adviser";
        let known = Known {
            languages: &languages,
            blocks: &blocks,
            groups: &groups,
            members: &members,
            rolls: &[],
            sender: if adviser {
                Sender::Adviser
            } else {
                Sender::Farmer
            },
        };
        look(&known, adviser)
    }

    /// The states that it passes; none where it is no use for learning.
    pub(super) fn states(&self) -> Option<Vec<Want>> {
        if matches!(self.act.as_str(), "silent" | "person" | "help") {
            return Some(Vec::new());
        }
        self.expect.as_ref()?.iter().map(want).collect()
    }
}

fn want(event: &Value) -> Option<Want> {
    let name = event["kind"].as_str()?;
    let opt: Vec<&str> = event["opt"].as_array().map_or_else(Vec::new, |all| {
        all.iter().filter_map(Value::as_str).collect()
    });
    let state = match name {
        "query" | "deed" => ASKED,
        "not_done" => {
            let task = event["task"].as_str().and_then(Kind::from_name)?;
            DENIED + Kind::ALL.iter().position(|kind| *kind == task)?
        }
        name => match Kind::from_name(name) {
            Some(found) => {
                let at = Kind::ALL.iter().position(|kind| *kind == found)?;
                if event["count"].as_u64() == Some(0) || event["what"] == "none" {
                    DENIED + at
                } else {
                    TOLD + at
                }
            }
            None => TALK,
        },
    };
    let mut numbers = Vec::new();
    if state >= TOLD {
        for key in ["count", "amount", "area", "of", "weak", "mm", "values_cm"] {
            match &event[key] {
                Value::Array(all) => numbers.extend(all.iter().filter_map(Value::as_f64)),
                value => numbers.extend(value.as_f64()),
            }
        }
    }
    Some(Want {
        state,
        event: event.clone(),
        must: !opt.contains(&"*") && event["opt"] != Value::Bool(true),
        numbers,
        block: event["block"]
            .as_str()
            .map(ToString::to_string)
            .filter(|_| state >= TOLD),
    })
}

impl Want {
    /// Whether a piece is said of it.
    pub(super) fn claims(&self, piece: &Piece<'_>) -> bool {
        let has = |value: f64| {
            self.numbers
                .iter()
                .any(|number| (number - value).abs() < 0.001)
        };
        match piece.sense {
            Sense::Number(number) => has(number.value) || number.decimal.is_some_and(has),
            Sense::Share(one, _) => has(f64::from(one)),
            Sense::Block(name) => self
                .block
                .as_deref()
                .is_some_and(|block| block.eq_ignore_ascii_case(name)),
            _ => false,
        }
    }
}

/// What a number is used for, as [`crate::pieces::used::Use`] counts them: all that it may be.
pub(super) fn uses(wants: &[Want], number: Number) -> Vec<usize> {
    let is = |value: f64| {
        (number.value - value).abs() < 0.001
            || number
                .decimal
                .is_some_and(|decimal| (decimal - value).abs() < 0.001)
    };
    let mut found = Vec::new();
    let mut add = |it: Use| {
        if !found.contains(&(it as usize)) {
            found.push(it as usize)
        }
    };
    for want in wants {
        let has = |key: &str| want.event[key].as_f64().is_some_and(is);
        if has("count") {
            add(Use::Count)
        }
        if has("of") {
            add(Use::Of)
        }
        if has("amount") {
            add(Use::Amount)
        }
        if has("area") {
            add(Use::Area)
        }
        if has("mm") {
            add(Use::Rain)
        }
        if let Some(values) = want.event["values_cm"].as_array() {
            if values
                .iter()
                .filter_map(Value::as_f64)
                .any(|cm| is(cm) || is(cm / 100.0) || is(cm * 10.0) || is((cm / 2.54).round()))
            {
                add(Use::Value);
            }
        }
        if want.event["block"]
            .as_str()
            .and_then(|name| name.parse().ok())
            .is_some_and(is)
        {
            add(Use::Place)
        }
    }
    if found.is_empty() {
        for want in wants {
            if let Some(days) = want.event["date_rel"].as_i64() {
                let day = NOON + days;
                let day = if day < 1 { day + 28 } else { day };
                if is(day as f64) && days < -1 {
                    return Vec::from([Use::Day as usize]);
                }
            }
        }
        return Vec::from([Use::Nothing as usize]);
    }
    found
}

/// The day of March on which texts are received; February before it has 28.
const NOON: i64 = 18;

/// Whether reports say what was to be told, and nothing else.
fn is_right(expect: &[Value], reports: &[Report]) -> bool {
    let told: Vec<&Value> = expect.iter().filter(|event| is_fact(event)).collect();
    let found: Vec<Value> = reports.iter().map(entry).collect();
    faults(&told, &found) == Faults::default()
}

/// Whether reports say something that was not to be told.
fn is_false(expect: &[Value], reports: &[Report]) -> bool {
    let told: Vec<&Value> = expect.iter().filter(|event| is_fact(event)).collect();
    let found: Vec<Value> = reports.iter().map(entry).collect();
    let faults = faults(&told, &found);
    faults.slots + faults.extra > 0
}
