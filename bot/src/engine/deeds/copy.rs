//! Somebody takes a copy of the store, part by part.

use crate::engine::{
    memory::snapshot::{Copied, CopyStep, Copying},
    step::Step,
};

impl Step<'_> {
    pub(crate) fn copy(&mut self, step: CopyStep) {
        self.told.copied = match step {
            CopyStep::Begin => {
                self.world.copying = Some(Copying::default());
                Some(Copied::Begun)
            }
            CopyStep::Next => Some(self.copy_next()),
            CopyStep::GiveUp => {
                self.world.copying = None;
                None
            }
        };
    }

    fn copy_next(&mut self) -> Copied {
        let Some(copying) = &mut self.world.copying else {
            return Copied::Broken("no copy has begun".to_owned());
        };
        match copying.next_part(self.store) {
            Ok(Some(lines)) => Copied::Lines(lines),
            Ok(None) => {
                self.world.copying = None;
                Copied::End
            }
            Err(why) => {
                self.world.copying = None;
                Copied::Broken(why)
            }
        }
    }
}
