//! Dialogs as people read them: a day, what they sent, what we answered.
//!
//! Each file in `conversations/` is one story. What a file says:
//!
//! - `people Tamo, Mara`: these of the demo's list, with their blocks; or rows of a list of its
//!   own. With neither, the whole list of the demo.
//! - `== 2026-12-20 10:00`: time passes until then, local to the group (the first one begins).
//! - `Tamo: dead 8 B`: a text. After the name may stand `(id 7)`, the gateway's id; `(sent
//!   2026-12-19 20:00)`, when it was sent; `(at once)`, no time passes before it. Otherwise seven
//!   minutes pass, as typing takes. A number or a word may stand for the name.
//! - `? Tamo B`: how a block stands.
//! - Lines with an indent are ours, and are compared. `BUDWOOD_UPDATE=1 cargo test -p budwood
//!   conversation` writes them anew; read the difference before you keep it.
//!
//! A code stands as `CODE` in what we say, and `CODE` in a text is the last one, `WRONGCODE` is
//! not.

mod bad_texts;
mod danger;
mod heard;
mod kinds;
mod story;

use std::{env, fmt::Write as _, fs, path::Path};

use budwood::{
    play::virtual_clock::{Arrived, Rig},
    words::traffic::Inbound,
};
use budwood_scheduler::{Block, Directory, Person};
use chrono::{DateTime, TimeDelta, Utc};

use self::story::{INDENT, Line, Text, ZONE, excerpt, instant, lines, moment_of};
use crate::fixture::{self, DEMO_ROLL, LastingStore};

const TYPING: TimeDelta = TimeDelta::minutes(7);

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
    let mut rig = Rig::open(fixture::setup(), Box::new(store), start).expect("an empty store");
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
            .replace("WRONGCODE", "000000")
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
        fixture::events(self.rig.engine().store()).len()
    }

    fn show(&mut self, one: &Arrived, at: &str) {
        fixture::assert_one_sms(&one.text.text);
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

/// The six digits after "yes" in a question for a code, or with which a text begins.
fn code_in(text: &str) -> Option<String> {
    let first = text.split(' ').next().unwrap_or_default();
    if first.len() == 6 && first.chars().all(|c| c.is_ascii_digit()) {
        return Some(first.to_owned());
    }
    const YES: [&str; 7] = ["YES", "OUI", "YA", "SIM", "ĐÚNG", "DUNG", "ใช่"];
    YES.iter().find_map(|yes| {
        let (_, rest) = text.split_once(&format!("{yes} "))?;
        let code: String = rest.chars().take_while(char::is_ascii_digit).collect();
        (code.len() == 6).then_some(code)
    })
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
fn half_a_round_is_stored_as_a_part() {
    check("parts");
}

#[test]
fn trees_are_opened_by_girth_never_by_age() {
    check("opening");
}

#[test]
fn girths_and_rain_are_told_with_their_doubt() {
    check("growth");
}

#[test]
fn an_adviser_with_several_groups_gets_a_line_each_and_namesakes_are_told_apart() {
    check("groups");
}

#[test]
fn on_day_one_nothing_is_late_and_nobody_is_quiet() {
    check("day_one");
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
fn sickness_that_gathers_is_told_and_visits_are_put_in_order() {
    check("health");
}

#[test]
fn neighbours_look_on_the_advisers_word() {
    check("near");
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
fn a_leader_tells_of_many_and_each_of_them_can_contest_it() {
    check("leader_many");
}

#[test]
fn the_books_of_a_group_are_kept_by_text() {
    check("books");
}

#[test]
fn lessons_are_short_and_branches_are_for_who_was_shown() {
    check("lessons");
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
fn danger_gets_first_help_and_goes_to_a_person() {
    check("alarm");
}

#[test]
fn only_chat_gets_no_answer() {
    check("chat");
}

#[test]
fn what_nobody_understands_is_told_to_a_person() {
    check("never_silent");
}

#[test]
fn what_waits_for_the_adviser_is_shown_and_told_again() {
    check("waiting");
}

#[test]
fn an_advisers_own_words_go_out_with_a_code() {
    check("tell");
}

#[test]
fn what_was_promised_is_on_the_week_until_it_is_kept() {
    check("promises");
}

#[test]
fn what_waits_is_stored_by_the_number_of_a_reading() {
    check("queue");
}

#[test]
fn a_group_is_asked_what_a_storm_did_and_leaders_about_the_silent() {
    check("asking_round");
}

#[test]
fn a_text_or_a_group_goes_to_a_colleague() {
    check("handover");
}

#[test]
fn land_and_people_pass_from_one_to_another() {
    check("people");
}

#[test]
fn a_family_that_mourns_is_left_in_peace() {
    check("mourning");
}

#[test]
fn a_lost_phone_is_told_nothing_and_a_new_number_takes_its_place() {
    check("lost_phone");
}

#[test]
fn no_question_of_ours_is_a_dead_end() {
    check("dead_ends");
}

#[test]
fn a_round_of_feeding_that_was_lost_is_told_to_the_adviser() {
    check("feed_lost");
}

#[test]
fn what_is_no_illness_and_no_crop_is_taken_for_what_it_is() {
    check("taken_for");
}

#[test]
fn not_understood_gives_one_example_a_day() {
    check("unclear");
}

#[test]
fn two_machines_do_not_talk_for_ever() {
    check("loops");
}

#[test]
fn language_changes_the_answers_and_what_is_spoken_the_reading() {
    check("language");
}

/// From memory, as the texts are: a native reader should read these.
#[test]
fn people_are_answered_in_their_language() {
    check("french");
    check("indonesian");
    check("portuguese");
    check("thai");
    check("vietnamese");
}

#[test]
fn rain_is_asked_for_before_planting() {
    check("rain");
}

#[test]
fn the_adviser_hears_how_the_rains_turn_and_decides() {
    check("season");
}
