//! How fast texts are read: texts a second on one core, against a split on white space of the same
//! texts; how often memory is taken for one text; whether a hostile text costs no more for each
//! letter than a short one; what one misspelt word costs against measuring it with every listed
//! word; how long it takes to load all packs.
//!
//! Absolute figures only mean something beside their machine; the ratios are of one run.
//!
//! What a reading costs above the split is no one step of it: by profile a good third goes to
//! folding the text, cutting it and finding its words, a good quarter to the rules that look at the
//! pieces in turn, a fifth to the reports and their slots, the rest to what is handed back. Only to
//! look each word up in a table costs several splits, which is printed beside.

#![expect(clippy::print_stdout, reason = "a bench prints what it measures")]
#![expect(clippy::disallowed_methods, reason = "a bench measures real time")]

use std::{
    collections::HashSet,
    hint::black_box,
    time::{Duration, Instant},
};

use budwood_parser::{Known, Pack, Reader, Sender, languages};

/// A burst is shorter than the turn that a busy system gives a program.
const BURST: Duration = Duration::from_millis(2);
/// The best of so many bursts, since other programs only ever slow one down.
const BURSTS: usize = 200;
/// As many languages as the design names.
const LANGUAGES: usize = 12;

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

/// The same in other languages.
const OTHERS: &[&str] = &[
    "tanam 120 batang blok B kemarin",
    "mati dua belas B, sapi",
    "planté 120 arbres bloc B hier",
    "8 morts bloc B il y a 3 jours",
    "trồng 120 cây lô B hôm qua",
    "chet 8 cay lo B",
    "ปลูกยาง120ต้นแปลงB",
    "เมื่อวานตัดหญ้าแปลง A",
    "plantei cento e vinte mudas no talhão B",
    "நட்டேன் 120 மரம் தோட்டம் B",
    "terima kasih pak",
    "bom dia, tudo bem com a senhora",
];

const HOSTILE: &[&str] = &[
    "a1",
    "planted 1 ",
    "one hundred and ",
    "1,",
    "plan",
    "A B ",
    "rain in ",
    "planted gaps ",
    "กขค",
    "blockb",
];
const LETTERS: usize = 1_600;
const SHORT_LETTERS: usize = 24;

fn main() {
    let one = reader(&parse([languages::ENGLISH].into_iter()));
    let start = Instant::now();
    let many = packs_of_many_languages();
    let loaded = start.elapsed();
    let start = Instant::now();
    let all = reader(&many);
    println!(
        "{} languages: {:.0} ms to read their files, {:.0} ms to compile them",
        many.len(),
        loaded.as_secs_f64() * 1e3,
        start.elapsed().as_secs_f64() * 1e3
    );
    speed("one language loaded", &one, &["en"], TEXTS);
    speed("all loaded, language known", &all, &["en"], TEXTS);
    speed("all loaded, language unknown", &all, &[], TEXTS);
    speed("texts of six other languages", &all, &[], OTHERS);
    looked_up();
    hostile(&all);
    repair(&all);
}

/// What it costs only to find each word in a table of the standard library.
fn looked_up() {
    let words: HashSet<String> = words_of(languages::ENGLISH).into_iter().collect();
    let found = seconds_each(TEXTS, |text| {
        let small = text.to_ascii_lowercase();
        let listed = small
            .split_whitespace()
            .filter(|word| words.contains(*word));
        black_box(listed.count());
    });
    println!(
        "each word only looked up: {:.1} x a split on white space",
        found / split(TEXTS)
    );
}

/// The time of the plainest reading there is.
fn split(texts: &[&str]) -> f64 {
    seconds_each(texts, |text| {
        black_box(text.split_whitespace().map(str::len).sum::<usize>());
    })
}

fn speed(name: &str, reader: &Reader, languages: &'static [&'static str], texts: &[&str]) {
    let known = known(languages);
    let read = seconds_each(texts, |text| {
        black_box(reader.read(text, &known));
    });
    let split = split(texts);
    let taken = allocation_counter::measure(|| {
        for text in texts {
            black_box(reader.read(text, &known));
        }
    });
    println!(
        "{name}: {:.0} texts/s, {:.1} x a split on white space, memory taken {:.1} times a text",
        1.0 / read,
        read / split,
        number(taken.count_total) / number(texts.len() as u64)
    );
}

fn hostile(reader: &Reader) {
    let known = known(&[]);
    for unit in HOSTILE {
        let letter = |letters: usize| {
            let text: String = unit.chars().cycle().take(letters).collect();
            let each = seconds_each(&[&text], |text| {
                black_box(reader.read(text, &known));
            });
            each * 1e9 / number(letters as u64)
        };
        let (short, long) = (letter(SHORT_LETTERS), letter(LETTERS));
        println!(
            "{unit:?} repeated: {short:.0} ns a letter short, {long:.0} ns long, {:.2} x",
            long / short
        );
    }
}

/// One misspelt word among known ones, against a distance to each listed word in turn.
fn repair(reader: &Reader) {
    let known = known(&["en"]);
    let misspelt = seconds_each(&["fertilsed A"], |text| {
        black_box(reader.read(text, &known));
    });
    let listed = seconds_each(&["fertilised A"], |text| {
        black_box(reader.read(text, &known));
    });
    let words: Vec<String> = packs_of_many_languages_text()
        .iter()
        .flat_map(|toml| words_of(toml))
        .collect();
    let looped = seconds_each(&["fertilsed"], |text| {
        let best = words.iter().min_by_key(|word| distance(text, word));
        black_box(best);
    });
    println!(
        "one misspelt word: {:.0} ns; a distance to each of {} words: {:.0} ns; 1/{:.0}",
        (misspelt - listed) * 1e9,
        words.len(),
        looped * 1e9,
        looped / (misspelt - listed)
    );
}

/// The plain distance of a textbook.
fn distance(one: &str, other: &str) -> usize {
    let mut above: Vec<usize> = (0..=other.len()).collect();
    for (row, letter) in one.bytes().enumerate() {
        let mut corner = row;
        let mut left = row + 1;
        for (cell, beside) in above.iter_mut().skip(1).zip(other.bytes()) {
            let best = (corner + usize::from(letter != beside))
                .min(left + 1)
                .min(*cell + 1);
            corner = *cell;
            *cell = best;
            left = best;
        }
        if let Some(first) = above.first_mut() {
            *first = row + 1;
        }
    }
    above.last().copied().unwrap_or(0)
}

fn parse<'t>(packs: impl Iterator<Item = &'t str>) -> Vec<Pack> {
    let packs: Result<Vec<Pack>, _> = packs.map(Pack::parse).collect();
    packs.expect("the packs that ship can be read")
}

fn reader(packs: &[Pack]) -> Reader {
    Reader::new(packs.to_vec()).expect("they agree")
}

/// All packs that ship; made-up ones until there are as many as the design names.
fn packs_of_many_languages() -> Vec<Pack> {
    let texts = packs_of_many_languages_text();
    parse(texts.iter().map(String::as_str))
}

fn packs_of_many_languages_text() -> Vec<String> {
    let shipped = languages::ALL.iter().map(|text| (*text).to_owned());
    shipped
        .chain((1_u8..).map(made_up))
        .take(LANGUAGES.max(languages::ALL.len()))
        .collect()
}

/// English with other letters: as many words, and as long.
fn made_up(shift: u8) -> String {
    let mut toml = String::new();
    let mut inside = false;
    for line in languages::ENGLISH.lines() {
        if line.starts_with("code") || line.starts_with("[twins]") {
            toml.push_str(&line.replace("\"en\"", &format!("\"x{shift}\"")));
        } else if line.starts_with('#') || line.starts_with("name") {
            toml.push_str(line);
        } else {
            for letter in line.chars() {
                inside ^= letter == '"';
                let moved = inside && letter.is_ascii_lowercase();
                toml.push(if moved { turn(letter, shift) } else { letter });
            }
        }
        toml.push('\n');
    }
    // Twins name listed words, which are others here.
    let end = toml.find("[twins]").unwrap_or(toml.len());
    toml.truncate(end);
    toml
}

fn turn(letter: char, shift: u8) -> char {
    let place = (letter as u8 - b'a' + shift) % 26;
    char::from(b'a' + place)
}

/// The words between quotes.
fn words_of(toml: &str) -> Vec<String> {
    toml.split('"')
        .skip(1)
        .step_by(2)
        .flat_map(str::split_whitespace)
        .map(ToOwned::to_owned)
        .collect()
}

fn number(whole: u64) -> f64 {
    f64::from(u32::try_from(whole).unwrap_or(u32::MAX))
}

fn known(languages: &'static [&'static str]) -> Known<'static> {
    Known {
        languages,
        blocks: &["A", "B", "C"],
        groups: &[],
        members: &[],
        rolls: &[],
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
        let texts = f64::from(rounds) * number(texts.len() as u64);
        best = best.min(start.elapsed().as_secs_f64() / texts);
    }
    best
}
