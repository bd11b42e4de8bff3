//! A code that must come back before something large is done.
//!
//! Sender numbers can be forged. Whoever forges one does not see the code, because it is texted
//! to the registered number.

use std::hash::{DefaultHasher, Hash, Hasher};

use budwood_scheduler::{Body, GroupId, Person, Role};
use chrono::NaiveDate;

use crate::{
    args,
    engine::{step::Step, turn::Turn},
    wording::Key,
    words::message::{Deed, Question},
};

/// Codes have four digits: short enough to type, and one guess only.
const CODES: u64 = 9_000;
const FIRST_CODE: u64 = 1_000;

impl Step<'_> {
    pub(crate) fn code(&self, turn: &Turn) -> String {
        let mut hasher = DefaultHasher::new();
        (self.setup.secret, turn.message, &turn.number, self.now).hash(&mut hasher);
        (FIRST_CODE + hasher.finish() % CODES).to_string()
    }

    /// Asks the adviser for the code before the planting window of a group opens.
    pub(crate) fn ask_window(
        &mut self,
        turn: &Turn,
        speaker: &Person,
        group: GroupId,
    ) -> &'static str {
        let Some(record) = self.world.directory.group(group).cloned() else {
            return "chat";
        };
        let on = crate::engine::step::civil_day(
            self.now,
            crate::engine::step::zone(&record, self.setup),
        );
        let code = self.code(turn);
        let tongue = self.tongue(speaker);
        let text = tongue.whole(
            Key::WindowAsk,
            args! {
                "group" => record.name.as_str(),
                "day" => tongue.day(on),
                "rain" => self.rain_told(tongue, group, on),
                "farmers" => self.farmers(group),
                "code" => code.as_str(),
            },
        );
        let deed = Deed::OpenWindow { group, on };
        self.ask(turn, turn.speaker, Question::Code { code, deed }, text);
        "asked for a code"
    }

    /// Asks the adviser for the code before planting in a group is held again.
    pub(crate) fn ask_hold(
        &mut self,
        turn: &Turn,
        speaker: &Person,
        group: GroupId,
    ) -> &'static str {
        let Some(record) = self.world.directory.group(group).cloned() else {
            return "chat";
        };
        let name = args! { "group" => record.name.as_str() };
        if record.window_opened.is_none() {
            let text = self.tongue(speaker).whole(Key::HoldNone, name);
            self.answer(&turn.number, turn.message, text);
            return "answered";
        }
        let on = crate::engine::step::civil_day(
            self.now,
            crate::engine::step::zone(&record, self.setup),
        );
        let code = self.code(turn);
        let text = self.tongue(speaker).whole(
            Key::HoldAsk,
            args! {
                "group" => record.name.as_str(),
                "farmers" => self.farmers(group),
                "code" => code.as_str(),
            },
        );
        let deed = Deed::HoldPlanting { group, on };
        self.ask(turn, turn.speaker, Question::Code { code, deed }, text);
        "asked for a code"
    }

    /// Asks for the code before a name and number are erased.
    pub(crate) fn ask_erase(&mut self, turn: &Turn, speaker: &Person) -> &'static str {
        let code = self.code(turn);
        let text = self
            .tongue(speaker)
            .whole(Key::EraseAsk, args! { "code" => code.as_str() });
        let deed = Deed::Erase { person: speaker.id };
        self.ask(turn, turn.speaker, Question::Code { code, deed }, text);
        "asked for a code"
    }

    pub(crate) fn farmers(&self, group: GroupId) -> usize {
        self.world
            .directory
            .members(group)
            .filter(|person| matches!(person.role, Role::Farmer | Role::Leader))
            .count()
    }

    /// Whether this text brings the code that we wait for. A wrong code ends the wait; a text
    /// without four digits has nothing to do with it.
    pub(crate) fn code_given(&mut self, turn: &Turn, speaker: &Person) -> Option<&'static str> {
        let open = self.open_question(&turn.number)?;
        let Question::Code { code, deed } = open.question else {
            return None;
        };
        let given = turn
            .text
            .split(|c: char| !c.is_ascii_digit())
            .find(|digits| digits.len() == code.len())?;
        let right = given == code;
        self.talk(&turn.number).open = None;
        let tongue = self.tongue(speaker);
        if !right {
            let text = tongue.whole(Key::CodeWrong, args! {});
            self.answer(&turn.number, turn.message, text);
            return Some("wrong code");
        }
        match deed {
            Deed::OpenWindow { group, on } => self.do_open_window(turn, speaker, group, on),
            Deed::Warn { group, ailment } => self.do_warn(turn, speaker, group, ailment),
            Deed::HoldPlanting { group, on } => {
                let telling = self.telling(turn, turn.speaker);
                self.record(telling, None, Body::PlantingHeld { group, on });
                let text = self.window_text(Key::PlantingHeld, speaker, group, on);
                self.answer(&turn.number, turn.message, text);
            }
            Deed::Erase { person } => {
                // The answer goes first: afterwards there is no number to send it to.
                let text = tongue.whole(Key::Erased, args! {});
                self.answer(&turn.number, turn.message, text);
                let telling = self.telling(turn, person);
                self.record(telling, None, Body::Erased { person });
            }
        }
        Some("done with a code")
    }

    fn do_open_window(&mut self, turn: &Turn, speaker: &Person, group: GroupId, on: NaiveDate) {
        let telling = self.telling(turn, turn.speaker);
        self.record(telling, None, Body::WindowOpened { group, on });
        let text = self.window_text(Key::WindowOpened, speaker, group, on);
        self.answer(&turn.number, turn.message, text);
    }

    fn window_text(&self, key: Key, speaker: &Person, group: GroupId, on: NaiveDate) -> String {
        let tongue = self.tongue(speaker);
        let name = self
            .world
            .directory
            .group(group)
            .map(|group| group.name.clone());
        tongue.whole(
            key,
            args! {
                "group" => name.unwrap_or_default(),
                "day" => tongue.day(on),
                "farmers" => self.farmers(group),
            },
        )
    }
}
