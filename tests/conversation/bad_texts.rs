//! Texts that no person types, or only by mistake: kept as they came, and harmless.

use budwood::play::virtual_clock::Rig;
use chrono::TimeDelta;
use proptest::prelude::{any, prop_assert, prop_assert_eq, proptest};

use super::story::{instant, moment_of};
use crate::fixture::{self, DEMO_ROLL, LastingStore};

fn bad_texts() -> Vec<String> {
    let digits = "7".repeat(1_000_000);
    [
        "",
        " ",
        "\n\n\n",
        "\u{0}",
        "\u{7}\u{8}\u{1b}[2J",
        "\u{1f333}\u{1f333}\u{1f44d}\u{1f3fd}",
        "\u{202e}B 21 detnalp\u{202c}",
        "dead \u{200f}8\u{200f} B",
        "\u{feff}dead 8 B",
        "e\u{301}\u{301}\u{301}\u{301} 8",
        "\u{10ffff}",
        "dead -8 B",
        "dead 99999999999999999999 B",
        "dead 8.5.5.5 B",
        "dead 1e400 B",
        "planted NaN B",
        "8 8 8 8 8 8 8 8",
        "no no no no",
        "::::::",
        "(((((((((((((((((((((",
        "'; DROP TABLE blocks; --",
        "{ $name }",
        "%s%s%n",
    ]
    .map(str::to_owned)
    .into_iter()
    .chain([
        digits,
        format!("dead {} B", "9".repeat(400)),
        "dead 8 B ".repeat(1_200),
        "a".repeat(10_240),
        "\u{301}".repeat(5_000),
    ])
    .collect()
}

#[test]
fn bad_texts_are_kept_as_they_came_and_do_no_harm() {
    let start = instant(moment_of("2026-12-20 10:00"));
    let mut rig = Rig::open(fixture::setup(), Box::new(LastingStore::default()), start)
        .expect("an empty store");
    rig.load_roll(DEMO_ROLL).expect("a list without faults");
    let reports = |rig: &Rig| {
        fixture::events(rig.engine().store())
            .into_iter()
            .filter(|event| event.message.is_some())
            .count()
    };
    let texts = bad_texts();
    for (index, text) in texts.iter().enumerate() {
        // Each from another phone of the list, so that no guard of a conversation hides it.
        let from = format!("+447700900{:03}", index % 14 + 1);
        for answer in rig.text(&from, text).expect("memory does not fail") {
            fixture::assert_one_sms(&answer.text.text);
        }
        rig.run_until(rig.now() + TimeDelta::minutes(20))
            .expect("memory does not fail");
    }
    let kept: Vec<String> = fixture::received(rig.engine().store())
        .into_iter()
        .map(|received| received.text)
        .collect();
    assert!(kept == texts, "every text is kept as it came");
    // The report between marks of direction and the one after a byte order mark may count.
    let reported = reports(&rig);
    assert!(
        reported <= 2,
        "{reported} facts from texts that say nothing"
    );
}

proptest! {
    /// Whatever comes, from whomever: no panic, kept as it came, and an answer is one SMS.
    #[test]
    fn any_text_from_anyone_is_kept(text in any::<String>(), from in "[+a-zA-Z0-9]{0,14}") {
        let start = instant(moment_of("2026-12-20 10:00"));
        let mut rig = Rig::open(fixture::setup(), Box::new(LastingStore::default()), start).unwrap();
        rig.load_roll(KETI_ALONE.as_bytes()).unwrap();
        for from in ["+447700900005", &from] {
            for answer in rig.text(from, &text).unwrap() {
                prop_assert_eq!(budwood::words::sms::measure(&answer.text.text).parts, 1);
            }
        }
        let kept = fixture::received(rig.engine().store());
        prop_assert_eq!(kept.len(), 2);
        prop_assert!(kept.iter().all(|received| received.text == text));
    }
}

const KETI_ALONE: &str = "\
row,group,name,role,phone,consent_on,consent_how,adviser,zone,calendar,block,area,unit
group,KOLO,,,,,,Mara Tindel,Asia/Jakarta,fao,,,
person,,Mara Tindel,adviser,+447700900100,2026-09-01,contract,,,,,,
person,KOLO,Keti Olm,farmer,+447700900005,2026-09-12,text START,,,,,,
block,KOLO,Keti Olm,,,,,,,,A,1.1,ha
";
