//! Who is in: what a browser shows for it, and until when.
//!
//! In memory only, so a restart sends everybody to the door. Of what the browser keeps only the sum is
//! here: who reads this memory cannot come in by it. Deliberately absent: whether somebody may still
//! look, which the engine asks at every page.

use std::{
    collections::HashMap,
    io,
    sync::{Mutex, PoisonError},
};

use chrono::{DateTime, TimeDelta, Utc};
use data_encoding::BASE64URL_NOPAD;
use rustix::rand::{GetRandomFlags, getrandom};
use subtle::ConstantTimeEq;

use crate::{engine::looks::Viewer, words::limits};

/// Everybody who is in.
#[derive(Default)]
pub(super) struct Sessions(Mutex<HashMap<[u8; 32], Session>>);

/// Somebody who is in.
#[derive(Clone)]
pub(super) struct Session {
    /// Who.
    pub(super) viewer: Viewer,
    /// What every form of theirs carries.
    pub(super) token: String,
    until: DateTime<Utc>,
}

impl Session {
    /// Whether a form is one of theirs.
    pub(super) fn is_own_form(&self, token: &str) -> bool {
        self.token.as_bytes().ct_eq(token.as_bytes()).into()
    }
}

impl Sessions {
    /// Lets somebody in; gives what their browser is to show. It is always a new one: what a browser
    /// showed before they came in counts for nothing.
    pub(super) fn begin(&self, viewer: Viewer, now: DateTime<Utc>) -> io::Result<String> {
        let (shown, token) = (random()?, random()?);
        let until = now + TimeDelta::hours(limits::SESSION_HOURS);
        let mut sessions = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        sessions.retain(|_, session| session.until > now);
        let is_theirs = |session: &&Session| session.viewer.person == viewer.person;
        if sessions.values().filter(is_theirs).count() >= limits::SESSIONS_OF_PERSON {
            let theirs = sessions.iter().filter(|(_, session)| is_theirs(session));
            let oldest = theirs.min_by_key(|(_, session)| session.until);
            if let Some(oldest) = oldest.map(|(sum, _)| *sum) {
                sessions.remove(&oldest);
            }
        }
        let session = Session {
            viewer,
            token,
            until,
        };
        sessions.insert(sum(&shown), session);
        Ok(shown)
    }

    /// Who shows this.
    pub(super) fn of(&self, shown: &str, now: DateTime<Utc>) -> Option<Session> {
        let sessions = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let session = sessions.get(&sum(shown))?;
        (session.until > now).then(|| session.clone())
    }

    /// Shows somebody out.
    pub(super) fn end(&self, shown: &str) {
        let mut sessions = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        sessions.remove(&sum(shown));
    }
}

fn sum(shown: &str) -> [u8; 32] {
    hmac_sha256::Hash::hash(shown.as_bytes())
}

/// 256 bits that nobody can guess.
fn random() -> io::Result<String> {
    let mut bytes = [0; 32];
    let mut filled = 0;
    while let Some(rest) = bytes.get_mut(filled..).filter(|rest| !rest.is_empty()) {
        filled += getrandom(rest, GetRandomFlags::empty())?;
    }
    Ok(BASE64URL_NOPAD.encode(&bytes))
}

#[cfg(test)]
mod tests {
    use budwood_scheduler::PersonId;

    use super::*;

    fn viewer(id: u32) -> Viewer {
        Viewer {
            person: PersonId(id),
            number: "+447700900100".to_owned(),
        }
    }

    #[test]
    fn a_session_ends_by_itself_or_when_it_is_left() {
        let (sessions, now) = (Sessions::default(), DateTime::UNIX_EPOCH);
        let shown = sessions.begin(viewer(1), now).unwrap();
        let last = now + TimeDelta::hours(limits::SESSION_HOURS) - TimeDelta::seconds(1);
        assert!(sessions.of(&shown, last).is_some());
        assert!(sessions.of(&shown, last + TimeDelta::seconds(1)).is_none());
        assert!(sessions.of(&shown.to_uppercase(), now).is_none());
        sessions.end(&shown);
        assert!(sessions.of(&shown, now).is_none());
    }

    #[test]
    fn one_person_is_in_on_so_many_browsers_and_the_oldest_goes() {
        let (sessions, now) = (Sessions::default(), DateTime::UNIX_EPOCH);
        let other = sessions.begin(viewer(2), now).unwrap();
        let begin = |minute| sessions.begin(viewer(1), now + TimeDelta::minutes(minute));
        let shown: Vec<String> = (0..10_i64).map(|at| begin(at).unwrap()).collect();
        let later = now + TimeDelta::minutes(10);
        let are_in = shown.iter().filter(|one| sessions.of(one, later).is_some());
        let are_in: Vec<&String> = are_in.collect();
        assert_eq!(are_in, shown.iter().skip(5).collect::<Vec<_>>());
        assert!(sessions.of(&other, later).is_some());
    }
}
