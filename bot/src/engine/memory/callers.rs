//! Who stands at the door of the office's pages: codes that were given out, and wrong ones that came.
//!
//! In memory only: who asked before a restart asks again. Whoever knows a name can ask for its codes
//! and guess, so both are bounded by person; a code that is given at the computer itself is not.

use std::collections::BTreeMap;

use budwood_scheduler::PersonId;
use chrono::{DateTime, TimeDelta, Utc};
use subtle::ConstantTimeEq;

use crate::words::limits;

/// Everyone who asked lately.
#[derive(Default)]
pub(crate) struct Callers {
    callers: BTreeMap<PersonId, Caller>,
    given: u64,
}

#[derive(Default)]
struct Caller {
    code: Option<Code>,
    asked: Vec<DateTime<Utc>>,
    wrong: Vec<DateTime<Utc>>,
}

struct Code {
    code: String,
    number: String,
    until: DateTime<Utc>,
    tries: u32,
}

impl Caller {
    fn forget_before(&mut self, now: DateTime<Utc>) {
        let since = now - TimeDelta::hours(limits::CODE_HOURS);
        self.asked.retain(|at| *at > since);
        self.wrong.retain(|at| *at > since);
        self.code.take_if(|code| code.until <= now);
    }
}

impl Callers {
    /// So many codes were given out: no two are made of the same.
    pub(crate) const fn given(&self) -> u64 {
        self.given
    }

    /// Whether somebody may be texted one more code now.
    pub(crate) fn may_ask(&mut self, person: PersonId, now: DateTime<Utc>) -> bool {
        self.callers.retain(|_, caller| {
            caller.forget_before(now);
            caller.code.is_some() || !caller.asked.is_empty() || !caller.wrong.is_empty()
        });
        let Some(caller) = self.callers.get(&person) else {
            return true;
        };
        let lately = now - TimeDelta::minutes(limits::DOOR_CODE_MINUTES);
        let just_now = caller.asked.iter().filter(|at| **at > lately).count();
        just_now < limits::DOOR_CODES_AT_ONCE
            && caller.asked.len() < limits::DOOR_CODES_A_DAY
            && caller.wrong.len() < limits::DOOR_WRONG_A_DAY
    }

    /// A code was texted.
    pub(crate) fn texted(
        &mut self,
        person: PersonId,
        code: String,
        number: &str,
        now: DateTime<Utc>,
    ) {
        self.callers.entry(person).or_default().asked.push(now);
        self.keep(person, code, number, now);
    }

    /// A code was given at the computer itself: whoever can do that may come in, whatever was
    /// guessed before.
    pub(crate) fn handed(
        &mut self,
        person: PersonId,
        code: String,
        number: &str,
        now: DateTime<Utc>,
    ) {
        self.callers.entry(person).or_default().wrong.clear();
        self.keep(person, code, number, now);
    }

    fn keep(&mut self, person: PersonId, code: String, number: &str, now: DateTime<Utc>) {
        self.given += 1;
        self.callers.entry(person).or_default().code = Some(Code {
            code,
            number: number.to_owned(),
            until: now + TimeDelta::minutes(limits::DOOR_CODE_MINUTES),
            tries: 0,
        });
    }

    /// The phone that the code went to, if this is the code. It is good once, for so many tries.
    pub(crate) fn comes_in(
        &mut self,
        person: PersonId,
        given: &str,
        now: DateTime<Utc>,
    ) -> Option<String> {
        let caller = self.callers.get_mut(&person)?;
        caller.forget_before(now);
        if caller.wrong.len() >= limits::DOOR_WRONG_A_DAY {
            caller.code = None;
        }
        let mut code = caller.code.take()?;
        if bool::from(code.code.as_bytes().ct_eq(given.as_bytes())) {
            caller.wrong.clear();
            return Some(code.number);
        }
        caller.wrong.push(now);
        code.tries += 1;
        if code.tries < limits::DOOR_TRIES {
            caller.code = Some(code);
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MARA: PersonId = PersonId(1);
    const PHONE: &str = "+447700900100";

    fn at(minutes: i64) -> DateTime<Utc> {
        DateTime::UNIX_EPOCH + TimeDelta::minutes(minutes)
    }

    fn texted(callers: &mut Callers, minutes: i64) -> bool {
        let may = callers.may_ask(MARA, at(minutes));
        if may {
            callers.texted(MARA, "123456".to_owned(), PHONE, at(minutes));
        }
        may
    }

    #[test]
    fn a_code_is_good_once_and_for_ten_minutes() {
        let mut callers = Callers::default();
        assert_eq!(callers.comes_in(MARA, "123456", at(0)), None);
        texted(&mut callers, 0);
        assert_eq!(callers.comes_in(PersonId(2), "123456", at(1)), None);
        assert_eq!(
            callers.comes_in(MARA, "123456", at(9)).as_deref(),
            Some(PHONE)
        );
        assert_eq!(callers.comes_in(MARA, "123456", at(9)), None);
        texted(&mut callers, 20);
        assert_eq!(callers.comes_in(MARA, "123456", at(30)), None);
    }

    #[test]
    fn a_code_bears_so_many_tries_and_a_day_so_many_wrong_ones() {
        let mut callers = Callers::default();
        let mut wrong = 0;
        for hour in 0..24 {
            if !texted(&mut callers, hour * 60) {
                continue;
            }
            for _ in 0..limits::DOOR_TRIES {
                assert_eq!(callers.comes_in(MARA, "000000", at(hour * 60)), None);
                wrong += 1;
            }
            // The tries are used up, and the right one is too late.
            assert_eq!(callers.comes_in(MARA, "123456", at(hour * 60)), None);
        }
        assert_eq!(wrong, limits::DOOR_WRONG_A_DAY);
        callers.handed(MARA, "654321".to_owned(), PHONE, at(23 * 60));
        assert!(callers.comes_in(MARA, "654321", at(23 * 60)).is_some());
    }

    #[test]
    fn nobody_can_make_a_phone_ring_without_end() {
        let mut callers = Callers::default();
        let texts = (0..24 * 60).filter(|minute| texted(&mut callers, *minute));
        assert_eq!(texts.count(), limits::DOOR_CODES_A_DAY);
        assert!(texted(&mut callers, 2 * 24 * 60));
    }
}
