//! Blocks and people by id: how they stand, without names and places.

use budwood_scheduler::{BlockState, Consent, Person, PersonId};

use super::{hectares, table};
use crate::{
    engine::view::View,
    sheet::{Cell, ColumnKind, Sheet},
};

impl<'a> View<'a> {
    pub(super) fn people_table(self) -> Sheet {
        let words = ColumnKind::Words;
        let mut sheet = table(
            "people",
            "People",
            &[
                ("person_id", ColumnKind::Number),
                ("role", words),
                ("group", words),
                ("language", words),
                ("texts", words),
                ("told_to_buyers", words),
            ],
        );
        let agreed = self
            .people_known()
            .filter(|person| person.sharing.is_given());
        for person in agreed {
            sheet.rows.push(vec![
                person.id.0.into(),
                person.role.name().into(),
                self.group_name(person.group).into(),
                person.language.as_str().into(),
                consent(&person.consent).into(),
                consent(&person.sharing).into(),
            ]);
        }
        sheet
    }

    /// Whether somebody agreed that others are told. Rows by id are of these alone: of all people they
    /// could be added up to the figures of a few, which are left out elsewhere.
    pub(super) fn shares(self, person: PersonId) -> bool {
        let person = self.person(person);
        person.is_some_and(|person| !person.erased && person.sharing.is_given())
    }

    /// Everybody who was not taken out.
    pub(super) fn people_known(self) -> impl Iterator<Item = &'a Person> {
        let persons = self.world.directory.persons();
        persons.filter(|person| !person.erased)
    }

    pub(super) fn blocks_table(self) -> Sheet {
        let (number, words, day) = (ColumnKind::Number, ColumnKind::Words, ColumnKind::Day);
        let mut sheet = table(
            "blocks",
            "Blocks as they stand",
            &[
                ("block_id", number),
                ("person_id", number),
                ("group", words),
                ("area_ha", number),
                ("area_source", words),
                ("clone", words),
                ("planted_on", day),
                ("planted", number),
                ("first_alive", number),
                ("filled_alive", number),
                ("gaps", number),
            ],
        );
        let empty = BlockState::default();
        for block in self.world.directory.blocks() {
            let owner = self.person(block.owner);
            let Some(owner) = owner.filter(|owner| self.shares(owner.id)) else {
                continue;
            };
            let state = self.state(block.id).unwrap_or(&empty);
            let living = state.living();
            sheet.rows.push(vec![
                block.id.0.into(),
                owner.id.0.into(),
                self.group_name(owner.group).into(),
                hectares(block.hectares()),
                block.area_source.as_str().into(),
                block.clone_name.as_deref().into(),
                state.planted_on().map_or(Cell::Blank, Cell::Day),
                living.planted.into(),
                living.first.into(),
                living.filled.into(),
                living.gaps.into(),
            ]);
        }
        sheet
    }
}

const fn consent(consent: &Consent) -> &'static str {
    match consent {
        Consent::Unknown => "not asked",
        Consent::Given { .. } => "yes",
        Consent::Withdrawn { .. } => "no",
    }
}
