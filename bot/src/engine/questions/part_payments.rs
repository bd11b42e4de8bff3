//! Part payments of a programme: who passes, who is short, who lacks a visit.
//!
//! What each part asks for stands in the calendar of the group; an organisation writes it there.

use budwood_parser::Query;
use budwood_scheduler::{Group, Person, figures::Standing, handbook::calendar::PartPayment};

use super::asked::Asked;
use crate::{
    args,
    engine::view::View,
    wording::{Args, Key, Phrase, Value},
    words::limits,
};

impl<'a> View<'a> {
    /// GRANT: of one part in one group with whom it hangs on what; else a line for each.
    pub(super) fn part_payments(self, speaker: &Person, query: &Query) -> Phrase {
        let groups = self.groups_asked(speaker, query);
        if groups.is_empty() {
            return self.not_yours(speaker);
        }
        let parts: Vec<(&Group, &PartPayment)> = groups
            .into_iter()
            .flat_map(|group| {
                let parts = self
                    .calendar_of(group)
                    .map(|calendar| &calendar.part_payments);
                let parts = parts.into_iter().flatten();
                parts.map(move |part| (group, part))
            })
            .filter(|(_, part)| query.number.is_none_or(|number| number == part.part))
            .collect();
        match parts.as_slice() {
            [] => Key::GrantNone.into(),
            [(group, part)] => self.with_asked(group, |asked| self.of_part(asked, part)),
            several => {
                let lines = several.iter().map(|(group, part)| {
                    let line = |asked: &Asked<'a, '_>| {
                        Phrase::new(Key::GrantLine, self.counts_of_part(asked, part))
                    };
                    self.with_asked(group, line).into()
                });
                Phrase::new(
                    Key::GrantAll,
                    args! { "groups" => Value::List(lines.collect()) },
                )
            }
        }
    }

    fn of_part(self, asked: &Asked<'a, '_>, part: &PartPayment) -> Phrase {
        let standings = self.standings(asked, part);
        let open = standings.iter().filter_map(|(person, standing)| {
            let name = Value::name(&asked.names.shown(*person));
            let phrase = match standing {
                Standing::Short(trees) => {
                    Phrase::new(Key::GrantShort, args! { "name" => name, "trees" => *trees })
                }
                Standing::Unseen => Phrase::new(Key::GrantUnseen, args! { "name" => name }),
                Standing::NoSize => Phrase::new(Key::GrantNoSize, args! { "name" => name }),
                Standing::Passes | Standing::TooYoung => return None,
            };
            Some(phrase.into())
        });
        let open: Vec<Value> = open.collect();
        let mut args = self.counts_of_part(asked, part);
        args.extend(args! {
            "stand" => part.stand_per_ha,
            "months" => part.months,
            "days" => part.visit_days,
        });
        if open.is_empty() {
            return Phrase::new(Key::GrantWhole, args);
        }
        args.extend(args! { "people" => Value::List(open) });
        Phrase::new(Key::GrantList, args)
    }

    fn standings(
        self,
        asked: &Asked<'a, '_>,
        part: &PartPayment,
    ) -> Vec<(budwood_scheduler::PersonId, Standing)> {
        let known = |block: &_| self.known_of(block, limits::FACTS_OF_BLOCK);
        asked.table.part_payment(part, known).value
    }

    fn counts_of_part(self, asked: &Asked<'a, '_>, part: &PartPayment) -> Args {
        let standings = self.standings(asked, part);
        let count = |is: fn(&Standing) -> bool| {
            let those = standings.iter().filter(|(_, standing)| is(standing));
            those.count()
        };
        args! {
            "group" => Value::name(&asked.group.name),
            "part" => part.part,
            "pass" => count(|standing| *standing == Standing::Passes),
            "short" => count(|standing| matches!(standing, Standing::Short(_))),
            "unseen" => count(|standing| *standing == Standing::Unseen),
            "young" => count(|standing| *standing == Standing::TooYoung),
        }
    }
}
