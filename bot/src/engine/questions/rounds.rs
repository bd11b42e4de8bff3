//! Questions of the adviser about one kind of work, and about harm.

use budwood_parser::{Ailment, Cause, Query};
use budwood_scheduler::{
    Person, PersonId, TaskKind,
    figures::{HARM_DAYS, Round},
};

use super::asked::{Asked, line};
use crate::{
    args,
    engine::view::View,
    wording::{Args, Key, Phrase, Value, sick_person},
};

impl<'a> View<'a> {
    /// PRUNE: who did it, with whom it is due, with whom late. None of work that is no job.
    pub(super) fn job(self, speaker: &Person, query: &Query) -> Option<Phrase> {
        let kind = query.kind?;
        let task = TaskKind::ALL
            .into_iter()
            .find(|task| task.proven_by() == Some(kind))?;
        Some(self.of_one_job(speaker, query, task))
    }

    fn of_one_job(self, speaker: &Person, query: &Query, task: TaskKind) -> Phrase {
        let groups = self.groups_asked(speaker, query);
        let lines = |group: &Asked<'a, '_>| {
            let round = group.table.round(task).value;
            Phrase::new(Key::WorkLine, counts(group, &round))
        };
        match groups.as_slice() {
            [] => self.not_yours(speaker),
            [group] => self.with_asked(group, |asked| {
                let round = asked.table.round(task).value;
                let mut args = counts(asked, &round);
                args.extend(args! { "task" => task, "people" => pressing(asked, &round) });
                Phrase::new(Key::WorkRound, args)
            }),
            several => {
                let groups = several
                    .iter()
                    .map(|group| self.with_asked(group, lines).into());
                let args = args! { "task" => task, "groups" => Value::List(groups.collect()) };
                Phrase::new(Key::WorkAll, args)
            }
        }
    }

    /// ROOT: roots that were looked at, and where white root was found in half a year.
    pub(super) fn roots(self, asked: &Asked<'a, '_>) -> Phrase {
        let round = asked.table.round(TaskKind::RootCheck).value;
        let sick = asked.table.sick_roots().value;
        let people = sick.iter().map(|one| {
            sick_person(
                &asked.names.shown(one.person),
                Ailment::WhiteRoot,
                one.trees,
            )
            .into()
        });
        with_found(Key::RootRound, Key::RootNone, counts(asked, &round), people)
    }

    pub(super) fn roots_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let round = asked.table.round(TaskKind::RootCheck).value;
        Phrase::new(Key::WorkLine, counts(asked, &round))
    }

    /// FIRE: firebreaks, and what burnt; where it was asked lately, what came of that.
    pub(super) fn fires(self, asked: &Asked<'a, '_>) -> Phrase {
        if let Some(told) = self.survey_told(asked, Cause::Fire) {
            return told;
        }
        let round = asked.table.round(TaskKind::Firebreak).value;
        let harm = asked.table.harm(Cause::Fire).value;
        let people = harm.iter().map(|one| harmed(asked, one));
        with_found(Key::FireRound, Key::FireNone, counts(asked, &round), people)
    }

    pub(super) fn fires_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let round = asked.table.round(TaskKind::Firebreak).value;
        Phrase::new(Key::WorkLine, counts(asked, &round))
    }

    /// WIND: who told of it, and how many trees; where it was asked lately, what came of that.
    pub(super) fn wind(self, asked: &Asked<'a, '_>) -> Phrase {
        self.harm(asked, Cause::Wind, (Key::WindList, Key::WindNone))
    }

    pub(super) fn wind_line(self, asked: &Asked<'a, '_>) -> Phrase {
        harm_line(asked, Cause::Wind)
    }

    pub(super) fn flood(self, asked: &Asked<'a, '_>) -> Phrase {
        self.harm(asked, Cause::Flood, (Key::HarmList, Key::HarmNone))
    }

    pub(super) fn flood_line(self, asked: &Asked<'a, '_>) -> Phrase {
        harm_line(asked, Cause::Flood)
    }

    pub(super) fn drought(self, asked: &Asked<'a, '_>) -> Phrase {
        self.harm(asked, Cause::Drought, (Key::HarmList, Key::HarmNone))
    }

    pub(super) fn drought_line(self, asked: &Asked<'a, '_>) -> Phrase {
        harm_line(asked, Cause::Drought)
    }

    fn harm(self, asked: &Asked<'a, '_>, cause: Cause, (some, none): (Key, Key)) -> Phrase {
        if let Some(told) = self.survey_told(asked, cause) {
            return told;
        }
        let harm = asked.table.harm(cause).value;
        let mut args = args! {
            "group" => Value::brief(&asked.group.name),
            "days" => HARM_DAYS,
            "cause" => cause,
        };
        if harm.is_empty() {
            return Phrase::new(none, args);
        }
        let trees = harm.iter().map(|(_, trees)| *trees);
        let people = harm.iter().map(|one| harmed(asked, one));
        args.extend(args! {
            "farmers" => harm.len(),
            "of" => asked.table.planted().value,
            "trees" => trees.fold(0, u32::saturating_add),
            "people" => Value::List(people.collect()),
        });
        Phrase::new(some, args)
    }
}

fn harm_line(asked: &Asked<'_, '_>, cause: Cause) -> Phrase {
    let harm = asked.table.harm(cause).value;
    let trees = harm.iter().map(|(_, trees)| *trees);
    line(asked.group, trees.fold(0, u32::saturating_add), None)
}

fn counts(asked: &Asked<'_, '_>, round: &Round) -> Args {
    args! {
        "group" => Value::name(&asked.group.name),
        "done" => round.done.len(),
        "due" => round.due.len(),
        "late" => round.late.len(),
    }
}

/// Who is late, with the days, and then with whom it is due.
fn pressing(asked: &Asked<'_, '_>, round: &Round) -> Value {
    let name = |person: PersonId| Value::name(&asked.names.shown(person));
    let late = round.late.iter().map(|job| {
        let args = args! { "name" => name(job.person), "days" => job.days };
        Phrase::new(Key::QuietPerson, args).into()
    });
    let due = round.due.iter().map(|person| name(*person));
    Value::List(late.chain(due).collect())
}

fn harmed(asked: &Asked<'_, '_>, (person, trees): &(PersonId, u32)) -> Value {
    let args = args! { "name" => Value::name(&asked.names.shown(*person)), "gaps" => *trees };
    Phrase::new(Key::GapsPerson, args).into()
}

/// A round, and what was found; in words where it was nothing.
fn with_found(key: Key, none: Key, mut args: Args, found: impl Iterator<Item = Value>) -> Phrase {
    let found: Vec<Value> = found.collect();
    let found = if found.is_empty() {
        Phrase::from(none).into()
    } else {
        Value::List(found)
    };
    args.extend(args! { "found" => found });
    Phrase::new(key, args)
}
