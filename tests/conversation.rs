//! Dialogs as people read them: a day, what they sent, what we answered.
//!
//! Each file in `conversations/` is one story. What a file says:
//!
//! - `people Tamo, Mara`: these of the demo's list, with their blocks; or rows of a list of its
//!   own. With neither, the whole list of the demo.
//! - `== 2026-12-20 10:00`: time passes until then, local to the group (the first one begins).
//! - `Tamo: dead 8 B`: a text. After the name may stand `(id 7)`, the gateway's id; `(sent
//!   2026-12-19 20:00)`, when it was sent; `(at once)`, no time passes before it. Otherwise three
//!   minutes pass, as typing takes. A number or a word may stand for the name.
//! - `? Tamo B`: how a block stands.
//! - Lines with an indent are ours, and are compared. `BUDWOOD_UPDATE=1 cargo test -p budwood
//!   conversation` writes them anew; read the difference before you keep it.
//!
//! A code stands as `CODE` in what we say, and `CODE` in a text is the last one, `WRONGCODE` is
//! not.

use std::{env, fmt::Write as _, fs, path::Path};

use budwood::{
    gateway::Inbound,
    rig::{Arrived, Rig},
};
use budwood_scheduler::{Block, Directory, Person};
use chrono::{DateTime, NaiveDateTime, TimeDelta, TimeZone, Utc};
use chrono_tz::{Asia::Jakarta, Tz};
use proptest::prelude::{any, prop_assert, prop_assert_eq, proptest};

use crate::sim::{self, DEMO_ROLL, LastingStore};

/// Where the invented valley lies.
const ZONE: Tz = Jakarta;
const TYPING: TimeDelta = TimeDelta::minutes(3);
const INDENT: &str = "    ";

/// One line of a story.
enum Line<'a> {
    /// A comment, an empty line.
    Comment,
    /// Whom the story is about, of the demo's list.
    People(&'a str),
    /// A row of the list.
    Row(&'a str),
    /// Time passes.
    At(NaiveDateTime),
    /// A text comes in.
    Text(Text<'a>),
    /// How does a block stand?
    Ask { who: &'a str, block: &'a str },
}

struct Text<'a> {
    who: &'a str,
    options: Vec<&'a str>,
    text: &'a str,
}

/// Plays a story and compares our side of it.
#[track_caller]
fn check(name: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../tests/conversations")
        .join(name)
        .with_extension("txt");
    let story = fs::read_to_string(&path).expect("a story");
    let played = play(&story);
    if env::var_os("BUDWOOD_UPDATE").is_some() {
        fs::write(&path, &played).expect("the story can be written");
        return;
    }
    let difference = story
        .lines()
        .zip(played.lines())
        .position(|(told, played)| told != played)
        .or((story != played).then(|| story.lines().count().min(played.lines().count())));
    if let Some(line) = difference {
        let at = |text: &str| text.lines().nth(line).unwrap_or("(nothing)").to_owned();
        let (told, now) = (at(&story), at(&played));
        assert_eq!(told, now, "{name}.txt, line {}", line + 1);
    }
}

fn lines(story: &str) -> Vec<(&str, Line<'_>)> {
    let ours = |line: &&str| !line.starts_with(INDENT);
    story
        .lines()
        .filter(ours)
        .map(|line| (line, parse(line)))
        .collect()
}

fn parse(line: &str) -> Line<'_> {
    if line.is_empty() || line.starts_with('#') {
        return Line::Comment;
    }
    if ["row,", "group,", "person,", "block,"]
        .iter()
        .any(|row| line.starts_with(row))
    {
        return Line::Row(line);
    }
    if let Some(names) = line.strip_prefix("people ") {
        return Line::People(names);
    }
    if let Some(moment) = line.strip_prefix("== ") {
        return Line::At(moment_of(moment));
    }
    if let Some((who, block)) = line
        .strip_prefix("? ")
        .and_then(|asked| asked.rsplit_once(' '))
    {
        return Line::Ask { who, block };
    }
    let mut options = Vec::new();
    let (mut who, text) = line
        .split_once(':')
        .filter(|(who, _)| !who.contains('('))
        .unwrap_or_else(|| line.split_once("):").expect("a name, a colon, a text"));
    if let Some((name, said)) = who.split_once(" (") {
        who = name;
        options = said.trim_end_matches(')').split(", ").collect();
    }
    Line::Text(Text {
        who,
        options,
        text: text.strip_prefix(' ').unwrap_or(text),
    })
}

fn moment_of(text: &str) -> NaiveDateTime {
    NaiveDateTime::parse_from_str(text, "%Y-%m-%d %H:%M").expect("a moment")
}

fn instant(local: NaiveDateTime) -> DateTime<Utc> {
    ZONE.from_local_datetime(&local)
        .single()
        .expect("a zone without clock changes")
        .to_utc()
}

fn play(story: &str) -> String {
    let lines = lines(story);
    let mut rows = String::new();
    let mut start = None;
    for (_, line) in &lines {
        match line {
            Line::Row(row) => {
                rows.push_str(row);
                rows.push('\n');
            }
            Line::People(names) => rows = excerpt(names),
            Line::At(moment) => start = start.or(Some(*moment)),
            Line::Comment | Line::Text(_) | Line::Ask { .. } => {}
        }
    }
    let start = instant(start.expect("a first day"));
    let store = LastingStore::default();
    let mut rig = Rig::open(sim::setup(), Box::new(store), start).expect("an empty store");
    let roll = if rows.is_empty() {
        DEMO_ROLL
    } else {
        rows.as_bytes()
    };
    rig.load_roll(roll).expect("a list without faults");
    let mut stage = Stage {
        rig,
        code: String::new(),
        out: String::new(),
    };
    for (line, parsed) in &lines {
        writeln!(stage.out, "{line}").expect("a string grows");
        stage.act(parsed);
    }
    stage.out
}

/// The rows of the demo's list about these people and their group.
fn excerpt(names: &str) -> String {
    let names: Vec<&str> = names.split(", ").collect();
    let demo = str::from_utf8(DEMO_ROLL).expect("a list in UTF-8");
    let mut rows = String::new();
    for row in demo.lines() {
        let mut cells = row.split(',');
        let kind = cells.next();
        let called = cells.nth(1).and_then(|name| name.split(' ').next());
        let is_asked = called.is_some_and(|name| names.contains(&name));
        if matches!(kind, Some("row" | "group")) || is_asked {
            rows.push_str(row);
            rows.push('\n');
        }
    }
    rows
}

/// The engine, and what has been written so far.
struct Stage {
    rig: Rig,
    code: String,
    out: String,
}

impl Stage {
    fn act(&mut self, line: &Line<'_>) {
        match line {
            Line::Comment | Line::People(_) | Line::Row(_) => {}
            Line::At(moment) => self.pass(instant(*moment)),
            Line::Text(text) => self.text(text),
            Line::Ask { who, block } => self.stand(who, block),
        }
    }

    fn pass(&mut self, end: DateTime<Utc>) {
        let arrived = self.rig.run_until(end).expect("memory does not fail");
        for one in arrived {
            let at = one.at.with_timezone(&ZONE).format("%a %-d %b %Y %H:%M ");
            self.show(&one, &at.to_string());
        }
    }

    fn text(&mut self, text: &Text<'_>) {
        if !text.options.contains(&"at once") {
            self.pass(self.rig.now() + TYPING);
        }
        let option = |name: &str| text.options.iter().find_map(|one| one.strip_prefix(name));
        let said = text
            .text
            .replace("WRONGCODE", "0000")
            .replace("CODE", &self.code);
        let inbound = Inbound {
            gateway: "handset".to_owned(),
            gateway_id: option("id ").map(str::to_owned),
            from: number_of(self.rig.engine().directory(), text.who),
            to: "12345".to_owned(),
            text: said,
            sent_at: option("sent ").map(|moment| instant(moment_of(moment))),
        };
        let before = self.facts();
        let (told, arrived) = self.rig.inbound(inbound).expect("memory does not fail");
        for one in arrived {
            self.show(&one, "");
        }
        let facts = match self.facts() - before {
            0 => String::new(),
            1 => ", 1 fact".to_owned(),
            more => format!(", {more} facts"),
        };
        let outcome = told.outcome.expect("every text has an outcome");
        writeln!(self.out, "{INDENT}= {outcome}{facts}").expect("a string grows");
    }

    fn facts(&self) -> usize {
        sim::events(self.rig.engine().store()).len()
    }

    fn show(&mut self, one: &Arrived, at: &str) {
        sim::assert_one_sms(&one.text.text);
        let name = name_of(self.rig.engine().directory(), &one.text.to);
        let mut text = one.text.text.clone();
        if let Some(code) = code_in(&text) {
            text = text.replace(&code, "CODE");
            self.code = code;
        }
        writeln!(self.out, "{INDENT}> {at}{name}: {text}").expect("a string grows");
    }

    fn stand(&mut self, who: &str, block: &str) {
        let engine = self.rig.engine();
        let directory = engine.directory();
        let owner = directory
            .persons()
            .find(|person| person.is_named(who))
            .expect("a person of the list");
        let block: &Block = directory
            .blocks_of(owner.id)
            .find(|one| one.name == block)
            .expect("a block of the list");
        let state = engine.state(block.id).cloned().unwrap_or_default();
        writeln!(
            self.out,
            "{INDENT}= {} planted, {} filled in, {} dead, {} alive, {} gaps",
            state.planted(),
            state.replaced(),
            state.dead(),
            state.alive(),
            state.gaps()
        )
        .expect("a string grows");
    }
}

/// The number of a person of the list; anything else is taken as it is.
fn number_of(directory: &Directory, who: &str) -> String {
    directory
        .persons()
        .filter(|person| person.is_named(who))
        .find_map(|person| directory.numbers_of(person.id).next())
        .unwrap_or(who)
        .to_owned()
}

fn name_of(directory: &Directory, number: &str) -> String {
    let people: Vec<&str> = directory
        .phone(number)
        .into_iter()
        .flat_map(|phone| phone.people().collect::<Vec<_>>())
        .filter_map(|person| directory.person(person).map(Person::called))
        .collect();
    if people.is_empty() {
        number.to_owned()
    } else {
        people.join(" and ")
    }
}

/// The four digits after "YES" in a question for a code.
fn code_in(text: &str) -> Option<String> {
    let (_, code) = text.rsplit_once("YES ")?;
    (code.len() == 4 && code.chars().all(|c| c.is_ascii_digit())).then(|| code.to_owned())
}

#[test]
fn every_story_is_played() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/conversations");
    for entry in fs::read_dir(folder).expect("a folder of stories") {
        let path = entry.expect("an entry").path();
        let name = path.file_stem().expect("a name").to_string_lossy();
        assert!(
            include_str!("conversation.rs").contains(&format!("check(\"{name}\")")),
            "nobody plays {name}"
        );
    }
}

#[test]
fn every_kind_of_report_is_read_back_with_its_consequence() {
    check("reports");
}

#[test]
fn a_wrong_read_back_is_put_right_with_a_word() {
    check("corrections");
}

#[test]
fn what_is_missing_is_asked_for_and_what_is_doubtful_confirmed() {
    check("asking");
}

#[test]
fn the_same_text_twice_has_the_effect_of_once() {
    check("twice");
}

#[test]
fn three_nudges_and_then_the_advisers_list() {
    check("nudges");
}

#[test]
fn a_nudge_is_answered_with_one_word() {
    check("answers");
}

#[test]
fn nudges_keep_to_hours_rest_and_consent() {
    check("courtesy");
}

#[test]
fn a_name_is_erased_with_a_code_only() {
    check("data");
}

#[test]
fn planting_waits_for_the_advisers_window() {
    check("window");
}

#[test]
fn trees_are_opened_by_girth_never_by_age() {
    check("opening");
}

#[test]
fn gaps_are_filled_while_the_stand_is_young() {
    check("backfill");
}

#[test]
fn questions_are_answered_in_one_text() {
    check("adviser");
}

#[test]
fn another_adviser_is_told_nothing() {
    check("strangers_adviser");
}

#[test]
fn a_leader_confirms_what_is_told_for_a_member() {
    check("leader");
}

#[test]
fn a_shared_phone_is_asked_for_whom() {
    check("shared");
}

#[test]
fn names_short_codes_and_strangers_get_little() {
    check("senders");
}

#[test]
fn grief_and_danger_go_to_a_person() {
    check("alarm");
}

#[test]
fn chat_gets_no_answer() {
    check("chat");
}

#[test]
fn not_understood_gives_one_example_a_day() {
    check("unclear");
}

#[test]
fn two_machines_do_not_talk_for_ever() {
    check("loops");
}

/// Texts that no person types, or only by mistake.
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
    let mut rig =
        Rig::open(sim::setup(), Box::new(LastingStore::default()), start).expect("an empty store");
    rig.load_roll(DEMO_ROLL).expect("a list without faults");
    let reports = |rig: &Rig| {
        sim::events(rig.engine().store())
            .into_iter()
            .filter(|event| event.message.is_some())
            .count()
    };
    let texts = bad_texts();
    for (index, text) in texts.iter().enumerate() {
        // Each from another phone of the list, so that no guard of a conversation hides it.
        let from = format!("+4477009000{:02}", index % 14 + 1);
        for answer in rig.text(&from, text).expect("memory does not fail") {
            sim::assert_one_sms(&answer.text.text);
        }
        rig.run_until(rig.now() + TimeDelta::minutes(20))
            .expect("memory does not fail");
    }
    let kept: Vec<String> = sim::received(rig.engine().store())
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
        let mut rig = Rig::open(sim::setup(), Box::new(LastingStore::default()), start).unwrap();
        rig.load_roll(KETI_ALONE.as_bytes()).unwrap();
        for from in ["+447700900005", &from] {
            for answer in rig.text(from, &text).unwrap() {
                prop_assert_eq!(budwood::sms::measure(&answer.text.text).parts, 1);
            }
        }
        let kept = sim::received(rig.engine().store());
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
