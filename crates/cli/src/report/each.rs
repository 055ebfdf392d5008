//! A report for each of many sites, on all cores. Each file is written whole; what was interrupted goes on with
//! `--resume`, which leaves alone what would come out the same.

use super::album::Album;
use super::shape::{Press, write as write_file};
use crate::call::{Done, status, unwritable};
use crate::exit::Exit;
use crate::progress::Progress;
use crate::show;
use std::collections::BTreeMap;
use std::num::NonZero;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread::{available_parallelism, scope};
use tautline_report::{Reader, Telling};
use tautline_survey::assess::{Question, assess};
use tautline_survey::finding::Finding;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::sites::BySite;
use tautline_words::Words;

/// What is written, where, and for whom.
pub(crate) struct Batch<'a> {
    pub(crate) folder: &'a Path,
    pub(crate) press: &'a Press,
    pub(crate) reader: Reader,
    pub(crate) question: &'a Question,
    pub(crate) words: &'a Words,
    pub(crate) album: Album,
    pub(crate) full: bool,
}

/// What came of the sites so far.
#[derive(Default)]
struct Came {
    written: usize,
    as_they_were: usize,
    pages: usize,
    figures: bool,
    findings: Vec<Finding>,
    refused: Option<(String, Exit)>,
}

/// A report for each site of the input.
pub(crate) fn write(batch: &Batch, input: &Input, resume: bool) -> Done {
    let folder = batch.folder.display().to_string();
    std::fs::create_dir_all(batch.folder).map_err(|error| unwritable(&folder, &error, batch.words))?;
    let sites = BySite::of(input);
    let files = files(batch, sites.names());
    let jobs: Vec<(&str, &PathBuf)> = sites.names().zip(&files).collect();
    let progress = Progress::new("progress-reports", batch.words);
    let (taken, came) = (AtomicUsize::new(0), Mutex::new(Came::default()));
    let threads = available_parallelism().unwrap_or(NonZero::<usize>::MIN).get().min(jobs.len().max(1));
    scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                while let Some((site, file)) = jobs.get(taken.fetch_add(1, Ordering::Relaxed)) {
                    // taken out when its turn comes, so that no two copies of all are kept
                    let made = one(batch, &sites.site(site), file, resume);
                    let Ok(mut came) = came.lock() else { return };
                    match made {
                        Ok(one) => came.add(one),
                        Err(refused) => came.refused = Some(refused),
                    }
                    if came.refused.is_some() {
                        return;
                    }
                    progress.tell(came.written + came.as_they_were, jobs.len());
                }
            });
        }
    });
    drop(progress);
    let mut came = came.into_inner().unwrap_or_else(std::sync::PoisonError::into_inner);
    if let Some(refused) = came.refused {
        return Err(refused);
    }
    let said = Message::new("reports-written")
        .with("written", came.written)
        .with("kept", came.as_they_were)
        .with("folder", folder);
    show::aside(&batch.words.say(&said.with("pages", came.pages)));
    came.findings.extend(input.findings.iter().cloned());
    Ok(status(&came.findings, !came.figures))
}

impl Came {
    fn add(&mut self, one: One) {
        match one.pages {
            None => self.as_they_were += 1,
            Some(pages) => {
                self.written += 1;
                self.pages += pages;
            }
        }
        self.findings.extend(one.findings);
        self.figures |= one.figures;
    }
}

/// What came of one site.
struct One {
    /// How many sheets were written; nothing where its file was already what would have been written.
    pages: Option<usize>,
    findings: Vec<Finding>,
    figures: bool,
}

fn one(batch: &Batch, site: &Input, file: &Path, resume: bool) -> Result<One, (String, Exit)> {
    let assessments = assess(site, batch.question);
    let (photos, maps) = (batch.album.photos(site, batch.words)?, batch.album.maps(site));
    let telling = Telling::new(site, batch.question, &assessments, batch.words).to(batch.reader);
    let telling = Telling { photos: &photos, maps: Some(&maps), full: batch.full, ..telling };
    let made = batch.press.mark(&telling);
    let telling = Telling { made: Some(&made), ..telling };
    let pages = if resume && says(file, &made) {
        None
    } else {
        let made = batch.press.made(&telling)?;
        write_file(file, &made.bytes, batch.words)?;
        Some(made.pages)
    };
    let figures = assessments.iter().any(|one| !one.figures.is_empty());
    Ok(One { pages, findings: assessments.into_iter().flat_map(|one| one.findings).collect(), figures })
}

/// Whether a file says that it was made of just this.
fn says(file: &Path, made: &str) -> bool {
    std::fs::read(file).is_ok_and(|bytes| bytes.windows(made.len()).any(|part| part == made.as_bytes()))
}

/// A file for each site, named after it as far as every system allows.
fn files<'a>(batch: &Batch, sites: impl Iterator<Item = &'a str>) -> Vec<PathBuf> {
    let mut given: BTreeMap<String, usize> = BTreeMap::new();
    sites
        .map(|site| {
            let kept = |c: char| if c.is_alphanumeric() { c } else { '-' };
            let name: String = site.chars().map(kept).take(80).collect();
            let name = name.split('-').filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-");
            let name = if name.is_empty() { "site".to_owned() } else { name };
            let again = given.entry(name.to_lowercase()).and_modify(|times| *times += 1).or_insert(1);
            let name = if *again > 1 { format!("{name}-{again}") } else { name };
            batch.folder.join(format!("{name}.{}", batch.press.shape.ending()))
        })
        .collect()
}
