//! Notebooks: what is asked of one, and how it is opened.

mod asked;
mod calibrations;
mod copies;
mod devices;
mod erase;
mod history;
mod import;
mod layouts;
mod ledger;
mod photo;
mod right;

#[cfg(test)]
mod tests;

pub(crate) use asked::{commands, headings, in_place_of_files, log_command, reading};
pub(crate) use calibrations::{log, show_log};
pub(crate) use copies::full as full_copy;
pub(crate) use layouts::{keep as keep_layout, replace};

use crate::call::Done;
use crate::exit::Exit;
use crate::here::Here;
use clap::ArgMatches;
use std::path::Path;
use tautline_exchange::Read;
use tautline_store::{Cursor, Keep, KeepError, Sqlite};
use tautline_survey::message::Message;
use tautline_survey::notebook::current::Current;
use tautline_survey::notebook::hand::{Draft, Hand};
use tautline_survey::record::Records;
use tautline_survey::revision::{ActionId, DeviceId, Revision};
use tautline_words::Words;

/// Why something was not done, in words, and how the call ends.
type Refused = (String, Exit);

/// Does what was asked of a notebook, if the name is one of its commands.
pub(crate) fn run(name: &str, asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    if let Some(author) = asked.try_get_one::<String>("author").ok().flatten() {
        here.author.clone_from(author);
    }
    match name {
        "import" => import::import(asked, words, here),
        "history" => history::history(asked, words),
        "settle" => right::settle(asked, words, here),
        "restore" => right::restore(asked, words, here),
        "devices" => devices::devices(asked, words),
        "photo" => photo::run(asked, words, here),
        "erase" => erase::erase(asked, words, here),
        "ledger" => ledger::run(asked, words, here),
        _ => copies::backup(asked, words),
    }
}

/// A notebook with the name of its file, for what is said of it.
struct Notebook<'a> {
    file: &'a str,
    keep: Sqlite,
    words: &'a Words,
}

impl<'a> Notebook<'a> {
    fn open(file: &'a str, words: &'a Words) -> Result<Self, Refused> {
        let keep = Sqlite::open(Path::new(file)).map_err(|error| refused(file, &error, words))?;
        Ok(Self { file, keep, words })
    }

    fn open_or_begin(file: &'a str, words: &'a Words) -> Result<Self, Refused> {
        let keep = Sqlite::open_or_begin(Path::new(file)).map_err(|error| refused(file, &error, words))?;
        Ok(Self { file, keep, words })
    }

    /// The notebook, if there is one.
    fn open_if_there(file: &'a str, words: &'a Words) -> Result<Option<Self>, Refused> {
        if Path::new(file).exists() { Self::open(file, words).map(Some) } else { Ok(None) }
    }

    fn of(asked: &'a ArgMatches, words: &'a Words) -> Result<Self, Refused> {
        Self::open(file(asked), words)
    }

    /// Puts what the store says into words.
    fn said<T>(&self, done: Result<T, KeepError>) -> Result<T, Refused> {
        done.map_err(|error| refused(self.file, &error, self.words))
    }

    /// What stands.
    fn current(&self) -> Result<Current, Refused> {
        Ok(Current::of(self.said(self.keep.heads())?))
    }

    /// Everything that was ever written.
    fn all(&self) -> Result<Vec<Revision>, Refused> {
        Ok(self.said(self.keep.since(Cursor::START, usize::MAX))?.0)
    }

    /// Everything that was ever written, record by record.
    fn records(&self) -> Result<Records, Refused> {
        let mut records = Records::default();
        for revision in self.all()? {
            records.add(revision);
        }
        Ok(records)
    }

    /// Makes revisions of drafts and takes them in: one action, all of it or nothing.
    fn write(
        &mut self,
        what: &str,
        drafts: Vec<Draft>,
        reason: &str,
        here: &mut Here,
    ) -> Result<ActionId, Refused> {
        self.write_and_blank(what, drafts, Vec::new(), reason, here)
    }

    /// The same, with revisions that are blank from here on.
    fn write_and_blank(
        &mut self,
        what: &str,
        drafts: Vec<Draft>,
        blank: Vec<Revision>,
        reason: &str,
        here: &mut Here,
    ) -> Result<ActionId, Refused> {
        let (time, milliseconds) = (here.now)();
        let mut random = [0; 10];
        (here.random)(&mut random);
        let device = self.keep.device(&here.device, DeviceId::made(milliseconds, random));
        let device = self.said(device)?;
        let counter = self.said(self.keep.counter())?;
        let mut hand = Hand {
            author: here.author.clone(),
            reason: reason.to_owned(),
            device,
            device_name: here.device.clone(),
            time,
            milliseconds,
            counter,
            random: &mut *here.random,
        };
        let written = hand.write(what, drafts);
        let mut made = written.map_err(|error| (self.words.word(error.code()), Exit::NotUnderstood))?;
        let action =
            made.first().map_or_else(|| ActionId::made(milliseconds, random), |one| one.head().action.id);
        made.extend(blank);
        let appended = self.keep.append(&made);
        self.said(appended)?;
        Ok(action)
    }
}

/// Everything that stands in a notebook, and the notebook for the bytes of its photos.
pub(crate) fn standing(file: &str, words: &Words) -> Result<(Current, Sqlite), Refused> {
    let notebook = Notebook::open(file, words)?;
    Ok((notebook.current()?, notebook.keep))
}

/// What stands in a notebook, as if it had just been read from files.
pub(crate) fn read(file: &str, words: &Words) -> Result<Read, Refused> {
    let (input, goals) = Notebook::open(file, words)?.current()?.into_input();
    Ok(Read { input, goals })
}

fn file(asked: &ArgMatches) -> &str {
    asked.get_one::<String>("notebook").map_or("", String::as_str)
}

fn text<'a>(asked: &'a ArgMatches, name: &str) -> Option<&'a str> {
    asked.get_one::<String>(name).map(String::as_str)
}

/// Why a notebook did not do what was asked.
pub(crate) fn refused(file: &str, error: &KeepError, words: &Words) -> Refused {
    (words.say(&error.message(file)), Exit::File)
}

/// The one thing that a person's few characters name, by the end or the whole of its id.
fn named<T>(found: &str, all: impl IntoIterator<Item = (String, T)>, words: &Words) -> Result<T, Refused> {
    let wanted = found.trim().trim_start_matches('…').to_lowercase();
    let mut fitting = all.into_iter().filter(|(id, _)| wanted.len() >= 4 && id.ends_with(&wanted));
    let code = match (fitting.next(), fitting.next()) {
        (Some((_, one)), None) => return Ok(one),
        (None, _) => "id-unknown",
        _ => "id-several",
    };
    Err((words.say(&Message::new(code).with("found", found)), Exit::NotUnderstood))
}
