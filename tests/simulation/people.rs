//! The farmers of the valley and their manners: what they text of their own accord, and what they
//! do with a text of ours.

use std::fmt::Write as _;

use chrono::{Days, NaiveDate, TimeDelta};

use super::{chance::Chance, shape::Shape};

/// The groups: name, zone, calendar, market day, first and last day of the rains. The zones have
/// whole and half hours, and some change their clocks.
const GROUPS: [(&str, &str, &str, &str, &str, &str); 8] = [
    ("KOLO", "Asia/Jakarta", "fao", "Sat", "1 Nov", "30 Apr"),
    ("SENA", "Europe/London", "indonesia", "", "1 Oct", "31 May"),
    ("TIRU", "Asia/Kolkata", "india", "Wed", "1 Jun", "31 Oct"),
    (
        "BADE",
        "Asia/Bangkok",
        "thailand",
        "Sun",
        "15 May",
        "31 Oct",
    ),
    (
        "LOMI",
        "Africa/Abidjan",
        "fao",
        "Fri",
        "1 Apr; 1 Sep",
        "15 Jul; 15 Nov",
    ),
    ("VARA", "Asia/Ho_Chi_Minh", "vietnam", "", "1 May", "30 Nov"),
    (
        "NUKE",
        "Asia/Manila",
        "philippines",
        "Mon",
        "1 Jun",
        "30 Nov",
    ),
    ("PELO", "America/Manaus", "fao", "Thu", "1 Nov", "31 May"),
];

/// The advisers, each with every second group.
pub(super) const ADVISERS: [(&str, &str); 2] = [
    ("Mara Tindel", "+447700900900"),
    ("Oren Salk", "+447700900901"),
];

/// How somebody deals with texts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Manner {
    /// Does what the nudge says, and reports it in its word.
    Prompt,
    /// Days later, with "done".
    Slow,
    /// Never answers a nudge.
    Silent,
    /// Wrong numbers, NO, undo, typing errors.
    Sloppy,
    /// Sends everything twice or more.
    Impatient,
    /// STOP and START.
    Moody,
    /// Takes the name out one day.
    Leaver,
}

const MANNERS: [Manner; 7] = [
    Manner::Prompt,
    Manner::Slow,
    Manner::Silent,
    Manner::Sloppy,
    Manner::Impatient,
    Manner::Moody,
    Manner::Leaver,
];

/// A phone and who holds it.
#[derive(Clone, Debug)]
pub(super) struct Phone {
    pub(super) number: String,
    manner: Manner,
    blocks: Vec<&'static str>,
    /// One text of its own accord in so many days.
    quiet: u32,
}

/// Who asks for lists, and for which group.
#[derive(Clone, Debug)]
pub(super) struct Desk {
    pub(super) adviser: &'static str,
    pub(super) group: &'static str,
}

/// Everyone in the valley.
pub(super) struct People {
    pub(super) roll: String,
    pub(super) phones: Vec<Phone>,
    pub(super) desks: Vec<Desk>,
}

/// The list of the valley: groups in several zones, blocks of all ages, some phones shared, some
/// people without consent.
pub(super) fn people(chance: &mut Chance, shape: &Shape, start: NaiveDate) -> People {
    let mut roll = String::from(
        "row,group,name,role,phone,consent_on,consent_how,shown,adviser,zone,calendar,market_day,\
         rains_start,rains_end,block,area,unit,planned_on,planted_on,planted\n",
    );
    let mut add = |row: String| writeln!(roll, "{row}").expect("a string grows");
    let mut desks = Vec::new();
    for (group, adviser) in GROUPS
        .iter()
        .zip(ADVISERS.iter().cycle())
        .take(shape.groups)
    {
        let (name, zone, calendar, market, rains_start, rains_end) = group;
        add(format!(
            "group,{name},,,,,,,{},{zone},{calendar},{market},{rains_start},{rains_end},,,,,,",
            adviser.0
        ));
        desks.push(Desk {
            adviser: adviser.1,
            group: name,
        });
    }
    for (name, number) in ADVISERS {
        add(format!(
            "person,,{name},adviser,{number},{start},contract,,,,,,,,,,,,,"
        ));
    }
    let mut phones: Vec<Phone> = Vec::new();
    for index in 1..=shape.farmers {
        let group = desks[index as usize % desks.len()].group;
        let role = if index % 10 == 0 { "leader" } else { "farmer" };
        let name = name(index);
        // Every tenth shares the phone of the one before.
        let shares = index % 10 == 5;
        let number = format!("+447700900{:03}", if shares { index - 1 } else { index });
        let consent = if index % 9 == 0 {
            ",".to_owned()
        } else {
            format!("{start},signed sheet")
        };
        // Some were shown how branches are made, and some never were.
        let shown = if index % 2 == 0 {
            "branch_induction"
        } else {
            ""
        };
        add(format!(
            "person,{group},{name},{role},{number},{consent},{shown},,,,,,,,,,,,"
        ));
        let blocks = *chance.pick(&[&["A"][..], &["A", "B"], &["A", "Hill"]]);
        for block in blocks {
            let area = 4 + chance.below(16);
            let area = format!("{}.{}", area / 10, area % 10);
            let age = age(chance, start);
            add(format!(
                "block,{group},{name},,,,,,,,,,,,{block},{area},ha,{age}"
            ));
        }
        if !shares {
            phones.push(Phone {
                number,
                manner: *chance.pick(&MANNERS),
                blocks: blocks.to_vec(),
                quiet: shape.quiet,
            });
        }
    }
    People {
        roll,
        phones,
        desks,
    }
}

/// Planned, or planted some years ago.
fn age(chance: &mut Chance, start: NaiveDate) -> String {
    let days = Days::new(u64::from(chance.below(6 * 365)));
    if chance.once_in(3) {
        let planned = start + Days::new(u64::from(chance.below(200)));
        format!("{planned},,")
    } else {
        format!(",{},{}", start - days, 100 + chance.below(300))
    }
}

/// Invented, each different from the others in its first five letters.
fn name(index: u32) -> String {
    let letter = |letters: &str, at: u32| {
        let at = at as usize % letters.len();
        letters.as_bytes()[at] as char
    };
    let (first, second) = (index % 16, index / 16);
    format!(
        "{}{}{}{}n",
        letter("BDFGHJKLMNPRSTVZ", first).to_ascii_uppercase(),
        letter("aeiou", second),
        letter("bdgklmnprstvz", second / 5 + first),
        letter("aeiou", first + second),
    )
}

/// A text, and how long after now it is typed.
pub(super) type Said = (TimeDelta, String);

impl Phone {
    /// What somebody texts on a day without being asked.
    pub(super) fn of_own_accord(&self, chance: &mut Chance) -> Vec<Said> {
        if !chance.once_in(self.quiet) {
            return Vec::new();
        }
        let text = match self.manner {
            Manner::Moody if chance.once_in(4) => {
                (*chance.pick(&["STOP", "START", "stop"])).to_owned()
            }
            Manner::Leaver if chance.once_in(30) => "erase".to_owned(),
            Manner::Slow if chance.once_in(60) => "my mother died".to_owned(),
            Manner::Sloppy if chance.once_in(3) => {
                (*chance.pick(&["no", "undo", "A not B", "B not A", "no 5", "deda 3 A"])).to_owned()
            }
            Manner::Prompt
            | Manner::Slow
            | Manner::Silent
            | Manner::Sloppy
            | Manner::Impatient
            | Manner::Moody
            | Manner::Leaver => self.report(chance),
        };
        let after = chance.minutes(0, 24 * 60);
        let times = if self.manner == Manner::Impatient {
            1 + chance.below(3)
        } else {
            1
        };
        (0..times)
            .map(|time| (after + TimeDelta::minutes(i64::from(time)), text.clone()))
            .collect()
    }

    fn report(&self, chance: &mut Chance) -> String {
        let block = if chance.once_in(5) {
            ""
        } else {
            *chance.pick(&self.blocks)
        };
        let few = 1 + chance.below(6);
        let many = 50 + chance.below(300);
        match chance.below(20) {
            0..=2 => format!("weeded {block}"),
            3 => format!("fed {block} {few} kg npk"),
            4..=5 => format!("dead {few} {block}"),
            6 => format!("planted {many} {block}"),
            7 => format!("filled {few} gaps {block}"),
            8 => format!("pruned {block} yesterday"),
            9 => format!("girth {block} 41 43 39 44"),
            10 => format!("white root {few} trees {block}"),
            11 => "good rain today".to_owned(),
            12 => format!("dug {many} holes {block}"),
            13 => "what now".to_owned(),
            14 => "my data".to_owned(),
            15 => "thanks".to_owned(),
            16 => format!("dead {many} {block}"),
            17 => format!("weeded {block}, dead {few} {block}"),
            18 => "call me".to_owned(),
            _ => "see you on saturday at the market".to_owned(),
        }
    }

    /// What somebody does with a text of ours.
    pub(super) fn answer(&self, text: &str, chance: &mut Chance) -> Option<Said> {
        if let Some((_, code)) = text.rsplit_once("YES ") {
            return Some((chance.minutes(1, 60), format!("yes {code}")));
        }
        if text.contains("1 yes, 2 no") {
            let answer = *chance.pick(&["1", "2", "yes", "no"]);
            return Some((chance.minutes(1, 300), answer.to_owned()));
        }
        if text.contains("For whom?") {
            return Some((
                chance.minutes(1, 300),
                (*chance.pick(&["1", "2"])).to_owned(),
            ));
        }
        if text.starts_with("Which block") {
            let block = *chance.pick(&self.blocks);
            return Some((chance.minutes(1, 300), block.to_owned()));
        }
        if text.starts_with("How many") {
            return Some((chance.minutes(1, 300), (1 + chance.below(20)).to_string()));
        }
        if text.contains("Wrong? Text NO") && self.manner == Manner::Sloppy && chance.once_in(3) {
            let answer = *chance.pick(&["no", "no 4", "undo"]);
            return Some((chance.minutes(1, 600), answer.to_owned()));
        }
        self.answer_to_nudge(text, chance)
    }

    /// A nudge ends in the word to reply.
    fn answer_to_nudge(&self, text: &str, chance: &mut Chance) -> Option<Said> {
        let (_, asked) = text.rsplit_once("Reply ")?;
        let word = asked.split([' ', '.']).next()?.to_lowercase();
        let number = chance.below(8);
        match self.manner {
            Manner::Prompt | Manner::Impatient => {
                let words = [word.clone(), format!("{word} {number}"), "done".to_owned()];
                Some((chance.minutes(10, 2 * 24 * 60), chance.pick(&words).clone()))
            }
            Manner::Slow => {
                let words = ["done", "1", "later", "later 2w"];
                let word = *chance.pick(&words);
                Some((chance.minutes(24 * 60, 12 * 24 * 60), word.to_owned()))
            }
            Manner::Sloppy => Some((chance.minutes(1, 600), format!("{word} {number} 4"))),
            Manner::Moody => chance
                .once_in(4)
                .then(|| (chance.minutes(1, 60), "STOP".to_owned())),
            Manner::Silent | Manner::Leaver => None,
        }
    }
}
