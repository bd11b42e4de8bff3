//! Holds what the reader made of a text against what must come of it.

use serde_json::{Map, Value};

use crate::{
    message::{Class, Message, Want},
    slips::Seen,
};

/// What one text adds to the measures.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Verdict {
    /// Stored right with no question.
    pub(crate) right: bool,
    pub(crate) came: Came,
    pub(crate) data: usize,
    pub(crate) wrong: usize,
    /// Said, and not stored, where nothing else was stored instead.
    pub(crate) lost: usize,
    /// What is to be shown to those who work on the reader.
    pub(crate) fault: Option<&'static str>,
}

/// What was done with a text.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Came {
    /// Nothing was said.
    #[default]
    Quiet,
    Stored,
    /// Confirmed or asked.
    Asked,
    /// Any other answer.
    Answered,
}

impl Came {
    fn of(act: &str) -> Self {
        match act {
            "record" => Self::Stored,
            "confirm" | "ask" => Self::Asked,
            "silent" | "person" => Self::Quiet,
            _ => Self::Answered,
        }
    }
}

impl Verdict {
    pub(crate) fn is_stored(&self) -> bool {
        self.came == Came::Stored
    }

    pub(crate) fn is_asked(&self) -> bool {
        self.came == Came::Asked
    }
}

/// Slots of which the absence is a lost detail and not another value.
const DETAILS: [&str; 6] = ["cause", "product", "what", "formula", "area", "species"];
/// Slots that say how a thing was called; the plan does not choose them.
const MANNER: [&str; 2] = ["material", "per"];

pub(crate) fn judge(message: &Message, answer: &Value) -> Verdict {
    let act = answer.get("act").and_then(Value::as_str).unwrap_or("error");
    let events = answer
        .get("events")
        .and_then(Value::as_array)
        .cloned()
        .unwrap_or_default();
    let mut verdict = Verdict {
        came: Came::of(act),
        ..Verdict::default()
    };
    let stored = verdict.is_stored();
    match &message.want {
        Want::Record(wanted) | Want::Either(wanted) | Want::Challenge(wanted) => {
            if stored {
                compare(wanted, &events, &mut verdict);
            }
            verdict.right = stored && verdict.wrong == 0 && verdict.lost == 0;
        }
        Want::Change { field, to } => {
            let changed = events.first().and_then(Value::as_object);
            verdict.right = act == "amend"
                && changed.is_some_and(|event| {
                    text(event, "field") == *field && text(event, "to") == *to
                });
        }
        Want::Undo => verdict.right = act == "amend",
        Want::Act { act: wanted, is } => {
            let event = events.first().and_then(Value::as_object);
            let is_it = |event: &Map<String, Value>| {
                text(event, "kind") == *is || text(event, "what") == *is
            };
            verdict.right = act == *wanted && event.is_some_and(is_it);
        }
        Want::Quiet => verdict.right = verdict.came == Came::Quiet,
        Want::NoEvent => verdict.right = !matches!(act, "record" | "amend"),
    }
    verdict.fault = fault(message, &verdict);
    verdict
}

fn fault(message: &Message, verdict: &Verdict) -> Option<&'static str> {
    if message.class == Class::Negative {
        return match (&message.want, verdict.is_stored(), verdict.right) {
            (_, true, _) => Some("FALSE ACCEPT"),
            (Want::Quiet, false, false) => Some("unwanted reply"),
            _ => None,
        };
    }
    if verdict.wrong > 0 {
        return Some("WRONG VALUE");
    }
    match &message.want {
        Want::Challenge(_) => verdict.is_stored().then_some("missed question"),
        Want::Either(_) => None,
        Want::Record(_) if verdict.right => None,
        Want::Record(_) if verdict.lost > 0 => Some("lost detail"),
        Want::Record(_) if verdict.is_asked() => Some("needless question"),
        Want::Record(_) => Some("not understood"),
        Want::Change { .. } | Want::Undo | Want::Act { .. } if verdict.right => None,
        Want::Change { .. } | Want::Undo if verdict.is_stored() => Some("WRONG EVENT"),
        Want::Change { .. } | Want::Undo => Some("correction"),
        Want::Act { .. } | Want::Quiet | Want::NoEvent => Some("talk"),
    }
}

fn text(event: &Map<String, Value>, name: &str) -> String {
    match event.get(name) {
        Some(Value::String(text)) => text.clone(),
        Some(value) => value.to_string(),
        None => String::new(),
    }
}

/// Counts data, wrong ones and lost ones of stored events against the wanted ones.
fn compare(wanted: &[Value], found: &[Value], verdict: &mut Verdict) {
    let mut left: Vec<&Map<String, Value>> = found.iter().filter_map(Value::as_object).collect();
    for event in wanted.iter().filter_map(Value::as_object) {
        let same_kind = |other: &&Map<String, Value>| other.get("kind") == event.get("kind");
        let place = left
            .iter()
            .position(same_kind)
            .or((!left.is_empty()).then_some(0));
        match place {
            Some(place) => compare_one(event, left.remove(place), verdict),
            None => {
                // The sender thinks that it was told.
                verdict.data += event.len();
                verdict.wrong += 1;
            }
        }
    }
    for extra in left {
        verdict.data += extra.len();
        verdict.wrong += extra.len();
    }
}

fn compare_one(wanted: &Map<String, Value>, found: &Map<String, Value>, verdict: &mut Verdict) {
    for (name, value) in wanted {
        verdict.data += 1;
        match found.get(name) {
            Some(other) if is_same(value, other) => {}
            None if name == "date_rel" && value == 0 => {}
            None if DETAILS.contains(&name.as_str()) => verdict.lost += 1,
            // The unit of an area that was not stored.
            None if name == "unit" && wanted.contains_key("area") => {}
            Some(_) | None => verdict.wrong += 1,
        }
    }
    for (name, value) in found {
        let known = wanted.contains_key(name) || MANNER.contains(&name.as_str());
        let is_today = name == "date_rel" && value == 0;
        if !known && !is_today {
            verdict.data += 1;
            verdict.wrong += 1;
        }
    }
}

fn is_same(one: &Value, other: &Value) -> bool {
    match (one, other) {
        (Value::Array(one), Value::Array(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(a, b)| is_same(a, b))
        }
        _ => match (one.as_f64(), other.as_f64()) {
            (Some(one), Some(other)) => (one - other).abs() < 1e-6,
            _ => one == other,
        },
    }
}

/// The measures of one language at one level.
#[derive(Clone, Debug, Default)]
pub(crate) struct Tally {
    pub(crate) reports: usize,
    pub(crate) marked_record: usize,
    pub(crate) right: usize,
    /// Marked *record*, and asked about, not understood, or passed over.
    pub(crate) clarified: usize,
    pub(crate) needless: usize,
    pub(crate) marked_question: usize,
    pub(crate) missed: usize,
    pub(crate) stored: usize,
    pub(crate) stored_wrong: usize,
    pub(crate) data: usize,
    pub(crate) wrong: usize,
    pub(crate) lost: usize,
    pub(crate) negatives: usize,
    pub(crate) false_accepts: usize,
    pub(crate) marked_quiet: usize,
    pub(crate) unwanted: usize,
    pub(crate) corrections: usize,
    pub(crate) exact: usize,
    /// A correction that was stored as a fact.
    pub(crate) touched: usize,
    pub(crate) talk: usize,
    pub(crate) talk_right: usize,
    /// Texts with a word that is held out of the pack, and those stored as another kind of work.
    pub(crate) held: usize,
    pub(crate) held_wrong: usize,
    pub(crate) slips_seen: usize,
    pub(crate) slips_caught: usize,
    pub(crate) slips_unseen: usize,
}

impl Tally {
    pub(crate) fn add(&mut self, message: &Message, verdict: &Verdict) {
        let one = usize::from;
        match message.class {
            Class::Negative => {
                self.negatives += 1;
                self.false_accepts += one(verdict.is_stored());
                if matches!(message.want, Want::Quiet) {
                    self.marked_quiet += 1;
                    self.unwanted += one(verdict.came != Came::Quiet);
                }
            }
            Class::Correction => {
                self.corrections += 1;
                self.exact += one(verdict.right);
                self.touched += one(verdict.is_stored());
            }
            Class::Talk => {
                self.talk += 1;
                self.talk_right += one(verdict.right);
            }
            Class::Report => self.add_report(message, verdict),
        }
    }

    fn add_report(&mut self, message: &Message, verdict: &Verdict) {
        let one = usize::from;
        self.reports += 1;
        self.stored += one(verdict.is_stored());
        self.stored_wrong += one(verdict.wrong > 0);
        self.data += verdict.data;
        self.wrong += verdict.wrong;
        self.lost += verdict.lost;
        if matches!(message.want, Want::Record(_)) {
            self.marked_record += 1;
            self.right += one(verdict.right);
            self.clarified += one(!verdict.is_stored());
            self.needless += one(verdict.is_asked());
        }
        if matches!(message.want, Want::Challenge(_)) {
            self.marked_question += 1;
            self.missed += one(verdict.is_stored());
        }
        self.slips_unseen += message
            .slips
            .iter()
            .filter(|seen| **seen == Seen::No)
            .count();
        if message.slips.contains(&Seen::Yes) {
            self.slips_seen += 1;
            self.slips_caught += one(!verdict.is_stored());
        }
    }
}
