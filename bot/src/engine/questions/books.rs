//! Questions about the books of a group: who is missing, who was shown what, who has paid, and how
//! plants are shared out. Who keeps a book asks it in the words of an adviser: the leader about the
//! own group, a nursery about those that it raises for.

use budwood_parser::{Act, Effect, Kind, Known, Query, Reading, Sender, Topic};
use budwood_scheduler::{
    Group, GroupId, Person, PersonId, Role,
    figures::{Allotted, Money, Taught},
};

use super::{
    asked::{Asked, line},
    own_week::money,
};
use crate::{
    args,
    engine::{
        roles::{self, Reach, Verb},
        turn::Turn,
        view::View,
    },
    wording::{Key, Phrase, Value},
    words::limits,
};

/// Millionths of the money in a hundredth of it.
const MICRO_A_CENT: u64 = 10_000;

/// What it is to ask about this, if it is of the books.
fn looking(topic: Topic) -> Option<Verb> {
    let of_group = [Topic::Train, Topic::Paid, Topic::Bags];
    if of_group.contains(&topic) {
        return Some(Verb::LookAtBooks);
    }
    let of_plants = (topic == Topic::Order).then_some(Verb::LookAtPlants);
    let is_of_books = |verb: &Verb| matches!(verb, Verb::LookAtBooks | Verb::LookAtPlants);
    of_plants.or_else(|| Verb::of(topic).filter(is_of_books))
}

impl<'a> View<'a> {
    /// What a leader or a nursery asks of the books, or enters in them, in the words of an adviser.
    /// Work that the text tells of, read as any other text, stays work: "fed A 2 bags".
    pub(crate) fn of_books(
        self,
        (turn, role): (&Turn, Role),
        known: &Known<'_>,
        usual: &Reading,
    ) -> Option<Reading> {
        let may_look = [Verb::LookAtBooks, Verb::LookAtPlants];
        let may_look = may_look.into_iter().any(|verb| roles::may(role, verb));
        // Who asks about groups is heard so in any case.
        if !may_look || roles::may(role, Verb::Look) {
            return None;
        }
        let speaker = self.person(turn.speaker)?;
        let served = self.group_of(speaker);
        let groups: Vec<&str> = served.iter().map(|group| group.name.as_str()).collect();
        let known = Known {
            blocks: &[],
            groups: &groups,
            members: &[],
            sender: Sender::Adviser,
            ..*known
        };
        let reading = self.setup.reader.read(&turn.text, &known);
        let is_heard = match reading.acts.as_slice() {
            [Act::Query(query)] => {
                let of_books_only = !matches!(
                    query.topic,
                    Topic::Bags | Topic::Train | Topic::Paid | Topic::Order
                );
                let is_free = of_books_only || usual.reports.is_empty();
                looking(query.topic).is_some_and(|verb| roles::may(role, verb)) && is_free
            }
            _ => false,
        };
        (is_heard && reading.reports.is_empty()).then_some(reading)
    }

    /// The groups whose books somebody keeps or may look at, of those that a text names.
    pub(crate) fn books_asked(self, speaker: &Person, query: &Query) -> Vec<&'a Group> {
        let directory = &self.world.directory;
        let verb = looking(query.topic).unwrap_or(Verb::Look);
        let groups: Vec<&Group> = match roles::reach(speaker.role, verb) {
            Reach::Advised => directory.groups_of(speaker.id).collect(),
            Reach::OwnGroup => self.group_of(speaker).into_iter().collect(),
            Reach::Nobody => Vec::new(),
        };
        let named = query.group.as_deref();
        let is_meant =
            |group: &&Group| named.is_none_or(|name| group.name.eq_ignore_ascii_case(name));
        groups.into_iter().filter(is_meant).collect()
    }

    /// The answer to who keeps a book and asks about no groups; none when it is not of theirs.
    pub(crate) fn about_own_books(self, speaker: &Person, query: &Query) -> Option<Phrase> {
        let verb = looking(query.topic)?;
        let may = |verb| roles::may(speaker.role, verb);
        (may(verb) && !may(Verb::Look))
            .then(|| self.about_books(speaker, query))
            .flatten()
    }

    /// The answer to a question about the books.
    pub(crate) fn about_books(self, speaker: &Person, query: &Query) -> Option<Phrase> {
        let groups = self.books_asked(speaker, query);
        if groups.is_empty() {
            return Some(self.not_yours(speaker));
        }
        let kind = query.kind.map(shown_kind);
        let answer = |all: Key, whole: &dyn Fn(&Asked<'a, '_>) -> Phrase| {
            if let [group] = groups.as_slice() {
                return self.with_asked(group, whole);
            }
            let lines = groups
                .iter()
                .map(|group| self.with_asked(group, whole).into());
            Phrase::new(all, args! { "groups" => Value::List(lines.collect()) })
        };
        let several = groups.len() > 1;
        let asks = |topics: &[Topic]| topics.contains(&query.topic);
        Some(if asks(&[Topic::List]) {
            answer(Key::ListAll, &|asked| self.missing(asked, several))
        } else if asks(&[Topic::Train, Topic::Trained]) {
            answer(Key::TrainAll, &|asked| self.taught(asked, kind, several))
        } else if asks(&[Topic::Paid, Topic::Buying]) {
            answer(Key::PaidAll, &|asked| self.paid(asked, several))
        } else if asks(&[Topic::Stock, Topic::Sent, Topic::Allot, Topic::PickUp]) {
            answer(Key::AllotAll, &|asked| self.allotted(asked, several))
        } else if asks(&[Topic::Bags]) {
            answer(Key::FeedAll, &|asked| self.bags(asked))
        } else if asks(&[Topic::Order]) && several {
            answer(Key::OrderAll, &|asked| self.order_line(asked))
        } else if asks(&[Topic::Order]) {
            answer(Key::OrderAll, &|asked| self.order_whole(asked))
        } else {
            return None;
        })
    }

    fn missing(self, asked: &Asked<'a, '_>, short: bool) -> Phrase {
        if short {
            return self.missing_line(asked);
        }
        let missing = asked.table.missing(limits::MISSING_DAYS).value;
        let mut args = args! {
            "group" => Value::brief(&asked.group.name),
            "days" => limits::MISSING_DAYS,
            "of" => missing.of,
        };
        if missing.people.is_empty() {
            return Phrase::new(Key::ListNone, args);
        }
        let people = missing.people.iter().map(|(person, task)| {
            let name = asked.names.shown(*person);
            let args = args! { "name" => Value::name(&name), "task" => *task };
            Phrase::new(Key::ListPerson, args).into()
        });
        args.extend(args! {
            "told" => missing.of - missing.people.len(),
            "people" => Value::List(people.collect()),
        });
        Phrase::new(Key::ListGroup, args)
    }

    fn missing_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let missing = asked.table.missing(limits::MISSING_DAYS).value.people;
        let first = missing.first().map(|(person, task)| {
            let name = asked.names.shown(*person);
            let args = args! { "name" => Value::name(&name), "task" => *task };
            Phrase::new(Key::ListPerson, args)
        });
        line(asked.group, missing.len(), first)
    }

    fn taught(self, asked: &Asked<'a, '_>, kind: Option<Kind>, short: bool) -> Phrase {
        if short {
            return self.taught_line(asked, kind);
        }
        let taught = asked.table.taught(&asked.group.book, kind).value;
        let group = Value::brief(&asked.group.name);
        if let Some(phrase) = self.waits_for_training(asked, kind) {
            return phrase;
        }
        match (taught.as_slice(), kind) {
            ([], None) => Phrase::new(Key::TrainNone, args! { "group" => group }),
            ([], Some(kind)) => {
                Phrase::new(Key::TrainNoneOf, args! { "group" => group, "work" => kind })
            }
            ([only], _) => {
                let mut args = args! {
                    "group" => group,
                    "work" => only.kind,
                    "day" => Value::day_seen(only.on, self.today_in(asked.group)),
                    "came" => only.came,
                    "of" => asked.table.farmers.len(),
                };
                if only.missed.is_empty() {
                    return Phrase::new(Key::TrainWhole, args);
                }
                let missed = only.missed.iter().map(|person| asked.names.shown(*person));
                let missed = missed.map(|name| Value::name(&name));
                args.extend(args! { "people" => Value::List(missed.collect()) });
                Phrase::new(Key::TrainList, args)
            }
            (several, _) => {
                let topics = several.iter().map(|one| self.topic(asked, one).into());
                let args = args! { "group" => group, "topics" => Value::List(topics.collect()) };
                Phrase::new(Key::TrainTopics, args)
            }
        }
    }

    /// Who would be reminded if they had been shown how, where that is asked or nothing else is told.
    fn waits_for_training(self, asked: &Asked<'a, '_>, kind: Option<Kind>) -> Option<Phrase> {
        let book = &asked.group.book;
        let usual = book.trainings.is_empty().then_some(Kind::BranchInduction);
        let kind = kind.or(usual)?;
        let people = asked.table.to_be_shown(book, kind).value;
        if people.is_empty() {
            return None;
        }
        let farmers = asked.table.farmers.iter();
        let came = farmers.filter(|farmer| book.was_shown(farmer.person.id, kind));
        let names = people.iter().map(|person| asked.names.shown(*person));
        let args = args! {
            "group" => Value::brief(&asked.group.name),
            "work" => kind,
            "people" => Value::List(names.map(|name| Value::name(&name)).collect()),
            "came" => came.count(),
            "of" => asked.table.farmers.len(),
        };
        Some(Phrase::new(Key::TrainWaits, args))
    }

    fn topic(self, asked: &Asked<'a, '_>, one: &Taught) -> Phrase {
        let args = args! {
            "work" => one.kind,
            "day" => Value::day_seen(one.on, self.today_in(asked.group)),
            "came" => one.came,
            "of" => asked.table.farmers.len(),
        };
        Phrase::new(Key::TrainTopic, args)
    }

    fn taught_line(self, asked: &Asked<'a, '_>, kind: Option<Kind>) -> Phrase {
        let taught = asked.table.taught(&asked.group.book, kind).value;
        let first = taught.first().map(|one| self.topic(asked, one));
        let days = &asked.group.book.trainings;
        let days = days
            .iter()
            .filter(|one| kind.is_none_or(|kind| kind == one.kind));
        line(asked.group, days.count(), first)
    }

    fn paid(self, asked: &Asked<'a, '_>, short: bool) -> Phrase {
        if short {
            return self.paid_line(asked);
        }
        let money = asked.table.money(&asked.group.book).value;
        self.money_told(asked, &money)
    }

    /// How far the money for fertiliser is together; without a price only what was paid.
    fn money_told(self, asked: &Asked<'a, '_>, money: &Money) -> Phrase {
        let group = Value::brief(&asked.group.name);
        let held = cents(money.held);
        let Some(total) = money.total.filter(|_| !money.shares.is_empty()) else {
            return Phrase::new(Key::PaidNone, args! { "group" => group, "held" => held });
        };
        let open = money.shares.iter().filter_map(|share| {
            let left = share
                .cents?
                .checked_sub(share.paid)
                .filter(|left| *left > 0)?;
            let name = asked.names.shown(share.person);
            let args = args! { "name" => Value::name(&name), "cents" => cents(left) };
            Some(Phrase::new(Key::PaidPerson, args).into())
        });
        let open: Vec<Value> = open.collect();
        let day = money.on.map(|day| {
            let day = Value::day_seen(day, self.today_in(asked.group));
            Phrase::new(Key::BuyingOn, args! { "day" => day })
        });
        let mut args = args! {
            "group" => group,
            "paid" => money.shares.len() - open.len(),
            "of" => money.shares.len(),
            "held" => held,
            "total" => cents(total),
            "buying" => Value::Spare(vec![day, None]),
        };
        if open.is_empty() {
            return Phrase::new(Key::PaidWhole, args);
        }
        args.extend(args! { "people" => Value::List(open) });
        Phrase::new(Key::PaidList, args)
    }

    /// When fertiliser is bought, for how much, and what each pays.
    pub(crate) fn buying_told(self, group: GroupId) -> Option<Phrase> {
        let group = self.world.directory.group(group)?;
        let buying = group.book.buying.as_ref()?;
        let (on, price) = (buying.on?, buying.bag_cents?);
        Some(self.with_asked(group, |asked| {
            let money = asked.table.money(&group.book).value;
            let shares = money.shares.iter().map(|share| {
                let name = asked.names.shown(share.person);
                let amount = cents(share.cents.unwrap_or(0));
                let args = args! { "name" => Value::name(&name), "cents" => amount };
                Phrase::new(Key::PaidPerson, args).into()
            });
            let mut args = args! {
                "group" => Value::brief(&group.name),
                "day" => Value::day_seen(on, self.today_in(group)),
                "price" => cents(price),
            };
            if money.shares.is_empty() {
                return Phrase::new(Key::BuyingNone, args);
            }
            let left = args! { "kilograms" => kilograms(money.left_grams) };
            let left = (money.left_grams > 0).then(|| Phrase::new(Key::BuyingLeft, left));
            args.extend(args! {
                "bags" => money.bags,
                "left" => Value::Spare(vec![left, None]),
                "total" => cents(money.total.unwrap_or(0)),
                "people" => Value::List(shares.collect()),
            });
            Phrase::new(Key::BuyingSet, args)
        }))
    }

    fn paid_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let money = asked.table.money(&asked.group.book).value;
        let args = args! {
            "group" => Value::name(&asked.group.name),
            "held" => cents(money.held),
            "total" => cents(money.total.unwrap_or(0)),
        };
        Phrase::new(Key::PaidLine, args)
    }

    /// Who gets how many of the plants that there are, of all clones.
    pub(crate) fn plants_for(self, group: &'a Group) -> Vec<(PersonId, u32)> {
        let mut people: Vec<(PersonId, u32)> = Vec::new();
        let allotted = self.table(group).allotted(&group.book).value;
        for (person, plants) in allotted.into_iter().flat_map(|one| one.shares) {
            match people.iter_mut().find(|(known, _)| *known == person) {
                Some((_, all)) => *all = all.saturating_add(plants),
                None => people.push((person, plants)),
            }
        }
        people.retain(|(_, plants)| *plants > 0);
        people
    }

    /// Plants of each clone: what there is, what is ordered, and each one's share where it is short.
    fn allotted(self, asked: &Asked<'a, '_>, short: bool) -> Phrase {
        let allotted = asked.table.allotted(&asked.group.book).value;
        let group = Value::brief(&asked.group.name);
        if allotted.is_empty() {
            return Phrase::new(Key::AllotNone, args! { "group" => group });
        }
        let today = self.today_in(asked.group);
        let clones = allotted.iter().map(|one| {
            let day = one.ready_on.map(|day| {
                let day = Value::day_seen(day, today);
                Phrase::new(Key::AllotReady, args! { "day" => day })
            });
            let args = args! {
                "clone" => clone_told(one),
                "plants" => one.supply,
                "ordered" => one.ordered,
                "ready" => Value::Spare(vec![day, None]),
            };
            Value::from(Phrase::new(Key::AllotClone, args))
        });
        let mut told: Vec<Value> = clones.collect();
        if !short {
            let there = allotted.iter().filter(|one| one.supply > 0);
            told.extend(there.flat_map(|one| {
                one.shares.iter().map(|(person, plants)| {
                    let args = args! {
                        "name" => Value::name(&asked.names.shown(*person)),
                        "clone" => clone_told(one),
                        "plants" => *plants,
                    };
                    Value::from(Phrase::new(Key::AllotShare, args))
                })
            }));
        }
        let key = if short {
            Key::AllotLine
        } else {
            Key::AllotList
        };
        Phrase::new(
            key,
            args! { "group" => group, "people" => Value::List(told) },
        )
    }
}

fn clone_told(one: &Allotted) -> Value {
    let clone = one.clone_name.as_deref();
    clone.map_or_else(|| Phrase::from(Key::Untold).into(), Value::brief)
}

/// An amount of money, in hundredths, as it is written.
pub(crate) fn cents(cents: u64) -> String {
    money(cents.saturating_mul(MICRO_A_CENT))
}

#[expect(
    clippy::cast_precision_loss,
    reason = "no weight here needs so many digits"
)]
fn kilograms(grams: u64) -> f64 {
    grams as f64 / 1_000.0
}

/// What is shown is how trees are made to branch, whatever word the text has for it.
pub(crate) const fn shown_kind(kind: Kind) -> Kind {
    match kind.effect() {
        Effect::Branched | Effect::Tall | Effect::Induced => Kind::BranchInduction,
        Effect::Round
        | Effect::Pegs
        | Effect::Fed
        | Effect::Holes
        | Effect::Arrival
        | Effect::Planted
        | Effect::Dead
        | Effect::Replaced
        | Effect::Girth
        | Effect::Height
        | Effect::Sick
        | Effect::Harmed
        | Effect::Opened
        | Effect::Nothing
        | Effect::Rain => kind,
    }
}
