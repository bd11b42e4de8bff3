//! `budwood demo`.
/// Plays the demo.
///
/// # Errors
///
/// When the demo's files are broken.
pub fn play(_all: bool, _output: &mut impl std::io::Write) -> anyhow::Result<()> {
    Ok(())
}
