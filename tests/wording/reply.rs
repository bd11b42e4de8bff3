//! Each word that a text asks for is read as what it is asked for, in the language of the text.
//!
//! Languages that the reader does not know yet are left out.

use budwood::{wording::Key, words::sms};
use budwood_parser::{Act, Ailment, Kind, Known, Reading, Sender, Topic, Wetness};

use super::{
    asking::{ASKING, Reply},
    source,
    speech::{ALL, Speech},
};
use crate::fixture;

/// A group of the adviser's.
const GROUP: &str = "KOLO";

#[test]
fn the_texts_name_the_words_to_reply_with() {
    for (speech, texts) in spoken() {
        for (key, reply) in ASKING {
            let text = texts.get(key).expect(key);
            let word = word(speech, reply);
            assert!(
                text.to_lowercase().contains(&word.to_lowercase()),
                "{}: {key} does not name {word}: {text}",
                speech.code
            );
        }
    }
}

#[test]
fn words_to_reply_with_are_read_as_such() {
    let reader = &fixture::setup().reader;
    let mut misread = Vec::new();
    for speech in ALL {
        if !reader.languages().any(|code| code == speech.code) {
            continue;
        }
        for (reply, word) in in_all_forms(speech) {
            let known = Known {
                languages: &[speech.code],
                blocks: &["A"],
                groups: &[GROUP],
                members: &["Tamo"],
                rolls: &[],
                sender: if is_advisers(reply) {
                    Sender::Adviser
                } else {
                    Sender::Farmer
                },
            };
            let text = example(reply, &word);
            let reading = reader.read(&text, &known);
            if !is_read(reply, &reading) {
                let code = speech.code;
                misread.push(format!("{code}: {text} is no {reply:?}: {reading:?}"));
            }
        }
    }
    assert!(misread.is_empty(), "{}", misread.join("\n"));
}

/// The packs were mended by these, so they hold what is reached and measure nothing. From memory.
#[test]
fn whom_to_visit_is_asked_for_in_many_words() {
    let reader = &fixture::setup().reader;
    let asked = [
        ("en", "who should I visit first?"),
        ("en", "visit today"),
        ("en", "visits KOLO"),
        ("en", "where should i go"),
        ("fr", "qui dois-je visiter"),
        ("fr", "visite demain"),
        ("id", "siapa yang dikunjungi"),
        ("pt", "quem devo visitar"),
        ("th", "เยี่ยมใครก่อน"),
        ("vi", "nen tham ai"),
    ];
    let plans = [
        ("en", "I will visit Tamo tomorrow"),
        ("en", "visit my mother"),
    ];
    let is_asked = |(code, text): &(&str, &str)| {
        let known = Known {
            languages: &[*code],
            blocks: &[],
            groups: &[GROUP],
            members: &["Tamo"],
            rolls: &[],
            sender: Sender::Adviser,
        };
        is_read(Reply::Visit, &reader.read(text, &known))
    };
    let missed: Vec<_> = asked.iter().filter(|text| !is_asked(text)).collect();
    let heard: Vec<_> = plans.iter().filter(|text| is_asked(text)).collect();
    assert!(
        missed.is_empty() && heard.is_empty(),
        "{missed:?} {heard:?}"
    );
}

/// "Siang" is the greeting of midday and the bare stem of "to weed" in Indonesian.
#[test]
fn a_greeting_is_no_report() {
    let reader = &fixture::setup().reader;
    for (code, text) in [
        ("en", "good morning"),
        ("fr", "bonjour"),
        ("id", "siang"),
        ("id", "Siang bu"),
        ("id", "selamat siang pak"),
        ("pt", "bom dia"),
        ("th", "สวัสดี"),
        ("vi", "chao"),
    ] {
        let known = Known {
            languages: &[code],
            blocks: &["A"],
            groups: &[],
            members: &[],
            rolls: &[],
            sender: Sender::Farmer,
        };
        let reading = reader.read(text, &known);
        assert!(reading.reports.is_empty(), "{text}: {reading:?}");
    }
}

/// A warning asks for the name of the sickness and a number, and so a farmer answers. One without
/// a name gathers in no cluster.
#[test]
fn the_name_of_a_sickness_reports_it() {
    let setup = fixture::setup();
    let mut misread = Vec::new();
    for speech in ALL {
        let tongue = setup.texts.tongue(&[speech.code]);
        let known = Known {
            languages: &[speech.code],
            blocks: &["A"],
            groups: &[],
            members: &[],
            rolls: &[],
            sender: Sender::Farmer,
        };
        for ailment in Ailment::ALL.iter().filter(|one| **one != Ailment::Other) {
            let name = tongue.say(Key::Ailment(*ailment), Vec::new());
            for text in [
                format!("{name} 3"),
                format!("{} 0", sms::bare(&name).to_uppercase()),
            ] {
                let reading = setup.reader.read(&text, &known);
                let told = reading.reports.first().map(|report| &report.details);
                if told.and_then(|details| details.ailment) != Some(*ailment) {
                    misread.push(format!("{}: {text}: {reading:?}", speech.code));
                }
            }
        }
    }
    assert!(misread.is_empty(), "{}", misread.join("\n"));
}

/// Who is texted in one language may know only the STOP of another.
#[test]
fn stop_is_heard_on_a_phone_of_any_language() {
    let reader = &fixture::setup().reader;
    let mut unheard = Vec::new();
    for phone in reader.languages() {
        for speech in ALL {
            let known = Known {
                languages: &[phone],
                blocks: &["A"],
                groups: &[],
                members: &[],
                rolls: &[],
                sender: Sender::Farmer,
            };
            let stop = word(speech, Reply::Stop);
            if !is_read(Reply::Stop, &reader.read(stop, &known)) {
                unheard.push(format!("{stop} on a phone of {phone}"));
            }
        }
    }
    assert!(unheard.is_empty(), "{}", unheard.join(", "));
}

/// The example that farmers are given can be sent as it stands.
#[test]
fn the_example_is_a_report() {
    let setup = fixture::setup();
    for speech in ALL {
        if !setup.reader.languages().any(|code| code == speech.code) {
            continue;
        }
        let tongue = setup.texts.tongue(&[speech.code]);
        let text = tongue.say(Key::Example, budwood::args! { "block" => "A" });
        let known = Known {
            languages: &[speech.code],
            blocks: &["A"],
            groups: &[],
            members: &[],
            rolls: &[],
            sender: Sender::Farmer,
        };
        let reading = setup.reader.read(&text, &known);
        let told = reading.reports.first().map(|report| {
            let block = report.block.as_deref();
            (report.kind, report.details.count, block)
        });
        assert_eq!(told, Some((Kind::Dead, Some(8), Some("A"))), "{text}");
    }
}

/// Each language with its texts.
pub(super) fn spoken() -> Vec<(&'static Speech, std::collections::BTreeMap<String, String>)> {
    source::files()
        .into_iter()
        .map(|(language, file)| {
            let speech = ALL.into_iter().find(|speech| speech.code == language);
            let speech = speech.unwrap_or_else(|| panic!("nothing is checked of {language}"));
            (speech, source::texts(&file))
        })
        .collect()
}

/// The words as written, and as they are sent where marks do not fit.
fn in_all_forms(speech: &Speech) -> Vec<(Reply, String)> {
    let words = speech.words.iter();
    let bare = words.clone().map(|(reply, word)| (*reply, sms::bare(word)));
    let mut all: Vec<(Reply, String)> = words
        .map(|(reply, word)| (*reply, (*word).to_owned()))
        .collect();
    all.extend(bare.filter(|(_, word)| speech.words.iter().all(|(_, own)| own != word)));
    all
}

pub(super) fn word(speech: &Speech, reply: Reply) -> &'static str {
    let found = speech.words.iter().find(|(one, _)| *one == reply);
    found
        .unwrap_or_else(|| panic!("{} has no word for {reply:?}", speech.code))
        .1
}

fn is_advisers(reply: Reply) -> bool {
    matches!(
        reply,
        Reply::Status
            | Reply::Late
            | Reply::Quiet
            | Reply::Gaps
            | Reply::Sick
            | Reply::Visit
            | Reply::Window
            | Reply::Warn
            | Reply::Hold
            | Reply::NextText
            | Reply::Waiting
            | Reply::GoOn
            | Reply::Lost
            | Reply::Found
            | Reply::Moved
            | Reply::Kept
            | Reply::Tell
            | Reply::Trained
            | Reply::Paid
            | Reply::Buying
            | Reply::PickUp
            | Reply::Stock
            | Reply::Owner
            | Reply::Divide
            | Reply::Join
            | Reply::Leave
            | Reply::Contact
    )
}

fn example(reply: Reply, word: &str) -> String {
    match reply {
        Reply::Pits
        | Reply::Planted
        | Reply::Dead
        | Reply::Filled
        | Reply::Induced
        | Reply::Branched
        | Reply::NotBranched
        | Reply::Root
        | Reply::LeafFall
        | Reply::LeafSpot => format!("{word} 12"),
        Reply::Girth => format!("{word} 41 43 39"),
        Reply::Language => format!("{word} en"),
        Reply::Status
        | Reply::Late
        | Reply::Gaps
        | Reply::Sick
        | Reply::Window
        | Reply::Hold
        | Reply::Trained
        | Reply::Paid
        | Reply::Buying
        | Reply::Stock
        | Reply::Join
        | Reply::Warn => {
            format!("{word} {GROUP}")
        }
        Reply::No
        | Reply::Yes
        | Reply::Stop
        | Reply::Start
        | Reply::Help
        | Reply::Done
        | Reply::Erase
        | Reply::CallMe
        | Reply::Next
        | Reply::Weeded
        | Reply::Fed
        | Reply::Pruned
        | Reply::Crop
        | Reply::RainYes
        | Reply::RainNo
        | Reply::Quiet
        | Reply::NextText
        | Reply::Waiting
        | Reply::More
        | Reply::How
        | Reply::PickUp
        | Reply::ShareYes
        | Reply::ShareNo
        | Reply::Visit => word.to_owned(),
        Reply::GoOn
        | Reply::Lost
        | Reply::Found
        | Reply::Owner
        | Reply::Divide
        | Reply::Leave
        | Reply::Contact => format!("{word} Tamo"),
        Reply::Moved => format!("{word} Tamo 07700 900555"),
        Reply::Kept => format!("{word} 41"),
        Reply::Tell => format!("{word} Tamo see you soon"),
    }
}

#[expect(clippy::too_many_lines, reason = "an arm for each word")]
fn is_read(reply: Reply, reading: &Reading) -> bool {
    let act = |wanted: Act| reading.acts == [wanted];
    let asks = |wanted: Topic| matches!(reading.acts.as_slice(), [Act::Query(query)] if query.topic == wanted);
    let decides = |wanted: Topic, yes: bool| matches!(reading.acts.as_slice(), [Act::Query(query)] if query.topic == wanted && query.yes == Some(yes));
    let tells = |kind: Kind| match reading.reports.as_slice() {
        [only] => only.kind == kind && reading.stances.is_empty() && only.doubts.is_empty(),
        _ => false,
    };
    let counts = |kind: Kind| {
        let first = reading.reports.first();
        tells(kind) && first.is_some_and(|report| report.details.count == Some(12))
    };
    let sick = |wanted: Ailment| {
        let first = reading.reports.first();
        let ailment = first.and_then(|report| report.details.ailment);
        counts(Kind::Disease) && ailment == Some(wanted)
    };
    let rains = |wetness: Wetness| {
        let first = reading.reports.first();
        tells(Kind::Rain) && first.is_some_and(|report| report.details.wetness == Some(wetness))
    };
    match reply {
        Reply::No => act(Act::No),
        Reply::Yes => act(Act::Yes),
        Reply::Stop => act(Act::Stop),
        Reply::Start => act(Act::Start),
        Reply::Help => act(Act::Help),
        Reply::Done => act(Act::Done),
        Reply::Erase => asks(Topic::Erase),
        Reply::CallMe => asks(Topic::CallMe),
        Reply::Next => asks(Topic::Next),
        Reply::Language => asks(Topic::Language),
        Reply::Pits => counts(Kind::HolesDug),
        Reply::Planted => counts(Kind::Planted),
        Reply::Dead => counts(Kind::Dead),
        Reply::Filled => counts(Kind::Replaced),
        Reply::Weeded => tells(Kind::Weeded),
        Reply::Fed => tells(Kind::Fertilised),
        Reply::Pruned => tells(Kind::Pruned),
        Reply::Induced => counts(Kind::BranchInduction),
        Reply::Branched => counts(Kind::Branched),
        Reply::NotBranched => counts(Kind::NotBranched),
        Reply::Root => sick(Ailment::WhiteRoot),
        Reply::LeafFall => sick(Ailment::LeafFall),
        Reply::LeafSpot => sick(Ailment::LeafSpot),
        Reply::Crop => tells(Kind::IntercropSown),
        Reply::RainYes => rains(Wetness::Soaked),
        Reply::RainNo => rains(Wetness::None),
        Reply::Girth => {
            let first = reading.reports.first();
            tells(Kind::Girth) && first.is_some_and(|report| report.details.values_cm.len() == 3)
        }
        Reply::Status => asks(Topic::Status),
        Reply::Late => asks(Topic::Late),
        Reply::Quiet => asks(Topic::Quiet),
        Reply::Gaps => asks(Topic::Gaps),
        Reply::Sick => asks(Topic::Sick),
        Reply::Visit => asks(Topic::Visit),
        Reply::Window => asks(Topic::Window),
        Reply::Warn => asks(Topic::Warn),
        Reply::Hold => asks(Topic::Hold),
        Reply::NextText => asks(Topic::Next),
        Reply::Waiting => asks(Topic::Waiting),
        Reply::GoOn => asks(Topic::GoOn),
        Reply::Lost => asks(Topic::Lost),
        Reply::Found => asks(Topic::Found),
        Reply::Moved => asks(Topic::Moved),
        Reply::Kept => asks(Topic::Kept),
        Reply::Tell => asks(Topic::Tell),
        Reply::Trained => asks(Topic::Trained),
        Reply::Paid => asks(Topic::Paid),
        Reply::Buying => asks(Topic::Buying),
        Reply::Stock => asks(Topic::Stock),
        Reply::More => asks(Topic::More),
        Reply::How => asks(Topic::HowTo),
        Reply::PickUp => asks(Topic::PickUp),
        Reply::Owner => asks(Topic::Owner),
        Reply::Divide => asks(Topic::Divide),
        Reply::Join => asks(Topic::Join),
        Reply::Leave => asks(Topic::Leave),
        Reply::Contact => asks(Topic::Contact),
        Reply::ShareYes => decides(Topic::Share, true),
        Reply::ShareNo => decides(Topic::Share, false),
    }
}
