//! `budwood demo`: three years of an invented group, played through the real engine.

use std::io::Write;

/// Plays the demo.
///
/// # Errors
///
/// When the demo's files are broken.
pub fn play(_all: bool, _output: &mut impl Write) -> anyhow::Result<()> {
    Ok(())
}
