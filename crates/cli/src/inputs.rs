//! Files, folders and standard input as sources.

use crate::exit::Exit;
use indicatif::{ProgressBar, ProgressStyle};
use std::fs;
use std::io::{IsTerminal, Read};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
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
    let bar = Progress::new(files.len(), words);
    for file in files {
        let name = file.display().to_string();
        let bytes = fs::read(&file).map_err(|error| fault(&name, &error))?;
        sources.push(Source { name, bytes });
        bar.one_more();
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
            && ["csv", "tsv", "txt", "toml"].contains(&ending.as_str())
            && !stem.starts_with("readme")
    });
    files.sort();
    Ok(files)
}

/// A progress bar on a terminal, drawn only past the first second.
struct Progress {
    bar: ProgressBar,
    begun: Instant,
}

impl Progress {
    fn new(length: usize, words: &Words) -> Self {
        let bar = if std::io::stderr().is_terminal() {
            ProgressBar::new(length as u64)
        } else {
            ProgressBar::hidden()
        };
        let style = ProgressStyle::with_template("{msg} {wide_bar} {pos}/{len}");
        bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()));
        bar.set_message(words.word("progress-reading"));
        Self { bar, begun: Instant::now() }
    }

    fn one_more(&self) {
        if self.begun.elapsed() < Duration::from_secs(1) {
            self.bar.set_position(self.bar.position() + 1);
        } else {
            self.bar.inc(1);
            self.bar.tick();
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}
