//! A modem's line: the device, and what is said on it (ITU-T V.250, 3GPP TS 27.005).
//!
//! A command is written and answered by lines that end with a final result. Others may come at any
//! moment, in the middle of an answer too: those are kept apart by how they begin.

use std::{
    collections::VecDeque, fs::OpenOptions, io, os::unix::fs::OpenOptionsExt, path::Path,
    time::Duration,
};

use data_encoding::HEXLOWER_PERMISSIVE;
use rustix::{
    fs::OFlags,
    termios::{OptionalActions, tcgetattr, tcsetattr},
};
use tokio::{
    io::{AsyncReadExt, AsyncWriteExt},
    net::unix::pipe,
    time::timeout,
};

/// Octets of one line. The longest has a message of 176 octets in hexadecimal digits.
const LINE_MAX: usize = 1_024;

/// How long a command may take that the modem answers by itself.
pub(super) const SOON: Duration = Duration::from_secs(10);

/// How long the network may take.
pub(super) const NETWORK: Duration = Duration::from_secs(60);

/// After so long without a word nothing more comes of what was said before.
const QUIET: Duration = Duration::from_millis(300);

const CONTROL_Z: &str = "\x1a";
const ESCAPE: &str = "\x1b";

/// The device, and what was read from it. Both ends are taken as pipes, which is all that the
/// runtime has to know of a file that is read when it is ready.
pub(super) struct Line {
    reader: pipe::Receiver,
    writer: pipe::Sender,
    read: Vec<u8>,
    news: VecDeque<News>,
    /// A message was announced, and its octets come next.
    awaits_direct: bool,
}

/// What comes without being asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum News {
    /// A message lies in the memory.
    Stored,
    /// A message or a report, handed over at once.
    Direct(String),
    /// Somebody rings, and this is the number where it is told.
    Ringing(Option<String>),
    /// Nobody rings any more.
    RingingEnds,
    /// The network answers a code.
    Code(String),
}

/// Why a command was not done.
#[derive(Debug, thiserror::Error)]
pub(super) enum Failed {
    /// The modem says so, with the number of 3GPP TS 27.005, 3.2.5, or of 27.007, 9.2, if it gives
    /// one.
    #[error("error {0:?}")]
    Error(Option<u16>),
    /// Nothing came in time.
    #[error("no answer from the modem in time")]
    Silent,
    /// The device is gone.
    #[error("the device cannot be used: {}", .0.kind())]
    Gone(#[from] io::Error),
}

/// A line of text, or the mark after which a message is written.
enum Token {
    Line(String),
    Prompt,
}

impl Line {
    /// Opens a device and makes it pass every octet as it is.
    pub(super) fn open(path: &Path, speed: u32) -> io::Result<Self> {
        let flags = OFlags::NOCTTY | OFlags::NONBLOCK;
        let device = OpenOptions::new()
            .read(true)
            .write(true)
            .custom_flags(i32::try_from(flags.bits()).unwrap_or_default())
            .open(path)?;
        let mut settings = tcgetattr(&device)?;
        settings.make_raw();
        // A pty has no speed.
        let _ = settings.set_speed(speed);
        tcsetattr(&device, OptionalActions::Now, &settings)?;
        Ok(Self {
            reader: pipe::Receiver::from_file_unchecked(device.try_clone()?)?,
            writer: pipe::Sender::from_file_unchecked(device)?,
            read: Vec::new(),
            news: VecDeque::new(),
            awaits_direct: false,
        })
    }

    /// Does a command; gives the lines that begin with `prefix`, each with what follows it.
    pub(super) async fn command(
        &mut self,
        command: &str,
        prefix: &str,
    ) -> Result<Vec<String>, Failed> {
        self.say(&format!("{command}\r")).await?;
        // A modem may answer this one only when the network has.
        let is_code = command.starts_with("AT+CUSD=1");
        let within = if is_code { NETWORK } else { SOON };
        self.answer(command, prefix, within).await
    }

    /// Hands a message over; gives the modem's reference. Without one it is sent all the same, and
    /// its report is nobody's. `was_written` tells whether the modem may have it.
    pub(super) async fn submit(
        &mut self,
        length: usize,
        hex: &str,
        was_written: &mut bool,
    ) -> Result<Option<u8>, Failed> {
        self.say(&format!("AT+CMGS={length}\r")).await?;
        timeout(SOON, self.prompt())
            .await
            .unwrap_or(Err(Failed::Silent))?;
        *was_written = true;
        self.say(&format!("{hex}{CONTROL_Z}")).await?;
        let lines = self.answer(hex, "+CMGS:", NETWORK).await?;
        Ok(lines.first().and_then(|line| line.trim().parse().ok()))
    }

    /// Leaves the mark after which a message would be written, and passes over what is left of an
    /// answer that came too late.
    pub(super) async fn calm(&mut self) -> Result<(), Failed> {
        self.awaits_direct = false;
        // An empty line after it, for a modem that takes the escape for the start of a command.
        self.say(&format!("{ESCAPE}\r")).await?;
        // A line that is never quiet is spoken to all the same.
        let quiet = timeout(SOON, self.until_quiet()).await;
        quiet.unwrap_or(Ok(()))?;
        self.awaits_direct = false;
        self.command("AT", "").await?;
        Ok(())
    }

    async fn until_quiet(&mut self) -> Result<(), Failed> {
        while let Ok(token) = timeout(QUIET, self.token()).await {
            if let Token::Line(line) = token? {
                self.keep_news(&line);
            }
        }
        Ok(())
    }

    /// What came without being asked for, oldest first.
    pub(super) fn take_news(&mut self) -> Option<News> {
        self.news.pop_front()
    }

    /// Waits until something comes that nobody asked for. May be dropped at any moment.
    pub(super) async fn listen(&mut self) -> Result<(), Failed> {
        while self.news.is_empty() {
            if let Token::Line(line) = self.token().await? {
                // What is no news is the rest of something old.
                self.keep_news(&line);
            }
        }
        Ok(())
    }

    async fn answer(
        &mut self,
        said: &str,
        prefix: &str,
        within: Duration,
    ) -> Result<Vec<String>, Failed> {
        let lines = self.lines_until_final(said, prefix);
        timeout(within, lines).await.unwrap_or(Err(Failed::Silent))
    }

    async fn lines_until_final(&mut self, said: &str, prefix: &str) -> Result<Vec<String>, Failed> {
        let mut lines: Vec<String> = Vec::new();
        // The octets of a listed message come after its line; news may come before them.
        let mut awaits_listed = false;
        loop {
            let Token::Line(line) = self.token().await? else {
                continue;
            };
            let own = line.strip_prefix(prefix).filter(|_| !prefix.is_empty());
            if let Some(rest) = own {
                lines.push(rest.trim().to_owned());
                awaits_listed = prefix == "+CMGL:";
                self.awaits_direct = false;
            } else if awaits_listed && !self.awaits_direct && is_octets(&line) {
                awaits_listed = false;
                if let Some(last) = lines.last_mut() {
                    last.push('\n');
                    last.push_str(&line);
                }
            } else if let Some(result) = final_result(&line) {
                return result.map(|()| lines);
            } else if line != said {
                self.keep_news(&line);
            }
        }
    }

    async fn prompt(&mut self) -> Result<(), Failed> {
        loop {
            match self.token().await? {
                Token::Prompt => return Ok(()),
                Token::Line(line) => match final_result(&line) {
                    Some(Err(error)) => return Err(error),
                    // An answer to something before.
                    Some(Ok(())) => {}
                    None => self.keep_news(&line),
                },
            }
        }
    }

    fn keep_news(&mut self, line: &str) {
        if self.awaits_direct && is_octets(line) {
            self.awaits_direct = false;
            self.news.push_back(News::Direct(line.to_owned()));
            return;
        }
        let is = |start: &str| line.starts_with(start);
        let news = if is("+CMTI:") || is("+CDSI:") {
            News::Stored
        } else if is("+CMT:") || is("+CDS:") {
            self.awaits_direct = true;
            return;
        } else if is("RING") || is("+CRING:") {
            News::Ringing(None)
        } else if let Some(rest) = line.strip_prefix("+CLIP:") {
            News::Ringing(caller(rest))
        } else if let Some(rest) = line.strip_prefix("+CUSD:") {
            News::Code(rest.trim().to_owned())
        } else if is("NO CARRIER") {
            News::RingingEnds
        } else {
            return;
        };
        self.news.push_back(news);
    }

    async fn say(&mut self, text: &str) -> Result<(), Failed> {
        let writing = self.writer.write_all(text.as_bytes());
        timeout(SOON, writing).await.map_err(|_| Failed::Silent)??;
        Ok(())
    }

    /// The next line that is not empty, or the mark. May be dropped at any moment: what was read
    /// stays.
    async fn token(&mut self) -> Result<Token, Failed> {
        loop {
            if let Some(token) = next_token(&mut self.read) {
                return Ok(token);
            }
            if self.reader.read_buf(&mut self.read).await? == 0 {
                return Err(Failed::Gone(io::ErrorKind::UnexpectedEof.into()));
            }
        }
    }
}

/// Takes a line or the mark off what was read. A line that never ends is thrown away.
fn next_token(read: &mut Vec<u8>) -> Option<Token> {
    loop {
        let is_end = |octet: &u8| matches!(octet, b'\r' | b'\n' | 0);
        let skipped = read.iter().take_while(|octet| is_end(octet)).count();
        read.drain(..skipped);
        if read.first() == Some(&b'>') && read.get(1).is_none_or(|next| *next == b' ') {
            let mark = read.len().min(2);
            read.drain(..mark);
            return Some(Token::Prompt);
        }
        let Some(end) = read.iter().position(is_end) else {
            if read.len() > LINE_MAX {
                read.clear();
            }
            return None;
        };
        let line: Vec<u8> = read.drain(..end).collect();
        let line = String::from_utf8_lossy(&line).trim().to_owned();
        if !line.is_empty() && line.len() <= LINE_MAX {
            return Some(Token::Line(line));
        }
    }
}

/// Whether a line is a message: octets, and nothing else.
fn is_octets(line: &str) -> bool {
    !line.is_empty() && HEXLOWER_PERMISSIVE.decode(line.as_bytes()).is_ok()
}

/// The end of an answer, if a line is one (V.250, 5.7.1; 27.005, 3.2.5; 27.007, 9.2).
fn final_result(line: &str) -> Option<Result<(), Failed>> {
    let numbered = line
        .strip_prefix("+CMS ERROR:")
        .or_else(|| line.strip_prefix("+CME ERROR:"));
    match (numbered, line) {
        (Some(number), _) => Some(Err(Failed::Error(number.trim().parse().ok()))),
        (None, "OK") => Some(Ok(())),
        (None, "ERROR" | "COMMAND NOT SUPPORT") => Some(Err(Failed::Error(None))),
        (None, _) => None,
    }
}

/// The number of a `+CLIP` line (27.007, 7.6): quoted, then the kind of number. Empty where it is
/// withheld.
fn caller(rest: &str) -> Option<String> {
    let mut fields = rest.trim().split(',');
    let number = fields.next()?.trim().trim_matches('"');
    let kind = fields.next().unwrap_or_default().trim();
    let digits = number.strip_prefix('+').unwrap_or(number);
    let is_number = !digits.is_empty() && digits.bytes().all(|digit| digit.is_ascii_digit());
    // 145 is a number with its country (24.008, 10.5.4.7).
    let plus = if number.starts_with('+') || kind == "145" {
        "+"
    } else {
        ""
    };
    is_number.then(|| format!("{plus}{digits}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tokens(read: &[u8]) -> Vec<String> {
        let mut read = read.to_vec();
        let mut all = Vec::new();
        while let Some(token) = next_token(&mut read) {
            all.push(match token {
                Token::Line(line) => line,
                Token::Prompt => ">".to_owned(),
            });
        }
        all
    }

    #[test]
    fn lines_and_the_mark_are_told_apart_in_any_noise() {
        assert_eq!(tokens(b"\r\nOK\r\n"), ["OK"]);
        assert_eq!(tokens(b"AT\r\r\n> "), ["AT", ">"]);
        assert_eq!(
            tokens(b"\0\xff\xfe\r\n+CMTI: \"SM\",3\r\nhalf"),
            ["\u{fffd}\u{fffd}", "+CMTI: \"SM\",3"]
        );
        let long = [vec![b'x'; 3_000], b"\r\nOK\r\n".to_vec()].concat();
        assert_eq!(tokens(&long), ["OK"]);
        let mut endless = vec![b'x'; LINE_MAX + 1];
        assert!(next_token(&mut endless).is_none() && endless.is_empty());
    }

    /// A line whose modem has said this, and the end that hears us.
    async fn said(words: &str) -> (Line, pipe::Receiver) {
        let (mut modem, reader) = pipe::pipe().unwrap();
        let (writer, heard) = pipe::pipe().unwrap();
        modem.write_all(words.as_bytes()).await.unwrap();
        let line = Line {
            reader,
            writer,
            read: Vec::new(),
            news: VecDeque::new(),
            awaits_direct: false,
        };
        (line, heard)
    }

    /// Taken for the message, news would be deleted with it: a text would be lost.
    #[tokio::test]
    async fn news_between_the_line_of_a_message_and_its_octets_is_news() {
        for (between, expected) in [
            ("", vec![]),
            ("+CMTI: \"SM\",9\r\n", vec![News::Stored]),
            ("\r\nRING\r\n", vec![News::Ringing(None)]),
            ("+CREG: 1\r\nnoise\r\n", vec![]),
            (
                "+CMT: ,9\r\n00AA11\r\n",
                vec![News::Direct("00AA11".into())],
            ),
            (
                "+CDS: 9\r\n+CMTI: \"SM\",9\r\n00AA11\r\n",
                vec![News::Stored, News::Direct("00AA11".into())],
            ),
        ] {
            let words = format!(
                "\r\n+CMGL: 1,0,,3\r\n{between}0011FF\r\n+CMGL: 2,1,,3\r\n0022FF\r\n\r\nOK\r\n"
            );
            let (mut line, _heard) = said(&words).await;
            let listed = line.command("AT+CMGL=4", "+CMGL:").await.unwrap();
            assert_eq!(listed, ["1,0,,3\n0011FF", "2,1,,3\n0022FF"], "{between}");
            let news: Vec<News> = std::iter::from_fn(|| line.take_news()).collect();
            assert_eq!(news, expected, "{between}");
        }
    }

    #[tokio::test]
    async fn an_entry_without_octets_stands_alone() {
        let words = "+CMGL: 1,0,,3\r\n+CMGL: 2,1,,3\r\n0022FF\r\nOK\r\n";
        let (mut line, _heard) = said(words).await;
        let listed = line.command("AT+CMGL=4", "+CMGL:").await.unwrap();
        assert_eq!(listed, ["1,0,,3", "2,1,,3\n0022FF"]);
    }

    /// The octets that were announced come when they come.
    #[tokio::test]
    async fn what_is_handed_over_at_once_may_be_interrupted_too() {
        let words = "+CMT: ,9\r\n+CMTI: \"SM\",4\r\nOK\r\n00AA11\r\n";
        let (mut line, _heard) = said(words).await;
        line.command("AT", "").await.unwrap();
        while line.news.len() < 2 {
            let Token::Line(heard) = line.token().await.unwrap() else {
                continue;
            };
            line.keep_news(&heard);
        }
        let news: Vec<News> = std::iter::from_fn(|| line.take_news()).collect();
        assert_eq!(news, [News::Stored, News::Direct("00AA11".into())]);
    }

    // The forms of seven modems, as recorded in the tests of python-gsmmodem-new 0.13.0.
    #[test]
    fn a_caller_is_read_in_the_forms_of_many_modems() {
        for (line, expected) in [
            (r#" "+447700900123",145,"",0,"",0"#, Some("+447700900123")),
            (r#" "+447700900123",145,,,,0"#, Some("+447700900123")),
            (r#" "447700900123",145"#, Some("+447700900123")),
            (r#" "07700900123",129,"",0"#, Some("07700900123")),
            (r#" "",128,"",0,"",1"#, None),
            ("", None),
        ] {
            assert_eq!(caller(line).as_deref(), expected, "{line}");
        }
    }

    #[test]
    fn ends_of_answers_are_known() {
        assert!(matches!(final_result("OK"), Some(Ok(()))));
        assert!(matches!(
            final_result("+CMS ERROR: 38"),
            Some(Err(Failed::Error(Some(38))))
        ));
        assert!(matches!(
            final_result("ERROR"),
            Some(Err(Failed::Error(None)))
        ));
        assert!(final_result("+CSQ: 20,99").is_none());
    }
}
