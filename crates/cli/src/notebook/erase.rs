//! Forgetting a person or a site. Nothing else in a notebook can't be undone, so it is shown first and done when it is
//! asked for a second time.

use super::{Notebook, text};
use crate::call::Done;
use crate::exit::Exit;
use crate::here::Here;
use crate::show;
use clap::ArgMatches;
use tautline_survey::message::Message;
use tautline_survey::notebook::forget::{Whom, forget};
use tautline_words::Words;

pub(super) fn erase(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let mut notebook = Notebook::of(asked, words)?;
    let whom = match (text(asked, "person"), text(asked, "site")) {
        (Some(person), _) => Whom::Person(person.trim().to_owned()),
        (None, site) => Whom::Site(site.unwrap_or_default().trim().to_owned()),
    };
    let name = whom.name().to_owned();
    if name.is_empty() {
        return Err((words.word("erase-no-name"), Exit::NotUnderstood));
    }
    if here.author == name {
        // the name would stand in the very revisions that take it out
        let said = Message::new("erase-by-themselves").with("name", name.as_str());
        return Err((words.say(&said), Exit::NotUnderstood));
    }
    let silent = match whom {
        Whom::Person(_) => "erased-person",
        Whom::Site(_) => "erased-site",
    };
    let instead = text(asked, "instead").map_or_else(|| words.word(silent), str::to_owned);
    let forgotten = forget(&notebook.records()?, &whom, &instead);
    let count =
        |code, items: &[Message]| Message::new(code).with("name", name.as_str()).with("records", items.len());
    if forgotten.drafts.is_empty() && forgotten.in_conflict.is_empty() {
        show::line(&words.say(&Message::new("erase-nothing").with("name", name.as_str())));
        return Ok(Exit::Nothing);
    }
    if !forgotten.in_conflict.is_empty() {
        show::records(
            &words.say(&count("erase-in-conflict", &forgotten.in_conflict)),
            &forgotten.in_conflict,
            words,
        );
        return Ok(Exit::MustSettle);
    }
    if !asked.get_flag("yes") {
        show::records(&words.say(&count("erase-would", &forgotten.called)), &forgotten.called, words);
        show::line(&words.say(&Message::new("erase-warning").with("revisions", forgotten.blank.len())));
        return Ok(Exit::Well);
    }
    let (records, revisions) = (forgotten.called.len(), forgotten.blank.len());
    let reason = text(asked, "reason").unwrap_or_default();
    notebook.write_and_blank("erase", forgotten.drafts, forgotten.blank, reason, here)?;
    let said = Message::new("erased").with("records", records).with("revisions", revisions);
    show::line(&words.say(&said));
    Ok(Exit::Well)
}
