//! The `tautline` command: parse, call, print.

mod call;
mod demo;
mod exit;
mod explain;
mod export;
mod follow;
mod here;
mod inputs;
mod language;
mod notebook;
mod plan;
mod practice;
mod progress;
mod report;
#[cfg(feature = "serve")]
mod serve;
mod show;
mod sites;

use exit::Exit;
use std::process::ExitCode;

fn main() -> ExitCode {
    let words = match language::words(std::env::args_os(), language::surroundings) {
        Ok(words) => words,
        Err(refused) => {
            show::refusal(&refused);
            return Exit::NotUnderstood.into();
        }
    };
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
