//! Files, folders and standard input as sources.

use crate::exit::Exit;
use crate::progress::Progress;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use tautline_exchange::Source;
use tautline_exchange::stream::{Content, Table};
use tautline_survey::message::Message;
use tautline_words::Words;

/// Reads every file named, and the files of every folder named.
///
/// # Errors
/// the words for the first file that can't be read, and the exit status for it
pub(crate) fn sources(names: &[String], words: &Words) -> Result<Vec<Source>, (String, Exit)> {
    let tables = tables(names, words)?;
    let progress = Progress::new("progress-reading", words);
    let number = tables.len();
    let mut sources = Vec::new();
    for (done, Table { name, content }) in tables.into_iter().enumerate() {
        sources.push(match content {
            Content::Bytes(bytes) => Source { name, bytes },
            Content::File(_) => self::file(&name, words)?,
        });
        progress.tell(done + 1, number);
    }
    Ok(sources)
}

/// Every file named, the files of every folder named, and standard input: opened when it is their turn.
///
/// # Errors
/// as [`sources`]
pub(crate) fn tables(names: &[String], words: &Words) -> Result<Vec<Table>, (String, Exit)> {
    let mut tables = Vec::new();
    let file = |path: PathBuf| Table { name: path.display().to_string(), content: Content::File(path) };
    for name in names {
        let fault = |error: std::io::Error| unreadable(name, &error, words);
        if name == "-" {
            let Source { name, bytes } = Source::open("-", std::io::stdin()).map_err(fault)?;
            tables.push(Table { name, content: Content::Bytes(bytes) });
        } else if Path::new(name).is_dir() {
            let own = folder(Path::new(name)).map_err(fault)?;
            if own.is_empty() {
                let message = Message::new("no-files-in-folder").with("file", name.as_str());
                return Err((words.say(&message), Exit::File));
            }
            tables.extend(own.into_iter().flat_map(with_beside).map(file));
        } else {
            tables.extend(with_beside(PathBuf::from(name)).map(file));
        }
    }
    // a table that was named and stands beside shapes is one file
    let mut seen = BTreeSet::new();
    tables.retain(|table| table.name == "-" || !is_beside(&table.name) || seen.insert(table.name.clone()));
    Ok(tables)
}

/// A file and those that belong to it.
fn with_beside(file: PathBuf) -> impl Iterator<Item = PathBuf> {
    let others = beside(&file);
    std::iter::once(file).chain(others)
}

fn is_beside(name: &str) -> bool {
    let ending = Path::new(name).extension().unwrap_or_default();
    BESIDE_SHAPES.iter().any(|known| ending.eq_ignore_ascii_case(known))
}

/// One file, read no further than it can be used.
///
/// # Errors
/// the words for why it can't be read, and the exit status for it
pub(crate) fn file(name: &str, words: &Words) -> Result<Source, (String, Exit)> {
    let opened = fs::File::open(name).and_then(|opened| Source::open(name, opened));
    opened.map_err(|error| unreadable(name, &error, words))
}

/// The words for a file that can't be read.
pub(crate) fn unreadable(file: &str, why: &std::io::Error, words: &Words) -> (String, Exit) {
    let message = Message::new("file-unreadable").with("file", file).with("why", why.to_string());
    (words.say(&message), Exit::File)
}

/// The endings of files that are taken out of a folder.
const ENDINGS: [&str; 13] =
    ["csv", "tsv", "txt", "sheet", "toml", "xlsx", "ods", "zip", "gpx", "kml", "geojson", "gpkg", "shp"];

/// A shapefile's table and its reference, which are of no use without it.
const BESIDE_SHAPES: [&str; 2] = ["dbf", "prj"];

/// The files that belong to a shapefile, of the same name and beside it.
fn beside(shapes: &Path) -> Vec<PathBuf> {
    let is_shapes = shapes.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("shp"));
    let stem = shapes.file_stem().unwrap_or_default().to_ascii_lowercase();
    let folder = shapes.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let own = is_shapes.then(|| fs::read_dir(folder).ok()).flatten().into_iter().flatten().flatten();
    let mut files: Vec<PathBuf> = own
        .map(|entry| shapes.with_file_name(entry.file_name()))
        .filter(|file| {
            file.file_stem().is_some_and(|own| own.eq_ignore_ascii_case(&stem))
                && file
                    .extension()
                    .is_some_and(|own| BESIDE_SHAPES.iter().any(|known| own.eq_ignore_ascii_case(known)))
        })
        .collect();
    files.sort();
    files
}

/// The files of a folder that are read, by name; folders inside it are left alone, and so is a read-me.
fn folder(folder: &Path) -> std::io::Result<Vec<PathBuf>> {
    let mut files: Vec<PathBuf> =
        fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.path())).collect::<Result<_, _>>()?;
    files.retain(|file| {
        let ending = file.extension().and_then(|ending| ending.to_str()).unwrap_or("").to_lowercase();
        let stem = file.file_stem().and_then(|stem| stem.to_str()).unwrap_or("").to_lowercase();
        file.is_file() && ENDINGS.contains(&ending.as_str()) && !stem.starts_with("readme")
    });
    files.sort();
    Ok(files)
}
