//! What passed takes effect: on who owns a block, who is in a group, and how blocks stand.

use budwood_scheduler::{Block, Event, Passed, Person};

use crate::engine::step::Step;

impl Step<'_> {
    /// What passed takes effect on who there is and on how blocks stand.
    pub(crate) fn take_passed(&mut self, passed: &Passed, event: &Event) {
        if let Some(block) = passed.block() {
            self.state(block).apply(event);
        }
        match passed {
            Passed::Owner { block, to, .. } => {
                let known = self.world.directory.block(*block).cloned();
                if let Some(known) = known {
                    let name = self.view().name_with(*to, &known.name);
                    self.put_block(Block {
                        owner: *to,
                        name,
                        ..known
                    });
                }
            }
            Passed::Gave { block, .. } | Passed::Got { block, .. } => self.plan(*block),
            Passed::Joined { person, group } => {
                if let Some(known) = self.world.directory.person(*person).cloned() {
                    let group = Some(*group);
                    self.put_person(Person { group, ..known });
                }
            }
            Passed::Left { person, .. } => {
                if let Some(known) = self.world.directory.person(*person).cloned() {
                    let group = None;
                    self.put_person(Person { group, ..known });
                }
            }
            // The phones themselves are put in by the deed: no fact holds a number.
            Passed::Helper { .. } | Passed::HelperLeft { .. } => {}
        }
    }

    /// Puts a block in, new or changed, and finds out when to look at it.
    pub(crate) fn put_block(&mut self, block: Block) {
        let id = block.id;
        self.change.blocks.push(block.clone());
        self.world.put_block(block);
        self.plan(id);
    }
}
