//! The things that a report names: sickness, cause, product, crop, clone, material.
//!
//! Each belongs to some kinds of work only; beside another kind it says nothing. Deliberately
//! absent: numbers (`roles`).

use alloc::string::{String, ToString};

use crate::{
    details::{Ailment, Cause, Supply},
    kind::{Kind, Slot},
    meaning::Meaning,
    rules::row::Row,
};

impl Row {
    /// Takes a sickness, a cause of harm, rain; false if it does not belong to this kind.
    pub(crate) fn take_sight(&mut self, meaning: Meaning) -> bool {
        let details = &mut self.details;
        let keeps = |slot| self.kind.keeps(slot);
        if let (Some(ailment), true) = (meaning.ailment(), keeps(Slot::Ailment)) {
            details.ailment = details.ailment.or(Some(ailment));
        } else if let (Some(ailment), Kind::Dead) = (meaning.ailment(), self.kind) {
            let cause = if ailment == Ailment::Termites {
                Cause::Termites
            } else {
                Cause::Other
            };
            details.cause = details.cause.or(Some(cause));
        } else if let (Some(cause), true) = (meaning.cause(), keeps(Slot::Cause)) {
            details.cause = match details.cause {
                None | Some(Cause::Other) => Some(cause),
                said => said,
            };
        } else if let (Meaning::Wetness(wetness), true) = (meaning, keeps(Slot::Wetness)) {
            details.wetness = Some(wetness);
        } else {
            return false;
        }
        true
    }

    /// Takes a product, crop, clone, material; false if it does not belong to this kind.
    pub(crate) fn take_thing(&mut self, meaning: Meaning, name: Option<&str>) -> bool {
        let feeds = self.kind.keeps(Slot::Product);
        let plants = self.kind.keeps(Slot::Material);
        let sows = self.kind.keeps(Slot::Species);
        let sprays = self.kind.keeps(Slot::Spray);
        let details = &mut self.details;
        if meaning == Meaning::Fertiliser && feeds || meaning == Meaning::Spray && sprays {
            keep_first(&mut details.product, name);
            if self.kind == Kind::Received {
                details.supply = Some(Supply::Fertiliser);
            }
        } else if matches!(meaning, Meaning::Crop | Meaning::Cover) && sows {
            keep_first(&mut details.species, name);
        } else if meaning == Meaning::Clone {
            keep_first(&mut details.clone_name, name);
        } else if let (Meaning::Material(material), true) = (meaning, plants) {
            details.material = details.material.or(Some(material));
        } else if let (Meaning::Per(per), true) = (meaning, feeds || sprays) {
            details.per = Some(per);
        } else {
            return false;
        }
        true
    }
}

fn keep_first(slot: &mut Option<String>, name: Option<&str>) {
    if slot.is_none() {
        *slot = name.map(ToString::to_string);
    }
}
