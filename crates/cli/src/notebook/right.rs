//! Putting things right by further revisions: settling, restoring, undoing.

use super::{Notebook, Refused, named, text};
use crate::call::Done;
use crate::exit::Exit;
use crate::here::Here;
use crate::show;
use clap::ArgMatches;
use tautline_survey::message::Message;
use tautline_survey::notebook::amend::{self, NotAmended};
use tautline_survey::notebook::current::written_by;
use tautline_words::Words;

/// Shows what must be settled, or settles one of it.
pub(super) fn settle(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let mut notebook = Notebook::of(asked, words)?;
    let current = notebook.current()?;
    let Some(chosen) = text(asked, "keep") else {
        show::conflicts(&current.conflicts, words);
        return Ok(if current.conflicts.is_empty() { Exit::Well } else { Exit::MustSettle });
    };
    let versions = current.conflicts.iter().flat_map(|conflict| {
        conflict.versions.iter().map(move |version| (version.id().to_string(), (conflict, version)))
    });
    let (conflict, version) = named(chosen, versions, words)?;
    let drafts = amend::settle(conflict, version).map_err(|why| not_amended(why, words))?;
    notebook.write("settle", drafts, text(asked, "reason").unwrap_or_default(), here)?;
    let said = Message::new("settled-with")
        .with("what", conflict.called.clone())
        .with("version", written_by(version));
    show::line(&words.say(&said));
    Ok(Exit::Well)
}

/// Restores one record to an earlier revision, or undoes an action in all its records.
pub(super) fn restore(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let mut notebook = Notebook::of(asked, words)?;
    let reason = text(asked, "reason").unwrap_or_default();
    if let Some(action) = text(asked, "undo") {
        return undo(&mut notebook, action, reason, words, here);
    }
    let all = notebook.all()?;
    let revisions = all.iter().map(|revision| (revision.id().to_string(), revision));
    let wanted = named(text(asked, "revision").unwrap_or_default(), revisions, words)?;
    let own: Vec<_> = all.iter().filter(|revision| revision.record() == wanted.record()).collect();
    let draft = amend::restore(&own, wanted).map_err(|why| not_amended(why, words))?;
    notebook.write("restore", vec![draft], reason, here)?;
    show::line(&words.say(&Message::new("restored").with("version", written_by(wanted))));
    Ok(Exit::Well)
}

fn undo(notebook: &mut Notebook, action: &str, reason: &str, words: &Words, here: &mut Here) -> Done {
    let records = notebook.records()?;
    let mut ids: Vec<_> = records.revisions().map(|revision| revision.head().action.id).collect();
    ids.sort_unstable();
    ids.dedup();
    let action = named(action, ids.into_iter().map(|id| (id.to_string(), id)), words)?;
    let amend::TakenBack { drafts, records: undone, left } = amend::take_back(&records, action);
    let said = if undone > 0 {
        let own = notebook.write("undo", drafts, reason, here)?;
        Message::new("undone").with("records", undone).with("action", own.short())
    } else {
        Message::new("undone-nothing")
    };
    show::line(&words.say(&said));
    if left > 0 && undone > 0 {
        show::line(&words.say(&Message::new("undone-left").with("records", left)));
    }
    Ok(if undone > 0 { Exit::Well } else { Exit::Nothing })
}

fn not_amended(why: NotAmended, words: &Words) -> Refused {
    let code = match why {
        NotAmended::InConflict => "restore-in-conflict",
        NotAmended::Erased => "restore-erased",
        NotAmended::AlreadyStands => "restore-stands",
    };
    (words.word(code), Exit::Nothing)
}
