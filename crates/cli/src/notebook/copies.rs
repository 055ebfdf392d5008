//! Copies of a notebook: another file of its kind, or lines of JSON.

use super::{Notebook, refused, text};
use crate::call::{Done, unwritable};
use crate::exit::Exit;
use crate::show;
use clap::ArgMatches;
use std::io::Write;
use std::path::Path;
use tautline_store::{Cursor, Keep as _};
use tautline_survey::message::Message;
use tautline_survey::revision::{header, line, photo_line};
use tautline_words::Words;

/// How many revisions are held at once.
const AT_ONCE: usize = 1000;

pub(super) fn backup(asked: &ArgMatches, words: &Words) -> Done {
    let notebook = Notebook::of(asked, words)?;
    let to = text(asked, "to").unwrap_or_default();
    notebook.keep.back_up(Path::new(to)).map_err(|error| refused(to, &error, words))?;
    let revisions = notebook.said(notebook.keep.len())?;
    let said = Message::new("backup-written").with("file", to).with("revisions", revisions);
    show::line(&words.say(&said));
    show::aside(&words.word("export-full-said"));
    Ok(Exit::Well)
}

/// Everything, one line a revision, records that this version doesn't know among them, then one line a photo.
pub(crate) fn full(asked: &ArgMatches, words: &Words) -> Done {
    let notebook = Notebook::of(asked, words)?;
    let to = text(asked, "to");
    let name = to.unwrap_or("-");
    let unwritten = |error: std::io::Error| unwritable(name, &error, words);
    let mut out: Box<dyn Write> = match to {
        // a copy takes no other file's place
        Some(file) => Box::new(std::io::BufWriter::new(std::fs::File::create_new(file).map_err(unwritten)?)),
        None => Box::new(std::io::BufWriter::new(std::io::stdout().lock())),
    };
    writeln!(out, "{}", header()).map_err(unwritten)?;
    let mut cursor = Cursor::START;
    loop {
        let (some, upto) = notebook.said(notebook.keep.since(cursor, AT_ONCE))?;
        if some.is_empty() {
            break;
        }
        for revision in &some {
            writeln!(out, "{}", line(revision)).map_err(unwritten)?;
        }
        cursor = upto;
    }
    for photo in notebook.said(notebook.keep.photos())?.iter().filter(|photo| photo.is_here) {
        if let Some(bytes) = notebook.said(notebook.keep.photo(&photo.sha256))? {
            writeln!(out, "{}", photo_line(&photo.sha256, &bytes)).map_err(unwritten)?;
        }
    }
    out.flush().map_err(unwritten)?;
    show::aside(&words.word("export-full-said"));
    Ok(Exit::Well)
}
