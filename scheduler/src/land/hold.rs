//! People, blocks and groups that are left in peace: no nudge goes to them until a day, or until a
//! person says go.
//!
//! Deliberately absent: who may hold, and in what words it is told.

use chrono::NaiveDate;

use crate::words::id::{BlockId, GroupId, PersonId};

/// What is left in peace, until when, and why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hold {
    /// Whom or what.
    pub held: Held,
    /// From this day.
    pub since: NaiveDate,
    /// The last day of it; none until a person says go.
    pub until: Option<NaiveDate>,
    /// Why.
    pub reason: Reason,
}

/// Whom or what is left in peace.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Held {
    /// A person, with all blocks.
    Person(PersonId),
    /// One block.
    Block(BlockId),
    /// All of a group.
    Group(GroupId),
}

/// Why somebody is left in peace.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reason {
    /// A death or an illness.
    Grief,
    /// The land is being sold.
    Sale,
    /// It is not settled whose the land is.
    Dispute,
    /// Something else.
    Other,
}

impl Reason {
    /// Every reason.
    pub const ALL: [Self; 4] = [Self::Grief, Self::Sale, Self::Dispute, Self::Other];

    /// The name in records and files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Grief => "grief",
            Self::Sale => "sale",
            Self::Dispute => "dispute",
            Self::Other => "other",
        }
    }

    /// The reason with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|reason| reason.name() == name)
    }
}

/// Whom a nudge is for, and about which block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Whom {
    /// Whose block it is.
    pub person: PersonId,
    /// Their group, if any.
    pub group: Option<GroupId>,
    /// The block.
    pub block: BlockId,
}

impl Hold {
    /// Whether it holds on this day.
    #[must_use]
    pub fn is_on(&self, today: NaiveDate) -> bool {
        self.since <= today && self.until.is_none_or(|until| today <= until)
    }

    /// Whether it is about them.
    #[must_use]
    pub fn is_about(&self, whom: &Whom) -> bool {
        match self.held {
            Held::Person(person) => person == whom.person,
            Held::Block(block) => block == whom.block,
            Held::Group(group) => whom.group == Some(group),
        }
    }
}

/// The hold under which they are on this day: of several the one that lasts longest.
#[must_use]
pub fn holding<'a>(holds: &'a [Hold], whom: &Whom, today: NaiveDate) -> Option<&'a Hold> {
    holds
        .iter()
        .filter(|hold| hold.is_about(whom) && hold.is_on(today))
        .max_by_key(|hold| hold.until.unwrap_or(NaiveDate::MAX))
}

#[cfg(test)]
mod tests {
    use chrono::NaiveDate;

    use super::{Held, Hold, Reason, Whom, holding};
    use crate::words::id::{BlockId, GroupId, PersonId};

    const WHOM: Whom = Whom {
        person: PersonId(1),
        group: Some(GroupId(7)),
        block: BlockId(3),
    };

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn hold(held: Held, until: Option<&str>) -> Hold {
        Hold {
            held,
            since: day("2027-06-10"),
            until: until.map(day),
            reason: Reason::Grief,
        }
    }

    #[test]
    fn a_hold_is_about_a_person_a_block_or_a_group() {
        for (held, is_about) in [
            (Held::Person(PersonId(1)), true),
            (Held::Person(PersonId(3)), false),
            (Held::Block(BlockId(3)), true),
            (Held::Block(BlockId(1)), false),
            (Held::Group(GroupId(7)), true),
            (Held::Group(GroupId(1)), false),
        ] {
            let holds = [hold(held, None)];
            let found = holding(&holds, &WHOM, day("2027-06-10"));
            assert_eq!(found.is_some(), is_about, "{held:?}");
        }
        let alone = Whom {
            group: None,
            ..WHOM
        };
        let holds = [hold(Held::Group(GroupId(7)), None)];
        assert_eq!(holding(&holds, &alone, day("2027-06-10")), None);
    }

    #[test]
    fn a_hold_lasts_until_its_day_or_a_word() {
        let is_on = |until: Option<&str>, today: &str| {
            hold(Held::Block(BlockId(3)), until).is_on(day(today))
        };
        assert!(!is_on(None, "2027-06-09"));
        assert!(is_on(None, "2027-06-10"));
        assert!(is_on(None, "2099-01-01"));
        assert!(is_on(Some("2027-07-10"), "2027-07-10"));
        assert!(!is_on(Some("2027-07-10"), "2027-07-11"));
    }

    #[test]
    fn of_several_the_longest_counts() {
        let holds = [
            hold(Held::Person(PersonId(1)), Some("2027-07-01")),
            hold(Held::Group(GroupId(7)), Some("2027-08-01")),
            hold(Held::Block(BlockId(9)), None),
        ];
        let found = holding(&holds, &WHOM, day("2027-06-20"));
        assert_eq!(found, Some(&holds[1]));
        assert_eq!(holding(&holds, &WHOM, day("2027-08-02")), None);
    }

    #[test]
    fn every_reason_has_a_name_of_its_own() {
        for reason in Reason::ALL {
            assert_eq!(Reason::from_name(reason.name()), Some(reason));
        }
        assert_eq!(Reason::from_name("peace"), None);
    }
}
