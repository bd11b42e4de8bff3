//! One text about many members: "Yano weeded, Nilo dead 3, Keti fed".
//!
//! A name stands before what is told of it; names that follow each other share it. What is clear of
//! each is confirmed together, in one text; what is not goes the way of a text about one.

use budwood_parser::{Reading, Report, Span, Taken};
use budwood_scheduler::{
    Person, PersonId,
    decide::{Decision, Draft},
};

use crate::{
    args,
    engine::{
        roles::{self, Verb},
        turn::Turn,
        view::View,
    },
    wording::{Facts, Key, Phrase, Value},
    words::message::Told,
};

/// What a text tells of one of several.
pub(super) struct Part {
    pub(super) person: PersonId,
    /// The name and what is told under it, as a text of its own.
    pub(super) text: String,
    pub(super) reading: Reading,
}

impl View<'_> {
    /// What a text tells of several people, as far as it is clear, and the rest of it; none when
    /// there is nothing that is to be confirmed together.
    pub(crate) fn told_of_many(self, turn: &Turn, speaker: &Person) -> Option<(Vec<Told>, String)> {
        // Who needs a code is asked for it by the first of them.
        let is_let = !roles::needs_code(speaker.role) || self.is_on_visit(&turn.number);
        if !roles::may(speaker.role, Verb::ReportFor) || !is_let {
            return None;
        }
        let parts = self.parts_of(turn, speaker)?;
        let (clear, rest) = self.asked_together(turn, speaker, parts);
        (clear.len() > 1).then_some((clear, rest))
    }

    /// What is clear of these parts, as much as one question shows, and the rest as a text.
    pub(super) fn asked_together(
        self,
        turn: &Turn,
        speaker: &Person,
        parts: Vec<Part>,
    ) -> (Vec<Told>, String) {
        let mut clear: Vec<Told> = Vec::new();
        let mut texts: Vec<String> = Vec::new();
        let mut rest: Vec<String> = Vec::new();
        for part in parts {
            if let Some(facts) = self.clear_facts(turn, speaker, &part) {
                let person = part.person;
                clear.push(Told { person, facts });
                texts.push(part.text);
            } else {
                rest.push(part.text);
            }
        }
        // What does not fit into the question is asked about afterwards.
        let shown = self.shown(&self.reply(turn, self.confirm_many(turn, &clear)));
        clear.truncate(shown);
        let unseen = texts.into_iter().skip(shown);
        let rest: Vec<String> = unseen.chain(rest).collect();
        (clear, rest.join(". "))
    }

    /// The text in parts, each with its own name.
    fn parts_of(self, turn: &Turn, speaker: &Person) -> Option<Vec<Part>> {
        let reading = self.read(turn, speaker.role);
        let is_plain = reading.acts.is_empty()
            && reading.stances.is_empty()
            && reading.alarm.is_none()
            && reading.problems.is_empty();
        let named: Vec<(Span, PersonId)> = reading
            .words
            .iter()
            .filter(|word| word.taken == Taken::Name)
            .filter_map(|word| {
                let name = turn.text.get(word.span.start..word.span.end)?;
                match self.members_named(turn, speaker, name)[..] {
                    [only] => Some((word.span, only)),
                    _ => None,
                }
            })
            .collect();
        let (first, _) = named.first()?;
        let is_before = |report: &Report| report.span.start < first.start;
        if !is_plain || reading.reports.iter().any(is_before) {
            return None;
        }
        let ends = named.iter().skip(1).map(|(name, _)| name.start);
        let ends = ends.chain([turn.text.len()]);
        let mut parts: Vec<Part> = Vec::new();
        for ((name, person), end) in named.iter().zip(ends) {
            let is_of_part = |report: &&Report| (name.start..end).contains(&report.span.start);
            let reports = reading.reports.iter().filter(is_of_part);
            parts.push(Part {
                person: *person,
                text: turn.text.get(name.end..end)?.to_owned(),
                reading: Reading {
                    reports: reports.cloned().collect(),
                    ..reading.clone()
                },
            });
        }
        // "Nilo, Jaro and Keti weeded": what follows is told of all of them.
        let mut follows = (String::new(), Vec::new());
        for (part, (name, _)) in parts.iter_mut().zip(&named).rev() {
            if part.reading.reports.is_empty() {
                (part.text, part.reading.reports) = follows.clone();
            } else {
                follows = (part.text.clone(), part.reading.reports.clone());
            }
            let name = turn.text.get(name.start..name.end)?;
            let is_between = |c: char| !c.is_alphanumeric();
            part.text = format!("{name}: {}", part.text.trim_matches(is_between));
        }
        parts.retain(|part| !part.reading.reports.is_empty());
        Some(parts)
    }

    /// What a part tells, if nothing is to be asked about it.
    fn clear_facts(self, turn: &Turn, speaker: &Person, part: &Part) -> Option<Vec<Draft>> {
        let turn = Turn {
            target: part.person,
            ..turn.clone()
        };
        let decision = self.decide(&turn, &part.reading, speaker.role);
        if let Decision::Record(facts) = decision {
            Some(facts)
        } else {
            None
        }
    }

    /// The question whether all of it is right.
    pub(crate) fn confirm_many(self, turn: &Turn, told: &[Told]) -> Phrase {
        Phrase::new(
            Key::ConfirmMany,
            args! { "people" => self.people_told(turn, told) },
        )
    }

    /// "Yano A: weeded", each.
    pub(crate) fn people_told(self, turn: &Turn, told: &[Told]) -> Value {
        let told = told.iter().map(|told| {
            let name = self.person(told.person).map_or("", Person::called);
            let facts: Vec<&Draft> = told.facts.iter().collect();
            let block = told.facts.iter().find_map(|fact| fact.block.as_deref());
            let facts = Facts {
                block: block.unwrap_or_default(),
                facts: &facts,
                today: self.day_of(turn),
            };
            let args = args! {
                "name" => Value::name(name),
                "block" => Value::name(facts.block),
                "facts" => facts.clauses(),
            };
            Phrase::new(Key::PersonFacts, args).into()
        });
        Value::List(told.collect())
    }
}
