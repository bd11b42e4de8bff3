//! What the adviser is told at once: sickness, harm, and whom to see to.

use budwood_parser::{Alarm, Care};
use budwood_scheduler::{BlockId, Person, decide::Draft};

use crate::{
    args,
    engine::{
        step::{Step, civil_day},
        turn::Turn,
    },
    wording::{Said, short},
    words::{limits, message::Purpose},
};

impl Step<'_> {
    pub(crate) fn tell_of_sickness(&mut self, turn: &Turn, block: BlockId, drafts: &[&Draft]) {
        let news: Vec<&Draft> = drafts
            .iter()
            .filter(|fact| matches!(fact.kind.care(), Some(Care::Sick | Care::Harmed)))
            .filter(|fact| fact.details.count != Some(0))
            .copied()
            .collect();
        let Some(target) = self.world.directory.person(turn.target) else {
            return;
        };
        // Who saw it on a visit knows.
        let adviser = self.adviser_of(target).map(|adviser| adviser.id);
        if news.is_empty() || adviser == Some(turn.speaker) {
            return;
        }
        let Some(record) = self.world.directory.block(block) else {
            return;
        };
        let (name, block_name) = (target.name.clone(), record.name.clone());
        let group = self.group_name(target);
        let today = self.today_of(turn.target);
        self.notify(turn, |tongue| {
            let said = Said {
                block: &block_name,
                facts: &news,
                today,
            };
            let facts = tongue.clauses(said);
            tongue.fit(|length| {
                tongue.say(
                    "sick-notice",
                    args! {
                        "name" => short(&name, length),
                        "block" => short(&block_name, length),
                        "group" => group.as_str(),
                        "facts" => facts.as_str(),
                    },
                )
            })
        });
    }

    /// Tells the adviser of the person whom a text is about.
    pub(crate) fn notify(
        &mut self,
        turn: &Turn,
        word: impl Fn(crate::wording::Tongue<'_>) -> String,
    ) {
        let Some(target) = self.world.directory.person(turn.target) else {
            return;
        };
        let Some(adviser) = self.adviser_of(target).cloned() else {
            return;
        };
        let stopped = matches!(
            adviser.consent,
            budwood_scheduler::Consent::Withdrawn { .. }
        );
        let number = self
            .world
            .directory
            .numbers_of(adviser.id)
            .next()
            .map(str::to_owned);
        if let Some(number) = number
            && !stopped
        {
            let text = word(self.tongue(&adviser));
            let purpose = Purpose::Notice {
                about: turn.message,
            };
            self.post(&number, text, purpose, limits::NOTICE_HOURS);
        }
    }

    pub(crate) fn group_name(&self, person: &Person) -> String {
        person
            .group
            .and_then(|group| self.world.directory.group(group))
            .map(|group| group.name.clone())
            .unwrap_or_default()
    }

    /// Grief, danger and the like go to a person; the bot keeps quiet.
    pub(crate) fn hand_over(&mut self, turn: &Turn, alarm: Alarm) -> &'static str {
        self.notify_about(turn, "alarm-notice", Some(alarm));
        "for a person"
    }

    /// Tells the adviser to see to the person who texted, without the text itself.
    pub(crate) fn notify_about(&mut self, turn: &Turn, key: &str, alarm: Option<Alarm>) {
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return;
        };
        let name = speaker.name.clone();
        let group = self.group_name(speaker);
        let digits: String = last_digits(&turn.number);
        let today = civil_day(turn.sent_at, self.zone_of(turn.speaker));
        self.notify(turn, |tongue| {
            let alarm = alarm.map_or_else(String::new, |alarm| {
                tongue.say(&format!("alarm-{}", alarm.name()), args! {})
            });
            tongue.fit(|length| {
                tongue.say(
                    key,
                    args! {
                        "name" => short(&name, length),
                        "group" => short(&group, length),
                        "digits" => digits.as_str(),
                        "day" => tongue.day(today),
                        "alarm" => alarm.as_str(),
                    },
                )
            })
        });
    }
}

/// The last four digits say which phone to someone who knows it, and nothing to others.
fn last_digits(number: &str) -> String {
    let digits: Vec<char> = number.chars().rev().take(4).collect();
    digits.into_iter().rev().collect()
}
