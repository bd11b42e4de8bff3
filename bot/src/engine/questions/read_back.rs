//! Facts as they are read back: with their block as it stands now, and who told them.

use budwood_parser::Kind;
use budwood_scheduler::{
    Block, BlockId, Body, Directory, Event, PersonId, Role, Source, TaskKind, decide::Draft,
    jobs::orders::plants_to_order, land::stand::places,
};
use chrono::NaiveDate;

use crate::{
    engine::{
        local_time::civil_day,
        said::Said,
        turn::{Telling, Turn},
        view::View,
    },
    wording::{self, After, Facts, Phrase},
};

/// The draft of a stored report, for corrections.
pub(crate) fn draft_of(directory: &Directory, event: &Event) -> Option<Draft> {
    let Body::Reported {
        block,
        kind,
        on,
        details,
    } = &event.body
    else {
        return None;
    };
    Some(Draft {
        kind: *kind,
        block: directory.block(*block).map(|block| block.name.clone()),
        said: None,
        on: *on,
        details: details.clone(),
    })
}

impl View<'_> {
    /// Who tells a fact by this text, of the blocks of this person.
    pub(crate) fn telling(self, turn: &Turn, target: PersonId) -> Telling {
        let role = self.person(turn.speaker).map(|person| person.role);
        let source = match role {
            Some(Role::Adviser) => Source::Visit,
            Some(Role::Leader) if target != turn.speaker => Source::Leader,
            _ => Source::OwnText,
        };
        Telling {
            by: Some(turn.speaker),
            source,
            message: Some(turn.message),
        }
    }

    /// A person's block by its name.
    pub(crate) fn block_named(self, owner: PersonId, name: Option<&str>) -> Option<BlockId> {
        let name = name?;
        self.world
            .directory
            .blocks_of(owner)
            .find(|block| block.name.eq_ignore_ascii_case(name))
            .map(|block| block.id)
    }

    /// What was stored of a block, and what it makes of it.
    pub(crate) fn read_back(self, turn: &Turn, block: BlockId, drafts: &[&Draft]) -> Option<Said> {
        self.with_stand(turn, block, drafts, wording::read_back)
    }

    /// Facts together with how their block stands now.
    pub(crate) fn with_stand(
        self,
        turn: &Turn,
        block: BlockId,
        drafts: &[&Draft],
        phrase: impl Fn(Facts<'_>, After<'_>) -> Phrase,
    ) -> Option<Said> {
        let record = self.world.directory.block(block)?;
        let owner = self.person(record.owner).or(self.person(turn.speaker))?;
        let state = self.state(block).cloned().unwrap_or_default();
        let after = After {
            state: &state,
            places: places(self.points_of(record), &state),
            next: drafts
                .last()
                .filter(|fact| !fact.details.is_part_of(fact.kind))
                .and_then(|fact| self.next_round(block, fact.kind)),
            ready: drafts
                .iter()
                .any(|fact| fact.kind == Kind::Girth)
                .then(|| self.outlook(block, self.today_of(turn.target)))
                .flatten()
                .map(|outlook| outlook.ready),
            adviser: self.adviser_name(owner),
            is_told: self.sickness_notice(turn, block, drafts).is_some(),
            ordered: self.firmly_ordered(record),
        };
        let label = self.label(turn, record.owner, &record.name);
        let facts = Facts {
            block: &label,
            facts: drafts,
            today: self.day_of(turn),
        };
        Some(self.reply(turn, phrase(facts, after)))
    }

    /// Plants that were ordered for a block.
    fn firmly_ordered(self, block: &Block) -> Option<u32> {
        let state = self.state(block.id)?;
        let is_firm = state.done.contains_key(&TaskKind::OrderPlants);
        let group = self.world.directory.group_of_block(block)?;
        let order = &self.calendar_of(group)?.order;
        let points = self.points_of(block).filter(|_| is_firm)?;
        plants_to_order(points, order.spares_pct, order.transit_loss_pct)
    }

    /// The day on which a text was sent, where its facts lie.
    pub(crate) fn day_of(self, turn: &Turn) -> NaiveDate {
        civil_day(turn.sent_at, self.zone_of(turn.target))
    }

    /// When the job that this kind of report proves comes again.
    fn next_round(self, block: BlockId, kind: Kind) -> Option<NaiveDate> {
        let owner = self.world.directory.block(block)?.owner;
        let today = self.today_of(owner);
        let wanted = if kind == Kind::BranchInduction {
            TaskKind::LookAtInduced
        } else {
            TaskKind::ALL
                .into_iter()
                .find(|task| task.proven_by() == Some(kind))?
        };
        self.tasks_of(block, today)
            .into_iter()
            .find(|task| task.kind == wanted && task.due > today)
            .map(|task| task.due)
    }
}
