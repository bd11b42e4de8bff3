//! The first text to a new phone is a welcome; so many a day, and nothing before it.

use std::{
    collections::{BTreeMap, BTreeSet},
    fmt::Write as _,
    sync::Arc,
};

use budwood::{
    play::virtual_clock::{Arrived, Rig},
    service::setup,
    store::MemoryStore,
    words::message::Purpose,
};
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};

use crate::fixture::assert_one_sms;

const ADVISER: &str = "+447700900999";
const LANGUAGES: [&str; 6] = ["en", "fr", "id", "vi", "th", "pt"];

/// Farmers with stands of two years, of which only planting and a count are known (invented).
fn roll(farmers: u32) -> String {
    let mut roll = format!(
        "row,group,name,role,phone,language,consent_on,consent_how,adviser,zone,calendar,\
         rains_start,rains_end,block,area,unit,planted_on,planted,alive,counted_on\n\
         group,KOLO,,,,,,,Mara Tindel,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,,,\n\
         person,,Mara Tindel,adviser,{ADVISER},en,2026-09-01,contract,,,,,,,,,,,,\n"
    );
    for (number, language) in (0..farmers).zip(LANGUAGES.iter().cycle()) {
        let name = name(number);
        writeln!(
            roll,
            "person,KOLO,{name},farmer,+447700900{number:03},{language},2026-09-05,signed sheet,\
             ,,,,,,,,,,,"
        )
        .unwrap();
        writeln!(
            roll,
            "block,KOLO,{name},,,,,,,,,,,A,1,ha,2024-11,480,457,2026-03-15"
        )
        .unwrap();
    }
    roll
}

/// A name of its own for each, without digits.
fn name(number: u32) -> String {
    const PARTS: [&str; 8] = ["ba", "do", "fe", "gu", "ki", "lo", "me", "nu"];
    let part = |at: u32| PARTS[(number / 8_u32.pow(at)) as usize % 8];
    format!("Ja{}{}{} Ro{}", part(0), part(1), part(2), part(1))
}

fn open(farmers: u32, rig_day: &str, welcomes_a_day: Option<u32>) -> Rig {
    let mut setup = setup::built_in(0).unwrap();
    if let Some(welcomes) = welcomes_a_day {
        setup.rules.welcomes_a_day = welcomes;
    }
    let now: DateTime<Utc> = format!("{rig_day}T03:00:00Z").parse().unwrap();
    let mut rig = Rig::open(Arc::new(setup), Box::new(MemoryStore::new()), now).unwrap();
    rig.load_roll(roll(farmers).as_bytes()).unwrap();
    rig
}

fn purpose(rig: &Rig, arrived: &Arrived) -> Purpose {
    let outbound = rig.engine().outbound(arrived.text.id);
    outbound.expect("a text of these days").purpose.clone()
}

fn ask(rig: &mut Rig, question: &str) -> String {
    let answers = rig.text(ADVISER, question).unwrap();
    answers[0].text.text.clone()
}

/// Five hundred farmers are taken in on one day: their phones are welcomed over days, nobody is
/// nudged before that, and the adviser is not told that all of them are late or silent.
#[test]
fn five_hundred_farmers_are_welcomed_over_days() {
    let mut rig = open(500, "2026-11-30", None);
    let mut welcomed: BTreeMap<String, NaiveDate> = BTreeMap::new();
    let mut by_day: BTreeMap<NaiveDate, usize> = BTreeMap::new();
    for day in 0..14 {
        let status = ask(&mut rig, "STATUS KOLO");
        assert!(status.contains("500"), "{status}");
        let late = ask(&mut rig, "LATE KOLO");
        assert!(late.starts_with("None late"), "day {day}: {late}");
        let quiet = ask(&mut rig, "QUIET KOLO");
        assert!(!quiet.contains("Ja"), "day {day}: {quiet}");
        let end = rig.now() + TimeDelta::days(1);
        for arrived in rig.run_until(end).unwrap() {
            let (to, on) = (arrived.text.to.clone(), arrived.at.date_naive());
            match purpose(&rig, &arrived) {
                Purpose::Welcome { .. } => {
                    assert!(welcomed.insert(to, on).is_none(), "welcomed twice");
                    *by_day.entry(on).or_default() += 1;
                }
                Purpose::Nudge { .. } => {
                    assert!(welcomed[&to] < on, "a nudge on the day of the welcome");
                }
                Purpose::Answer { .. }
                | Purpose::Notice { .. }
                | Purpose::Announcement { .. }
                | Purpose::Service { .. } => {}
            }
        }
    }
    assert_eq!(welcomed.len(), 500, "{by_day:?}");
    assert_eq!(by_day.len(), 10);
    assert!(
        by_day.values().all(|welcomes| *welcomes == 50),
        "{by_day:?}"
    );
}

/// It tells who writes, who stands behind it, how to get another language and how to end it, and
/// no figure of anybody's trees.
#[test]
fn a_welcome_says_who_we_are_and_how_to_end_it_in_every_language() {
    let mut rig = open(6, "2026-11-30", None);
    let end = rig.now() + TimeDelta::days(1);
    let said: BTreeSet<String> = rig
        .run_until(end)
        .unwrap()
        .into_iter()
        .map(|arrived| arrived.text.text)
        .collect();
    assert_eq!(said.len(), 6, "{said:?}");
    for text in &said {
        assert_one_sms(text);
        assert!(text.contains("Budwood") && text.contains("Mara"), "{text}");
        assert!(!text.contains(|char: char| char.is_ascii_digit()), "{text}");
    }
    for words in [
        ["LANGUAGE", "STOP"],
        ["LANGUE", "STOP"],
        ["BAHASA", "BERHENTI"],
        ["NGON NGU", "STOP"],
        ["ภาษา", "หยุด"],
        ["IDIOMA", "PARAR"],
    ] {
        let has = |text: &&String| words.iter().all(|word| text.contains(word));
        let bare = said
            .iter()
            .map(|text| text.replace('Ô', "O").replace('Ữ', "U"));
        let bare: Vec<String> = bare.collect();
        assert_eq!(bare.iter().filter(has).count(), 1, "{words:?}: {said:?}");
    }
}

/// Who texts first knows us: they get their answer and no welcome.
#[test]
fn a_phone_that_texts_first_is_not_welcomed() {
    let mut rig = open(1, "2026-11-30", None);
    rig.text("+447700900000", "weeded A").unwrap();
    let end = rig.now() + TimeDelta::days(30);
    let arrived = rig.run_until(end).unwrap();
    assert!(!arrived.is_empty());
    for arrived in arrived {
        assert!(!arrived.text.text.contains("Budwood"), "{arrived:?}");
    }
}
