//! The `tautline` command: parse, call, print.

mod call;
mod demo;
mod exit;
mod follow;
mod here;
mod inputs;
mod notebook;
mod plan;
mod practice;
mod progress;
#[cfg(feature = "serve")]
mod serve;
mod show;
mod sites;

use exit::Exit;
use std::process::ExitCode;
use tautline_words::Words;

fn main() -> ExitCode {
    let words = Words::english();
    let exit = match call::command(&words).try_get_matches() {
        Ok(matches) => call::run(&matches, &words),
        Err(error) => {
            // clap words its own help and usage errors; a broken pipe while printing them is nobody's fault
            let _ = error.print();
            if error.use_stderr() { Exit::NotUnderstood } else { Exit::Well }
        }
    };
    exit.into()
}
