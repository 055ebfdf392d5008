//! `tautline sites`: thousands of sites, one row each.

use crate::call::{Done, files, question, reading};
use crate::exit::Exit;
use crate::inputs::{tables, unreadable};
use crate::notebook;
use crate::progress::Progress;
use crate::show;
use clap::ArgMatches;
use std::num::NonZero;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread::available_parallelism;
use tautline_exchange::stream::{Content, Sites, Table, Way};
use tautline_survey::assess::Question;
use tautline_survey::finding::Finding;
use tautline_words::Words;

/// Works out every site and prints it.
pub(crate) fn sites(asked: &ArgMatches, words: &Words) -> Done {
    let question = question(asked, words)?;
    let (found, names) = match asked.get_one::<String>("notebook") {
        Some(file) => {
            (tautline_exchange::stream::sites_of(notebook::read(file, words)?, &question), vec![file.clone()])
        }
        None => (of_files(asked, &question, words)?, files(asked)),
    };
    if asked.get_flag("json") {
        show::json_sites(&found, &names, words);
    } else if asked.get_flag("csv") {
        show::csv_sites(&found, words);
    } else {
        show::sites(&found, words);
    }
    let unsettled =
        found.findings.iter().any(Finding::holds_back) || found.rows.iter().any(|row| row.must_settle > 0);
    Ok(if found.rows.iter().all(|row| row.cover.is_none()) {
        Exit::Nothing
    } else if unsettled {
        Exit::MustSettle
    } else {
        Exit::Well
    })
}

/// Works out every site of the files, in memory that doesn't grow with the rows.
fn of_files(asked: &ArgMatches, question: &Question, words: &Words) -> Result<Sites, (String, Exit)> {
    let options = reading(asked, words)?;
    let tables = tables(&files(asked), words)?;
    let whole = megabytes(tables.iter().map(length).sum());
    let progress = Progress::new("progress-reading", words);
    let read = AtomicU64::new(0);
    let tell = |fresh: u64| {
        let so_far = read.fetch_add(fresh, Ordering::Relaxed) + fresh;
        progress.tell(megabytes(so_far).min(whole), whole);
    };
    let way = Way { threads: available_parallelism().unwrap_or(NonZero::<usize>::MIN), progress: &tell };
    tautline_exchange::stream::sites(&tables, &options, question, &way)
        .map_err(|fault| unreadable(&fault.name, &fault.why, words))
}

/// How long a table is; one that can't be looked at is refused when it is its turn.
fn length(table: &Table) -> u64 {
    match &table.content {
        Content::File(path) => std::fs::metadata(path).map_or(0, |file| file.len()),
        Content::Bytes(bytes) => bytes.len() as u64,
    }
}

fn megabytes(bytes: u64) -> usize {
    usize::try_from(bytes / 1_000_000).unwrap_or(usize::MAX)
}
