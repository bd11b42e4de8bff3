//! Short phrases in which work is told, by those who work on the reader: more words for what is told
//! than the texts of a few hundred people have.
//!
//! A file for each language (`tests/corpus/phrases`): a section names what is told, each line below is
//! one way to say it. `{b}` stands for a block, `{n}` for a count, `{a}` for a size of land, `{q}` for
//! an amount, `{v}` for what was measured.

use std::{
    format, fs,
    path::Path,
    string::{String, ToString},
    vec::Vec,
};

use serde_json::{Map, Value, json};

use crate::{
    Pack,
    glyphs::fold::bare,
    meaning::{Meaning, Plain},
    pack::Entry,
};

/// Names of blocks that take turns.
const BLOCKS: [&str; 8] = ["B", "A", "Hill", "C", "2", "D", "River", "East"];
/// Numbers that take turns.
const COUNTS: [u32; 9] = [12, 40, 7, 120, 65, 3, 25, 200, 9];
const AREAS: [f64; 5] = [2.0, 1.0, 0.5, 3.0, 1.5];
const AMOUNTS: [u32; 6] = [3, 50, 2, 100, 5, 10];
const VALUES: [&[u32]; 5] = [&[41, 43, 39], &[150], &[52, 48], &[35], &[210, 190, 200]];

/// Of the lists every so manieth word is enough.
const LISTED_STEP: usize = 3;

/// The phrases of all languages, as lines of the corpus.
pub(super) fn phrases(folder: &Path) -> Vec<Value> {
    let mut files: Vec<_> = fs::read_dir(folder)
        .unwrap()
        .map(|file| file.unwrap().path())
        .collect();
    files.sort();
    let mut all = Vec::new();
    for file in files {
        let lang = file.file_stem().unwrap().to_str().unwrap().to_string();
        let text = fs::read_to_string(&file).unwrap();
        let mut told = String::new();
        for (at, line) in text.lines().enumerate() {
            if let Some(section) = line.strip_prefix('[') {
                told = section.trim_end_matches(']').to_string();
            } else if !line.is_empty() && !line.starts_with('#') {
                all.push(phrase(&lang, &told, line, at));
                if lang == "vi" {
                    all.push(phrase("vi-bare", &told, &bare(line), at));
                }
            }
        }
    }
    all
}

/// One phrase, or two works parted by `//`.
fn phrase(lang: &str, told: &str, line: &str, at: usize) -> Value {
    let mut text = String::new();
    let mut events = Vec::new();
    for (more, (part, told)) in line.split("//").zip(told.split("//")).enumerate() {
        let mut event = event(told);
        text.push_str(&filled(part, &mut event, told, at + more));
        events.push(event);
    }
    let plots: Map<String, Value> = BLOCKS
        .iter()
        .map(|name| (name.to_string(), json!({})))
        .collect();
    json!({
        "lang": lang, "text": text, "act": "record", "phrase": true, "expect": events,
        "ctx": { "plots": plots },
    })
}

/// The part of a phrase with its slots filled, in the text and in the event.
fn filled(part: &str, event: &mut Map<String, Value>, told: &str, at: usize) -> String {
    let mut text = part.to_string();
    let mut fill = |slot: &str, key: &str, shown: String, value: Value| {
        if text.contains(slot) {
            text = text.replace(slot, &shown);
            event.insert(key.to_string(), value);
        }
    };
    let block = BLOCKS[at % BLOCKS.len()];
    let count = COUNTS[at % COUNTS.len()];
    let area = AREAS[at % AREAS.len()];
    let amount = AMOUNTS[at % AMOUNTS.len()];
    let values = VALUES[at % VALUES.len()];
    let list: Vec<String> = values.iter().map(ToString::to_string).collect();
    fill("{b}", "block", block.to_string(), json!(block));
    fill("{n}", "count", count.to_string(), json!(count));
    fill("{a}", "area", area.to_string(), json!(area));
    fill("{q}", "amount", amount.to_string(), json!(amount));
    if told == "rain" {
        fill("{v}", "mm", amount.to_string(), json!(amount));
    } else {
        fill("{v}", "values_cm", list.join(" "), json!(values));
    }
    text
}

/// What the lists of a pack are made for: their words of work with a block, and with a number where
/// it needs one; some with a slip, a word of no list, or a second work.
pub(super) fn listed(pack: &Pack) -> Vec<Value> {
    let works = works(pack);
    let mut all = Vec::new();
    for (at, (told, line)) in works.iter().enumerate().step_by(LISTED_STEP) {
        let strange = STRANGE[at % STRANGE.len()];
        let (other, behind) = &works[(at * 7 + 3) % works.len()];
        let both = format!("{told}//{other}");
        let (told, line) = match at % 5 {
            0 | 1 => (told.clone(), line.clone()),
            2 => (told.clone(), format!("{line} {strange}")),
            3 => (both, format!("{line},// {behind}")),
            _ => (both, format!("{strange} {line}.// {behind}")),
        };
        let mut phrase = phrase(&pack.code, &told, &line, at);
        phrase["who"] = json!(format!("list {at}"));
        phrase["phrase"] = json!(false);
        all.push(phrase);
    }
    all
}

/// The words of work of a pack, each with what it tells.
fn works(pack: &Pack) -> Vec<(String, String)> {
    let word = |class: Plain| {
        let named = |entry: &&Entry| entry.meaning == Meaning::Plain(class);
        let entry = pack.entries.iter().find(named);
        entry.map_or_else(String::new, |entry| entry.phrase.clone())
    };
    let (block, trees) = (word(Plain::Block), word(Plain::Trees));
    let work = |(at, entry): (usize, &Entry)| {
        let (told, counted) = match entry.meaning {
            Meaning::Kind(kind) if kind.needs_values() => (kind.name().to_string(), "{v} cm"),
            Meaning::Kind(kind) if kind.is_counted() => (kind.name().to_string(), "{n}"),
            Meaning::Kind(kind) => (kind.name().to_string(), ""),
            Meaning::Ailment(ailment) => (format!("disease {}", ailment.name()), "{n}"),
            Meaning::Cause(cause) => (format!("damage {}", cause.name()), "{n}"),
            _ => return None,
        };
        let slips = at % 3 == 1;
        let said = if slips {
            slip(&entry.phrase)
        } else {
            entry.phrase.clone()
        };
        let trees = if counted == "{n}" && at % 2 == 0 {
            &*trees
        } else {
            ""
        };
        let line = match at % 4 {
            0 => format!("{said} {counted} {trees} {block} {{b}}"),
            1 => format!("{block} {{b}} {said} {counted} {trees}"),
            2 => format!("{counted} {trees} {said} {block} {{b}}"),
            _ => format!("{said} {block} {{b}} {counted} {trees}"),
        };
        Some((told, line))
    };
    pack.entries.iter().enumerate().filter_map(work).collect()
}

/// Words of no list, as people drop them in.
const STRANGE: [&str; 6] = ["oya", "kwela", "sha", "tumba", "yawa", "olei"];

/// A long word with a letter left out.
fn slip(phrase: &str) -> String {
    let letters: Vec<char> = phrase.chars().collect();
    let middle = letters.len() / 2;
    let fits = letters.len() > 6 && phrase.is_ascii() && letters[middle] != ' ';
    let kept = letters
        .iter()
        .enumerate()
        .filter(|(at, _)| !fits || *at != middle);
    kept.map(|(_, letter)| *letter).collect()
}

/// What a section tells: "planted", "no dead", "not weeded", "disease pink", "damage wind".
fn event(told: &str) -> Map<String, Value> {
    let mut words = told.split(' ');
    let (first, second) = (words.next().unwrap(), words.next());
    let event = match (first, second) {
        ("not", Some(task)) => json!({ "kind": "not_done", "task": task }),
        ("no", Some("rain")) => json!({ "kind": "rain", "what": "none" }),
        ("no", Some(kind)) => json!({ "kind": kind, "count": 0 }),
        ("rain", None) => json!({ "kind": "rain", "what": "soaked" }),
        ("disease", Some(what)) => json!({ "kind": "disease", "what": what }),
        ("damage", Some(cause)) => json!({ "kind": "damage", "cause": cause }),
        (kind, _) => json!({ "kind": kind }),
    };
    event.as_object().unwrap().clone()
}
