//! Files into a notebook: sheets are held against what stands; lines of JSON and other notebooks are joined with it.

use super::{Notebook, Refused, file, text};
use crate::call::{self, Done, status};
use crate::exit::Exit;
use crate::here::Here;
use crate::{inputs, show};
use clap::ArgMatches;
use std::collections::BTreeSet;
use tautline_exchange::Source;
use tautline_store::Keep as _;
use tautline_survey::check::check;
use tautline_survey::draft::LineDraft;
use tautline_survey::finding::{Finding, Place};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::notebook::current::Current;
use tautline_survey::notebook::gather::gather;
use tautline_survey::revision::{FORMAT, Header, Held, LineError, Revision, RevisionId, read_held};
use tautline_words::Words;

/// How every SQLite file begins.
const SQLITE: &[u8] = b"SQLite format 3\0";

pub(super) fn import(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let (copies, sheets): (Vec<Source>, Vec<Source>) =
        inputs::sources(&call::files(asked), words)?.into_iter().partition(|source| is_copy(&source.bytes));
    let mut options = call::reading(asked, words)?;
    let dry = asked.get_flag("dry-run");
    let mut notebook = if dry {
        Notebook::open_if_there(file(asked), words)?
    } else {
        Some(Notebook::open_or_begin(file(asked), words)?)
    };
    let mut findings = Vec::new();
    for copy in &copies {
        let found = held(copy, &mut findings, words)?;
        match &mut notebook {
            Some(notebook) if !dry => {
                let appended = notebook.keep.append(&found.revisions);
                show::joined(&copy.name, notebook.said(appended)?, words);
                photos(notebook, copy, found, words)?;
            }
            there => {
                let known: BTreeSet<RevisionId> = match there {
                    Some(notebook) => notebook.all()?.iter().map(Revision::id).collect(),
                    None => BTreeSet::new(),
                };
                let new = found.revisions.iter().filter(|revision| !known.contains(&revision.id())).count();
                show::would_join(&copy.name, new, words);
            }
        }
    }
    let current = notebook.as_ref().map_or_else(|| Ok(Current::default()), Notebook::current)?;
    if sheets.is_empty() {
        findings.extend(current.findings());
        show::findings_too(&findings, words);
        return Ok(status(&findings, false));
    }
    options.known_protocols = current.protocols();
    let said = options.headings.clone();
    options.headings.extend_from_slice(current.headings());
    let mut read = tautline_exchange::read(&sheets, &options);
    read.input.headings = said;
    let gathered = gather(&current, &read.input, &read.goals);
    let message = match &mut notebook {
        _ if gathered.drafts.is_empty() && gathered.tally.is_empty() => Message::new("imported-nothing-read"),
        _ if gathered.drafts.is_empty() => Message::new("imported-nothing"),
        Some(notebook) if !dry => {
            let reason = text(asked, "reason").unwrap_or_default();
            let action = notebook.write("import", gathered.drafts, reason, here)?;
            Message::new("imported").with("action", action.short())
        }
        _ => Message::new("import-dry"),
    };
    show::imported(&gathered.tally, &gathered.changed, &message.with("file", file(asked)), words);
    findings.extend(gathered.findings);
    // what the checks say of the files alone is said before they are written, and of the notebook with them in it after
    if let Some(notebook) = notebook.as_ref().filter(|_| !dry) {
        findings.extend(checked(notebook, &read.input)?);
    } else {
        check(&mut read.input);
    }
    findings.extend(read.input.findings);
    show::findings_too(&findings, words);
    Ok(status(&findings, gathered.tally.is_empty()))
}

/// What the checks find in the notebook about the files that have just come in, now that their readings are safe.
fn checked(notebook: &Notebook, read: &Input) -> Result<Vec<Finding>, Refused> {
    let (mut input, _) = notebook.current()?.into_input();
    check(&mut input);
    let is_new = |file: &str| read.files.iter().any(|own| own.name == file);
    input.findings.retain(|finding| finding.place.as_ref().is_none_or(|place| is_new(&place.file)));
    Ok(input.findings)
}

/// Another notebook, as a file or as lines of JSON.
fn is_copy(bytes: &[u8]) -> bool {
    let start = &bytes[..bytes.len().min(200)];
    // a GeoPackage is a database too, and says so of itself (OGC 12-128r19, requirement 2; before 1.2 by `GP10` and `GP11`)
    let is_map = bytes.get(68..70).is_some_and(|id| id == b"GP");
    (bytes.starts_with(SQLITE) && !is_map)
        || (start.starts_with(b"{") && start.windows(FORMAT.len()).any(|part| part == FORMAT.as_bytes()))
}

/// What another notebook holds.
#[derive(Default)]
struct Found {
    revisions: Vec<Revision>,
    /// The bytes of photos, under their hash; of a notebook's own file, they are read one by one when they are wanted.
    photos: Vec<(String, Option<Vec<u8>>)>,
}

/// Takes in the photos that this notebook lacks, now that the revisions that name them are there. Such as are erased
/// here, or that nothing names, stay out.
fn photos(notebook: &mut Notebook, copy: &Source, found: Found, words: &Words) -> Result<(), Refused> {
    let lacking: BTreeSet<String> = notebook
        .said(notebook.keep.photos())?
        .into_iter()
        .filter(|photo| !photo.is_here)
        .map(|photo| photo.sha256)
        .collect();
    let wanted: Vec<_> = found.photos.into_iter().filter(|(sha256, _)| lacking.contains(sha256)).collect();
    let other = if wanted.iter().any(|(_, bytes)| bytes.is_none()) {
        Some(Notebook::open(&copy.name, words)?)
    } else {
        None
    };
    let mut came = 0_usize;
    for (sha256, bytes) in wanted {
        let bytes = match (bytes, &other) {
            (None, Some(other)) => other.said(other.keep.photo(&sha256))?,
            (bytes, _) => bytes,
        };
        if let Some(bytes) = bytes {
            let put = notebook.keep.put_photo(&sha256, &bytes);
            notebook.said(put)?;
            came += 1;
        }
    }
    if came > 0 {
        show::line(&words.say(&Message::new("photos-joined").with("photos", came)));
    }
    Ok(())
}

/// What another notebook holds. Lines that aren't whole are named, the others are taken.
fn held(copy: &Source, findings: &mut Vec<Finding>, words: &Words) -> Result<Found, Refused> {
    if copy.bytes.starts_with(SQLITE) {
        let other = Notebook::open(&copy.name, words)?;
        let named = other.said(other.keep.photos())?;
        let photos = named.into_iter().filter(|one| one.is_here).map(|one| (one.sha256, None)).collect();
        return Ok(Found { revisions: other.all()?, photos });
    }
    let text = String::from_utf8_lossy(&copy.bytes);
    let mut lines = (1..).zip(text.lines()).filter(|(_, line)| !line.trim().is_empty());
    let header = lines.next().map_or("", |(_, line)| line);
    Header::read(header)
        .map_err(|error| (words.say(&said(error).with("file", copy.name.as_str())), Exit::File))?;
    let mut found = Found::default();
    for (row, line) in lines {
        match read_held(line) {
            Ok(Held::Revision(revision)) => found.revisions.push(*revision),
            Ok(Held::Photo { sha256, bytes }) => found.photos.push((sha256, Some(bytes))),
            Err(error) => {
                // an unfinished line is gone on with in the app
                if let Some((_, draft)) = LineDraft::from_copy_line(line) {
                    let message = Message::new("line-not-finished")
                        .with("site", draft.setup().site.as_str())
                        .with("line", draft.setup().line.as_str());
                    findings.push(Finding::note(message));
                    continue;
                }
                let place = Place { file: copy.name.clone(), row, column: None, character: None };
                findings.push(Finding::must_settle(said(error).with("file", copy.name.as_str())).at(place));
            }
        }
    }
    Ok(found)
}

fn said(error: LineError) -> Message {
    match error {
        LineError::NotANotebook => Message::new("lines-not-a-notebook"),
        LineError::Newer(version) => Message::new("lines-newer").with("version", u64::from(version)),
        LineError::NotUnderstood => Message::new("line-not-a-revision"),
        LineError::OtherBytes => Message::new("photo-other-bytes"),
        LineError::Revision(error) => Message::new(error.code()),
    }
}
