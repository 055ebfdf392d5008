//! Runs the trials and writes `docs/intervals.md`, its table and its picture.

use clap::{Arg, ArgAction, Command};
use indicatif::{ProgressBar, ProgressStyle};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::atomic::{AtomicUsize, Ordering};
use tautline_trials::bar::{CLASSES, measured};
use tautline_trials::block::{Block, LINES, Plan};
use tautline_trials::run::{Sign, run};
use tautline_trials::sequential;
use tautline_trials::table::{self, Row};
use tautline_trials::{page, picture};

fn main() -> ExitCode {
    let asked = Command::new("tautline-trials")
        .about("How often intervals and verdicts are right, on invented stands whose cover is known")
        .after_help("Ctrl-C breaks off; the same command goes on where it stopped.")
        .arg(
            Arg::new("into")
                .long("into")
                .value_name("FOLDER")
                .default_value("docs")
                .help("Where the page goes"),
        )
        .arg(
            Arg::new("work")
                .long("work")
                .value_name("FOLDER")
                .default_value("out/trials")
                .help("Finished parts"),
        )
        .arg(
            Arg::new("check")
                .long("check")
                .action(ArgAction::SetTrue)
                .help("Run, and compare with what stands there instead of writing"),
        )
        .arg(
            Arg::new("page")
                .long("page")
                .action(ArgAction::SetTrue)
                .help("Write page and picture anew from the table that stands there, without a run"),
        )
        .arg(
            Arg::new("table")
                .long("table")
                .action(ArgAction::SetTrue)
                .help("Print the engine's table of measured coverage, from the table that stands there"),
        )
        .arg(
            Arg::new("sequential")
                .long("sequential")
                .action(ArgAction::SetTrue)
                .help("Try sequential plans alone and write sequential.md, or with --check compare"),
        )
        .get_matches();
    let folder = |name: &str| PathBuf::from(asked.get_one::<String>(name).expect("it has a default"));
    let (into, work) = (folder("into"), folder("work"));
    let outcome = if asked.get_flag("table") {
        old_rows(&into).map(|rows| eprint!("{}", engine_table(&rows)))
    } else if asked.get_flag("sequential") {
        tried_sequential(&into, asked.get_flag("check"))
    } else if asked.get_flag("page") {
        old_rows(&into).and_then(|rows| write(&into, &rows))
    } else if asked.get_flag("check") {
        tried(&work).and_then(|rows| compare(&into, &rows))
    } else {
        tried(&work).and_then(|rows| write(&into, &rows))
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

/// Runs all blocks, with a bar on a terminal and a line for each block elsewhere.
fn tried(work: &Path) -> io::Result<Vec<Row>> {
    let blocks = Block::all();
    let style =
        ProgressStyle::with_template("{bar:40} {pos} of {len} stands, {elapsed} gone, about {eta} to go")
            .expect("the template is well formed");
    let bar = ProgressBar::new(blocks.len() as u64).with_style(style);
    let done = AtomicUsize::new(0);
    bar.tick();
    run(&blocks, Plan::FULL, work, &|sign| {
        let done = done.fetch_add(1, Ordering::Relaxed) + 1;
        if bar.is_hidden() {
            let (word, name) = match sign {
                Sign::Kept(name) => ("kept from an earlier run", name),
                Sign::Done(name) => ("done", name),
            };
            eprintln!("{done} of {}: {name} {word}", blocks.len());
        }
        bar.inc(1);
    })
}

fn tried_sequential(into: &Path, check: bool) -> io::Result<()> {
    let (design, cases) = sequential::cases(sequential::Size::FULL);
    let page = sequential::page(design, &cases, sequential::Size::FULL);
    let file = into.join("sequential.md");
    if !check {
        return fs::write(file, page);
    }
    if fs::read_to_string(file)? == page { Ok(()) } else { Err(io::Error::other("sequential.md is another")) }
}

fn old_rows(into: &Path) -> io::Result<Vec<Row>> {
    table::read(&fs::read_to_string(into.join("intervals.csv"))?).map_err(io::Error::other)
}

/// The rows of `tautline_engine::confidence::measured::TABLE`.
fn engine_table(rows: &[Row]) -> String {
    let thousandths = |share: f64| format!("{:.0}", (1000.0 * share).round());
    let cell = |cell: Option<(f64, f64)>| match cell {
        Some((least, most)) => format!("Some(({}, {}))", thousandths(least), thousandths(most)),
        None => "None".to_owned(),
    };
    LINES
        .map(|lines| {
            let number = u32::try_from(lines).expect("a few lines");
            let cells = (0..=CLASSES.len()).map(|class| cell(measured(rows, number, class)));
            format!("    ({lines}, [{}]),\n", cells.collect::<Vec<_>>().join(", "))
        })
        .concat()
}

fn write(into: &Path, rows: &[Row]) -> io::Result<()> {
    fs::create_dir_all(into)?;
    fs::write(into.join("intervals.csv"), table::written(rows))?;
    fs::write(into.join("intervals.md"), page::page(rows))?;
    fs::write(into.join("intervals.svg"), picture::picture(rows))
}

fn compare(into: &Path, rows: &[Row]) -> io::Result<()> {
    let old = old_rows(into)?;
    let moved: Vec<&Row> = rows.iter().filter(|row| !old.contains(row)).collect();
    match moved.first() {
        None if rows.len() == old.len() => {
            eprintln!("{} rows, all as they stand", rows.len());
            Ok(())
        }
        None => Err(io::Error::other(format!("{} rows now, {} stand there", rows.len(), old.len()))),
        Some(first) => Err(io::Error::other(format!(
            "{} of {} rows are other than they stand, the first of them: {}",
            moved.len(),
            rows.len(),
            first.written()
        ))),
    }
}
