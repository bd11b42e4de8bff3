//! Learns the weights of [`course`](crate::learned::course) from the texts of `tests/corpus/learn`.
//!
//! `BUDWOOD_PEERS=$PWD/tests/.peers cargo test -p budwood-parser write_the_table -- --ignored` writes
//! the table anew, and beside it a sum of what it was learned of. The same texts make the same table on every machine: nothing is drawn from chance but from a
//! seed, and all sums are made in one order.

mod asking;
mod chain;
mod corpus;
mod entry;
mod features;
mod model;
mod patterns;
mod phrases;
mod questions;
mod rows;
mod trees;

use std::{collections::BTreeMap, fs, println, string::String, vec::Vec};

use self::{
    corpus::Line,
    features::Features,
    model::{Choice, Model, ROUNDS, Sample},
};
use crate::{
    Ailment, Cause, Reader,
    learned::{
        clues::{Clue, Clues, use_clues},
        course::{self, ASIDE},
        trees::{TREE_BYTES, TREES},
        weights::{SURE, Weights},
    },
    lists::piece::{Piece, Sense},
    reader,
};

fn root() -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// A text with what may be told by each of its pieces.
fn sample(line: &Line) -> Option<Sample> {
    let wanted = line.states()?;
    line.with_pieces(|pieces, folded, adviser| {
        let clues = Clues::of(pieces, folded, reader::hints(pieces, folded), adviser);
        let count = pieces.len();
        if count == 0 {
            return None;
        }
        let mut free: Vec<usize> = wanted.iter().map(|want| want.state).collect();
        free.sort_unstable();
        free.dedup();
        let must: Vec<usize> = free
            .iter()
            .copied()
            .filter(|state| wanted.iter().any(|want| want.state == *state && want.must))
            .collect();
        let mut allowed = Vec::with_capacity(count);
        for piece in pieces {
            let pinned: Vec<usize> = wanted
                .iter()
                .filter(|want| want.claims(piece))
                .map(|want| want.state)
                .collect();
            let mut may = if pinned.is_empty() {
                let mut may = free.clone();
                may.push(ASIDE);
                may
            } else {
                pinned
            };
            may.sort_unstable();
            may.dedup();
            allowed.push(may);
        }
        Some(Sample {
            clues: (0..count)
                .map(|at| {
                    let mut all = Vec::new();
                    clues.each(at, |clue| all.push(clue));
                    all
                })
                .collect(),
            borders: (0..count).map(|at| course::border(pieces, at)).collect(),
            allowed,
            must,
        })
    })
}

/// The corpus, and short texts in few words, which it has few of.
fn own_lines() -> Vec<Line> {
    let mut lines = corpus::lines(&root().join("tests/corpus/learn"));
    let short = corpus::lines(&root().join("tests/texts"));
    lines.extend(short.into_iter().filter(|line| !line.aside));
    lines
}

/// What is learned of beside chat: texts of people, phrases, and what the lists are made for.
fn telling_lines() -> Vec<Line> {
    let mut lines = own_lines();
    lines.extend(corpus::phrases(&root().join("tests/corpus/phrases")));
    lines.extend(corpus::listed());
    lines
}

/// The texts of a part, with the rows of their clues.
struct Part {
    texts: Vec<(Line, Sample)>,
}

impl Part {
    fn new(lines: Vec<Line>) -> Self {
        let texts = lines
            .into_iter()
            .filter_map(|line| sample(&line).map(|sample| (line, sample)))
            .collect();
        Self { texts }
    }

    /// What is learned of: texts of the project, and chat.
    fn learn() -> Self {
        let mut lines = telling_lines();
        // Twice: most texts that reach a phone tell nothing.
        lines.extend(corpus::chat());
        lines.extend(corpus::chat());
        Self::new(lines)
    }

    /// What is only looked at.
    fn tune() -> Self {
        Self::new(corpus::lines(&root().join("tests/corpus/tune")))
    }

    /// The clues that are learned of, those of the uses of numbers with them.
    fn features(&self) -> Features {
        let mut all: Vec<Clue> = Vec::new();
        for (line, sample) in &self.texts {
            all.extend(sample.clues.iter().flatten());
            line.with_pieces(|pieces, _, _| {
                for (at, may) in sample.allowed.iter().enumerate() {
                    if pieces.get(at).and_then(Piece::number).is_some() {
                        for state in may {
                            all.extend(use_clues(pieces, at, *state as u8));
                        }
                    }
                }
            });
        }
        Features::of(all.into_iter())
    }

    /// Clues become rows.
    fn in_rows(mut self, features: &Features) -> Self {
        for (_, sample) in &mut self.texts {
            for clues in &mut sample.clues {
                *clues = features.rows(clues);
            }
        }
        self
    }
}

fn learned(part: &Part, features: &Features, leave_out: Option<usize>) -> Model {
    let is_in = |line: &Line| !line.listed && (leave_out.is_none() || line.fold() != leave_out);
    let mut model = Model::new(features.len());
    let all: Vec<&Sample> = part
        .texts
        .iter()
        .filter(|(line, _)| is_in(line))
        .map(|(_, sample)| sample)
        .collect();
    for round in 0..ROUNDS {
        let loss = model.round(&all, round);
        if leave_out.is_none() {
            println!("round {round}: {loss:.4}");
        }
    }
    model.settle();
    for (sort, texts) in choices(part, features, leave_out, &model) {
        model.learn_choice(sort, &texts);
    }
    model
}

/// Choices between columns: first column and how many, with what was seen and which are right.
fn choices(
    part: &Part,
    features: &Features,
    leave_out: Option<usize>,
    model: &Model,
) -> Vec<((usize, usize), Vec<Choice>)> {
    let (mut ailments, mut causes, mut uses) = (Vec::new(), Vec::new(), Vec::new());
    for (line, sample) in &part.texts {
        if line.listed || (leave_out.is_some() && line.fold() == leave_out) {
            continue;
        }
        let wants = line.states().unwrap_or_default();
        if !wants.iter().any(|want| want.state >= course::TOLD) {
            continue;
        }
        let states = model.decode_within(sample);
        line.with_pieces(|pieces, _, _| {
            for want in &wants {
                let kind = want.event["kind"].as_str().unwrap_or_default();
                let at = |name: &str, from: usize| {
                    let index = match from {
                        course::AILMENTS => Ailment::from_name(name).map(|it| it as usize),
                        _ => Cause::from_name(name).map(|it| it as usize),
                    };
                    index.map(|index| from + index)
                };
                let only = wants
                    .iter()
                    .filter(|other| other.state == want.state)
                    .count()
                    == 1;
                let clues: Vec<u32> = sample
                    .clues
                    .iter()
                    .zip(&states)
                    .filter(|(_, state)| **state == want.state)
                    .flat_map(|(clues, _)| clues.iter().copied())
                    .collect();
                if clues.is_empty() || !only {
                    continue;
                }
                let what = want.event["what"].as_str().unwrap_or_default();
                let cause = want.event["cause"].as_str().unwrap_or_default();
                if let ("disease", Some(column)) = (kind, at(what, course::AILMENTS)) {
                    ailments.push(Choice {
                        clues: clues.clone(),
                        right: Vec::from([column]),
                    });
                }
                if let ("damage" | "dead", Some(column)) = (kind, at(cause, course::CAUSES)) {
                    causes.push(Choice {
                        clues,
                        right: Vec::from([column]),
                    });
                }
            }
            for (at, piece) in pieces.iter().enumerate() {
                let Sense::Number(number) = piece.sense else {
                    continue;
                };
                let right = corpus::uses(&wants, number);
                let mut clues = sample.clues[at].clone();
                clues.extend(features.rows(&use_clues(pieces, at, states[at] as u8)));
                uses.push(Choice {
                    clues,
                    right: right.iter().map(|it| course::USES + *it).collect(),
                });
            }
        });
    }
    std::vec![
        ((course::AILMENTS, course::AILMENT_COUNT), ailments),
        ((course::CAUSES, course::CAUSE_COUNT), causes),
        ((course::USES, course::USE_COUNT), uses),
    ]
}

/// Tables that each leave out the people of one fold.
fn tables_without(part: &Part, features: &Features) -> Vec<Vec<u8>> {
    let folds: Vec<usize> = (0..corpus::FOLDS).collect();
    std::thread::scope(|scope| {
        let learn =
            |fold: usize| move || learned(part, features, Some(fold)).bytes(features, &NOT_SURE);
        let all: Vec<_> = folds.iter().map(|fold| scope.spawn(learn(*fold))).collect();
        all.into_iter().map(|one| one.join().unwrap()).collect()
    })
}

/// A reader with a table.
fn reader_with(table: Vec<u8>) -> Reader {
    let weights = Weights::of(std::boxed::Box::leak(table.into_boxed_slice()));
    corpus::new_reader().with_weights(weights)
}

/// All that is learned: signs of readings first by weights that never met the writer, then everything
/// of everybody.
fn table() -> Vec<u8> {
    let part = Part::learn();
    let features = part.features();
    let part = part.in_rows(&features);
    let mut seen = Vec::new();
    for (fold, table) in tables_without(&part, &features).into_iter().enumerate() {
        let reader = reader_with(table);
        let others = part
            .texts
            .iter()
            .filter(|(line, _)| line.fold() == Some(fold));
        seen.extend(others.flat_map(|(line, _)| line.seen(&reader)));
    }
    let model = learned(&part, &features, None);
    let sure = trees::learn(&seen.iter().collect::<Vec<_>>());
    report("learn", &model, &part);
    report("tune", &model, &Part::tune().in_rows(&features));
    model.bytes(&features, &sure)
}

/// Trees that say nothing.
const NOT_SURE: [u8; TREES * TREE_BYTES] = [0; TREES * TREE_BYTES];

/// One line a text: what is read by weights that never met its writer.
#[test]
#[ignore = "learns for minutes, and shows the texts of `learn`, to look into"]
fn show_what_others_taught() {
    let keep = std::env::var("BUDWOOD_KEEP").unwrap();
    let part = Part::learn();
    let path = |fold: usize| std::path::Path::new(&keep).join(std::format!("{fold}.bin"));
    if !path(0).exists() {
        let features = part.features();
        let part = Part::learn().in_rows(&features);
        for (fold, table) in tables_without(&part, &features).into_iter().enumerate() {
            fs::write(path(fold), table).unwrap();
        }
    }
    let tables: Vec<Vec<u8>> = (0..corpus::FOLDS)
        .map(|fold| fs::read(path(fold)).unwrap())
        .collect();
    let mut seen = Vec::new();
    for (fold, table) in tables.iter().enumerate() {
        let reader = reader_with(table.clone());
        let others = part
            .texts
            .iter()
            .filter(|(line, _)| line.fold() == Some(fold));
        let all = others.flat_map(|(line, _)| line.seen(&reader));
        seen.extend(all.map(|seen| (fold, seen)));
    }
    for (fold, mut table) in tables.into_iter().enumerate() {
        let others = seen.iter().filter(|(other, _)| *other != fold);
        let others: Vec<&corpus::Seen> = others.map(|(_, seen)| seen).collect();
        table[SURE..SURE + NOT_SURE.len()].copy_from_slice(&trees::learn(&others));
        let reader = reader_with(table);
        let others = part
            .texts
            .iter()
            .filter(|(line, _)| line.fold() == Some(fold));
        for (line, _) in others {
            println!("{}", line.shown(&reader));
        }
    }
}

#[test]
#[ignore = "writes the table of weights"]
fn write_the_table() {
    let table = table();
    fs::write(root().join(TABLE), &table).unwrap();
    fs::write(root().join(LEARNED_OF), learned_of(table)).unwrap();
}

/// The table is stale when a word, a rule or a text has changed since: then `write_the_table`.
#[test]
fn the_table_was_learned_of_what_is_there() {
    let stored = fs::read_to_string(root().join(LEARNED_OF)).unwrap();
    let table = fs::read(root().join(TABLE)).unwrap();
    assert_eq!(stored, learned_of(table), "run write_the_table");
}

/// A sum of all that is learned of the texts of the project, as the reader of today shows it: the clues
/// of each piece with what it may tell, what the clerk entered, and, by this table, the signs of the
/// reading and whether it is right.
fn learned_of(table: Vec<u8>) -> String {
    let weights = Weights::of(std::boxed::Box::leak(table.into_boxed_slice()));
    let reader = corpus::new_reader().with_weights(weights);
    let mut sum = Sum::new();
    for line in telling_lines() {
        let Some(sample) = sample(&line) else {
            continue;
        };
        for (clues, allowed) in sample.clues.iter().zip(&sample.allowed) {
            clues.iter().for_each(|clue| sum.take(*clue));
            allowed.iter().for_each(|state| sum.take(*state as u32));
        }
        sample.borders.iter().for_each(|it| sum.take(*it as u32));
        sample.must.iter().for_each(|it| sum.take(*it as u32));
        let told = serde_json::to_string(&line.expect).unwrap();
        told.bytes().for_each(|byte| sum.take(u32::from(byte)));
        for seen in line.seen(&reader) {
            seen.signs.iter().for_each(|it| sum.take(u32::from(*it)));
            sum.take(u32::from(seen.right));
        }
    }
    std::format!("{:016x}\n", sum.0)
}

/// A sum over numbers (FNV-1a, 64 bits).
struct Sum(u64);

impl Sum {
    const fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }

    fn take(&mut self, number: u32) {
        for byte in number.to_le_bytes() {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
}

#[test]
#[ignore = "learns for minutes, and needs the chat that tests/all installs"]
fn the_table_is_what_the_tool_makes() {
    let stored = fs::read(root().join(TABLE)).unwrap();
    assert!(stored == table(), "run write_the_table");
}

const TABLE: &str = "parser/weights/tellings.bin";
const LEARNED_OF: &str = "parser/weights/learned_of.txt";

/// One line a text: whether what was learned is right, how sure it is, and what it tells.
#[test]
#[ignore = "shows the texts of all parts, to look into"]
fn show_what_is_learned() {
    let stored = fs::read(root().join(TABLE)).unwrap().into_boxed_slice();
    let weights = Weights::of(std::boxed::Box::leak(stored));
    let reader = corpus::new_reader().with_weights(weights);
    for (name, part) in [("learn", Part::learn()), ("tune", Part::tune())] {
        println!("# {name}");
        for (line, _) in &part.texts {
            println!("{}", line.shown(&reader));
        }
    }
}

/// How often the kinds told are found.
fn report(part: &str, model: &Model, texts: &Part) {
    let mut by: BTreeMap<String, [u32; 6]> = BTreeMap::new();
    for (line, sample) in &texts.texts {
        let found = model.decode(sample);
        let mut got: Vec<usize> = found.iter().copied().filter(|s| *s != ASIDE).collect();
        got.sort_unstable();
        got.dedup();
        let want = line.states().unwrap_or_default();
        let must: Vec<usize> = want.iter().filter(|w| w.must).map(|w| w.state).collect();
        let may: Vec<usize> = want.iter().map(|w| w.state).collect();
        let right = must.iter().all(|s| got.contains(s)) && got.iter().all(|s| may.contains(s));
        let row = by.entry(line.lang.clone()).or_default();
        let all = if may.iter().any(|s| *s >= course::TOLD) {
            0
        } else {
            3
        };
        row[all] += 1;
        row[all + 1] += u32::from(right);
        if all == 0 {
            row[2] += u32::from(got.iter().any(|s| may.contains(s)));
        } else {
            row[5] += u32::from(got.iter().any(|s| *s >= course::TOLD));
        }
    }
    let mut sum = [0; 6];
    for (lang, row) in &by {
        for (place, more) in sum.iter_mut().zip(row) {
            *place += more;
        }
        println!(
            "{part} {lang:8} reports {:4}: kinds exact {:3.0} %, one right {:3.0} %; others {:4}: right {:3.0} %, something told {}",
            row[0],
            pct(row[1], row[0]),
            pct(row[2], row[0]),
            row[3],
            pct(row[4], row[3]),
            row[5]
        );
    }
    println!(
        "{part} ALL      reports {:4}: kinds exact {:3.1} %, one right {:3.1} %; others {:4}: right {:3.1} %, something told {}",
        sum[0],
        pct(sum[1], sum[0]),
        pct(sum[2], sum[0]),
        sum[3],
        pct(sum[4], sum[3]),
        sum[5]
    );
}

fn pct(part: u32, whole: u32) -> f64 {
    f64::from(part) * 100.0 / f64::from(whole.max(1))
}
