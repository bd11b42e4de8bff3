//! A checked list of people and blocks is taken in, all in one change.

use budwood_scheduler::{Block, BlockId, Body, Group, Person, Phone, Source};

use super::step::{Step, Telling};

/// What a list adds or changes. It was checked before; here nothing is refused.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Entries {
    /// Groups, new or changed.
    pub groups: Vec<Group>,
    /// People, new or changed.
    pub persons: Vec<Person>,
    /// Phones, new or changed.
    pub phones: Vec<Phone>,
    /// Blocks, new or changed.
    pub blocks: Vec<Block>,
    /// What the list tells of blocks and people: planted so many, agreed to be texted.
    pub facts: Vec<Body>,
}

impl Step<'_> {
    /// Takes a list in.
    pub(super) fn roll(&mut self, entries: Entries) {
        for group in entries.groups {
            self.put_group(group);
        }
        for person in entries.persons {
            self.put_person(person);
        }
        for phone in entries.phones {
            self.change.phones.push(phone.clone());
            self.world.directory.put_phone(phone);
        }
        let blocks: Vec<BlockId> = entries.blocks.iter().map(|block| block.id).collect();
        for block in entries.blocks {
            self.change.blocks.push(block.clone());
            self.world.directory.put_block(block);
        }
        let telling = Telling {
            source: Source::Sheet,
            ..Telling::BOT
        };
        for fact in entries.facts {
            self.record(telling, None, fact);
        }
        // Phones came after people, and people's blocks after their phones: look once more.
        let people: Vec<BlockId> = self
            .world
            .directory
            .blocks()
            .map(|block| block.id)
            .collect();
        for block in blocks.into_iter().chain(people) {
            self.plan(block);
        }
    }
}
