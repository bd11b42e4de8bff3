//! The books of a group, a fold over what was entered in them.

use alloc::{string::String, vec::Vec};

use budwood_parser::{Cause, Kind};
use chrono::NaiveDate;

use crate::words::{entered::Entered, id::PersonId};

/// Trainings that a book keeps; the oldest go first.
pub const TRAININGS_MAX: usize = 60;
/// Lots of plants that it keeps, of all nurseries and clones.
pub const LOTS_MAX: usize = 60;
/// Rounds of asking that it keeps.
pub const ROUNDS_MAX: usize = 20;

/// The books of a group.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Book {
    /// Trainings, in the order in which they were told.
    pub trainings: Vec<Training>,
    /// The fertiliser that is bought together next.
    pub buying: Option<Buying>,
    /// Plants that nurseries have for the group.
    pub lots: Vec<Lot>,
    /// Rounds of asking about harm, in the order in which they were made.
    pub asked: Vec<AskedRound>,
    /// The day on which plants are given out next.
    pub pick_up: Option<NaiveDate>,
}

/// Who was asked about harm to trees.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AskedRound {
    /// By what.
    pub cause: Cause,
    /// When.
    pub on: NaiveDate,
    /// Who.
    pub people: Vec<PersonId>,
}

/// Who was shown how a kind of work is done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Training {
    /// Which work.
    pub kind: Kind,
    /// When.
    pub on: NaiveDate,
    /// Who came.
    pub came: Vec<PersonId>,
}

/// Fertiliser that is bought together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Buying {
    /// The day, if it is known.
    pub on: Option<NaiveDate>,
    /// What a bag costs in hundredths, if it is known.
    pub bag_cents: Option<u64>,
    /// What each has paid so far, in hundredths.
    pub paid: Vec<(PersonId, u64)>,
}

/// Plants of one nursery and one clone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lot {
    /// Who raises them.
    pub nursery: PersonId,
    /// Of which clone, if it is told.
    pub clone_name: Option<String>,
    /// How many are left.
    pub plants: u32,
    /// The day from which they are ready.
    pub ready_on: NaiveDate,
    /// How many were given out.
    pub sent: u32,
}

impl Book {
    /// Takes an entry in.
    pub fn enter(&mut self, entered: &Entered) {
        match entered {
            Entered::Trained { kind, on, came } => self.trained(*kind, *on, came),
            Entered::Buying { on, bag_cents } => {
                // Another day is another purchase: what was paid for the last one is over.
                let same = self
                    .buying
                    .take()
                    .filter(|last| last.on.is_none_or(|day| day == *on));
                self.buying = Some(Buying {
                    on: Some(*on),
                    bag_cents: Some(*bag_cents),
                    paid: same.map(|last| last.paid).unwrap_or_default(),
                });
            }
            Entered::PickUp { on } => self.pick_up = Some(*on),
            Entered::Paid { person, cents } => {
                let buying = self.buying.get_or_insert(Buying {
                    on: None,
                    bag_cents: None,
                    paid: Vec::new(),
                });
                match buying.paid.iter_mut().find(|(who, _)| who == person) {
                    Some((_, paid)) => *paid = *cents,
                    None => buying.paid.push((*person, *cents)),
                }
            }
            Entered::Stocked {
                nursery,
                clone_name,
                plants,
                ready_on,
            } => {
                let lot = self.lot(*nursery, clone_name.as_deref(), *ready_on);
                if let Some(lot) = lot {
                    lot.plants = *plants;
                    lot.ready_on = *ready_on;
                }
            }
            Entered::Asked { cause, on, people } => {
                if self.asked.len() >= ROUNDS_MAX {
                    self.asked.remove(0);
                }
                self.asked.push(AskedRound {
                    cause: *cause,
                    on: *on,
                    people: people.clone(),
                });
            }
            Entered::Sent {
                nursery,
                clone_name,
                plants,
                on,
            } => {
                if let Some(lot) = self.lot(*nursery, clone_name.as_deref(), *on) {
                    lot.plants = lot.plants.saturating_sub(*plants);
                    lot.sent = lot.sent.saturating_add(*plants);
                }
            }
        }
    }

    fn trained(&mut self, kind: Kind, on: NaiveDate, came: &[PersonId]) {
        let same = |one: &&mut Training| one.kind == kind && one.on == on;
        let mut all = self.trainings.iter_mut();
        if let Some(known) = all.find(same) {
            for person in came {
                if !known.came.contains(person) {
                    known.came.push(*person);
                }
            }
            return;
        }
        if self.trainings.len() >= TRAININGS_MAX {
            self.trainings.remove(0);
        }
        self.trainings.push(Training {
            kind,
            on,
            came: came.to_vec(),
        });
    }

    fn lot(
        &mut self,
        nursery: PersonId,
        clone_name: Option<&str>,
        ready_on: NaiveDate,
    ) -> Option<&mut Lot> {
        let is_it = |lot: &Lot| lot.nursery == nursery && lot.clone_name.as_deref() == clone_name;
        let at = match self.lots.iter().position(is_it) {
            Some(at) => at,
            None => {
                if self.lots.len() >= LOTS_MAX {
                    self.lots.remove(0);
                }
                self.lots.push(Lot {
                    nursery,
                    clone_name: clone_name.map(Into::into),
                    plants: 0,
                    ready_on,
                    sent: 0,
                });
                self.lots.len() - 1
            }
        };
        self.lots.get_mut(at)
    }

    /// Whether somebody was shown how a kind of work is done.
    #[must_use]
    pub fn was_shown(&self, person: PersonId, kind: Kind) -> bool {
        let of_kind = self.trainings.iter().filter(|one| one.kind == kind);
        of_kind.into_iter().any(|one| one.came.contains(&person))
    }
}

#[cfg(test)]
mod tests {
    use std::{borrow::ToOwned, vec::Vec};

    use budwood_parser::Kind;
    use chrono::NaiveDate;

    use super::{Book, TRAININGS_MAX};
    use crate::words::{entered::Entered, id::PersonId};

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn trained(kind: Kind, on: &str, came: &[u32]) -> Entered {
        let came = came.iter().map(|person| PersonId(*person)).collect();
        let on = day(on);
        Entered::Trained { kind, on, came }
    }

    #[test]
    fn who_comes_later_is_added_to_the_same_day() {
        let mut book = Book::default();
        book.enter(&trained(Kind::Pruned, "2026-07-12", &[1, 2]));
        book.enter(&trained(Kind::Pruned, "2026-07-12", &[2, 3]));
        book.enter(&trained(Kind::Girth, "2026-07-12", &[4]));
        assert_eq!(book.trainings.len(), 2);
        assert_eq!(book.trainings[0].came, [1, 2, 3].map(PersonId));
        assert!(book.was_shown(PersonId(3), Kind::Pruned));
        assert!(!book.was_shown(PersonId(4), Kind::Pruned));
        for at in 0..TRAININGS_MAX {
            let on = day("2027-01-01") + chrono::TimeDelta::days(i64::try_from(at).unwrap());
            let came = Vec::new();
            let kind = Kind::Girth;
            book.enter(&Entered::Trained { kind, on, came });
        }
        assert_eq!(book.trainings.len(), TRAININGS_MAX);
        assert!(!book.was_shown(PersonId(3), Kind::Pruned));
    }

    #[test]
    fn another_buying_day_begins_a_new_collection() {
        let mut book = Book::default();
        let paid = |person, cents| Entered::Paid {
            person: PersonId(person),
            cents,
        };
        let buying = |on, bag_cents| Entered::Buying {
            on: day(on),
            bag_cents,
        };
        book.enter(&paid(1, 1_000));
        book.enter(&buying("2026-08-22", 3_650));
        book.enter(&paid(1, 4_740));
        book.enter(&paid(2, 3_000));
        book.enter(&buying("2026-08-22", 3_700));
        let paid_so_far = |book: &Book| book.buying.as_ref().unwrap().paid.clone();
        assert_eq!(
            paid_so_far(&book),
            [(PersonId(1), 4_740), (PersonId(2), 3_000)]
        );
        book.enter(&buying("2027-02-20", 3_700));
        assert_eq!(paid_so_far(&book), []);
    }

    #[test]
    fn what_is_given_out_is_no_stock_any_more() {
        let mut book = Book::default();
        let nursery = PersonId(9);
        let clone_name = Some("GT1".to_owned());
        let of = |plants| Entered::Stocked {
            nursery,
            clone_name: clone_name.clone(),
            plants,
            ready_on: day("2027-11-01"),
        };
        let sent = |plants| Entered::Sent {
            nursery,
            clone_name: clone_name.clone(),
            plants,
            on: day("2027-11-15"),
        };
        book.enter(&of(600));
        book.enter(&sent(250));
        assert_eq!((book.lots[0].plants, book.lots[0].sent), (350, 250));
        book.enter(&sent(500));
        assert_eq!((book.lots[0].plants, book.lots[0].sent), (0, 750));
        book.enter(&of(400));
        assert_eq!((book.lots.len(), book.lots[0].plants), (1, 400));
    }
}
