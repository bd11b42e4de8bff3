//! Questions of the adviser about trees that died, and about clones.

use budwood_scheduler::{
    Source,
    figures::{Dead, lost_pct},
    land::block::Living,
};

use super::asked::{Asked, line};
use crate::{
    args,
    engine::view::View,
    wording::{Args, Key, Phrase, Value},
    words::limits,
};

impl<'a> View<'a> {
    /// DEAD: how many, and whose.
    pub(super) fn dead(self, asked: &Asked<'a, '_>) -> Phrase {
        let table = &asked.table;
        let losses = table.losses(|block| self.known_of(block, limits::FACTS_OF_BLOCK));
        let people = losses.value.iter().map(|loss| {
            let args = args! {
                "name" => Value::name(&asked.names.shown(loss.person)),
                "pct" => lost_pct(loss.living).unwrap_or_default(),
                "source" => loss.source.map(|source| Phrase::from(letter(source))),
            };
            Phrase::new(Key::DeadPerson, args).into()
        });
        let uncounted = match table.uncounted().value {
            0 => None,
            count => Some(Phrase::new(Key::DeadUncounted, args! { "count" => count })),
        };
        let Some(mut args) = sums(asked) else {
            return Phrase::new(
                Key::CloneNone,
                args! { "group" => asked.group.name.as_str() },
            );
        };
        args.extend(args! {
            "people" => Value::List(people.collect()),
            "uncounted" => Value::Spare(vec![uncounted, None]),
        });
        Phrase::new(Key::DeadList, args)
    }

    /// CAUSE: of what they died.
    pub(super) fn dead_by_cause(self, asked: &Asked<'a, '_>) -> Phrase {
        let known = |block: &_| self.known_of(block, limits::FACTS_OF_BLOCK);
        let causes = asked.table.losses_by_cause(known).value;
        let Some(mut args) = sums(asked) else {
            let group = args! { "group" => asked.group.name.as_str() };
            return Phrase::new(Key::CloneNone, group);
        };
        let parts = causes.into_iter().map(|(cause, dead)| {
            let cause = cause.map_or_else(|| Phrase::from(Key::Untold).into(), Value::from);
            Phrase::new(Key::DeadPart, args! { "what" => cause, "count" => dead }).into()
        });
        args.extend(args! { "parts" => Value::List(parts.collect()) });
        Phrase::new(Key::DeadParts, args)
    }

    pub(super) fn dead_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let Some(args) = sums(asked) else {
            return line(asked.group, 0_u32, None);
        };
        Phrase::new(Key::DeadLine, args)
    }

    /// CLONE: the share of each in the trees of the first planting.
    pub(super) fn clones(self, asked: &Asked<'a, '_>) -> Phrase {
        let clones = asked.table.clones().value;
        let group = asked.group.name.as_str();
        if clones.is_empty() {
            return Phrase::new(Key::CloneNone, args! { "group" => group });
        }
        let shares = clones
            .iter()
            .map(|(clone, trees)| clone_share(clone.as_deref(), *trees, &clones).into());
        let args = args! {
            "group" => Value::brief(group),
            "clones" => Value::List(shares.collect()),
        };
        Phrase::new(Key::CloneList, args)
    }

    pub(super) fn clones_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let clones = asked.table.clones().value;
        let first = clones
            .first()
            .map(|(clone, trees)| clone_share(clone.as_deref(), *trees, &clones));
        line(asked.group, planted(&clones), first)
    }
}

/// Dead first trees of a group; nothing where nothing is planted.
fn sums(asked: &Asked<'_, '_>) -> Option<Args> {
    let living: Living = asked.table.living().value;
    Some(args! {
        "group" => Value::name(&asked.group.name),
        "dead" => living.planted.saturating_sub(living.first),
        "planted" => living.planted,
        "pct" => lost_pct(living)?,
    })
}

type Clones = [(Option<String>, Dead)];

fn planted(clones: &Clones) -> u32 {
    let planted = clones.iter().map(|(_, trees)| trees.planted);
    planted.fold(0, u32::saturating_add)
}

fn clone_share(clone: Option<&str>, trees: Dead, all: &Clones) -> Phrase {
    let all = f64::from(planted(all).max(1));
    let args = args! {
        "clone" => clone_name(clone),
        "pct" => (f64::from(trees.planted) * 100.0 / all).round(),
        "dead" => trees.dead,
        "planted" => trees.planted,
    };
    Phrase::new(Key::CloneShare, args)
}

pub(super) fn clone_name(clone: Option<&str>) -> Value {
    clone.map_or_else(|| Phrase::from(Key::Untold).into(), Value::name)
}

/// How a fact is known, in a letter.
pub(super) const fn letter(source: Source) -> Key {
    match source {
        Source::Visit => Key::SourceVisit,
        Source::Sheet => Key::SourceSheet,
        Source::Leader => Key::SourceLeader,
        Source::OwnText | Source::Bot => Key::SourceText,
    }
}
