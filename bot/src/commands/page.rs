//! Where commands write: standard output, for as long as somebody reads it.
//!
//! `budwood … | head -1` takes a line and goes away. That is no error of ours, so the command ends
//! there and says nothing. A pipe that breaks elsewhere (a socket, a gateway) stays an error.

use std::{
    fmt,
    io::{self, IsTerminal, StdoutLock, Write},
};

/// Standard output.
pub(super) struct Page(StdoutLock<'static>);

impl Page {
    pub(super) fn open() -> Self {
        Self(io::stdout().lock())
    }
}

impl Write for Page {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.write(bytes).map_err(marked)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.0.flush().map_err(marked)
    }
}

/// Whoever read the page went away.
#[derive(Debug)]
struct ReaderGone;

impl fmt::Display for ReaderGone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("nobody reads standard output any more")
    }
}

impl std::error::Error for ReaderGone {}

fn marked(error: io::Error) -> io::Error {
    if error.kind() == io::ErrorKind::BrokenPipe {
        io::Error::new(io::ErrorKind::BrokenPipe, ReaderGone)
    } else {
        error
    }
}

/// Whether a command ended only because nobody read on.
#[must_use]
pub fn is_reader_gone(error: &anyhow::Error) -> bool {
    let inner = |cause: &(dyn std::error::Error + 'static)| {
        let io = cause.downcast_ref::<io::Error>()?;
        Some(io.get_ref()?.is::<ReaderGone>())
    };
    error.chain().any(|cause| inner(cause) == Some(true))
}

/// Where progress is drawn: a terminal, or nowhere, so that no file and no log is full of it.
pub(super) fn progress() -> Box<dyn Write> {
    let errors = io::stderr();
    if errors.is_terminal() {
        Box::new(errors.lock())
    } else {
        Box::new(io::sink())
    }
}

#[cfg(test)]
mod tests {
    use anyhow::Context;

    use super::*;

    #[test]
    fn only_our_own_broken_pipe_is_quiet() {
        let ended = |error: io::Error| {
            let result: Result<(), _> = Err(error);
            is_reader_gone(&result.context("cannot write").unwrap_err())
        };
        let broken = || io::Error::from(io::ErrorKind::BrokenPipe);
        assert!(ended(marked(broken())));
        assert!(!ended(broken()), "a socket that broke");
        assert!(!ended(marked(io::ErrorKind::StorageFull.into())));
    }
}
