//! How fast texts are read: texts a second on one core, against a split on white space of the same
//! texts; and whether a hostile text costs no more for each letter than a short one.
//!
//! Absolute figures only mean something beside their machine; the ratios are of one run.

#![expect(clippy::print_stdout, reason = "a bench prints what it measures")]
#![expect(clippy::disallowed_methods, reason = "a bench measures real time")]

use std::{
    hint::black_box,
    time::{Duration, Instant},
};

use budwood_parser::{Known, Pack, Reader, Sender, languages};

/// A burst is shorter than the turn that a busy system gives a program.
const BURST: Duration = Duration::from_millis(2);
/// The best of so many bursts, since other programs only ever slow one down.
const BURSTS: usize = 200;

/// Short texts as farmers send them, with some chat.
const TEXTS: &[&str] = &[
    "planted 120 block B",
    "DEAD 8 B",
    "weeded A",
    "8 trees died in B from wind",
    "no dead in C",
    "planted 120, 8 died, replaced 6 B",
    "girth B 41 43 39",
    "good morning sir i weeded A yesterday",
    "put 50g urea per tree B",
    "plabted 120 B",
    "dead8B",
    "will plant 120 tomorrow",
    "yes",
    "no 102 not 120",
    "thanks sir",
    "see you at the market on sunday",
];

const HOSTILE: &[&str] = &["a1", "planted 1 ", "one hundred and ", "1,", "plan", "A B "];
const LETTERS: usize = 1_600;
const SHORT_LETTERS: usize = 24;

fn main() {
    let packs: Result<Vec<Pack>, _> = languages::ALL
        .iter()
        .map(|toml| Pack::parse(toml))
        .collect();
    let reader = Reader::new(packs.expect("the packs that ship can be read")).expect("they agree");
    for (name, langs) in [("English", &["en"][..]), ("all languages", &[])] {
        let known = known(langs);
        let read = seconds_each(TEXTS, |text| {
            black_box(reader.read(text, &known));
        });
        let split = seconds_each(TEXTS, |text| {
            black_box(text.split_whitespace().map(str::len).sum::<usize>());
        });
        println!(
            "{name}: {:.0} texts/s, {:.1} x a split on white space",
            1.0 / read,
            read / split
        );
    }
    let known = known(&["en"]);
    for unit in HOSTILE {
        let letter = |letters: usize| {
            let text: String = unit.chars().cycle().take(letters).collect();
            let each = seconds_each(&[&text], |text| {
                black_box(reader.read(text, &known));
            });
            each * 1e9 / f64::from(u32::try_from(letters).unwrap_or(u32::MAX))
        };
        let (short, long) = (letter(SHORT_LETTERS), letter(LETTERS));
        println!(
            "{unit:?} repeated: {short:.0} ns a letter short, {long:.0} ns long, {:.2} x",
            long / short
        );
    }
}

fn known(languages: &'static [&'static str]) -> Known<'static> {
    Known {
        languages,
        blocks: &["A", "B", "C"],
        groups: &[],
        members: &[],
        sender: Sender::Farmer,
    }
}

/// The time for one text, in seconds.
fn seconds_each(texts: &[&str], mut work: impl FnMut(&str)) -> f64 {
    let mut best = f64::MAX;
    for _ in 0..BURSTS {
        let start = Instant::now();
        let mut rounds = 0_u32;
        while start.elapsed() < BURST {
            for text in texts {
                work(black_box(text));
            }
            rounds += 1;
        }
        let texts = f64::from(rounds) * f64::from(u32::try_from(texts.len()).unwrap_or(u32::MAX));
        best = best.min(start.elapsed().as_secs_f64() / texts);
    }
    best
}
