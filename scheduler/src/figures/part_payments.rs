//! Part payments of a programme: whose stand passes, who is short and by how many trees, who lacks a
//! visit.
//!
//! Money never follows a figure that the farmer alone has told: somebody else must have counted the
//! trees, and been there lately. Deaths that the farmer tells after that count; trees that only the
//! farmer has added do not, until they were counted again.

use alloc::vec::Vec;

use budwood_parser::Effect;
use chrono::{NaiveDate, TimeDelta};

use super::{Figure, Known, Name, Stand, Table, Window};
use crate::{
    handbook::calendar::PartPayment,
    land::directory::Block,
    sums::days::months_after,
    words::{event::Source, id::PersonId},
};

/// How a block stands before a part payment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// Everything is there.
    Passes,
    /// So many living trees too few.
    Short(u32),
    /// There are enough, by what is told, and nobody has seen it lately.
    Unseen,
    /// It is not known how large the land is.
    NoSize,
    /// The trees are too young.
    TooYoung,
}

impl Table<'_> {
    /// How each planted block stands before a part payment, with whose it is: who is short first,
    /// by most trees. `facts` gives what is known of a block.
    #[must_use]
    pub fn part_payment(
        &self,
        part: &PartPayment,
        facts: impl Fn(&Block) -> Vec<Known>,
    ) -> Figure<Vec<(PersonId, Standing)>> {
        let mut found = Vec::new();
        for farmer in &self.farmers {
            for stand in &farmer.stands {
                let known = || facts(stand.block);
                if let Some(standing) = standing(stand, part, farmer.today, known) {
                    found.push((farmer.person.id, standing));
                }
            }
        }
        found.sort_by_key(|(_, standing)| match standing {
            Standing::Short(trees) => (0, u32::MAX - trees),
            Standing::Unseen => (1, 0),
            Standing::NoSize => (2, 0),
            Standing::Passes => (3, 0),
            Standing::TooYoung => (4, 0),
        });
        let window = Window::days(part.visit_days.into());
        self.figure(Name::PartPayment, window, found)
    }
}

/// None where nothing is planted.
fn standing(
    stand: &Stand<'_>,
    part: &PartPayment,
    today: NaiveDate,
    facts: impl Fn() -> Vec<Known>,
) -> Option<Standing> {
    let planted_on = stand.state.planted_on()?;
    if months_after(planted_on, part.months).is_none_or(|day| today < day) {
        return Some(Standing::TooYoung);
    }
    let Some(hectares) = stand.block.hectares() else {
        return Some(Standing::NoSize);
    };
    let needed = trees_needed(part.stand_per_ha, hectares);
    let short = needed.saturating_sub(stand.state.living().alive());
    if short > 0 {
        return Some(Standing::Short(short));
    }
    let since = today - TimeDelta::days(part.visit_days.into());
    Some(if is_seen(&facts(), since) {
        Standing::Passes
    } else {
        Standing::Unseen
    })
}

/// Somebody was there since that day, and the trees were counted by somebody else than the farmer,
/// who added none alone after that.
fn is_seen(facts: &[Known], since: NaiveDate) -> bool {
    let is_told_alone = |fact: &&Known| matches!(fact.source, Source::OwnText | Source::Bot);
    let visits = facts.iter().filter(|fact| fact.source == Source::Visit);
    let visited = visits.map(|fact| fact.on).max();
    let counts = facts
        .iter()
        .filter(|fact| fact.kind.effect() == Effect::Dead);
    let counted = counts
        .filter(|fact| !is_told_alone(fact))
        .map(|fact| fact.on);
    let added = facts
        .iter()
        .filter(is_told_alone)
        .filter(|fact| matches!(fact.kind.effect(), Effect::Planted | Effect::Replaced));
    let added = added.map(|fact| fact.on).max();
    visited.is_some_and(|day| day >= since)
        && counted
            .max()
            .is_some_and(|day| added.is_none_or(|added| added < day))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "kept between none and what is too many for any block"
)]
fn trees_needed(per_hectare: f64, hectares: f64) -> u32 {
    let trees = libm::ceil(per_hectare * hectares - 1e-6);
    trees.clamp(0.0, f64::from(u32::MAX)) as u32
}

#[cfg(test)]
mod tests {
    use budwood_parser::Kind;

    use super::{is_seen, trees_needed};
    use crate::{figures::Known, words::event::Source};

    fn fact(kind: Kind, source: Source, on: &str) -> Known {
        Known {
            kind,
            source,
            on: on.parse().unwrap(),
            count: None,
            cause: None,
        }
    }

    /// The trap of a grant: a record of the farmer's own that is taken for proof.
    #[test]
    fn what_a_farmer_alone_has_told_never_passes() {
        let visit = |kind, on| fact(kind, Source::Visit, on);
        let own = |kind, on| fact(kind, Source::OwnText, on);
        let seen = |facts: &[Known]| is_seen(facts, "2026-09-12".parse().unwrap());
        let counted = visit(Kind::Dead, "2026-10-01");
        assert!(seen(&[counted]));
        assert!(!seen(&[own(Kind::Dead, "2026-10-01")]), "told alone");
        assert!(
            !seen(&[fact(Kind::Dead, Source::Sheet, "2026-10-01")]),
            "nobody was there"
        );
        assert!(!seen(&[visit(Kind::Dead, "2026-09-11")]), "too long ago");
        let girth = visit(Kind::Girth, "2026-11-01");
        assert!(
            !seen(&[girth, own(Kind::Dead, "2026-10-01")]),
            "nobody counted"
        );
        assert!(seen(&[
            girth,
            fact(Kind::Dead, Source::Sheet, "2026-06-10")
        ]));
        assert!(
            seen(&[counted, own(Kind::Dead, "2026-10-20")]),
            "fewer are believed"
        );
        let more = own(Kind::Replaced, "2026-10-20");
        assert!(!seen(&[counted, more]), "more are not");
        assert!(seen(&[counted, more, visit(Kind::Dead, "2026-10-21")]));
        assert!(!seen(&[own(Kind::Planted, "2026-10-02"), counted]));
    }

    /// 420 on 1.1 ha are 462, though 420 x 1.1 is a little more in binary; half a tree is a tree.
    #[test]
    fn trees_of_a_stand_are_whole() {
        assert_eq!(trees_needed(420.0, 1.1), 462);
        assert_eq!(trees_needed(401.0, 0.5), 201);
        assert_eq!(trees_needed(400.0, 0.0), 0);
    }
}
