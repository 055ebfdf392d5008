//! Files, folders and standard input as sources.

use crate::exit::Exit;
use crate::progress::Progress;
use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};
use tautline_exchange::Source;
use tautline_survey::message::Message;
use tautline_words::Words;

/// Reads every file named, and the files of every folder named.
///
/// # Errors
/// the words for the first file that can't be read, and the exit status for it
pub(crate) fn sources(names: &[String], words: &Words) -> Result<Vec<Source>, (String, Exit)> {
    let fault = |file: &str, why: &std::io::Error| {
        let message = Message::new("file-unreadable").with("file", file).with("why", why.to_string());
        (words.say(&message), Exit::File)
    };
    let mut files: Vec<PathBuf> = Vec::new();
    let mut sources = Vec::new();
    for name in names {
        if name == "-" {
            let mut bytes = Vec::new();
            std::io::stdin().read_to_end(&mut bytes).map_err(|error| fault("-", &error))?;
            sources.push(Source { name: "-".into(), bytes });
        } else if Path::new(name).is_dir() {
            let own = folder(Path::new(name)).map_err(|error| fault(name, &error))?;
            if own.is_empty() {
                let message = Message::new("no-files-in-folder").with("file", name.as_str());
                return Err((words.say(&message), Exit::File));
            }
            files.extend(own);
        } else {
            files.push(PathBuf::from(name));
        }
    }
    let progress = Progress::new("progress-reading", words);
    let number = files.len();
    for (done, file) in files.into_iter().enumerate() {
        let name = file.display().to_string();
        let bytes = fs::read(&file).map_err(|error| fault(&name, &error))?;
        sources.push(Source { name, bytes });
        progress.tell(done + 1, number);
    }
    Ok(sources)
}

/// The files of a folder that are read, by name; folders inside it are left alone, and so is a read-me.
fn folder(folder: &Path) -> std::io::Result<Vec<PathBuf>> {
    let mut files: Vec<PathBuf> =
        fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.path())).collect::<Result<_, _>>()?;
    files.retain(|file| {
        let ending = file.extension().and_then(|ending| ending.to_str()).unwrap_or("").to_lowercase();
        let stem = file.file_stem().and_then(|stem| stem.to_str()).unwrap_or("").to_lowercase();
        file.is_file()
            && ["csv", "tsv", "txt", "sheet", "toml"].contains(&ending.as_str())
            && !stem.starts_with("readme")
    });
    files.sort();
    Ok(files)
}
