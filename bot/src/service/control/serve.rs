//! The service's end of the control socket.
//!
//! One at a time: a second one waits. Whoever says nothing for a minute is let go.

use std::{fs, io, os::unix::fs::PermissionsExt, path::Path, path::PathBuf};

use base64::{Engine as _, engine::general_purpose::STANDARD};
use serde_json::value::RawValue;
use tokio::{
    io::{AsyncBufReadExt, AsyncReadExt, AsyncWriteExt, BufReader},
    net::{UnixListener, UnixStream},
    sync::{oneshot, watch},
    time::timeout,
};
use tracing::info;

use super::{Answer, Deed, NAME, Order, Request, RollAnswer, SpokenGiving, SpokenOutline, VERSION};
use crate::{
    engine::{
        BackDeed, Copied, CopyStep, Giving, Input, Knock, List, ListAnswer, ListDeed, OutlineOrder,
        SheetOrder, Told,
    },
    service::{reload::Ask, server::Handle},
    words::{given::ParcelKind, limits, outline::HowTaken, printed::SheetKind},
};

/// The socket, taken by this service.
pub struct Listener {
    socket: UnixListener,
    path: PathBuf,
}

impl Listener {
    /// Makes the socket in the folder of a store that this process has. One that is there is left
    /// over: another service would have the store.
    ///
    /// # Errors
    ///
    /// When it cannot be made, such as in a folder with a path of more than about 90 bytes.
    pub fn bind(folder: &Path) -> io::Result<Self> {
        let path = folder.join(NAME);
        // Made under another name, so that nobody can reach it before its rights are set.
        let made = folder.join(format!("{NAME}.new"));
        for old in [&path, &made] {
            match fs::remove_file(old) {
                Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
                Ok(()) | Err(_) => {}
            }
        }
        let socket = UnixListener::bind(&made)?;
        fs::set_permissions(&made, fs::Permissions::from_mode(0o600))?;
        fs::rename(&made, &path)?;
        Ok(Self { socket, path })
    }

    /// Answers until told to stop, then takes the socket away.
    pub(crate) async fn serve(self, handle: Handle, reload: Ask, mut stop: watch::Receiver<bool>) {
        while !*stop.borrow() {
            tokio::select! {
                accepted = self.socket.accept() => {
                    // A connection that broke before it was accepted wants nothing.
                    if let Ok((stream, _)) = accepted {
                        tokio::select! {
                            _ = talk(stream, &handle, &reload) => {}
                            _ = stop.changed() => {}
                        }
                        // It may have gone away in the middle of a copy.
                        let _ = handle.submit(Input::Copy(CopyStep::GiveUp)).await;
                    }
                }
                _ = stop.changed() => {}
            }
        }
        // A socket that stays is taken away by the next start.
        let _ = fs::remove_file(&self.path);
    }
}

/// Answers line by line until the other end has enough.
async fn talk(stream: UnixStream, handle: &Handle, reload: &Ask) -> io::Result<()> {
    let mut stream = BufReader::new(stream);
    loop {
        let mut line = String::new();
        let mut limited = (&mut stream).take(limits::CONTROL_REQUEST_BYTES_MAX);
        let read = timeout(limits::CONTROL_TIMEOUT, limited.read_line(&mut line)).await??;
        if read == 0 {
            return Ok(());
        }
        let answer = match serde_json::from_str::<Request>(&line) {
            Ok(request) if request.v == VERSION => answer(request, handle, reload).await,
            Ok(request) => Answer::refused(format!(
                "version {} is not spoken here, only {VERSION}; use the same program on both ends",
                request.v
            )),
            Err(error) => Answer::refused(format!("not a request: {error}")),
        };
        let mut bytes = serde_json::to_vec(&answer)?;
        bytes.push(b'\n');
        timeout(limits::CONTROL_TIMEOUT, stream.write_all(&bytes)).await??;
    }
}

async fn answer(request: Request, handle: &Handle, reload: &Ask) -> Answer {
    if matches!(request.deed, Deed::Reload) {
        return reloaded(reload).await;
    }
    let is_for_code = matches!(request.deed, Deed::Code);
    let input = match input(request) {
        Ok(input) => input,
        Err(why) => return Answer::refused(why),
    };
    match handle.submit(input).await {
        Ok(Told {
            list: Some(list), ..
        }) => list_answer(list),
        Ok(Told {
            page: Some(page), ..
        }) => page.map_or_else(Answer::refused, |page| Answer {
            page: Some(page),
            ..Answer::done()
        }),
        Ok(Told {
            sheet: Some(sheet), ..
        }) => sheet.map_or_else(Answer::refused, |sheet| Answer {
            sheet: Some(sheet),
            ..Answer::done()
        }),
        Ok(Told { code, .. }) if is_for_code => code_answer(code),
        Ok(Told { copied, .. }) => answer_of(copied),
        Err(refused) => Answer::refused(refused.to_string()),
    }
}

async fn reloaded(reload: &Ask) -> Answer {
    let (answer, taken) = oneshot::channel();
    let asked = reload.send(answer).await;
    match (asked, taken.await) {
        (Ok(()), Ok(Ok(new))) => Answer {
            new: Some(new),
            ..Answer::done()
        },
        (Ok(()), Ok(Err(why))) => Answer::refused(why),
        (Err(_), _) | (_, Err(_)) => Answer::refused("this service has no file to read again"),
    }
}

fn input(request: Request) -> Result<Input, String> {
    Ok(match request.deed {
        Deed::Copy => Input::Copy(CopyStep::Begin),
        Deed::Next => Input::Copy(CopyStep::Next),
        Deed::Release => {
            info!("a person releases what is held");
            Input::Release
        }
        Deed::CheckRoll => Input::List(list(request.csv, ListDeed::Check)?),
        Deed::Print => Input::Print(order(request.order)?),
        Deed::Reload => return Err("the configuration is no input".to_owned()),
        Deed::Code => {
            info!("a person asks for a code for the office's pages");
            Input::Door(Knock::Within(request.name.ok_or("the name is missing")?))
        }
        Deed::Give => {
            info!("a person gives something to a partner");
            Input::Give(giving(request.giving)?)
        }
        Deed::Outline => Input::Outline(outline(request.outline)?),
        Deed::LookBack => Input::Unload(BackDeed::Look),
        Deed::TakeBack => {
            info!("a person takes the last list back");
            Input::Unload(BackDeed::Take)
        }
        Deed::LoadRoll => {
            info!("a person loads a list");
            Input::List(list(request.csv, ListDeed::Load)?)
        }
    })
}

fn list(csv: Option<String>, deed: ListDeed) -> Result<List, String> {
    let csv = csv.ok_or("the list is missing")?;
    let csv = STANDARD
        .decode(csv)
        .map_err(|error| format!("the list is not in Base64: {error}"))?;
    Ok(List { csv, deed })
}

fn order(order: Option<Order>) -> Result<SheetOrder, String> {
    let order = order.ok_or("which sheet is missing")?;
    let kind = SheetKind::from_name(&order.sheet);
    Ok(SheetOrder {
        kind: kind.ok_or_else(|| format!("there is no sheet {:?}", order.sheet))?,
        group: order.group,
        language: order.language,
    })
}

fn giving(giving: Option<SpokenGiving>) -> Result<Giving, String> {
    let giving = giving.ok_or("what is given is missing")?;
    let kind = ParcelKind::from_name(&giving.what);
    Ok(Giving {
        kind: kind.ok_or_else(|| format!("there is no parcel {:?}", giving.what))?,
        to: giving.to,
        purpose: giving.purpose,
        people: giving.people,
        blocks: giving.blocks,
        sha256: giving.sha256,
    })
}

fn outline(order: Option<SpokenOutline>) -> Result<OutlineOrder, String> {
    let order = order.ok_or("the outline is missing")?;
    let how = HowTaken::from_name(&order.how);
    Ok(OutlineOrder {
        how: how.ok_or_else(|| format!("no outline is taken by {:?}", order.how))?,
        group: order.group,
        farmer: order.farmer,
        block: order.block,
        text: order.text,
        on: order.on,
    })
}

fn code_answer(code: Option<String>) -> Answer {
    match code {
        Some(code) => Answer {
            code: Some(code),
            ..Answer::done()
        },
        None => Answer::refused(
            "nobody who may look at the office's pages has this whole name and a phone that can be \
             reached",
        ),
    }
}

fn list_answer(list: ListAnswer) -> Answer {
    Answer {
        roll: Some(RollAnswer {
            page: list.page,
            fate: list.fate.into(),
            findings: list.findings,
        }),
        ..Answer::done()
    }
}

fn answer_of(copied: Option<Copied>) -> Answer {
    match copied {
        None | Some(Copied::Begun | Copied::End) => Answer::done(),
        Some(Copied::Broken(why)) => Answer::refused(why),
        Some(Copied::Lines(lines)) => match lines.into_iter().map(raw).collect() {
            Ok(records) => Answer {
                records: Some(records),
                ..Answer::done()
            },
            Err(error) => Answer::refused(format!("a record cannot be read: {error}")),
        },
    }
}

fn raw(line: Vec<u8>) -> Result<Box<RawValue>, String> {
    let text = String::from_utf8(line).map_err(|error| error.to_string())?;
    RawValue::from_string(text).map_err(|error| error.to_string())
}
