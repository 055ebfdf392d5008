//! Photos of lines and visits: added to a notebook, listed, and handed out as files.

use super::{Notebook, Refused, file, text};
use crate::call::{Done, unwritable};
use crate::exit::Exit;
use crate::here::Here;
use crate::show;
use clap::{Arg, ArgAction, ArgMatches, Command};
use std::collections::BTreeSet;
use std::fs::{File, OpenOptions};
use std::io::{Read as _, Write as _};
use std::path::Path;
use tautline_exchange::limits::LARGEST_FILE;
use tautline_exchange::photo::{EDGE, picture, plain, smaller, written};
use tautline_store::Keep as _;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::date::Date;
use tautline_survey::message::Message;
use tautline_survey::notebook::current::Current;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::photo::{Photo, Shows};
use tautline_survey::place::Openness;
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    let option = |name: &'static str, value: &'static str, help| {
        Arg::new(name).long(name).value_name(value).help(words.word(help))
    };
    let flag = |name: &'static str, help| {
        Arg::new(name).long(name).help(words.word(help)).action(ArgAction::SetTrue)
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
        .arg(flag("without-place", "help-photo-without-place"))
        .arg(flag("full-size", "help-photo-full-size"))
        .arg(option("author", "NAME", "help-author"))
        .arg(option("reason", "TEXT", "help-reason"));
    let out = sub("out", "help-photo-out")
        .arg(Arg::new("folder").value_name("DIR").help(words.word("help-photo-folder")).required(true))
        .arg(flag("full", "help-notebook-full"));
    let list = sub("list", "help-photo-list").arg(flag("full", "help-notebook-full"));
    Command::new("photo")
        .about(words.word("help-photo"))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .subcommands([add, list, out])
}

pub(super) fn run(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    match asked.subcommand() {
        Some(("add", asked)) => add(asked, words, here),
        Some(("out", asked)) => out(asked, words),
        Some((_, asked)) => {
            let notebook = Notebook::of(asked, words)?;
            let lacking = lacking(&notebook)?;
            let current = notebook.current()?;
            show::photos(&current.photos(), &lacking, &openness(asked, &current), words);
            Ok(Exit::Well)
        }
        None => Ok(Exit::NotUnderstood),
    }
}

/// How much of each site's places is told: as the sites are set, or all of it where that was asked for.
fn openness(asked: &ArgMatches, current: &Current) -> impl Fn(&str) -> Openness + use<> {
    let (input, _) = current.input();
    let full = asked.get_flag("full");
    move |site| if full { Openness::Exact } else { input.openness(site) }
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
    let kept =
        Kept { without_place: asked.get_flag("without-place"), full_size: asked.get_flag("full-size") };
    // every file is looked at before anything is written
    let mut found = Vec::new();
    for name in asked.get_many::<String>("files").into_iter().flatten() {
        found.push((name.as_str(), taken(name, &about, &kept, words)?));
    }
    let stands: BTreeSet<_> =
        current.photos().into_iter().map(|photo| Payload::Photo(Box::new(photo.clone())).key()).collect();
    let mut new: BTreeSet<_> = BTreeSet::new();
    let mut drafts = Vec::new();
    for (_, Taken { photo, .. }) in &found {
        let payload = Payload::Photo(Box::new(photo.clone()));
        if !stands.contains(&payload.key()) && new.insert(payload.key()) {
            drafts.push(Draft::beginning(&payload));
        }
    }
    let added = drafts.len();
    if added > 0 {
        notebook.write("photo", drafts, text(asked, "reason").unwrap_or_default(), here)?;
    }
    for (_, Taken { photo, bytes, .. }) in &found {
        let put = notebook.keep.put_photo(&photo.sha256, bytes);
        notebook.said(put)?;
    }
    for (name, Taken { photo, .. }) in &found {
        show::photo(name, photo, words);
    }
    let said = Message::new("photos-added").with("photos", added).with("known", found.len() - added);
    show::line(&words.say(&said.with("file", notebook.file)));
    for message in kept.said(found.iter().filter(|(_, taken)| taken.is_smaller).count(), found.len()) {
        show::aside(&words.say(&message));
    }
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

/// How photos are to be kept.
struct Kept {
    without_place: bool,
    full_size: bool,
}

impl Kept {
    /// What is said of the bytes that were kept.
    fn said(&self, smaller: usize, all: usize) -> Vec<Message> {
        let mut said = Vec::new();
        if smaller > 0 {
            said.push(Message::new("photos-smaller").with("photos", smaller).with("edge", EDGE.to_string()));
        }
        match (self.without_place, smaller) {
            (true, _) => said.push(Message::new("photos-plain")),
            (false, 0) => said.push(Message::new("photos-whole")),
            (false, _) if smaller < all => said.push(Message::new("photos-others-whole")),
            _ => {}
        }
        said
    }
}

/// A photo with its bytes.
struct Taken {
    photo: Photo,
    bytes: Vec<u8>,
    is_smaller: bool,
}

/// A photo from its file.
fn taken(name: &str, about: &Photo, kept: &Kept, words: &Words) -> Result<Taken, Refused> {
    let refused = |message: Message| (words.say(&message.with("file", name)), Exit::File);
    let unreadable =
        |error: std::io::Error| refused(Message::new("file-unreadable").with("why", error.to_string()));
    let mut bytes = Vec::new();
    let file = File::open(name).map_err(unreadable)?;
    file.take(LARGEST_FILE).read_to_end(&mut bytes).map_err(unreadable)?;
    let in_file = |message: Message| {
        let why = words.say(&message);
        refused(Message::new("photo-not-taken").with("why", why))
    };
    let written = written(&bytes);
    let small = if kept.full_size { None } else { smaller(&bytes).map_err(in_file)? };
    let is_smaller = small.is_some();
    let bytes = match small {
        Some(small) => small,
        None if kept.without_place => plain(&bytes).map_err(in_file)?,
        None => bytes,
    };
    let picture = picture(&bytes).map_err(in_file)?;
    let photo = Photo {
        // the day stays, since photos are compared year by year
        date: about.date.or(written.date),
        time: if kept.without_place { String::new() } else { written.time },
        place: written.place.filter(|_| !kept.without_place),
        bearing: written.bearing.filter(|_| !kept.without_place),
        width: picture.width,
        height: picture.height,
        media: picture.media,
        bytes: bytes.len() as u64,
        sha256: sha256_hex(&bytes),
        ..about.clone()
    };
    Ok(Taken { photo, bytes, is_smaller })
}

/// Every photo that is here as a file of its own; no file is written over. Where a site's places are kept back, what the camera wrote
/// beside the picture stays here: it may say where that was.
fn out(asked: &ArgMatches, words: &Words) -> Done {
    let notebook = Notebook::of(asked, words)?;
    let folder = text(asked, "folder").unwrap_or_default();
    std::fs::create_dir_all(folder).map_err(|error| unwritable(folder, &error, words))?;
    let current = notebook.current()?;
    let openness = openness(asked, &current);
    let (mut written, mut lacking, mut kept_back) = (0_usize, 0_usize, 0_usize);
    for photo in current.photos() {
        let Some(bytes) = notebook.said(notebook.keep.photo(&photo.sha256))? else {
            lacking += 1;
            continue;
        };
        let bytes = if openness(&photo.site) == Openness::Exact {
            bytes
        } else {
            kept_back += 1;
            // what can't be taken apart can't be freed of what stands beside it
            plain(&bytes).map_err(|message| {
                let why = words.say(&message);
                let said = Message::new("photo-not-taken").with("file", file_name(photo)).with("why", why);
                (words.say(&said), Exit::File)
            })?
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
    if asked.get_flag("full") {
        show::aside(&words.word("export-full-said"));
    } else if kept_back > 0 {
        show::aside(&words.say(&Message::new("photos-out-plain").with("photos", kept_back)));
    }
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
