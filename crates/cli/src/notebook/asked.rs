//! The commands of a notebook, as clap takes them.

use clap::{Arg, ArgAction, Command};
use tautline_words::Words;

/// A notebook in place of files; what it holds was read under its own options.
pub(crate) fn in_place_of_files(words: &Words) -> Arg {
    let notebook = Arg::new("notebook").long("notebook").value_name("FILE").help(words.word("help-notebook"));
    notebook.conflicts_with_all(["files", "protocol", "line-length", "site"])
}

/// The options that files are read with.
pub(crate) fn reading(command: Command, words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    command
        .arg(option("protocol", "FILE|NAME", "help-protocol"))
        .arg(option("line-length", "LENGTH", "help-line-length"))
        .arg(option("unit", "UNIT", "help-unit"))
        .arg(option("decimal", "MARK", "help-decimal").value_parser(["point", "comma"]))
        .arg(option("site", "NAME", "help-site"))
        .arg(headings(words))
}

/// What an office writes over its columns.
pub(crate) fn headings(words: &Words) -> Arg {
    let own = Arg::new("heading").long("heading").value_name("THEIRS=HEADING").action(ArgAction::Append);
    own.help(words.word("help-heading"))
}

/// The log of calibrations in a notebook, below `tautline agree`.
pub(crate) fn log_command(words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let flag = |name: &'static str, help| {
        Arg::new(name).long(name).help(words.word(help)).action(ArgAction::SetTrue)
    };
    Command::new("log")
        .about(words.word("help-agree-log"))
        .arg(option("notebook", "FILE", "help-notebook-of").required(true))
        .arg(option("reader", "NAME", "help-log-reader"))
        .arg(option("span", "DAYS", "help-span"))
        .arg(option("on", "DAY", "help-on"))
        .arg(option("certificate", "FILE", "help-certificate"))
        .arg(flag("json", "help-json").conflicts_with("csv"))
        .arg(flag("csv", "help-log-csv"))
}

/// Every command that works on a notebook alone.
pub(crate) fn commands(words: &Words) -> Vec<Command> {
    let sub = |name: &'static str, help| {
        let notebook = Arg::new("notebook").long("notebook").value_name("FILE").required(true);
        Command::new(name).about(words.word(help)).arg(notebook.help(words.word("help-notebook-of")))
    };
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let flag = |name: &'static str, help| {
        Arg::new(name).long(name).help(words.word(help)).action(ArgAction::SetTrue)
    };
    let signed = |command: Command| {
        command.arg(option("author", "NAME", "help-author")).arg(option("reason", "TEXT", "help-reason"))
    };
    let files = Arg::new("files").value_name("FILES").num_args(1..).required(true);
    let import =
        signed(reading(sub("import", "help-import"), words).arg(files.help(words.word("help-import-files"))))
            .arg(flag("dry-run", "help-dry-run"));
    let history = sub("history", "help-history")
        .arg(option("site", "NAME", "help-history-site"))
        .arg(option("line", "NAME", "help-history-line"))
        .arg(flag("blanked", "help-history-blanked").conflicts_with_all(["site", "line"]))
        .arg(flag("full", "help-notebook-full"));
    let settle = signed(sub("settle", "help-settle")).arg(option("keep", "REVISION", "help-keep"));
    let restore = signed(sub("restore", "help-restore"))
        .arg(
            Arg::new("revision")
                .value_name("REVISION")
                .help(words.word("help-restore-revision"))
                .required_unless_present("undo"),
        )
        .arg(option("undo", "ACTION", "help-undo").conflicts_with("revision"));
    let erase = signed(sub("erase", "help-erase"))
        .arg(option("person", "NAME", "help-erase-person").required_unless_present("site"))
        .arg(option("site", "NAME", "help-erase-site").conflicts_with("person"))
        .arg(option("instead", "TEXT", "help-erase-instead"))
        .arg(flag("yes", "help-erase-yes"));
    let devices = sub("devices", "help-devices").arg(option("withdraw", "DEVICE", "help-devices-withdraw"));
    let backup = sub("backup", "help-backup")
        .arg(Arg::new("to").value_name("TO").help(words.word("help-backup-to")).required(true));
    let ledger = super::ledger::command(words, sub);
    vec![import, history, settle, restore, erase, super::photo::command(words), devices, backup, ledger]
}
