//! Every text of a known phone is stored, asked about, answered, or told to a person. Silence is for
//! thanks, greetings, adverts, echoes, and talk without a word of work or need.

use budwood::{play::virtual_clock::Rig, words::traffic::Inbound};
use budwood_parser::{Bare, Doubt, Known, Reading, Report, Sender, Stance};
use chrono::TimeDelta;
use proptest::{
    prelude::{Strategy, prop_assert, proptest},
    sample::select,
};

use super::story::{instant, moment_of};
use crate::fixture::{self, DEMO_ROLL, LastingStore};

/// Ruma has the blocks A and Hill.
const RUMA: &str = "+447700900004";
const BLOCKS: [&str; 2] = ["A", "Hill"];

/// Words of work, of need, of every day, and of none.
const WORDS: [&str; 66] = [
    "planted", "dead", "died", "weeded", "fed", "sick", "fire", "burnt", "snake", "bit", "help",
    "trees", "leaves", "yellow", "all", "half", "20", "4", "120", "A", "hil", "Hill", "both",
    "blocks", "B", "my", "son", "father", "keti", "is", "phone", "lost", "new", "number", "please",
    "stop", "no", "yes", "ok", "k", "will", "tomorrow", "what", "do", "i", "when", "market",
    "thanks", "good", "morning", "money", "not", "come", "plants", "rain", "crop", "root", "rot",
    "zzkq", "?", "fyre", "fier", "fone", "leg", "wife", "sik",
];

/// What must never be met with silence, whatever stands around it.
const NEEDS: [&str; 12] = [
    "fire in the farm now",
    "snake bit my son",
    "my leaves are yellow",
    "all my trees died",
    "20 more dead",
    "half of my trees died",
    "keti is dead",
    "i lost my phone",
    "this is my new number",
    "please stop",
    "yes white threads",
    "trees not branching what do i do",
];

fn rig() -> Rig {
    let start = instant(moment_of("2026-12-20 10:00"));
    let store = Box::new(LastingStore::default());
    let mut rig = Rig::open(fixture::setup(), store, start).expect("an empty store");
    rig.load_roll(DEMO_ROLL).expect("a list without faults");
    rig.text(RUMA, "planted 300 A").expect("a store");
    let later = rig.now() + TimeDelta::hours(1);
    rig.run_until(later).expect("a store");
    rig
}

/// Whether Ruma got an answer.
fn is_answered(rig: &mut Rig, text: &str) -> bool {
    let inbound = Inbound {
        gateway: fixture::LINE.to_owned(),
        gateway_id: None,
        from: RUMA.to_owned(),
        to: "12345".to_owned(),
        text: text.to_owned(),
        sent_at: None,
    };
    let (_, arrived) = rig.inbound(inbound).expect("a store");
    arrived.iter().any(|one| one.text.to == RUMA)
}

fn reading(text: &str) -> Reading {
    let known = Known {
        languages: &["en"],
        blocks: &BLOCKS,
        groups: &[],
        members: &[],
        rolls: &[],
        sender: Sender::Farmer,
    };
    fixture::setup().reader.read(text, &known)
}

/// Thanks, greetings, adverts, sayings; a yes where nothing is asked; no word of work or need.
fn may_be_silent(text: &str) -> bool {
    let reading = reading(text);
    let idle = [Stance::Courtesy, Stance::Advert, Stance::Saying];
    let is_idle = idle.iter().any(|stance| reading.stances.contains(stance));
    // What is only like other texts is no word of work, and in another setting not even that.
    let is_said = |report: &Report| !report.doubts.contains(&Doubt::Likeness);
    let says = reading.reports.iter().any(is_said)
        || reading.about_work
        || reading.may_need
        || reading.alarm.is_some();
    let yes_or_no = reading.acts.iter().any(|act| {
        use budwood_parser::Act;
        matches!(act, Act::Yes | Act::No)
    });
    let is_one = reading.bare == Some(Bare::Number(1.0));
    let asks = reading
        .acts
        .iter()
        .any(|act| !matches!(act, budwood_parser::Act::Yes | budwood_parser::Act::No));
    !asks && (is_idle || yes_or_no || is_one || (!says && reading.bare.is_none()))
}

#[test]
fn a_need_is_never_met_with_silence() {
    for need in NEEDS {
        let mut rig = rig();
        assert!(is_answered(&mut rig, need), "{need}");
    }
}

/// The same text again and again goes to a person in the end, and silence comes only then.
#[test]
fn the_same_answer_a_third_time_goes_to_a_person() {
    let mut rig = rig();
    for _ in 0..3 {
        assert!(is_answered(&mut rig, "who is this"));
        let later = rig.now() + TimeDelta::minutes(5);
        rig.run_until(later).expect("a store");
    }
    let waiting = rig.text("+447700900100", "waiting").expect("a store");
    let list = &waiting.first().expect("an answer").text.text;
    assert!(list.contains("Ruma"), "{list}");
}

fn texts() -> impl Strategy<Value = String> {
    proptest::collection::vec(select(&WORDS[..]), 1..6).prop_map(|words| words.join(" "))
}

proptest! {
    #[test]
    fn every_text_of_a_known_phone_leads_to_an_allowed_end(text in texts()) {
        let mut rig = rig();
        // A block's name with a letter wrong is read as the name.
        let mended = text.replace("hil", "Hill");
        prop_assert!(is_answered(&mut rig, &text) || may_be_silent(&mended), "{text}");
    }
}
