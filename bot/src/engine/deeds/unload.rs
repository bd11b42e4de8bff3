//! The last list is taken back: by facts that supersede its own, and by records as they were before.

use budwood_scheduler::{BlockId, Source};

use crate::engine::{
    deeds::roll::{ListAnswer, ListFate},
    questions::unload::Unload,
    step::Step,
    turn::Telling,
};

/// What is to be done with the last list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BackDeed {
    /// Say what taking it back would do.
    Look,
    /// Take it back.
    Take,
}

impl Step<'_> {
    /// Looks at the last list, and takes it back when that is wanted.
    pub(crate) fn unload(&mut self, deed: BackDeed) {
        let (page, fate) = match self.view().plan_unload() {
            Err(why) => (format!("{why}\n"), ListFate::Refused),
            Ok(unload) => {
                let page = unload.to_string();
                let is_wanted = deed == BackDeed::Take && !unload.is_empty();
                if is_wanted {
                    self.put_back_as_before(unload);
                }
                let fate = if is_wanted {
                    ListFate::Stored
                } else {
                    ListFate::Good
                };
                (page, fate)
            }
        };
        self.told.list = Some(ListAnswer {
            page,
            fate,
            findings: Vec::new(),
        });
    }

    fn put_back_as_before(&mut self, unload: Unload) {
        let telling = Telling {
            source: Source::Sheet,
            ..Telling::BOT
        };
        // First the facts: what they do to people is put right by the records that follow.
        for (old, body) in unload.facts {
            self.record(telling, Some(old), body);
        }
        let blocks: Vec<BlockId> = unload.blocks.iter().map(|block| block.id).collect();
        for block in unload.blocks {
            self.change.blocks.push(block.clone());
            self.world.put_block(block);
        }
        for number in unload.gone_phones {
            self.drop_phone(&number);
        }
        for phone in unload.phones {
            self.put_phone(phone);
        }
        for person in unload.persons {
            self.put_person(person);
        }
        for group in unload.groups {
            self.put_group(group);
        }
        for block in blocks {
            self.plan(block);
        }
        // It can be taken back once: what stays has been built on.
        if let Some(load) = self.world.load.take() {
            self.put_load(load.emptied());
        }
    }
}
