//! What goes to partners is written down before it goes; outlines of blocks are taken in.

use budwood_scheduler::GroupId;
use chrono::NaiveDate;

use crate::{
    engine::step::Step,
    words::{
        given::{Given, ParcelKind},
        limits,
        outline::{HowTaken, TakenOutline},
        outline_area::Ground,
    },
};

/// That something is about to be given to a partner.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Giving {
    /// What.
    pub kind: ParcelKind,
    /// To whom.
    pub to: String,
    /// What for.
    pub purpose: String,
    /// Of how many people.
    pub people: u32,
    /// Of how many blocks.
    pub blocks: u32,
    /// The sum of the list of its files.
    pub sha256: String,
}

/// An outline as a file has it, and of which block it is.
#[derive(Clone, Debug, PartialEq)]
pub struct OutlineOrder {
    /// The group.
    pub group: String,
    /// The farmer's whole name.
    pub farmer: String,
    /// The block.
    pub block: String,
    /// Corners as lines or GeoJSON.
    pub text: String,
    /// How it was taken.
    pub how: HowTaken,
    /// When.
    pub on: NaiveDate,
}

impl Step<'_> {
    /// Writes down what is given, or says why it must not be.
    pub(crate) fn give(&mut self, giving: Giving) {
        let is_told =
            |text: &str| !text.trim().is_empty() && text.chars().count() <= limits::GIVEN_CHARS_MAX;
        if !is_told(&giving.to) || !is_told(&giving.purpose) {
            let why = format!(
                "say to whom it goes and what for, each in at most {} letters",
                limits::GIVEN_CHARS_MAX
            );
            self.told.page = Some(Err(why));
            return;
        }
        let last = self.world.givens.last_key_value();
        let number = last.map_or(1, |(number, _)| number.saturating_add(1));
        let given = Given {
            number,
            at: self.now,
            kind: giving.kind,
            to: giving.to,
            purpose: giving.purpose,
            people: giving.people,
            blocks: giving.blocks,
            sha256: giving.sha256,
        };
        self.change.givens.push(given.clone());
        self.world.givens.insert(number, given);
        self.told.page = Some(Ok(number.to_string()));
    }

    /// Takes an outline in.
    pub(crate) fn outline(&mut self, order: &OutlineOrder) {
        self.told.page = Some(self.take_outline(order));
    }

    fn take_outline(&mut self, order: &OutlineOrder) -> Result<String, String> {
        let directory = &self.world.directory;
        let group = directory.group_named(&order.group);
        let group: GroupId = group
            .ok_or_else(|| format!("there is no group {}", order.group))?
            .id;
        let is_named = |name: &str| name.eq_ignore_ascii_case(&order.farmer);
        let owner = directory.members(group).find(|one| is_named(&one.name));
        let owner =
            owner.ok_or_else(|| format!("nobody in {} is called {}", order.group, order.farmer))?;
        let is_block = |name: &str| name.eq_ignore_ascii_case(&order.block);
        let block = directory
            .blocks_of(owner.id)
            .find(|one| is_block(&one.name));
        let block = block
            .ok_or_else(|| format!("{} has no block {}", owner.name, order.block))?
            .clone();
        let corners = Ground::corners(&order.text).map_err(|error| error.to_string())?;
        let ground = Ground::of(&corners).map_err(|error| error.to_string())?;
        if order.on > self.view().today_of(owner.id) {
            return Err(format!("{} is yet to come", order.on));
        }
        let mut page = format!("{:.4} ha, {} corners", ground.hectares, corners.len());
        if let Some(told) = block.hectares() {
            page.push_str(&format!("; on record are {told:.2} ha"));
        }
        let outline = TakenOutline {
            block: block.id,
            corners,
            how: order.how,
            on: order.on,
        };
        self.change.outlines.push(outline.clone());
        self.world.outlines.insert(block.id, outline);
        Ok(page)
    }
}
