//! What whoever takes a group over must know: who is sick, what is promised, who is left in peace,
//! what nobody answered. For the office and the two advisers only.

use budwood_scheduler::PersonId;

use super::maker::Maker;
use crate::{
    args,
    sheet::{Cell, ColumnKind, Sheet},
    wording::{Paper, sick_person},
    words::{message::Audience, printed::SheetKind},
};

impl Maker<'_> {
    pub(super) fn handover(&self) -> Sheet {
        let columns = vec![
            self.column(Paper::ColumnWhat, ColumnKind::Words),
            self.column(Paper::ColumnFarmer, ColumnKind::Words),
            self.column(Paper::ColumnDetails, ColumnKind::Words),
            self.column(Paper::ColumnUntil, ColumnKind::Words),
        ];
        let mut sheet = self.begin(SheetKind::Handover, Paper::SheetHandover, columns);
        let table = self.view.table(self.group);
        let people = args! {
            "people" => table.farmers.len(),
            "blocks" => table.farmers.iter().map(|farmer| farmer.stands.len()).sum::<usize>(),
        };
        sheet.head.push(self.say(Paper::SheetOfPeople, people));
        for sick in table.sick().value {
            let told = self.tongue.full(&sick_person("", sick.ailment, sick.trees));
            let row = self.told(
                Paper::WhatSick,
                self.name(sick.person),
                told.trim(),
                String::new(),
            );
            sheet.rows.push(row);
        }
        sheet.rows.extend(self.promised());
        for job in table.jobs().value.list.iter().filter(|job| job.in_vain) {
            let name = self.name(job.person);
            let row = self.told(
                Paper::WhatUnanswered,
                name,
                &self.tongue.job(job.task),
                String::new(),
            );
            sheet.rows.push(row);
        }
        // Who is left in peace, with the reason, as the list of them has it.
        for hold in self.holds().rows {
            let [name, _, until, why] = hold.as_slice() else {
                continue;
            };
            let what = self.say(Paper::WhatHold, args! {});
            sheet
                .rows
                .push(vec![what.into(), name.clone(), why.clone(), until.clone()]);
        }
        sheet.notes.push(self.say(Paper::SheetRestricted, args! {}));
        sheet
    }

    fn name(&self, person: PersonId) -> String {
        let person = self.view.person(person);
        person.map_or_else(String::new, |person| person.name.clone())
    }

    fn told(&self, what: Paper, who: String, details: &str, until: String) -> Vec<Cell> {
        let what = self.say(what, args! {});
        vec![what.into(), who.into(), details.into(), until.into()]
    }

    fn promised(&self) -> Vec<Vec<Cell>> {
        let adviser = self
            .group
            .adviser
            .and_then(|adviser| self.view.person(adviser));
        let promises = adviser.map(|adviser| self.view.promises_of(adviser));
        let promises = promises.unwrap_or_default().into_iter();
        let of_group = promises.filter(|one| self.view.is_promised_in(one, &[self.group.id]));
        of_group
            .map(|promise| {
                let to = match promise.to {
                    Audience::Person(person) => self.name(person),
                    Audience::Group(_) => self.group.name.clone(),
                };
                let until = self.tongue.day_year(promise.on);
                self.told(Paper::WhatPromise, to, &promise.words, until)
            })
            .collect()
    }
}
