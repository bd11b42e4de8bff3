//! The other end of the control socket: asks the running service.

use std::{
    io::{self, BufRead, BufReader, Read, Write},
    os::unix::net::UnixStream,
    path::Path,
};

use base64::{Engine as _, engine::general_purpose::STANDARD};

use super::{Answer, Deed, NAME, Order, Request, SpokenGiving, SpokenOutline};
use crate::{
    engine::{BackDeed, Giving, List, ListAnswer, ListDeed, OutlineOrder, SheetOrder},
    sheet::Sheet,
    words::limits,
};

/// A connection to the running service.
#[derive(Debug)]
pub struct Control {
    stream: BufReader<UnixStream>,
}

/// Why the service did not do it.
#[derive(Debug, thiserror::Error)]
pub enum ControlError {
    /// The connection broke or nothing came in time.
    #[error("the running service does not answer; see its log, then try again")]
    Broken(#[from] io::Error),
    /// What came is no answer.
    #[error("the running service gave an answer that cannot be read; is it another version?")]
    NotAnAnswer(#[from] serde_json::Error),
    /// It said no.
    #[error("the running service refused: {0}")]
    Refused(String),
}

impl Control {
    /// Connects to the service that has the store in this folder; none if no service runs.
    ///
    /// # Errors
    ///
    /// When there is a service and this user may not talk to it.
    pub fn connect(folder: &Path) -> Result<Option<Self>, ControlError> {
        match UnixStream::connect(folder.join(NAME)) {
            Ok(stream) => {
                stream.set_read_timeout(Some(limits::CONTROL_TIMEOUT))?;
                stream.set_write_timeout(Some(limits::CONTROL_TIMEOUT))?;
                Ok(Some(Self {
                    stream: BufReader::new(stream),
                }))
            }
            // Refused: a socket that a service left behind when it was killed.
            Err(error)
                if matches!(
                    error.kind(),
                    io::ErrorKind::NotFound | io::ErrorKind::ConnectionRefused
                ) =>
            {
                Ok(None)
            }
            Err(error) => Err(error.into()),
        }
    }

    /// Begins a copy of the store as it is now.
    ///
    /// # Errors
    ///
    /// When the service does not answer or refuses.
    pub fn begin_copy(&mut self) -> Result<(), ControlError> {
        self.ask(Deed::Copy).map(|_| ())
    }

    /// The next records of the copy; none at its end.
    ///
    /// # Errors
    ///
    /// When the service does not answer or refuses.
    pub fn next_records(&mut self) -> Result<Option<Vec<Vec<u8>>>, ControlError> {
        let answer = self.ask(Deed::Next)?;
        let lines = |record: Box<serde_json::value::RawValue>| record.get().as_bytes().to_vec();
        Ok(answer
            .records
            .map(|records| records.into_iter().map(lines).collect()))
    }

    /// Lets texts leave again.
    ///
    /// # Errors
    ///
    /// When the service does not answer or refuses.
    pub fn release(&mut self) -> Result<(), ControlError> {
        self.ask(Deed::Release).map(|_| ())
    }

    /// Brings a list of people and blocks, to be checked or taken in.
    ///
    /// # Errors
    ///
    /// When the service does not answer or refuses.
    pub fn bring_list(&mut self, list: &List) -> Result<ListAnswer, ControlError> {
        let deed = match list.deed {
            ListDeed::Check => Deed::CheckRoll,
            ListDeed::Load => Deed::LoadRoll,
        };
        let answer = self.ask_with(Request {
            csv: Some(STANDARD.encode(&list.csv)),
            ..Request::plain(deed)
        })?;
        list_answer(answer)
    }

    /// Takes the last list back, or says what that would do.
    ///
    /// # Errors
    ///
    /// When the service does not answer or refuses.
    pub fn take_back(&mut self, deed: BackDeed) -> Result<ListAnswer, ControlError> {
        list_answer(self.ask(match deed {
            BackDeed::Look => Deed::LookBack,
            BackDeed::Take => Deed::TakeBack,
        })?)
    }

    /// Has a sheet made.
    ///
    /// # Errors
    ///
    /// When the service does not answer or refuses.
    pub fn print(&mut self, order: &SheetOrder) -> Result<Sheet, ControlError> {
        let order = Order {
            sheet: order.kind.name().to_owned(),
            group: order.group.clone(),
            language: order.language.clone(),
        };
        let answer = self.ask_with(Request {
            order: Some(order),
            ..Request::plain(Deed::Print)
        })?;
        let nothing = || ControlError::Refused("it says nothing of the sheet".into());
        answer.sheet.ok_or_else(nothing)
    }

    /// Has it written down what is given to a partner. Gives its number.
    ///
    /// # Errors
    ///
    /// When the service does not answer or refuses.
    pub fn give(&mut self, giving: &Giving) -> Result<String, ControlError> {
        let giving = SpokenGiving {
            what: giving.kind.name().to_owned(),
            to: giving.to.clone(),
            purpose: giving.purpose.clone(),
            people: giving.people,
            blocks: giving.blocks,
            sha256: giving.sha256.clone(),
        };
        let answer = self.ask_with(Request {
            giving: Some(giving),
            ..Request::plain(Deed::Give)
        })?;
        Ok(answer.page.unwrap_or_default())
    }

    /// Brings the outline of a block. Gives what was found.
    ///
    /// # Errors
    ///
    /// When the service does not answer or refuses.
    pub fn outline(&mut self, order: &OutlineOrder) -> Result<String, ControlError> {
        let outline = SpokenOutline {
            group: order.group.clone(),
            farmer: order.farmer.clone(),
            block: order.block.clone(),
            text: order.text.clone(),
            how: order.how.name().to_owned(),
            on: order.on,
        };
        let answer = self.ask_with(Request {
            outline: Some(outline),
            ..Request::plain(Deed::Outline)
        })?;
        Ok(answer.page.unwrap_or_default())
    }

    /// Has the configuration read again. Gives what is new.
    ///
    /// # Errors
    ///
    /// When the service does not answer, or cannot take the file over.
    pub fn reload(&mut self) -> Result<String, ControlError> {
        self.ask(Deed::Reload)
            .map(|answer| answer.new.unwrap_or_default())
    }

    /// A code with which this person comes in to look at the office's pages.
    ///
    /// # Errors
    ///
    /// When the service does not answer, or nobody who may look is called so.
    pub fn office_code(&mut self, name: &str) -> Result<String, ControlError> {
        let answer = self.ask_with(Request {
            name: Some(name.to_owned()),
            ..Request::plain(Deed::Code)
        })?;
        Ok(answer.code.unwrap_or_default())
    }

    fn ask(&mut self, deed: Deed) -> Result<Answer, ControlError> {
        self.ask_with(Request::plain(deed))
    }

    fn ask_with(&mut self, request: Request) -> Result<Answer, ControlError> {
        let mut request = serde_json::to_vec(&request)?;
        request.push(b'\n');
        self.stream.get_mut().write_all(&request)?;
        let mut line = Vec::new();
        (&mut self.stream)
            .take(limits::CONTROL_ANSWER_BYTES_MAX)
            .read_until(b'\n', &mut line)?;
        let answer: Answer = serde_json::from_slice(&line)?;
        if answer.ok {
            Ok(answer)
        } else {
            Err(ControlError::Refused(answer.why.unwrap_or_default()))
        }
    }
}

fn list_answer(answer: Answer) -> Result<ListAnswer, ControlError> {
    match answer.roll {
        Some(roll) => Ok(ListAnswer {
            page: roll.page,
            fate: roll.fate.into(),
            findings: roll.findings,
        }),
        None => Err(ControlError::Refused("it says nothing of the list".into())),
    }
}
