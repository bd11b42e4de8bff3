//! Which gateways there are, and by which one a text leaves. Pure: nothing is sent here.
//!
//! People answer the number that they know, so a text goes back the way the phone last wrote;
//! else by the longest prefix of the number that a route names; else by the first gateway. One
//! that has been out for a while is passed over. Deliberately absent: when a gateway counts as
//! out, which the engine knows (`links`).

/// The gateway of the demo, the terminal and tests, which leaves this computer by none.
pub const HANDSET: &str = "handset";

/// The gateways by which texts leave, in the order of the configuration.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ways {
    /// Gateways that send.
    pub gateways: Vec<Way>,
    /// Gateways that only bring texts.
    pub receiving: Vec<String>,
    /// Which numbers leave by which.
    pub routes: Vec<Route>,
}

/// A gateway that sends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// Its name.
    pub name: String,
    /// Whether a second try of the same text is certain not to give a second text.
    pub idempotent: bool,
    /// What a part costs, in millionths of the money that gateways are paid in.
    pub price_micro: Option<u64>,
    /// How many parts may leave by it.
    pub ration: Ration,
}

/// How many parts may leave; without bound where nothing is set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Ration {
    /// In a minute of the clock.
    pub a_minute: Option<u32>,
    /// In a day (UTC).
    pub a_day: Option<u32>,
}

/// Numbers, and the gateways for them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Route {
    /// How the numbers begin, with the plus. Without any it is for every number.
    pub prefixes: Vec<String>,
    /// The gateways, the best first.
    pub gateways: Vec<String>,
}

impl Ways {
    /// One gateway for everything.
    #[must_use]
    pub fn one(name: &str, idempotent: bool) -> Self {
        let name = name.to_owned();
        Self {
            gateways: vec![Way {
                name,
                idempotent,
                price_micro: None,
                ration: Ration::default(),
            }],
            ..Self::default()
        }
    }

    /// The names of all of them.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        let sending = self.gateways.iter().map(|way| way.name.as_str());
        sending.chain(self.receiving.iter().map(String::as_str))
    }

    /// The gateway of this name, if texts leave by it.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Way> {
        self.gateways.iter().find(|way| way.name == name)
    }

    /// Whether an unanswered try through this gateway may be tried again.
    #[must_use]
    pub fn is_idempotent(&self, name: &str) -> bool {
        self.get(name).is_some_and(|way| way.idempotent)
    }

    /// The gateway for a text to this number, whose phone last wrote through `heard_by`. Where all
    /// are out the text waits for the one that would be best. None when texts leave by none.
    #[must_use]
    pub fn choose(
        &self,
        number: &str,
        heard_by: Option<&str>,
        is_out: impl Fn(&str) -> bool,
    ) -> Option<&str> {
        let on_route = self.route_of(number).into_iter().flat_map(|route| {
            let names = route.gateways.iter();
            names.filter_map(|name| self.get(name))
        });
        let mut in_order = heard_by
            .and_then(|name| self.get(name))
            .into_iter()
            .chain(on_route)
            .chain(&self.gateways)
            .map(|way| way.name.as_str());
        let best = in_order.clone().next();
        in_order.find(|name| !is_out(name)).or(best)
    }

    fn route_of(&self, number: &str) -> Option<&Route> {
        let fits = |route: &Route| {
            if route.prefixes.is_empty() {
                return Some(0);
            }
            let fitting = route
                .prefixes
                .iter()
                .filter(|prefix| number.starts_with(*prefix));
            fitting.map(String::len).max()
        };
        // Of routes that fit equally well the first counts.
        self.routes
            .iter()
            .rev()
            .filter_map(|route| Some((fits(route)?, route)))
            .max_by_key(|(length, _)| *length)
            .map(|(_, route)| route)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ways() -> Ways {
        let way = |name: &str| Way {
            name: name.to_owned(),
            idempotent: name == "centre",
            price_micro: None,
            ration: Ration::default(),
        };
        let route = |prefixes: &[&str], gateways: &[&str]| Route {
            prefixes: prefixes.iter().map(|one| (*one).to_owned()).collect(),
            gateways: gateways.iter().map(|one| (*one).to_owned()).collect(),
        };
        Ways {
            gateways: ["sim", "centre", "abroad"].map(way).into(),
            receiving: Vec::new(),
            routes: vec![
                route(&["+4477009001", "+4488"], &["centre", "sim"]),
                route(&["+44"], &["sim"]),
                route(&[], &["abroad"]),
            ],
        }
    }

    #[test]
    fn a_text_leaves_the_way_the_phone_wrote_then_by_prefix_then_by_the_first() {
        let ways = ways();
        let up = |_: &str| false;
        for (number, heard_by, expected) in [
            ("+447700900123", None, "centre"),
            ("+447700900923", None, "sim"),
            ("+390000000000", None, "abroad"),
            ("+447700900123", Some("abroad"), "abroad"),
            // It wrote through one that is gone now.
            ("+447700900123", Some("line"), "centre"),
        ] {
            let chosen = ways.choose(number, heard_by, up);
            assert_eq!(chosen, Some(expected), "{number} {heard_by:?}");
        }
        let plain = Ways {
            routes: Vec::new(),
            ..ways
        };
        assert_eq!(plain.choose("+390000000000", None, up), Some("sim"));
        assert_eq!(Ways::default().choose("+447700900123", None, up), None);
    }

    #[test]
    fn who_is_out_is_passed_over_and_waited_for_when_all_are() {
        let ways = ways();
        let number = "+447700900123";
        let out = |names: &'static [&str]| move |name: &str| names.contains(&name);
        let chosen = |heard_by, names| ways.choose(number, heard_by, out(names));
        assert_eq!(chosen(None, &["centre"]), Some("sim"));
        assert_eq!(chosen(None, &["centre", "sim"]), Some("abroad"));
        assert_eq!(chosen(Some("abroad"), &["abroad"]), Some("centre"));
        assert_eq!(chosen(None, &["centre", "sim", "abroad"]), Some("centre"));
    }

    #[test]
    fn only_a_gateway_that_is_known_can_be_tried_twice() {
        assert!(ways().is_idempotent("centre"));
        assert!(!ways().is_idempotent("sim"));
        assert!(!ways().is_idempotent("elsewhere"));
    }
}
