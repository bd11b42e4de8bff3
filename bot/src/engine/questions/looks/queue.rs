//! A text that waits for a person: what it says, what it may tell, what its sender has open.

use budwood_scheduler::{MessageId, Person};

use super::{Page, farmer::what_told};
use crate::{
    args,
    engine::{
        local_time::civil_day,
        looks::{Cell, Look, Part, Waits, page},
        questions::waiting::concern,
        view::View,
    },
    wording::{Key, Phrase, Value},
    words::matter::Matter,
};

/// So many of the last facts of a sender are shown.
const FACTS: usize = 5;

impl<'a> View<'a> {
    pub(super) fn queue_page(self, viewer: &'a Person, message: Option<MessageId>) -> Option<Page> {
        let waiting = self.waiting_for(viewer);
        let mut parts = Vec::new();
        let shown = match message {
            Some(message) => Some(*waiting.iter().find(|one| one.message == message)?),
            None => waiting.first().copied(),
        };
        if let Some(matter) = shown {
            parts.push(Part::Matter(Box::new(self.waits(viewer, matter, &waiting))));
        }
        parts.push(self.waiting_part(viewer));
        let mut seen = Page::new(page("page-queue"), parts);
        seen.about = shown.map(|matter| matter.person);
        Some(seen)
    }

    fn waits(self, viewer: &Person, matter: &Matter, waiting: &[&Matter]) -> Waits {
        let sender = self.person(matter.person);
        let name = sender.map_or("", |sender| &sender.name);
        let readings = self.readings_of(matter);
        let shown = self.readings_shown(matter, &readings);
        let facts: Vec<Value> = self.facts_of_sender(matter);
        let today = self.today_of(matter.person);
        let jobs = self.jobs_of(matter.person).into_iter();
        let open = jobs.filter(|(_, task)| task.due <= today);
        let open = open.map(|(block, task)| {
            let args = args! {
                "task" => task.kind,
                "block" => Value::name(block),
                "day" => Value::day_seen(task.due, today),
            };
            Phrase::new(Key::LabourJob, args).into()
        });
        let after = waiting
            .iter()
            .position(|one| one.message == matter.message)
            .map_or(0, |at| at + 1);
        let next = waiting.get(after).or(waiting.first());
        let colleagues = self.colleagues(viewer).into_iter();
        Waits {
            message: matter.message,
            sender: Cell::of(Value::name(name)).to(Look::Person(matter.person)),
            on: civil_day(matter.at, self.zone_of(viewer.id)),
            concern: concern(matter.concern).into(),
            text: matter.text.clone(),
            readings: shown.into_iter().map(Value::from).collect(),
            jobs: open.collect(),
            facts,
            colleagues: colleagues.map(|one| (one.id, one.name.clone())).collect(),
            next: next
                .map(|one| one.message)
                .filter(|next| *next != matter.message),
        }
    }

    fn facts_of_sender(self, matter: &Matter) -> Vec<Value> {
        let today = self.today_of(matter.person);
        let mut told = Vec::new();
        for block in self.world.directory.blocks_of(matter.person) {
            let facts = self.state(block.id).map(|state| &state.facts);
            let last = facts.into_iter().flat_map(|facts| facts.iter().rev());
            let events = last.take(FACTS).filter_map(|fact| self.event(*fact));
            told.extend(events.map(|event| (&block.name, event)));
        }
        told.sort_by_key(|(_, event)| std::cmp::Reverse(event.id));
        let shown = told.into_iter().take(FACTS).filter_map(|(block, event)| {
            let (on, what) = what_told(&event.body)?;
            let args = args! {
                "day" => Value::day_seen(on, today),
                "block" => Value::name(block),
                "what" => what,
            };
            Some(Phrase::new(Key::Page("page-fact-line"), args).into())
        });
        shown.collect()
    }
}
