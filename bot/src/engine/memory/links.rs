//! Which gateways take texts now, in memory only: after a start all of them are tried.
//!
//! A gateway is paused after it said that it takes nothing for now, and out once that has lasted
//! for a while or its line is down: then texts go by another one. What a gateway says of its own
//! line and what became of tries are kept apart, because many kinds know no more of their line
//! than that.

use std::collections::BTreeMap;

use chrono::{DateTime, TimeDelta, Utc};

use crate::words::{limits, traffic::Link};

/// How gateways are, by name.
#[derive(Default)]
pub(crate) struct Links(BTreeMap<String, State>);

#[derive(Default)]
struct State {
    /// Since when its line is down, as it says itself.
    down_since: Option<DateTime<Utc>>,
    pause: Option<Pause>,
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
        let state = self.0.entry(gateway.to_owned()).or_default();
        state.down_since = match link {
            Link::Up => None,
            Link::Down { since, .. } => Some(*since),
        };
    }

    /// A gateway took a text, or said at least what is wrong with one.
    pub(crate) fn works(&mut self, gateway: &str) {
        if let Some(state) = self.0.get_mut(gateway) {
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
        let state = self.0.entry(gateway.to_owned()).or_default();
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

    /// Until when a gateway is left alone.
    pub(crate) fn paused_until(&self, gateway: &str) -> Option<DateTime<Utc>> {
        Some(self.0.get(gateway)?.pause?.until)
    }

    /// Whether a gateway is left alone now.
    pub(crate) fn is_paused(&self, gateway: &str, now: DateTime<Utc>) -> bool {
        self.paused_until(gateway).is_some_and(|until| now < until)
    }

    /// Whether texts had better leave by another one. When a pause is over, the next text tries
    /// whether it is back.
    pub(crate) fn is_out(&self, gateway: &str, now: DateTime<Utc>) -> bool {
        let Some(state) = self.0.get(gateway) else {
            return false;
        };
        let long = TimeDelta::minutes(limits::GATEWAY_OUT_MINUTES);
        let paused_since = state.pause.filter(|pause| now < pause.until);
        let since = [state.down_since, paused_since.map(|pause| pause.since)];
        since.into_iter().flatten().any(|since| now - since >= long)
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
}
