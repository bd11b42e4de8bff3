//! `budwood check calendar`: what is wrong in a calendar's file, or how sure its values are.

use std::{io::Write, path::Path, process::ExitCode};

use budwood_scheduler::{
    Calendar,
    handbook::calendar::{CalendarError, Citation, Confidence},
};

use crate::service::setup;

/// Reads a calendar and writes what there is to say of it.
///
/// # Errors
///
/// When the file cannot be read or the page cannot be written.
pub fn check(file: &Path, out: &mut impl Write) -> anyhow::Result<ExitCode> {
    match Calendar::parse(&setup::read_text(file)?) {
        Ok(calendar) => {
            write!(out, "{}", good(&calendar))?;
            Ok(ExitCode::SUCCESS)
        }
        Err(error) => {
            write!(out, "{}", wrong(file, &error))?;
            Ok(ExitCode::FAILURE)
        }
    }
}

fn wrong(file: &Path, error: &CalendarError) -> String {
    let mut page = String::new();
    for fault in &error.faults {
        page += &format!("{}: {fault}\n", file.display());
    }
    page + &format!("{} to mend\n", error.faults.len())
}

fn good(calendar: &Calendar) -> String {
    let mut page = format!("calendar {}: {}\n", calendar.name, calendar.title);
    let of = |confidence: Confidence| {
        let cited = calendar.citations.iter();
        cited.filter(move |cited| cited.confidence == confidence)
    };
    let counts = Confidence::ALL.map(|confidence| {
        let number = of(confidence).count();
        format!("{} {number}", confidence.name())
    });
    page += &format!(
        "good: {} values ({})\n",
        calendar.citations.len(),
        counts.join(", ")
    );
    page +=
        "\nfrom memory, never told as a rule, to be replaced by what is known where it is used:\n";
    for cited in of(Confidence::Memory) {
        page += &format!("  {}{}\n", cited.path, note(cited));
    }
    page += "\npublished otherwise:\n";
    for other in &calendar.also_published {
        let source = calendar.sources.get(&other.source);
        page += &format!(
            "  {}: {} [{}; {}]\n",
            other.of,
            other.says,
            source.map_or("", String::as_str),
            other.confidence.name()
        );
    }
    page
}

fn note(cited: &Citation) -> String {
    let note = cited.note.as_deref();
    note.map_or_else(String::new, |note| format!(" ({note})"))
}
