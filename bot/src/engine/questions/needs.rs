//! Questions of the adviser about what has to be bought: plants and fertiliser.

use budwood_parser::Query;
use budwood_scheduler::{
    Person,
    figures::{Wanted, by_clone},
};

use super::{
    asked::{Asked, line},
    losses::clone_name,
};
use crate::{
    args,
    engine::view::View,
    wording::{Key, Phrase, Value},
};

/// Plants of some plantings.
fn plants<'w>(wanted: impl IntoIterator<Item = &'w Wanted>) -> u32 {
    let plants = wanted.into_iter().map(|one| one.plants);
    plants.fold(0, u32::saturating_add)
}

fn firm(wanted: &[Wanted]) -> u32 {
    plants(wanted.iter().filter(|one| one.is_firm))
}

impl<'a> View<'a> {
    /// ORDER: plants for plantings to come, firm and wished, by clone and day.
    pub(super) fn orders(self, speaker: &Person, query: &Query) -> Phrase {
        if let Some(group) = self.group_asked(speaker, query) {
            let year = query.number.and_then(|number| i32::try_from(number).ok());
            let year = year.filter(|year| (2000..2200).contains(year));
            return self.order_of(group.name.as_str(), &self.table(group).wanted(year).value);
        }
        self.of_groups(
            (speaker, query),
            Key::OrderAll,
            Self::order_whole,
            Self::order_line,
        )
    }

    pub(super) fn order_whole(self, asked: &Asked<'a, '_>) -> Phrase {
        self.order_of(&asked.group.name, &asked.table.wanted(None).value)
    }

    fn order_of(self, group: &str, wanted: &[Wanted]) -> Phrase {
        if wanted.is_empty() {
            return Phrase::new(Key::OrderNone, args! { "group" => group });
        }
        let parts = by_clone(wanted).into_iter().map(|(clone, day, plants)| {
            let args = args! {
                "clone" => clone_name(clone),
                "plants" => plants,
                "day" => Value::DayYear(day),
            };
            Phrase::new(Key::OrderPart, args).into()
        });
        let open = wanted.iter().filter(|one| !one.is_firm);
        let by = open.filter_map(|one| one.order_by).min();
        let by = by.map(|day| Phrase::new(Key::OrderBy, args! { "day" => Value::DayYear(day) }));
        let firm = firm(wanted);
        let args = args! {
            "group" => Value::brief(group),
            "farmers" => wanted.len(),
            "land" => Value::Land(wanted.iter().map(|one| one.hectares).sum()),
            "plants" => plants(wanted),
            "firm" => firm,
            "wished" => plants(wanted).saturating_sub(firm),
            "by" => Value::Spare(vec![by, None]),
            "parts" => Value::List(parts.collect()),
        };
        Phrase::new(Key::OrderList, args)
    }

    pub(super) fn order_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let wanted = asked.table.wanted(None).value;
        let firm = firm(&wanted);
        let first = (firm > 0).then(|| Phrase::new(Key::OrderFirm, args! { "firm" => firm }));
        line(asked.group, plants(&wanted), first)
    }

    /// BAGS: the feed that is due, in kilograms and bags, together and alone, of each product, and each
    /// one's share.
    pub(super) fn bags(self, asked: &Asked<'a, '_>) -> Phrase {
        let feed = asked.table.feed_due().value;
        let group = asked.group.name.as_str();
        let Some(bags) = feed.bags.filter(|_| !feed.shares.is_empty()) else {
            return Phrase::new(Key::FeedNone, args! { "group" => group });
        };
        // What is bought comes first, where it is more than one product.
        let products = feed.products.iter().filter(|_| feed.products.len() > 1);
        let products = products.map(|(product, kilograms)| {
            let args = args! { "name" => product.as_str(), "kilograms" => *kilograms };
            Value::from(Phrase::new(Key::FeedShare, args))
        });
        let shares = feed.shares.iter().map(|(person, kilograms)| {
            let args = args! {
                "name" => Value::name(&asked.names.shown(*person)),
                "kilograms" => *kilograms,
            };
            Phrase::new(Key::FeedShare, args).into()
        });
        let shares = products.chain(shares);
        let args = args! {
            "group" => Value::brief(group),
            "trees" => feed.trees,
            "kilograms" => feed.kilograms(),
            "pooled" => bags.pooled,
            "alone" => bags.alone,
            "farmers" => feed.shares.len(),
            "people" => Value::List(shares.collect()),
        };
        Phrase::new(Key::FeedGroup, args)
    }

    pub(super) fn bags_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let feed = asked.table.feed_due().value;
        let args = args! { "kilograms" => feed.kilograms() };
        let first = (!feed.shares.is_empty()).then(|| Phrase::new(Key::FeedWeight, args));
        let bags = feed.bags.map_or(0, |bags| bags.pooled);
        line(asked.group, bags, first)
    }
}
