//! Canopy cover of thousands of sites from tables of any length, in memory that grows with the lines and not with the
//! rows.
//!
//! A quick reader goes over the rows once: it knows the columns of a readings table, and nothing that it finds is kept
//! but each line's length under canopy. It gives no verdict of its own on anything it doesn't know: a site with a row
//! that it can't read, with a line whose rows don't stand together, or with anything to be said about it is read again
//! by the general reader, row numbers and all; a table in another encoding, with quotes it can't follow, with a row
//! that names no site or has more cells than headings, or with a question that asks for more than canopy goes there as a whole. A test holds that nobody can tell the two apart.

mod again;
mod blocks;
mod cells;
mod gather;
mod known;
mod layout;
mod lines;
mod pieces;
mod terms;

use crate::delimited::{self, Options};
use crate::source::Source;
use layout::{HEAD, Head, Layout};
use lines::Lines;
use std::fs::File;
use std::io::{self, Cursor, Read, Seek};
use std::num::NonZero;
use std::path::PathBuf;
use tautline_survey::assess::Question;
use tautline_survey::finding::Finding;
use tautline_survey::sites::{self, SiteRow};
use terms::Terms;

/// What a table holds: a file that is opened when it is its turn, or bytes at hand.
#[derive(Clone, Debug)]
pub enum Content {
    /// A file on disk, of any size.
    File(PathBuf),
    /// Bytes.
    Bytes(Vec<u8>),
}

/// Reads and seeks.
trait ReadSeek: Read + Seek {}
impl<T: Read + Seek> ReadSeek for T {}

impl Content {
    fn open(&self) -> io::Result<Box<dyn ReadSeek + '_>> {
        Ok(match self {
            Self::File(path) => Box::new(File::open(path)?),
            Self::Bytes(bytes) => Box::new(Cursor::new(bytes.as_slice())),
        })
    }

    fn length(&self) -> io::Result<u64> {
        match self {
            Self::File(path) => Ok(std::fs::metadata(path)?.len()),
            Self::Bytes(bytes) => Ok(bytes.len() as u64),
        }
    }

    /// All of it, as far as it can be used.
    fn whole(&self, name: &str) -> io::Result<Source> {
        Source::open(name, self.open()?)
    }

    /// The first bytes.
    fn first(&self, most: u64) -> io::Result<Vec<u8>> {
        let mut bytes = Vec::new();
        self.open()?.take(most).read_to_end(&mut bytes)?;
        Ok(bytes)
    }
}

/// A table by name and content.
#[derive(Clone, Debug)]
pub struct Table {
    /// The name as given.
    pub name: String,
    /// What it holds.
    pub content: Content,
}

/// What came out of the tables.
#[derive(Clone, Debug)]
pub struct Sites {
    /// One row a site and year, in their order.
    pub rows: Vec<SiteRow>,
    /// What was found on reading, and what holds readings back.
    pub findings: Vec<Finding>,
    /// The question, with the goals that stood among the tables where it had none.
    pub question: Question,
    /// How many sites the quick reader left to the general one; `None` where it left everything.
    pub read_again: Option<usize>,
}

/// Why the quick reader stops.
enum Stop {
    /// Something is beyond it.
    Unclear,
    /// A file couldn't be read.
    File(String, io::Error),
}

/// A table that couldn't be read.
#[derive(Debug)]
pub struct Unreadable {
    /// Its name.
    pub name: String,
    /// Why.
    pub why: io::Error,
}

/// How the work is done; none of it changes a result.
pub struct Way<'a> {
    /// On so many threads.
    pub threads: NonZero<usize>,
    /// Told of every so many bytes that were read.
    pub progress: &'a (dyn Fn(u64) + Sync),
}

/// Canopy cover of every site and year: what [`assess`](tautline_survey::assess::assess()) says of canopy, one row each.
///
/// Goals that stand among the tables are used where the question has none.
///
/// # Errors
/// the first table that couldn't be read
/// # Example
/// ```
/// use std::num::NonZero;
/// use tautline_exchange::{Options, stream::{Content, Table, Way, sites}};
/// let sheet = "site,line,line length,species,start (in),stop (in)\nInvented Flat,1,65 ft,SHAD,12,90\n";
/// let table = Table { name: "sheet.csv".into(), content: Content::Bytes(sheet.into()) };
/// let way = Way { threads: NonZero::<usize>::MIN, progress: &|_| {} };
/// let found = sites(&[table], &Options::default(), &Default::default(), &way).unwrap();
/// let cover = found.rows[0].cover.as_ref().unwrap();
/// assert!((cover.low - 0.1).abs() < 1e-12);
/// ```
pub fn sites(
    tables: &[Table],
    options: &Options,
    question: &Question,
    way: &Way,
) -> Result<Sites, Unreadable> {
    match quick(tables, options, question, way) {
        Ok(found) => Ok(found),
        Err(Stop::Unclear) => general(tables, options, question),
        Err(Stop::File(name, why)) => Err(Unreadable { name, why }),
    }
}

fn general(tables: &[Table], options: &Options, question: &Question) -> Result<Sites, Unreadable> {
    let whole = |table: &Table| match table.content.whole(&table.name) {
        Ok(source) => Ok(source),
        Err(why) => Err(Unreadable { name: table.name.clone(), why }),
    };
    let sources = tables.iter().map(whole).collect::<Result<Vec<_>, _>>()?;
    Ok(sites_of(delimited::read(&sources, options), question))
}

/// The same of what has been read already, such as what stands in a notebook.
pub fn sites_of(mut read: delimited::Read, question: &Question) -> Sites {
    let question = with_goals(question, read.goals);
    sites::hold_back(&mut read.input);
    let findings = std::mem::take(&mut read.input.findings);
    let rows = sites::rows(read.input, &question);
    Sites { rows, findings, question, read_again: None }
}

fn with_goals(question: &Question, found: Vec<tautline_survey::assess::SiteGoal>) -> Question {
    let mut question = question.clone();
    if question.goals.is_empty() {
        question.goals = found;
    }
    question
}

fn quick(tables: &[Table], options: &Options, question: &Question, way: &Way) -> Result<Sites, Stop> {
    let mut readings: Vec<(&Table, Layout)> = Vec::new();
    let mut others: Vec<Source> = Vec::new();
    let mut lengths = Vec::new();
    for table in tables {
        let fault = |error| Stop::File(table.name.clone(), error);
        let first = table.content.first(HEAD as u64).map_err(fault)?;
        match layout::head(&table.name, &first, options) {
            Head::Unclear => return Err(Stop::Unclear),
            Head::Clear(layout) => {
                lengths.push(table.content.length().map_err(fault)?);
                readings.push((table, layout));
            }
            Head::Other => {
                let Source { bytes, .. } = table.content.whole(&table.name).map_err(fault)?;
                others.push(Source { name: table.name.clone(), bytes });
            }
        }
    }
    // the same file twice adds nothing, and only its bytes can tell
    lengths.sort_unstable();
    if readings.is_empty() || lengths.windows(2).any(|pair| pair[0] == pair[1]) {
        return Err(Stop::Unclear);
    }
    let mut read = delimited::read(&others, options);
    let question = with_goals(question, std::mem::take(&mut read.goals));
    let mut findings = std::mem::take(&mut read.input.findings);
    let terms = Terms::of(&mut read.input, options, &question).ok_or(Stop::Unclear)?;
    let lines = pieces::read(&readings, &terms, way)?;
    // a row that names no site may belong to its neighbours', whichever they are
    if lines.iter().any(Lines::names_no_site) {
        return Err(Stop::Unclear);
    }
    let gathered = gather::sites(&lines, &question, way.threads);
    let mut rows = gathered.rows;
    if !gathered.odd.is_empty() {
        let sheets = again::sheets(&readings, &gathered.odd, &terms, options)?;
        let mut again = delimited::read_with(&others, sheets, options);
        sites::hold_back(&mut again.input);
        findings.clone_from(&again.input.findings);
        rows.extend(sites::rows(again.input, &question));
        rows.sort_by(|a, b| (&a.site, a.year).cmp(&(&b.site, b.year)));
    }
    Ok(Sites { rows, findings, question, read_again: Some(gathered.odd.len()) })
}
