//! The program: arguments in, exit code out.
#![forbid(unsafe_code)]

use std::{
    io::{self, Write},
    process::ExitCode,
};

use budwood::commands::{self, page::is_reader_gone};

fn main() -> ExitCode {
    match commands::run() {
        Ok(code) => code,
        Err(error) if is_reader_gone(&error) => ExitCode::SUCCESS,
        Err(error) => {
            // Where the standard error is gone there is nobody to tell.
            let _ = writeln!(io::stderr(), "budwood: {error:#}");
            ExitCode::FAILURE
        }
    }
}
