//! The devices that were let in to a shared notebook, and how one is shut out.

use super::{Notebook, named, text};
use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use clap::ArgMatches;
use tautline_survey::message::Message;
use tautline_words::Words;

pub(super) fn devices(asked: &ArgMatches, words: &Words) -> Done {
    let mut notebook = Notebook::of(asked, words)?;
    let paired = notebook.said(notebook.keep.paired())?;
    let Some(wanted) = text(asked, "withdraw") else {
        show::devices(&paired, words);
        return Ok(if paired.is_empty() { Exit::Nothing } else { Exit::Well });
    };
    let device = named(wanted, paired.into_iter().map(|one| (one.id.clone(), one)), words)?;
    let withdrawn = notebook.keep.withdraw(&device.id);
    notebook.said(withdrawn)?;
    show::line(&words.say(&Message::new("device-withdrawn").with("name", device.name)));
    Ok(Exit::Well)
}
