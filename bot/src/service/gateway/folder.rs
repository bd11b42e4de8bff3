//! A gateway that is a folder, for rehearsals without a network: a text is a file.
//!
//! A file in `in/` is a text to us, one in `out/` a text of ours: first the number, then, after a
//! space or a line's end, what it says. Files in `in/` are taken in the order of their names and
//! removed once the engine has them for good; what is no text is moved to `refused/`. Who writes
//! one writes it elsewhere and moves it in, or gives it a name with a dot in front until it is
//! whole. Deliberately absent: receipts, because nobody knows when a file was read.

use std::{
    fs::{self, File},
    io::{self, Read, Write},
    path::{Path, PathBuf},
    sync::{Arc, Mutex, PoisonError},
    time::{Duration, UNIX_EPOCH},
};

use budwood_parser::table::TableError;
use tokio::task::spawn_blocking;

use crate::{
    service::{
        clock::Clock,
        gateway::Block,
        port::{
            Abilities, Arrival, Gateway, Intake, OpenError, Opened, Plan, RunFuture, Secrets,
            SendFuture, Stop,
        },
    },
    words::{
        limits,
        traffic::{Inbound, Link, Outgoing, SendOutcome, Whose},
    },
};

/// How often the folder is looked at.
const LOOK: Duration = Duration::from_secs(1);

/// Where it is, and its name.
#[derive(Clone, Debug)]
struct Place {
    name: String,
    folder: PathBuf,
}

/// Reads the block.
pub(crate) fn read(block: &Block<'_>) -> Result<Arc<dyn Plan>, TableError> {
    Ok(Arc::new(Place {
        name: block.name.to_owned(),
        folder: block.folder.join(block.table.need_text("folder")?),
    }))
}

const ABILITIES: Abilities = Abilities {
    sends: true,
    // The same id is the same file.
    idempotent: true,
    demo_numbers: true,
};

impl Plan for Place {
    fn abilities(&self) -> Abilities {
        ABILITIES
    }

    fn open(&self, _: &Secrets<'_>, clock: &Clock) -> Result<Opened, OpenError> {
        let gateway = Arc::new(Folder {
            place: self.clone(),
            clock: clock.clone(),
            link: Mutex::new(Link::Up),
        });
        let door = None;
        Ok(Opened { gateway, door })
    }
}

/// A folder that carries texts.
struct Folder {
    place: Place,
    clock: Clock,
    /// Held for one look and never across an await.
    link: Mutex<Link>,
}

impl Gateway for Folder {
    fn name(&self) -> &str {
        &self.place.name
    }

    fn abilities(&self) -> Abilities {
        ABILITIES
    }

    fn send<'a>(&'a self, text: &'a Outgoing) -> SendFuture<'a> {
        let (place, text) = (self.place.clone(), text.clone());
        Box::pin(async move {
            let id = text.id.to_string();
            let written = blocking(move || place.write(&text)).await;
            self.note(written.as_ref().err());
            match written {
                Ok(()) => SendOutcome::Accepted { ids: vec![id] },
                Err(error) => SendOutcome::Wait {
                    whose: Whose::Gateway,
                    after: None,
                    why: format!("the file cannot be written: {}", error.kind()),
                },
            }
        })
    }

    fn run<'a>(&'a self, intake: &'a dyn Intake, mut stop: Stop) -> RunFuture<'a> {
        Box::pin(async move {
            while !*stop.borrow() {
                let taken = self.take_what_lies_there(intake).await;
                self.note(taken.as_ref().err());
                tokio::select! {
                    _ = stop.changed() => {}
                    () = tokio::time::sleep(LOOK) => {}
                }
            }
        })
    }

    fn link(&self) -> Link {
        self.with_link(|link| link.clone())
    }
}

impl Folder {
    async fn take_what_lies_there(&self, intake: &dyn Intake) -> io::Result<()> {
        let place = self.place.clone();
        let letters = blocking(move || place.letters()).await?;
        // All are handed over before the first answer, so that they share a write.
        let handed: Vec<_> = letters
            .into_iter()
            .map(|letter| (intake.take(Arrival::Text(letter.text)), letter.file))
            .collect();
        for (taken, file) in handed {
            // What was not taken lies there still, and is the same text at the next look.
            if taken.await.is_ok() {
                blocking(move || fs::remove_file(file)).await?;
            }
        }
        Ok(())
    }

    fn note(&self, error: Option<&io::Error>) {
        let now = self.clock.now();
        self.with_link(|link| match (error, &*link) {
            (None, _) => *link = Link::Up,
            (Some(error), Link::Up) => {
                *link = Link::Down {
                    since: now,
                    why: format!("the folder cannot be used: {}", error.kind()),
                };
            }
            (Some(_), Link::Down { .. }) => {}
        });
    }

    fn with_link<T>(&self, look: impl FnOnce(&mut Link) -> T) -> T {
        look(&mut self.link.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

/// A text in a file.
struct Letter {
    file: PathBuf,
    text: Inbound,
}

impl Place {
    /// One of the folders below; it is made if it is not there.
    fn below(&self, name: &str) -> io::Result<PathBuf> {
        let folder = self.folder.join(name);
        fs::create_dir_all(&folder)?;
        Ok(folder)
    }

    /// Writes a text beside its place first, so that whoever looks there never sees half of it.
    fn write(&self, text: &Outgoing) -> io::Result<()> {
        let folder = self.below("out")?;
        let unfinished = folder.join(format!(".{}", text.id));
        let mut file = File::create(&unfinished)?;
        writeln!(file, "{} {}", text.to, text.text)?;
        file.sync_data()?;
        fs::rename(unfinished, folder.join(format!("{}.txt", text.id)))
    }

    /// The texts that lie in `in/`, by the names of their files.
    fn letters(&self) -> io::Result<Vec<Letter>> {
        let mut files = Vec::new();
        for entry in fs::read_dir(self.below("in")?)? {
            let entry = entry?;
            let is_hidden = entry.file_name().as_encoded_bytes().starts_with(b".");
            if !is_hidden && entry.file_type()?.is_file() {
                files.push(entry.path());
            }
        }
        files.sort();
        files.truncate(limits::NOTIFICATION_ITEMS_MAX);
        let mut letters = Vec::new();
        for file in files {
            match self.text_in(&file)? {
                Content::Text(text) => letters.push(Letter { file, text }),
                Content::Empty => {}
                Content::NoText => {
                    let name = file.file_name().unwrap_or_default();
                    fs::rename(&file, self.below("refused")?.join(name))?;
                }
            }
        }
        Ok(letters)
    }

    fn text_in(&self, path: &Path) -> io::Result<Content> {
        /// A letter has up to four bytes in UTF-8.
        const BYTES_MAX: usize = (limits::ADDRESS_CHARS_MAX + limits::TEXT_CHARS_MAX) * 4;
        let file = File::open(path)?;
        let written = file.metadata()?.modified()?;
        let mut bytes = Vec::new();
        file.take(BYTES_MAX as u64 + 1).read_to_end(&mut bytes)?;
        if bytes.is_empty() {
            // Somebody is about to write it.
            return Ok(Content::Empty);
        }
        let id = mark(path, written, &bytes);
        let said = String::from_utf8(bytes).ok().and_then(|said| {
            let (from, text) = said.trim().split_once(char::is_whitespace)?;
            let fits = from.chars().count() <= limits::ADDRESS_CHARS_MAX
                && text.chars().count() <= limits::TEXT_CHARS_MAX;
            fits.then(|| (from.to_owned(), text.trim().to_owned()))
        });
        let Some((from, text)) = said else {
            return Ok(Content::NoText);
        };
        Ok(Content::Text(Inbound {
            gateway: self.name.clone(),
            gateway_id: Some(id),
            from,
            to: String::new(),
            text,
            sent_at: None,
        }))
    }
}

enum Content {
    Text(Inbound),
    Empty,
    NoText,
}

/// The same for the same file only: a name may be used again for another text, and somebody may
/// say the same twice.
fn mark(path: &Path, written: std::time::SystemTime, bytes: &[u8]) -> String {
    let written = written.duration_since(UNIX_EPOCH).unwrap_or_default();
    let mut hash = hmac_sha256::Hash::new();
    hash.update(path.as_os_str().as_encoded_bytes());
    hash.update([0]);
    hash.update(written.as_nanos().to_be_bytes());
    hash.update(bytes);
    let [a, b, c, d, e, f, g, h, ..] = hash.finalize();
    format!("{:016x}", u64::from_be_bytes([a, b, c, d, e, f, g, h]))
}

/// Work with files, which must not hold up others.
async fn blocking<T: Send + 'static>(
    work: impl FnOnce() -> io::Result<T> + Send + 'static,
) -> io::Result<T> {
    spawn_blocking(work)
        .await
        .unwrap_or_else(|_| Err(io::ErrorKind::Other.into()))
}
