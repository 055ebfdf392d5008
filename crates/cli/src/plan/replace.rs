//! `tautline plan replace`: a drawn line that can't be read, why, and what takes its place.

use super::option;
use clap::Command;
use tautline_survey::drawn::Why;
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let option = |name, value, help| option(words, name, value, help);
    Command::new("replace")
        .about(words.word("help-plan-replace"))
        .arg(option("notebook", "FILE", "help-notebook-of").required(true))
        .arg(option("site", "NAME", "help-replace-site").required(true))
        .arg(option("line", "NAME", "help-replace-line").required(true))
        .arg(option("why", "WHY", "help-replace-why").required(true).value_parser(Why::ALL.map(Why::word)))
        .arg(option("note", "TEXT", "help-replace-note"))
        .arg(option("date", "DATE", "help-replace-date"))
        .arg(option("author", "NAME", "help-author"))
}
