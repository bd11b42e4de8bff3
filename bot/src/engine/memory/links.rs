//! Which gateways take texts now, in memory only: after a start all of them are tried.
//!
//! A gateway is paused after it said that it takes nothing for now, and out once that has lasted
//! for a while or its line is down: then texts go by another one. What a gateway says of its own
//! line and what became of tries are kept apart, because many kinds know no more of their line
//! than that. What both tell a person who watches is here too.

use std::collections::BTreeMap;

use chrono::{DateTime, TimeDelta, Utc};

use super::silence::Heard;
use crate::words::{
    limits,
    traffic::{GatewayHealth, Link, Passed, Signs, Whose},
};

/// How gateways are, by name.
#[derive(Default)]
pub(crate) struct Links {
    states: BTreeMap<String, State>,
    /// When the service began.
    began: Option<DateTime<Utc>>,
}

#[derive(Default)]
struct State {
    /// Since when its line is down, as it says itself.
    down_since: Option<DateTime<Utc>>,
    pause: Option<Pause>,
    /// Until when it has sent all that it may.
    full_until: Option<DateTime<Utc>>,
    heard: Heard,
    /// Whether it was told that it is silent.
    silence_told: bool,
    last_receipt: Option<DateTime<Utc>>,
    last_out: Option<DateTime<Utc>>,
    refused: Refusals,
    passed: Passed,
    signs: Signs,
}

/// Texts not taken since the last that was.
#[derive(Default)]
struct Refusals {
    times: u32,
    /// Some of them because the gateway is not set up.
    set_up: bool,
    /// What the last one met.
    why: String,
}

/// What a person must see to.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum Trouble {
    /// It does not take texts.
    #[error("{why}; texts not taken in a row: {times}")]
    NotTaken { why: String, times: u32 },
    /// Its line is down for a while.
    #[error("its line is down")]
    Down,
    /// It says so itself.
    #[error("{0}")]
    Says(String),
    /// Texts came by it, and none for longer than is usual.
    #[error("nothing came in for {hours} hours, longer than in the week before")]
    Silent { hours: i64 },
}

/// A gateway that takes nothing for now.
#[derive(Clone, Copy)]
struct Pause {
    since: DateTime<Utc>,
    until: DateTime<Utc>,
    /// How often in a row it was tried in vain.
    times: u32,
}

impl Links {
    /// A gateway tells how its line is.
    pub(crate) fn told(&mut self, gateway: &str, link: &Link) {
        let state = self.states.entry(gateway.to_owned()).or_default();
        state.down_since = match link {
            Link::Up => None,
            Link::Down { since, .. } => Some(*since),
        };
    }

    /// The service begins. Who is silent by now was told of before.
    pub(crate) fn begin(&mut self, now: DateTime<Utc>) {
        self.began = Some(now);
        for state in self.states.values_mut() {
            state.silence_told = state.is_silent(self.began, now);
        }
    }

    /// A text or a receipt came by a gateway, now or before the start.
    pub(crate) fn heard(&mut self, gateway: &str, at: DateTime<Utc>) {
        let state = self.states.entry(gateway.to_owned()).or_default();
        state.heard.note(at);
        state.silence_told = false;
    }

    /// A receipt came by a gateway.
    pub(crate) fn heard_receipt(&mut self, gateway: &str, at: DateTime<Utc>) {
        self.heard(gateway, at);
        let state = self.states.entry(gateway.to_owned()).or_default();
        state.last_receipt = state.last_receipt.max(Some(at));
        state.passed.receipts += 1;
    }

    /// Whether nothing came by it for longer than is usual.
    pub(crate) fn is_silent(&self, gateway: &str, now: DateTime<Utc>) -> bool {
        let state = self.states.get(gateway);
        state.is_some_and(|state| state.is_silent(self.began, now))
    }

    /// Whether one of these has fallen silent since this was asked last.
    pub(crate) fn note_silence<'a>(
        &mut self,
        names: impl Iterator<Item = &'a str>,
        now: DateTime<Utc>,
    ) -> bool {
        let mut is_new = false;
        for name in names {
            if let Some(state) = self.states.get_mut(name)
                && state.is_silent(self.began, now)
            {
                is_new |= !std::mem::replace(&mut state.silence_told, true);
            }
        }
        is_new
    }

    /// When the next of these falls silent, unless something comes by it.
    pub(crate) fn next_silence<'a>(
        &self,
        names: impl Iterator<Item = &'a str>,
    ) -> Option<DateTime<Utc>> {
        let states = names.filter_map(|name| self.states.get(name));
        let untold = states.filter(|state| !state.silence_told);
        untold
            .filter_map(|state| state.heard.silent_from(self.began))
            .min()
    }

    /// A gateway says something new of itself.
    pub(crate) fn says(&mut self, gateway: &str, signs: Signs) {
        self.states.entry(gateway.to_owned()).or_default().signs = signs;
    }

    /// What passed a gateway, to be counted on.
    pub(crate) fn passed(&mut self, gateway: &str) -> &mut Passed {
        &mut self.states.entry(gateway.to_owned()).or_default().passed
    }

    /// A gateway took a text.
    pub(crate) fn took(&mut self, gateway: &str, at: DateTime<Utc>) {
        let state = self.states.entry(gateway.to_owned()).or_default();
        state.last_out = state.last_out.max(Some(at));
        state.refused = Refusals::default();
        state.pause = None;
    }

    /// A gateway did not take a text.
    pub(crate) fn refused(&mut self, gateway: &str, whose: Whose, why: String) {
        let refused = &mut self.states.entry(gateway.to_owned()).or_default().refused;
        refused.times = refused.times.saturating_add(1);
        refused.set_up |= whose == Whose::SetUp;
        refused.why = why;
    }

    /// How these gateways are doing.
    pub(crate) fn health<'a>(
        &self,
        names: impl Iterator<Item = &'a str>,
        oldest_waiting: impl Fn(&str) -> Option<DateTime<Utc>>,
        now: DateTime<Utc>,
    ) -> Vec<GatewayHealth> {
        let nothing = State::default();
        names
            .map(|name| {
                let state = self.states.get(name).unwrap_or(&nothing);
                GatewayHealth {
                    name: name.to_owned(),
                    down_since: state.down_since,
                    last_in: state.heard.last(),
                    last_receipt: state.last_receipt,
                    last_out: state.last_out,
                    oldest_waiting: oldest_waiting(name),
                    refused_in_a_row: state.refused.times,
                    passed: state.passed,
                    signal_pct: state.signs.signal_pct,
                    balance: state.signs.balance.clone(),
                    trouble: (state.trouble(self.began, now))
                        .map(|trouble| format!("gateway {name}: {trouble}")),
                }
            })
            .collect()
    }

    /// What a person must see to at this one.
    pub(crate) fn trouble(&self, gateway: &str, now: DateTime<Utc>) -> Option<Trouble> {
        self.states.get(gateway)?.trouble(self.began, now)
    }

    /// When the last text or receipt came by any of these.
    pub(crate) fn last_in<'a>(
        &self,
        names: impl Iterator<Item = &'a str>,
    ) -> Option<DateTime<Utc>> {
        let states = names.filter_map(|name| self.states.get(name));
        states.filter_map(|state| state.heard.last()).max()
    }

    /// A gateway took a text, or said at least what is wrong with one.
    pub(crate) fn works(&mut self, gateway: &str) {
        if let Some(state) = self.states.get_mut(gateway) {
            state.pause = None;
        }
    }

    /// A gateway takes nothing for now; gives until when it is left alone. The pause doubles each
    /// time, up to a limit, and is never shorter than the gateway asks for.
    pub(crate) fn pause(
        &mut self,
        gateway: &str,
        now: DateTime<Utc>,
        asked: TimeDelta,
    ) -> DateTime<Utc> {
        let state = self.states.entry(gateway.to_owned()).or_default();
        let before = state.pause.unwrap_or(Pause {
            since: now,
            until: now,
            times: 0,
        });
        // Texts that were on their way together are refused together: that counts once.
        let is_paused = before.times > 0 && now < before.until;
        let times = if is_paused {
            before.times
        } else {
            before.times.saturating_add(1)
        };
        let doubled = limits::RETRY_FIRST_SECS << times.saturating_sub(1).min(16);
        let usual = TimeDelta::seconds(doubled.min(limits::GATEWAY_PAUSE_MAX_SECS));
        let until = if is_paused {
            before.until.max(now + asked)
        } else {
            now + usual.max(asked)
        };
        state.pause = Some(Pause {
            times,
            until,
            ..before
        });
        until
    }

    /// A gateway has sent all that it may until then.
    pub(crate) fn full(&mut self, gateway: &str, until: DateTime<Utc>) {
        self.states
            .entry(gateway.to_owned())
            .or_default()
            .full_until = Some(until);
    }

    /// Until when a gateway is left alone.
    pub(crate) fn paused_until(&self, gateway: &str) -> Option<DateTime<Utc>> {
        let state = self.states.get(gateway)?;
        state.pause.map(|pause| pause.until).max(state.full_until)
    }

    /// Whether a gateway is left alone now.
    pub(crate) fn is_paused(&self, gateway: &str, now: DateTime<Utc>) -> bool {
        self.paused_until(gateway).is_some_and(|until| now < until)
    }

    /// Whether texts had better leave by another one. When a pause is over, the next text tries
    /// whether it is back.
    pub(crate) fn is_out(&self, gateway: &str, now: DateTime<Utc>) -> bool {
        let Some(state) = self.states.get(gateway) else {
            return false;
        };
        let long = TimeDelta::minutes(limits::GATEWAY_OUT_MINUTES);
        let paused_since = state.pause.filter(|pause| now < pause.until);
        if state.is_full(now) {
            return true;
        }
        let since = [state.down_since, paused_since.map(|pause| pause.since)];
        since.into_iter().flatten().any(|since| now - since >= long)
    }
}

impl State {
    /// Whether it sends nothing for longer than others had better wait for.
    fn is_full(&self, now: DateTime<Utc>) -> bool {
        let long = TimeDelta::minutes(limits::GATEWAY_OUT_MINUTES);
        self.full_until.is_some_and(|until| until - now >= long)
    }

    fn is_silent(&self, began: Option<DateTime<Utc>>, now: DateTime<Utc>) -> bool {
        let from = self.heard.silent_from(began);
        from.is_some_and(|from| from <= now)
    }

    /// What a person must see to.
    fn trouble(&self, began: Option<DateTime<Utc>>, now: DateTime<Utc>) -> Option<Trouble> {
        let Refusals { times, set_up, why } = &self.refused;
        if *set_up || *times >= limits::REFUSALS_IN_A_ROW {
            let (why, times) = (why.clone(), *times);
            return Some(Trouble::NotTaken { why, times });
        }
        if let Some(since) = self.down_since
            && now - since >= TimeDelta::minutes(limits::GATEWAY_OUT_MINUTES)
        {
            return Some(Trouble::Down);
        }
        if let Some(why) = &self.signs.trouble {
            return Some(Trouble::Says(why.clone()));
        }
        let hours = (now - self.heard.last()?).num_hours();
        self.is_silent(began, now)
            .then_some(Trouble::Silent { hours })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(seconds: i64) -> DateTime<Utc> {
        DateTime::from_timestamp(1_790_000_000 + seconds, 0).unwrap()
    }

    #[test]
    fn pauses_double_up_to_a_limit_and_end_with_a_text_that_is_taken() {
        let mut links = Links::default();
        let none = TimeDelta::zero();
        let mut now = at(0);
        for pause in [30, 60, 120, 240, 480, 600, 600] {
            let until = links.pause("sim", now, none);
            assert_eq!(until, now + TimeDelta::seconds(pause));
            // The others of the same moment.
            assert_eq!(links.pause("sim", now, none), until);
            assert!(links.is_paused("sim", now) && !links.is_paused("centre", now));
            now = until;
            assert!(!links.is_paused("sim", now));
        }
        links.works("sim");
        let asked = TimeDelta::seconds(300);
        assert_eq!(links.pause("sim", now, asked), now + asked);
        assert_eq!(links.pause("sim", now, asked * 2), now + asked * 2);
    }

    #[test]
    fn who_takes_nothing_for_ten_minutes_is_out_until_the_pause_is_over() {
        let mut links = Links::default();
        let mut now = at(0);
        while now < at(600) {
            assert!(!links.is_out("sim", now));
            now = links.pause("sim", now, TimeDelta::zero());
        }
        assert!(!links.is_out("sim", now), "it is tried again");
        let until = links.pause("sim", now, TimeDelta::zero());
        assert!(links.is_out("sim", now) && !links.is_out("sim", until));
        links.works("sim");
        assert!(!links.is_out("sim", now));
    }

    #[test]
    fn a_line_that_is_down_for_ten_minutes_is_out() {
        let mut links = Links::default();
        let since = at(0);
        let why = "no device".to_owned();
        links.told("sim", &Link::Down { since, why });
        assert!(!links.is_out("sim", at(599)));
        assert!(links.is_out("sim", at(600)));
        links.told("sim", &Link::Up);
        assert!(!links.is_out("sim", at(600)));
    }

    #[track_caller]
    fn trouble(links: &Links, now: DateTime<Utc>) -> Option<String> {
        let all = links.health(["sim"].into_iter(), |_| Some(at(0)), now);
        assert_eq!(all.len(), 1);
        assert_eq!(all[0].oldest_waiting, Some(at(0)));
        all[0].trouble.clone()
    }

    #[test]
    fn a_gateway_that_is_not_set_up_is_trouble_at_once_and_others_when_they_go_on() {
        let mut links = Links::default();
        assert_eq!(trouble(&links, at(0)), None);
        for times in 1..=limits::REFUSALS_IN_A_ROW {
            assert_eq!(trouble(&links, at(0)), None, "{times}");
            links.refused("sim", Whose::Text, "it answered 500".to_owned());
        }
        let told = "gateway sim: it answered 500; texts not taken in a row: 5";
        assert_eq!(trouble(&links, at(0)).as_deref(), Some(told));
        links.took("sim", at(9));
        assert_eq!(trouble(&links, at(9)), None);
        links.refused("sim", Whose::SetUp, "it answered 401".to_owned());
        let told = "gateway sim: it answered 401; texts not taken in a row: 1";
        assert_eq!(trouble(&links, at(9)).as_deref(), Some(told));
    }

    #[test]
    fn what_a_gateway_says_of_itself_is_told_until_it_says_otherwise() {
        let mut links = Links::default();
        let signs = Signs {
            trouble: Some("its SIM is full".to_owned()),
            ..Signs::default()
        };
        links.says("sim", signs);
        let told = "gateway sim: its SIM is full";
        assert_eq!(trouble(&links, at(0)).as_deref(), Some(told));
        links.says("sim", Signs::default());
        assert_eq!(trouble(&links, at(0)), None);
    }

    #[test]
    fn silence_for_days_is_trouble() {
        let mut links = Links::default();
        links.heard("sim", at(0));
        links.heard("sim", at(-900));
        let day = 24 * 60 * 60;
        assert_eq!(trouble(&links, at(limits::SILENT_DAYS * day - 1)), None);
        let told = "gateway sim: nothing came in for 168 hours, longer than in the week before";
        let after = at(limits::SILENT_DAYS * day);
        assert_eq!(trouble(&links, after).as_deref(), Some(told));
        links.heard("sim", after);
        assert_eq!(trouble(&links, after), None);
    }
}
