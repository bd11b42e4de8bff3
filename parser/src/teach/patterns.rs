//! Patterns of questions and deeds, by those who work on the reader: more ways to ask than the texts of
//! a few hundred people have. Nothing is measured on them.
//!
//! A file for each language (`tests/corpus/questions`): what stands before and after a question, then a
//! section for each sender and what is asked, and below it one pattern a line. `(one|two)` is a choice;
//! `{group}`, `{member}` and `{block}` stand for names. What is made of a pattern is drawn from a seed.

use std::{
    fs,
    path::Path,
    string::{String, ToString},
    vec::Vec,
};

use serde_json::{Value, json};

use super::model::Draw;
use crate::glyphs::fold::bare;

const GROUPS: [&str; 14] = [
    "KOLO",
    "TAMBI",
    "MERAPU",
    "SERIPA",
    "PHUNA",
    "DAKLIM",
    "GREEN VALLEY",
    "Dusun Tiga",
    "PK 40",
    "Linha 7",
    "Thôn 4",
    "ดงเย็น",
    "KG TOMIS",
    "Unity",
];
const MEMBERS: [&str; 11] = [
    "Tamo Rill",
    "Sela Dorn",
    "Kofi Asante",
    "Nok Dara",
    "Slamet",
    "Siti",
    "Nguyễn Văn Tám",
    "สมชาย",
    "Rosa",
    "Mba Obame",
    "Che Divine",
];
const BLOCKS: [&str; 4] = ["A", "B", "C", "D"];
/// So many texts are made of a pattern, or as many as its widest choice has ways.
const TEXTS: usize = 8;
/// In one text of so many the names are of no list.
const UNKNOWN: usize = 3;
/// In percent: with words around it; in capitals; without accents; with a slip.
const AROUND: u32 = 60;
const CAPITALS: u32 = 15;
const BARE: u32 = 30;
const SLIP: u32 = 20;

/// What leaders ask too.
const LEADERS: [&str; 14] = [
    "adviser status",
    "adviser late",
    "adviser quiet",
    "adviser dead",
    "adviser gaps",
    "adviser order",
    "adviser bags",
    "adviser ready",
    "adviser sick",
    "adviser root",
    "adviser job",
    "adviser count",
    "adviser deed tell",
    "adviser deed ask",
];

/// The patterns of all languages, as lines of the corpus.
pub(super) fn questions(folder: &Path) -> Vec<Value> {
    let mut files: Vec<_> = fs::read_dir(folder)
        .unwrap()
        .map(|file| file.unwrap().path())
        .collect();
    files.sort();
    files.iter().flat_map(|file| of_language(file)).collect()
}

fn of_language(file: &Path) -> Vec<Value> {
    let lang = file.file_stem().unwrap().to_str().unwrap();
    let text = fs::read_to_string(file).unwrap();
    let mut draw = Draw::new(7);
    let mut maker = Maker {
        before: Vec::new(),
        after: Vec::new(),
    };
    let mut section = "";
    let mut all = Vec::new();
    let ways = |text: &str| text.split('|').map(ToString::to_string).collect();
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        if let Some(words) = line.strip_prefix("before: ") {
            maker.before = ways(words);
        } else if let Some(words) = line.strip_prefix("after: ") {
            maker.after = ways(words);
        } else if let Some(name) = line.strip_prefix('[') {
            section = name.trim_end_matches(']');
        } else {
            for turn in 0..widest(line).max(TEXTS) {
                let text = maker.text(line, turn, lang, &mut draw);
                let known = turn % UNKNOWN != 1;
                let bare =
                    (lang == "vi").then(|| labelled("vi-bare", section, &bare(&text), known));
                all.extend(bare);
                // A leader asks about the group as an adviser does, and texts as a farmer.
                let as_leader = LEADERS.contains(&section) && turn % 4 == 0;
                let leader = section.replace("adviser", "leader");
                all.extend(as_leader.then(|| labelled(lang, &leader, &text, known)));
                all.push(labelled(lang, section, &text, known));
            }
        }
    }
    all
}

/// What a section asks: "adviser late", "farmer when", "adviser deed tell", "farmer nothing".
fn labelled(lang: &str, section: &str, text: &str, known: bool) -> Value {
    let mut words = section.split(' ');
    let role = words.next().unwrap();
    let (kind, what) = match (words.next().unwrap(), words.next()) {
        ("deed", Some(what)) => ("deed", what),
        (what, _) => ("query", what),
    };
    let expect = match what {
        "nothing" => Vec::new(),
        _ => Vec::from([json!({ "kind": kind, "what": what })]),
    };
    let act = if expect.is_empty() {
        "silent"
    } else {
        "answer"
    };
    let mut ctx = json!({ "plots": { "A": {}, "B": {}, "C": {}, "D": {} } });
    if role == "adviser" && known {
        ctx["groups"] = json!(GROUPS);
        ctx["members"] = json!(MEMBERS);
    }
    json!({
        "lang": lang, "role": role, "text": text, "act": act, "phrase": true, "expect": expect, "ctx": ctx,
    })
}

/// The parts of a pattern: text as it stands, and choices.
fn parts(pattern: &str) -> Vec<(bool, &str)> {
    let mut parts = Vec::new();
    for (at, part) in pattern.split('(').enumerate() {
        match part.split_once(')') {
            Some((choice, text)) if at > 0 => parts.extend([(true, choice), (false, text)]),
            _ => parts.push((false, part)),
        }
    }
    parts
}

fn widest(pattern: &str) -> usize {
    let choices = parts(pattern).into_iter().filter(|(choice, _)| *choice);
    choices
        .map(|(_, ways)| ways.split('|').count())
        .max()
        .unwrap_or(1)
}

/// Makes texts of patterns.
struct Maker {
    before: Vec<String>,
    after: Vec<String>,
}

impl Maker {
    /// One text; the widest choices take their ways in turn, so that each occurs.
    fn text(&self, pattern: &str, turn: usize, lang: &str, draw: &mut Draw) -> String {
        let widest = widest(pattern);
        let mut text = String::new();
        for (is_choice, part) in parts(pattern) {
            if is_choice {
                let ways: Vec<&str> = part.split('|').collect();
                let way = if ways.len() == widest {
                    turn % widest
                } else {
                    draw.below(ways.len())
                };
                text.push_str(ways[way]);
            } else {
                text.push_str(part);
            }
        }
        let member = MEMBERS[draw.below(MEMBERS.len())];
        let member = if draw.chance(50) {
            member.split(' ').next().unwrap()
        } else {
            member
        };
        let group = GROUPS[draw.below(GROUPS.len())].to_string();
        let group = if draw.chance(30) {
            group.to_lowercase()
        } else {
            group
        };
        let mut text = text
            .replace("{group}", &group)
            .replace("{member}", member)
            .replace("{block}", BLOCKS[draw.below(BLOCKS.len())]);
        if pattern != "{member}" && !self.before.is_empty() && draw.chance(AROUND) {
            if draw.chance(AROUND) {
                text = self.before[draw.below(self.before.len())].clone() + &text;
            }
            if draw.chance(AROUND) {
                text += &self.after[draw.below(self.after.len())];
            }
        }
        let words: Vec<&str> = text.split_whitespace().collect();
        worn(words.join(" "), lang, draw)
    }
}

/// As people type it.
fn worn(mut text: String, lang: &str, draw: &mut Draw) -> String {
    if draw.chance(CAPITALS) {
        text = text.to_uppercase();
    }
    if matches!(lang, "fr" | "pt") && draw.chance(BARE) {
        text = bare(&text);
    }
    if draw.chance(SLIP) {
        let mut letters: Vec<char> = text.chars().collect();
        let at = draw.below(letters.len());
        let inside = at > 0 && letters[at].is_alphabetic() && letters[at - 1].is_alphabetic();
        match draw.below(3) {
            0 if inside => {
                letters.remove(at);
            }
            1 if inside => letters.insert(at, letters[at]),
            2 if inside => letters.swap(at, at - 1),
            _ => {}
        }
        text = letters.into_iter().collect();
    }
    text
}
