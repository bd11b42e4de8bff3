//! The program: arguments in, exit code out.
#![forbid(unsafe_code)]

use std::{
    io::{self, Write},
    process::ExitCode,
};

fn main() -> ExitCode {
    match budwood::commands::run() {
        Ok(code) => code,
        Err(error) => {
            // Where the standard error is gone there is nobody to tell.
            let _ = writeln!(io::stderr(), "budwood: {error:#}");
            ExitCode::FAILURE
        }
    }
}
