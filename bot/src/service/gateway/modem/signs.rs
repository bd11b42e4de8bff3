//! What a modem says of itself: how well it hears the network, whether its SIM has room for texts,
//! and what is left on it.
//!
//! Deliberately absent: what the words of a network mean; a person reads them.

use chrono::TimeDelta;
use data_encoding::HEXLOWER_PERMISSIVE;

use super::{errors::Ended, session::Session};
use crate::words::sms::septets;

/// A network is asked what is left no more often: some count questions.
const BALANCE_EVERY: TimeDelta = TimeDelta::hours(24);

/// Letters of an answer that are kept.
const BALANCE_CHARS_MAX: usize = 120;

/// 3GPP TS 23.038, 5: a message in UCS2, without a language in front.
const CODING_UCS2: &str = "72";

impl Session<'_> {
    /// Looks at all of it.
    pub(super) async fn look(&mut self) -> Result<(), Ended> {
        let signal_pct = self.signal().await?;
        self.settings()
            .with_signs(|signs| signs.signal_pct = signal_pct);
        self.ask_balance().await
    }

    /// Tells what the last look at the memory left there.
    pub(super) async fn look_at_memory(&mut self) -> Result<(), Ended> {
        let trouble = self.memory().await?;
        self.settings().with_signs(|signs| signs.trouble = trouble);
        Ok(())
    }

    /// 3GPP TS 27.007, 8.5: 0 to 31 from -113 dBm to -51 dBm and more, 99 where it is not known.
    async fn signal(&mut self) -> Result<Option<u8>, Ended> {
        let lines = self.command("AT+CSQ", "+CSQ:").await?;
        let level = lines.first().and_then(|line| {
            let level = line.split(',').next()?.trim();
            level.parse::<u8>().ok().filter(|level| *level <= 31)
        });
        Ok(level.and_then(|level| u8::try_from(u16::from(level) * 100 / 31).ok()))
    }

    /// What lies in the SIM and stays there. A full one takes no text in, and the network keeps them
    /// for some days only.
    async fn memory(&mut self) -> Result<Option<String>, Ended> {
        let (left, unread) = (self.left(), self.unread());
        if left == 0 {
            return Ok(None);
        }
        // 27.005, 3.2.2: name, how many lie there, how many fit, three times.
        let lines = self.command("AT+CPMS?", "+CPMS:").await?;
        let room = lines.first().and_then(|line| {
            let room = line.split(',').nth(2)?.trim();
            room.parse::<usize>().ok().filter(|room| *room > 0)
        });
        Ok(if room.is_some_and(|room| left >= room) {
            Some(format!(
                "its SIM is full: {left} messages in it are not taken in or not deleted, and no \
                 other can come"
            ))
        } else if unread > 0 {
            Some(format!(
                "messages in its SIM that it does not give out: {unread}"
            ))
        } else {
            None
        })
    }

    /// Asks the network what is left, if a code for that is set. The answer comes as news.
    async fn ask_balance(&mut self) -> Result<(), Ended> {
        let now = self.now();
        let Some(code) = self.settings().balance_due(now, BALANCE_EVERY) else {
            return Ok(());
        };
        // 27.007, 7.15; 15 is the coding of plain letters.
        let asked = format!("AT+CUSD=1,\"{code}\",15");
        self.command(&asked, "").await.map(|_| ())
    }

    /// What the network answered to a code. One that asks back is told that this is all.
    pub(super) async fn heard_balance(&mut self, answer: &str) -> Result<(), Ended> {
        let (asks, words) = code_answer(answer);
        self.settings()
            .with_signs(|signs| signs.balance = words.or(signs.balance.take()));
        if asks {
            self.command("AT+CUSD=2", "").await?;
        }
        Ok(())
    }
}

/// 27.007, 7.15: whether more is awaited from us, and the words, which are quoted; then their coding.
/// Of several lines only the first is there.
fn code_answer(answer: &str) -> (bool, Option<String>) {
    let (kind, rest) = answer.split_once(',').unwrap_or((answer, ""));
    let asks = kind.trim() == "1";
    let Some((_, quoted)) = rest.split_once('"') else {
        return (asks, None);
    };
    let (words, coding) = quoted.rsplit_once('"').unwrap_or((quoted, ""));
    let coding = coding.trim_start_matches(',').trim();
    let octets = (coding == CODING_UCS2).then(|| HEXLOWER_PERMISSIVE.decode(words.as_bytes()));
    let words = match octets {
        Some(Ok(octets)) => septets::of_utf16(&octets),
        Some(Err(_)) | None => words.to_owned(),
    };
    let seen = words.chars().filter(|c| !c.is_control());
    let words: String = seen.take(BALANCE_CHARS_MAX).collect();
    (asks, Some(words).filter(|words| !words.trim().is_empty()))
}

/// What a network is asked by: digits between stars and hashes (3GPP TS 22.030, 6.5.2).
pub(super) fn is_code(found: &str) -> bool {
    const CODE_CHARS_MAX: usize = 20;
    let is_sign = |byte: u8| byte.is_ascii_digit() || byte == b'*' || byte == b'#';
    (3..=CODE_CHARS_MAX).contains(&found.len())
        && found.starts_with(['*', '#'])
        && found.ends_with('#')
        && found.bytes().all(is_sign)
}

#[cfg(test)]
mod tests {
    use super::*;

    // The forms of 3GPP TS 27.007, 7.15; the second in UCS2 as 23.038, 6.2.3, has it.
    #[test]
    fn answers_to_a_code_are_read_in_their_forms() {
        let told = |words: &str| Some(words.to_owned());
        for (answer, expected) in [
            ("0,\"You have 12.50\",15", (false, told("You have 12.50"))),
            (
                "1,\"1: more, 2: less\",15",
                (true, told("1: more, 2: less")),
            ),
            (
                "0,\"0E220E3101200035\",72",
                (false, told("\u{e22}\u{e31}\u{120}5")),
            ),
            ("0,\"say \"so\"\",15", (false, told("say \"so\""))),
            ("0,\"first line", (false, told("first line"))),
            ("2", (false, None)),
            ("4", (false, None)),
            ("0,\"\",15", (false, None)),
            ("0,\"XYZ\",72", (false, told("XYZ"))),
            ("", (false, None)),
        ] {
            assert_eq!(code_answer(answer), expected, "{answer}");
        }
        let long = format!("0,\"{}\",15", "a".repeat(900));
        assert_eq!(code_answer(&long).1.map(|words| words.len()), Some(120));
    }

    #[test]
    fn only_codes_are_codes() {
        for good in ["*100#", "#225#", "*#100#", "*121*1#"] {
            assert!(is_code(good), "{good}");
        }
        for bad in [
            "",
            "100",
            "*#",
            "*100",
            "*100#\",15\rATD1",
            "*1 0#",
            "**********************#",
        ] {
            assert!(!is_code(bad), "{bad}");
        }
    }
}
