//! Photos of lines and visits: added to a notebook, listed, and handed out as files.

use super::{Notebook, Refused, file, text};
use crate::call::{Done, unwritable};
use crate::exit::Exit;
use crate::here::Here;
use crate::show;
use clap::{Arg, ArgAction, ArgMatches, Command};
use std::collections::BTreeSet;
use std::fs::OpenOptions;
use std::io::Write as _;
use std::path::Path;
use tautline_exchange::photo::{picture, plain, written};
use tautline_store::Keep as _;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::date::Date;
use tautline_survey::message::Message;
use tautline_survey::notebook::current::Current;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::photo::{Photo, Shows};
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let sub = |name: &'static str, help| {
        let notebook = option("notebook", "FILE", "help-notebook-of").required(true);
        Command::new(name).about(words.word(help)).arg(notebook)
    };
    let files = Arg::new("files").value_name("FILES").num_args(1..).required(true);
    let add = sub("add", "help-photo-add")
        .arg(files.help(words.word("help-photo-files")))
        .arg(option("site", "NAME", "help-photo-site"))
        .arg(option("line", "NAME", "help-photo-line"))
        .arg(option("at", "WHERE", "help-photo-at").required(true).value_parser(Shows::ALL.map(Shows::word)))
        .arg(option("date", "DATE", "help-photo-date"))
        .arg(option("caption", "TEXT", "help-photo-caption"))
        .arg(option("person", "NAME", "help-photo-person").action(ArgAction::Append))
        .arg(
            Arg::new("without-place")
                .long("without-place")
                .help(words.word("help-photo-without-place"))
                .action(ArgAction::SetTrue),
        )
        .arg(option("author", "NAME", "help-author"))
        .arg(option("reason", "TEXT", "help-reason"));
    let out = sub("out", "help-photo-out")
        .arg(Arg::new("folder").value_name("DIR").help(words.word("help-photo-folder")).required(true));
    Command::new("photo")
        .about(words.word("help-photo"))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .subcommands([add, sub("list", "help-photo-list"), out])
}

pub(super) fn run(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    match asked.subcommand() {
        Some(("add", asked)) => add(asked, words, here),
        Some(("out", asked)) => out(asked, words),
        Some((_, asked)) => {
            let notebook = Notebook::of(asked, words)?;
            let lacking = lacking(&notebook)?;
            show::photos(&notebook.current()?.photos(), &lacking, words);
            Ok(Exit::Well)
        }
        None => Ok(Exit::NotUnderstood),
    }
}

/// The photos whose bytes aren't here.
fn lacking(notebook: &Notebook) -> Result<BTreeSet<String>, Refused> {
    let named = notebook.said(notebook.keep.photos())?;
    Ok(named.into_iter().filter(|photo| !photo.is_here).map(|photo| photo.sha256).collect())
}

fn add(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    if let Some(author) = text(asked, "author") {
        author.clone_into(&mut here.author);
    }
    let mut notebook = Notebook::open(file(asked), words)?;
    let current = notebook.current()?;
    let about = about(asked, &current, words)?;
    // every file is looked at before anything is written
    let mut found = Vec::new();
    for name in asked.get_many::<String>("files").into_iter().flatten() {
        found.push((name.as_str(), taken(name, &about, asked.get_flag("without-place"), words)?));
    }
    let stands: BTreeSet<_> =
        current.photos().into_iter().map(|photo| Payload::Photo(Box::new(photo.clone())).key()).collect();
    let mut new: BTreeSet<_> = BTreeSet::new();
    let mut drafts = Vec::new();
    for (_, (photo, _)) in &found {
        let payload = Payload::Photo(Box::new(photo.clone()));
        if !stands.contains(&payload.key()) && new.insert(payload.key()) {
            drafts.push(Draft::beginning(&payload));
        }
    }
    let added = drafts.len();
    if added > 0 {
        notebook.write("photo", drafts, text(asked, "reason").unwrap_or_default(), here)?;
    }
    for (_, (photo, bytes)) in &found {
        let put = notebook.keep.put_photo(&photo.sha256, bytes);
        notebook.said(put)?;
    }
    for (name, (photo, _)) in &found {
        show::photo(name, photo, words);
    }
    let said = Message::new("photos-added").with("photos", added).with("known", found.len() - added);
    show::line(&words.say(&said.with("file", notebook.file)));
    let bytes = if asked.get_flag("without-place") { "photos-plain" } else { "photos-whole" };
    show::aside(&words.word(bytes));
    Ok(Exit::Well)
}

/// What is said of all photos alike: site, line, what they show, who is on them.
fn about(asked: &ArgMatches, current: &Current, words: &Words) -> Result<Photo, Refused> {
    let refused = |message: Message| (words.say(&message), Exit::NotUnderstood);
    let (input, _) = current.input();
    let lines: BTreeSet<(&str, &str)> = input
        .plan
        .iter()
        .map(|line| (line.site.as_str(), line.line.as_str()))
        .chain(input.visits.iter().map(|visit| (visit.site.as_str(), visit.line.as_str())))
        .collect();
    let sites: BTreeSet<&str> = lines.iter().map(|(site, _)| *site).collect();
    let names = |names: &BTreeSet<&str>| names.iter().map(|&name| name.to_owned()).collect::<Vec<_>>();
    let site = match (text(asked, "site"), sites.first()) {
        (None, Some(only)) if sites.len() == 1 => only,
        (Some(site), _) if sites.contains(site) => site,
        (found, _) => {
            let message = Message::new("photo-no-site").with("found", found.unwrap_or_default());
            return Err(refused(message.with("sites", names(&sites))));
        }
    };
    let shows = text(asked, "at").and_then(Shows::read).unwrap_or(Shows::Visit);
    let line = text(asked, "line").unwrap_or_default();
    if (shows.is_of_line() || !line.is_empty()) && !lines.contains(&(site, line)) {
        let own = lines.iter().filter(|(own, _)| *own == site).map(|(_, line)| *line).collect();
        let message = Message::new("photo-no-line").with("found", line).with("site", site);
        return Err(refused(message.with("lines", names(&own))));
    }
    let date = match text(asked, "date") {
        Some(found) => {
            let day = || refused(Message::new("photo-no-date").with("found", found));
            Some(Date::read(found).ok_or_else(day)?)
        }
        None => None,
    };
    let people = asked.get_many::<String>("person").into_iter().flatten().cloned().collect();
    Ok(Photo {
        site: site.to_owned(),
        line: line.to_owned(),
        shows,
        date,
        time: String::new(),
        place: None,
        bearing: None,
        caption: text(asked, "caption").unwrap_or_default().to_owned(),
        people,
        visit: None,
        width: 0,
        height: 0,
        media: tautline_survey::photo::Media::Jpeg,
        bytes: 0,
        sha256: String::new(),
    })
}

/// A photo with its bytes, from its file.
fn taken(name: &str, about: &Photo, without_place: bool, words: &Words) -> Result<(Photo, Vec<u8>), Refused> {
    let refused = |message: Message| (words.say(&message.with("file", name)), Exit::File);
    let bytes = std::fs::read(name)
        .map_err(|error| refused(Message::new("file-unreadable").with("why", error.to_string())))?;
    let in_file = |message: Message| {
        let why = words.say(&message);
        refused(Message::new("photo-not-taken").with("why", why))
    };
    let written = written(&bytes);
    let bytes = if without_place { plain(&bytes).map_err(in_file)? } else { bytes };
    let picture = picture(&bytes).map_err(in_file)?;
    let photo = Photo {
        // the day stays, since photos are compared year by year
        date: about.date.or(written.date),
        time: if without_place { String::new() } else { written.time },
        place: written.place.filter(|_| !without_place),
        bearing: written.bearing.filter(|_| !without_place),
        width: picture.width,
        height: picture.height,
        media: picture.media,
        bytes: bytes.len() as u64,
        sha256: sha256_hex(&bytes),
        ..about.clone()
    };
    Ok((photo, bytes))
}

/// Every photo that is here as a file of its own; no file is written over.
fn out(asked: &ArgMatches, words: &Words) -> Done {
    let notebook = Notebook::of(asked, words)?;
    let folder = text(asked, "folder").unwrap_or_default();
    std::fs::create_dir_all(folder).map_err(|error| unwritable(folder, &error, words))?;
    let (mut written, mut lacking) = (0_usize, 0_usize);
    for photo in notebook.current()?.photos() {
        let Some(bytes) = notebook.said(notebook.keep.photo(&photo.sha256))? else {
            lacking += 1;
            continue;
        };
        let path = Path::new(folder).join(file_name(photo));
        let shown = path.display().to_string();
        OpenOptions::new()
            .write(true)
            .create_new(true)
            .open(&path)
            .and_then(|mut file| file.write_all(&bytes))
            .map_err(|error| unwritable(&shown, &error, words))?;
        written += 1;
    }
    let said = Message::new("photos-out").with("photos", written).with("folder", folder);
    show::line(&words.say(&said.with("lacking", lacking)));
    Ok(Exit::Well)
}

/// Site, line, what it shows and the day, in characters that every system takes, and the beginning of its hash.
fn file_name(photo: &Photo) -> String {
    let date = photo.date.map_or_else(String::new, |date| date.to_string());
    let parts = [
        photo.site.as_str(),
        &photo.line,
        photo.shows.word(),
        &date,
        &photo.sha256[..8.min(photo.sha256.len())],
    ];
    let plain = |part: &str| -> String {
        part.chars().map(|c| if c.is_alphanumeric() || c == '-' { c } else { '_' }).take(60).collect()
    };
    let parts: Vec<String> = parts.iter().filter(|part| !part.is_empty()).map(|part| plain(part)).collect();
    format!("{}.{}", parts.join("_"), photo.media.ending())
}
